"""Recipes that others wrote: reading them, their ingredient lines, and writing them again."""
