"""A line taken up to be written anew does not overwrite what another program did to the lot meanwhile."""

from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from calmlarder.household.household import Household
from calmlarder.household.larder import as_seen, keep_lines, write_anew
from calmlarder.problems import CannotGoOn
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from harm import ask, lots_of
from programs import TODAY, run_program


def test_a_lot_changed_meanwhile_is_not_written_over(tmp_path: Path, tables: Tables) -> None:
    assert ask(tmp_path, "larder", "add", "firm tofu 400g").status == 0
    with Household(tmp_path, tables, TODAY) as mine:
        seen = as_seen(mine, 1)
        assert ask(tmp_path, "larder", "remove", "1", "--grams", "100", "--how", "given").status == 0
        reading = mine.read("firm tofu 400g, use by friday")
        assert reading is not None
        with pytest.raises(CannotGoOn, match="changed in another program"):
            write_anew(mine, seen, reading)
        assert [lot["grams"] for lot in lots_of(tmp_path)] == [300]
        write_anew(mine, as_seen(mine, 1), reading)
    assert [lot["grams"] for lot in lots_of(tmp_path)] == [400]


def test_on_the_screen_too(tmp_path: Path, tables: Tables) -> None:
    with Household(tmp_path, tables, TODAY) as mine:
        reading = mine.read("firm tofu 400g")
        assert reading is not None
        keep_lines(mine, [reading])

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("down", "f4")
        await pilot.pause()
        line = app.screen.query_one(Input)
        assert "tofu" in line.value
        assert ask(tmp_path, "larder", "remove", "1", "--grams", "100", "--how", "given").status == 0
        line.value = "firm tofu 400g, use by friday"
        await pilot.press("enter")
        await pilot.pause()

    run_program(tmp_path, tables, act)
    assert [lot["grams"] for lot in lots_of(tmp_path)] == [300]


def test_a_known_and_an_unknown_lot_go_and_come_back_together(tmp_path: Path) -> None:
    assert ask(tmp_path, "larder", "add", "firm tofu 400g").status == 0
    assert ask(tmp_path, "larder", "add", "mystery jar").status == 0
    assert ask(tmp_path, "larder", "remove", "1", "2", "--how", "thrown").status == 0
    assert "empty" in ask(tmp_path, "larder", "list").out
    assert ask(tmp_path, "larder", "undo").status == 0
    listed = ask(tmp_path, "larder", "list").out
    assert "firm tofu" in listed
    assert "mystery jar" in listed


@pytest.mark.parametrize("line", ["x999 canola oil", "300 tins tomatoes"])
def test_counts_beyond_sense_are_asked(line: str, tmp_path: Path) -> None:
    answer = ask(tmp_path, "larder", "add", line)
    assert answer.status == 0
    assert "to answer" in answer.out
