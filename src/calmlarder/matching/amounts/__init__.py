"""How much of a thing a line tells."""
