"""The first screen waits for no solver: OR-Tools and what it brings are loaded after it."""

import subprocess
import sys

CODE = """
import sys
import calmlarder.tui.app, calmlarder.tui.limits_screen, calmlarder.tui.help_screen, calmlarder.tui.tonight_screen
heavy = {"ortools", "pandas", "numpy"} & set(sys.modules)
sys.exit(f"loaded too early: {heavy}" if heavy else 0)
"""


def test_the_screens_load_no_solver() -> None:
    answer = subprocess.run([sys.executable, "-c", CODE], capture_output=True, text=True, check=False)
    assert answer.returncode == 0, answer.stderr
