"""Many lines at once, pasted or of the demo: what is not taken is said with its reason, and waits to be answered."""

from collections.abc import Callable
from importlib import resources
from pathlib import Path

from textual.events import Paste
from textual.pilot import Pilot
from textual.widgets import Input, Static

from calmlarder.household.household import Household
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.larder_entry import taken
from calmlarder.tui.larder_view import TO_ANSWER
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.said import Said
from programs import TODAY, shown

DEMO = resources.files("calmlarder").joinpath("demo_larder.txt").read_text("utf-8")


def lines_kept(app: LarderApp) -> list[str]:
    return [row.content["line"] for row in app._store.lots()]


def told(app: LarderApp) -> str:
    notes = [note.message for note in app._notifications]
    notes += [str(said.content) for said in app.screen.query(Said)]
    return "\n".join([*notes, str(app.screen.query_one("#meaning", Static).content)])


def test_the_demo_is_kept_whole_and_says_what_is_to_be_answered(play: Callable[..., LarderApp]) -> None:
    """Every line of the demo is in the list: counted against the file itself."""
    wanted = [line for line in DEMO.splitlines() if line and not line.startswith("#")]

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8")
        await pilot.pause()
        assert sorted(set(lines_kept(app))) == sorted(set(wanted))
        assert "1 to answer: on top of the list" in told(app)
        groups = app.screen.query_one(ItemList).groups
        assert (groups[0].title, groups[0].items[0].name) == (TO_ANSWER, "noodles, half a packet")
        line = app.screen.query_one(Input)
        assert (line.value, line.has_focus) == ("", True)

    play(act)


def test_lines_that_cannot_be_read_wait_and_can_be_put_away_and_brought_back(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        line = app.screen.query_one(Input)
        line.post_message(Paste("kale 200g\n-2 limes\n-3 eggs"))
        await pilot.pause()
        await pilot.pause()
        assert lines_kept(app) == ["kale 200g"]
        assert told(app).count("not kept") == 2
        assert "cannot be below nothing" in told(app)
        assert line.value == ""  # or what is typed next would be glued to it
        line.value = "2 carrots"
        await pilot.press("enter")
        await pilot.pause()
        assert line.value == ""  # what was put away does not come by itself
        await pilot.press("up")
        await pilot.pause()
        assert line.value == "-2 limes"
        line.value = "lime"
        await pilot.press("enter")
        await pilot.press("up")
        await pilot.pause()
        assert line.value == "-3 eggs"
        assert lines_kept(app) == ["kale 200g", "2 carrots", "lime"]

    play(act)


def test_nothing_is_said_to_wait_where_all_is_clear(tmp_path: Path, tables: Tables) -> None:
    with Household(tmp_path / "home", tables, TODAY) as home:
        assert taken(["kale 200g", "", "# a note"], home) == ([], "kept 1 line")
        assert len(home.lots()) == 1


def test_what_was_kept_stands_below_the_line_until_the_next_is_typed(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        line = app.screen.query_one(Input)
        line.value = "cookd rice 350g made yesterday"
        await pilot.press("enter")
        await pilot.pause()
        assert line.value == ""
        assert shown(app, "#meaning").startswith("kept: cooked white rice, 350 g, fridge")
        line.value = "k"
        await pilot.pause()
        assert "kept" not in shown(app, "#meaning")
        line.value = ""
        await pilot.pause()
        assert shown(app, "#meaning") == ""

    play(act)
