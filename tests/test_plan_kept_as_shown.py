"""What a cook keeps of a plan is what stands on the screen, and what a change does to its neighbours is said."""

import threading
from collections.abc import Callable
from datetime import datetime
from importlib import resources
from pathlib import Path

import pytest
from textual.pilot import Pilot

import composed_once
from calmlarder.cli import main
from calmlarder.household.choices import Choices
from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.household.planning import Which, eaters_of, meals_that_stay, plan, plan_asked
from calmlarder.household.sharing import last_plan
from calmlarder.plan.plan_days import Asked, How
from calmlarder.plan.planned import Planned, SittingPlanned, Wasted
from calmlarder.plan.sittings import Key, key_of
from calmlarder.tables.book import Tables
from calmlarder.tables.places import table_folders
from calmlarder.tui.app import LarderApp
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.plan_changes import Change, by_key, how_changed, words_of
from calmlarder.tui.plan_screen import PlanScreen
from calmlarder.tui.plan_view import boxes_line
from calmlarder.tui.widgets.day_board import Card, DayBoard
from calmlarder.tui.widgets.said import Said
from programs import TODAY, settled, until


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """The demo larder."""
    return ("f8",)


def meals(app: LarderApp) -> list[Card]:
    return list(app.screen.query_one(DayBoard).cards)


FIRST: list[str] = []  # what the last search showed first


@pytest.fixture
def ends(monkeypatch: pytest.MonkeyPatch) -> threading.Event:
    """A search shows one plan, goes on until it is stopped, and then ends with another whose first dish is another."""
    event = threading.Event()
    shown: set[str] = set()

    def held(asked: Asked, how: How) -> Planned:
        planned = composed_once.first_plan(asked, how)
        shown.update(titles(planned))
        FIRST[:] = titles(planned)
        if how.stop is not None and how.stop.asked:
            return planned
        while not event.is_set() and not (how.stop is not None and how.stop.asked):
            event.wait(0.01)
        dinner = planned.sittings[0].dinner
        assert dinner is not None
        without = [dinner.pattern]
        while True:  # two patterns may give a dish of the same title
            first = asked.sittings[0].model_copy(update={"not_patterns": tuple(without)})
            other = asked._replace(sittings=(first, *asked.sittings[1:]))
            found = composed_once.first_plan(other, how._replace(progress=None, stop=None))
            now = found.sittings[0].dinner
            if now is None or now.title not in shown:
                shown.update(titles(found))
                return found
            without.append(now.pattern)

    monkeypatch.setattr("calmlarder.plan.plan_days.plan_days", held)
    return event


def titles(planned: Planned) -> list[str]:
    return [one.dinner.title if one.dinner is not None else "none" for one in planned.sittings]


@pytest.mark.long
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


@pytest.mark.long
def test_without_a_key_the_search_ends_with_its_best(play: Callable[..., LarderApp], ends: threading.Event) -> None:
    """Else the test above would say nothing."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+n", "minus", "minus")
        await until(pilot, lambda: isinstance(app.screen, PlanScreen) and len(meals(app)) == 1)
        ends.set()
        await settled(app, pilot)
        assert [one.title for one in meals(app)] != FIRST

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


def plan_with(kitchen: Household, kept_of: Planned | None, changed: int | None, rounds: int) -> Planned:
    """A plan of three days; of an earlier one all meals stay but the one that is to be another dish."""
    barred: frozenset[tuple[Key, str]] = frozenset()
    stays: frozenset[Key] = frozenset()
    if kept_of is not None and changed is not None:
        keys = [key_of(one.at, one.sitting) for one in kept_of.sittings]
        dinner = kept_of.sittings[changed].dinner
        assert dinner is not None
        meals = {keys[n] for n in eaters_of(kept_of.sittings, changed)}
        barred, stays = frozenset((key, dinner.pattern) for key in meals), frozenset(keys) - meals
    asked = plan_asked(kitchen, Choices(), Which(3, barred=barred))._replace(work=rounds, most_to_buy=0)
    if kept_of is not None:
        asked = asked._replace(kept=meals_that_stay(kept_of, asked.sittings, stays))
    outcome = plan(asked)
    assert outcome.faults == ()
    assert isinstance(outcome.plan, Planned)
    return outcome.plan


@pytest.mark.long
def test_a_changed_meal_leaves_the_amounts_of_its_neighbours(tmp_path: Path, tables: Tables) -> None:
    """After several rounds too: a fixed dish comes back with its score, and was free then."""
    demo = resources.files("calmlarder").joinpath("demo_larder.txt").read_text("utf-8").splitlines()
    home = tmp_path / "home"
    with Household(home, tables, TODAY, table_folders(None, home)) as kitchen:
        keep_lines(kitchen, kitchen.read_all(demo, "demo"))
        first = plan_with(kitchen, None, None, 1)
        last = len(first.sittings) - 1
        second = plan_with(kitchen, first, last, 4)
    was, now = first.sittings[last].dinner, second.sittings[last].dinner
    assert was is not None
    assert now is None or now.pattern != was.pattern
    for one, other in zip(first.sittings[:last], second.sittings[:last], strict=True):
        assert one.dinner is not None
        assert other.dinner is not None
        assert [(use.lot, use.slot, use.grams, use.how) for use in one.dinner.uses] == [
            (use.lot, use.slot, use.grams, use.how) for use in other.dinner.uses
        ]
    change = Change(frozenset({key_of(was_at.at, was_at.sitting) for was_at in first.sittings[last:]}),
                    by_key(first.sittings), frees=False)  # fmt: skip
    assert [how_changed(change, one) for one in second.sittings] == [""] * len(second.sittings)
    assert_told(change, second)


def assert_told(change: Change, planned: Planned) -> None:
    """A neighbour that could not stay is named with what is another in it."""
    one = planned.sittings[0]
    assert one.dinner is not None
    use = one.dinner.uses[0].model_copy(update={"grams": one.dinner.uses[0].grams - 5})
    less = one.model_copy(
        update={"dinner": one.dinner.model_copy(update={"uses": (use, *one.dinner.uses[1:])}), "boxed_for": None}
    )
    words = words_of(change, (less, *planned.sittings[1:]))
    assert f"{use.name} {use.grams} g, was {use.grams + 5} g" in words
    other = one.model_copy(update={"dinner": one.dinner.model_copy(update={"pattern": "another"})})
    assert f"was {one.dinner.title}" in words_of(change, (other, *planned.sittings[1:]))


def test_a_box_that_no_meal_of_the_plan_eats_is_told_at_its_end(tmp_path: Path, tables: Tables) -> None:
    """It was boxed as good for one day in the fridge; frozen it waits, and is told of no more."""
    home = tmp_path / "home"
    at = ["--home", str(home), "--today", "2026-03-11"]
    lines = ["chicken thighs 500 g use by tomorrow", "potatoes 1 kg", "carrots 400 g", "green beans 200 g", "oil"]
    assert main([*at, "larder", "add", *lines]) == 0
    assert main([*at, "tonight", "--people", "2"]) == 0
    assert main([*at, "cooked", "--boxes", "1"]) == 0
    with Household(home, tables, TODAY, table_folders(None, home)) as kitchen:
        lots = [one.lot for one in kitchen.lots()]
    (box,) = [lot for lot in lots if lot.box is not None]
    assert box.box is not None
    words = boxes_line(lots, (), TODAY)
    assert words.startswith(f"1 portion boxed, {box.box.title}, keeps until ")
    assert words.endswith("Thu 12 Mar: no meal of this plan eats it")
    lost = Wasted(lot=box.id, line=box.line, food=box.food, grams=box.grams, why="last day", because="too few portions")
    assert boxes_line(lots, (), TODAY, [lost]) == f"{words}; too few portions"
    eaten = SittingPlanned(at=datetime(2026, 3, 12, 12), sitting="packed", people=1, dinner=None, from_box=box.id)
    assert boxes_line(lots, (eaten,), TODAY) == ""
    assert boxes_line([box.model_copy(update={"place": "freezer"})], (), TODAY) == ""
