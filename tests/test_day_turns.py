"""A program left open past midnight, with a clock handed in: nothing waits, and no day is guessed.

What must hold of the new day is what a program opened on it shows.
"""

import asyncio
from collections.abc import Awaitable, Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from calmlarder.commands import program
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.days_screen import DaysScreen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.widgets.item_list import ItemList
from programs import TODAY, settled, shown, type_line

TOMORROW = TODAY + timedelta(days=1)
LINES = (
    "tempeh 280g, use by today", "potatoes 1kg", "carrots 300g", "spinach 200g", "rapeseed oil", "soy sauce",
)  # fmt: skip


class Night:
    """A clock that stands until it is moved on."""

    def __init__(self) -> None:
        self.day = TODAY

    def __call__(self) -> date:
        return self.day


Act = Callable[[LarderApp, Pilot[None], Night], Awaitable[None]]


@pytest.fixture
def play(tmp_path: Path, tables: Tables) -> Callable[..., None]:
    def run(act: Act, clocked: bool = True, home: str = "home") -> None:
        night = Night()
        app = LarderApp(tmp_path / home, tables, TODAY, clock=night if clocked else None)

        async def scene() -> None:
            async with app.run_test(size=(80, 24)) as pilot:
                await pilot.pause()
                await pilot.press("escape")
                await pilot.pause()
                await act(app, pilot, night)

        asyncio.run(scene())

    return run


async def keep_all(pilot: Pilot[None]) -> None:
    for line in LINES:
        await type_line(pilot, line)


def rows(app: LarderApp) -> list[tuple[str, ...]]:
    groups = app.screen.query_one(ItemList).groups
    return [(group.title, item.name, item.grams, item.days, *item.notes) for group in groups for item in group.items]


def opened_on(home: Path, tables: Tables, day: date) -> list[tuple[str, ...]]:
    """The list of a program that is opened on that day."""
    app, found = LarderApp(home, tables, day), []

    async def scene() -> None:
        async with app.run_test(size=(80, 24)) as pilot:
            await pilot.pause()
            found.extend(rows(app))

    asyncio.run(scene())
    return found


@pytest.mark.parametrize("how", ["looks at the clock", "comes back from a suspend"])
def test_days_left_go_on_past_midnight(how: str, play: Callable[..., None], tmp_path: Path, tables: Tables) -> None:
    turned: list[tuple[str, ...]] = []

    async def act(app: LarderApp, pilot: Pilot[None], night: Night) -> None:
        await keep_all(pilot)
        before = rows(app)
        app.look_at_clock()
        await pilot.pause()
        assert rows(app) == before
        night.day = TOMORROW
        if how == "looks at the clock":
            app.look_at_clock()
        else:
            app.app_resume_signal.publish(app)
        await pilot.pause()
        turned.extend(rows(app))
        assert turned != before
        assert "Thursday 12 March" in shown(app, "#meaning")
        assert "Thu 12 Mar" in str(app.screen.sub_title)
        # A line typed now is read on the new day.
        app.screen.query_one(Input).value = "kale 100g, use by friday"
        await pilot.pause()
        assert "1 day left" in shown(app, "#meaning")

    play(act)
    assert turned == opened_on(tmp_path / "home", tables, TOMORROW)


def test_a_line_half_typed_is_read_anew(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None], night: Night) -> None:
        app.screen.query_one(Input).value = "tempeh 280g, use by friday"
        await pilot.pause()
        assert "2 days left" in shown(app, "#meaning")
        night.day = TOMORROW
        app.look_at_clock()
        await pilot.pause()
        assert "1 day left" in shown(app, "#meaning")
        assert app.screen.query_one(Input).value == "tempeh 280g, use by friday"

    play(act)


def test_a_dinner_proposed_yesterday_is_looked_for_anew(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None], night: Night) -> None:
        await keep_all(pilot)
        await pilot.press("f3")
        await settled(app, pilot)
        assert "tempeh" in shown(app, "#dinner").split("Left out")[0]
        night.day = TOMORROW
        app.look_at_clock()
        await settled(app, pilot)
        assert isinstance(app.screen, TonightScreen)
        assert "tempeh" not in shown(app, "#dinner").split("Left out")[0]  # its use-by was yesterday
        assert "Thu 12 Mar" in str(app.screen.sub_title)
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert next(row for row in rows(app) if row[1] == "tempeh")[0] == "Past its day"

    play(act)


def test_a_screen_below_another_waits_until_it_is_on_top(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None], night: Night) -> None:
        await keep_all(pilot)
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("w")
        await pilot.pause()
        before = app.screen_stack[-2]
        night.day = TOMORROW
        app.look_at_clock()
        await settled(app, pilot)
        assert app.screen is not before
        await pilot.press("escape")
        await settled(app, pilot)
        assert app.screen is before
        assert "tempeh" not in shown(app, "#dinner").split("Left out")[0]

    play(act)


def test_days_have_the_new_day_too(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None], night: Night) -> None:
        await type_line(pilot, "feel 3 tight")
        await pilot.press("ctrl+l")
        await pilot.pause()
        assert isinstance(app.screen, DaysScreen)
        night.day = TOMORROW
        before = app.screen.sub_title
        app.look_at_clock()
        await pilot.pause()
        assert app.screen.sub_title != before

    play(act)


def test_a_day_that_was_asked_for_stays(play: Callable[..., None], monkeypatch: pytest.MonkeyPatch) -> None:
    async def act(app: LarderApp, pilot: Pilot[None], night: Night) -> None:
        await keep_all(pilot)
        before = rows(app)
        night.day = TOMORROW
        app.look_at_clock()
        await pilot.pause()
        assert rows(app) == before

    play(act, clocked=False)


def test_the_command_hands_a_clock_in_unless_a_day_was_given(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    from calmlarder.cli import main

    given: list[object] = []

    class Seen(LarderApp):
        return_code = 0

        def __init__(self, *arguments: object) -> None:
            given.append(arguments[4])

        def run(self, *_: object, **__: object) -> None:
            return None

    monkeypatch.setattr("calmlarder.tui.app.LarderApp", Seen)
    monkeypatch.setattr(program.sys.stdin, "isatty", lambda: True, raising=False)
    monkeypatch.setattr(program.sys.stdout, "isatty", lambda: True, raising=False)
    assert main(["--home", str(tmp_path)]) == 0
    assert main(["--home", str(tmp_path), "--today", "2026-03-11"]) == 0
    assert given[1] is None
    assert callable(given[0])
    assert given[0]() == date.today()
