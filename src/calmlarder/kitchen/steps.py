"""Turn a pattern's sentences and what fills its slots into a title and steps."""

import re
from collections.abc import Sequence
from typing import Literal, NamedTuple

from calmlarder.patterns.pattern import REFERENCE, Pattern, slot_names
from calmlarder.tables.rows import Food

_STATE_WORDS = re.compile(r"^(?:cooked|boiled|dry|canned|fresh|frozen|dried|ground|firm|plain) ")
_TITLE_NAMES = 2


class Filling(NamedTuple):
    """A food in a slot; `grams` of the whole dish."""

    slot: str
    food: Food
    grams: int
    how: Literal["weigh", "eye", "staple"]
    household: str | None


def title_of(pattern: Pattern, fillings: Sequence[Filling]) -> str:
    """The dish with the names of its main things; at most two names a slot, the largest first."""

    def names(found: re.Match[str]) -> str:
        things = [filling for name in slot_names(found) for filling in fillings if filling.slot == name]
        things.sort(key=lambda filling: -filling.grams)
        return listed([_STATE_WORDS.sub("", thing.food.name) for thing in things[:_TITLE_NAMES]])

    title = REFERENCE.sub(names, pattern.title)
    return title[:1].upper() + title[1:]


def steps_of(pattern: Pattern, fillings: Sequence[Filling]) -> tuple[str, ...]:
    """The steps in order, amounts at the first mention of each food."""
    steps: list[str] = []
    weighed = [f"{filling.grams} g {filling.food.name}" for filling in fillings if filling.how == "weigh"]
    if weighed:
        steps.append(f"Put on the scale: {listed(weighed)}.")
    prepared = [
        f"{filling.food.name} {filling.food.prep}"
        for filling in fillings
        if filling.food.prep and filling.how != "staple"
    ]
    if prepared:
        steps.append(f"Get ready: {'; '.join(prepared)}.")
    mentioned: set[str] = set()
    for sentence in pattern.steps:
        text = _filled(sentence, fillings, mentioned)
        if text is not None:
            steps.append(text)
    return tuple(steps)


def _filled(sentence: str, fillings: Sequence[Filling], mentioned: set[str]) -> str | None:
    """A sentence with its references filled, or None where one stays empty without other words for it."""
    parts: list[str] = []
    end = 0
    for found in REFERENCE.finditer(sentence):
        parts.append(sentence[end : found.start()])
        end = found.end()
        things = [filling for name in slot_names(found) for filling in fillings if filling.slot == name]
        if things:
            parts.append(listed([_mention(thing, mentioned) for thing in things]))
        elif found[2] is not None:
            parts.append(found[2])
        else:
            return None
    text = "".join(parts) + sentence[end:]
    return text[:1].upper() + text[1:]


def _mention(filling: Filling, mentioned: set[str]) -> str:
    key = f"{filling.slot}:{filling.food.id}"
    if key in mentioned:
        return f"the {filling.food.name}"
    mentioned.add(key)
    return f"{filling.grams} g {filling.food.name}"


def listed(names: Sequence[str]) -> str:
    """`a, b and c`."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} and {names[-1]}"
