"""A plate that nobody planned: whether it fits, what to weigh for it, and what to take less of."""

from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from calmlarder.intake.plate import Item, Row, load_of_item, rows_of
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Counted

_COARSE_FROM, _COARSE, _FINE = 10, Fraction(1), Fraction(1, 2)  # g: steps in which less of a food is taken


class Table(NamedTuple):
    """What holds at a sitting, for how many who share the dish, and what was eaten before."""

    limits: Profile
    people: int
    counted: Sequence[Counted] = ()


class Less(NamedTuple):
    """Grams of the whole dish to take less of an item, by its number on the plate."""

    number: int
    grams: Fraction


class Judged(NamedTuple):
    """Every limit as it stands, and whether the plate fits; then what must be weighed, else the smallest change."""

    fits: bool
    rows: tuple[Row, ...]
    weigh: tuple[int, ...]
    less: tuple[Less, ...]


def judged(items: Sequence[Item], portions: Sequence[float], table: Table) -> Judged:
    """A plate under its limits. `portions` are the usual g of each item, by which changes are compared."""
    weigh = _weighings(items, table)
    rows = tuple(rows_of(items if weigh is None else _weighed(items, weigh), table.limits, table.counted))
    if weigh is not None:
        return Judged(True, rows, weigh, ())
    return Judged(False, rows, (), _less(items, portions, table))


def _fits(items: Sequence[Item], table: Table) -> bool:
    return all(row.holds(table.people) for row in rows_of(items, table.limits, table.counted))


def _weighed(items: Sequence[Item], numbers: Sequence[int]) -> list[Item]:
    return [item._replace(weighed=True) if n in numbers else item for n, item in enumerate(items)]


def _weighings(items: Sequence[Item], table: Table) -> tuple[int, ...] | None:
    """The fewest things to weigh so that the plate fits, none where it fits by eye; None where nothing helps."""
    if _fits(items, table):
        return ()
    by_eye = [n for n, item in enumerate(items) if not item.weighed and not item.profile.settled]
    must = {food for row in rows_of(items, table.limits, table.counted) for food in row.must_weigh(table.people)}
    needed = [n for n in by_eye if items[n].food in must]
    if _fits(_weighed(items, needed), table):
        return _without_needless(items, needed, table)
    if _fits(_weighed(items, by_eye), table):
        return _without_needless(items, by_eye, table)
    return None


def _without_needless(items: Sequence[Item], numbers: Sequence[int], table: Table) -> tuple[int, ...]:
    kept = list(numbers)
    for number in numbers:
        fewer = [n for n in kept if n != number]
        if _fits(_weighed(items, fewer), table):
            kept = fewer
    return tuple(kept)


def _less(items: Sequence[Item], portions: Sequence[float], table: Table) -> tuple[Less, ...]:
    """Less of one item where that is enough, the fewest portions of it; else of several, those that bring most."""
    alone = [
        (float(items[n].grams - most) / max(portions[n], 0.1), n, most)
        for n in range(len(items))
        if (most := _most(items, n, table)) is not None
    ]
    if alone:
        _, number, most = min(alone)
        return (Less(number, Fraction(items[number].grams) - most),)
    changed = list(items)
    while not _could_fit(changed, table):
        heaviest = _heaviest(changed, table)
        if heaviest is None:
            return ()  # what was eaten before passes a limit by itself
        changed[heaviest] = changed[heaviest]._replace(grams=_most(changed, heaviest, table) or Fraction(0))
    for number, item in enumerate(items):
        if changed[number].grams != item.grams:
            back = [item if n == number else other for n, other in enumerate(changed)]
            changed[number] = item._replace(grams=_most(back, number, table) or Fraction(0))
    return tuple(
        Less(n, Fraction(item.grams) - Fraction(changed[n].grams))
        for n, item in enumerate(items)
        if changed[n].grams != item.grams
    )


def _could_fit(items: Sequence[Item], table: Table) -> bool:
    return _weighings([item for item in items if item.grams], table) is not None


def _most(items: Sequence[Item], number: int, table: Table) -> Fraction | None:
    """The most of an item with which the plate fits, the rest as it is; None where not even without it."""
    whole = Fraction(items[number].grams)
    step = _COARSE if whole >= _COARSE_FROM else _FINE

    def fits(steps: int) -> bool:
        tried = [item._replace(grams=steps * step) if n == number else item for n, item in enumerate(items)]
        return _could_fit(tried, table)

    if not fits(0):
        return None
    fitting, too_much = 0, int(whole / step) + 1
    while too_much - fitting > 1:
        middle = (fitting + too_much) // 2
        if middle * step <= whole and fits(middle):
            fitting = middle
        else:
            too_much = middle
    return fitting * step


def _heaviest(items: Sequence[Item], table: Table) -> int | None:
    """The item that brings the largest part of a limit that is passed; of several limits the one that is fullest."""
    found = []
    for row in rows_of(items, table.limits, table.counted):
        if not row.holds(table.people):
            for number, item in enumerate(items):
                load = load_of_item(item, row.cap, row.food).load(item.grams)
                if load:
                    found.append((float(load) / float(row.cap.typical_g), -number))
    return -max(found)[1] if found else None
