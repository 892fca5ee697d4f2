"""The solver's library is loaded without pandas, and with it where it asks for more than two names.

Outside source: the language's import system (Python's reference, 5.3 and 5.4): `sys.modules` says what is loaded, a
module that fails is taken out of it, and the next import runs it anew.
"""

import subprocess
import sys
from pathlib import Path

SOLVE_THEN_PANDAS = """
import sys
from calmlarder.cp_sat import cp_model
assert not [name for name in sys.modules if name.split(".")[0] == "pandas"], "loaded"
model = cp_model.CpModel()
two = [model.new_int_var(0, 3, "") for _ in range(2)]
model.add(sum(two) <= 4)
model.maximize(2 * two[0] + two[1])
solver = cp_model.CpSolver()
assert solver.solve(model) == cp_model.OPTIMAL and solver.objective_value == 7
import pandas
assert pandas.Series([1, 2]).sum() == 3
"""
FROM_PANDAS = """
import pandas
from calmlarder.cp_sat import cp_model
assert cp_model.pd is pandas
"""
ASKS_FOR_MORE = """
import pandas as pd
TABLE = pd.DataFrame
"""
OF_ANOTHER_VERSION = """
from calmlarder.cp_sat import cp_model
import pandas
assert cp_model.TABLE is pandas.DataFrame
"""


def _runs(script: str, folder: Path | None = None) -> None:
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=False, cwd=folder)
    assert done.returncode == 0, done.stderr


def test_it_solves_without_pandas_and_leaves_pandas_to_others() -> None:
    _runs(SOLVE_THEN_PANDAS)


def test_pandas_that_is_there_stays() -> None:
    _runs(FROM_PANDAS)


def test_a_version_that_asks_pandas_for_more_gets_it(tmp_path: Path) -> None:
    inside = tmp_path / "ortools" / "sat" / "python"
    inside.mkdir(parents=True)
    for folder in (inside, inside.parent, inside.parent.parent):
        (folder / "__init__.py").touch()
    (inside / "cp_model.py").write_text(ASKS_FOR_MORE, encoding="utf-8")
    _runs(OF_ANOTHER_VERSION, tmp_path)
