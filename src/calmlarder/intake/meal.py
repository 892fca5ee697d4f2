"""A plate that nobody planned: whether it fits, and what to weigh for it."""

from collections.abc import Callable, Collection, Sequence
from fractions import Fraction
from itertools import combinations
from typing import NamedTuple

from calmlarder.intake.load import Number
from calmlarder.intake.plate import Item, LimitOn, Row, limits_on, rows_of
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Counted

_MOST_TRIED = 12  # foods by eye of which every choice is tried; of more those that are needless are left out again


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
    """Every limit as it stands, and whether the plate fits; then what must be weighed for it.

    `less` is the smallest change of a plate that does not fit, where somebody asked for it (compose/less.py).
    """

    fits: bool
    rows: tuple[Row, ...]
    weigh: tuple[int, ...]
    less: tuple[Less, ...] = ()


def judged(items: Sequence[Item], table: Table) -> Judged:
    """A plate under its limits. Who weighs a food weighs all of it."""
    weigh = _foods_to_weigh(items, table)
    rows = tuple(rows_of(_weighed(items, weigh or ()), table.limits, table.counted))
    numbers = tuple(n for n, item in enumerate(items) if item.food in (weigh or ()) and _by_eye(item))
    return Judged(weigh is not None, rows, numbers)


def _by_eye(item: Item) -> bool:
    return not item.weighed and not item.profile.settled


def _weighed(items: Sequence[Item], foods: Collection[str]) -> list[Item]:
    return [item._replace(weighed=True) if item.food in foods and _by_eye(item) else item for item in items]


def _foods_to_weigh(items: Sequence[Item], table: Table) -> tuple[str, ...] | None:
    """The fewest foods to weigh so that the plate fits, none where it fits by eye; None where nothing helps."""
    limits = tuple(limits_on(items, table.limits, table.counted))
    if not all(_could_hold(limit, items, table.people) for limit in limits):
        return None

    def fits(foods: Collection[str]) -> bool:
        tried = _weighed(items, foods)
        return all(limit.row(tried).holds(table.people) for limit in limits)

    # What, misjudged alone, passes a limit no plate that fits judges by eye.
    needed = {food for limit in limits for food in limit.row(items).must_weigh(table.people)}
    foods = dict.fromkeys(item.food for item in items if _by_eye(item))
    must, rest = tuple(food for food in foods if food in needed), [food for food in foods if food not in needed]
    if len(rest) > _MOST_TRIED:
        return _without_needless(tuple(foods), fits) if fits(foods) else None
    for count in range(len(rest) + 1):
        for more in combinations(rest, count):
            if fits((*must, *more)):
                return (*must, *more)
    return None


def _could_hold(limit: LimitOn, items: Sequence[Item], people: int) -> bool:
    """Whether it would hold if everything were off as little as it can be, on the scale or by eye."""
    least: dict[str, Number] = {}
    for number, use in limit.uses.items():
        item = items[number]
        ways = (True, False) if _by_eye(item) else (item.weighed,)
        off = min(use.deviation(item.grams, weighed, item.sure) for weighed in ways)
        least[item.food] = least.get(item.food, 0) + off
    row = limit.row(items)
    return row._replace(sum=row.sum._replace(off=least)).fits(people)


def _without_needless(foods: Sequence[str], fits: Callable[[Collection[str]], bool]) -> tuple[str, ...]:
    kept = list(foods)
    for food in foods:
        fewer = [one for one in kept if one != food]
        if fits(fewer):
            kept = fewer
    return tuple(kept)
