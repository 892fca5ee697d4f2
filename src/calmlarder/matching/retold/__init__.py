"""What people put in other words, written the way names and amounts are read."""
