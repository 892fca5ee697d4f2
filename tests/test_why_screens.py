"""The screens of why and of swaps, driven by keys (Textual's pilot)."""

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

from calmlarder.household import swapping
from calmlarder.intake.plate import Serving
from calmlarder.patterns.load import shipped_patterns
from calmlarder.swaps.model import Answer
from calmlarder.swaps.rank import substitutes
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.help_screen import HelpScreen
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.swap_screen import SwapScreen
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.why_screen import WhyScreen
from calmlarder.tui.widgets.item_list import ItemList
from programs import SIZES, settled, shown, type_line


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """The demo larder, its list in focus."""
    return ("f8", "down")


async def choose(app: LarderApp, pilot: Pilot[None], food: str) -> None:
    """Move the mark of the larder's list to a food."""
    items = app.screen.query_one(ItemList)
    items.choose(next(item.id for item in items.items if item.name == food))
    await pilot.pause()


@pytest.mark.long
def test_why_from_the_larder_at_each_size(play: Callable[..., None]) -> None:
    """Of a small larder, so that the whole answer comes soon."""
    lines = ("spinach 200g, use by today", "cooked rice 300g, made today", "firm tofu 280g", "carrots 300g",
             "red pepper", "eggs x6", "soy sauce", "ginger")  # fmt: skip

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in lines:
            await type_line(pilot, line)
        await pilot.press("down")
        await choose(app, pilot, "spinach")
        await pilot.press("ctrl+o")
        await settled(app, pilot)
        assert isinstance(app.screen, WhyScreen)
        text = shown(app, "#why")
        assert "as its vegetable" in " ".join(text.split())
        assert "next best without it" in text
        assert "what it does, and the dinner without it" in shown(app, "#title")
        for size in SIZES:
            await pilot.resize_terminal(*size)
            await pilot.pause()
            assert max(map(len, shown(app, "#why").splitlines())) <= size[0]
        await pilot.press("f1")
        await pilot.pause()
        assert isinstance(app.screen, HelpScreen)
        await pilot.press("escape", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act, SIZES[-1], keys=())


@pytest.mark.long
def test_why_can_be_left_and_stopped_at_any_moment(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "red pepper")
        for moment in (0.0, 0.4):
            await pilot.press("ctrl+o")
            await pilot.pause(moment)
            await pilot.press("escape")
            await pilot.pause()
            assert isinstance(app.screen, LarderScreen)
        await settled(app, pilot)
        await pilot.press("ctrl+o")
        while not shown(app, "#why").strip():
            await pilot.pause(0.02)
        await pilot.press("full_stop")
        await settled(app, pilot)
        assert "tonight's dinner" in shown(app, "#why")
        await pilot.resize_terminal(60, 20)
        await pilot.pause()
        assert max(map(len, shown(app, "#why").splitlines())) <= 60

    play(act)


@pytest.mark.usefixtures("short_why")
@pytest.mark.long
def test_why_a_food_past_its_use_by_is_out(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "chicken thighs")
        await pilot.press("ctrl+o")
        await settled(app, pilot)
        assert "past the day it is safe to eat" in shown(app, "#why")

    play(act)


def test_swaps_of_a_lot_are_told(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "brown onion")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert isinstance(app.screen, SwapScreen)
        assert "over the limit" in shown(app, "#title")
        names = app.screen.query_one(OptionList)
        first = shown(app, "#swap")
        assert "keeps" in first
        assert names.option_count > 2
        await pilot.press("down")
        await pilot.pause()
        assert shown(app, "#swap") != first
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, SwapScreen)
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act)


@pytest.mark.long
def test_a_swap_in_the_dinner_is_solved_again(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f3")
        await settled(app, pilot)
        assert "spinach" in shown(app, "#dinner")
        await pilot.press("c")
        await pilot.pause()
        options = app.screen.query_one(OptionList)
        prompts = [str(options.get_option_at_index(n).prompt) for n in range(options.option_count)]
        options.highlighted = prompts.index("spinach")
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, SwapScreen)
        options = app.screen.query_one(OptionList)
        prompts = [str(options.get_option_at_index(n).prompt) for n in range(options.option_count)]
        at_home = [prompt for prompt in prompts if "in the larder" in prompt]
        assert at_home == prompts[: len(at_home)]
        assert at_home
        options.highlighted = 0
        await pilot.press("enter")
        await settled(app, pilot)
        assert isinstance(app.screen, TonightScreen)
        used = at_home[0].removesuffix(" (in the larder)").partition(" g ")[2]
        assert f"with {used}" in shown(app, "#asked")
        assert "without spinach" in shown(app, "#asked")
        assert f" g  {used}" in shown(app, "#dinner")
        assert " g  spinach" not in shown(app, "#dinner")

    play(act)


def test_what_is_not_at_home_is_not_taken_into_the_dinner(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("c", "enter")
        await pilot.pause()
        options = app.screen.query_one(OptionList)
        prompts = [str(options.get_option_at_index(n).prompt) for n in range(options.option_count)]
        away = [n for n, prompt in enumerate(prompts) if "in the larder" not in prompt]
        assert away
        options.highlighted = away[0]
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, SwapScreen)
        await pilot.press("escape")
        await pilot.pause()
        assert "without" not in shown(app, "#asked")

    play(act)


@pytest.mark.usefixtures("short_why")
def test_why_from_tonight(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("w", "enter")
        await settled(app, pilot)
        assert isinstance(app.screen, WhyScreen)
        assert ": in tonight's dinner" in shown(app, "#why")  # foods of the dinner stand first
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, TonightScreen)

    play(act)


def test_no_answer_rests_on_a_dinner_that_fails_its_check(
    play: Callable[..., None], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("calmlarder.household.checked.faults_of", lambda *_: ["fructans over the cap"])

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "spinach")
        await pilot.press("ctrl+o")
        await settled(app, pilot)
        assert "did not pass its own check" in shown(app, "#title")
        assert shown(app, "#why") == "fructans over the cap"

    play(act)


def test_swaps_on_the_screen_pass_the_check_of_the_command(
    play: Callable[..., None], monkeypatch: pytest.MonkeyPatch, tables: Tables
) -> None:
    """A substitute over a cut-off is made up here; Varney et al. 2017: 0.30 g a sitting in grains and pulses."""

    def wrong(*asked: Any) -> Answer:
        answer = substitutes(*asked)
        first = answer.substitutes[0]
        garlic = Serving(tables.food_by_id["garlic"], Decimal(50))
        said = first.candidate.model_copy(update={"parts": (garlic,)})
        rest = (first.model_copy(update={"candidate": said}), *answer.substitutes[1:])
        return answer.model_copy(update={"substitutes": rest})

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "brown onion")
        await pilot.press("ctrl+s")
        await pilot.pause()
        assert "at fault" not in shown(app, "#title")
        right = app.screen.query_one(OptionList).option_count
        await pilot.press("escape")
        monkeypatch.setattr(swapping, "substitutes", wrong)
        await pilot.press("ctrl+s")
        await pilot.pause()
        names = app.screen.query_one(OptionList)
        assert names.option_count == right - 1
        assert "50 g garlic" not in [str(names.get_option_at_index(n).prompt) for n in range(right - 1)]
        assert "did not pass its own check" in shown(app, "#title")

    play(act)


@pytest.mark.usefixtures("short_why")
@pytest.mark.long
def test_the_best_dinner_so_far_is_named_as_a_cook_names_it(
    play: Callable[..., None], monkeypatch: pytest.MonkeyPatch
) -> None:
    """It was the name of a file: `fried-rice`."""
    named: list[str] = []
    monkeypatch.setattr(WhyScreen, "_so_far", lambda self, title: named.append(title))

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "spinach")
        await pilot.press("ctrl+o")
        await settled(app, pilot)
        assert named
        patterns = {one.id for one in shipped_patterns()}
        assert not patterns & set(named)
        assert all(title[0].isupper() and " " in title for title in named)

    play(act)
