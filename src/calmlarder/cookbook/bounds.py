"""How much of a stranger's text is read at all, and the words for what is beyond that."""

from typing import NoReturn

from calmlarder.problems import CannotGoOn, Problem

MOST_SIGNS = 5_000_000
MOST_LINES = 20_000
MOST_INGREDIENTS = 500
MOST_STEPS = 1_000
LONGEST_TITLE = 200
LONGEST_STEP = 5_000
MOST_SIGNS_OF_STEPS = 100_000  # of all steps together, where they are looked through for foods
DEEPEST = 100  # JSON-LD of a page is about ten deep; the standard library's reader recurses
WHERE = "the recipe"


def fail(what: str, remedy: str) -> NoReturn:
    """Raise CannotGoOn for the recipe."""
    raise CannotGoOn([Problem(where=WHERE, what=what, remedy=remedy)])


def check_count(ingredients: int) -> None:
    """Raises CannotGoOn for more ingredients than any recipe has."""
    if ingredients > MOST_INGREDIENTS:
        fail(f"names more than {MOST_INGREDIENTS} ingredients", "give one recipe")
