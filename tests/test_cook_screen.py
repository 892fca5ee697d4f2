"""The scale and the boxes of the Cook screen, by keys alone (Textual's pilot)."""

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from calmlarder.tui.app import LarderApp
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.stove import Weights
from test_screens import foods, solved, type_line


async def _cook_the_demo(app: LarderApp, pilot: Pilot[None]) -> None:
    await pilot.press("f8", "f3")
    await solved(app, pilot)
    await pilot.press("enter")
    await pilot.pause()
    assert isinstance(app.screen, CookScreen)


async def _cook_what_keeps(app: LarderApp, pilot: Pilot[None]) -> None:
    """Of the demo larder comes rice on its last day, of which nothing is boxed."""
    for line in ("dry rice 1 kg", "carrots 500g", "eggs x8", "firm tofu 560g", "soy sauce"):
        await type_line(pilot, line)
    await pilot.press("f3")
    await solved(app, pilot)
    await pilot.press("enter")
    await pilot.pause()
    assert isinstance(app.screen, CookScreen)


def test_where_nothing_is_boxed_the_last_step_is_asked_too(play: Callable[..., LarderApp]) -> None:
    """Cooked food on its last day is not kept: `c` alone takes nothing out, and the Enter after it answers that."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_the_demo(app, pilot)
        cook, before = app.screen, foods_kept(app)
        await pilot.press("c", "down", "enter")
        await pilot.pause()
        assert app.screen is cook
        assert foods_kept(app) == before
        await pilot.press("c", "enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert foods_kept(app) != before
        assert "Nothing is boxed: " in str(app.screen.query_one("#meaning", Static).content)

    play(act)


def foods_kept(app: LarderApp) -> list[tuple[str, float]]:
    return [(one.lot.id, one.lot.grams) for one in app._kitchen.lots()]


def test_the_scale_takes_numbers_at_once_and_names_the_cap(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "ate 45 g tinned chickpeas")  # on top of that something must be weighed
        await _cook_the_demo(app, pilot)
        await pilot.press("w")
        await pilot.pause()
        assert isinstance(app.screen, Weights)
        await pilot.press(*"900", "enter")  # no Tab before it
        await pilot.pause()
        said = str(app.screen.query_one("#scale", Static).content)
        assert said.startswith("fructans + GOS: ")
        assert "leave out" in said
        await pilot.press("w")
        await pilot.pause()
        await pilot.press("0", "enter")  # nothing was weighed: what was said before holds
        await pilot.pause()
        assert str(app.screen.query_one("#scale", Static).content) == said

    play(act)


def test_what_is_boxed_whole_is_not_said_to_be_logged(play: Callable[..., LarderApp]) -> None:
    told: list[str] = []

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_what_keeps(app, pilot)
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        told.append(str(app.screen.query_one("#meaning", Static).content))

    play(act)
    (words,) = told
    assert "Nothing is logged until the box is eaten. Boxed: 1 portion, good for 1 day in the fridge" in words
    assert "Ctrl+Z undoes all of it" in words


def test_a_box_is_eaten_by_the_line(play: Callable[..., LarderApp], tmp_path: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_what_keeps(app, pilot)
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("down", "enter")
        await pilot.pause()
        (box,) = (food for food in foods(app) if "(boxed)" in food)
        app.screen.query_one(Input).value = f"ate boxed {box.removesuffix(' (boxed)')}"
        await pilot.pause()
        assert str(app.screen.query_one("#meaning", Static).content).startswith("eaten: ")
        await pilot.press("enter")
        await pilot.pause()
        assert box not in foods(app)
        assert str(app.screen.query_one("#meaning", Static).content).startswith("logged: ")
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert box in foods(app)

    play(act)


def test_what_nobody_may_eat_is_not_offered_to_be_used(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3", "u")
        await pilot.pause()
        offered = app.screen.query_one(OptionList)
        names = {str(offered.get_option_at_index(place).prompt) for place in range(offered.option_count)}
        assert "spinach" in names
        assert not {"chicken thighs", "eggs"} & names  # past the use-by day; somebody else's

    play(act)


def test_half_of_a_dinner_for_one_is_boxed_and_the_other_half_logged(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_what_keeps(app, pilot)
        assert isinstance(app.screen, CookScreen)
        grams = sum(use.grams for use in app.screen._dinner.uses)
        before = len(app._kitchen.eaten_since(app._kitchen.now() - timedelta(days=1)))
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("down", "down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        said = str(app.screen.query_one("#meaning", Static).content)
        assert "Logged as eaten: half of it, for you. Boxed: half of it" in said
        box = next(one.lot for one in app._kitchen.lots() if one.lot.box is not None)
        assert box.grams == grams // 2
        entries = app._kitchen.eaten_since(app._kitchen.now() - timedelta(days=1))
        assert len(entries) == before + 1
        assert (entries[-1].who, entries[-1].grams) == ("me", grams / 2)
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert all(one.lot.box is None for one in app._kitchen.lots())

    play(act)
