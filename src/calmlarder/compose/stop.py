"""A way to end the search from another thread and keep the best so far."""

from typing import Any


class Stop:
    """Asked for once; the solver at work ends, and no other is started."""

    def __init__(self) -> None:
        self.asked = False
        self._solver: Any = None

    def working(self, solver: Any) -> None:
        """The solver that is to end when the stop is asked for."""
        self._solver = solver

    def ask(self) -> None:
        """End now."""
        self.asked = True
        if self._solver is not None:
            self._solver.stop_search()
