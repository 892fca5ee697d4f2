"""Load, validate and look up the ingredient tables."""
