"""What the list of a changed recipe says of its steps: names, headings, lines that stay."""

import re
from collections.abc import Mapping, Sequence

from calmlarder.adapt.called import name_in
from calmlarder.adapt.changed_lines import Part, lines_apart
from calmlarder.adapt.model import Adapted, Change
from calmlarder.adapt.step_notes import amount_of, bare
from calmlarder.adapt.step_shares import twice
from calmlarder.adapt.things_now import Told
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_WITH = re.compile(r" with |\bmix\b")
_HEADS = "brassica"
_LONGEST_NAME = 3  # words of a line's own name in a note: ours
_IN_FLORETS = re.compile("cauliflower|broccoli|romanesco")


def by_the_names_of_the_list(adapted: Adapted, parts: Sequence[Part], tables: Tables) -> Adapted:
    """The changes with what takes the place of several lines called as the one line calls it that holds all of it."""
    listed: dict[str, list[str]] = {}
    for change in lines_apart(adapted, parts, tables).changes:
        for one, line in zip(change.to, change.lines, strict=False):
            listed.setdefault(one.food, []).append(bare(line))
    called = {food: listed[food][0] for food in twice(adapted) if len(listed.get(food, ())) == 1}
    changes = []
    for change in adapted.changes:
        lines = tuple(
            f"{amount_of(line)} {called[one.food]}" if one.food in called and amount_of(line) else line
            for one, line in zip(change.to, change.lines, strict=False)
        )
        changes.append(change.model_copy(update={"lines": lines}) if len(lines) == len(change.lines) else change)
    return adapted.model_copy(update={"changes": tuple(changes)})


def staying(adapted: Adapted, parts: Sequence[Part], changed: Mapping[str, Change]) -> dict[str, list[str]]:
    """Lines that stay as they are, of foods of which another line changes."""
    places = {change.place for change in adapted.changes}
    staying: dict[str, list[str]] = {}
    for place, part in enumerate(parts):
        if place not in places and part.read.food and part.read.food in changed:
            staying.setdefault(part.read.food, []).append(part.read.text)
    return staying


def headings(parts: Sequence[Part]) -> dict[str, str]:
    """The heading above each line, where there is one."""
    last, found = "", {}
    for part in parts:
        last = part.read.text if part.read.outcome == "heading" else last
        found[part.read.text] = last
    return found


def no_florets_are_left(parts: Sequence[Part], told: Told) -> bool:
    """Whether all that came in florets is something else now."""
    heads = {
        part.read.food for part in parts if part.read.food and told.tables.food_by_id[part.read.food].kind == _HEADS
    }
    to = {one.food for food in heads & set(told.changed) for one in told.changed[food].to}
    gone = all(food in told.changed and told.changed[food].change == "swap" for food in heads)
    return bool(heads) and gone and not any(_IN_FLORETS.search(food) for food in to)


def old_name(row: Food, change: Change) -> str:
    """What a note calls the old thing: as its line does, where the tables' own name says what is in it."""
    own = name_in(change.ingredient) if _WITH.search(row.name) else ""
    now = " ".join(change.lines).casefold()
    return own if own and len(own.split()) <= _LONGEST_NAME and own.casefold() not in now else row.name
