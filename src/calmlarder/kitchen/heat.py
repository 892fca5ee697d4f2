"""How high the ring is: said where a pan or pot goes on, and where it changes. Common practice, no source."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.late import dry_minutes, falls_away
from calmlarder.patterns.pattern import Pattern, Step

LOW, MEDIUM, HIGH = "low", "medium", "medium-high"
_SAID = re.compile(r"(?<!take off the )\bheat\b(?! (?:\{|the |through|gently|without))")  # the noun
_BOILS = re.compile(r"\b(?:[Bb]oil|[Bb]ring|steamer)\b")
_SIMMERS = re.compile(r"\b(?:simmer(?:ing)?|braise|thicken|melt|without boiling|creamy)\b")
_FRIES = re.compile(r"\b(?:[Bb]rown(?:ed)?|[Ff]ry|golden|crisp)\b")
_COOKS = re.compile(r"\b(?:soften|cook|warm|[Ww]arm|[Hh]eat|sizzle|crack in|set)\b")
_LONG_FRY = 10  # what fries for longer than so many minutes does it on medium heat
_VESSEL = re.compile(r"\b(?:in|over) (?:an?|the(?: same)?|two) (?:[a-z-]+ )*?(?:pan|pot)s?\b")
_VERB = re.compile(
    r"(?<=\band )(?:fry|cook|simmer|toss|soften|stir)\b(?! (?:it|in|down|\{))|(?<=\bcook) down\b|\bsimmer\b|\bbraise\b"
)


def with_heat(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern with how high the heat is, wherever a pan or pot goes on or the heat changes."""
    filled = {one.slot for one in fillings}
    on: dict[str, str] = {}
    steps = list(pattern.steps)
    told = [
        n
        for n, step in enumerate(steps)
        if step.place in {"pan", "pot"} and step.happens(filled) and not falls_away(step, filled, pattern)
    ]
    for number in told:
        step = steps[number]
        later = next((steps[n] for n in told if n > number), None)
        follows = later if later is not None and later.place == step.place else None
        level = _level(step, follows, pattern, fillings)
        if level and on.get(step.place) != level:
            words = _put_in(step.words, level)
            if words != step.words:
                steps[number] = step.with_words(words)
                on[step.place] = level
    return pattern.with_steps(steps)


def _level(step: Step, follows: Step | None, pattern: Pattern, fillings: Sequence[Filling]) -> str:
    """How high the heat is for a step; empty where its words say so, or where it does not matter."""
    words = step.words
    if _SAID.search(words) or _BOILS.search(words):
        return ""
    if _SIMMERS.search(words) or "hollows" in words:
        return LOW
    main = [one for one in fillings if one.slot in step.slots and pattern.slots[one.slot].role == "protein"]
    if "crack in" in words or (main and all(one.food.kind == "egg" for one in main)):
        return MEDIUM
    if _FRIES.search(words):
        return MEDIUM if dry_minutes(step, pattern, fillings) > _LONG_FRY else HIGH
    if not _COOKS.search(words):
        return ""
    there = {one.slot for one in fillings if one.slot in step.slots}
    only_warms = all(pattern.slots[name].role == "fat" for name in there)
    if only_warms and follows is not None and _FRIES.search(follows.words) and not _SIMMERS.search(follows.words):
        return _level(follows, None, pattern, fillings)
    return MEDIUM


def _put_in(words: str, level: str) -> str:
    """The sentence with the heat behind its vessel, or behind what is done."""
    vessel, verb = _VESSEL.search(words), _VERB.search(words)
    found = verb or vessel if level == LOW else vessel or verb
    if found is None:
        return words
    return f"{words[: found.end()]} on {level} heat{words[found.end() :]}"
