"""The plan on the screen, driven by keys (Textual's pilot). Every plan shown was replayed by plan/verify."""

import asyncio
import re
import threading
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

import composed_once
from calmlarder.household.booking import Ending, end
from calmlarder.household.larder import move_to
from calmlarder.household.sharing import last_plan
from calmlarder.plan.plan_days import Asked, How
from calmlarder.plan.planned import Planned, PlanSoFar
from calmlarder.store.logs import eaten_before
from calmlarder.store.store import Store
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.help_screen import HelpScreen
from calmlarder.tui.key_bar import keys_of
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.page import Page
from calmlarder.tui.plan_screen import PlanScreen
from calmlarder.tui.plan_view import PlanView
from calmlarder.tui.planned_dinner import PlannedDinner
from calmlarder.tui.widgets.day_board import Card, DayBoard
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.said import Said
from calmlarder.tui.widgets.top_line import TopLine
from programs import SIZES, settled, type_line, until


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """The demo larder."""
    return ("f8",)


def meals(app: LarderApp) -> list[Card]:
    return list(app.screen.query_one(DayBoard).cards)


def lasting(app: LarderApp) -> list[Card]:
    """The meals without the mark of what the last key changed."""
    return [one._replace(notes=tuple(note for note in one.notes if note != "changed")) for one in meals(app)]


def said(app: LarderApp) -> str:
    return app.screen.query_one(TopLine).content


@pytest.fixture
def ends(monkeypatch: pytest.MonkeyPatch) -> threading.Event:
    """Each plan has its first dinners and its first bound, and ends when this is set, or with the stop."""
    event = threading.Event()

    def held(asked: Asked, how: How) -> Planned:
        shown: list[PlanSoFar] = []
        planned = composed_once.first_plan(asked, how._replace(progress=shown.append))
        if how.progress is not None:
            how.progress(shown[-1])
        if how.on_bound is not None:
            how.on_bound(shown[-1].cost_points / 2)
        while not event.is_set() and not (how.stop is not None and how.stop.asked):
            event.wait(0.01)
        return planned

    monkeypatch.setattr("calmlarder.plan.plan_days.plan_days", held)
    return event


def test_what_is_known_of_a_plan_is_said_while_it_is_looked_for(play: Callable[..., None], ends: Any) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        assert isinstance(app.screen, PlanScreen)
        await until(pilot, lambda: meals(app) and app.screen._bound)
        assert "planning" in said(app)
        assert ". keeps this" in app.screen.query_one(PlanView).content
        await pilot.press("i")
        await pilot.pause()
        cost, bound = re.findall(r"(\d+) points", app.screen.query_one(Hanging).content)
        assert int(bound) == pytest.approx(int(cost) / 2, abs=1)
        await pilot.press("escape")
        ends.set()
        await settled(app, pilot)
        assert "the best found" in said(app)
        assert ". keeps this" not in app.screen.query_one(PlanView).content

    play(act)


@pytest.mark.usefixtures("quick_plans")
def test_three_days_are_planned_and_told(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        assert isinstance(app.screen, PlanScreen)
        await settled(app, pilot)
        told = meals(app)
        assert [one.kind for one in told] == ["dinner", "packed lunch", "dinner", "packed lunch", "dinner"]
        assert told[0].day == "Wed 11 Mar"
        view = app.screen.query_one(PlanView)
        text = view.content
        assert "left over on its last day" in text
        assert "dietitian" in text
        for word in ("cost", "bound", "gap", "points"):
            assert word not in text.split("Not medical advice")[0]
        for size in SIZES:
            await pilot.resize_terminal(*size)
            await pilot.pause()
            assert view.max_scroll_x == 0
            assert max(map(len, app.screen.query_one(DayBoard).draw(size[0] - 6).plain.splitlines())) <= size[0] - 6
        await pilot.press("i")
        await pilot.pause()
        assert isinstance(app.screen, Page)
        assert "no plan costs less" in app.screen.query_one(Hanging).content
        await pilot.press("escape")
        await pilot.pause()
        await pilot.press("f1")
        await pilot.pause()
        assert isinstance(app.screen, HelpScreen)
        await pilot.press("escape", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act, SIZES[-1])


@pytest.mark.long
def test_it_can_be_left_and_stopped_at_any_moment(play: Callable[..., None], monkeypatch: pytest.MonkeyPatch) -> None:
    """The program's own planning, proven the best or not: left at once, left with a plan, ended by its key."""
    monkeypatch.setattr("calmlarder.household.planning.SECONDS", 3600.0)  # so that no clock ends it

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("down")
        for is_there in (lambda: True, lambda: meals(app)):
            await pilot.press("ctrl+n")
            await until(pilot, is_there)
            pressed = asyncio.create_task(pilot.press("escape"))
            while not isinstance(app.screen, LarderScreen):
                await asyncio.sleep(0.01)
            await pressed  # waits for all that is drawn, too
        await settled(app, pilot)
        await pilot.press("ctrl+n")
        await until(pilot, lambda: meals(app))
        await pilot.press("full_stop")
        await settled(app, pilot)
        assert re.search("best|without a dish", said(app))
        assert meals(app)

    play(act)


@pytest.mark.long
@pytest.mark.usefixtures("quick_plans")
def test_a_plan_that_is_kept_is_there_again(play: Callable[..., None]) -> None:
    """With its days and changes, after leaving the screen and the program; what no longer fits is marked, and stays."""
    kept: list[Card] = []

    async def first(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        await pilot.press("minus")
        await settled(app, pilot)
        await pilot.press("r")
        await settled(app, pilot)
        await pilot.press("p", "full_stop")
        await settled(app, pilot)
        said = str(app.screen.query_one(Said).content)
        assert said.startswith("kept: Wed ")
        assert all(one.title in said for one in meals(app) if "min" in one.figure)
        assert "here again with Ctrl+N" in said
        kept.extend(lasting(app))
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        await again(app, pilot)
        await pilot.press("end", "x")  # the dishes are known as well: what is pinned stays
        await settled(app, pilot)
        assert lasting(app)[0] == kept[0]
        await pilot.press("ctrl+z")
        await settled(app, pilot)
        assert lasting(app) == kept

    async def again(app: LarderApp, pilot: Pilot[None], marked: bool = False) -> None:
        await pilot.press("ctrl+n")
        await settled(app, pilot)
        await settled(app, pilot)
        assert len(kept) == 3
        assert (lasting(app) == kept) is not marked
        assert [one.title for one in meals(app)] == [one.title for one in kept]
        assert "2 days" in app.screen.sub_title

    async def other_larder(app: LarderApp, pilot: Pilot[None]) -> None:
        for one in app._kitchen.lots():
            if one.lot.days_left is not None:
                end(app._kitchen, [one], Ending("eaten"))
        await pilot.press("ctrl+n")
        await settled(app, pilot)
        await settled(app, pilot)
        assert [one.title for one in meals(app)] == [one.title for one in kept]
        first = meals(app)[0]
        assert first.notes[0].startswith("no longer fits, gone: ")
        assert "n finds other dishes" in app.screen.query_one(PlanView).content
        await pilot.press("p", "x", "r", "full_stop")  # nothing of it is changed or kept
        await settled(app, pilot)
        assert meals(app)[0] == first
        await pilot.press("home", "enter", "enter")
        await pilot.pause()
        assert isinstance(app.screen, PlannedDinner)  # and nothing cooked
        await pilot.press("escape", "escape")
        await again(app, pilot, marked=True)
        await pilot.press("n")
        await settled(app, pilot)
        assert not any("no longer fits" in note for one in meals(app) for note in one.notes)

    async def changed_by_another_program(app: LarderApp, pilot: Pilot[None]) -> None:
        await again(app, pilot)
        await pilot.press("end", "x")
        await settled(app, pilot)
        assert meals(app)[:2] == kept[:2]
        assert meals(app)[2].title != kept[2].title
        await pilot.press("ctrl+z")
        await settled(app, pilot)
        await pilot.press("escape")
        await again(app, pilot)

    play(first)
    play(again, keys=())
    play(changed_by_another_program, keys=())
    play(other_larder, keys=())


@pytest.mark.usefixtures("quick_plans")
def test_where_no_other_dish_fits_beside_the_rest_it_stays_or_the_rest_may_change(play: Callable[..., None]) -> None:
    """Rice, tofu and carrots for one dinner: there is next to nothing else."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("rice noodles 75g", "firm tofu 150g, use by tomorrow", "carrots 90g", "sesame oil"):
            await type_line(pilot, line)
        await pilot.press("ctrl+n")
        await pilot.pause()
        await pilot.press("minus", "minus")
        await settled(app, pilot)
        (only,) = meals(app)
        assert "found" not in only.title
        for _ in range(8):
            await pilot.press("r")
            await settled(app, pilot)
            await settled(app, pilot)
            assert "found" not in meals(app)[0].title  # a meal is never lost by it
            await pilot.press("x")
            await settled(app, pilot)
            await settled(app, pilot)
            if "found" in meals(app)[0].title:
                break
        assert "nothing else fits there: Ctrl+Z brings" in str(app.screen.query_one(Said).content)
        await pilot.press("r")
        await settled(app, pilot)
        await pilot.press("ctrl+z", "ctrl+z")
        await settled(app, pilot)
        assert "found" not in meals(app)[0].title

    play(act, keys=())


@pytest.mark.long
@pytest.mark.usefixtures("quick_plans")
def test_pin_exclude_replace_and_days(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        await pilot.press("minus")
        await settled(app, pilot)
        first = meals(app)
        assert len(first) == 3
        await pilot.press("p")
        await pilot.pause()
        pinned = meals(app)[:2]
        assert all("pinned" in one.notes for one in pinned)  # the lunch comes from the dinner's box
        await pilot.press("down", "down", "x")
        await settled(app, pilot)
        without = meals(app)
        assert without[:2] == pinned
        assert without[2].title != first[2].title
        assert "changed" in without[2].notes
        assert "changed: Thu dinner; the other 2 stay" in str(app.screen.query_one(Said).content)
        await pilot.press("home", "r")
        await settled(app, pilot)
        replaced = meals(app)
        assert "pinned" not in replaced[0].notes
        assert replaced[0].title != without[0].title
        assert replaced[2].title == without[2].title
        assert "changed" not in replaced[2].notes
        await pilot.press("ctrl+z")
        await settled(app, pilot)
        assert [one.title for one in meals(app)] == [one.title for one in without]
        assert "pinned" in meals(app)[0].notes
        await pilot.press("ctrl+y")
        await settled(app, pilot)
        assert [one.title for one in meals(app)] == [one.title for one in replaced]
        await pilot.press("plus")
        await settled(app, pilot)
        assert len(meals(app)) == 5

    play(act)


@pytest.mark.usefixtures("quick_plans")
def test_arrows_and_clicks_go_from_card_to_card(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await settled(app, pilot)
        board = app.screen.query_one(DayBoard)
        board.show([Card("Wed", "dinner", "20 min", "a"), Card("Thu", "packed lunch", "", "b", ("from the box",)),
                    Card("Thu", "dinner", "30 min", "c")])  # fmt: skip
        seen = []
        for key in ("right", "up", "left", "down", "down", "down", "home", "end"):
            await pilot.press(key)
            seen.append(board.marked)
        assert seen == [2, 1, 0, 1, 2, 2, 0, 2]
        lines = board.draw(76).plain.splitlines()
        where = {title: next(n for n, line in enumerate(lines) if title in line.split()) for title in ("a", "b")}
        assert lines[where["a"]].split() == ["a", "▌", "c"]  # dinners stand on one line, the marked one has a bar
        await pilot.click(DayBoard, offset=(3, where["a"]))
        await pilot.pause()
        assert board.marked == 0

    play(act)


@pytest.mark.long
@pytest.mark.usefixtures("quick_plans")
def test_the_first_dinner_is_cooked_from_the_plan(play: Callable[..., None], tmp_path: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        await pilot.press("minus")
        await settled(app, pilot)
        planned = [one.title for one in meals(app)][1:]
        await pilot.press("end", "enter")
        await pilot.pause()
        assert isinstance(app.screen, PlannedDinner)
        whole = app.screen.query_one(DinnerView).content
        assert "In this order" in whole
        assert "at most" in whole
        assert "To read: it is cooked from here once its day has come." in " ".join(whole.split())
        assert "Cook this" not in [words for _, words in keys_of(app.screen)]
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
        assert isinstance(app.screen, Choice)
        ways = app.screen.query_one(OptionList)
        said = [str(ways.get_option_at_index(n).prompt) for n in range(ways.option_count)]
        assert said[0] == "as planned, 1 of 2 portions: 1 is eaten now"
        assert said[1] == "nothing: all 2 portions are eaten now"
        await pilot.press("enter")  # the box that the plan counts on
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, PlanScreen)
        await settled(app, pilot)
        assert [one.title for one in meals(app)] == planned
        assert "its box is there, heated once" in meals(app)[0].notes
        assert all("no longer fits" not in note for one in meals(app) for note in one.notes)
        await pilot.press("home", "enter")
        await pilot.pause()
        assert "its box is there" in app.screen.query_one(DinnerView).content

    play(act)
    with Store.at(tmp_path / "home") as store:
        assert len(eaten_before(store, datetime(2026, 3, 11, 23), 24)) == 1


@pytest.mark.long
@pytest.mark.usefixtures("quick_plans")
def test_advice_that_was_followed_is_given_no_more(play: Callable[..., None]) -> None:
    """What was to be frozen is, whole or as a part; the plan holds, and what it thaws comes from there."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("spinach 700g, use by tomorrow", "cooked rice 250g, made today", "bread rolls 4, 1 day left"):
            await type_line(pilot, line)
        await pilot.press("ctrl+n")
        await settled(app, pilot)
        before, planned = app.screen.query_one(PlanView).content, meals(app)
        assert "Freeze today" in before
        assert "left over on its last day" in before
        note = last_plan(app._kitchen).freeze_today
        assert len(note) > 1
        await pilot.press("escape")
        for one in note:
            lot = next(kept for kept in app._kitchen.lots() if kept.lot.id == one.lot)
            move_to(app._kitchen, "freezer", [lot], one.grams if one.grams < lot.lot.grams else None)
        await pilot.press("ctrl+n")
        await settled(app, pilot)
        after = app.screen.query_one(PlanView).content
        assert "Freeze today" not in after
        assert "the freezer saves it" not in after
        assert meals(app) == planned

    play(act)


@pytest.mark.usefixtures("quick_plans")
def test_a_plan_that_fails_its_check_is_not_shown(play: Callable[..., None], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("calmlarder.household.checked.plan_faults", lambda *_: ("500 g where 10 g are left",))

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n")
        await pilot.pause()
        await settled(app, pilot)
        assert meals(app) == []
        assert "did not pass its own check" in app.screen.query_one(PlanView).content
        await pilot.press("enter", "p", "x", "r", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act)


@pytest.mark.long
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
