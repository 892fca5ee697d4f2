"""No terminal is too small to go on: each screen opens, and whatever was typed is kept (Textual's pilot)."""

import asyncio
from pathlib import Path

import pytest
from textual.pilot import Pilot

from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from how_much import some
from programs import TODAY

_KEYS = ("f1", "escape", "f2", "escape", "down", "f9", "escape", "f6", "escape", "f10", "escape", "ctrl+l", "escape")


@pytest.mark.parametrize("size", some([(20, 8), (12, 24), (1, 24), (80, 1), (1, 1)], 2))
def test_each_screen_opens_on_a_tiny_terminal(tmp_path: Path, tables: Tables, size: tuple[int, int]) -> None:
    app = LarderApp(tmp_path / "home", tables, TODAY)

    async def scene() -> None:
        async with app.run_test(size=size) as pilot:
            await pilot.press("escape", *"kale 150g", "enter")
            await _press(pilot)

    asyncio.run(scene())
    assert not app.return_code
    with Store.at(tmp_path / "home") as store:
        assert [one.content["food"] for one in store.lots()] == ["kale"]


async def _press(pilot: Pilot[None]) -> None:
    for key in _KEYS:
        await pilot.press(key)
        await pilot.pause()
