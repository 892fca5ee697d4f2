"""What a cook keeps of a plan is what stands on the screen, and what a change does to its neighbours is said."""

import threading
from collections.abc import Callable

import pytest
from textual.pilot import Pilot

import composed_once
from calmlarder.household.sharing import last_plan
from calmlarder.plan.plan_days import Asked, How
from calmlarder.plan.planned import Planned
from calmlarder.tui.app import LarderApp
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.plan_screen import PlanScreen
from calmlarder.tui.widgets.day_board import Card, DayBoard
from calmlarder.tui.widgets.said import Said
from programs import settled, until


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """The demo larder."""
    return ("f8",)


def meals(app: LarderApp) -> list[Card]:
    return list(app.screen.query_one(DayBoard).cards)


@pytest.fixture
def ends(monkeypatch: pytest.MonkeyPatch) -> threading.Event:
    """A search shows one plan, goes on until it is stopped, and then ends with another whose first dish is another."""
    event = threading.Event()

    def held(asked: Asked, how: How) -> Planned:
        planned = composed_once.first_plan(asked, how)
        if how.stop is not None and how.stop.asked:
            return planned
        while not event.is_set() and not (how.stop is not None and how.stop.asked):
            event.wait(0.01)
        dinner = planned.sittings[0].dinner
        assert dinner is not None
        first = asked.sittings[0].model_copy(update={"not_patterns": (dinner.pattern,)})
        other = asked._replace(sittings=(first, *asked.sittings[1:]))
        return composed_once.first_plan(other, how._replace(progress=None, stop=None))

    monkeypatch.setattr("calmlarder.plan.plan_days.plan_days", held)
    return event


def titles(planned: Planned) -> list[str]:
    return [one.dinner.title if one.dinner is not None else "none" for one in planned.sittings]


@pytest.mark.parametrize("leaves", [False, True])
def test_what_is_shown_is_kept_and_not_what_the_search_ends_with(
    play: Callable[..., LarderApp], ends: threading.Event, leaves: bool
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n", "minus", "minus")
        await until(pilot, lambda: isinstance(app.screen, PlanScreen) and meals(app) and not app.screen._finished)
        await until(pilot, lambda: len(meals(app)) == 1)
        in_sight = [one.title for one in meals(app)]
        await pilot.press("full_stop", *(["escape"] if leaves else []))
        await settled(app, pilot)
        await pilot.pause()
        if leaves:
            assert isinstance(app.screen, LarderScreen)
        else:
            assert [one.title for one in meals(app)] == in_sight
            assert str(app.screen.query_one(Said).content).startswith("kept: ")
        assert titles(last_plan(app._kitchen)) == in_sight

    play(act)


def test_without_a_key_the_search_ends_with_its_best(play: Callable[..., LarderApp], ends: threading.Event) -> None:
    """Else the test above would say nothing."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n", "minus", "minus")
        await until(pilot, lambda: isinstance(app.screen, PlanScreen) and len(meals(app)) == 1)
        in_sight = [one.title for one in meals(app)]
        ends.set()
        await settled(app, pilot)
        assert [one.title for one in meals(app)] != in_sight

    play(act)


def test_while_a_change_is_looked_for_nothing_is_kept_yet(
    play: Callable[..., LarderApp], ends: threading.Event, monkeypatch: pytest.MonkeyPatch
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        ends.set()
        await pilot.press("ctrl+n", "minus", "minus")
        await settled(app, pilot)
        before = titles(last_plan(app._kitchen))
        monkeypatch.setattr(PlanScreen, "_look", lambda *_: None)  # it takes for ever
        await pilot.press("r", "full_stop")
        await pilot.pause()
        assert "no plan of what is asked now is there yet" in str(app.screen.query_one(Said).content)
        assert titles(last_plan(app._kitchen)) == before

    play(act)
