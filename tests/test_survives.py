"""No exception of one screen ends the program, and a crash never exits 0."""

import asyncio
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.widgets import TextArea

from calmlarder import cli
from calmlarder.cli import main
from calmlarder.commands import waste
from calmlarder.commands.given.common import Place
from calmlarder.household import adapting
from calmlarder.tui.adapt_screen import AdaptScreen
from calmlarder.tui.app import LarderApp
from calmlarder.tui.larder_screen import LarderScreen
from programs import PATIENCE_S, settled, shown, type_line, until

RECIPE = "Stew\n\nServes 4\n\n- 500 kg harissa with garlic\n- 200 g carrots\n"


def fails(*_: Any) -> Any:
    raise RuntimeError("made to fail")


async def ask_for_the_recipe(app: LarderApp, pilot: Pilot[None]) -> None:
    await pilot.press("ctrl+r")
    await pilot.pause()
    app.screen.query_one(TextArea).text = RECIPE
    await pilot.press("f5")
    await settled(app, pilot)


async def still_there(app: LarderApp, pilot: Pilot[None]) -> None:
    """The larder takes a line."""
    assert isinstance(app.screen, LarderScreen)
    await type_line(pilot, "carrots x4")
    assert [one.lot.food for one in app._kitchen.lots()] == ["carrot"]


def told(app: LarderApp) -> str:
    return " ".join(notice.message for notice in app._notifications)


def test_an_amount_of_no_kitchen_is_no_fault(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await ask_for_the_recipe(app, pilot)
        assert "Stew" in shown(app, "#adapted")

    play(act, faults_meant=False)


def test_a_fault_in_a_thread_of_a_screen_is_said(
    play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(adapting, "adapted_recipe", fails)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await ask_for_the_recipe_and_wait(app, pilot)
        assert "at fault (RuntimeError: made to fail" in told(app)
        assert isinstance(app.screen, AdaptScreen)
        await pilot.press("escape")
        await pilot.pause()
        await still_there(app, pilot)

    assert [str(one) for one in play(act, faults_meant=True).faults] == ["made to fail"]


async def ask_for_the_recipe_and_wait(app: LarderApp, pilot: Pilot[None]) -> None:
    await pilot.press("ctrl+r")
    await pilot.pause()
    app.screen.query_one(TextArea).text = RECIPE
    await pilot.press("f5")
    await until(pilot, lambda: app.faults)
    await pilot.pause()


def test_a_screen_that_cannot_open_is_left(play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(AdaptScreen, "on_mount", fails)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+r")
        await until(pilot, lambda: app.faults and isinstance(app.screen, LarderScreen))
        await pilot.pause()
        await still_there(app, pilot)

    play(act, faults_meant=True)


def test_a_key_that_fails_leaves_its_screen(play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(LarderApp, "action_adapt", fails)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+r")
        await pilot.pause()
        assert "made to fail" in told(app)
        await still_there(app, pilot)

    play(act, faults_meant=True)


async def until_it_is_left(app: LarderApp) -> None:
    """The pilot waits for a program that runs: it is no help here."""
    async with asyncio.timeout(PATIENCE_S):
        while not app.return_code:
            await asyncio.sleep(0.05)


def test_behind_the_first_screen_it_ends_with_another_status_than_0(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.screen.call_later(fails)
        await until_it_is_left(app)

    assert play(act, faults_meant=True).return_code == 70


def test_a_command_that_fails_says_so_in_words(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    def failing(options: Place) -> int:
        fails()
        return 0

    monkeypatch.setattr(waste, "waste", failing)
    assert main(["waste", "--home", str(tmp_path)]) == cli._FAULT == 70
    said = capsys.readouterr().err
    assert "at fault (RuntimeError: made to fail, at test_survives.py:" in said
    assert "Traceback" not in said


def test_the_recipe_of_the_command(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "stew.md").write_text(RECIPE, encoding="utf-8")
    assert main(["adapt", str(tmp_path / "stew.md"), "--home", str(tmp_path)]) in {0, 3}
    assert "Traceback" not in capsys.readouterr().err
