"""The screens, driven by keys as a cook would (Textual's pilot)."""

import asyncio
from collections.abc import Awaitable, Callable
from datetime import date
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import DataTable, Input, Static

from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.help_screen import HelpScreen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.tonight_screen import TonightScreen

TODAY = date(2026, 3, 11)
SIZES = [(60, 20), (80, 24), (120, 40)]

Act = Callable[[LarderApp, Pilot[None]], Awaitable[None]]


@pytest.fixture
def play(tmp_path: Path, tables: Tables) -> Callable[..., LarderApp]:
    def run(act: Act, size: tuple[int, int] = (80, 24)) -> LarderApp:
        app = LarderApp(tmp_path / "home", tables, TODAY)

        async def scene() -> None:
            async with app.run_test(size=size) as pilot:
                await act(app, pilot)

        asyncio.run(scene())
        return app

    return run


async def type_line(pilot: Pilot[None], text: str) -> None:
    pilot.app.screen.query_one(Input).value = text
    await pilot.pause()
    await pilot.press("enter")
    await pilot.pause()


def foods(app: LarderApp) -> list[str]:
    table = app.screen.query_one(DataTable)
    return [str(table.get_row_at(row)[1]) for row in range(table.row_count)]


async def solved(app: LarderApp, pilot: Pilot[None]) -> str:
    await app.workers.wait_for_complete()
    await pilot.pause()
    return str(app.screen.query_one("#dinner", Static).content)


def test_an_empty_larder_explains_itself_and_offers_the_demo(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        assert isinstance(app.screen, LarderScreen)
        assert isinstance(app.focused, Input)
        assert app.screen.query_one("#empty").display
        await pilot.press("f3")
        assert isinstance(app.screen, LarderScreen)
        await pilot.press("f8")
        await pilot.pause()
        assert len(foods(app)) > 15
        assert not app.screen.query_one("#empty").display

    play(act)


def test_lines_are_read_as_they_are_typed_and_kept(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        line = app.screen.query_one(Input)
        line.value = "half tin cocount milk opened monday"
        await pilot.pause()
        meaning = str(app.screen.query_one("#meaning", Static).content)
        assert "coconut milk" in meaning
        assert "1 days left" in meaning
        await pilot.press("enter")
        await pilot.pause()
        assert line.value == ""
        await type_line(pilot, "my old boots")
        assert foods(app) == ["coconut milk"]

    play(act)


def test_an_unclear_line_asks_and_keeps_its_amount(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "tofu 200g, use by friday")
        assert isinstance(app.screen, Choice)
        await pilot.press("down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert app.screen.query_one(Input).value == "silken tofu 200g, use by friday"
        await pilot.press("enter")
        await pilot.pause()
        assert foods(app) == ["silken tofu"]
        await type_line(pilot, "tofu 100g")
        await pilot.press("escape")
        await pilot.pause()
        assert foods(app) == ["silken tofu"]

    play(act)


def test_used_up_thrown_away_edit_undo_redo(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 200g, use by tomorrow")
        await type_line(pilot, "2 carrots")
        await pilot.press("down", "f5")
        await pilot.pause()
        assert foods(app) == ["carrots"]
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert foods(app) == ["kale", "carrots"]
        await pilot.press("ctrl+y")
        await pilot.pause()
        assert foods(app) == ["carrots"]
        await pilot.press("f4")
        await pilot.pause()
        await type_line(pilot, "5 carrots")
        table = app.screen.query_one(DataTable)
        assert table.get_row_at(0)[2] == "350"

    play(act)


def test_the_larder_is_there_on_the_next_evening(play: Callable[..., LarderApp]) -> None:
    async def first(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 200g")

    async def second(app: LarderApp, pilot: Pilot[None]) -> None:
        assert foods(app) == ["kale"]
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert foods(app) == []

    play(first)
    play(second)


def test_tonight_listens_and_cooking_takes_out(play: Callable[..., LarderApp], tmp_path: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in (
            "firm tofu 280g, use by tomorrow", "cooked rice 400g, made today", "spinach 200g, use by today",
            "3 carrots", "soy sauce", "rapeseed oil", "eggs x4",
        ):  # fmt: skip
            await type_line(pilot, line)
        await pilot.press("f3")
        await pilot.pause()
        assert isinstance(app.screen, TonightScreen)
        dinner = await solved(app, pilot)
        assert "Amounts for the whole dish" in dinner
        assert "spinach" in dinner
        await pilot.press("plus")
        assert "2 people" in await solved(app, pilot)
        await pilot.press("minus")
        await solved(app, pilot)
        await pilot.press("n")
        assert (await solved(app, pilot)).splitlines()[0] != dinner.splitlines()[0]
        await pilot.press("d")
        assert "eggs" not in (await solved(app, pilot)).split("Left out")[0]
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, CookScreen)
        await pilot.press("space", "space", "left")
        await pilot.pause()
        assert "Step 2" in str(app.screen.query_one("#step", Static).content)
        await pilot.press("c")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act)
    with Store.at(tmp_path / "home") as store:
        left = {stored.content["food"]: stored.content["grams"] for stored in store.lots()}
    assert left.get("spinach", 0) < 200
    assert left.get("rice-white-cooked", 0) < 400


def test_no_dinner_is_said_on_the_screen(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "2 carrots")
        await pilot.press("f3")
        await pilot.pause()
        assert "No dinner meets the limits" in await solved(app, pilot)
        await pilot.press("enter", "x", "n", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act)


@pytest.mark.parametrize("size", SIZES)
def test_help_opens_once_and_escape_steps_back_at_every_size(
    size: tuple[int, int], play: Callable[..., LarderApp]
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f1", "f1", "f1")
        await pilot.pause()
        assert isinstance(app.screen, (HelpScreen, LarderScreen))
        await pilot.press("f1")
        await pilot.pause()
        await pilot.press("escape", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act, size)
