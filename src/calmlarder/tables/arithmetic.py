"""Figures that contradict each other by plain arithmetic: each is a fault of the tables, never a matter of taste.

Fructans and GOS are taken together, as data sets differ in which of the two they call what they find.
"""

from collections.abc import Iterator
from decimal import Decimal
from typing import NamedTuple

from calmlarder.problems import Problem
from calmlarder.tables.book import Tables
from calmlarder.tables.load import Lines
from calmlarder.tables.rows import WATER, Food

_TRACE = Decimal("0.05")  # g per 100 g: data sets are written to 0.1, so less than half of that says nothing
_GROUPS = {"fructans + GOS": ("fructans", "gos"), "sorbitol": ("sorbitol",), "mannitol": ("mannitol",)}
# Shares of what the food is made from that must, and that can at most, be found in it again. The upper one and that
# of drying are the design's; what water takes along is ours, the widest loss that a sourced pair of the tables shows.
_LEAST_LEFT = {
    "boiled": Decimal("0.3"),
    "canned": Decimal("0.2"),
    "cooked": Decimal("0.5"),
    "dried": Decimal("0.6"),
    "pearled": Decimal(0),
}
_MOST_LEFT = Decimal("1.25")
_WHOLE = "pearled"
_MIXTURE_LEAST, _MIXTURE_MOST = Decimal("0.5"), Decimal("1.5")
_NUTRIENTS = ("energy_kcal", "protein_g", "fibre_g", "calcium_mg", "iron_mg")
_NUTRIENT_OFF = Decimal("0.05")
_DINNER_ROLES = frozenset({"base", "protein", "vegetable", "fat", "sauce"})
_NOT_KNOWN = "not known"


class _Link(NamedTuple):
    """`food` is made from `source`, of which a gram becomes `weight` grams, by `how`."""

    where: str
    food: str
    source: str
    how: str
    weight: Decimal


def contradictions(lines: Lines, tables: Tables) -> Iterator[Problem]:
    """Every pair of figures that cannot both be right, with the row that says how they hang together."""
    for link in _links(lines):
        if link.food in tables.food_by_id and link.source in tables.food_by_id:
            yield from _made(link, tables)
    yield from _mixtures(lines, tables)
    for line in lines["foods"]:
        yield from _oil(line.row, line.where, tables)
        yield from _energy(line.row, line.where, tables)
    yield from _zeros(lines)


def group_of(food: str, group: str, tables: Tables) -> Decimal | None:
    """Grams of a group in 100 g of a food, or None where a component of it is unknown."""
    known = tables.fermentables_of(food)
    rows = [known.get(component) for component in _GROUPS[group]]  # type: ignore[call-overload]
    if any(row is None for row in rows):
        return None
    return sum((row.g_per_100g for row in rows if row is not None), Decimal(0))


def _links(lines: Lines) -> Iterator[_Link]:
    for line in lines["conversions"]:
        yield _Link(line.where, line.row.to, line.row.from_food, "boiled", line.row.factor)
    for line in lines["made_from"]:
        row = line.row
        yield _Link(line.where, row.food, row.from_food, row.how, row.weight or Decimal(1))


def _made(link: _Link, tables: Tables) -> Iterator[Problem]:
    for group in _GROUPS:
        before, after = (group_of(food, group, tables) for food in (link.source, link.food))
        if before is None or after is None:
            continue
        found = after * link.weight
        if link.how == _WHOLE:
            if after > before + _TRACE:
                what = f"{link.food} has {after} g of {group} where the whole grain, {link.source}, has {before}"
                yield Problem(where=link.where, what=what, remedy="the whole grain holds no less: mend one of them")
        elif link.how != "dried" and found > _MOST_LEFT * before + _TRACE:
            what = (
                f"{link.food} has {after} g of {group}; times {link.weight} that is over the {before} of {link.source}"
            )
            yield Problem(where=link.where, what=what, remedy="mend one of the two in fermentables.csv")
        elif found < _LEAST_LEFT[link.how] * before - _TRACE:
            least = _LEAST_LEFT[link.how]
            what = (
                f"{link.food} has {after} g of {group}; times {link.weight} that is less than {least} of the {before} "
                f"that {link.source} has"
            )
            yield Problem(where=link.where, what=what, remedy="mend one of the two in fermentables.csv")


def _mixtures(lines: Lines, tables: Tables) -> Iterator[Problem]:
    parts: dict[str, list[tuple[str, Decimal]]] = {}
    first: dict[str, str] = {}
    for line in lines["mixtures"]:
        first.setdefault(line.row.food, line.where)
        parts.setdefault(line.row.food, []).append((line.row.part, line.row.grams))
    for food, inside in parts.items():
        total = sum((grams for _, grams in inside), Decimal(0))
        whole = tables.food_by_id.get(food)
        solid = [(part, grams) for part, grams in inside if part != WATER and part in tables.food_by_id]
        if whole is None or total <= 0:
            continue
        yield from _figures_of_mixture(food, first[food], [(p, g / total) for p, g in solid], tables)
        if whole.nutrient_source.partition(";")[0].strip() == "sum_of_parts":
            yield from _nutrients_of_mixture(whole, first[food], [(p, g / total) for p, g in solid], tables)


def _figures_of_mixture(food: str, where: str, parts: list[tuple[str, Decimal]], tables: Tables) -> Iterator[Problem]:
    for group in _GROUPS:
        known = [(group_of(part, group, tables), share) for part, share in parts]
        own = group_of(food, group, tables)
        if own is None or any(figure is None for figure, _ in known):
            continue
        added = sum((figure * share for figure, share in known if figure is not None), Decimal(0))
        if not _MIXTURE_LEAST * added - _TRACE <= own <= _MIXTURE_MOST * added + _TRACE:
            what = f"{food} has {own} g of {group} where its parts make {added:.2f}"
            yield Problem(where=where, what=what, remedy="mend its rows in fermentables.csv, or its parts")


def _nutrients_of_mixture(
    whole: Food, where: str, parts: list[tuple[str, Decimal]], tables: Tables
) -> Iterator[Problem]:
    for field in _NUTRIENTS:
        own = getattr(whole, field)
        known = [(getattr(tables.food_by_id[part], field), share) for part, share in parts]
        if own is None or any(figure is None for figure, _ in known):
            continue
        added = sum((figure * share for figure, share in known), Decimal(0))
        if abs(own - added) > max(_NUTRIENT_OFF * added, _TRACE):
            what = f"{whole.id} has {own} of {field} where its parts make {added:.2f}"
            yield Problem(where=where, what=what, remedy="write the sum into foods.csv, or mend the parts")


def _oil(food: Food, where: str, tables: Tables) -> Iterator[Problem]:
    """What feeds bacteria dissolves in water, not in oil: strained oil holds none, whatever was steeped in it."""
    if food.kind == "oil":
        for component, row in tables.fermentables_of(food.id).items():
            if row.g_per_100g or row.high:
                what = f"{food.id} is an oil and holds {component}"
                yield Problem(where=where, what=what, remedy="set it to 0 in fermentables.csv: none dissolves in oil")


def _energy(food: Food, where: str, tables: Tables) -> Iterator[Problem]:
    used = _DINNER_ROLES.intersection(food.roles) and not tables.unknown_of(food.id)
    if used and food.energy_kcal is None and _NOT_KNOWN not in food.note:
        what = f"{food.id} can be in a dinner and has no energy"
        yield Problem(where=f"{where}:7", what=what, remedy="fill energy_kcal, or say in its note that it is not known")


def _zeros(lines: Lines) -> Iterator[Problem]:
    """A zero that nobody measured in this food may be a little, and how much must be said."""
    for line in lines["fermentables"]:
        row = line.row
        if row.basis in {"borrowed", "recalled"} and row.g_per_100g == 0 and row.high is None:
            what = f"the zero of {row.food} {row.component} is {row.basis} and has no high"
            yield Problem(where=f"{line.where}:4", what=what, remedy="write into `high` the most it may be")
