"""Who types and who walks the list: one place looks as if it had the keys, and none of them acts by surprise."""

import asyncio
from collections.abc import Callable

import pytest
from textual.app import App, ComposeResult
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.marked_list import MARK, WAITS, MarkedList
from programs import shown, type_line


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """The demo larder."""
    return ("f8",)


def mark_of(items: ItemList) -> str:
    """The sign before the row under the bar."""
    painted = [items.render_line(y).text for y in range(items.scrollable_content_region.height)]
    (sign,) = {row[0] for row in painted if row[:1] in {MARK, WAITS}}
    return sign


def bar_before(line: Input) -> str:
    """The sign before the line that is typed into."""
    return line.render_lines(line.region.reset_offset)[0].text[0]


def below(app: LarderApp) -> list[str]:
    """The words of the line of keys."""
    return [key.word for key in app.screen.query_one(KeysLine).keys]


def test_one_place_looks_as_if_it_had_the_keys(play: Callable[..., LarderApp]) -> None:
    """By signs, which are seen without colour: while a line is typed its bar is thick and the row's sign a dot."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        items, line = app.screen.query_one(ItemList), app.screen.query_one("#line", Input)
        thick = bar_before(line)
        assert mark_of(items) == WAITS
        assert below(app)[0] == "List"
        row = items.chosen
        await pilot.press("down")
        await pilot.pause()
        assert (mark_of(items), items.chosen) == (MARK, row)
        assert bar_before(line) != thick
        assert "Line" in below(app)
        assert "List" not in below(app)
        await pilot.press("escape", "h", "a", "down")  # words in the line make no difference
        await pilot.pause()
        assert (mark_of(items), line.value) == (MARK, "ha")
        assert bar_before(line) != thick
        await pilot.press("escape")  # back to what was being typed
        await pilot.pause()
        assert (mark_of(items), line.value, bar_before(line)) == (WAITS, "ha", thick)

    play(act)


@pytest.mark.parametrize("key", ["f5", "f6", "f7", "f10", "shift+f9"])
def test_a_key_of_the_list_does_nothing_behind_a_line_that_is_half_typed(
    play: Callable[..., LarderApp], key: str
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        items, before = app.screen.query_one(ItemList), app._kitchen.version()
        await pilot.press("down", "down", "down", "escape", *"half")
        await pilot.press(key)
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert shown(app, "#meaning").startswith("not done: Enter keeps the line above")
        assert app.screen.query_one("#line", Input).value == "half"
        assert app._kitchen.version() == before
        assert items.chosen is not None

    play(act)


def test_behind_words_that_filter_they_do(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.screen.query_one("#line", Input).value = "/tofu"
        await pilot.pause()
        await pilot.press("f7")
        await pilot.pause()
        assert shown(app, "#meaning") == "frozen: firm tofu (Ctrl+Z undoes it)"

    play(act)


def test_a_page_up_always_marks_a_row(play: Callable[..., LarderApp]) -> None:
    """Only a heading stands above the first row."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        items = app.screen.query_one(ItemList)
        for keys in (("down",), ("down", "pagedown", "pagedown"), ("down", "down")):
            await pilot.press(*keys, *["pageup"] * 4)
            await pilot.pause()
            assert items.chosen == items.items[0].id

    play(act)


@pytest.mark.parametrize(
    ("keys", "row"),
    [(("pagedown",), 1), (("down", "pagedown"), 2), (("end", "pageup"), 1)],
    ids=["first", "down", "up"],
)
def test_where_a_page_has_no_room_its_keys_walk_row_by_row(keys: tuple[str, ...], row: int) -> None:
    """A window of a terminal drawn together to a few rows leaves the list none."""

    class Narrow(App[None]):
        CSS = "MarkedList { height: 0; }"

        def compose(self) -> ComposeResult:
            yield MarkedList("rice", "tofu", "spinach")

    async def act() -> None:
        app = Narrow()
        async with app.run_test() as pilot:
            await pilot.press(*keys)
            assert app.query_one(MarkedList).highlighted == row

    asyncio.run(act())


def test_what_was_done_and_undone_is_told_by_the_food(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "140 g green beans, use by friday, kept in the door of the fridge")
        for key, words in (("f7", "frozen: green beans ("), ("delete", "removed: ")):
            await pilot.press(key)
            await pilot.pause()
            assert shown(app, "#meaning").startswith(words)
        for words in ("remove", "freeze", "add"):
            await pilot.press("ctrl+z")
            await pilot.pause()
            told = shown(app, "#meaning")
            assert told.startswith(f"undone: {words} ")
            assert "the door" not in told
        await type_line(pilot, "3 whatsits from aunt mabel in a jar")
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert shown(app, "#meaning") == "undone: add whatsit (Ctrl+Y does it again)"

    play(act)


def test_of_two_lots_of_a_food_it_is_told_which(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "firm tofu 100 g, opened today")
        await pilot.press("delete")
        await pilot.pause()
        assert shown(app, "#meaning").startswith("removed: 100 g of firm tofu (")

    play(act)


def test_a_question_tells_its_key_and_down_goes_on_from_its_line(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("down", "down", "f6")
        await pilot.pause()
        assert "Choose" in below(app)
        await pilot.press("escape", "f10", "down", "down", "enter")  # half of it is thrown away
        await pilot.pause()
        assert "Why?" in str(app.screen.query_one(Static).content)

    play(act)


def test_a_list_of_times_stands_in_its_order_and_the_likeliest_is_marked(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        names = ["15 minutes", "30 minutes", "60 minutes"]
        await app.push_screen(Choice("How long?", names, "or a number", marked="30 minutes"))
        await pilot.pause()
        listed = app.screen.query_one(OptionList)
        assert [str(one.prompt) for one in listed.options] == names
        assert listed.highlighted == 1

    play(act)
