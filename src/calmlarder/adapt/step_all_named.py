"""Of two foods that take one place each is named in a step: `Add the sweet potatoes` is of the potatoes as well."""

import re
from collections.abc import Sequence

from calmlarder.adapt.in_words import VERBS_NEXT
from calmlarder.adapt.model import Change
from calmlarder.adapt.names import names_of_all, spans_in
from calmlarder.adapt.step_notes import bare
from calmlarder.and_list import and_list
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables

_STATES = frozenset({"canned", "tinned", "cooked", "boiled", "dry", "dried", "frozen", "fresh", "raw"})
_IN_A_LIST = re.compile(rf",(?! then| and\b)| and (?!{VERBS_NEXT})")


def all_named(steps: Sequence[str], changes: Sequence[Change], tables: Tables) -> list[str]:
    """The changed steps with what no step names beside the first of the foods it came with."""
    told = list(steps)
    for change in changes:
        if change.change != "swap" or len(change.to) < 2 or len(change.lines) != len(change.to):
            continue
        things = [(one.food, bare(line)) for one, line in zip(change.to, change.lines, strict=True)]
        named = {food: place for food, name in things if (place := _first(told, (food, name), tables)) is not None}
        missing = [name for food, name in things if food not in named]
        if not named or not missing:
            continue
        step, end = min(named.values())
        behind = told[step][end:]
        joined = and_list(missing) if len(missing) > 1 else missing[0]
        told[step] = f"{told[step][:end]}{', ' if _IN_A_LIST.match(behind) else ' and '}{joined}{behind}"
    return told


def _first(steps: Sequence[str], thing: tuple[str, str], tables: Tables) -> tuple[int, int] | None:
    """The step that names a food first, and where the name ends; the longest name at each place counts.

    `the black beans` are the canned ones as well.
    """
    food, name = thing
    for place, step in enumerate(steps):
        for start, end, meant in spans_in(step, names_of_all(tables)):
            if food in meant or _bare_words(step[start:end]) == _bare_words(name):
                return place, end
    return None


def _bare_words(name: str) -> tuple[str, ...]:
    return tuple(word for word in words_of(name) if word not in _STATES)
