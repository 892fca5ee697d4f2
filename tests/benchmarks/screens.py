"""The screens' times as ratios, run by hand: python tests/benchmarks/screens.py

First paint against a bare Textual program that paints a line, a list and a footer; a keystroke in the entry line
against one frame of 1/60 s; the longest stall of the screen's own loop while the solver is loaded, while fifty dinners
are looked for and while a first plan is built, each with how often it was longer than the 50 ms that are allowed.
"""

import asyncio
import statistics
import tempfile
from collections.abc import Awaitable
from contextlib import suppress
from datetime import date
from pathlib import Path
from time import perf_counter, thread_time

from processes import seconds
from textual.widgets import Input
from textual.worker import WorkerCancelled

from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp

TODAY = date(2026, 3, 11)
FRAME_S = 1 / 60
LINE = "half tin cocount milk opened monday"
ROUNDS = 5
SOLVES = 50
ALLOWED_S = 0.05
PLAN_S = 8.0
# Keys on Tonight, each of which looks for a dinner anew; r now and then, or little is left to be found.
ASKED = ("n", "n", "plus", "t enter", "minus", "s down enter", "s down enter", "t enter", "s down enter", "n", "r")

BARE = """
import asyncio
from textual.app import App
from textual.widgets import Footer, Input, OptionList, Static
class Bare(App):
    def compose(self):
        yield Static("larder")
        yield Input()
        yield OptionList(*(f"thing {n}" for n in range(60)))
        yield Footer()
async def once():
    async with Bare().run_test(size=(80, 24)) as pilot:
        await pilot.pause()
asyncio.run(once())
"""
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


async def stalls(until: asyncio.Event) -> list[tuple[float, float]]:
    """How long the loop did not come round each time, s; a tick is meant every millisecond.

    By the clock, and in the processor time of the loop's own thread: that one does not hang on how busy the machine is.
    """
    found, last, own = [], perf_counter(), thread_time()
    while not until.is_set():
        await asyncio.sleep(0.001)
        now, used = perf_counter(), thread_time()
        found.append((now - last - 0.001, used - own))
        last, own = now, used
    return found


async def watch(name: str, work: Awaitable[object]) -> None:
    """Tick while something is done, and tell the stalls."""
    over = asyncio.Event()
    ticking = asyncio.create_task(stalls(over))
    start = perf_counter()
    await work
    taken = perf_counter() - start
    over.set()
    found = await ticking
    for how, each in zip(("by the clock", "of the thread's own work"), zip(*found, strict=True), strict=True):
        longer = sum(one > ALLOWED_S for one in each)
        words = f"{1000 * max(each):.0f} ms of {taken:.1f} s; {longer} over {1000 * ALLOWED_S:.0f} ms"
        print(f"{name}: longest stall {how} {words}", flush=True)


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
            with line.prevent(Input.Changed):
                line.value = LINE[:end]
            app.screen.say_meaning(Input.Changed(line, line.value))  # type: ignore[attr-defined]
            keys.append(perf_counter() - start)
        print(f"a keystroke: median {statistics.median(keys) / FRAME_S:.2f}, most {max(keys) / FRAME_S:.2f} frames")
        await pilot.press("escape")  # the demo leaves a line that is not clear
        await watch("the solver is loaded", asyncio.gather(asyncio.sleep(2), app.workers.wait_for_complete()))

        async def ask(key: str) -> None:
            await pilot.press(*key.split())
            await asyncio.sleep(0.01)
            while any(not worker.is_finished for worker in app.workers):
                with suppress(WorkerCancelled):  # another change of mind ends the search before
                    await app.workers.wait_for_complete()

        async def fifty() -> None:
            for number in range(SOLVES):
                await ask(ASKED[number % len(ASKED)])

        async def first_plan() -> None:
            await pilot.press("ctrl+n")
            await asyncio.sleep(PLAN_S)
            await ask("full_stop")

        await watch("Tonight is opened", ask("f3"))
        await watch(f"{SOLVES} solves", fifty())
        await ask("escape")
        await watch("a first plan", first_plan())


if __name__ == "__main__":
    home = tempfile.mkdtemp()
    listed = Path(home) / "listed.txt"
    listed.write_text("".join(f"{THINGS[number % len(THINGS)]}\n" for number in range(LOTS)), encoding="utf-8")
    seconds("-m", "calmlarder", "larder", "import", str(listed), "--home", home, "--today", TODAY.isoformat())
    pairs = [(seconds("-c", BARE), seconds("-c", PAINT, home)) for _ in range(ROUNDS)]
    ratio = statistics.median(paint / bare for bare, paint in pairs)
    slowest = max(paint for _, paint in pairs)
    print(f"first paint of {LOTS} lots: {ratio:.2f} times a bare Textual program (slowest {slowest:.2f} s)")
    asyncio.run(on_screen())
