"""The first screen waits for no solver and for no names: OR-Tools is loaded, and foods' names taken apart, after it."""

import subprocess
import sys
from pathlib import Path

from calmlarder.household.household import Household
from calmlarder.tables.book import Tables
from programs import TODAY

CODE = """
import sys
import calmlarder.tui.app, calmlarder.tui.limits_screen, calmlarder.tui.help_screen, calmlarder.tui.tonight_screen
heavy = {"ortools", "pandas", "numpy"} & set(sys.modules)
sys.exit(f"loaded too early: {heavy}" if heavy else 0)
"""


def test_the_screens_load_no_solver() -> None:
    answer = subprocess.run([sys.executable, "-c", CODE], capture_output=True, text=True, check=False)
    assert answer.returncode == 0, answer.stderr


def test_a_larder_is_listed_before_the_names_of_all_foods_are_taken_apart(tmp_path: Path, tables: Tables) -> None:
    with Household(tmp_path, tables, TODAY) as household:
        assert (household.lots(), household.to_answer()) == ([], [])
        assert "_reader" not in vars(household)
        household.get_ready_to_read()
        assert "_reader" in vars(household)
