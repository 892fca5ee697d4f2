"""Every date of a lot is kept, and any day of safety that has passed rules, whatever else is nearer.

Outside check: the UK Food Standards Agency tells the public not to eat, cook or freeze food after its use-by date,
and that best-before is about quality (recalled).
"""

from datetime import date, timedelta
from pathlib import Path

import pytest

from calmlarder.checks.dinner import verify
from calmlarder.checks.lots import last_safe_day
from calmlarder.checks.tables import rows
from calmlarder.cli import main
from calmlarder.compose.compose import compose
from calmlarder.larder.freezing import freeze_today, why_not_frozen, why_not_thawed
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot, why_unfit
from calmlarder.matching.conditions.states import COOKED_AS_THEY_ARE
from calmlarder.plan.shelf import shelves_of
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from conftest import TODAY

BOTH = "chicken breast 300g, best before 2026-03-08, use by 2026-03-09"
PAST = [
    BOTH,
    "chicken breast 300g, use by 2026-03-09, best before 2026-03-08",
    "firm tofu 300g, opened 2026-03-02, use by 2026-03-09",
    "salmon 200g, bought 2026-03-11, use by 2026-03-10",
    "salmon 200g, bought 2026-03-01, use by 2026-03-20",  # fish keeps two days whole
    "cooked rice 300g, made 2026-03-08, best before 2026-03-20",
    "cooked rice 300g, made 2026-03-08, in the cupboard",  # no longer than in the fridge
    "chicken breast 300g, use by 2026-03-05, frozen 2026-03-07",  # had run out before it was frozen
    "chicken breast 300g, opened 2026-03-01, frozen 2026-03-07",
]
GOOD = [
    "firm tofu 300g, best before 2026-03-08",
    "firm tofu 300g, best before 2026-03-08, use by 2026-03-12",
    "chicken breast 300g, use by 2026-03-05, frozen 2026-03-04",
    "salmon 200g, use by today",
]


def read(tables: Tables, line: str, today: date = TODAY) -> Lot:
    reading = LarderReader(tables, today).read(line, "test")
    assert reading is not None
    assert reading.lot is not None
    return reading.lot


@pytest.mark.parametrize("line", PAST)
def test_what_is_past_any_safe_day_is_not_eaten_nor_frozen(line: str, tables: Tables) -> None:
    lot = read(tables, line)
    assert "past the day it is safe" in (why_unfit(lot) or "")
    assert why_not_frozen(lot) is not None
    assert why_not_thawed(lot) is not None  # thawing gives it no new days
    assert freeze_today([lot], tables, 7) == ()
    (shelf,) = shelves_of([lot], TODAY, False, tables)
    assert not shelf.usable(TODAY, TODAY)


@pytest.mark.parametrize("line", GOOD)
def test_what_is_past_its_best_alone_is_not_refused(line: str, tables: Tables) -> None:
    lot = read(tables, line)
    assert why_unfit(lot) is None
    assert shelves_of([lot], TODAY, False, tables)[0].safety_day != TODAY - timedelta(days=1)


@pytest.mark.parametrize("line", [*PAST, *GOOD])
def test_the_check_reads_the_dates_themselves(line: str, tables: Tables) -> None:
    """By the rows of keeping.csv and the dates alone; what the larder says of days left is not looked at."""
    lot = read(tables, line)
    folders = [shipped("ingredient_tables")]
    keeping = rows(folders, "keeping.csv", ("food", "place", "state"))
    foods = {lot.food: rows(folders, "foods.csv", ("id",))[(lot.food,)]}
    told = {**lot.model_dump(mode="json"), "days_left": 99, "safety_days_left": 99}
    last = last_safe_day(told, foods, keeping, TODAY)
    assert (last is not None and last < TODAY) == (line in PAST)
    assert (None if last is None else (last - TODAY).days) == lot.safety_days_left


def test_the_chicken_of_two_dates_is_not_cooked(tables, patterns, lots_of, wanting) -> None:  # type: ignore[no-untyped-def]
    lots = lots_of([BOTH, "cooked rice 350g, made today", "carrots x4", "rapeseed oil", "soy sauce"])
    composed = compose(lots, wanting(diet="omnivore"), patterns, tables)
    served = list(composed.dinners) + ([composed.nearest.dinner] if composed.nearest else [])
    assert all(use.lot != "1.1" for dinner in served for use in dinner.uses)  # fresh chicken may be bought
    assert any(one.lot == "1.1" and "2026-03-09" in one.why for one in composed.excluded)


def test_the_check_finds_a_dinner_of_it(tables, patterns, lots_of, wanting) -> None:  # type: ignore[no-untyped-def]
    wanted = wanting(diet="omnivore")
    lots = lots_of(["chicken breast 300g", "cooked rice 350g, made today", "carrots x4", "rapeseed oil", "soy sauce"])
    dinner = dinner_object(compose(lots, wanted, patterns, tables).dinners[0])
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    plain = [lot.model_dump(mode="json") for lot in lots]
    where = ([shipped("ingredient_tables")], shipped("recipes"))
    assert verify(dinner, request, plain, *where) == ()
    plain[0]["dates"] = [{"kind": "best-before", "on": "2026-03-08"}, {"kind": "use-by", "on": "2026-03-09"}]
    assert f"`{plain[0]['line']}` is not safe to eat" in verify(dinner, request, plain, *where)


def test_the_store_keeps_every_date(tmp_path: Path, tables: Tables, capsys: pytest.CaptureFixture[str]) -> None:
    at = ["--home", str(tmp_path), "--today", "2026-03-07"]
    assert main(["larder", "add", BOTH, *at]) == 0
    assert main(["larder", "freeze", "1", *at[:-1], "2026-03-11"]) == 2
    assert "past the day it is safe to eat (use-by 2026-03-09)" in capsys.readouterr().err
    assert main(["larder", "freeze", "1", *at]) == 0  # on the day before it could be
    assert main(["larder", "thaw", "1", *at[:-1], "2026-04-11"]) == 0


def test_a_pack_that_had_run_out_is_not_thawed_into_new_days(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    at = ["--home", str(tmp_path), "--today", "2026-03-11"]
    assert main(["larder", "add", "chicken breast 300g, use by 2026-03-05, frozen 2026-03-07", *at]) == 0
    assert main(["larder", "thaw", "1", *at]) == 2
    assert "past the day it is safe" in capsys.readouterr().err


def test_a_cooked_vegetable_keeps_as_leftovers_in_the_check_too(tables: Tables) -> None:
    """Of every raw vegetable that may be told as cooked: a dinner of one with no such food failed its check."""
    folders, reader = [shipped("ingredient_tables")], LarderReader(tables, TODAY)
    keeping, foods = rows(folders, "keeping.csv", ("food", "place", "state")), rows(folders, "foods.csv", ("id",))
    lines = [f"{food.name}, cooked" for food in tables.foods if food.state == "raw" and food.kind in COOKED_AS_THEY_ARE]
    lots = [lot for line in lines for reading in [reader.read(line, "test")] if reading for lot in reading.lots]
    raw = [lot for lot in lots if tables.food_by_id[lot.food].state == "raw"]
    assert len(raw) > 20
    for lot in raw:
        told = lot.model_dump(mode="json")
        last = last_safe_day(told, {lot.food: foods[(lot.food,)]}, keeping, TODAY)
        assert (None if last is None else (last - TODAY).days) == lot.safety_days_left, lot.line


def test_what_one_food_of_a_line_is_told_to_be_says_nothing_of_another(reader: LarderReader) -> None:
    reading = reader.read("carrot x4, beetroot x2 cooked", "test")
    assert reading is not None
    assert [(lot.food, lot.safety_days_left) for lot in reading.lots] == [("carrot", None), ("beetroot-boiled", 2)]
