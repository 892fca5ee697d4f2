"""One person's share of a recipe: how much of a food it holds, and what lies beside it."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import NamedTuple

from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.plate import Serving
from calmlarder.swaps.model import MOST_GRAMS, sane_grams
from calmlarder.tables.book import Tables


class Plate(NamedTuple):
    """Grams of the food, None where no line holds a known amount of it; `not_counted` are lines left out of the sum."""

    grams: Decimal | None
    beside: tuple[Serving, ...]
    not_counted: tuple[str, ...]


def plate_of(food: str, lines: Sequence[IngredientRead], serves: int, tables: Tables) -> Plate:
    """A share of the lines. What was not read, or whose figures are not known, is named and never taken for nothing."""
    grams = Decimal(0)
    beside: list[Serving] = []
    not_counted: list[str] = []
    for line in lines:
        for part in _parts(line):
            if part.outcome in {"heading", "nothing"}:
                continue
            if part.food is None or part.grams is None:
                not_counted.append(line.text)
            elif part.food == food:
                grams += Decimal(str(part.grams)) / serves
            elif tables.unknown_of(part.food):
                not_counted.append(line.text)
            else:
                beside.append(Serving(tables.food_by_id[part.food], Decimal(str(part.grams)) / serves))
    own = sane_grams(min(grams, Decimal(MOST_GRAMS))) if grams else None
    return Plate(own, tuple(beside), tuple(dict.fromkeys(not_counted)))


def _parts(line: IngredientRead) -> Iterator[IngredientRead]:
    yield line
    yield from line.also
