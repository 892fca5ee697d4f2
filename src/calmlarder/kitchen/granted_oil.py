"""Oil that is taken for granted where the larder has no fat for a step: how much of it. Common practice, no source."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import ALREADY_COOKED, OWN_FAT, Filling
from calmlarder.patterns.pattern import TIMED_ROLES, Pattern, Step, slot_names

OIL_TEASPOONS = 2  # for one person, where the larder has no fat: common practice, no source
OIL_GRAMS = 9  # two teaspoons of 5 ml at 0.92 g/ml
_SHARP_KINDS = frozenset({"acid", "citrus"})
_STEWS = re.compile(r"\bsimmer\b")


def granted_fats(pattern: Pattern, fillings: Sequence[Filling]) -> tuple[str, ...]:
    """Slots of fat that a step wants and nothing fills: oil is taken for granted there."""
    filled = {filling.slot for filling in fillings}
    wanted = [
        name
        for step in pattern.steps
        if step.happens(filled)
        for found in step.must_fill
        if found[3] is None and not filled.intersection(slot_names(found))
        for name in slot_names(found)[:1]
        if all(pattern.slots[name].role == "fat" for name in slot_names(found))
    ]
    return tuple(dict.fromkeys(wanted))


def oil_teaspoons(pattern: Pattern, fillings: Sequence[Filling], people: int) -> int:
    """How much oil is taken for granted in each of `granted_fats`, in teaspoons for the whole dish.

    It goes by the pan more than by the plate: one more for each person beyond two.
    """
    return 1 if fries_in_its_own(pattern, fillings) else _usual(people)


def _usual(people: int) -> int:
    return min(OIL_TEASPOONS * people, OIL_TEASPOONS + people)


def oil_teaspoons_in(step: Step, pattern: Pattern, fillings: Sequence[Filling], people: int) -> int:
    """The same of one step: what makes a soy sauce or a paste shine is a spoon each, what stands against a lemon more.

    Common practice, no source.
    """
    oil = oil_teaspoons(pattern, fillings, people)
    granted = granted_fats(pattern, fillings)
    first = next((one for one in pattern.steps if any(name in granted for name in one.slots)), step)
    if first.words != step.words:  # what fries first in its own fat leaves none for the potatoes beside it
        oil = _usual(people)
    stirred = [one for one in fillings if one.slot in step.slots]
    sharp = any(one.food.kind in _SHARP_KINDS for one in stirred)
    return min(oil, people) if "to a dressing" in step.words and not sharp else oil


def fries_in_its_own(pattern: Pattern, fillings: Sequence[Filling]) -> bool:
    """Whether what fries first in a fat that is taken for granted gives off enough of its own, bacon or mince.

    What was cooked before and joins it is warmed in that.
    """
    granted = granted_fats(pattern, fillings)
    at = next((n for n, step in enumerate(pattern.steps) if any(name in granted for name in step.slots)), None)
    if at is None:
        return False
    for step in pattern.steps[at:]:
        here = [one for one in fillings if one.slot in step.slots and pattern.slots[one.slot].role in TIMED_ROLES]
        if here:
            stews = _STEWS.search(step.words) is not None  # meat is browned alone before the rest comes in
            here = [one for one in here if pattern.slots[one.slot].role == "protein"] if stews else here
            raw = [one for one in here if one.food.state not in ALREADY_COOKED]
            return step.place == pattern.steps[at].place and bool(raw) and all(one.food.id in OWN_FAT for one in raw)
    return False
