"""Vegetables that are boiled or steamed by themselves, for as long as what they are now takes.

`foods.csv` has the minutes of each way to cook. What goes into the oven afterwards is only half done before, as the
old food was: there the minutes grow by as much as the two differ.
"""

import re
from collections.abc import Iterator, Sequence

from calmlarder.adapt.in_words import short_name
from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.things_now import Told
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Method

_LONGER = 2  # minutes; less is the cook's own taste: ours
_OVEN = re.compile(r"\b(?:oven|bak(?:e|ed|ing)|roast\w*|gratin)\b", re.IGNORECASE)
_WAYS: tuple[tuple[Method, re.Pattern[str]], ...] = (
    ("steam", re.compile(r"\bsteam\w*\b", re.IGNORECASE)),
    ("boil", re.compile(r"\b(?:boil|blanch|parboil)\w*\b", re.IGNORECASE)),
)
_FOR = re.compile(
    r"\b(?P<for>for (?:about |around )?(?:another |a further )?)(?P<low>\d+)(?: ?(?:[-–]|to|or) ?\d+)?"
    r"(?P<unit> ?(?:minutes?|mins?)\b)?",
    re.IGNORECASE,
)
_NOT_ALONE = re.compile(r"\[|\b(?:pasta|rice|potatoes|noodles|stock|sauce|milk|curry|soup|stew)\b", re.IGNORECASE)


def boiled_till_tender(steps: Sequence[str], told: Told) -> list[str]:
    """The changed steps with the minutes of what is boiled or steamed in them alone."""
    things = list(_things(told))
    return [_in_time(step, any(map(_OVEN.search, steps[place + 1 :])), things) for place, step in enumerate(steps)]


def _in_time(step: str, baked: bool, things: Sequence[tuple[re.Pattern[str], Food, Food]]) -> str:
    start, kept = 0, []
    for stop in (*(one.end() for one in SENTENCE_ENDS.finditer(step)), len(step)):
        sentence, start = step[start:stop], stop
        way = next((way for way, words in _WAYS if words.search(sentence)), None)
        kept.append(sentence if way is None or _NOT_ALONE.search(sentence) else _timed(sentence, way, baked, things))
    return "".join(kept)


def _timed(sentence: str, way: Method, baked: bool, things: Sequence[tuple[re.Pattern[str], Food, Food]]) -> str:
    """A sentence whose last time is set first: what went in before is in the pot for that, too."""
    times = list(_FOR.finditer(sentence))
    if not times or not any(one["unit"] for one in times):
        return sentence
    later = 0
    for place in range(len(times) - 1, -1, -1):
        begin = times[place - 1].end() if place else 0
        given = int(times[place]["low"])
        wanted = [
            _minutes(given + later, way, baked, old, new)
            for name, old, new in things
            if name.search(sentence, begin, times[place].start())
        ]
        needs = max(wanted, default=0) - later
        if needs >= given + _LONGER:
            found = times[place]
            sentence = f"{sentence[: found.start()]}{found['for']}{needs}{found['unit'] or ''}{sentence[found.end() :]}"
            given = needs
        later += given
    return sentence


def _minutes(given: int, way: Method, baked: bool, old: Food, new: Food) -> int:
    """The minutes of a vegetable, or 0 where the tables do not have them."""
    now, was = new.minutes.get(way, 0), old.minutes.get(way, 0)
    if not baked:
        return now
    return min(now, given + max(0, now - was)) if was else 0


def _things(told: Told) -> Iterator[tuple[re.Pattern[str], Food, Food]]:
    for food, change in told.changed.items():
        for one, line in zip(change.to, change.lines, strict=False):
            old, new = told.tables.food_by_id[food], told.tables.food_by_id[one.food]
            if change.change == "swap" and new.state == "raw" and "vegetable" in new.roles and old.state == "raw":
                yield re.compile(rf"\b{re.escape(short_name(bare(line)))}\b", re.IGNORECASE), old, new
