"""Beside the stove: the timeline against the clock, timers that count down, what the scale showed."""

from collections.abc import Callable, Mapping, Sequence
from time import monotonic, time
from typing import NamedTuple

from textual import on
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import Button, Input, Label, Static

from calmlarder.kitchen.timeline import Moment, Timeline
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.modal import Modal

HERE = "›"  # what the step on the screen tells


def timeline_text(timeline: Timeline, minutes_gone: float | None, step: int | None = None) -> str:
    """The moments in order; `now` before those that run, `next` before the first to come. None: not begun.

    Those that the step on the screen tells, by its place in the dinner, stand behind a mark.
    """
    coming = [moment for moment in timeline.moments if minutes_gone is not None and moment.start_min > minutes_gone]
    lines = [f"{timeline.minutes} minutes for one cook"]
    if minutes_gone is not None:
        lines[0] += f"; {int(minutes_gone)} min in"
    for moment in timeline.moments:
        alone = "" if moment.hands_on or not moment.minutes else f" ({moment.minutes} min by itself)"
        word = "" if minutes_gone is None else f"{_word(moment, coming, minutes_gone):<4} "
        mark = HERE if step is not None and moment.step == step else " "
        lines.append(f"{mark} {word}{moment.start_min // 60}:{moment.start_min % 60:02d}  {moment.what}{alone}")
    return "\n".join(lines)


def _word(moment: Moment, coming: list[Moment], minutes_gone: float) -> str:
    if moment.start_min <= minutes_gone < moment.start_min + moment.minutes:
        return "now"
    return "next" if coming and moment.start_min == coming[0].start_min else ""


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

    def stop(self, name: str) -> None:
        """A timer is no more."""
        self._ends.pop(name, None)
        self._rung.discard(name)
        self._count()

    def left_of(self, name: str) -> str:
        """In words how long a timer that runs still takes; nothing of one that does not."""
        left = self._ends.get(name, 0.0) - monotonic()
        return f" (runs, {left_words(left)} left: begins anew)" if left > 0 else ""

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


class ToWeigh(NamedTuple):
    """A lot, what to call it, the amount that was meant in grams and as it is read here; `read` gives grams of words.

    `read` raises ValueError, in words for a cook, for what it does not understand.
    """

    lot: str
    name: str
    grams: int
    words: str
    read: Callable[[str], int]


class Weights(Modal[dict[str, int]]):
    """Gives grams by lot id, or None. What is not understood is said below its field, and nothing is saved."""

    ABOUT = (
        "What the scale showed, a line a food, with its unit: 136 g, 4.8 oz, ½ cup. Enter saves it. What stays empty "
        "counts as it was planned."
    )

    def __init__(self, things: Sequence[ToWeigh]) -> None:
        super().__init__()
        self._things = things

    def compose(self) -> ComposeResult:
        """A field for each thing."""
        with VerticalScroll(id="choice") as fields:
            fields.can_focus = False  # the first number is typed at once
            yield Label("What did the scale show? Enter saves it.")
            for thing in self._things:
                yield Label(thing.name, markup=False)
                yield Input(thing.words, id=_field(thing.lot))
                yield Label("", id=_wrong(thing.lot), markup=False, classes="wrong")
            yield Button("Save weights", compact=True)
        yield KeysLine()

    def on_mount(self) -> None:
        """Nothing is wrong yet."""
        self.query(".wrong").set(display=False)

    @on(Input.Submitted)
    @on(Button.Pressed)
    def take(self) -> None:
        """Give the amounts, once every one is understood."""
        shown: dict[str, int] = {}
        wrong: list[str] = []
        for thing in self._things:
            typed = self.query_one(f"#{_field(thing.lot)}", Input).value.strip()
            problem = ""
            if typed == thing.words:
                shown[thing.lot] = thing.grams  # as it was meant, not as ounces round it
            elif typed:
                try:
                    shown[thing.lot] = thing.read(typed)
                except ValueError as error:
                    problem = str(error)
                    wrong.append(thing.lot)
            below = self.query_one(f"#{_wrong(thing.lot)}", Label)
            below.update(problem)
            below.display = bool(problem)
        if wrong:
            self.query_one(f"#{_field(wrong[0])}", Input).focus()
        else:
            self.dismiss(shown)


def _field(lot: str) -> str:
    return f"of-{lot.replace('.', '-')}"


def _wrong(lot: str) -> str:
    return f"wrong-{lot.replace('.', '-')}"
