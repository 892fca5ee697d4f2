"""Who eats tonight, and what of their dinner goes into boxes, by keys alone (Textual's pilot)."""

from collections.abc import Callable

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList

from calmlarder.household import people
from calmlarder.household.cooking import boxable
from calmlarder.render.portions_text import steps_of
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.who_eats import WhoEats
from calmlarder.tui.widgets.field import Field
from calmlarder.tui.widgets.pick import Pick
from programs import settled, shown, type_line

LINES = ("dry rice 1 kg", "carrots 500g", "eggs x8", "firm tofu 560g", "soy sauce")
"""Enough for three."""


async def open_tonight(app: LarderApp, pilot: Pilot[None]) -> TonightScreen:
    for line in LINES:
        await type_line(pilot, line)
    await pilot.press("f3")
    await settled(app, pilot)
    assert isinstance(app.screen, TonightScreen)
    return app.screen


def asked(app: LarderApp) -> str:
    return " ".join(shown(app, "#asked").split())


MINE = "my own portion: the others eat now"


def offered(app: LarderApp) -> list[str]:
    assert isinstance(app.screen, Choice)
    listed = app.screen.query_one(OptionList)
    return [str(listed.get_option_at_index(place).prompt) for place in range(listed.option_count)]


def test_the_portions_of_guests_go_into_boxes_and_the_others_are_logged(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_tonight(app, pilot)
        await pilot.press("f", "tab", "2", "ctrl+s")
        await settled(app, pilot)
        assert "dinner for you and 2 guests" in asked(app)
        await pilot.press("enter", "c")
        await pilot.pause()
        assert offered(app) == [
            "nothing: all 3 portions are eaten now", "1 of the 2 guests' portions: the rest is eaten now",
            "2 of the 2 guests' portions: the rest is eaten now", MINE,
        ]  # fmt: skip
        await pilot.press("down", "down", "enter")
        await settled(app, pilot)
        assert isinstance(app.screen, LarderScreen)
        (box,) = (one.lot for one in app._kitchen.lots() if one.lot.box is not None)
        assert box.box is not None
        assert box.grams == 2 * box.box.mixture.share_grams
        (logged,) = app._kitchen.eaten_since(app._kitchen.now())
        assert logged.who == "me"
        said = shown(app, "#meaning")
        assert "Logged as eaten for you. Boxed: 2 portions, good for " in said
        assert "Out of the larder: " in said
        # A third of it was eaten, two thirds are in boxes, but for the crumbs of whole grams.
        assert abs(box.grams / 2 - logged.grams) <= 1

    play(act)


@pytest.mark.long
def test_my_own_portion_is_boxed_and_not_logged(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        people.add(app._kitchen, "kit", {})
        await open_tonight(app, pilot)
        await pilot.press("f", "right", "space", "ctrl+s")
        await settled(app, pilot)
        await pilot.press("enter", "c")
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        assert offered(app) == ["nothing: all 2 portions are eaten now", MINE]
        await pilot.press(*"my", "enter")
        await settled(app, pilot)
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        (box,) = [one.lot for one in app._kitchen.lots() if one.lot.box is not None]
        (logged,) = app._kitchen.eaten_since(app._kitchen.now())
        assert logged.who == "kit"
        assert abs(box.grams - logged.grams) <= 1  # half of it each

    play(act)


@pytest.mark.long
def test_where_every_portion_is_somebodys_no_box_is_asked_for(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        people.add(app._kitchen, "kit", {"appetite": 1.4})
        await open_tonight(app, pilot)
        await pilot.press("f", "right", "space", "ctrl+s")
        await settled(app, pilot)
        assert "dinner for you and kit" in asked(app)
        await pilot.press("enter", "c")
        await pilot.pause()
        assert isinstance(app.screen, Choice)  # only whether it is cooked: the portions are not alike
        assert "Nothing is boxed" in app.screen._question
        await pilot.press("enter")
        await settled(app, pilot)
        assert isinstance(app.screen, LarderScreen)
        said = shown(app, "#meaning")
        assert "Logged as eaten for you and kit. Nothing is boxed: every portion is somebody's by name" in said
        assert "cook for one guest more" in said
        assert "--" not in said

    play(act)


def test_one_who_eats_alone_may_box_it(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app._kitchen.set("people", 2)
        await open_tonight(app, pilot)
        assert "dinner for 2" in asked(app)
        await pilot.press("f")
        await pilot.pause()
        assert app.screen.query_one("#names", Pick).chosen == ("you", "1 more of the home")
        besides = app.screen.query_one("#guests").query_ancestor(Field)
        assert "you and 1 more of the home eat; guests besides: 0 to 11" in besides._takes
        await pilot.press("right", "space")
        await pilot.pause()
        assert besides._takes == "you eat; guests besides: 0 to 11"
        await pilot.press("ctrl+s")
        await settled(app, pilot)
        assert "dinner for 1" in asked(app)
        await pilot.press("enter", "c")
        await pilot.pause()
        assert offered(app) == [
            "nothing: all of it is eaten now", "all of it: nothing is eaten now, and nothing logged",
            "half of it: the other half is eaten now",
        ]  # fmt: skip
        await pilot.press("down", "enter")
        await settled(app, pilot)
        assert any(one.lot.box is not None for one in app._kitchen.lots())

    play(act)


def test_who_eats_begins_with_as_many_as_the_dinner_is_for(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        people.add(app._kitchen, "kit", {"avoid": ("milk",)})
        await open_tonight(app, pilot)
        await pilot.press("plus", "plus")
        await settled(app, pilot)
        assert "dinner for 3, all as you eat" in asked(app)
        await pilot.press("f")
        await pilot.pause()
        assert isinstance(app.screen, WhoEats)
        assert app.screen.query_one("#names", Pick).chosen == ("you", "kit")
        assert app.screen.query_one("#guests", Input).value == "1"
        await pilot.press("ctrl+s")  # whoever is ticked is at the table, with what they avoid
        await settled(app, pilot)
        assert "dinner for you, kit and 1 guest" in asked(app)
        assert "no milk" in asked(app)

    play(act)


def test_what_is_left_out_tonight_leaves_nobody_out(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app._kitchen.set("people", 3)
        screen = await open_tonight(app, pilot)
        await pilot.press("f")
        await pilot.pause()
        app.screen.query_one("#avoid", Pick).choose("milk")
        await pilot.press("ctrl+s")
        await settled(app, pilot)
        assert "dinner for 3" in asked(app)
        assert "no milk" in asked(app)
        assert "tonight only" in asked(app)
        assert screen._dinner is not None
        assert screen._dinner.people == 3

    play(act)


def test_rice_on_its_last_day_is_warmed_tonight_and_nothing_of_it_is_kept(play: Callable[..., LarderApp]) -> None:
    """UK Food Standards Agency: keep cooked rice no more than a day, and reheat it only once."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("cooked rice 250g, made yesterday", "eggs x6", "carrots 200g", "soy sauce"):
            await type_line(pilot, line)
        await pilot.press("f3")
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        await pilot.press("u", "enter")
        await settled(app, pilot)
        dinner = screen._dinner
        assert dinner is not None
        assert any(use.food == "rice-white-cooked" and use.days_left == 0 for use in dinner.uses)
        may = boxable(app._kitchen, dinner)
        assert (may.most, may.halves) == (0, False)
        assert "Cooked white rice: today is its last day, so keep nothing" in " ".join(dinner.cautions)
        assert "keep it no more than a day" not in " ".join(dinner.cautions)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, CookScreen)
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("enter")  # it is asked all the same whether it is cooked
        await settled(app, pilot)
        assert isinstance(app.screen, LarderScreen)
        assert "Nothing is boxed" in shown(app, "#meaning")
        assert all(one.lot.box is None for one in app._kitchen.lots())

    play(act)


def test_the_page_says_how_a_dish_is_shared_by_appetite(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        people.add(app._kitchen, "kit", {"appetite": 1.5})
        screen = await open_tonight(app, pilot)
        assert "shared by appetite" not in shown(app, "#dinner")
        await pilot.press("f", "right", "space", "ctrl+s")
        await settled(app, pilot)
        assert screen._dinner is not None
        # 1 and 1.5 of 2.5
        assert "shared by appetite: you 40 %, kit 60 %" in " ".join(shown(app, "#dinner").split())
        assert steps_of(screen._dinner)[-1].startswith("Shared by appetite: you 40 %, kit 60 % of what is cooked")

    play(act)
