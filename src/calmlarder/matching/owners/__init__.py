"""Whose a thing on a line is."""
