"""The recipe's screen, driven by keys as a cook would (Textual's pilot)."""

from collections.abc import Callable
from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot
from textual.widgets import Input, TextArea

from calmlarder.household.own_recipes import own_recipes
from calmlarder.tui.adapt_screen import AdaptScreen
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.widgets.drawn import READABLE
from calmlarder.tui.widgets.hanging import Hanging
from how_much import some
from programs import settled
from test_adapt_command import RECIPE
from test_screens import SIZES


async def open_with(app: LarderApp, pilot: Pilot[None], text: str) -> None:
    await pilot.press("ctrl+r")
    await pilot.pause()
    assert isinstance(app.screen, AdaptScreen)
    app.screen.query_one(TextArea).text = text
    await pilot.press("f5")
    await settled(app, pilot)


def shown(app: LarderApp) -> str:
    return app.screen.query_one("#adapted", Hanging).content


@pytest.mark.parametrize("size", some(SIZES, 2))
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
        await settled(app, pilot)
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
        await settled(app, pilot)
        assert "for 4" in shown(app)

    play(act)


@pytest.mark.parametrize("text", ["", "\x1b[31m", "{" * 10_000, "[brackets] [/b]", "<script>alert(1)</script>"])
def test_strange_text_is_answered_in_words(text: str, play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_with(app, pilot, text)
        assert isinstance(app.screen, AdaptScreen)
        assert "\x1b" not in shown(app)

    play(act)


def test_blank_lines_of_a_paste_part_the_recipe_and_one_that_fits_is_kept(play: Callable[..., LarderApp]) -> None:
    """No line says where the ingredients begin: the blank lines around them do."""
    recipe = "Carrot rice\n\nServes 2\n\n200 g dry white rice\n1 onion, chopped\n300 g carrots\n\nBoil the rice. Fry.\n"

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+r")
        await pilot.pause()
        app.post_message(events.Paste(recipe))
        await settled(app, pilot)
        assert "Carrot rice, for 2" in shown(app)
        await pilot.press("k")
        await pilot.pause()
        assert [(one.title, one.serves) for one in own_recipes(app._kitchen)] == [("Carrot rice", 2)]
        await pilot.press("e")
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        await pilot.press("escape", "escape", "f6", "enter")
        await pilot.pause()
        text = app.screen.query_one(TextArea).text
        assert "Carrot rice" in text
        assert "onion, chopped" not in text

    play(act)


@pytest.mark.parametrize("size", [(200, 50), (120, 40), (60, 20)])
def test_an_answer_is_wrapped_once_at_every_width(play: Callable[..., LarderApp], size: tuple[int, int]) -> None:
    """A line that was wrapped to another width and then again leaves a word or two in a line of their own."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await open_with(app, pilot, RECIPE)
        place = app.screen.query_one("#adapted", Hanging)
        for columns, rows in ((80, 24), size):
            await pilot.resize_terminal(columns, rows)
            await settled(app, pilot)
            wide = place.column(place.content_size.width)
            assert wide == min(READABLE, (columns - 10) // 2 if columns == 200 else place.content_size.width)
            before = place._lines[: place._lines.index("The recipe, changed")]
            assert [line for line in before if len(line) > wide] == []
            reasons = [
                one for one in zip(place._lines, place._lines[1:], strict=False) if one[0].startswith("    Likely")
            ]
            assert reasons
            for first, second in reasons:  # as full as words allow
                assert len(first) + 1 + len(second.split()[0]) > wide - 2

    play(act, size)
