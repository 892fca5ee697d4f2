"""What every answer says last. By itself, so that the first screen need not wait for the solver."""

CAUTION = (
    "Not medical advice. Elimination is short and done with a dietitian or doctor; reintroduction follows. "
    "Figures vary with variety, ripeness and processing: read labels, mind allergies, and follow your local "
    "food-safety authority."
)


def at_fault(what: str) -> str:
    """What is said of an answer that failed the check of its own."""
    return f"calmlarder is at fault: {what} did not pass its own check and is not shown"
