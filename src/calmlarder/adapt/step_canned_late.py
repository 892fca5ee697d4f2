"""Tins in the place of a dry pulse go into the pot for its last minutes, and the pot needs no hour any more.

`Add the lentils, tomatoes and stock. Simmer for 45 minutes.` is `Add the tomatoes and stock. Simmer for 20 minutes. Put
in the lentils for the last 10 minutes of it.` What else is in the pot says whether its time is shorter now.
"""

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from calmlarder.adapt.in_words import VERBS_NEXT, short_name
from calmlarder.adapt.names import spans_in
from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_named_once import without_one
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.step_put_in_late import at_their_time
from calmlarder.adapt.things_now import Told

_MARK = r" \[cooked already, so no soaking, and only for the last (?P<last>\d+) minutes\]"
_TIME = re.compile(
    r"\b(?P<low>\d+|an?|one|two)(?: ?(?:1/2|½))?(?: ?(?:[-–]|to|or) ?\d+(?: ?(?:1/2|½))?)? "
    r"?(?P<unit>minutes?|mins?|hours?|hrs?)\b"
    r"(?: and a half)?(?P<more> (?:more|longer))?",
    re.IGNORECASE,
)
_SIMMERS = re.compile(r"\b(?:simmer|cook|boil|bubbl|stew)\w*\b", re.IGNORECASE)
_IN_THE_OVEN = re.compile(r"\b(?:oven|bake|roast)\b", re.IGNORECASE)
_NEW_CLAUSE = re.compile(rf",? (?:and then|and|then) (?={VERBS_NEXT}|pour|bring|top|stir|add)", re.IGNORECASE)
_PUTS_IN = re.compile(
    r"\b(?:add|tip in|stir in|put in|mix in|throw in|pour in|tip|stir)(?: the)? $", re.IGNORECASE
)  # fmt: skip
_THINGS_FOLLOW = re.compile(rf"(?:, (?:and )?| and )(?!{VERBS_NEXT}|pour\b|bring\b)(?=[a-z\d])", re.IGNORECASE)
_FALLEN = re.compile(
    r"\b(?:have )?(?:swollen|collapsed|broken down|fallen apart)(?: and (?:soft(?:ened)?|tender))?\b", re.IGNORECASE
)
# What takes as long as the dry pulse did, or nearly.
_SLOW = frozenset({"meat", "poultry"})
_SLOW_MINUTES = 25  # boiled; what takes less is done in the shorter time: ours
_LONG, _SHORTER = 30, 20  # minutes; roots and a sauce of tomatoes take no more than 20: common practice, no source
_WORDS = {"a": 1, "an": 1, "one": 1, "two": 2}


class _Place(NamedTuple):
    """What is marked in a step: the names with their mark, the names alone, its last minutes, and what it was."""

    start: int
    end: int
    names: str
    last: int
    food: str


def canned_late(steps: Sequence[str], told: Told) -> list[str]:
    """The changed steps with tins in their time, where a step or the one behind it says how long the pot simmers."""
    done = list(steps)
    for number in range(len(done)):
        found = _marked(done[number], told)
        if found is None:
            continue
        text, behind = done[number], done[number][found.end :]
        here = _time(behind) is not None
        if not here and (number + 1 == len(done) or not _is_timed(done[number + 1])):
            continue
        rest = _without(text, found)
        if rest is None:
            continue
        done[number] = rest
        place = number if here else number + 1
        start = min(found.start, len(rest)) if here else 0
        told.soaked.add(found.food)  # the steps say it, so no note has to
        done[place] = _in_its_time(done[place], start, found, _is_slow(told, done))
    return done


def _marked(step: str, told: Told) -> _Place | None:
    """The tins that a step puts in with their mark, by all of the names that took one food's place."""
    for food, names in _things(told):
        row = r"(?:,| and|, and) (?:the )?".join(map(re.escape, names))
        found = re.search(rf"(?P<names>(?:(?:drained|soaked|rinsed|whole) )*{row}){_MARK}", step, re.IGNORECASE)
        if found is not None:
            return _Place(found.start(), found.end(), " and ".join(names), int(found["last"]), food)
    return None


def _things(told: Told) -> Iterator[tuple[str, list[str]]]:
    for food, change in told.changed.items():
        if change.heat.startswith("cooked already"):
            yield food, [short_name(bare(line)) for line in change.lines]


def _is_timed(step: str) -> bool:
    return _time(step) is not None and _SIMMERS.search(step) is not None


def _time(text: str, start: int = 0) -> re.Match[str] | None:
    """The first time behind a place that is said of simmering, and not of an oven."""
    for one in _TIME.finditer(text, start):
        begin = max((end.end() for end in SENTENCE_ENDS.finditer(text, 0, one.start())), default=0)
        if _SIMMERS.search(text, begin, one.start()) and not _IN_THE_OVEN.search(text, begin, one.start()):
            return one
    return None


def _without(step: str, found: _Place) -> str | None:
    """The step without what goes in later; None where nothing would be left to go in."""
    before, behind = step[: found.start], step[found.end :]
    if before.endswith((", ", " and ")):
        return without_one(step, (found.start, found.end))
    if before.endswith((", the ", " and the ")):
        return without_one(f"{before.removesuffix('the ')}{step[found.start :]}", (found.start - 4, found.end - 4))
    things = _THINGS_FOLLOW.match(behind)
    if things is not None:
        return f"{before}{behind[things.end() :]}".replace("the the ", "the ")
    clause, puts = _NEW_CLAUSE.match(behind), _PUTS_IN.search(before)
    if clause is None or puts is None:
        return None
    rest, head = behind[clause.end() :], before[: puts.start()]
    return f"{head}{rest[:1].upper() if before[puts.start()].isupper() else rest[:1]}{rest[1:]}"


def _in_its_time(step: str, start: int, found: _Place, slow: bool) -> str:
    """The step with its time shorter where it was long and nothing slow is in the pot, and what goes in late in it."""
    time = _time(step, start) or _time(step)
    if time is None:
        return step
    if _minutes(time) >= _LONG and not slow:
        step = f"{step[: time.start()]}{_SHORTER} minutes{time['more'] or ''}{step[time.end() :]}"
        step = _FALLEN.sub("are soft", step)
    return at_their_time(step, [f"Put in the {found.names} for the last {found.last} minutes of it."])


def _minutes(time: re.Match[str]) -> int:
    low = _WORDS.get(time["low"].lower()) or int(time["low"])
    return low * (60 if time["unit"].lower().startswith("h") else 1)


def _is_slow(told: Told, steps: Sequence[str]) -> bool:
    """Whether the dish has meat, another dry pulse or a slow grain, which need the time that it says."""
    named = {food for step in steps for _, _, meant in spans_in(step, told.names) for food in meant}
    here = (named - set(told.changed)) | {one.food for change in told.changed.values() for one in change.to}
    rows = (told.tables.food_by_id[food] for food in here)
    return any(row.kind in _SLOW or row.minutes.get("boil", 0) >= _SLOW_MINUTES for row in rows)
