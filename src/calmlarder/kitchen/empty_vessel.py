"""Steps that speak of what is not there: eggs to crack beside nothing, fat to warm where nothing fries."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.late import browned_first, falls_away
from calmlarder.patterns.pattern import TIMED_ROLES, Pattern

_PUSHED = re.compile(r"^Push aside, crack\b")
_FAT_ALONE = re.compile(r"^Warm \{fat\} in (a (?:[a-z]+ )?pot)\b")
_POURED = re.compile(r"^((?:Add|Pour) \{liquid\b.*? (?:in)?to) the pot with ([^,;.]+)([,;.].*)$")


def nothing_pushed(pattern: Pattern, fillings: Sequence[Filling], told: Sequence[int]) -> Pattern:
    """Eggs that come first into a pan have nothing to push aside; `told` are the steps at the pan."""
    filled = {one.slot for one in fillings}
    for number in told:
        step = pattern.steps[number]
        if _PUSHED.match(step.words):
            cracked = step.with_words(_PUSHED.sub("Crack", step.words))
            return pattern.with_steps([*pattern.steps[:number], cracked, *pattern.steps[number + 1 :]])
        if any(pattern.slots[name].role in TIMED_ROLES for name in filled.intersection(step.slots)):
            break
    return pattern


def fat_with_the_liquid(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """Fat that would warm in a pot with nothing to fry, before water is poured on, goes in with the water."""
    filled = {one.slot for one in fillings}
    told = [n for n, one in enumerate(pattern.steps) if one.place == "pot" and one.happens(filled)]
    told = [n for n in told if not falls_away(pattern.steps[n], filled, pattern)]
    if len(told) < 2 or browned_first(pattern, fillings)[0] is not None:
        return pattern
    warm, pour = pattern.steps[told[0]], pattern.steps[told[1]]
    fat, into = _FAT_ALONE.match(warm.words), _POURED.match(pour.words)
    if fat is None or into is None or any(pattern.slots[name].role != "fat" for name in filled & set(warm.slots)):
        return pattern
    joined = "," if " and " in into[2] else " and"
    poured = pour.with_words(f"{into[1]} {fat[1]} with {{fat}}{joined} {into[2]}{into[3]}")
    steps = [poured if n == told[1] else step for n, step in enumerate(pattern.steps) if n != told[0]]
    return pattern.with_steps(steps)
