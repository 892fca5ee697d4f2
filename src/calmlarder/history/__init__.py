"""What became of each lot, and how the gut felt: histories, and what they add up to."""
