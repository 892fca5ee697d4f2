"""A search for a dinner that goes on: since when, how far it is, and what came of it so far."""

from time import monotonic
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.tui.asked_for_tonight import Asked

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.request import DinnerRequest
    from calmlarder.compose.search import Reached
    from calmlarder.compose.stop import Stop

_SAID_AFTER_S = 1.0  # most searches are over before anybody reads seconds


class Former(NamedTuple):
    """What was found for what was asked before, and which dinner of it was shown."""

    asked: Asked
    composed: "Composed"
    wanted: "DinnerRequest"
    place: int

    @property
    def dinner(self) -> "Dinner":
        """The one that was shown."""
        return self.composed.dinners[self.place]


class UnderWay:
    """Begins with its making. `reached` is told by the thread that searches, and read by the screen."""

    def __init__(self, stop: "Stop", *, is_another: bool) -> None:
        self.stop = stop
        self.has_best = self.is_answered = False
        self._is_another, self._since = is_another, monotonic()
        self._reached: Reached | None = None

    def reached(self, how_far: "Reached") -> None:
        """What is written here the screen reads when it is drawn: no turn of the screen is waited for."""
        self._reached = how_far

    @property
    def is_in_the_way(self) -> bool:
        """Whether no dinner was found, and what stands in the way is looked for."""
        return self._reached is not None and self._reached.is_in_the_way

    def words(self) -> str:
        """What is done; how far it is stands behind a colon, as it may be left out where there is no room."""
        if self.is_in_the_way:
            what = "no dinner yet, looking what is in the way"
        else:
            what = "looking for a better one" if self.has_best else "looking"
            what += " for another" if self._is_another and not self.has_best else ""
        passed = monotonic() - self._since
        if passed < _SAID_AFTER_S:
            return f"{what}…"
        seconds = f"{what}, {passed:.0f} s, Esc ends it"
        if self._reached is None or self.is_in_the_way:
            return seconds
        return f"{seconds}: {self._reached.looked_at} of {self._reached.of} kinds of dish"
