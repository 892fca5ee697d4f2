"""A terminal closed at the stove: opened again, the dinner, its step and its weights are there, until it is cooked."""

from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot

from calmlarder.household import cooking_session
from calmlarder.household.household import Household
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.stove import Timers
from calmlarder.tui.widgets.lanes import Lanes
from calmlarder.tui.widgets.top_line import TopLine
from programs import TODAY, settled, shown


def closed_at_the_stove(play: Callable[..., LarderApp]) -> str:
    """Cook the demo's dinner as far as its second step, with a weight; its title."""
    title = ""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        nonlocal title
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, CookScreen)
        # What the scale showed, for a dinner that need not be weighed.
        app.screen._weighed[app.screen._dinner.uses[0].lot] = 77
        await pilot.press("t", "enter", "b", "space")
        await pilot.pause()
        assert 77 in app.screen._weighed.values()
        title = shown(app, "#title")

    play(act, keys=("f8", "escape"))
    return title


def test_it_goes_on_where_it_was_and_asks_no_more_when_it_is_cooked(
    play: Callable[..., LarderApp], tmp_path: Path, tables: Tables
) -> None:
    title = closed_at_the_stove(play)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        assert isinstance(app.screen, Choice)
        assert title in app.screen._question
        await pilot.press("enter")
        await pilot.pause()
        cook = app.screen
        assert isinstance(cook, CookScreen)
        assert shown(app, "#title") == title
        assert "step 2 of" in cook.query_one(TopLine).content
        weighed = {lot for lot, grams in cook._weighed.items() if grams == 77}
        assert len(weighed) == 1
        assert cook.query_one(Timers).running  # it ran on while the terminal was closed
        assert "▲ now" in cook.query_one(Lanes).draw(60).plain
        before = {one.lot.id: one.lot.grams for one in app._kitchen.lots()}
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("enter")
        await settled(app, pilot)
        assert isinstance(app.screen, LarderScreen)
        after = {one.lot.id: one.lot.grams for one in app._kitchen.lots()}
        lot = weighed.pop()
        assert before[lot] - after.get(lot, 0) == pytest.approx(77, abs=5)  # a crumb left is nothing left

    play(act)
    with Household(tmp_path / "home", tables, TODAY) as home:
        assert cooking_session.found(home) is None


@pytest.mark.parametrize(("keys", "asks_again"), [(("down", "enter"), False), (("escape",), True)])
def test_it_may_be_given_up_or_left_for_later(
    keys: tuple[str, ...], asks_again: bool, play: Callable[..., LarderApp], tmp_path: Path, tables: Tables
) -> None:
    closed_at_the_stove(play)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press(*keys)
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act)
    for day, asks in ((TODAY, asks_again), (TODAY + timedelta(days=2), False)):
        with Household(tmp_path / "home", tables, day) as home:
            assert (cooking_session.found(home) is not None) == asks


@pytest.mark.parametrize("note", ["x", {}, {"day": "never"}, {"day": str(date.today()), "dinner": {"title": "soup"}}])
def test_a_note_that_is_not_ours_stops_nothing(note: object, tmp_path: Path, tables: Tables) -> None:
    with Household(tmp_path, tables, date.today()) as home:
        home.store.remember("at the stove", note)
        kept = cooking_session.found(home)
    assert kept is None or cooking_session.again(kept) is None
