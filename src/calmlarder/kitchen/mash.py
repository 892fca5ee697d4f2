"""Mash out of a packet or from yesterday is mash already: nobody mashes or tosses it. Common practice, no source."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.patterns.pattern import Pattern

_MASH = frozenset({"potato-instant-mash", "potato-mashed", "mash-roots", "mash-with-greens"})
_MASHED = re.compile(r"^Mash \{base\} with \{[a-z]+\|[^}]*\} and a pinch of salt\.$")
_TOSSED = re.compile(r"^Toss \{base\} with (\{[a-z,]+(?:\|[^}]*)?\}|all of it)")
_A_SPLASH = " and a splash of its water"


def mashed_already(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern without mashing mash, and with what would be tossed with it heaped on it."""
    base = [one for one in fillings if one.slot == "base"]
    if not base or any(one.food.id not in _MASH for one in base):
        return pattern
    filled = {one.slot for one in fillings}
    steps = []
    for step in pattern.steps:
        if _MASHED.match(step.words) and filled.isdisjoint({*step.slots} - {"base"}):
            continue
        found = _TOSSED.match(step.words)
        if found is not None and (found[1] == "all of it" or "vegetable" in filled):
            rest = step.words[found.end() :].removeprefix(_A_SPLASH)
            step = step.with_words(f"Heap {found[1]} on {{base}}{rest}")
        steps.append(step)
    return pattern.with_steps(steps)
