"""The rule of limits by hand: likely, at most, what must be weighed, and what was eaten before.

The limits are those of Varney et al. 2017 (0.30 g of fructans + GOS from a core food); figures here are invented.
"""

import math
from datetime import datetime
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from calmlarder.checks import loads as checked
from calmlarder.checks.limits import limits_of
from calmlarder.checks.tables import error
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.eaten import Eaten, Load, Portion, loads_of
from calmlarder.intake.groups import food_figures
from calmlarder.intake.limit import limit_of
from calmlarder.intake.load import LoadProfile, PartLoad, at_most_of, load_of_group, load_profile_of
from calmlarder.intake.plate import Item, rows_of
from calmlarder.intake.profile import TO_GRAMS, profile_named
from calmlarder.intake.stacking import Stacking, room_after, rooms, still_counted
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped, table_folders
from calmlarder.tables.rows import Fermentable
from calmlarder.tables.vocabulary import COMPONENTS

SURE = Tolerance()
AT = datetime(2026, 3, 11, 18, 0)


def rows(**figures: tuple[str, str, str]) -> dict[Any, Fermentable]:
    """Seven rows of an invented food; each figure is value, high, basis; the rest are zeros that were measured."""
    found: dict[Any, Fermentable] = {}
    for component in COMPONENTS:
        value, high, basis = figures.get(component, ("0", "", "analysed"))
        cells = {"food": "invented", "component": component, "g_per_100g": value, "high": high, "basis": basis}
        found[component] = Fermentable.model_validate({**cells, "source": "by_nature", "code": "", "note": ""})
    return found


def invented(**figures: tuple[str, str, str]) -> LoadProfile:
    return LoadProfile((PartLoad("invented", "core", 1, food_figures(rows(**figures))),))


@pytest.mark.parametrize(
    ("figures", "group", "typical", "error_mg"),
    [
        # 30 % of what was measured, half of what is recalled; the high end where it is further.
        ({"fructans": ("0.2", "", "analysed")}, "oligosaccharides", 200, 60),
        ({"fructans": ("0.2", "", "recalled")}, "oligosaccharides", 200, 100),
        ({"fructans": ("0.2", "0.5", "analysed")}, "oligosaccharides", 200, 300),
        ({"fructans": ("0.2", "0.21", "analysed")}, "oligosaccharides", 200, 60),
        # Of nothing found half the high end.
        ({"gos": ("0", "0.1", "recalled")}, "oligosaccharides", 0, 50),
        # Two components are measured apart: 300 and 400 make 500.
        ({"fructans": ("1", "1.3", "analysed"), "gos": ("1", "1.4", "analysed")}, "oligosaccharides", 2000, 500),
        # Fructose and glucose vary together: 8 % of the fructose; a high end goes before.
        ({"fructose": ("2", "", "analysed"), "glucose": ("1.8", "", "analysed")}, "excess_fructose", 200, 160),
        ({"fructose": ("2", "2.6", "analysed"), "glucose": ("1.8", "3", "analysed")}, "excess_fructose", 200, 600),
        ({"fructose": ("1", "", "analysed"), "glucose": ("2", "", "analysed")}, "excess_fructose", 0, 80),
    ],
)
def test_figures_by_hand(figures: dict[str, Any], group: Any, typical: int, error_mg: int) -> None:
    found = food_figures(rows(**figures))
    assert (found.typical[group], found.error[group]) == (typical, error_mg)
    cells = {
        ("invented", name): {"g_per_100g": str(row.g_per_100g), "high": str(row.high or ""), "basis": row.basis}
        for name, row in rows(**figures).items()
    }
    assert checked.typical_of(cells, "invented", group) * 1000 == typical
    assert float(checked.error_of(cells, "invented", group)) * 1000 == pytest.approx(error_mg)
    assert all(float(error(cells["invented", name])) == float(row.error_g) for name, row in rows(**figures).items())


def test_deviations_by_hand() -> None:
    """0.4 g in 100 g, 0.3 g of composition: by eye the root of 0.12 and 0.3 squared, weighed 0.3 and 2 g more."""
    use = load_of_group(invented(gos=("0.4", "0.7", "analysed")), "oligosaccharides", SURE)
    by_eye = math.ceil(math.sqrt(120**2 + 300**2))
    assert use.load(50) == 400 * 50
    assert use.deviation(50, False, SURE) == by_eye * 50
    assert use.deviation(50, True, SURE) == 300 * 50 + 400 * 2
    assert use.deviation(0, True, SURE) == 0


def test_at_most_takes_the_two_largest() -> None:
    assert at_most_of(100, [7, 50, 20, 30]) == 180
    assert at_most_of(100, [7]) == 107
    assert checked.Sum(100, {"a": 7, "b": 50, "c": 20}, {}).at_most([30]) == 180  # type: ignore[arg-type]


def test_lots_of_one_food_are_one_item_and_a_mixture_too(tables: Tables) -> None:
    tofu = load_profile_of(tables.food_by_id["tofu-firm"], tables)
    hummus = load_profile_of(tables.food_by_id["hummus-no-garlic"], tables)
    assert len(hummus.parts) > 2
    limits = profile_named("elimination", tables).at()
    items = [
        Item("tofu-firm", tofu, 50, False),
        Item("tofu-firm", tofu, 70, True),
        Item("hummus-no-garlic", hummus, 20, False),
    ]
    total = next(row.sum for row in rows_of(items, limits) if row.cap.key == "total")
    assert set(total.off) == {"tofu-firm", "hummus-no-garlic"}
    chickpeas = load_profile_of(tables.food_by_id["chickpeas-canned"], tables)
    within = [*items, Item("chickpeas-canned", chickpeas, 20, False)]
    alone = next(row.sum for row in rows_of(within, limits) if row.food == "chickpeas-canned")
    assert set(alone.off) == {"hummus-no-garlic", "chickpeas-canned"}  # its own cut-off counts what is in the mixture


def test_limits_hold_to_five_milligrams_and_by_eye_with_room(tables: Tables) -> None:
    """0.3 g of GOS in 100 g of an exactly known core food: 101 g weighed (0.303 g), 78 g by eye (0.234 + 30 %)."""
    known = LoadProfile((PartLoad("tofu-firm", "core", 1, food_figures(rows(gos=("0.3", "", "analysed")))),))
    limits = profile_named("elimination", tables).at()

    def most(weighed: bool) -> int:
        fitting = (
            grams
            for grams in range(200, 0, -1)
            if all(row.holds() for row in rows_of([Item("tofu-firm", known, grams, weighed)], limits))
        )
        return next(fitting)

    assert (most(True), most(False)) == (101, 78)
    assert float(TO_GRAMS) == 0.005


def test_weighed_is_never_worse_than_by_eye(tables: Tables) -> None:
    limits = profile_named("elimination", tables).at()
    for food in tables.foods[::5]:
        if not tables.unknown_of(food.id):
            limit = limit_of(food, limits, tables)
            if limit.grams_weighed is not None:
                assert limit.grams_eye is not None, food.id
                assert limit.grams_eye <= limit.grams_weighed, food.id


@pytest.mark.parametrize("profile", ["elimination", "careful", "very-careful", "roomy"])
def test_more_of_a_food_never_makes_a_plate_fit(profile: str, tables: Tables) -> None:
    limits = profile_named(profile, tables).at()
    for name in ("broccoli", "chickpeas-canned", "carrot", "mango"):
        load = load_profile_of(tables.food_by_id[name], tables)
        fits = [all(row.holds() for row in rows_of([Item(name, load, g, False)], limits)) for g in range(1, 400, 7)]
        assert fits == sorted(fits, reverse=True)


def test_a_limit_that_is_used_up_leaves_a_trace_and_counts_no_deviation(tables: Tables) -> None:
    cap = next(cap for cap in profile_named("elimination", tables).at().sitting_caps if cap.key == "oligosaccharides")
    left = room_after(cap, 300_000, [50_000, 90_000, 70_000])
    assert (left.likely, left.at_most, left.before) == (20_500, 50_500, (9_000, 7_000))
    gone = room_after(cap, 500_000, [10_000])
    assert (gone.likely, gone.at_most, gone.used_up) == (500, None, True)
    by_doubt = room_after(cap, 400_000, [200_000, 200_000])  # 0.8 g at most: nothing more may come at most
    assert by_doubt.used_up


def test_an_entry_of_before_is_read_as_likely_and_off(tables: Tables) -> None:
    old = {"cutoff_class": "core", "group": "oligosaccharides", "plan_ug": 200_000, "worst_ug": 260_000}
    entry = {"at": AT.isoformat(), "who": "me", "text": "beans", "food": "", "title": "beans", "grams": 40}
    eaten = Eaten.model_validate({**entry, "loads": [old]})
    assert (eaten.loads[0].likely_ug, eaten.loads[0].off_ug) == (200_000, 60_000)
    cap = next(cap for cap in profile_named("elimination", tables).at().sitting_caps if cap.key == "oligosaccharides")
    (room,) = rooms(still_counted([eaten], Stacking(at=AT)), cap)
    assert (room.likely, room.before) == (30_500, (6_000,))


def test_the_log_keeps_each_item_with_how_far_it_may_be_off(tables: Tables) -> None:
    tofu = tables.food_by_id["tofu-firm"]
    loads, unknown = loads_of([Portion(tofu, 100, 100, False), Portion(tofu, 50, 50, True, shared_by=2)], tables)
    assert not unknown
    one = next(load for load in loads if load.group == "oligosaccharides")
    use = load_of_group(load_profile_of(tofu, tables), "oligosaccharides", SURE)
    off = use.deviation(100, False, SURE) + Fraction(use.deviation(100, True, SURE), 2)
    assert (one.item, one.food) == ("tofu-firm", "tofu-firm")
    assert (one.likely_ug, one.off_ug) == (use.load(150) * 10, math.ceil(off * 10))


def test_a_range_is_as_far_off_as_its_end() -> None:
    assert SURE.for_range(100, 120).eye_percent == 30
    assert SURE.for_range(100, 150).eye_percent == 50


OLD_CAPS = "profile,scope,group,grams,applies_to,holds,source\n"


def test_caps_of_before_are_read(tmp_path: Path) -> None:
    (tmp_path / "caps.csv").write_text(
        f"{OLD_CAPS}mine,sitting,oligosaccharides,0.25,core,worst,common_practice\n"
        "elimination,sitting,total,0.4,,plan,common_practice\n",
        encoding="utf-8",
    )
    tables = load_tables(table_folders(tmp_path))
    (mine,) = profile_named("mine", tables).at("snack").sitting_caps
    assert (float(mine.typical_g), float(mine.at_most_g or 0), mine.key) == (0.25, 0.25, "oligosaccharides:core")
    folders = [shipped("ingredient_tables"), tmp_path]
    for sitting in ("dinner", "breakfast"):  # a row for all sittings takes the place of those for some
        total = [cap for cap in profile_named("elimination", tables).at(sitting).sitting_caps if cap.key == "total"]
        assert [(float(cap.typical_g), float(cap.at_most_g or 0)) for cap in total] == [(0.4, 0.64)]
        twice = [one for one in limits_of(folders, "elimination", sitting) if one.scope == "sitting"]
        assert [(float(one.typical), float(one.most or 0)) for one in twice if one.group == "total"] == [(0.4, 0.64)]
    assert [one.key for one in limits_of(folders, "mine", "snack")] == ["oligosaccharides:core"]


def test_wide_is_roomy(tables: Tables) -> None:
    assert profile_named("wide", tables).name == "roomy"


def test_load_takes_new_fields() -> None:
    kept = Load(item="a", food="a", cutoff_class="core", group="total", likely_ug=1, off_ug=2)
    assert Load.model_validate(kept.model_dump(mode="json")) == kept
