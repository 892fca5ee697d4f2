"""Faults that people met on the screens, each tried again as they met it (Textual's pilot)."""

from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static, TextArea

from calmlarder.tables.book import Tables
from calmlarder.tui.adapt_screen import AdaptScreen
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Ask
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.widgets.amounts import AmountList
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.top_line import TopLine
from programs import settled, shown, type_line
from test_adapt_command import RECIPE

SMALL = ("firm tofu 280g, use by today", "cooked rice 400g, made today", "spinach 200g", "carrots x4", "rapeseed oil",
         "soy sauce")  # fmt: skip


def line(app: LarderApp) -> Input:
    return app.screen.query_one("#line", Input)


def names(app: LarderApp) -> list[str]:
    return [item.name for item in app.screen.query_one(ItemList).items]


def test_a_filter_and_then_edit_edits_the_row_that_is_shown(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in ("spinach 200g, use by today", "kale 150g", "2 carrots"):
            await type_line(pilot, text)
        line(app).value = "/carr"
        await pilot.pause()
        await pilot.press("f4")
        await pilot.pause()
        assert line(app).value == "2 carrots"
        line(app).value = "3 carrots"
        await pilot.press("enter")
        await pilot.pause()
        assert sorted(item.grams for item in app.screen.query_one(ItemList).items) == ["150", "200", "210"]

    play(act)


def test_after_thrown_away_what_is_typed_is_a_line(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in ("spinach 200g, use by today", "kale 150g"):
            await type_line(pilot, text)
        await pilot.press("down", "f6", "enter")
        await pilot.pause()
        await pilot.press(*"swede")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert line(app).value == "swede"

    play(act)


def test_an_unknown_line_is_put_to_answer_and_the_next_begins_empty(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press(*"zorbulous 200g", "enter")
        await pilot.pause()
        assert line(app).value == ""
        await pilot.press(*"kale 150g", "enter")
        await pilot.pause()
        assert names(app) == ["zorbulous 200g", "kale"]

    play(act)


def test_what_was_done_is_said_below_the_line_and_covers_nothing(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 150g")
        await pilot.press("down", "f6", "enter")
        await pilot.pause()
        assert shown(app, "#meaning") == "thrown away: kale 150g (Ctrl+Z undoes it)"
        assert not app._notifications
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert shown(app, "#meaning").startswith("undone: ")

    play(act)


def test_another_dinner_says_which_and_start_over_resets_everything(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        await settled(app, pilot)
        top = app.screen.query_one(TopLine)
        assert "1 of " in top.content
        await pilot.press("n")
        await settled(app, pilot)
        assert "2 of " in top.content
        first = shown(app, "#asked")
        await pilot.press("plus", "t", "d", "s")
        await settled(app, pilot)
        assert "tonight only" in shown(app, "#asked")
        await pilot.press("r")
        await settled(app, pilot)
        assert shown(app, "#asked") == first
        held = app._kitchen.settled()
        assert (held.people, held.minutes, held.diet) == (1, None, "omnivore")  # and nothing was settled by it

    play(act)


def test_a_recipe_begins_at_its_line_a_name_is_a_file_and_save_wants_a_name(
    play: Callable[..., LarderApp], tmp_path: Path
) -> None:
    file = tmp_path / "curry.txt"
    file.write_text(RECIPE, encoding="utf-8")

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+r")
        await pilot.pause()
        assert isinstance(app.screen, AdaptScreen)
        assert app.focused is app.screen.query_one("#file")
        app.screen.query_one(TextArea).text = str(file)
        await pilot.press("f5")
        await settled(app, pilot)
        assert "Swap: " in app.screen.query_one("#adapted", Hanging).content
        await pilot.press("f7")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Ask)
        assert shown(app, "#ask-empty") == "type an answer, or Esc to go back"

    play(act)


def test_notes_are_wrapped_once_whatever_was_resized_before(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in SMALL:
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        for size in ((120, 40), (70, 24), (80, 24)):
            await pilot.resize_terminal(*size)
            await pilot.pause()
            await pilot.pause()
            notes = app.screen.query_one("#notes", Static)
            assert max(map(len, str(notes.content).splitlines())) <= notes.content_size.width
            assert notes.size.height <= len(str(notes.content).splitlines()) + 1

    play(act)


def test_at_200_columns_no_name_is_cut_and_grams_end_in_one_column(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in SMALL:
            await type_line(pilot, text)
        drawn = "\n".join(str(option.prompt) for option in app.screen.query_one(ItemList).options)
        assert "…" not in drawn
        await pilot.press("f3")
        await settled(app, pilot)
        amounts = app.screen.query_one(DinnerView).query_one(AmountList).draw(60).plain.splitlines()[1:]
        assert len({row.index(" g  ") for row in amounts}) == 1
        assert "…" not in "\n".join(amounts)

    play(act, (200, 50))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("chicken thighs 300g, use by yesterday", "past its day"),
        ("kale 150g, use by today", "its last day"),
        ("kale 150g, use by tomorrow", "1 day left"),
    ],
)
def test_no_days_are_told_below_none(text: str, words: str, play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        line(app).value = text
        await pilot.pause()
        assert f", {words} (" in shown(app, "#meaning")

    play(act)


def test_berries_are_not_peeled_for_the_freezer(tables: Tables) -> None:
    """Common practice: berries are frozen whole (keeping.csv says what it is)."""
    how = tables.keeping_of(tables.food_by_id["strawberry"], "freezer", "whole")
    assert how is not None
    assert "peel" not in how.note
