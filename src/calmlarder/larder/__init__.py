"""Lots: what is in the house, how much of it, and how urgent it is."""
