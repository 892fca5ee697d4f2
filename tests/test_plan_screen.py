"""The plan on the screen, driven by keys (Textual's pilot). Every plan shown was replayed by plan/verify."""

import asyncio
import time
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

from calmlarder.store.eaten import eaten_before
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.help_screen import HelpScreen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.plan_screen import PlanScreen
from calmlarder.tui.planned_dinner import PlannedDinner
from programs import SIZES, Act, run_program, settled, shown


@pytest.fixture
def play(tmp_path: Path, tables: Tables) -> Callable[..., None]:
    """The demo larder."""

    def run(act: Act, size: tuple[int, int] = (80, 24)) -> None:
        run_program(tmp_path / "home", tables, act, size, ("f8",))

    return run


def sittings(app: LarderApp) -> list[str]:
    places = app.screen.query_one("#sittings", OptionList)
    return [str(places.get_option_at_index(n).prompt) for n in range(places.option_count)]


async def first_plan(app: LarderApp, pilot: Pilot[None]) -> None:
    end = time.monotonic() + 600
    while not sittings(app) and time.monotonic() < end:
        await pilot.pause(0.02)
    assert sittings(app)


def test_three_days_are_planned_and_told(play: Callable[..., None], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("calmlarder.household.planning.SECONDS", 4.0)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        assert isinstance(app.screen, PlanScreen)
        await first_plan(app, pilot)
        assert "cost " in shown(app, "#measure")
        await settled(app, pilot)
        told = sittings(app)
        assert [one.split(",")[1].split()[0] for one in told] == ["dinner", "packed", "dinner", "packed", "dinner"]
        assert told[0].startswith("Wed 11 Mar 18:30")
        assert "bound" in shown(app, "#measure")
        notes = shown(app, "#notes")
        assert "What this plan does not reach" in notes or "Nothing spoils" in notes
        assert "dietitian" in notes or "not medical" in notes.lower() or len(notes.splitlines()) > 3
        for size in SIZES:
            await pilot.resize_terminal(*size)
            await pilot.pause()
            for text in (*sittings(app), shown(app, "#notes"), shown(app, "#measure")):
                assert max(map(len, text.splitlines())) <= size[0]
        await pilot.press("f1")
        await pilot.pause()
        assert isinstance(app.screen, HelpScreen)
        await pilot.press("escape", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act, SIZES[-1])


def test_it_can_be_left_and_stopped_at_any_moment(play: Callable[..., None], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("calmlarder.household.planning.SECONDS", 3600.0)  # so that it never ends by itself

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("down")
        for moment in (0.0, 0.3, 2.0):
            await pilot.press("ctrl+n")
            await pilot.pause(moment)
            pressed = asyncio.create_task(pilot.press("escape"))
            while not isinstance(app.screen, LarderScreen):
                await asyncio.sleep(0.01)
            await pressed  # waits for all that is drawn, too
        await settled(app, pilot)
        await pilot.press("ctrl+n")
        await first_plan(app, pilot)
        await pilot.press("full_stop")
        await settled(app, pilot)
        assert "stopped" in shown(app, "#measure") or "proven" in shown(app, "#measure")
        assert sittings(app)

    play(act)


@pytest.mark.usefixtures("quick_plans")
def test_pin_bar_redo_and_days(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        await pilot.press("minus")
        await settled(app, pilot)
        first = sittings(app)
        assert len(first) == 3
        await pilot.press("p")
        await pilot.pause()
        pinned = sittings(app)[0]
        assert pinned.splitlines()[0].endswith("pinned")
        await pilot.press("down", "down", "x")  # the lunch between may come from the pinned dinner's box
        await settled(app, pilot)
        barred = sittings(app)
        assert barred[0].splitlines()[0].endswith("pinned")
        assert barred[0].splitlines()[1] == pinned.splitlines()[1]
        assert barred[2] != first[2]
        await pilot.press("home", "r")
        await settled(app, pilot)
        redone = sittings(app)
        assert "pinned" not in redone[0]
        assert redone[0].splitlines()[1] != barred[0].splitlines()[1]
        assert redone[2] == barred[2]
        await pilot.press("plus")
        await settled(app, pilot)
        assert len(sittings(app)) == 5

    play(act)


@pytest.mark.usefixtures("quick_plans")
def test_the_first_dinner_is_cooked_from_the_plan(play: Callable[..., None], tmp_path: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        await pilot.press("minus")
        await settled(app, pilot)
        await pilot.press("end", "enter")
        await pilot.pause()
        assert isinstance(app.screen, PlannedDinner)
        assert "Steps" in shown(app, "#planned")
        assert "at most" in shown(app, "#planned")
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, PlannedDinner)
        await pilot.press("escape", "home", "enter")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, CookScreen)
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, PlanScreen)
        await settled(app, pilot)
        assert len(sittings(app)) == 2
        assert all(not one.startswith("Wed") for one in sittings(app))

    play(act)
    with Store.at(tmp_path / "home") as store:
        assert len(eaten_before(store, datetime(2026, 3, 11, 23), 24)) == 1


@pytest.mark.usefixtures("quick_plans")
def test_a_plan_that_fails_its_check_is_not_shown(play: Callable[..., None], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("calmlarder.household.checked.plan_faults", lambda *_: ("500 g where 10 g are left",))

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        await settled(app, pilot)
        assert sittings(app) == []
        assert "did not pass its own check" in shown(app, "#measure")
        await pilot.press("enter", "p", "x", "r", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act)


def test_cook_asks_before_weights_are_lost(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f3")
        await pilot.pause()
        await settled(app, pilot)
        await pilot.press("enter")
        await pilot.pause()
        cook = app.screen
        assert isinstance(cook, CookScreen)
        cook._weighed["1"] = 90
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen is cook
        await pilot.press("escape", "down", "enter")
        await pilot.pause()
        assert not isinstance(app.screen, (CookScreen, Choice))

    play(act)
