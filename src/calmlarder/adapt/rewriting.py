"""Lines that name several foods, and the changed recipe in the form it came in or the one asked for."""

from collections.abc import Sequence
from typing import NamedTuple

from calmlarder.adapt.model import NOT_COUNTED, Adapted, Change
from calmlarder.adapt.written import written
from calmlarder.cookbook.recipe import Form, IngredientRead, Recipe
from calmlarder.cookbook.write import rewritten
from calmlarder.tables.book import Tables


class Part(NamedTuple):
    """One food of an ingredient line: `line` is the number of the line in the recipe."""

    line: int
    read: IngredientRead


def parts_of(reads: Sequence[IngredientRead]) -> tuple[Part, ...]:
    """Every food of every line: "salt and pepper" are two. A line that was not read whole stays whole."""
    parts: list[Part] = []
    for line, read in enumerate(reads):
        parts.append(Part(line, read))
        if read.outcome == "read":
            parts += [Part(line, one) for one in read.also]
    return tuple(parts)


def changed_recipe(
    recipe: Recipe,
    parts: Sequence[Part],
    adapted: Adapted,
    form: Form | None,
    tables: Tables,
    notes: Sequence[str] = (),
) -> str | None:
    """The recipe with its changes written in, `notes` behind its steps; None where it could not be brought under.

    What was not counted stays, with a mark.
    """
    if adapted.after is None:
        return None
    changed = [change.place for change in adapted.changes if change.place is not None]
    unread = {one.place for one in adapted.unread}
    lines: dict[int, tuple[str, ...]] = {}
    for line in sorted(parts[place].line for place in unread):
        lines[line] = (_marked(recipe.ingredients[line]),)
    for line in dict.fromkeys(parts[place].line for place in changed):
        lines[line] = tuple(
            text
            for place, part in enumerate(parts)
            if part.line == line
            for text in _texts(place, part, recipe, parts, adapted, tables)
        )
    return rewritten(recipe, lines, adapted.after.serves, form or recipe.form, notes)


def _texts(
    place: int, part: Part, recipe: Recipe, parts: Sequence[Part], adapted: Adapted, tables: Tables
) -> tuple[str, ...]:
    """What a food of a changed line becomes; what turns into another food of the line is added to that one."""
    changes = {change.place: change for change in adapted.changes if change.place is not None}
    beside = {n: one for n, one in enumerate(parts) if one.line == part.line and n != place}
    if place in changes:
        change = changes[place]
        joins = any(_becomes(change, one) and n not in changes and n in adapted.amounts for n, one in beside.items())
        return () if joins else change.lines
    more = [changes[n].to[0].grams for n in beside if n in changes and _becomes(changes[n], part)]
    if not more or place not in adapted.amounts:
        return _kept(part, recipe, adapted, place, tables)
    food = tables.food_by_id[part.read.food or ""]
    return (written(food, adapted.amounts[place].grams + sum(more), tables).line,)


def _becomes(change: Change, part: Part) -> bool:
    return len(change.to) == 1 and change.to[0].food == part.read.food


def _marked(text: str) -> str:
    return text if text.endswith(NOT_COUNTED) else f"{text} {NOT_COUNTED}"


def _kept(part: Part, recipe: Recipe, adapted: Adapted, place: int, tables: Tables) -> tuple[str, ...]:
    """A line of its own for a food that stays, where another food of its line changes."""
    text = part.read.text
    if text == recipe.ingredients[part.line]:
        food, amount = tables.food_by_id[part.read.food or ""], adapted.amounts.get(place)
        text = food.name if amount is None else written(food, amount.grams, tables).line
    return (_marked(text) if any(one.place == place for one in adapted.unread) else text,)
