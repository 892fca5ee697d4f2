"""Independent checks: each answer recomputed from the CSV rows in decimals. Imports nothing of the package."""
