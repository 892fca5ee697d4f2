"""The first start: one page, by keys and by mouse, with nothing swallowed (Textual's pilot)."""

import asyncio
from collections.abc import Awaitable, Callable
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Button, Input, Static

from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import ALLERGENS
from calmlarder.tui.app import LarderApp
from calmlarder.tui.first_start import FirstStart
from calmlarder.tui.help_screen import Parts
from calmlarder.tui.key_bar import keys_of
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.widgets.field import Field
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.pick import Pick
from how_much import some
from programs import SIZES, TODAY


def begin(
    home: Path, tables: Tables, act: Callable[[LarderApp, Pilot[None]], Awaitable[None]], size: tuple[int, int]
) -> None:
    async def scene() -> None:
        app = LarderApp(home, tables, TODAY)
        async with app.run_test(size=size) as pilot:
            await pilot.pause()
            assert isinstance(app.screen, FirstStart)
            await act(app, pilot)
        assert not app.faults

    asyncio.run(scene())


def takes(app: LarderApp, name: str) -> str:
    field = next(one for one in app.screen.query_one(f"#{name}").ancestors if isinstance(one, Field))
    return str(field.query_one(".takes", Static).content)


@pytest.mark.parametrize("size", some(SIZES, 3))
def test_a_minute_with_the_keys(tmp_path: Path, tables: Tables, size: tuple[int, int]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        hint = app.screen.query_one("#avoid").query_ancestor(Field).query_one(".label", Static)
        assert "Space or Enter ticks" in str(hint.content)  # before the boxes have the focus
        await pilot.press("left", "left", "left", "tab")  # vegan; then two allergens
        await pilot.press("space", "right", "right", "right", "right", "right", "space", "tab")
        await pilot.press(
            "backspace", "3", "tab", "tab", "right", "tab", "tab", "tab", *"olive oil, rice", "tab", "enter"
        )
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        held = app._kitchen.settled()
        assert (held.diet, held.people, held.profile) == ("vegan", 3, "careful")
        assert held.avoid == (ALLERGENS[0], ALLERGENS[5])
        assert [one.lot.food for one in app._kitchen.lots() if one.lot.always] == ["oil-olive", "rice-white-dry"]

    begin(tmp_path, tables, act, size)


@pytest.mark.parametrize("typed", ["0", "two", "13", ""])
def test_a_number_that_cannot_be_is_said_at_once_and_done_waits_for_it(
    tmp_path: Path, tables: Tables, typed: str
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        assert takes(app, "people") == "1 to 12"
        app.screen.query_one("#people", Input).focus()
        await pilot.press("backspace", *typed)
        await pilot.pause()
        assert app.screen.query_one("#people", Input).value == typed
        assert takes(app, "people") == "must be 1 to 12; 1 still holds"
        app.screen.query_one("#done", Button).press()
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, FirstStart)
        assert app.focused is app.screen.query_one("#people")
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert "How many eat must be 1 to 12" in str(app.screen.query_one("#meaning", Static).content)
        assert app._kitchen.settled().people == 1

    begin(tmp_path, tables, act, (80, 24))


def test_all_of_it_with_the_mouse_and_escape_loses_nothing(tmp_path: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.click("#diet", offset=(3, 0))  # the first word, behind the padding
        await pilot.click("#avoid", offset=(3, 1))
        await pilot.pause()
        assert app.screen.query_one("#diet", Pick).chosen == ("vegan",)
        app.screen.query_one("#always", Input).value = "salt"
        await pilot.press("escape")
        await pilot.pause()
        held = app._kitchen.settled()
        assert held.diet == "vegan"
        assert len(held.avoid) == 1
        assert [one.lot.food for one in app._kitchen.lots() if one.lot.always] == ["salt"]

    begin(tmp_path, tables, act, (80, 24))


def test_what_is_chosen_is_told_without_colour(tmp_path: Path, tables: Tables) -> None:
    """In brackets, and ticked by a sign (WCAG 2.2, success criterion 1.4.1)."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("tab", "space")
        await pilot.pause()
        assert "[omnivore]" in app.screen.query_one("#diet", Pick).draw(60).plain
        assert "[x] gluten" in app.screen.query_one("#avoid", Pick).draw(60).plain
        assert "[ ] eggs" in app.screen.query_one("#avoid", Pick).draw(60).plain

    begin(tmp_path, tables, act, (80, 24))


def test_it_asks_when_elimination_began(tmp_path: Path, tables: Tables) -> None:
    """From that day its weeks count; a day that cannot be stays to be mended, and is not kept by leaving."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        since = app.screen.query_one("#since", Input)
        for typed in ("tomorrow", "long ago"):
            since.value = typed
            app.screen.query_one("#done", Button).press()
            await pilot.pause()
            assert app.focused is since
        assert "2026-03-04" in takes(app, "since")  # an example that has come already
        since.value = "2026-02-20"
        app.screen.query_one("#done", Button).press()
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        (me,) = app._kitchen.settled().persons
        assert (me.phase, me.since) == ("elimination", date(2026, 2, 20))

    begin(tmp_path, tables, act, (80, 24))


def test_arrows_never_go_round_and_tab_is_named(tmp_path: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        held = app._kitchen.settled().diet
        await pilot.press("right", "right", "right", "right")
        assert app._kitchen.settled().diet == held == "omnivore"  # the last of them
        await pilot.press("down", "space")
        assert app.screen.query_one("#avoid", Pick).has_focus
        assert app._kitchen.settled().avoid == (ALLERGENS[0],)
        await pilot.press("up")
        assert app.screen.query_one("#diet", Pick).has_focus
        assert app._kitchen.settled().diet == held
        assert "Next field" in [key.word for key in app.screen.query_one(KeysLine).keys]
        await pilot.press("z")
        await pilot.pause()
        assert "Tab goes to the next question" in str(app.screen.query_one("Said", Static).content)
        await pilot.press("f1")
        await pilot.pause()
        said = "\n".join(part.draw(70).plain for part in app.screen.query(Parts))
        assert all(word in said for word in ("Tab   ", "←→    ", "Space or Enter ticks"))

    begin(tmp_path, tables, act, (80, 24))


def test_a_number_left_with_letters_is_the_one_before(tmp_path: Path, tables: Tables) -> None:
    """The `1` of `1 march`, typed a field too late, is no number that was meant."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        field = app.screen.query_one("#protein_g", Input)
        field.focus()
        await pilot.pause()
        field.value = ""
        await pilot.press(*"25", "tab")
        field.focus()
        await pilot.pause()
        field.value = ""
        await pilot.press("1", "space", *"march", "tab")
        await pilot.pause()
        assert takes(app, "protein_g") == "must be 0 to 100; 25 still holds"
        assert app._kitchen.settled().protein_g == 25

    begin(tmp_path, tables, act, (80, 24))


def test_the_page_says_which_day_it_took(tmp_path: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        since = app.screen.query_one("#since", Input)
        since.focus()
        since.value = "two weeks ago"
        await pilot.pause()
        assert takes(app, "since") == "from Wed 25 Feb 2026"
        assert since.content_size.width > len("two weeks ago")
        since.value = ""
        await pilot.pause()
        assert takes(app, "since") == "such as 2026-03-04; empty: not begun"

    begin(tmp_path, tables, act, (80, 24))


def test_a_box_says_that_enter_ticks_it(tmp_path: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("tab", "enter")
        await pilot.pause()
        assert app._kitchen.settled().avoid == (ALLERGENS[0],)
        assert ("Space or Enter", "Tick, or take the tick away") in list(keys_of(app.screen))
        assert "where words have [ ]" in FirstStart.ABOUT

    begin(tmp_path, tables, act, (80, 24))
