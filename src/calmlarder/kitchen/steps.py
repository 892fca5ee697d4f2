"""Turn a pattern's sentences and what fills its slots into a title and steps."""

import re
from collections.abc import Callable, Sequence
from typing import Literal, NamedTuple

from calmlarder.patterns.pattern import REFERENCE, Pattern, slot_names
from calmlarder.tables.rows import Food

_STATE_WORDS = re.compile(r"^(?:cooked|boiled|dry|canned|fresh|frozen|dried|ground|fried|firm|plain|raw) ")
_SALTY = frozenset({"soy-sauce", "paste", "pickle", "olive"})
_TITLE_NAMES = 2
_TITLE_NAMES_IN_ALL = 3
_VERBS = {
    "boil": "boil",
    "roast": "roast",
    "stir-fry": "fry",
    "steam": "steam",
    "microwave": "microwave",
    "raw": "lay out",
}


class Filling(NamedTuple):
    """A food in a slot; `grams` of the whole dish."""

    slot: str
    food: Food
    grams: int
    how: Literal["weigh", "eye", "staple", "box"]
    household: str | None
    prep: str
    minutes: int


def one_of_each(fillings: Sequence[Filling]) -> tuple[Filling, ...]:
    """Two lots of one food in one slot are one thing to the cook: cut, cooked and named once, grams added up."""
    found: dict[tuple[str, str], Filling] = {}
    for filling in fillings:
        key = (filling.slot, filling.food.id)
        other = found.get(key)
        found[key] = filling._replace(grams=other.grams + filling.grams, household=None) if other else filling
    return tuple(found.values())


def title_of(pattern: Pattern, fillings: Sequence[Filling]) -> str:
    """The dish with the names of its main things; at most two names a slot, the largest first."""

    def names(found: re.Match[str]) -> str:
        chosen: list[str] = []
        for name in slot_names(found):
            things = sorted((f for f in one_of_each(fillings) if f.slot == name), key=lambda filling: -filling.grams)
            chosen += [_STATE_WORDS.sub("", thing.food.name) for thing in things[:_TITLE_NAMES]]
        return listed(chosen[:_TITLE_NAMES_IN_ALL])

    title = REFERENCE.sub(names, pattern.title)
    return title[:1].upper() + title[1:]


def steps_of(pattern: Pattern, fillings: Sequence[Filling]) -> tuple[str, ...]:
    """The steps in order, amounts at the first mention of each food."""
    steps: list[str] = []
    weighed = [f"{filling.grams} g {filling.food.name}" for filling in fillings if filling.how == "weigh"]
    if weighed:
        steps.append(f"Put on the scale: {listed(weighed)}.")
    prepared = [
        f"{filling.food.name} {filling.prep}"
        for filling in one_of_each(fillings)
        if filling.prep and filling.how != "staple"
    ]
    if prepared:
        steps.append(f"Get ready: {'; '.join(prepared)}.")
    mentioned: set[str] = set()
    for sentence in pattern.steps:
        text = _filled(sentence, pattern, fillings, mentioned)
        if text is not None:
            steps.append(text)
    steps.append("Taste before you salt." if _SALTY.intersection(f.food.kind for f in fillings) else "Taste for salt.")
    return tuple(steps)


def _slowest_first(fillings: Sequence[Filling], slot: str) -> list[Filling]:
    return sorted((one for one in one_of_each(fillings) if one.slot == slot), key=lambda filling: -filling.minutes)


def _filled(sentence: str, pattern: Pattern, fillings: Sequence[Filling], mentioned: set[str]) -> str | None:
    """A sentence with its references filled, or None where one stays empty without other words for it."""
    parts: list[str] = []
    end = 0
    several = False
    for found in REFERENCE.finditer(sentence):
        parts.append(sentence[end : found.start()])
        end = found.end()
        things = [filling for name in slot_names(found) for filling in _slowest_first(fillings, name)]
        if things:
            if found[1] == "times:":
                things.sort(key=lambda filling: -filling.minutes)
            tell = _cooking(pattern) if found[1] == "cook:" else _timing if found[1] else _mention
            parts.append(listed([tell(thing, mentioned) for thing in things]))
            several = several or len(things) > 1
        elif found[3] is not None:
            parts.append(found[3])
        else:
            return None
    text = "".join(parts) + sentence[end:]
    if several:
        text = text.replace("in this order", "in this order, each in its time,").replace(",,", ",").replace(",.", ".")
    else:
        text = text.replace(", in this order", "").replace(" in this order", "")
    return text[:1].upper() + text[1:]


def _mention(filling: Filling, mentioned: set[str]) -> str:
    key = f"{filling.slot}:{filling.food.id}"
    if key in mentioned:
        return f"the {_STATE_WORDS.sub('', filling.food.name)}"
    mentioned.add(key)
    return f"{filling.grams} g {filling.food.name}"


def _timing(filling: Filling, mentioned: set[str]) -> str:
    return f"{_mention(filling, mentioned)} ({filling.minutes} minutes)"


def _cooking(pattern: Pattern) -> Callable[[Filling, set[str]], str]:
    """How a food is cooked in its slot, with its minutes."""

    def tell(filling: Filling, mentioned: set[str]) -> str:
        thing = _mention(filling, mentioned)
        method = pattern.slots[filling.slot].method
        minutes = filling.minutes
        if filling.food.state in {"cooked", "boiled", "roasted"}:
            return f"warm {thing} until steaming hot"
        if not minutes:
            return f"set out {thing}"
        return f"{_VERBS[method]} {thing} for about {minutes} minutes"

    return tell


def listed(names: Sequence[str]) -> str:
    """`a, b and c`."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} and {names[-1]}"
