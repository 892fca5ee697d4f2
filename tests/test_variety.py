"""What was had this week, and what was declined, is not proposed again soon; both fade by the days.

No published figure tells how soon a dish may come again: the week and the fortnight are ours.
"""

from datetime import date, datetime, timedelta
from typing import Any

import pytest

from calmlarder.compose.compose import best_dinners, compose
from calmlarder.compose.cooked import share_eaten
from calmlarder.compose.eats import eats_of
from calmlarder.compose.wishes.again import dish_cost
from calmlarder.history.variety import Declined, Had, declined_of, faded, had_of, kept_declined
from conftest import TODAY

FRIDGE = ["firm tofu 400g", "6 eggs", "dry basmati rice 1kg", "potatoes 1kg", "carrots x6", "courgette x2",
          "red pepper x2", "spinach 200g", "soy sauce", "ginger", "rapeseed oil", "cheddar 200g",
          "rice noodles 400g"]  # fmt: skip


def test_what_was_eaten_comes_not_first_the_next_evening_and_again_after_a_week(
    lots_of: Any, wanting: Any, patterns: Any, tables: Any
) -> None:
    lots, wanted = lots_of(FRIDGE), wanting(seconds=60)
    (first,) = compose(lots, wanted, patterns, tables).dinners
    entry = share_eaten(first, {}, datetime(2026, 3, 10, 18), tables)
    assert entry.pattern == first.pattern
    assert {"protein", "base"} & {role for food in entry.mains for role in tables.food_by_id[food].roles}
    had = had_of([entry], TODAY)
    (second,) = compose(lots, wanted.model_copy(update={"had": had}), patterns, tables).dinners
    assert second.pattern != first.pattern
    old = (had[0].model_copy(update={"on": TODAY - timedelta(days=7)}),)
    (later,) = compose(lots, wanted.model_copy(update={"had": old}), patterns, tables).dinners
    assert later.title == first.title
    assert had_of([entry], TODAY + timedelta(days=7)) == ()


def test_a_declined_dish_is_not_proposed_for_days_and_fades_in_a_fortnight(
    lots_of: Any, wanting: Any, patterns: Any, tables: Any
) -> None:
    lots, wanted = lots_of(FRIDGE), wanting(seconds=60)
    (first,) = compose(lots, wanted, patterns, tables).dinners
    for ago, comes in ((0, False), (3, False), (14, True)):
        declined = (Declined(pattern=first.pattern, on=TODAY - timedelta(days=ago)),)
        (now,) = compose(lots, wanted.model_copy(update={"declined": declined}), patterns, tables).dinners
        assert (now.pattern == first.pattern) is comes


def test_it_fades_day_by_day() -> None:
    assert [faded(70, TODAY - timedelta(days=ago), TODAY, 7) for ago in range(9)] == [70, 60, 50, 40, 30, 20, 10, 0, 0]


@pytest.mark.parametrize("kept", ["", "dal", "dal@", "dal@soon", "@2026-03-11", "dal@2026-02-25", "dal@2026-03-12"])
def test_what_was_kept_and_says_nothing_that_counts_today_is_let_go(kept: str) -> None:
    assert declined_of(kept, TODAY) == ()


def test_what_is_kept_is_read_again_and_the_last_day_of_a_dish_holds() -> None:
    one, other = Declined(pattern="dal", on=date(2026, 3, 1)), Declined(pattern="shepherd", on=TODAY)
    assert declined_of(kept_declined([one, other]), TODAY) == (one, other)
    told = Declined(pattern="stir-fry", on=TODAY - timedelta(days=99), title="Tofu, rice @ 5%, kept", for_good=True)
    assert declined_of(kept_declined([one, told]), TODAY) == (one, told)  # never is not forgotten
    assert told.name == "Tofu, rice @ 5%, kept (stir fry)"
    assert declined_of("dal@2026-03-01,dal@2026-03-09", TODAY) == (Declined(pattern="dal", on=date(2026, 3, 9)),)


def test_no_further_dinner_has_the_main_protein_the_base_and_the_vegetables_of_an_earlier_one(
    lots_of: Any, wanting: Any, patterns: Any, tables: Any
) -> None:
    found, dinners = best_dinners(lots_of(FRIDGE), wanting(seconds=120, count=4), patterns, tables)
    assert len(dinners) == 4
    eats = [eats_of(plan) for plan in found.plans]
    for number, plan in enumerate(found.plans):
        things = {use.option.offered.food.id: use for use in plan.uses}
        kinds = {use.option.offered.food.kind for use in plan.uses}
        for before in eats[:number]:
            grams = {food: use.grams for food, use in things.items()
                     if plan.problem.pattern.slots[use.option.slot].role == "vegetable"}  # fmt: skip
            new = sum(amount for food, amount in grams.items() if food not in before.vegetables)
            other_protein = before.protein not in things and before.protein not in kinds
            other_base = before.base not in kinds
            assert other_protein or other_base or 2 * new >= sum(grams.values()) > 0


def test_a_kind_of_dish_that_is_never_wanted_is_not_had_at_all(
    lots_of: Any, wanting: Any, patterns: Any, tables: Any
) -> None:
    lots, wanted = lots_of(FRIDGE), wanting(seconds=60)
    (first,) = compose(lots, wanted, patterns, tables).dinners
    only = [one for one in patterns if one.id == first.pattern]
    never = (Declined(pattern=first.pattern, on=TODAY - timedelta(days=99), for_good=True),)
    assert compose(lots, wanted.model_copy(update={"declined": never}), only, tables).dinners == ()


def test_a_dish_had_and_declined_costs_both(wanting: Any, patterns: Any, lots_of: Any, tables: Any) -> None:
    from calmlarder.compose.compose import pattern_problems

    had = Had(on=TODAY, pattern=patterns[0].id)
    declined = Declined(pattern=patterns[0].id, on=TODAY)

    def cost(**values: Any) -> int:
        wanted = wanting(sitting=patterns[0].sittings[0], **values)
        return dish_cost(pattern_problems(lots_of(FRIDGE), wanted, patterns[:1], tables)[0])

    both = cost(had=(had,), declined=(declined,))
    assert both == cost(had=(had,)) + cost(declined=(declined,))
    assert cost(had=(had,)) > 0
    assert cost() == 0
