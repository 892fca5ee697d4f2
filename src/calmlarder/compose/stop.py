"""A way to end the search from another thread, or at a moment, and keep the best so far."""

import math
import time
from typing import Any


class Dropped(Exception):
    """Nobody waits any more for what a search finds: it ends where it is, without an answer."""


class Stop:
    """Asked for once; the solver at work ends, and no other is started. `at` is when to end in any case.

    `at` is in seconds of `time.monotonic`. A part of the work may have a stop of its own, which also ends when that
    of the `whole` does.
    """

    def __init__(self, at: float = math.inf, whole: "Stop | None" = None) -> None:
        self.at: float = at if whole is None else min(at, whole.at)
        self._whole = whole
        self._asked = self._dropped = False
        self._solver: Any = None

    @property
    def asked(self) -> bool:
        """Whether somebody asked for it."""
        return self._asked or (self._whole is not None and self._whole.asked)

    @property
    def over(self) -> bool:
        """Whether to end: somebody asked, or the time has come."""
        return self.asked or time.monotonic() >= self.at

    @property
    def left(self) -> float:
        """Seconds until the time has come; 0 where it has."""
        return max(0.0, self.at - time.monotonic())

    def working(self, solver: Any) -> None:
        """The solver that is to end when the stop is asked for; it is given no more time than there is left."""
        self._solver = solver
        if self.at < math.inf:
            most = solver.parameters.max_time_in_seconds
            solver.parameters.max_time_in_seconds = max(0.01, min(most, self.left))
        if self._whole is not None:
            self._whole.working(solver)

    def drop(self) -> None:
        """End now, without an answer."""
        self._dropped = True
        self.ask()

    def unless_dropped(self) -> None:
        """Go on; raises Dropped where nobody waits any more."""
        if self._dropped:
            raise Dropped
        if self._whole is not None:
            self._whole.unless_dropped()

    def ask(self) -> None:
        """End now."""
        self._asked = True
        if self._solver is not None:
            self._solver.stop_search()
