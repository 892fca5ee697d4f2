"""Timers that count down in the terminal: what simmers while the cook does something else."""

from collections.abc import Mapping
from time import monotonic, time

from textual.widgets import Static


def left_words(seconds: float) -> str:
    """Seconds left as m:ss, rounded up; `done` when none are."""
    whole = max(0, -int(-seconds // 1))
    return f"{whole // 60}:{whole % 60:02d}" if whole else "done"


class Timers(Static):
    """Any number of named timers; the bell rings once for each."""

    def __init__(self) -> None:
        super().__init__("", id="timers", markup=False)
        self._ends: dict[str, float] = {}
        self._rung: set[str] = set()

    def on_mount(self) -> None:
        """Count every half second, so that no second is skipped."""
        self._count()
        self.set_interval(0.5, self._count)

    def begin(self, name: str, minutes: int) -> None:
        """Start a timer; one of the same name starts anew."""
        self._ends[name] = monotonic() + minutes * 60
        self._rung.discard(name)
        self._count()

    @property
    def ends_s(self) -> dict[str, float]:
        """When each ends, in seconds of the system's time."""
        return {name: time() + end - monotonic() for name, end in self._ends.items()}

    def go_on(self, ends_s: Mapping[str, float]) -> None:
        """Timers of before, by when they end; what ended meanwhile rings now."""
        self._ends |= {name: monotonic() + end - time() for name, end in ends_s.items()}
        self._count()

    @property
    def running(self) -> bool:
        """Whether one has not rung yet."""
        return any(end > monotonic() for end in self._ends.values())

    def _count(self) -> None:
        now = monotonic()
        for name, end in self._ends.items():
            if end <= now and name not in self._rung:
                self._rung.add(name)
                self.app.bell()
                self.notify(f"done: {name}", timeout=20, markup=False)
        self.display = bool(self._ends)
        self.update("\n".join(f"{left_words(end - now):>6}  {name}" for name, end in self._ends.items()))
