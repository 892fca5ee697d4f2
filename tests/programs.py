"""The terminal program under a pilot: opened on a larder, played through, and read."""

import asyncio
import time
from collections.abc import Awaitable, Callable, Sequence
from contextlib import AsyncExitStack
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch

from textual import _wait
from textual.css.model import RuleSet
from textual.css.stylesheet import Stylesheet
from textual.pilot import Pilot
from textual.widgets import Input, Static

from calmlarder.household.household import Household
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.widgets.hanging import Hanging

TODAY = date(2026, 3, 11)
SIZES = [(60, 20), (80, 24), (120, 40)]
PATIENCE_S = 600  # until something is given up that never comes; no test asserts how long anything took
Act = Callable[[LarderApp, Pilot[None]], Awaitable[None]]

# After each key the pilot looks every so many seconds whether the program still works: four times as often as by itself
# (1/50 s) is 40 % of the wall of a screen test less (test_people_screens.py: 20 to 12 s), at about the same processor.
_wait.SLEEP_GRANULARITY = 1 / 200
_wait.SLEEP_IDLE = _wait.SLEEP_GRANULARITY / 20
_pause_once = Pilot.pause
_parse_anew = Stylesheet._parse_rules


@cache
def _parsed(variables: frozenset[tuple[str, str]], *asked: Any) -> list[RuleSet]:
    """The rules of a style sheet, which depend on nothing but its text and the theme's variables."""
    sheet = Stylesheet(variables=dict(variables))
    return _parse_anew(sheet, *asked)


def _parse_rules(
    sheet: Stylesheet,
    css: str,
    read_from: tuple[str, str],
    is_default_rules: bool = False,
    tie_breaker: int = 0,
    scope: str = "",
) -> list[RuleSet]:
    """Each once a process: every program opened parses some eighty style sheets, and again with each new screen."""
    return _parsed(frozenset(sheet._variables.items()), css, read_from, is_default_rules, tie_breaker, scope)


Stylesheet._parse_rules = _parse_rules  # type: ignore[assignment]


_TURNS = 100  # of the loop: more than a key takes to go through screen, widgets and what they tell each other


async def _pause(pilot: Pilot[None], delay: float | None = None) -> None:
    """As the pilot's own, which ends by laying the screen out; then until what waited for that is done as well.

    The pilot takes a program for idle that used little processor for a while: on a busy machine it had got none. So
    many turns of the loop are waited for, too, whatever the clock says.
    """
    for _ in range(_TURNS):
        await asyncio.sleep(0)
    await _pause_once(pilot, delay)
    if delay is None:
        for _ in range(_TURNS):
            await asyncio.sleep(0)
        await _pause_once(pilot)


Pilot.pause = _pause  # type: ignore[method-assign]


def run_program(
    home: Path,
    tables: Tables,
    act: Act,
    size: tuple[int, int] = (80, 24),
    keys: Sequence[str] = (),
    *,
    faults_meant: bool = False,
) -> LarderApp:
    """Open it on the larder of a home past the first questions (test_first_start.py), press the keys, and play.

    What the program survives fails the test all the same, unless it was meant.
    """
    app = LarderApp(home, tables, TODAY)

    async def scene() -> None:
        async with AsyncExitStack() as opened:
            with patch.object(Household, "is_untouched", False):
                pilot = await opened.enter_async_context(app.run_test(size=size))
                await pilot.pause()
            if keys:
                await pilot.press(*keys)
                await pilot.pause()
            await act(app, pilot)

    asyncio.run(scene())
    if app.faults and not faults_meant:
        raise app.faults[0]
    return app


async def type_line(pilot: Pilot[None], text: str) -> None:
    """Type a line in the larder and keep it."""
    pilot.app.screen.query_one(Input).value = text
    await pilot.pause()
    await pilot.press("enter")
    await pilot.pause()


async def settled(app: LarderApp, pilot: Pilot[None]) -> None:
    """Until whatever works in a thread is done."""
    await app.workers.wait_for_complete()
    await pilot.pause()


async def until(pilot: Pilot[None], holds: Callable[[], object]) -> None:
    """Until something holds that comes by itself, however long a busy machine takes for it."""
    end = time.monotonic() + PATIENCE_S
    while not holds():
        assert time.monotonic() < end, "it never came"
        await pilot.pause(0.02)


def shown(app: LarderApp, name: str) -> str:
    """The words of a part of the screen."""
    part = app.screen.query_one(name)
    assert isinstance(part, Static | DinnerView | Hanging)
    return str(part.content)
