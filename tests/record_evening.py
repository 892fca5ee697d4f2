"""An evening as one animated picture, for the README: python tests/record_evening.py [FILE.svg].

Pictures of the program are taken one after the other and joined: what stands on a row in several of them is drawn once
and shown while they last (CSS alone, no script). Whoever asks for less motion sees the dinner and nothing that moves.
"""

import asyncio
import re
import sys
import tempfile
from datetime import date
from pathlib import Path
from typing import NamedTuple

from textual.pilot import Pilot
from textual.widgets import Input

from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp

TODAY = date(2026, 3, 11)
COLUMNS, ROWS = 80, 24
CELL, LINE = 12.2, 24.4  # units of a picture that Textual takes
GROUND = "#15191c"
LINE_TYPED = "half tin cocount milk opened monday"
_TEXT = re.compile(r'<text class="([^"]+)" x="([\d.]+)" y="([\d.]+)" textLength="([\d.]+)"[^>]*>([^<]*)</text>')
_RECT = re.compile(r'<rect fill="([^"]+)" x="([\d.]+)" y="([\d.]+)" width="([\d.]+)"')
_STYLE = re.compile(r"\.([\w-]+-r\d+) \{ ([^}]*) \}")


class Frame(NamedTuple):
    """What stands on each row, and for how many seconds; `is_still` is the one shown without motion."""

    rows: dict[int, str]
    seconds: float
    is_still: bool = False


class Recorder:
    """Takes frames; a style is named once for all of them."""

    def __init__(self, app: LarderApp, pilot: Pilot[None]) -> None:
        self._app, self._pilot = app, pilot
        self._styles: dict[str, str] = {}
        self.frames: list[Frame] = []

    async def press(self, *keys: str) -> None:
        """Press, and wait for whatever they began."""
        for key in keys:
            await self._pilot.press(key)
            await self._app.workers.wait_for_complete()
            await self._pilot.pause()

    async def frame(self, seconds: float, *, is_still: bool = False) -> None:
        """What is on the screen now."""
        await self._pilot.pause()
        drawn = self._app.export_screenshot()
        styles = {name: self._style(words) for name, words in _STYLE.findall(drawn)}
        rows: dict[int, list[str]] = {}
        for fill, x, y, width in _RECT.findall(drawn):
            if fill != GROUND:
                row = round((float(y) - 1.5) / LINE)
                rows.setdefault(row, []).append(f'<rect fill="{fill}" x="{x}" width="{width}" height="24.65"/>')
        for name, x, y, length, words in _TEXT.findall(drawn):
            if words.replace("&#160;", "").strip():
                row = round((float(y) - 20) / LINE)
                text = f'<text class="{styles.get(name, "")}" x="{x}" y="18.5" textLength="{length}">{words}</text>'
                rows.setdefault(row, []).append(text.replace("&#160;", "\u00a0"))
        self.frames.append(Frame({row: "".join(parts) for row, parts in rows.items()}, seconds, is_still))

    def _style(self, words: str) -> str:
        return self._styles.setdefault(words, f"s{len(self._styles)}")

    def svg(self) -> str:
        """All frames in one picture."""
        total = sum(one.seconds for one in self.frames)
        still = next(number for number, one in enumerate(self.frames) if one.is_still)
        drawn: dict[tuple[int, str], list[int]] = {}
        for number, one in enumerate(self.frames):
            for row, words in one.rows.items():
                drawn.setdefault((row, words), []).append(number)
        times, css, body = [0.0], [], []
        for one in self.frames:
            times.append(times[-1] + 100 * one.seconds / total)
        names: dict[tuple[int, ...], str] = {}
        for (row, words), when in sorted(drawn.items()):
            name = names.setdefault(tuple(when), f"a{len(names)}")
            body.append(f'<g class="{name}" transform="translate(0,{row * LINE + 1.5:.1f})">{words}</g>')
        for shown, name in names.items():
            css.append(f".{name}{{visibility:{'visible' if still in shown else 'hidden'}}}")
            if len(shown) < len(self.frames):
                css.append(_keyframes(name, shown, times, total))
        css += [f".{name}{{{words.strip()}}}" for words, name in self._styles.items()]
        width, height = COLUMNS * CELL + 18, ROWS * LINE + 50
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:.0f} {height:.0f}">\n<style>\n'
            "text{font-family:Fira Code,ui-monospace,Menlo,Consolas,DejaVu Sans Mono,monospace;font-size:20px}\n"
            + "\n".join(css) + f'\n</style>\n<rect width="{width:.0f}" height="{height:.0f}" rx="8" fill="{GROUND}" '
            'stroke="#46566b"/>\n<g transform="translate(9,24)" xml:space="preserve">\n' + "\n".join(body)
            + "\n</g>\n</svg>\n"
        )  # fmt: skip


def _keyframes(name: str, shown: tuple[int, ...], times: list[float], total: float) -> str:
    """Visible while its frames last; the picture begins again after the last of them."""
    steps = []
    for number in range(len(times) - 1):
        is_shown = number in shown
        if number == 0 or is_shown != (number - 1 in shown):
            steps.append(f"{times[number]:.2f}%{{visibility:{'visible' if is_shown else 'hidden'}}}")
    frames = f"@keyframes {name}{{{''.join(steps)}}}"
    play = f".{name}{{animation:{name} {total:.1f}s step-end infinite}}"
    return f"{frames}\n@media (prefers-reduced-motion:no-preference){{{play}}}"


async def evening(recorder: Recorder, app: LarderApp) -> None:
    """From a line that is typed to a dinner that is cooked, and the days after."""
    press, frame = recorder.press, recorder.frame
    await press("escape", "f8", "escape")
    await frame(2)
    line = app.screen.query_one("#line", Input)
    for end in (4, 8, 16, 27, len(LINE_TYPED)):
        line.value = LINE_TYPED[:end]
        line.cursor_position = end
        await frame(2.5 if end == len(LINE_TYPED) else 0.35)
    await press("enter")
    await frame(2.5)
    await press("f3")
    await frame(5, is_still=True)
    await press("n")
    await frame(2.5)
    await press("x")
    await frame(1.8)
    await press("enter")
    await frame(3)
    await press("ctrl+z")
    await frame(2)
    await press("enter", "b")
    await frame(2.5)
    for _ in range(2):
        await press("space")
        await frame(2)
    await press("c")
    await frame(1.5)
    await press("enter")
    await frame(3.5)
    await press("ctrl+n")
    await frame(5)


async def record(file: Path) -> None:
    """Play it on the demo larder, and write the picture."""
    with tempfile.TemporaryDirectory() as home:
        app = LarderApp(Path(home), load_tables([shipped("ingredient_tables")]), TODAY)
        async with app.run_test(size=(COLUMNS, ROWS)) as pilot:
            await pilot.pause()
            recorder = Recorder(app, pilot)
            await evening(recorder, app)
            file.write_text(recorder.svg(), encoding="utf-8")


if __name__ == "__main__":
    asyncio.run(record(Path(sys.argv[1] if len(sys.argv) > 1 else Path(__file__).parent / "pictures" / "evening.svg")))
