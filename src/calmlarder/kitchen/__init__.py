"""What the cook does: title and steps of a dinner."""
