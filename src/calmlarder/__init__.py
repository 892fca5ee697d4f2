"""calmlarder decides tonight's dinner from what is left in the fridge."""

__version__ = "0.1.0"
