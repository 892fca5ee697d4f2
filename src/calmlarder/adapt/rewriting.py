"""Lines that name several foods, and the changed recipe in the form it came in or the one asked for."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calmlarder.adapt.model import Adapted, Amount
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
    """The recipe with its changes written in, `notes` behind its steps; None where it could not be brought under."""
    if adapted.after is None:
        return None
    changed = {change.place: change.lines for change in adapted.changes if change.place is not None}
    lines: dict[int, tuple[str, ...]] = {}
    for line in dict.fromkeys(parts[place].line for place in changed):
        lines[line] = tuple(
            text
            for place, part in enumerate(parts)
            if part.line == line
            for text in (changed[place] if place in changed else _kept(part, recipe, adapted.amounts, place, tables))
        )
    return rewritten(recipe, lines, adapted.after.serves, form or recipe.form, notes)


def _kept(part: Part, recipe: Recipe, amounts: Mapping[int, Amount], place: int, tables: Tables) -> tuple[str, ...]:
    """A line of its own for a food that stays, where another food of its line changes."""
    if part.read.text != recipe.ingredients[part.line]:
        return (part.read.text,)
    food = tables.food_by_id[part.read.food or ""]
    return (written(food, amounts[place].grams, tables).line if place in amounts else food.name,)
