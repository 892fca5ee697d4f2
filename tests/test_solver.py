"""The shared settings of the solvers: Ctrl-C after a solve still reaches Python.

Outside source: POSIX signals. A process whose SIGINT has its default action dies of it with the signal's own number.
"""

import subprocess
import sys

import pytest

_SOLVE_THEN_INTERRUPT = """
import os, signal
from ortools.sat.python import cp_model
from calmlarder.solver import {solver}
model = cp_model.CpModel()
model.maximize(sum(model.new_bool_var(str(number)) for number in range(9)))
{solver}(5.0).solve(model)
try:
    os.kill(os.getpid(), signal.SIGINT)
    signal.pause()
except KeyboardInterrupt:
    print("heard")
"""


@pytest.mark.parametrize("solver", ["plain_solver", "tight_solver"])
def test_ctrl_c_after_a_solve_is_heard(solver: str) -> None:
    program = _SOLVE_THEN_INTERRUPT.format(solver=solver)
    done = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, timeout=120, check=False)
    assert done.stdout == "heard\n", done.stderr
