"""Dinners and answers as text and as JSON."""
