"""A timeline drawn as lanes: the cook, each hob ring, the oven, the microwave, and a mark for now or for a step."""

from collections.abc import Sequence
from typing import NamedTuple

from rich.text import Text

from calmlarder.tui.widgets.drawn import Drawn

_NAMES = 12  # columns for the names of lanes
_BUSY, _BESIDE, _FREE, _NOW = "▆", "▂", " ", "▲"
_STEPS_MIN = (1, 2, 5, 10, 15, 20, 30, 60)
_SCALE_COLUMNS = 8  # least columns between two numbers of the scale


class Stretch(NamedTuple):
    """One piece of work: minutes from the start, and for how long; `place` is empty for the cook's hands alone."""

    start_min: int
    minutes: int
    place: str
    hands_on: bool


def lanes_of(stretches: Sequence[Stretch]) -> dict[str, list[Stretch]]:
    """What stands in each lane: `you`, then hob rings as many as run at once, then the other places."""
    lanes: dict[str, list[Stretch]] = {"you": [one for one in stretches if one.hands_on]}
    rings: list[list[Stretch]] = []
    for one in sorted((one for one in stretches if one.place == "ring"), key=lambda one: one.start_min):
        free = next((r for r in rings if r[-1].start_min + r[-1].minutes <= one.start_min), None)
        if free is None:
            rings.append([one])
        else:
            free.append(one)
    lanes |= {f"hob ring {number}": ring for number, ring in enumerate(rings, start=1)}
    for place in dict.fromkeys(one.place for one in stretches if one.place not in {"", "ring"}):
        lanes[place] = [one for one in stretches if one.place == place]
    return lanes


class Lanes(Drawn):
    """Lanes under a scale in minutes; the mark moves as the clock or the step on the screen does."""

    def __init__(self, stretches: Sequence[Stretch]) -> None:
        super().__init__()
        self._stretches = tuple(stretches)
        self._mark_min: float | None = None
        self._mark = ""
        self._is_low = False

    def be_low(self, is_low: bool) -> None:
        """One line for all lanes, where the screen has no room for more."""
        self._is_low = is_low
        self.set_class(is_low, "-low")
        self.redraw()

    def show_mark(self, minutes: float | None, words: str) -> None:
        """Move the mark, which stands for these words; None takes it away."""
        self._mark_min, self._mark = minutes, words
        self.redraw()

    def draw(self, width: int) -> Text:
        """The scale, a line a lane, and the mark."""
        length = max((one.start_min + one.minutes for one in self._stretches), default=1)
        room = max(10, width - _NAMES - 1)
        if self._is_low:
            return self._one_line(length, room)
        text = Text(style=self.tone("foreground"), no_wrap=True)
        text.append(" " * _NAMES + self._scale(length, room), style=self.tone("faint"))
        for name, lane in lanes_of(self._stretches).items():
            cells = [_FREE] * room
            for one in lane:
                _fill(cells, one, length, _BUSY if one.hands_on or name != "you" else _BESIDE)
            text.append(f"\n{name:<{_NAMES}}")
            text.append("".join(cells[:room]), style=self.tone("accent" if name == "you" else "bar-pale"))
        if self._mark_min is not None:
            at = min(room - 1, round(room * self._mark_min / length))
            words = f"{_NOW} {self._mark}" if at + len(self._mark) + 2 <= room else f"{self._mark} {_NOW}"
            text.append("\n" + " " * (_NAMES + at - (len(words) - 1) * (words[0] != _NOW)) + words)
        return text

    def _one_line(self, length: int, room: int) -> Text:
        """High where the cook is at work, low where something cooks by itself, and the mark between."""
        cells = [_FREE] * room
        for one in sorted(self._stretches, key=lambda one: one.hands_on):  # the cook over what cooks by itself
            _fill(cells, one, length, _BUSY if one.hands_on else _BESIDE)
        if self._mark_min is not None:
            cells[min(room - 1, round(room * self._mark_min / length))] = _NOW
        text = Text(style=self.tone("foreground"), no_wrap=True)
        text.append(f"{f'{length} minutes':<{_NAMES}}", style=self.tone("faint"))
        return text.append("".join(cells), style=self.tone("accent"))

    def _scale(self, length: int, room: int) -> str:
        step = next((s for s in _STEPS_MIN if room * s / length >= _SCALE_COLUMNS), _STEPS_MIN[-1])
        scale = [" "] * (room + 4)
        for minute in range(0, length + 1, step):
            at = round(room * minute / length)
            number = str(minute)
            if at + len(number) <= room:
                scale[at : at + len(number)] = number
        return "".join(scale)[: room + 1].rstrip()


def _fill(cells: list[str], one: Stretch, length: int, mark: str) -> None:
    """A piece of work in the cells of a lane; one column at least."""
    begin, end = (round(len(cells) * at / length) for at in (one.start_min, one.start_min + one.minutes))
    cells[begin : max(end, begin + 1)] = [mark] * (max(end, begin + 1) - begin)
