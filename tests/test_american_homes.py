"""A home that reads cups, ounces and degrees F is asked at first, and finds the setting by its words."""

import asyncio
import re
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static, TextArea

from calmlarder.history.felt import Felt
from calmlarder.household.challenge_start import Start, begin
from calmlarder.household.diary import feel
from calmlarder.household.figures import figures_of
from calmlarder.household.household import Household
from calmlarder.intake.eaten import ME
from calmlarder.render.manner import Manner
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.days_screen import DaysScreen
from calmlarder.tui.first_start import FirstStart
from calmlarder.tui.larder_log import plate_page
from calmlarder.tui.manner_asked import keep_manner
from calmlarder.tui.swap_screen import SwapScreen
from calmlarder.tui.why_screen import WhyScreen
from calmlarder.tui.widgets.amounts import Facts
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.pick import Pick
from programs import TODAY, settled, type_line, until


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    return ()


def test_the_first_page_asks_for_measures_and_names_at_once(tmp_path: Path, tables: Tables) -> None:
    async def scene() -> None:
        app = LarderApp(tmp_path / "new", tables, TODAY)
        async with app.run_test() as pilot:
            await pilot.pause()
            assert isinstance(app.screen, FirstStart)
            pick = app.screen.query_one("#manner", Pick)
            assert pick.chosen == ("metric",)
            pick.choose("american")
            await pilot.pause()
            held = app._kitchen.settled()
            assert (held.measures, held.names) == ("american", "american")
            pick.choose("metric")
            await pilot.pause()
            held = app._kitchen.settled()
            assert (held.measures, held.names) == ("metric", "british")

    asyncio.run(scene())


def test_the_setting_is_found_by_its_words_and_holds_at_once(
    play: Callable[..., LarderApp], tmp_path: Path, tables: Tables
) -> None:
    """NIST Special Publication 811, appendix B.8: an ounce is 28.35 g, so 200 g are 7.05 of them."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "courgette 200g")
        for words in ("cups", "ounces", "american"):
            await pilot.press("ctrl+p")
            await pilot.pause()
            app.screen.query_one(Input).value = words
            listed = app.screen.query_one(OptionList)
            await until(pilot, lambda: listed.option_count and listed.display)  # noqa: B023
            assert any("American measures" in one.hit.text for one in listed.options)  # type: ignore[attr-defined]
            await pilot.press("escape" if words != "american" else "enter")
            await pilot.pause()
        await pilot.pause()
        (item,) = app.screen.query_one(ItemList).items
        assert item.name == "zucchini"
        assert (item.measure, item.beside) == ("7 oz", "200 g")

    play(act)
    with Household(tmp_path / "home", tables, TODAY) as kitchen:
        assert kitchen.settled().measures == "american"
        kitchen.undo()
        assert (kitchen.settled().measures, kitchen.settled().names) == ("metric", "british")


@pytest.mark.usefixtures("short_why")
def test_receipts_swaps_and_the_why_page_are_read_in_ounces_too(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        keep_manner(app._kitchen, "american")
        for line in ("courgette 200g, use by tomorrow", "firm tofu 280g", "rice 500g", "carrots 300g", "garlic 1 bulb"):
            await type_line(pilot, line)
        await pilot.press("down", "home", "f7")
        await pilot.pause()
        app.screen.notify("used up: 100 g of courgette")
        assert "100 g (3.5 oz) of zucchini" in str(app.screen.query_one("#meaning", Static).content)
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("w", *"tofu", "enter")
        await settled(app, pilot)
        assert isinstance(app.screen, WhyScreen)
        told = app.screen.query_one(Hanging).content
        assert " oz)" in told
        await pilot.press("escape", "c", *"tofu", "enter")
        await settled(app, pilot)
        assert isinstance(app.screen, SwapScreen)
        names = app.screen.query_one(OptionList)
        shown = [str(names.get_option_at_index(n).prompt) for n in range(names.option_count)]
        assert shown
        assert all(" oz)" in one or " g " not in one for one in shown)

    play(act)


def test_a_recipe_the_part_asked_for_and_the_log_are_read_in_them_too(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        keep_manner(app._kitchen, "american")
        await type_line(pilot, "courgette 300g")
        await pilot.press("f10")
        await pilot.pause()
        asked = "\n".join(str(one.content) for one in app.screen.query(Static))
        assert "zucchini, 300 g (10.5 oz): how much of it?" in asked
        assert "150 g (5.2 oz) of 300 g (10.5 oz)" in asked
        await pilot.press("escape")
        await type_line(pilot, "ate 100 g courgette")
        await pilot.press("ctrl+l", "e")
        await pilot.pause()
        (entry,) = app.screen.query_one(ItemList).items
        assert (entry.name, entry.measure) == ("zucchini", "3.5 oz")
        await pilot.press("escape", "escape", "ctrl+r")
        await pilot.pause()
        text = "Bake\nServes 2\n\nIngredients\n400 g courgettes\n1.2 kg potatoes\n\nMethod\nSlice, and bake at 200 C."
        app.screen.query_one(TextArea).text = text
        await pilot.press("f5")
        await settled(app, pilot)
        told = " ".join(app.screen.query_one("#adapted", Hanging).content.split())
        assert "1.2 kg (2 lb 10 oz) potatoes" in told
        assert "400 °F (200 C)" in told
        assert "courgette" not in told
        assert all(
            len(line) <= app.size.width for line in app.screen.query_one("#adapted", Hanging).content.split("\n")
        )

    play(act)


def test_the_dose_of_a_challenge_is_told_in_ounces_beside_its_grams(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        kitchen = app._kitchen
        keep_manner(kitchen, "american")
        begin(kitchen, ME, "lactose", (), Start(kitchen.now() - timedelta(days=4)))
        for back in range(4, 0, -1):  # calm days before the first dose
            feel(kitchen, Felt(at=kitchen.now() - timedelta(days=back), who=ME, score=0))
        await pilot.press("shift+f4")
        await pilot.pause()
        assert re.search(r"\d+ g \([\d.]+ oz\)", str(app.screen.query_one("#challenge", Hanging).content))

    play(act)


def test_what_was_thrown_is_drawn_and_told_in_ounces(play: Callable[..., LarderApp]) -> None:
    """Ounces of 28.349523125 g: NIST Special Publication 811, appendix B.8."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        keep_manner(app._kitchen, "american")
        await type_line(pilot, "300 g courgettes")
        await pilot.press("down", "f6", "p", "ctrl+l")
        await pilot.pause()
        assert isinstance(app.screen, DaysScreen)
        told = app.screen.content
        assert "Thrown away each week, oz of edible food: 10.5 oz in all" in told
        assert re.search(r"█.? +10\.5  eaten 0 oz, given 0 oz", told)  # 300 / 28.35 is 10.58
        assert re.search(r"zucchini +10\.5 oz  300 g, once", told)  # never more than the grams: cut, not rounded

    play(act)


def test_what_makes_a_plate_fit_is_told_in_ounces_and_limits_in_grams(play: Callable[..., LarderApp]) -> None:
    """200 g are 7.05 oz: NIST Special Publication 811, appendix B.8."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        keep_manner(app._kitchen, "american")
        told = " ".join(plate_page("170 g firm tofu, 200 g mushrooms", app._kitchen).split())
        assert "instead of 200 g (7 oz)" in told
        assert "the limit is 0.20 g, at most 0.32 g" in told

    play(act)


def test_the_page_of_a_food_names_it_and_its_portion_as_this_home_reads_them(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        keep_manner(app._kitchen, "american")
        told = figures_of(app._kitchen, "courgette")
        assert told.startswith("zucchini (raw)")
        assert re.search(r"a portion in a main dish: \d+ g \([\d.]+ oz\)", told)
        assert "\nper 100 g\n" in told  # figures stand beside grams alone, as their tables have them

    play(act)


@pytest.mark.usefixtures("quick_plans")
def test_a_plan_says_what_is_left_and_frozen_in_ounces(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        keep_manner(app._kitchen, "american")
        await pilot.press("f8", "ctrl+n")
        await settled(app, pilot)
        facts = [one for part in app.screen.query(Facts) for one in part.facts]
        assert facts
        assert all(" oz" in one.measure or " g" in one.measure for one in facts)
        assert all(one.figure == one.measure and f", {one.grams:.0f} g: " in one.told for one in facts)

    play(act)


def test_a_page_in_american_words_keeps_them() -> None:
    """Its biscuits are what British homes call scones; the stand-ins of ours are named as at home all the same."""
    manner = Manner("american", [("biscuits", "cookies"), ("courgettes", "zucchini"), ("coriander", "cilantro")])
    american = manner.as_a_page_names_them("4 biscuits, 1 cup cilantro")
    assert american.told("4 biscuits with courgettes") == "4 biscuits with zucchini"
    british = manner.as_a_page_names_them("4 biscuits, a bunch of coriander")
    assert british.told("4 biscuits with courgettes") == "4 cookies with zucchini"
