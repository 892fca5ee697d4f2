"""What the list of ingredients on a packet says, and what it cannot say."""
