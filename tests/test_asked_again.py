"""Who was to eat tonight, and what they may not: a dinner that is cooked and taken back forgets neither."""

from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from calmlarder.cli import main
from calmlarder.household import people
from calmlarder.household.household import Household
from calmlarder.store.documents import ASKED
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.asked_for_tonight import TonightOnly, words_of_tonight
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.widgets.pick import Pick
from programs import TODAY, settled
from test_change_of_mind import amounts, asked, open_tonight


@pytest.fixture
def command(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> Callable[..., tuple[int, str]]:
    def run(*words: str) -> tuple[int, str]:
        status = main([*words, "--home", str(tmp_path / "home"), "--today", TODAY.isoformat()])
        return status, " ".join(capsys.readouterr().out.split())

    return run


async def _ask_for_guests(app: LarderApp, pilot: Pilot[None]) -> None:
    """With kit, vegan and without peanuts, and a guest; nobody gets sesame tonight."""
    people.add(app._kitchen, "kit", {"diet": "vegan", "avoid": ("peanuts",)})
    await open_tonight(app, pilot)
    await pilot.press("f")
    await pilot.pause()
    await pilot.press("right", "space")
    app.screen.query_one("#guests", Input).value = "1"
    app.screen.query_one("#avoid", Pick).choose("sesame")
    await pilot.press("ctrl+s")
    await settled(app, pilot)


@pytest.mark.long
def test_the_screen_asks_again_for_who_was_to_eat(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _ask_for_guests(app, pilot)
        wanted, before = asked(app), amounts(app)
        assert "kit and 1 guest" in wanted
        assert "no peanuts, sesame" in wanted
        assert "peanuts" in wanted
        for _ in range(2):  # and once more: it is no less asked for the second time
            await pilot.press("enter")
            await pilot.pause()
            assert isinstance(app.screen, CookScreen)
            await pilot.press("c")
            await pilot.pause()
            await pilot.press("enter")
            await settled(app, pilot)
            assert isinstance(app.screen, LarderScreen)
            assert app._kitchen.noted(ASKED) is None
            await pilot.press("ctrl+z")
            await pilot.pause()
            said = str(app.screen.query_one("#meaning", Static).content)
            assert "kit and 1 guest" in said
            await pilot.press("f3")
            await settled(app, pilot)
            assert asked(app) == wanted
            assert amounts(app) == before
        await pilot.press("escape", "ctrl+y")  # cooked after all
        await pilot.pause()
        assert app._kitchen.noted(ASKED) is None

    play(act)


def test_it_outlives_the_program_and_not_the_day(
    play: Callable[..., LarderApp], tmp_path: Path, tables: Tables
) -> None:
    async def ask(app: LarderApp, pilot: Pilot[None]) -> None:
        await _ask_for_guests(app, pilot)

    play(ask)
    with Household(tmp_path / "home", tables, TODAY) as home:
        assert "kit and 1 guest" in words_of_tonight(home)

    async def again(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f3")
        await settled(app, pilot)
        assert isinstance(app.screen, TonightScreen)
        assert "kit and 1 guest" in asked(app)
        assert "no peanuts, sesame" in asked(app)

    play(again)
    with Household(tmp_path / "home", tables, TODAY.replace(day=TODAY.day + 1)) as home:
        assert not TonightOnly().again(home).is_seated


@pytest.mark.parametrize("note", ["", {"day": TODAY.isoformat()}, {"day": TODAY.isoformat(), "asked": {"people": "x"}}])
def test_a_note_of_another_form_asks_for_nothing(note: object, tmp_path: Path, tables: Tables) -> None:
    with Household(tmp_path / "home", tables, TODAY) as home:
        home.note(ASKED, note)
        assert not words_of_tonight(home)


LARDER = ("firm tofu 280g", "dry rice 1 kg", "carrots 400g", "spinach 200g", "rapeseed oil", "eggs x6")


def test_the_command_cooks_what_was_proposed_for_the_same_people(command: Callable[..., tuple[int, str]]) -> None:
    command("larder", "add", *LARDER)
    assert command("tonight", "--for", "me+1", "--avoid", "eggs")[0] == 0
    first = command("cooked", "--json")
    assert first[0] == 0
    assert command("cooked")[0] != 0
    assert "there again" in command("larder", "undo")[1]
    assert command("cooked", "--json") == first


def test_the_command_says_whom_the_screens_were_asked_for(
    play: Callable[..., LarderApp], command: Callable[..., tuple[int, str]]
) -> None:
    async def ask(app: LarderApp, pilot: Pilot[None]) -> None:
        await _ask_for_guests(app, pilot)

    play(ask)
    assert "Asked for on the screens, and not in this answer: dinner for you, kit and 1 guest" in command("tonight")[1]
    assert "Asked for on the screens" not in command("tonight", "--people", "2")[1]
