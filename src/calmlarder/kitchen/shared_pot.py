"""Vegetables that are boiled beside potatoes go into the potatoes' pot for its last minutes.

One pot and one ring fewer, and nothing is drained and cold while the rest cooks. Common practice, no source.
"""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.patterns.pattern import Pattern, Step

_WATER = re.compile(r"^Bring a pot of salted water to the boil for the vegetables\b")
_BOILED = re.compile(r"^Boil \{[a-z_,]+\} in the vegetable pot until just tender, and drain\.$")
_NAMES = re.compile(r"\{[a-z_,]+\}")
_MASHED = re.compile(r"\b[Mm]ash\b")
_FOLDED_IN = re.compile(r"^Mash \{([a-z]+)\} (.*?), and fold in \{([a-z_,]+)\}, pressed dry")  # colcannon
_COLOURS = frozenset({"beetroot", "beetroot-golden", "red-cabbage"})  # they dye the potatoes
_STIRRED_HOT_MINUTES = 3  # common practice, no source
_MOST_G = 2500  # in one large pot, potatoes and all: ours


def folds_in(pattern: Pattern) -> bool:
    """Whether greens are folded into mash, which thawed leaves do as they come out of a cook's fist."""
    return any(_FOLDED_IN.match(step.words) for step in pattern.steps)


def thawed_folded_in(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern with leaves that were thawed and squeezed stirred into the mash, and not boiled again."""
    at = next((n for n, step in enumerate(pattern.steps) if _FOLDED_IN.match(step.words)), None)
    water = next((n for n, step in enumerate(pattern.steps) if _WATER.match(step.words)), None)
    if at is None or water is None:
        return pattern
    boiled = pattern.steps[water + 1]
    greens = [one for one in fillings if one.slot in boiled.slots]
    raw = {one.slot for one in greens if "squeezed" not in one.prep}
    if all(one.slot in raw for one in greens):
        return pattern
    dried = ", pressed dry" if raw else ""
    words = pattern.steps[at].words.replace(", pressed dry", f"{dried}; stir on low heat until steaming hot")
    mash = Step(place="pot", minutes=_STIRRED_HOT_MINUTES, words=words)
    others = ",".join(name for name in boiled.slots if name in raw)
    boil = [pattern.steps[water], boiled.with_words(_NAMES.sub(f"{{{others}}}", boiled.words))] if raw else []
    between = pattern.steps[water + 2 : at]
    return pattern.with_steps([*pattern.steps[:water], *boil, *between, mash, *pattern.steps[at + 1 :]])


def with_shared_pot(pattern: Pattern, fillings: Sequence[Filling]) -> tuple[Pattern, int | None, tuple[Filling, ...]]:
    """The pattern without its second pot of water, the step of the potatoes, and what joins them there."""
    water = next((n for n, step in enumerate(pattern.steps) if _WATER.match(step.words)), None)
    apart = [n for n, step in enumerate(pattern.steps) if _boils_potatoes(pattern, step, fillings)]
    if water is None or len(apart) != 1 or not _BOILED.match(pattern.steps[water + 1].words):
        return pattern, None, ()
    boiled = pattern.steps[water + 1]
    greens = tuple(one for one in fillings if one.slot in boiled.slots)
    [potatoes] = [one for one in fillings if one.slot in pattern.steps[apart[0]].slots]
    mashed = any(_MASHED.search(step.words) and potatoes.slot in step.slots for step in pattern.steps)
    together = _mashed_together(pattern, potatoes, greens)
    fits = all(0 < one.minutes < potatoes.minutes and one.food.id not in _COLOURS for one in greens)
    grams = potatoes.grams + sum(one.grams for one in greens)
    if not greens or not fits or (mashed and together is None) or grams > _MOST_G or apart[0] > water:
        return pattern, None, ()
    pattern = together or pattern
    steps = (*pattern.steps[:water], *pattern.steps[water + 2 :])
    return pattern.with_steps(steps), apart[0], greens


def _mashed_together(pattern: Pattern, potatoes: Filling, greens: Sequence[Filling]) -> Pattern | None:
    """The pattern with potatoes mashed with all that shared their pot, where it would be folded in anyway."""
    slots = {one.slot for one in greens}
    for number, step in enumerate(pattern.steps):
        found = _FOLDED_IN.match(step.words)
        if found is not None and found[1] == potatoes.slot and slots <= set(found[3].split(",")):
            words = f"Mash {{{found[1]},{found[3]}}} coarsely {found[2]}{step.words[found.end() :]}"
            return pattern.with_steps([*pattern.steps[:number], step.with_words(words), *pattern.steps[number + 1 :]])
    return None


def _boils_potatoes(pattern: Pattern, step: Step, fillings: Sequence[Filling]) -> bool:
    """Whether a step boils raw potatoes by themselves."""
    here = [one for one in fillings if step.place == "apart" and one.slot in step.slots]
    return len(here) == 1 and all(
        one.food.kind == "potato" and one.food.state == "raw" and pattern.slots[one.slot].method == "boil"
        for one in here
    )
