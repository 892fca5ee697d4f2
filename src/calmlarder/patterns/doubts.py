"""Foods that no dish can use, unless their note says why."""

from collections.abc import Iterator, Sequence

from calmlarder.patterns.pattern import Pattern
from calmlarder.problems import Problem
from calmlarder.tables.book import Tables

ANSWERED = ("no figure found", "not known", "needs", "for the log", "holds garlic", "poisonous")


def unused_foods(tables: Tables, patterns: Sequence[Pattern]) -> Iterator[Problem]:
    """Foods that fit no slot of any pattern and do not say so in their note."""
    for food in tables.foods:
        if any(slot.takes(food) for pattern in patterns for slot in pattern.slots.values()):
            continue
        if not any(words in food.note for words in ANSWERED):
            what = "no dish pattern can use it"
            yield Problem(
                where=food.id, what=what, remedy="add it to a pattern, or say in its note that it is for the log"
            )
