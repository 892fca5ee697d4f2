"""What a step lifts out, a later step names again: it is returned, laid on or served. Common practice, no source.

Over all patterns and the main things that are fried first, each with the first food of every other place.
"""

import re

import pytest

from calmlarder.kitchen.filling import Filling, short_name
from calmlarder.kitchen.timeline import told_twice
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_MAINS = (
    "salmon", "cod", "prawns", "tuna-fresh", "beef-steak", "pork-chops", "chicken-breast", "tofu-firm", "tempeh",
    "halloumi", "paneer", "egg", "chickpeas-canned",
)  # fmt: skip
_LIFTED = re.compile(r"lift (?:it |them )?out")
_DONE_WHEN = re.compile(r"Cook the [^.]* until [^.]*\.")


Fit = dict[str, list[Food]]


def _fit(pattern: Pattern, tables: Tables) -> Fit:
    """The foods that each place of a pattern takes."""
    known = [food for food in tables.foods if not tables.unknown_of(food.id)]
    return {name: [food for food in known if slot.takes(food)] for name, slot in pattern.slots.items()}


def _filled(pattern: Pattern, wanted: tuple[str, str], fit: Fit, tables: Tables, every: bool) -> list[Filling]:
    """The wanted in their places, and one food of each other place: of every one, or of those that must be filled."""
    fillings = []
    for name, slot in pattern.slots.items():
        takes = fit[name]
        food = next((food for food in takes if food.id in wanted), takes[0] if takes else None)
        if food is not None and (every or slot.items[0] > 0 or food.id in wanted):
            prep, minutes = slot.prep_of(food), slot.minutes_for(food)
            fillings.append(Filling(name, food, 120, "eye", None, prep, minutes, tables.done_sign(food)))
    return fillings


@pytest.mark.long
@pytest.mark.parametrize("vegetable", ["spinach", "carrot"])
@pytest.mark.parametrize("every", [False, True])
def test_what_is_lifted_out_is_named_again(
    vegetable: str, every: bool, patterns: tuple[Pattern, ...], tables: Tables
) -> None:
    seen = 0
    for pattern in patterns:
        slot = pattern.slots.get("protein")
        fit = _fit(pattern, tables) if slot is not None else {}
        for main in _MAINS if slot is not None else ():
            food = tables.food_by_id.get(main)
            if food is None or slot is None or not slot.takes(food):
                continue
            steps, _ = told_twice(pattern, _filled(pattern, (main, vegetable), fit, tables, every))
            name = short_name(food.name)
            for at, step in enumerate(steps):
                lifted = _LIFTED.search(step)
                if lifted and name in step:
                    seen += 1
                    after = _DONE_WHEN.sub("", step[lifted.end() :] + " ".join(steps[at + 1 :]))
                    assert name in after, (pattern.id, main, vegetable, steps)
    assert seen > 50
