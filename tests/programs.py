"""The terminal program under a pilot: opened on a larder, played through, and read."""

import asyncio
import time
from collections.abc import Awaitable, Callable, Sequence
from contextlib import AsyncExitStack, suppress
from datetime import date
from functools import cache
from pathlib import Path
from typing import Any
from unittest.mock import patch
from weakref import WeakSet

from textual import _wait
from textual import app as textual_app
from textual import pilot as textual_pilot
from textual._context import active_app
from textual.app import App
from textual.css.model import RuleSet
from textual.css.stylesheet import Stylesheet
from textual.pilot import Pilot
from textual.screen import Screen
from textual.widgets import Input, Static
from textual.worker import WorkerCancelled

from calmlarder.household.household import Household
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.widgets.hanging import Hanging

TODAY = date(2026, 3, 11)
SIZES = [(60, 20), (80, 24), (120, 40)]
PATIENCE_S = 600  # until something is given up that never comes; no test asserts how long anything took
Act = Callable[[LarderApp, Pilot[None]], Awaitable[None]]

_by_the_clock = _wait.wait_for_idle
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


_CALM_TURNS = 3  # of the loop in which nothing else waits to run
_MOST_TURNS = 100_000  # of a loop that never comes to rest


async def _until_idle(min_sleep: float = 0, max_sleep: float = 1) -> None:
    """Until nothing waits to run in the loop. Where a thread works for the program, Textual's own wait is added.

    Textual's own takes a program for idle that used little processor for some milliseconds, after each key and
    each pause: of the wall of a screen test that was a third, and a busy machine looks as idle as one that is done.
    """
    app = active_app.get(None)
    await _calm()
    if min_sleep or app is None or any(worker.is_running for worker in app.workers):
        await _by_the_clock(min_sleep, max_sleep)
    while getattr(app, "_resize_timer", None) is not None:  # another size is taken up a moment after it was told
        await asyncio.sleep(_wait.SLEEP_GRANULARITY)
        await _calm()


async def _calm() -> None:
    loop: Any = asyncio.get_running_loop()
    calm = turns = 0
    while calm < _CALM_TURNS and turns < _MOST_TURNS:
        await asyncio.sleep(0)
        calm, turns = 0 if loop._ready else calm + 1, turns + 1


_wait.SLEEP_GRANULARITY = 1 / 200
_wait.SLEEP_IDLE = _wait.SLEEP_GRANULARITY / 20
textual_app.wait_for_idle = textual_pilot.wait_for_idle = _until_idle  # type: ignore[attr-defined]


async def _pause(pilot: Pilot[None], delay: float | None = None) -> None:
    """As the pilot's own, which ends by laying the screen out; then until what waited for that is done as well."""
    await _pause_once(pilot, delay)
    if delay is None:
        await _pause_once(pilot)
    _paint(pilot.app)


_paint_at_once = Screen._compositor_refresh
_unpainted: WeakSet[Screen[Any]] = WeakSet()


def _paint_later(screen: Screen[Any]) -> None:
    """What changed stays marked as such: of the many paints between two pauses the last shows all of it.

    Nobody sees them, and they took a fourth of the processor of a screen test.
    """
    screen._dirty_widgets.clear()
    _unpainted.add(screen)


def _paint(app: App[Any]) -> None:
    screen = app.screen_stack[-1] if app.is_running and app.screen_stack else None
    if screen in _unpainted:
        _unpainted.discard(screen)
        _paint_at_once(screen)


Screen._compositor_refresh = _paint_later  # type: ignore[method-assign]
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
            _paint(app)

    asyncio.run(scene())
    if app.faults and not faults_meant:
        raise app.faults[0]
    return app


async def type_line(pilot: Pilot[None], text: str) -> None:
    """Type a line in the larder and keep it."""
    pilot.app.screen.query_one(Input).value = text
    await pilot.press("enter")  # behind what the line's change tells
    await pilot.pause()


async def settled(app: LarderApp, pilot: Pilot[None]) -> None:
    """Until whatever works in a thread is done: what the last key asked for has begun, and what that began as well."""
    await pilot.pause()
    while any(not worker.is_finished for worker in app.workers):
        with suppress(WorkerCancelled):  # another change of mind ended it while it was waited for
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
