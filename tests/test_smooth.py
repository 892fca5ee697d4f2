"""What keeps the screens from standing still while the solver works; the times are in benchmarks/screens.py."""

import gc
import sys
from pathlib import Path

import pytest
from textual.pilot import Pilot

from calmlarder.patterns.load import load_patterns, shipped_patterns
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp
from calmlarder.tui.plan_screen import PlanScreen
from calmlarder.tui.runtime import kept_for_good
from programs import run_program, settled


def test_what_is_loaded_is_never_searched_for_waste_again() -> None:
    """By what the interpreter itself counts."""
    gc.unfreeze()
    try:
        with kept_for_good():
            assert not gc.isenabled()
            loaded = [[number] for number in range(1000)]
        assert gc.isenabled()
        assert gc.get_freeze_count() > len(loaded)
        assert not any(one is loaded[0] for one in gc.get_objects())
    finally:
        gc.unfreeze()


def test_a_fault_while_loading_leaves_the_search_on() -> None:
    with pytest.raises(ImportError), kept_for_good():
        raise ImportError
    assert gc.isenabled()
    gc.unfreeze()


def test_the_patterns_are_read_once_and_are_those_of_the_files() -> None:
    assert shipped_patterns() is shipped_patterns()
    assert shipped_patterns() == load_patterns(shipped("recipes"))


def test_no_table_is_written_out_for_a_log_when_a_plan_begins(
    tmp_path: Path, tables: Tables, monkeypatch: pytest.MonkeyPatch, quick_plans: None
) -> None:
    written: list[str] = []

    def write(_: Tables) -> str:
        written.append("tables")
        return "tables"

    monkeypatch.setattr(Tables, "__repr__", write)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        assert sys.getswitchinterval() < 0.005  # Python's own: docs of sys.setswitchinterval
        await pilot.press("ctrl+n")
        await pilot.pause()
        assert isinstance(app.screen, PlanScreen)
        await settled(app, pilot)
        assert app.screen._round is not None

    run_program(tmp_path / "home", tables, act, keys=("f8",))
    assert not written
