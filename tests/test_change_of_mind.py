"""Tonight's dinner asked for otherwise, and back again: for whom, without what; nothing of it outlasts the evening."""

from collections.abc import Callable

import pytest
from textual import events
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from calmlarder.household import people
from calmlarder.patterns.asked_dish import dish_named
from calmlarder.patterns.kinds import shipped_kinds
from calmlarder.patterns.load import shipped_patterns
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.who_eats import WhoEats
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.pick import Pick
from calmlarder.tui.widgets.said import Said
from programs import settled, shown, type_line, until

LINES = ("firm tofu 280g, use by today", "eggs x6", "cooked rice 600g, made today", "spinach 200g", "carrots 400g",
         "rapeseed oil", "soy sauce")  # fmt: skip


def asked(app: LarderApp) -> str:
    return str(app.screen.query_one("#asked", Static).content)


def amounts(app: LarderApp) -> str:
    return "\n".join(line for line in shown(app, "#dinner").splitlines() if " g  " in line)


def listed(app: LarderApp) -> list[str]:
    """What the list of all keys finds."""
    return [one.hit.text or "" for one in app.screen.query_one(OptionList).options]  # type: ignore[attr-defined]


async def open_tonight(app: LarderApp, pilot: Pilot[None]) -> None:
    for line in LINES:
        await type_line(pilot, line)
    await pilot.press("f3")
    await pilot.pause()
    await settled(app, pilot)
    assert isinstance(app.screen, TonightScreen)


@pytest.mark.long
def test_who_eats_is_asked_and_taken_back(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        people.add(app._kitchen, "kit", {"diet": "vegan", "avoid": ("peanuts",)})
        await open_tonight(app, pilot)
        await pilot.press("f")
        await pilot.pause()
        assert isinstance(app.screen, WhoEats)
        assert app.screen.query_one(Pick).chosen == ("you",)
        await pilot.press("right", "space")
        app.screen.query_one("#guests", Input).value = "1"
        await pilot.press("ctrl+s")
        await pilot.pause()
        await settled(app, pilot)
        assert "dinner for you, kit and 1 guest" in asked(app)
        assert "vegan · no peanuts · limits: elimination" in asked(app)
        assert app.screen._wanted is not None
        assert [(one.who, one.diet, one.is_guest) for one in app.screen._wanted.table] == [
            ("me", "omnivore", False), ("kit", "vegan", False), ("guest", "omnivore", True),
        ]  # fmt: skip
        await pilot.press("minus")
        await settled(app, pilot)
        assert "dinner for you and kit" in asked(app)
        await pilot.press("ctrl+z", "ctrl+z")
        await settled(app, pilot)
        assert "dinner for 1" in asked(app)
        assert "tonight only" not in asked(app)

    play(act)


def test_a_soup_is_asked_for_found_by_its_words_and_forgotten(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_tonight(app, pilot)
        for word in ("soup", "dish", "salad", "omelette"):
            await pilot.press("ctrl+p")
            await pilot.pause()
            app.screen.query_one(Input).value = word
            await until(pilot, lambda: any("A kind of dish" in words for words in listed(app)))
            await pilot.press("escape")
            await pilot.pause()
        await pilot.press("k")
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        await pilot.press(*"something soupy", "enter")
        await pilot.pause()
        assert "`something soupy` is no kind of dish here" in str(app.screen.query("Static").first(Static).content)
        await pilot.press(*"sou", "enter")  # the first letters are enough where they begin one name
        await pilot.pause()
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        assert "tonight only: a soup" in asked(app)
        assert screen._composed is not None
        assert screen._composed.dinners
        dish = dish_named("soup", shipped_patterns(), shipped_kinds())
        assert {dinner.pattern for dinner in screen._composed.dinners} <= set(dish.patterns)
        await pilot.press("k")
        await pilot.pause()
        await pilot.press(*"pie", "enter")  # no mince, no fish: none is possible, and what else there is stands there
        await pilot.pause()
        await settled(app, pilot)
        words = shown(app, "#dinner")
        assert "No pie within the limits" in words
        assert "What else there is, without that wish" in words
        assert "k another dish than a pie, or any" in words
        await pilot.press("r")
        await settled(app, pilot)
        assert "tonight only" not in asked(app)
        assert "On the plates" in shown(app, "#dinner")

    play(act)


@pytest.mark.long
def test_what_was_asked_for_tonight_ends_with_the_dinner_that_was_cooked(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app._kitchen.set("avoid", "peanuts")
        await open_tonight(app, pilot)
        assert "omnivore · no peanuts · limits: elimination" in asked(app)
        await pilot.press("plus")
        await settled(app, pilot)
        assert "dinner for 2" in asked(app)
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("enter")
        await settled(app, pilot)
        assert isinstance(app.screen, LarderScreen)
        await pilot.press("f3")
        await settled(app, pilot)
        assert "dinner for 1" in asked(app)

    play(act)


def test_nobody_at_the_table_is_said_and_asked_again(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_tonight(app, pilot)
        await pilot.press("f", "space", "ctrl+s")
        await pilot.pause()
        assert isinstance(app.screen, WhoEats)
        assert any("tick somebody" in str(one.content) for one in app.screen.query(".takes").results(Static))
        await pilot.press("escape")
        await pilot.pause()
        assert "dinner for 1" in asked(app)

    play(act)


def test_a_dish_that_is_not_wanted_is_told_listed_and_taken_back(play: Callable[..., LarderApp]) -> None:
    """What was passed over with n before it does not come again for it; never is never, and both are undone."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_tonight(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        first = screen._dinner
        await pilot.press("n")
        await settled(app, pilot)
        second = screen._dinner
        assert first is not None
        assert second is not None
        await pilot.press("x", "end", "up", "enter")
        await settled(app, pilot)
        said = " ".join(str(one.content) for one in screen.query(Said))
        kind = second.pattern.replace("-", " ")
        assert said.startswith(f"until Wed 25 Mar no {kind} ({second.title}): Ctrl+Z takes it back")
        third = screen._dinner
        assert third is None or (third.pattern != second.pattern and third.title != first.title)
        await pilot.press("escape", "f2")
        await pilot.pause()
        assert app.screen.query_one("#declined", Pick).chosen == (f"{second.title} ({kind}), until Wed 25 Mar",)
        await pilot.press("escape", "ctrl+z")
        await pilot.pause()
        assert shown(app, "#meaning").startswith(f"undone: for 14 days no {kind}")
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("x", "end", "enter")
        await settled(app, pilot)
        assert isinstance(app.screen, TonightScreen)
        assert app._kitchen.settled().declined_on(app._kitchen.today)[0].for_good
        composed = app.screen._composed
        assert composed is not None
        assert first.pattern not in {one.pattern for one in composed.dinners}
        await pilot.press("ctrl+z")
        await settled(app, pilot)
        assert app._kitchen.settled().declined_on(app._kitchen.today) == ()
        assert app.screen._dinner is not None
        assert app.screen._dinner.title == first.title

    play(act)


def test_a_food_left_out_comes_back(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_tonight(app, pilot)
        before = amounts(app)
        await pilot.press("x", "enter")
        await pilot.pause()
        await settled(app, pilot)
        assert "without" in asked(app)
        assert amounts(app) != before
        await pilot.press("ctrl+z")
        await settled(app, pilot)
        assert "without" not in asked(app)
        assert amounts(app) == before

    play(act)


def test_what_is_typed_while_the_list_is_walked_keeps_its_spaces(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 150g")
        await pilot.press("down")
        await pilot.pause()
        items = app.screen.query_one(ItemList)
        assert items.has_focus
        for character in "2 red":  # all of it before the line has the focus
            items.post_message(events.Key("space" if character == " " else character, character))
        await pilot.pause()
        assert app.screen.query_one("#line", Input).value == "2 red"

    play(act)


def test_the_bar_stands_on_what_was_typed_last_and_then_on_what_goes_first(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 150g, use by today")
        await type_line(pilot, "dry rice 1 kg")
        items = app.screen.query_one(ItemList)
        names = {item.id: item.name for item in items.items}
        assert names[items.chosen or ""] == "dry white rice"
        await pilot.press("f2", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert names[items.chosen or ""] == "kale"

    play(act)


def test_a_key_for_a_lot_on_a_line_that_waits_says_what_it_waits_for(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 150g")
        await type_line(pilot, "meat")  # which one is asked, and it waits on top with the bar
        for key in ("f5", "f6", "f7", "f10"):
            await pilot.press(key)
            await pilot.pause()
            assert isinstance(app.screen, LarderScreen)
            assert "waits to be answered" in shown(app, "#meaning")
        assert len(app._kitchen.lots()) == 1

    play(act)


@pytest.mark.long
def test_letters_of_no_food_leave_nothing_out_and_undo_outlasts_a_look_at_the_larder(
    play: Callable[..., LarderApp],
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_tonight(app, pilot)
        before = asked(app)
        await pilot.press("x", *"aub", "enter")
        await pilot.pause()
        assert "no food of that name in this dish" in str(app.screen.query_one("#ask-empty", Static).content)
        await pilot.press("escape")
        await pilot.pause()
        assert asked(app) == before
        await pilot.press("x", *"spin", "enter")
        await pilot.pause()
        await settled(app, pilot)
        assert "without spinach" in asked(app)
        await pilot.press("escape", "f3")
        await pilot.pause()
        await settled(app, pilot)
        assert "without spinach" in asked(app)
        assert "r starts over" in asked(app)
        await pilot.press("ctrl+z")
        await pilot.pause()
        await settled(app, pilot)
        await pilot.press("f", "ctrl+s")
        await pilot.pause()
        await settled(app, pilot)
        assert "without" not in asked(app)

    play(act)


def test_the_full_stop_says_which_dinner_stays(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_tonight(app, pilot)
        await pilot.press("full_stop")
        await pilot.pause()
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        assert screen._dinner is not None
        assert str(screen.query_one(Said).content) == f"the dinner stays {screen._dinner.title}: Enter cooks it"
        await pilot.press("plus", "full_stop")  # while it is looked for
        await settled(app, pilot)
        said = str(screen.query_one(Said).content)
        found = screen._dinner  # none yet where the machine is busy
        stays = "" if found is None else f"the dinner stays {found.title}: Enter cooks it"
        assert said in {stays, "no dinner was found yet: r looks again"}

    play(act)
