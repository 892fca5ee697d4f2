"""The recipe's screen, driven by keys as a cook would (Textual's pilot)."""

from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, TextArea

from calmlarder.tui.adapt_screen import AdaptScreen
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.page import Page
from calmlarder.tui.widgets.hanging import Hanging
from test_adapt_command import RECIPE
from test_own_recipes import FOODS
from test_screens import SIZES, play

__all__ = ["play"]


async def open_with(app: LarderApp, pilot: Pilot[None], text: str) -> None:
    await pilot.press("ctrl+r")
    await pilot.pause()
    assert isinstance(app.screen, AdaptScreen)
    app.screen.query_one(TextArea).text = text
    await pilot.press("f5")
    await app.workers.wait_for_complete()
    await pilot.pause()


def shown(app: LarderApp) -> str:
    return app.screen.query_one("#adapted", Hanging).content


@pytest.mark.parametrize("size", SIZES)
def test_a_pasted_recipe_is_brought_under(size: tuple[int, int], play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_with(app, pilot, RECIPE)
        text = shown(app)
        assert "Swap: 300 g brown onions, finely chopped" in text
        assert "a knob of zorbulous" in text
        assert app.screen.query_one("#adapted-scroll").display
        assert max(map(len, text.splitlines())) <= max(size[0], 44)
        await pilot.press("escape")
        assert app.screen.query_one(TextArea).text == RECIPE
        await pilot.press("escape")
        assert isinstance(app.screen, LarderScreen)

    play(act, size)


def test_a_file_is_read_and_the_changed_recipe_saved(play: Callable[..., LarderApp], tmp_path: Path) -> None:
    source, target = tmp_path / "curry.txt", tmp_path / "new.txt"
    source.write_text(RECIPE, encoding="utf-8")

    async def save(pilot: Pilot[None], name: Path) -> None:
        await pilot.press("f7")
        await pilot.pause()
        pilot.app.screen.query_one("#answer", Input).value = str(name)
        await pilot.press("enter")
        await pilot.pause()

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+r")
        await pilot.pause()
        file = app.screen.query_one("#file", Input)
        file.value = str(source)
        file.focus()
        await pilot.press("enter")
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert "Swap" in shown(app)
        await save(pilot, target)
        assert "300 g brown onions" not in target.read_text(encoding="utf-8")
        await save(pilot, source)
        assert isinstance(app.screen, Choice)
        await pilot.press("enter")  # leave it: the first and safe answer
        await pilot.pause()
        assert source.read_text(encoding="utf-8") == RECIPE
        await save(pilot, source)
        await pilot.press("down", "enter")
        await pilot.pause()
        assert source.read_text(encoding="utf-8") == target.read_text(encoding="utf-8")

    play(act)


def test_how_many_it_serves_is_asked_and_nothing_is_saved_before(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_with(app, pilot, RECIPE.replace("Serves 4\n", ""))
        assert shown(app) == ""
        await pilot.press("f7")
        assert isinstance(app.screen, AdaptScreen)
        app.screen.query_one("#serves", Input).value = "4"
        await pilot.press("f5")
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert "for 4" in shown(app)

    play(act)


@pytest.mark.parametrize("text", ["", "\x1b[31m", "{" * 10_000, "[brackets] [/b]", "<script>alert(1)</script>"])
def test_strange_text_is_answered_in_words(text: str, play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_with(app, pilot, text)
        assert isinstance(app.screen, AdaptScreen)
        assert "\x1b" not in shown(app)

    play(act)


def test_a_recipe_kept_on_its_screen_is_proposed_tonight(play: Callable[..., LarderApp]) -> None:
    page = Path(__file__).parent / "recipes" / "honey-mustard-salmon.html"

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in FOODS:
            app.screen.query_one(Input).value = line
            await pilot.press("enter")
        await open_with(app, pilot, page.read_text(encoding="utf-8"))
        await pilot.press("f8")
        await pilot.press("escape", "escape", "f3", "plus")  # for two
        await app.workers.wait_for_complete()
        await pilot.pause()
        content = app.screen.query_one(DinnerView).content
        assert "Or your own: Honey mustard salmon (salmon fillet: 1 d left)" in content
        await pilot.press("k")
        await pilot.pause()
        assert isinstance(app.screen, Page)
        told = app.screen.query_one(Hanging).content
        assert "Serves 4" in told
        assert "34 g maple syrup" in told
        assert "recipeIngredient" not in told

    play(act)
