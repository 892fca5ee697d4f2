"""A lot written anew stands for what is there now, whatever the day (Textual's pilot)."""

import asyncio
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import lot_line
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.widgets.item_list import ItemList
from test_screens import TODAY, type_line


def edited(home: Path, tables: Tables, day: date) -> str:
    """The line that F4 shows of the first lot."""
    seen = []

    async def scene() -> None:
        app = LarderApp(home, tables, day)
        async with app.run_test() as pilot:
            await pilot.pause()
            await pilot.press("escape", "f4")
            await pilot.pause()
            seen.append(app.screen.query_one("#line", Input).value)
            await pilot.press("enter")
            await pilot.pause()

    asyncio.run(scene())
    return seen[0]


def test_a_line_of_yesterday_is_not_read_as_of_today(tmp_path: Path, tables: Tables) -> None:
    home, line = tmp_path / "home", "cooked rice 350g, made yesterday"
    with Store.at(home) as store:
        lot = LarderReader(tables, TODAY).read(line, "a test").lot
        assert lot is not None
        store.add_lots([lot.model_dump(mode="json")], "add it")
    made = (TODAY - timedelta(days=1)).isoformat()
    assert edited(home, tables, TODAY) == line
    assert edited(home, tables, TODAY + timedelta(days=1)) == f"350 g cooked white rice, made {made}, in the fridge"
    with Store.at(home) as store:
        assert [one.content["dates"] for one in store.lots()] == [[{"kind": "made", "on": made, "assumed": False}]]


def test_what_was_cooked_from_does_not_grow_again(tmp_path: Path, tables: Tables) -> None:
    home = tmp_path / "home"
    with Store.at(home) as store:
        lot = LarderReader(tables, TODAY).read("firm tofu 280g, use by friday", "a test").lot
        assert lot is not None
        store.add_lots([lot.model_copy(update={"grams": 110.0}).model_dump(mode="json")], "add it")
    assert edited(home, tables, TODAY) == "110 g firm tofu, use by 2026-03-13, in the fridge"
    with Store.at(home) as store:
        assert [one.content["grams"] for one in store.lots()] == [110.0]


@pytest.mark.long
def test_every_food_has_a_line_that_reads_back(tables: Tables) -> None:
    reader = LarderReader(tables, TODAY)
    some = reader.read("firm tofu 280g, use by friday", "a test").lot
    assert some is not None
    lost = []
    for food in tables.foods:
        lot = some.model_copy(update={"food": food.id, "grams": 120.0, "condition": None})
        again = reader.read(lot_line(lot, tables), "a test").lot
        if again is None or (again.food, again.grams, again.dates) != (food.id, 120.0, lot.dates):
            lost.append(food.id)
    assert lost == []


def test_the_next_key_is_for_the_lot_that_was_frozen(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("spinach 200g, use by today", "firm tofu 280g, use by tomorrow"):
            await type_line(pilot, line)
        await pilot.press("down", "home", "f7")  # the bar is on what was typed last
        await pilot.pause()
        items = app.screen.query_one(ItemList)
        assert next(item.name for item in items.items if item.id == items.chosen) == "spinach"
        await pilot.press("f7")  # out of the freezer again, not the tofu into it
        await pilot.pause()
        assert "Freezer" not in [group.title for group in items.groups]

    play(act)


def test_what_is_not_clear_is_said_once(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("xyzzy", "feel tight", "ate xyzzy"):
            await type_line(pilot, line)
            assert str(app.screen.query_one("#meaning", Static).content)
            assert not app._notifications

    play(act)


def test_what_is_slimy_is_not_added_and_has_no_days_left(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "coriander bunch going slimy")
        meaning = str(app.screen.query_one("#meaning", Static).content)
        assert meaning.startswith("not kept: “coriander bunch going slimy”: it says: slimy; not added")
        assert "left" not in meaning
        assert "within a day" not in meaning

    play(act)


def test_a_line_that_was_taken_up_and_not_changed_leaves_no_trace(play: Callable[..., LarderApp]) -> None:
    """After F4 and Esc its text stood in the way, and the next key was for another lot than the one that was marked."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("spinach 200g", "carrots 500 g", "eggs x6"):
            await type_line(pilot, line)
        screen = app.screen
        assert isinstance(screen, LarderScreen)
        items = screen.query_one(ItemList)
        await pilot.press("down", "down")
        marked = items.chosen
        await pilot.press("f4")
        line = screen.query_one("#line", Input)
        assert line.value
        assert not screen.half_typed
        await pilot.press("escape")
        assert (line.value, items.chosen, app.focused) == ("", marked, items)
        await pilot.press("up", "escape", "f4", "x", "escape")  # changed: it is put away, and Up brings it back
        assert (line.value, app.focused) == ("", line)
        await pilot.press("up")
        assert line.value.endswith("x")

    play(act)


def test_a_letter_alone_is_no_draft(play: Callable[..., LarderApp]) -> None:
    """A key of another screen that came late: an `n` stood in the line at the next start."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        screen = app.screen
        assert isinstance(screen, LarderScreen)
        line = screen.query_one("#line", Input)
        for typed, brought in (("n", ""), ("蛋", "蛋"), ("eg", "eg")):
            line.value = typed
            screen.keep_draft()
            line.value = ""
            screen.bring_draft()
            assert line.value == brought

    play(act)


def test_after_an_edit_and_from_an_empty_line_the_keys_of_the_list_go_to_the_list(
    play: Callable[..., LarderApp],
) -> None:
    """The mark stood on one row and the arrows did nothing: the next key was for another row than was meant."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in ("spinach 200g", "carrots 500 g", "eggs x6"):
            await type_line(pilot, text)
        items, line = app.screen.query_one(ItemList), app.screen.query_one("#line", Input)
        ids = [item.id for item in items.items]
        for key, at in (("home", 0), ("end", -1), ("home", 0)):
            await pilot.press("escape", key)
            assert (app.focused, items.chosen) == (items, ids[at])
        await pilot.press("home", "down", "f4")
        edited = items.chosen
        line.value = "5 carrots, use by today"
        await pilot.press("enter")
        await pilot.pause()
        assert (line.value, app.focused, items.chosen) == ("", items, edited)
        await pilot.press("home", "down")
        assert items.chosen == items.items[1].id

    play(act)


REFUSED = [
    "mouldy red pepper",
    "spring onion, bit slimy",
    "-2 limes",
    "feel tight",
    "ate -2 limes",
    "blood in my stool",
]


@pytest.mark.parametrize("refused", REFUSED)
def test_a_refused_line_leaves_the_line_and_the_next_is_not_glued_to_it(
    play: Callable[..., LarderApp], refused: str
) -> None:
    """What is typed next stands for itself: of `…, bit slimyhalf tin coconut milk` the onion was kept as good."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        larder = app.screen
        line, meaning = larder.query_one("#line", Input), larder.query_one("#meaning", Static)
        await type_line(pilot, refused)
        assert line.value == ""
        assert f"“{refused}”" in str(meaning.content)
        if app.screen is not larder:
            await pilot.press("escape")  # the page about a warning sign
        await pilot.press(*"kale", "enter")
        await pilot.pause()
        assert [row.content["line"] for row in app._store.lots()] == ["kale"]
        assert f"Not kept before it: “{refused}”" in str(meaning.content)  # who did not look reads it now
        await pilot.press("up")
        assert line.value == refused

    play(act)


@pytest.mark.parametrize("asked", ["ate noodles", "plate 170 g tofu"])
def test_a_question_that_is_left_leaves_no_text_in_the_line(play: Callable[..., LarderApp], asked: str) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        line = app.screen.query_one("#line", Input)
        await type_line(pilot, asked)
        assert isinstance(app.screen, Choice)
        await pilot.press("escape")
        await pilot.pause()
        assert (line.value, "not logged" in str(app.screen.query_one("#meaning", Static).content)) == ("", True)
        await pilot.press("up")
        assert line.value == asked

    play(act)
