"""What can stand in for a food, in which amount, and whether it stays under the caps."""
