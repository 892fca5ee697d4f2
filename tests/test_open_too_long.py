"""What is open in the fridge for longer than it keeps is not eaten cold, and far beyond that not at all.

Days once opened: keeping.csv with its sources (a jar of peeled peppers 5, mustard more than a week).
"""

from collections.abc import Callable, Sequence
from datetime import date, timedelta

import pytest

from calmlarder.checks.lots import lot_faults, opened_faults
from calmlarder.checks.tables import foods_of, rows
from calmlarder.compose.offer import offer
from calmlarder.compose.problem import pattern_problem
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot, LotDate
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped


def _opened(lot: Lot, today: date, days: int) -> Lot:
    dates = (LotDate(kind="opened", on=today - timedelta(days=days)),)
    return lot.model_copy(update={"dates": dates, "opened": True, "place": "fridge", "safety_days_left": None})


@pytest.mark.parametrize(
    ("line", "days", "eaten"),
    [
        ("roasted peppers jar", 5, "cold"),
        ("roasted peppers jar", 6, "cooked"),
        ("roasted peppers jar", 10, "cooked"),
        ("roasted peppers jar", 11, "not"),
        ("mustard", 60, "cold"),
    ],
)
def test_days_once_opened_say_how_it_is_eaten(
    line: str, days: int, eaten: str, tables: Tables, patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]], wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    wanted = wanting(people=1, diet="vegan")
    lots = [_opened(lots_of([line])[0], wanted.today, days)]
    offered, left = offer(lots, wanted, tables)
    assert [one.only_cooked for one in offered] == ([] if eaten == "not" else [eaten == "cooked"])
    assert any("do not eat it" in one.why for one in left) is (eaten == "not")
    problems = [pattern_problem(pattern, offered, wanted, {}) for pattern in patterns]
    methods = {one.pattern.slots[option.slot].method for one in problems for option in one.options}
    assert ("raw" in methods) is (eaten == "cold")


@pytest.mark.parametrize(("days", "faults"), [(5, (0, 0)), (6, (0, 1)), (11, (1, 1))])
def test_the_check_counts_them_by_itself(days: int, faults: tuple[int, int]) -> None:
    folders, today = [shipped("ingredient_tables")], date(2026, 3, 11)
    food = "peppers-roasted-jar"
    use = {"lot": "1", "food": food, "line": "peppers", "slot": "side", "grams": 90}
    opened = [{"kind": "opened", "on": str(today - timedelta(days=days))}]
    lot = {
        "id": "1",
        "line": "peppers",
        "food": food,
        "dates": opened,
        "place": "fridge",
        "to_bin": False,
        "owner": None,
    }
    foods, keeping = foods_of(folders, {}, {food}), rows(folders, "keeping.csv", ("food", "place", "state"))
    request = {"today": str(today), "avoid": [], "use_shared": False}
    far = lot_faults({"uses": [use]}, [lot], request, foods, keeping)
    cold = opened_faults({"uses": [use]}, [lot], today, keeping, (foods, {"slots": {"side": {"method": "raw"}}}))
    assert (len(far), len(cold)) == faults
