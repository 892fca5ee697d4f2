"""Dates and days in a typed line."""
