"""The screens' times as ratios, run by hand: python tests/benchmarks/screens.py

First paint against a Python that only imports the same parts of Textual; a keystroke in the entry line against
one frame of 1/60 s; the longest stall of the screen's own loop while a dinner is looked for, against the search.
"""

import asyncio
import statistics
import subprocess
import sys
import tempfile
from datetime import date
from pathlib import Path
from time import perf_counter

from textual.app import App
from textual.widgets import Input

from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp

TODAY = date(2026, 3, 11)
FRAME_S = 1 / 60
LINE = "half tin cocount milk opened monday"
ROUNDS = 5

BARE = "from textual.app import App; from textual.widgets import DataTable, Footer, Header, Input, Select, Static"
PAINT = """
import asyncio, tempfile
from datetime import date
from pathlib import Path
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp
async def once():
    app = LarderApp(Path(tempfile.mkdtemp()), load_tables([shipped("ingredient_tables")]), date(2026, 3, 11))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
asyncio.run(once())
"""


def seconds_of(code: str) -> float:
    """Median seconds of a whole Python process."""
    taken = []
    for _ in range(ROUNDS):
        start = perf_counter()
        subprocess.run([sys.executable, "-c", code], check=True)
        taken.append(perf_counter() - start)
    return statistics.median(taken)


async def longest_stall(app: App[None], until: asyncio.Event) -> float:
    """The longest time the loop did not come round, s."""
    longest, last = 0.0, perf_counter()
    while not until.is_set():
        await asyncio.sleep(0.001)
        now = perf_counter()
        longest, last = max(longest, now - last - 0.001), now
    return longest


async def on_screen() -> None:
    """Type a line key by key, then look for dinners, and watch the loop."""
    app = LarderApp(Path(tempfile.mkdtemp()), load_tables([shipped("ingredient_tables")]), TODAY)
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
        await pilot.press("escape", "f8")
        await pilot.pause()
        line = app.screen.query_one(Input)
        keys = []
        for end in range(1, len(LINE) + 1):
            start = perf_counter()
            app.screen.say_meaning(Input.Changed(line, LINE[:end]))  # type: ignore[attr-defined]
            keys.append(perf_counter() - start)
        print(f"a keystroke: median {statistics.median(keys) / FRAME_S:.2f}, most {max(keys) / FRAME_S:.2f} frames")
        line.value = ""
        for name in ("first dinner (the solver is loaded)", "next dinner"):
            over = asyncio.Event()
            watch = asyncio.create_task(longest_stall(app, over))
            start = perf_counter()
            await pilot.press("f3" if name.startswith("first") else "n")
            await asyncio.sleep(0.01)
            await app.workers.wait_for_complete()
            taken = perf_counter() - start
            over.set()
            stall = await watch
            print(f"{name}: longest stall {stall / FRAME_S:.1f} frames, {stall / taken:.2f} of the search")


if __name__ == "__main__":
    bare, paint = seconds_of(BARE), seconds_of(PAINT)
    print(f"first paint: {paint / bare:.2f} times a Python that only imports Textual")
    asyncio.run(on_screen())
