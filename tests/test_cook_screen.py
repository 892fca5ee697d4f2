"""The scale and the boxes of the Cook screen, by keys alone (Textual's pilot)."""

import re
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from textual.containers import VerticalScroll
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from calmlarder.cookbook.scale import grams_shown
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.help_screen import Parts
from calmlarder.tui.key_bar import keys_of
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.moments import BEGINS
from calmlarder.tui.stove import HERE, Timers, Weights
from calmlarder.tui.widgets.amounts import AmountList
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.lanes import Lanes
from calmlarder.tui.widgets.said import Said
from calmlarder.tui.widgets.top_line import TopLine
from programs import until
from test_screens import foods, solved, type_line


async def _cook_the_demo(app: LarderApp, pilot: Pilot[None]) -> None:
    await pilot.press("f8", "f3")
    await solved(app, pilot)
    await pilot.press("enter")
    await pilot.pause()
    assert isinstance(app.screen, CookScreen)


async def _cook_what_keeps(app: LarderApp, pilot: Pilot[None]) -> None:
    """Of the demo larder comes rice on its last day, of which nothing is boxed."""
    for line in ("dry rice 1 kg", "carrots 500g", "eggs x8", "firm tofu 560g", "soy sauce"):
        await type_line(pilot, line)
    await pilot.press("f3")
    await solved(app, pilot)
    await pilot.press("enter")
    await pilot.pause()
    assert isinstance(app.screen, CookScreen)


def test_where_nothing_is_boxed_the_last_step_is_asked_too(play: Callable[..., LarderApp]) -> None:
    """Cooked food on its last day is not kept: `c` alone takes nothing out, and the Enter after it answers that."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_the_demo(app, pilot)
        cook, before = app.screen, foods_kept(app)
        await pilot.press("c", "down", "enter")
        await pilot.pause()
        assert app.screen is cook
        assert foods_kept(app) == before
        await pilot.press("c", "enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert foods_kept(app) != before
        assert "Nothing is boxed: " in str(app.screen.query_one("#meaning", Static).content)

    play(act)


def foods_kept(app: LarderApp) -> list[tuple[str, float]]:
    return [(one.lot.id, one.lot.grams) for one in app._kitchen.lots()]


@pytest.mark.long
def test_the_scale_takes_numbers_at_once_and_names_the_cap(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "ate 45 g tinned chickpeas")  # on top of that something must be weighed
        await _cook_the_demo(app, pilot)
        await pilot.press("w")
        await pilot.pause()
        assert isinstance(app.screen, Weights)
        await pilot.press(*"900", "enter")  # no Tab before it
        await pilot.pause()
        said = str(app.screen.query_one("#scale", Static).content)
        assert said.startswith("fructans + GOS: ")
        assert "leave out" in said
        assert "taken as weighed: 900 g " in said
        await pilot.press("w")
        await pilot.pause()
        await pilot.press("0", "enter")  # nothing is no amount: it is asked again, and what was said before holds
        await pilot.pause()
        assert "`0`" in wrong_of(app)
        await pilot.press("escape")
        await pilot.pause()
        assert str(app.screen.query_one("#scale", Static).content) == said

    play(act)


def wrong_of(app: LarderApp) -> str:
    return " ".join(str(one.content) for one in app.screen.query(".wrong").results(Static) if one.display)


@pytest.mark.long
def test_the_scale_takes_ounces_and_drops_no_letter(play: Callable[..., LarderApp]) -> None:
    """`4.8oz` was once kept as 48 g. An ounce is 28.35 g (NIST Special Publication 811, appendix B.8)."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app._kitchen.set("measures", "american")
        await type_line(pilot, "ate 45 g tinned chickpeas")
        await _cook_the_demo(app, pilot)
        await pilot.press("w")
        await pilot.pause()
        first = app.screen.query(Input).first()
        assert re.fullmatch(r"[\d.]+ oz", first.value)
        for typed, told in (("5.3", "g or oz?"), ("5.3ozz", "`ozz`"), ("4.8 oz 2", "`2`"), ("4-5 oz", "one amount")):
            first.value = typed
            await pilot.press("enter")
            await pilot.pause()
            assert isinstance(app.screen, Weights)
            assert told in wrong_of(app)
        first.value = "4.8oz"
        await pilot.press("enter")
        await pilot.pause()
        cook = app.screen
        assert isinstance(cook, CookScreen)
        assert 137 in cook._weighed.values()
        assert 48 not in cook._weighed.values()
        assert "taken as weighed: 137 g (4.8 oz) " in str(cook.query_one("#scale", Static).content)

    play(act)


@pytest.mark.parametrize(
    ("typed", "grams"),
    [("136 g", 136), ("4.8oz", 137), ("4,8 oz", 137), ("40.5", 41), ("1 lb 3 oz", 539), ("1½ oz", 43), ("½ cup", 116)],
)
def test_amounts_at_the_scale(tables: Tables, typed: str, grams: int) -> None:
    """By hand, of 28.35 and 453.6 g, rounded up. Tinned lentils: at most 192 g a cup, and a fifth more as counted."""
    assert grams_shown(typed, tables.food_by_id["lentils-canned"], tables, bare_is_grams=True) == grams


def test_a_cup_of_what_nobody_weighed_is_refused(tables: Tables) -> None:
    """The general cup is of water: of leaves it would be five times too much."""
    bare = next(
        food
        for food in tables.foods
        if food.kind == "herb" and not {row.measure for row in tables.own_measures(food)} & {"cup", "tbsp"}
    )
    with pytest.raises(ValueError, match="nobody knows"):
        grams_shown("1 cup", bare, tables, bare_is_grams=True)


def test_what_is_boxed_whole_is_not_said_to_be_logged(play: Callable[..., LarderApp]) -> None:
    told: list[str] = []

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_what_keeps(app, pilot)
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        told.append(str(app.screen.query_one("#meaning", Static).content))

    play(act)
    (words,) = told
    assert "Nothing is logged until the box is eaten. Boxed: 1 portion, good for 1 day in the fridge" in words
    assert "Ctrl+Z undoes all of it" in words


def test_a_box_is_eaten_by_the_line(play: Callable[..., LarderApp], tmp_path: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_what_keeps(app, pilot)
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("down", "enter")
        await pilot.pause()
        (box,) = (food for food in foods(app) if "(boxed)" in food)
        app.screen.query_one(Input).value = f"ate boxed {box.removesuffix(' (boxed)')}"
        await pilot.pause()
        assert str(app.screen.query_one("#meaning", Static).content).startswith("eaten: ")
        await pilot.press("enter")
        await pilot.pause()
        assert box not in foods(app)
        assert str(app.screen.query_one("#meaning", Static).content).startswith("logged: ")
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert box in foods(app)

    play(act)


def test_what_nobody_may_eat_is_not_offered_to_be_used(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3", "u")
        await pilot.pause()
        offered = app.screen.query_one(OptionList)
        names = {str(offered.get_option_at_index(place).prompt) for place in range(offered.option_count)}
        assert "spinach" in names
        assert not {"chicken thighs", "eggs"} & names  # past the use-by day; somebody else's

    play(act)


def test_half_of_a_dinner_for_one_is_boxed_and_the_other_half_logged(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_what_keeps(app, pilot)
        assert isinstance(app.screen, CookScreen)
        grams = sum(use.grams for use in app.screen._dinner.uses)
        before = len(app._kitchen.eaten_since(app._kitchen.now() - timedelta(days=1)))
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("down", "down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        said = str(app.screen.query_one("#meaning", Static).content)
        assert "Logged as eaten: half of it, for you. Boxed: half of it" in said
        box = next(one.lot for one in app._kitchen.lots() if one.lot.box is not None)
        assert box.grams == grams // 2
        entries = app._kitchen.eaten_since(app._kitchen.now() - timedelta(days=1))
        assert len(entries) == before + 1
        assert (entries[-1].who, entries[-1].grams) == ("me", grams / 2)
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert all(one.lot.box is None for one in app._kitchen.lots())

    play(act)


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (120, 30)])
def test_the_list_below_a_step_begins_with_a_whole_line(play: Callable[..., LarderApp], size: tuple[int, int]) -> None:
    """It began in the middle of a sentence."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_the_demo(app, pilot)
        await pilot.press("b")
        cook = app.screen
        words, scroll = cook.query_one("#timeline", Hanging), cook.query_one("#timeline-scroll", VerticalScroll)

        def is_whole() -> bool:
            lines, top = words.content.splitlines(), round(scroll.scroll_y)
            marked = [n for n, line in enumerate(lines) if line.startswith(HERE)]
            in_sight = not marked or top <= marked[0] < top + scroll.content_size.height
            return in_sight and (top == 0 or BEGINS.match(lines[top]) is not None)

        while True:
            await pilot.pause()
            await until(pilot, is_whole)
            if not cook.check_action("step", (1,)):
                break
            await pilot.press("space")

    play(act, size=size)


def test_after_the_last_step_no_next_is_named_and_before_the_first_no_way_back(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_the_demo(app, pilot)
        words = [words for _, words in keys_of(app.screen)]
        assert "Next" in words
        assert "Back a step" not in words
        await pilot.press(*["space"] * 30)
        await pilot.pause()
        words = [words for _, words in keys_of(app.screen)]
        assert "Next" not in words
        assert "Back a step" in words
        top = app.screen.query_one(TopLine).content
        assert re.search(r"step (\d+) of \1$", top)

    play(act)


def test_a_wide_stove_shows_the_amounts_as_the_scale_showed_them(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "ate 45 g tinned chickpeas")
        await _cook_the_demo(app, pilot)
        cook = app.screen
        assert cook.query_one("#amounts-scroll").display
        await pilot.press("w")
        await pilot.pause()
        await pilot.press(*"113", "enter")
        await pilot.pause()
        assert "113 g  " in cook.query_one(AmountList).draw(60).plain
        await pilot.resize_terminal(80, 24)
        await pilot.pause()
        assert not cook.query_one("#amounts-scroll").display

    play(act, size=(120, 40))


@pytest.mark.parametrize("size", [(60, 20), (120, 30)])
def test_a_timer_set_by_mistake_is_stopped_by_a_key_and_a_low_screen_keeps_its_lanes(
    play: Callable[..., LarderApp], size: tuple[int, int]
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await _cook_the_demo(app, pilot)
        cook = app.screen
        lanes = cook.query_one(Lanes)
        assert lanes.size.height == (1 if size[1] < 22 else len(lanes.draw(60).plain.splitlines()))
        assert "▲" in lanes.draw(60).plain
        assert "Stop timer" not in [words for _, words in keys_of(cook)]
        await pilot.press("t", "enter")
        await pilot.pause()
        (name,) = cook.query_one(Timers).ends_s
        assert any(words.startswith("Stop a timer") for _, words in keys_of(cook))
        await pilot.press("s")
        await pilot.pause()
        assert not cook.query_one(Timers).ends_s
        assert str(cook.query_one(Said).content) == f"stopped: the timer of {name} (t sets it anew)"
        await pilot.press("t", "enter", "t", "enter", "s")
        await pilot.pause()
        assert isinstance(app.screen, Choice)  # which of the two
        await pilot.press("down", "enter")
        await pilot.pause()
        assert len(cook.query_one(Timers).ends_s) == 1
        await pilot.press("f1")
        await pilot.pause()
        help_words = app.screen.query_one("#keys-here", Parts).draw(50).plain
        assert all(one in help_words for one in ("Stop a timer", "A timer", "What the scale"))

    play(act, size=size)
