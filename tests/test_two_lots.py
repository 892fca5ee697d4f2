"""Two lots of one food in one dish: one thing to cut and to cook, whatever the plan or the shelf calls them."""

from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.compose.compose import best_dinners
from calmlarder.kitchen.equipment import Equipment
from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.timeline import told_twice
from calmlarder.kitchen.title import title_of
from calmlarder.kitchen.work import work_of
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.dishes_for_sittings import house_of
from calmlarder.plan.sittings_typed import read_sittings
from calmlarder.render.manner import PLAIN
from calmlarder.tables.book import Tables
from calmlarder.tui.dinner_view import _facts, amounts_of
from conftest import TODAY


def filled_twice(pattern: Pattern, tables: Tables) -> list[Filling]:
    """Each slot with two lots of one food that it takes, one for the scale and one judged by eye."""
    found: list[Filling] = []
    for name, slot in pattern.slots.items():
        food = next((one for one in tables.foods if slot.takes(one) and slot.minutes_for(one)), None)
        food = food or next((one for one in tables.foods if slot.takes(one)), None)
        if food is not None:
            lot = Filling(name, food, 60, "eye", "1/2", slot.prep_of(food) or "in slices", slot.minutes_for(food))
            found += [lot, lot._replace(grams=40, how="weigh")]
    return found


@pytest.mark.long
@pytest.mark.parametrize("every", [15])
def test_a_dish_with_each_food_twice_has_an_order(every: int, patterns: tuple[Pattern, ...], tables: Tables) -> None:
    """By hand: as many minutes at the board as for one lot of the sum, and one cook is never at two things.

    One dish in fifteen here, in tests/long each.
    """
    for pattern in patterns[::every]:
        twice = filled_twice(pattern, tables)
        once = [one._replace(grams=100) for one in twice[1::2]]
        assert [one.task.minutes for one in work_of(pattern, twice)] == [
            one.task.minutes for one in work_of(pattern, once)
        ]
        _, told = told_twice(pattern, twice)
        ends = {moment.start_min + moment.minutes for moment in told.moments}
        assert told.minutes == max(ends)
        for minute in range(told.minutes):
            assert sum(m.hands_on and m.start_min <= minute < m.start_min + m.minutes for m in told.moments) <= 1


def test_the_title_and_the_steps_name_it_once(patterns: tuple[Pattern, ...], tables: Tables) -> None:
    pattern = next(one for one in patterns if one.id == "stir-fry")
    twice = filled_twice(pattern, tables)
    once = [one._replace(grams=100) for one in twice[1::2]]
    assert title_of(pattern, twice) == title_of(pattern, once)
    (weighing, *steps), times = told_twice(pattern, twice)
    (_, *steps_once), times_once = told_twice(pattern, once)
    assert steps == steps_once
    assert [(one.start_min, one.minutes) for one in times.moments] == [
        (one.start_min, one.minutes) for one in times_once.moments
    ]
    # By hand: of two lots, 60 g by eye and 40 g for the scale, 40 g go on the scale.
    name = twice[0].food.name
    assert f"40 g of the {twice[0].short} (with the rest, unweighed, that is 100 g {name})" in weighing


@pytest.mark.parametrize("missing", ["oven", "wide pan"])
def test_a_plan_holds_no_dish_the_kitchen_has_nothing_for(
    missing: Any, lots_of: Callable[..., list[Lot]], wanting: Any, patterns: tuple[Pattern, ...], tables: Tables
) -> None:
    lots = lots_of(
        ["potatoes 1kg", "eggs x6", "carrots x6", "firm tofu 560g", "rapeseed oil", "soy sauce", "feta 200g"]
    )
    asked = read_sittings("tonight; tomorrow", TODAY, 1, None, None)
    bare = house_of(lots, asked, wanting(equipment=Equipment(missing=(missing,))), patterns, tables)
    full = house_of(lots, asked, wanting(), patterns, tables)
    wants = {one.id for one in patterns if any(missing in thing for thing in one.equipment)}
    assert wants & {column.problem.pattern.id for column in full.columns}
    assert not wants & {column.problem.pattern.id for column in bare.columns}


def test_a_pack_that_goes_in_whole_is_not_said_to_be_weighed_on_the_screen(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Any, wanting: Any
) -> None:
    lines = ["40g sweetcorn, use by today", "sweetcorn 60g, use by today", "cooked rice 300g, made today"]
    lots = lots_of([*lines, "soy sauce", "rapeseed oil", "lime x2", "ginger", "eggs x6"])
    (dinner, *_) = best_dinners(lots, wanting(), patterns, tables)[1]
    corn = [one for one in amounts_of(dinner, PLAIN) if "sweetcorn" in one.food]
    assert [(one.weighed, one.notes[0]) for one in corn] == [(False, "all of it"), (True, "weigh")]
    assert [line for line in dinner.weigh_first if "sweetcorn" in line] == [f"{corn[1].grams} g canned sweetcorn"]
    (first,) = [fact for fact in _facts(dinner) if fact.startswith("uses first")]
    assert first.count("sweetcorn") == 1
