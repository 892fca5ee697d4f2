"""What a plan takes past a last day: frozen today and thawed then, and that is said; or not planned for that day.

Freeze by the last day, thaw in the fridge, eat within a day: UK Food Standards Agency (recalled).
"""

import copy
import json
from collections.abc import Callable, Sequence
from datetime import timedelta
from typing import Any

import pytest

from calmlarder.checks.plan import verify_plan
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.stacking import Stacking
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.plan_days import Asked, How, plan_days
from calmlarder.plan.planned import Planned
from calmlarder.plan.shelf import shelves_of
from calmlarder.plan.sittings_typed import read_sittings
from calmlarder.render.dinner_json import plan_object
from calmlarder.render.plan_text import plan_text
from calmlarder.render.style import Style
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from conftest import TODAY

KEEPS = ("firm tofu 900g, use by 2026-03-30", "dry basmati rice 1kg", "rapeseed oil", "soy sauce", "ginger")
OF_TOFU_AND_RICE = {"rice-bowl", "skillet", "stir-fry", "tofu-pot", "wok-plate", "grain-bowl"}  # what the larders hold

Case = tuple[Planned, dict[str, Any], dict[str, Any], list[dict[str, Any]]]
Planning = Callable[[Sequence[str], str], Case]


@pytest.fixture
def planning(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[..., list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> Planning:
    def planned(lines: Sequence[str], text: str) -> Case:
        asked = read_sittings(text, TODAY, 1, None, None)
        wanted, lots = wanting(stacking=Stacking(at=asked[0].at, who=())), lots_of(lines)
        few = [one for one in patterns if one.id in OF_TOFU_AND_RICE]
        how = How(seconds=60.0, rounds=0, bound=False, most_to_buy=0)
        plan = plan_days(Asked(lots, asked, wanted, few, tables), how)
        told = json.loads(json.dumps(plan_object(plan, asked)))
        request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
        return plan, told, request, [lot.model_dump(mode="json") for lot in lots]

    return planned


def faults(case: Case) -> tuple[str, ...]:
    return verify_plan(*case[1:], [shipped("ingredient_tables")], shipped("recipes"))


def taken(case: Case, food: str) -> int:
    """Grams of a food in all dishes."""
    dinners = [one["dinner"] for one in case[1]["sittings"] if one["dinner"] and one["leftover_of"] is None]
    return sum(use["grams"] for dinner in dinners for use in dinner["uses"] if use["food"] == food)


def test_what_is_used_past_its_last_day_is_frozen_today_and_thawed_then(planning: Planning, tables: Tables) -> None:
    """Courgettes that are soft have tomorrow as their last day."""
    case = planning([*KEEPS, "courgette x3, soft"], "fri")
    plan = case[0]
    grams = taken(case, "courgette")
    assert grams > 0
    assert faults(case) == ()
    (frozen,) = [one for one in plan.freeze_today if one.food == "courgette"]
    assert frozen.grams == pytest.approx(sum(lot["grams"] for lot in case[3] if lot["food"] == "courgette"))
    dinner = plan.sittings[0].dinner
    assert dinner is not None
    assert not any("past its best" in caution for caution in dinner.cautions)
    text = " ".join(plan_text(plan, tables, Style(False, False, 80)).split())
    assert f"Out of the freezer: {grams} g courgette" in text
    assert f"{grams} g of it for Friday's dinner" in text


def test_what_does_not_freeze_is_not_planned_past_its_last_day(planning: Planning) -> None:
    """Cucumber turns watery: keeping.csv."""
    lines = [*KEEPS, "carrots 500g", "cucumber 400g, best before tomorrow", "yoghurt 400g, best before tomorrow"]
    case = planning(lines, "fri; sat")
    assert faults(case) == ()
    assert taken(case, "cucumber") == 0
    assert all(one.dinner for one in case[0].sittings)


def test_an_estimate_of_fresh_food_counts_and_a_best_before_of_dry_goods_does_not(
    tables: Tables, lots_of: Callable[..., list[Lot]]
) -> None:
    lots = lots_of(
        ["dry basmati rice 1kg, best before tomorrow", "kale 300g, bought 2026-03-05", "bread, bought today"]
    )
    rice, kale, bread = shelves_of(lots, TODAY, False, tables)
    assert kale.day is not None
    assert bread.day is not None
    for shelf, late in (
        (rice, TODAY + timedelta(days=2)),
        *((one, one.day + timedelta(days=1)) for one in (kale, bread)),
    ):
        assert shelf.usable(late, TODAY) == (shelf is rice)
        assert shelf.thawed(late, TODAY) == (shelf is not rice)


def test_what_is_past_its_day_is_for_today(tables: Tables, lots_of: Callable[..., list[Lot]]) -> None:
    (yoghurt,) = shelves_of(lots_of(["yoghurt 400g, best before yesterday"]), TODAY, False, tables)
    assert yoghurt.usable(TODAY, TODAY)
    tomorrow = TODAY + timedelta(days=1)
    assert not yoghurt.usable(tomorrow, TODAY)
    assert not yoghurt.thawed(tomorrow, TODAY)


def not_said(told: dict[str, Any], *_: Any) -> None:
    told["sittings"][0]["from_freezer"] = []


def not_frozen(told: dict[str, Any], *_: Any) -> None:
    told["freeze_today"] = []


def too_little_frozen(told: dict[str, Any], *_: Any) -> None:
    for one in told["freeze_today"]:
        one["grams"] = 10


def past_already(told: dict[str, Any], request: dict[str, Any], lots: list[dict[str, Any]]) -> None:
    """What is past its day is not frozen any more."""
    for lot in lots:
        if lot["food"] == "courgette":
            lot["dates"].append(
                {"kind": "best-before", "on": (TODAY - timedelta(days=1)).isoformat(), "assumed": False}
            )


@pytest.mark.parametrize("spoil", [not_said, not_frozen, too_little_frozen, past_already])
def test_the_check_finds_what_is_eaten_past_its_last_day(spoil: Callable[..., None], planning: Planning) -> None:
    case = planning([*KEEPS, "courgette x3, soft"], "fri")
    assert faults(case) == ()
    spoilt = copy.deepcopy(case)
    spoil(*spoilt[1:])
    assert any("courgette" in fault and ("freez" in fault or "frozen" in fault or "past" in fault)
               for fault in faults(spoilt))  # fmt: skip
