"""What the screens are made of: each draws plain values and decides nothing."""
