"""The changes with the amounts that the changed list has, where what replaces several lines stands in one of them."""

from collections.abc import Iterable, Sequence

from calmlarder.adapt.changed_lines import Page, Part, joined_lines, line_of_several, lines_apart
from calmlarder.adapt.model import Adapted, Change
from calmlarder.cookbook.recipe import Recipe
from calmlarder.tables.book import Tables

IN_ALL = " (in all)"


def as_listed(adapted: Adapted, recipe: Recipe, parts: Sequence[Part], tables: Tables) -> Adapted:
    """The answer as it is shown: a stand-in that was put to another line has the amount of that line, `in all`."""
    joined = joined_lines(parts, adapted, tables)
    listed = {adapted.amounts[place].food: line for place, line in joined.items()}
    apart = lines_apart(adapted, parts, tables)
    once: dict[str, str] = {}
    for change in apart.changes:
        for one, line in zip(change.to, change.lines, strict=False):
            once.setdefault(one.food, line)
    shared = _of_several(adapted.changes) - _of_several(apart.changes)  # headings part them
    changes = []
    for change in adapted.changes:
        lines = list(change.lines)
        if change.change == "swap" and len(change.to) == len(lines):
            for number, one in enumerate(change.to):
                beside = line_of_several(change, one.food, Page(recipe, parts, apart), tables)
                whole = listed.get(one.food) or beside or (once.get(one.food) if one.food in shared else None)
                lines[number] = f"{whole}{IN_ALL}" if whole and whole != lines[number] else lines[number]
        changes.append(change.model_copy(update={"lines": tuple(lines)}))
    return adapted.model_copy(update={"changes": tuple(changes)})


def _of_several(changes: Iterable[Change]) -> set[str]:
    """Foods that take the place of several lines."""
    seen: set[str] = set()
    twice: set[str] = set()
    for change in changes:
        for one in change.to if change.change == "swap" else ():
            (twice if one.food in seen else seen).add(one.food)
    return twice
