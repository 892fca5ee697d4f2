"""Two programs on one larder: what the other took away is told, and the screens stay (Textual's pilot)."""

from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from calmlarder.store.store import Store
from calmlarder.tui.app import LarderApp
from calmlarder.tui.larder_screen import LarderScreen
from programs import until
from test_screens import foods, type_line


def take_away(home: Path) -> None:
    """What another program does meanwhile."""
    with Store.at(home) as other:
        for one in other.lots():
            other.change_lots({one.id: None}, "take it away")


def told(app: LarderApp) -> list[str]:
    return [notice.message for notice in app._notifications]


def test_a_lot_that_another_program_took(
    play: Callable[..., LarderApp], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # On a busy machine the list would be filled anew before the key is pressed, and there would be nothing to find.
    monkeypatch.setattr("calmlarder.tui.larder_screen._LOOK_AGAIN_S", 600)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for keys in (("f5", "enter"), ("f7",), ("f6", "m"), ("f4", "enter")):
            await type_line(pilot, "spinach 200g, use by today")
            await pilot.press("escape", "down")
            take_away(tmp_path / "home")
            await pilot.press(*keys)
            await pilot.pause()
            assert any("has no item" in words for words in told(app)), keys
            app.clear_notifications()
            await pilot.press("escape")
            await pilot.pause()
            assert isinstance(app.screen, LarderScreen)
            app.screen.refill()

    play(act)


def test_what_another_program_brought_is_shown(play: Callable[..., LarderApp], tmp_path: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "spinach 200g, use by today")
        app.screen.query_one(Input).value = "firm to"
        with Store.at(tmp_path / "home") as other:
            (spinach,) = other.lots()
            other.add_lots([{**spinach.content, "food": "tempeh", "line": "tempeh 200g"}], "add tempeh")
        await until(pilot, lambda: sorted(foods(app)) == ["spinach", "tempeh"])
        assert app.screen.query_one(Input).value == "firm to"  # what is half typed stays

    play(act)
