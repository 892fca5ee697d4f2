"""What opens over a screen: it has a help of its own, and a long list is searched by typing."""

from collections.abc import Callable

import pytest
from textual import events
from textual.pilot import Pilot
from textual.widgets import OptionList, Static

from calmlarder.intake.profile import profile_named
from calmlarder.render.limit_text import limit_sources
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Ask, Choice
from calmlarder.tui.help_screen import HelpScreen, Parts
from calmlarder.tui.person_form import PersonForm

_FOODS = ["carrots", "firm tofu", "tempeh", "spinach", "canned tomatoes", "feta", "rice noodles", "eggs"]


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """The demo larder."""
    return ("f8",)


async def help_over(pilot: Pilot[None]) -> str:
    await pilot.press("f1")
    await pilot.pause()
    assert isinstance(pilot.app.screen, HelpScreen)
    words = "\n".join(part.draw(70).plain for part in pilot.app.screen.query(Parts))
    await pilot.press("f1")
    await pilot.pause()
    return words


def test_help_over_a_dialog_is_of_that_dialog(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f2", "enter")
        await pilot.pause()
        assert isinstance(app.screen, PersonForm)
        words = await help_over(pilot)
        assert "Ctrl+S" in words.split("Everywhere")[0]
        assert isinstance(app.screen, PersonForm)
        await pilot.press("escape")
        for asked in (Choice("Which?", _FOODS), Ask("A name:")):
            await app.push_screen(asked)
            await pilot.pause()
            words = await help_over(pilot)
            assert words.startswith("What is asked here")
            assert " ".join(asked.ABOUT.split()[:4]) in words
            assert app.screen is asked

    play(act)


def test_letters_find_a_name_in_a_list(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        got: list[str | None] = []
        await app.push_screen(Choice("Which?", _FOODS), got.append)
        await pilot.pause()
        names = app.screen.query_one(OptionList)
        for keys, found in (("to", "firm tofu"), ("m", "canned tomatoes")):
            await pilot.press(*keys)
            assert names.highlighted is not None
            assert _FOODS[names.highlighted] == found
        await pilot.press("z", "enter")
        await pilot.pause()
        assert names.highlighted is None
        assert got == []
        assert "tomz: no name here begins so" in str(app.screen.query_one("#ask-empty", Static).content)
        await pilot.press("backspace", "backspace", "backspace", "e")
        assert names.highlighted is not None
        assert _FOODS[names.highlighted] == "tempeh"
        await pilot.press("enter")
        await pilot.pause()
        assert got == ["tempeh"]

    play(act)


def test_sources_of_limits_have_authors_and_no_keys(tables: Tables) -> None:
    """Author and year as the works themselves are cited (sources.csv); a key is for the tables alone."""
    words = limit_sources(profile_named("elimination", tables), tables)
    assert "Varney J et al 2017; cut-off for one food" in words
    assert "EFSA Panel on Dietetic Products 2012" in words
    assert "defining cutoff values" in words
    assert not [row.key for row in tables.sources if f"{row.key};" in words or f"{row.key}:" in words
                or f"({row.key})" in words]  # fmt: skip


async def _all_at_once(app: LarderApp, pilot: Pilot[None], *keys: str) -> None:
    """As a fast hand types on a busy machine: nothing was heard of before the Enter is there."""
    for key in (*keys, "enter", "enter"):  # the second Enter finds it answered
        app.post_message(events.Key(key, " " if key == "space" else key if len(key) == 1 else None))
    await pilot.pause()


def test_what_is_typed_before_enter_is_in_the_answer(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        said: list[str | None] = []
        app.push_screen(Ask("How does it feel?"), said.append)
        await pilot.pause()
        await _all_at_once(app, pilot, "4", "space", *"tight")
        assert said == ["4 tight"]

    play(act)


@pytest.mark.parametrize(
    ("keys", "other", "chosen"),
    [
        (["t", "o", "m"], "", "canned tomatoes"),
        (["t", "o", "m", *["backspace"] * 2, "e"], "", "tempeh"),
        (["down", "down", "down"], "", "spinach"),
        (["s", "down", "down"], "", "feta"),
        (["s", "w", "e", "d", "e"], "or type another", "swede"),
        (["down", "down"], "or type another", "tempeh"),
    ],
)
def test_what_is_pressed_before_enter_is_heard_before_it(
    play: Callable[..., LarderApp], keys: list[str], other: str, chosen: str
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        said: list[str | None] = []
        app.push_screen(Choice("Which?", _FOODS, other), said.append)
        await pilot.pause()
        await _all_at_once(app, pilot, *keys)
        assert said == [chosen]

    play(act)
