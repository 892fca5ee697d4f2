"""Dish patterns: dinners with open slots, read from recipes/."""
