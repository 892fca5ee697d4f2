"""People and limits, and the keys that came with them, driven as a cook would (Textual's pilot)."""

from collections.abc import Awaitable, Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from calmlarder.household.settings import settled
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.widgets.field import Field
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.pick import Pick
from test_screens import SIZES, foods, solved, type_line

Act = Callable[[LarderApp, Pilot[None]], Awaitable[None]]
Play = Callable[..., LarderApp]
LINES = ("firm tofu 280g, use by today", "eggs x6", "cooked rice 600g, made today", "potatoes 1kg", "spinach 200g",
         "carrots 400g", "rapeseed oil", "soy sauce")  # fmt: skip


async def fill(pilot: Pilot[None]) -> None:
    for line in LINES:
        await type_line(pilot, line)


def kept(home: Path, tables: Tables) -> dict[str, object]:
    with Store.at(home) as store:
        return settled(store.settings(), tables).model_dump()


def test_every_setting_is_kept(play: Play, tmp_path: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f2")
        await pilot.pause()
        for name, value in (("minutes", "40"), ("eye", "45"), ("scale", "0"), ("rings", "1"), ("window", "5")):
            app.screen.query_one(f"#{name}", Input).value = value
        app.screen.query_one("#fade", Pick).choose("yes")
        missing = app.screen.query_one("#missing", Pick)
        missing.choose("oven")
        missing.choose("wide pan")
        await pilot.pause()
        assert "[x] wide pan" in missing.draw(60).plain
        for name, value in (("eye", "90"), ("rings", "0"), ("scale", "11")):
            app.screen.query_one(f"#{name}", Input).value = value
        await pilot.pause()

    play(act)
    held = kept(tmp_path / "home", tables)
    assert held["tolerance"] == {"eye_percent": 45, "scale_grams": 0}
    assert held["equipment"] == {"rings": 1, "missing": ("oven", "wide pan")}
    assert (held["minutes"], held["window_hours"], held["fade"]) == (40, 5.0, True)


def test_a_number_that_cannot_be_says_so(play: Play) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f2")
        await pilot.pause()
        eye = app.screen.query_one("#eye", Input)
        eye.focus()
        eye.value = "90"
        await pilot.press("enter")
        await pilot.pause()
        takes = eye.query_ancestor(Field).query_one(".takes", Static)
        assert "10 to 60; 30 still holds" in str(takes.content)
        assert app.focused is eye

    play(act)


@pytest.mark.long
def test_disliked_foods_are_typed_found_and_forgotten(play: Play, tmp_path: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f2")
        await pilot.pause()
        line, disliked = app.screen.query_one("#dislike-food", Input), app.screen.query_one("#dislike", Pick)
        field = disliked.query_ancestor(Field)
        assert not field.display
        line.focus()
        for typed in ("aubergene", "noodles", "old boots"):
            line.value = typed
            await pilot.press("enter")
            await pilot.pause()
            if typed == "noodles":
                assert isinstance(app.screen, Choice)
                await pilot.press("enter")
                await pilot.pause()
        assert line.value == "old boots"
        assert field.display
        assert "aubergine" in disliked.chosen
        assert len(disliked.chosen) == 2
        disliked.choose("aubergine")
        await pilot.pause()
        line.value = "aubergine"
        await pilot.press("enter")
        await pilot.pause()
        assert "aubergine" in disliked.chosen
        assert len(disliked.chosen) == 2

    play(act)
    assert "aubergine" in kept(tmp_path / "home", tables)["disliked"]  # type: ignore[operator]


def test_tonight_starts_from_what_is_settled(play: Play, tmp_path: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await fill(pilot)
        app._store.set({"minutes": 40, "dislike": "tofu-firm", "missing": "wide pan", "rings": 1}, "settle")
        await pilot.press("f3")
        await pilot.pause()
        dinner = await solved(app, pilot)
        assert "40 minutes" in str(app.screen.query_one("#asked", Static).content)
        assert "g  firm tofu" not in dinner
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        while screen._dinner is not None and (screen._asked.minutes or 99) > 15:
            takes = screen._dinner.minutes
            await pilot.press("t", "enter")
            await solved(app, pilot)
            assert screen._asked.minutes is not None
            assert screen._asked.minutes < takes  # less than what was shown, not the next of fixed steps
        assert screen._asked.minutes in {30, 20, 15}
        await pilot.press("t", "enter")
        await solved(app, pilot)
        assert "no hurry" in str(app.screen.query_one("#asked", Static).content)

    play(act)


@pytest.mark.long
def test_more_like_it_and_back(play: Play) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await fill(pilot)
        await pilot.press("f3")
        await pilot.pause()
        first = await solved(app, pilot)
        await pilot.press("m")
        near = await solved(app, pilot)
        assert "more like" in str(app.screen.query_one("#asked", Static).content)
        assert near.splitlines() != first.splitlines()
        await pilot.press("m")
        again = await solved(app, pilot)
        assert again.splitlines()[0] == first.splitlines()[0]
        assert "more like" not in str(app.screen.query_one("#asked", Static).content)

    play(act)


def test_leaving_asks_only_where_a_line_would_be_lost(play: Play) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.screen.query_one(Input).value = "half tin coco"
        await pilot.pause()
        await pilot.press("ctrl+q")
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert app.screen.query_one(Input).value == "half tin coco"
        await pilot.press("escape", "ctrl+q")
        await pilot.pause()
        assert app._exit

    play(act)


def test_a_line_put_away_comes_back(play: Play) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "2 carrots")
        line = app.screen.query_one(Input)
        line.value = "half tin coco"
        await pilot.press("escape")
        assert line.value == ""
        await pilot.press("up")
        assert line.value == "half tin coco"
        await pilot.press("escape", "down", "f4")
        await pilot.pause()
        line.value = "5 carrots"
        await pilot.press("escape", "up", "enter")
        await pilot.pause()
        assert foods(app) == ["carrots"]  # the lot was changed, not kept a second time
        assert app.screen.query_one(ItemList).items[0].grams == "350"

    play(act)


@pytest.mark.parametrize("size", SIZES)
def test_the_list_fits_and_says_days_in_words(size: tuple[int, int], play: Play) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8")
        await pilot.pause()
        shown = app.screen.query_one(ItemList)
        assert shown.virtual_size.width <= shown.size.width
        before = shown.items
        text = "\n".join(str(option.prompt) for option in shown.options)
        assert all(word[:11] in text for item in before for word in item.name.split())
        assert "last day" in text
        await pilot.resize_terminal(60, 20)
        await pilot.pause()
        await pilot.pause()
        assert shown.items == before
        assert shown.virtual_size.width <= shown.size.width

    play(act, size)


def test_restoring_asks_at_a_terminal(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from calmlarder.cli import main
    from calmlarder.store.home import FILE_NAME

    where = ("--home", str(tmp_path))
    assert main(["larder", "add", "2 carrots", *where]) == 0
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr("sys.stdout.isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda _: "n")
    assert main(["larder", "restore", *where]) == 0
    assert "Nothing was changed" in capsys.readouterr().out
    assert not (tmp_path / f"{FILE_NAME}.damaged").exists()
    monkeypatch.setattr("builtins.input", lambda _: "y")
    assert main(["larder", "restore", *where]) == 0
    assert (tmp_path / f"{FILE_NAME}.damaged").exists()
    monkeypatch.setattr("builtins.input", lambda _: pytest.fail("asked"))
    assert main(["larder", "restore", "--yes", *where]) == 0


def test_what_is_not_ticked_shows_an_empty_box(play: Callable[..., LarderApp]) -> None:
    """Told by its signs, not by its colour (WCAG 2.1, success criterion 1.4.1)."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f2")
        await pilot.pause()
        allergens = app.screen.query_one("#avoid", Pick)
        allergens.focus()
        await pilot.press("right", "space")  # the second of them
        await pilot.pause()
        assert allergens.draw(60).plain.splitlines()[0].startswith("[ ] gluten       [x] crustaceans  [ ] eggs")

    play(act)


def test_page_down_takes_the_focus_along_and_what_is_always_there_is_listed(play: Play) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "always have: salt, rapeseed oil")
        await pilot.press("f2")
        await pilot.pause()
        there = app.screen.query_one("#always").query_ancestor(Field).query_one(".takes", Static)
        assert str(there.content).startswith("there: salt, rapeseed oil")
        seen = []
        for _ in range(6):
            await pilot.press("pagedown")
            await pilot.pause()
            focused = app.screen.focused
            assert focused is not None
            assert focused.region.overlaps(app.screen.query_one("#form").region)
            seen.append(focused.id)
        assert seen[-1] == "own-line"
        assert seen[:2] == ["always", "own-line"]  # a page each, and none beyond the last
        for _ in range(8):
            await pilot.press("pageup")
            await pilot.pause()
        assert app.screen.focused is not None
        assert app.screen.focused.id == "diet"

    play(act, (80, 24))


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
def test_who_walks_down_the_page_of_limits_changes_nothing(size: tuple[int, int], play: Play) -> None:
    """On a narrow screen the limits stand in two rows: Down leads past them, and not to none."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f2")
        await pilot.pause()
        before = app._kitchen.settled()
        await pilot.press(*["down"] * 20, *["up"] * 20)
        await pilot.pause()
        assert app._kitchen.settled() == before

    play(act, size)
