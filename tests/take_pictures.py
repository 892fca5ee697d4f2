"""Pictures of every screen at three sizes, for the README and for looking at: python tests/take_pictures.py."""

import asyncio
import re
import tempfile
from datetime import date
from pathlib import Path

from textual.widgets import Input

from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp

FOLDER = Path(__file__).parent / "pictures"
SIZES = [(60, 20), (80, 24), (120, 40)]
TODAY = date(2026, 3, 11)


async def take(size: tuple[int, int]) -> None:
    """Walk through the screens once."""
    tables = load_tables([shipped("ingredient_tables")])
    with tempfile.TemporaryDirectory() as home:
        app = LarderApp(Path(home), tables, TODAY)
        name = f"{size[0]}x{size[1]}.svg"

        async with app.run_test(size=size) as pilot:

            async def picture(screen: str) -> None:
                await app.workers.wait_for_complete()
                await pilot.pause()
                # Fonts of the reader's own machine: the picture asks no network for any.
                drawn = re.sub(r"@font-face \{.*?\}|<!--.*?-->", "", app.export_screenshot(), flags=re.DOTALL)
                drawn = drawn.replace("<text ", '<text xml:space="preserve" ')
                drawn = "\n".join(line.rstrip() for line in drawn.splitlines() if line.strip())
                (FOLDER / f"{screen}-{name}").write_text(drawn + "\n", encoding="utf-8")

            await pilot.pause()
            await picture("limits")
            await pilot.press("escape", "f8")
            await pilot.pause()
            app.screen.query_one(Input).value = "half tin cocount milk opened monday"
            await picture("larder")
            await pilot.press("f3")
            await pilot.pause()
            await picture("tonight")
            for key, screen in (("w", "why"), ("c", "swap")):
                await pilot.press(key)
                await pilot.pause()
                await pilot.press("down", "enter")
                await pilot.pause()
                await picture(screen)
                await pilot.press("escape")
                await pilot.pause()
            await pilot.press("enter")
            await picture("cook")
            await pilot.press("f1")
            await picture("help")


if __name__ == "__main__":
    FOLDER.mkdir(exist_ok=True)
    for one in SIZES:
        asyncio.run(take(one))
