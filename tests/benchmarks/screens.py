"""The screens' times as ratios, run by hand: python tests/benchmarks/screens.py

First paint against a Python that only imports the same parts of Textual; a keystroke in the entry line against
one frame of 1/60 s; the longest stall of the screen's own loop while a dinner is looked for, against the search.
"""

import asyncio
import statistics
import tempfile
from datetime import date
from pathlib import Path
from time import perf_counter

from processes import seconds
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
import asyncio, sys
from datetime import date
from pathlib import Path
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp
async def once():
    app = LarderApp(Path(sys.argv[1]), load_tables([shipped("ingredient_tables")]), date(2026, 3, 11))
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.pause()
asyncio.run(once())
"""
LOTS = 60
THINGS = (
    "spinach 200g",
    "firm tofu 280g, use by 2026-03-12",
    "3 carrots",
    "tin of chickpeas",
    "broccoli 300g",
    "eggs x4",
)


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
    home = tempfile.mkdtemp()
    listed = Path(home) / "listed.txt"
    listed.write_text("".join(f"{THINGS[number % len(THINGS)]}\n" for number in range(LOTS)), encoding="utf-8")
    seconds("-m", "calmlarder", "larder", "import", str(listed), "--home", home, "--today", TODAY.isoformat())
    pairs = [(seconds("-c", BARE), seconds("-c", PAINT, home)) for _ in range(ROUNDS)]
    ratio = statistics.median(paint / bare for bare, paint in pairs)
    slowest = max(paint for _, paint in pairs)
    print(f"first paint of {LOTS} lots: {ratio:.2f} times a Python that only imports Textual (slowest {slowest:.2f} s)")
    asyncio.run(on_screen())
