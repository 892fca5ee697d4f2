"""What a new user stumbled over in the larder and the plan, by keys alone (Textual's pilot)."""

from collections.abc import Callable
from datetime import datetime
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList

from calmlarder.compose.compose import compose
from calmlarder.household.booking import Ending, end
from calmlarder.household.figures import figures_of
from calmlarder.household.household import Household
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.planned import SittingPlanned
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.help_screen import HelpScreen
from calmlarder.tui.larder_questions import PartialUse
from calmlarder.tui.page import Page
from calmlarder.tui.person_form import PersonForm
from calmlarder.tui.plan_view import box_words
from calmlarder.tui.planned_dinner import InPlan, PlannedDinner
from calmlarder.tui.widgets.item_list import ItemList
from programs import settled, shown, type_line


def items(app: LarderApp) -> list[tuple[str, float]]:
    return [(one.lot.food, one.lot.grams) for one in app._kitchen.lots()]


def test_a_question_takes_a_food_that_is_none_of_its_choices(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "chocolate 200g")  # dark, milk or white
        await pilot.press("down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        assert app.screen.query_one("#other", Input).placeholder == "or type the name of another food"
        await pilot.press(*"carrots", "enter")
        await settled(app, pilot)
        assert items(app) == [("carrot", 200.0)]

    play(act)


@pytest.mark.parametrize("begun", ["", "ate "])
def test_a_warning_sign_in_the_larder_line_is_answered(play: Callable[..., LarderApp], begun: str) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.screen.query_one("#line", Input).value = f"{begun}blood in my stool"
        await pilot.pause()
        assert "Enter says what to do" in shown(app, "#meaning")
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Page)
        told = " ".join(shown(app, "Hanging").split())
        assert "Please see a doctor about it soon" in told
        assert "feel 4 blood in my stool" in told
        await pilot.press("escape")
        await pilot.pause()
        assert items(app) == []
        assert not app._kitchen.to_answer()

    play(act)


def test_an_amount_that_cannot_be_keeps_the_line(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 150g")
        await pilot.press("f10")
        await pilot.pause()
        assert isinstance(app.screen, PartialUse)
        typed = app.screen.query_one(Input)
        await pilot.press(*"half thrown", "enter")
        await pilot.pause()
        assert typed.has_focus
        typed.value = "half"
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen.query_one(OptionList).has_focus

    play(act)


def test_the_rest_of_a_mouldy_tin_goes_too_and_of_carrots_it_stays(play: Callable[..., LarderApp]) -> None:
    """USDA FSIS, Molds on Food (recalled): what is soft or in a jar goes whole."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "half tin chickpeas opened yesterday")
        await pilot.press("f10", *"30 g", "enter", "down", "enter")
        await pilot.pause()
        await pilot.press("m")
        await pilot.pause()
        assert "all of canned chickpeas" in shown(app, "#meaning")
        assert "no longer safe" in shown(app, "#meaning")
        assert items(app) == []
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert "Ctrl+Y does it again" in shown(app, "#meaning")
        assert len(items(app)) == 1
        await type_line(pilot, "carrots 500g")
        (carrots,) = (one for one in app._kitchen.lots() if one.lot.food == "carrot")
        end(app._kitchen, [carrots], Ending("thrown", "mouldy", 100))
        assert ("carrot", 400.0) in items(app)

    play(act)


def test_of_a_line_with_two_things_the_one_that_goes_is_named(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "spring onions, bit wilted")
        names = [app._kitchen.name_of(food) for food, _ in items(app)]
        assert len(names) == 2
        await pilot.press("f6")
        await pilot.pause()
        listed = app.screen.query_one(OptionList)
        words = [str(listed.get_option_at_index(place).prompt) for place in range(listed.option_count)]
        assert any(one.endswith("not thrown: given away") for one in words)
        await pilot.press("p")
        await pilot.pause()
        (left,) = items(app)
        gone = next(name for name in names if name != app._kitchen.name_of(left[0]))
        assert shown(app, "#meaning").startswith(f"thrown away: {gone} (")

    play(act)


def test_what_is_frozen_shows_no_days_that_do_not_run(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "soft courgette 460g, use by tomorrow")
        await pilot.press("f7")
        await pilot.pause()
        (item,) = app.screen.query_one(ItemList).items
        assert "day" not in item.days
        assert "soft" not in item.notes

    play(act)


def test_a_meal_out_of_a_box_says_so_and_has_nothing_to_cook(
    play: Callable[..., LarderApp], lots_of: Callable[..., Any], wanting: Callable[..., Any], tables: Tables,
    patterns: tuple[Pattern, ...],
) -> None:  # fmt: skip
    wanted = wanting(people=2)
    lots = lots_of(["dry rice 1 kg", "carrots 500g", "firm tofu 560g", "soy sauce"])
    dinner = compose(lots, wanted, patterns, tables).dinners[0]
    friday = SittingPlanned(at=datetime(2026, 3, 13, 18), sitting="dinner", people=1, dinner=dinner, boxed_for=1)
    lunch = SittingPlanned(
        at=datetime(2026, 3, 14, 12), sitting="packed", people=1, dinner=dinner, leftover_of=0, warmed=True
    )
    assert box_words(friday, [friday, lunch]) == ""
    how = box_words(lunch, [friday, lunch])
    assert how.startswith("Nothing to cook: this is the box of Friday's dinner. Warm it until it steams")

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        assert isinstance(app._kitchen, Household)
        screen = PlannedDinner(app._kitchen, "packed lunch, Sat 14 Mar 12:00", dinner, wanted, InPlan(box=how))
        app.push_screen(screen)
        await pilot.pause()
        words = screen.query_one(DinnerView).content
        assert "Nothing to cook: this is the box of Friday's dinner" in " ".join(words.split())
        assert "In this order" not in words
        assert "for 2" not in words
        assert not screen.check_action("cook", ())
        rice = next(use for use in dinner.uses if "rice" in use.food)
        assert f"{round(rice.grams / 2)} g  {rice.name}" in words

    play(act)


def test_nobody_is_asked_for_what_the_diet_leaves_out_and_onion_is_named(
    lots_of: Callable[..., Any], wanting: Callable[..., Any], tables: Tables, patterns: tuple[Pattern, ...]
) -> None:
    lots = lots_of(["salami 100g (jonas's)", "brown onion x2", "dry rice 500g", "eggs x6", "carrots 300g", "soy sauce"])
    found = compose(lots, wanting(diet="vegetarian"), patterns, tables)
    told = {one.line: one.why for one in found.excluded}
    assert told["salami 100g (jonas's)"].startswith(
        "not vegetarian: salami, pepperoni and cured sausage, and it belongs to jonas"
    )
    assert "passes the limit on fructans + GOS" in told["brown onion x2"]
    assert compose(lots, wanting(), patterns, tables).excluded[0].why.startswith("it belongs to jonas: ask first")


def test_help_opens_over_a_form(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f2", "enter")
        await pilot.pause()
        assert isinstance(app.screen, PersonForm)
        await pilot.press("f1")
        await pilot.pause()
        assert isinstance(app.screen, HelpScreen)
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, PersonForm)

    play(act)


def test_figures_of_a_food_name_no_row_of_a_table(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "tin of chickpeas")
        told = figures_of(app._kitchen, app._kitchen.lots()[0].lot.food)
        assert [part for part in ("id chickpeas", "cut-off class", "raw 0 min") if part in told] == []
        assert "from " in told

    play(act)
