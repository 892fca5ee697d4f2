"""The line of keys below each screen: whole at every width, and all keys in one list (Textual's pilot measures)."""

from collections.abc import Callable

import pytest
from textual.command import CommandPalette, Hit
from textual.pilot import Pilot
from textual.widgets import Input, OptionList

from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_questions import WhyThrown
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.widgets.keys_line import KeysLine
from how_much import WHOLE
from programs import SIZES, settled, until

# How each screen and what opens over it is reached, one after the other, and the keys back.
WAY = (
    ("the larder's list", ("down",), ()),
    ("why thrown", ("f6",), ("escape",)),
    ("where figures come from", ("f9",), ("escape",)),
    ("people and limits", ("f2",), ("escape",)),
    ("a recipe", ("ctrl+r",), ("escape",)),
    ("days", ("ctrl+l",), ("escape",)),
    ("tonight", ("f3",), ()),
    ("a choice", ("w",), ()),
    ("why", ("enter",), ("escape",)),
    ("swap", ("c", "enter"), ("escape",)),
    ("cook", ("enter",), ()),
    ("the scale", ("w",), ("escape", "escape", "escape")),
    ("plan", ("ctrl+n",), ()),
    ("a sitting of the plan", ("enter",), ("escape", "escape")),
)


pytestmark = pytest.mark.usefixtures("quick_plans", "short_why")


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """The demo larder."""
    return ("f8",)


def cut(app: LarderApp) -> bool:
    """Whether anything of the keys below lies beyond the screen, by what Textual drew."""
    line = app.screen.query_one(KeysLine)
    drawn = line.render_line(0).text
    return line.region.right > app.size.width or any(f" {key.shown} {key.word} " not in drawn for key in line.keys)


@pytest.mark.long
def test_no_key_is_cut_on_any_screen_at_any_size(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        found: dict[str, bool] = {}
        widest = {"the larder", "tonight", "plan"}  # with most keys: at every size, the others at the narrowest

        async def look(name: str) -> None:
            for width, height in SIZES if WHOLE or name in widest else SIZES[:1]:
                await pilot.resize_terminal(width, height)
                await pilot.pause()
                await pilot.pause()
                found[f"{name} at {width}x{height}"] = cut(app)

        await look("the larder")
        for name, there, back in WAY:
            for key in there:
                await pilot.press(key)
                await settled(app, pilot)
            await look(name)
            for key in back:
                await pilot.press(key)
                await pilot.pause()
        assert not [name for name, is_cut in found.items() if is_cut]
        assert {name.rpartition(" at ")[0] for name in found} == {"the larder", *(name for name, *_ in WAY)}
        assert isinstance(app.screen, LarderScreen)  # the walk went through all of it

    play(act, SIZES[0])


def keys_below(app: LarderApp) -> list[str]:
    return [key.key for key in app.screen.query_one(KeysLine).keys]


def test_the_way_back_and_the_way_to_all_keys_never_give_way(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f3")
        await settled(app, pilot)
        for width in (60, 140, 80, 120, 60):  # narrower and wider by turns
            await pilot.resize_terminal(width, 30)
            await pilot.pause()
            await pilot.pause()
            assert not cut(app)
            assert {"enter", "escape", "ctrl+p", "f1"} <= set(keys_below(app))
            assert ("c" in keys_below(app)) == (width >= 120)

    play(act, SIZES[0])


def test_what_has_no_room_below_is_in_the_list_of_all_keys(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        assert "f9" not in keys_below(app)
        await pilot.press("escape", "down", "down", "escape", "ctrl+p")  # below what waits to be answered
        await pilot.pause()
        assert isinstance(app.screen, CommandPalette)
        app.screen.query_one(Input).value = "where its figures"
        listed = app.screen.query_one(OptionList)
        await until(pilot, lambda: listed.option_count and listed.display)
        await pilot.press("enter")
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, Choice)  # several foods are there

    play(act, (80, 24))


def test_all_keys_are_found_by_their_words_and_not_by_letters_that_stand_apart(
    play: Callable[..., LarderApp],
) -> None:
    """`redo` offered "Adapt a recipe that somebody else wrote"."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+p")
        await pilot.pause()
        app.screen.query_one(Input).value = "redo"
        listed = app.screen.query_one(OptionList)
        await until(pilot, lambda: listed.option_count == 1)
        assert [one.hit.text for one in listed.options] == ["Redo"]  # type: ignore[attr-defined]

    play(act, (80, 24))


@pytest.mark.parametrize(
    ("page", "words", "first"),
    [
        ((), "shop", "Plan the next meals"), ((), "shopping", "Plan the next meals"), ((), "undo", "Undo"),
        ((), "tour", "Help"), ((), "cooked", "Tonight's dinner"), ((), "label", "What its packet"),
        (("ctrl+l",), "gutt", "How"),
        (("ctrl+l",), "undo", "Help"), (("f2",), "zorbulous", "Help"),
    ],
)  # fmt: skip
def test_what_a_cook_may_call_it_finds_it_or_the_nearest(
    page: tuple[str, ...], words: str, first: str, play: Callable[..., LarderApp]
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press(*page, "ctrl+p")
        await pilot.pause()
        app.screen.query_one(Input).value = words
        listed = app.screen.query_one(OptionList)
        await until(pilot, lambda: listed.option_count and isinstance(listed.options[0].hit, Hit))  # type: ignore[attr-defined]
        assert listed.options[0].hit.text.startswith(first)  # type: ignore[attr-defined]

    play(act, (80, 24))


def test_each_page_that_is_listed_opens_from_there(play: Callable[..., LarderApp]) -> None:
    """Ctrl+R on another page once did nothing, and Tonight was listed where it could not be opened."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        pages = ("Tonight's dinner", "Plan the next meals", "People and limits", "Adapt a recipe", "A packet")
        for keys in ((), ("ctrl+l",), ("f2",), ("shift+f4",), ("ctrl+r",), ("f12",)):
            await pilot.press("escape", *keys)
            await pilot.pause()
            there = app.screen
            for title in pages:
                found = [one for one in app.get_system_commands(there) if one.title.startswith(title)]
                for one in found:
                    await one.callback()
                    await settled(app, pilot)
                    assert app.screen is not there, (keys, title)
                    while app.screen is not there:
                        await pilot.press("escape")
                        await settled(app, pilot)

    play(act, (80, 24))


def test_what_opens_over_a_screen_is_put_away_by_a_click_beside_it_or_on_its_key(
    play: Callable[..., LarderApp],
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("escape", "down", "down")  # below what waits to be answered
        for where in ("beside", "key"):
            await pilot.press("f6")
            await pilot.pause()
            assert isinstance(app.screen, WhyThrown)
            await pilot.pause()
            if where == "beside":
                await pilot.click(offset=(2, 2))
            else:
                line = app.screen.query_one(KeysLine)
                await pilot.click(line, offset=(line.render_line(0).text.index("Back"), 0))
            await pilot.pause()
            await pilot.pause()
            assert isinstance(app.screen, LarderScreen)
        await pilot.press("f6")
        await pilot.pause()
        await pilot.click(OptionList, offset=(2, 4))
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert [one.why for one in app._kitchen.ended()] == ["did not like"]

    play(act, (80, 24))


@pytest.mark.long
def test_keys_that_were_looked_for_stand_below_what_they_are_for(play: Callable[..., LarderApp]) -> None:
    """Three people new to it went to the help for each of these: remove, correct, back to the dinner before, keep."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("escape", "down", "down")
        await pilot.pause()
        assert "delete" in keys_below(app)
        await pilot.press("ctrl+l")
        await pilot.pause()
        assert "e" in keys_below(app)
        await pilot.press("escape", "f3")
        await settled(app, pilot)
        assert "N" not in keys_below(app)  # nothing is before the first
        await pilot.press("n")
        await settled(app, pilot)
        assert "N" in keys_below(app)
        await pilot.press("escape", "ctrl+n")
        await settled(app, pilot)
        assert "full_stop" in keys_below(app)
        await pilot.press("escape", "ctrl+p")
        app.screen.query_one(Input).value = "remove"
        listed = app.screen.query_one(OptionList)
        await until(pilot, lambda: listed.option_count == 1)
        assert "out of the list" in listed.options[0].hit.text  # type: ignore[attr-defined]

    play(act, (80, 24))


def test_what_the_readme_calls_adapt_is_found_by_that_word(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+p")
        await pilot.pause()
        app.screen.query_one(Input).value = "adapt"
        listed = app.screen.query_one(OptionList)
        await until(pilot, lambda: listed.option_count == 1)

    play(act, (80, 24))


def test_what_it_may_be_called_elsewhere_in_a_kitchen_is_found_too(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+p")
        await pilot.pause()
        listed = app.screen.query_one(OptionList)
        for word, said in {"tour": "help", "settings": "limits", "symptoms": "gut"}.items():
            app.screen.query_one(Input).value = word
            await until(pilot, lambda said=said: any(said in one.hit.text.lower() for one in listed.options))  # type: ignore[attr-defined,misc]

    play(act, (80, 24))


def test_a_recipe_is_opened_from_tonight_as_well(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("ctrl+r")
        await until(pilot, lambda: type(app.screen).__name__ == "AdaptScreen")

    play(act, (80, 24))
