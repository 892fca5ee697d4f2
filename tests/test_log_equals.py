"""What is logged of a dinner cooked as planned is what the plan said and what the check recomputes.

The other side of each comparison is added up in decimals from the CSV rows, by the replay of a plan, which shares no
code with the log.
"""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from fractions import Fraction
from typing import Any

import pytest

from calmlarder.checks.loads import apart, plate_of
from calmlarder.checks.plan import _log
from calmlarder.checks.tables import figures_of, mixtures, rows
from calmlarder.compose.compose import compose
from calmlarder.compose.cooked import share_eaten
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.eaten import Eaten
from calmlarder.intake.stacking import Stacking, held_ug, still_counted
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.plan_days import Asked, How, plan_days
from calmlarder.plan.sittings_typed import read_sittings
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from conftest import TODAY

SIX = datetime(2026, 3, 11, 18)
FRIDGES = (
    ("firm tofu 400g, use by today", "cooked rice 500g, made today", "spinach 200g", "soy sauce", "rapeseed oil"),
    ("tempeh 400g", "potatoes 1kg", "3 carrots", "broccoli 300g, use by tomorrow", "olive oil", "lemon"),
    ("eggs x8", "dry quinoa 300g", "2 courgettes", "red pepper", "cheddar 150g", "olive oil", "lemon"),
    ("tin of chickpeas", "firm tofu 400g", "dry rice noodles 300g", "pak choi 300g", "soy sauce", "toasted sesame oil"),
)
LotsOf = Callable[[Sequence[str]], list[Lot]]


def recounted(dinner: Dinner, wanted: DinnerRequest) -> dict[tuple[str, str], tuple[Fraction, Fraction]]:
    """Exact micrograms of one share by item and group: likely, and by how much it may be more."""
    folders = [shipped("ingredient_tables")]
    foods: Mapping[str, Any] = {row["id"]: row for row in rows(folders, "foods.csv", ("id",)).values()}
    mixed = mixtures(folders)
    figures = figures_of(folders, mixed)
    told = {"at": SIX.isoformat(), "dinner": dinner_object(dinner)}
    plate = apart(plate_of(told["dinner"], {}), mixed, figures)
    sums: dict[tuple[str, str], tuple[Fraction, Fraction]] = {}
    whose = ("me", Fraction(wanted.people))
    for load in _log(told, plate, (foods, figures), wanted.model_dump(mode="json"), whose)["loads"]:
        likely, off = sums.get((load["item"], load["group"]), (Fraction(0), Fraction(0)))
        sums[load["item"], load["group"]] = (likely + load["likely_ug"], off + load["off_ug"])
    return sums


def same(entry: Eaten, dinner: Dinner, wanted: DinnerRequest) -> None:
    exact = recounted(dinner, wanted)
    logged: dict[tuple[str, str], tuple[int, int]] = {}
    for load in entry.loads:
        before = logged.get((load.item, load.group), (0, 0))
        logged[load.item, load.group] = (before[0] + load.likely_ug, before[1] + load.off_ug)
    assert logged
    # Concentrations are rounded up to a milligram in 100 g, and each thing to a microgram: never below, hardly above.
    slack = (
        Fraction(dinner.people * len(dinner.uses))
        + sum((Fraction(use.grams) * Fraction("1.6") * 10 for use in dinner.uses), Fraction(0)) / dinner.people
    )
    for key, (plan, worst) in exact.items():
        ours = logged.get(key, (0, 0))
        assert plan <= ours[0] <= plan + slack
        assert worst <= ours[1] <= worst + slack


@pytest.mark.parametrize("lines", FRIDGES)
@pytest.mark.parametrize("people", [1, 2])
def test_the_log_is_the_dinner_and_the_recount(
    lines: Sequence[str], people: int, lots_of: LotsOf, wanting: Callable[..., DinnerRequest],
    patterns: tuple[Pattern, ...], tables: Tables,
) -> None:  # fmt: skip
    wanted = wanting(people=people, protein_g=12)
    (dinner,) = compose(lots_of(lines), wanted, patterns, tables).dinners
    entry = share_eaten(dinner, {}, SIX, tables)
    same(entry, dinner, wanted)
    # And under each cap what the cook was shown, which is rounded to a tenth of a milligram.
    counted = still_counted([entry], Stacking(at=SIX, who=("me",)))
    for cap in wanted.limits.sitting_caps:
        assert held_ug(counted, cap) / 1e6 == pytest.approx(dinner.per_person.loads_g[cap.key], abs=2e-4)


def test_the_log_of_a_planned_dinner_is_what_the_replay_counts(
    lots_of: LotsOf, wanting: Callable[..., DinnerRequest], patterns: tuple[Pattern, ...], tables: Tables
) -> None:
    wanted = wanting(people=2, protein_g=12)
    sittings = read_sittings("tonight, tomorrow dinner", TODAY, 2, None, 12)
    lots = lots_of([line for fridge in FRIDGES for line in fridge])
    planned = plan_days(Asked(lots, sittings, wanted, patterns, tables), How(600, rounds=0, bound=False, most_to_buy=0))
    dinners = [one.dinner for one in planned.sittings if one.dinner is not None]
    assert len(dinners) == 2
    for dinner in dinners:
        same(share_eaten(dinner, {}, SIX, tables), dinner, wanted)
