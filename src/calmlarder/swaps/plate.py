"""One person's share of a recipe: how much of a food it holds, and what lies beside it."""

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal
from fractions import Fraction
from typing import NamedTuple

from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.load import load_of_group, load_profile_of
from calmlarder.intake.plate import Item, Row, Serving, exact_grams, rows_of
from calmlarder.intake.profile import Profile
from calmlarder.swaps.model import MOST_GRAMS, sane_grams
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import GROUPS, Group


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


def rows_for(eaten: Sequence[Serving], limits: Profile, tables: Tables, sure: Tolerance = USUAL) -> list[Row]:
    """Every limit under which one of these foods brings something."""
    items = [Item(one.food.id, load_profile_of(one.food, tables), Fraction(one.grams), False, sure) for one in eaten]
    return list(rows_of(items, limits))


def likely_by_group(eaten: Sequence[Serving], tables: Tables, sure: Tolerance = USUAL) -> Mapping[Group, Decimal]:
    """Grams of every group that are likely over all foods."""
    profiles = [(load_profile_of(one.food, tables), Fraction(one.grams)) for one in eaten]
    return {
        group: exact_grams(sum((load_of_group(one, group, sure).load(grams) for one, grams in profiles), Fraction(0)))
        for group in GROUPS
    }
