"""A home that reads cups, ounces and degrees F is asked at first, and finds the setting by its words."""

import asyncio
from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList

from calmlarder.household.household import Household
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.first_start import FirstStart
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.pick import Pick
from programs import TODAY, type_line, until


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
        assert "7 oz" in item.notes

    play(act)
    with Household(tmp_path / "home", tables, TODAY) as kitchen:
        assert kitchen.settled().measures == "american"
        kitchen.undo()
        assert (kitchen.settled().measures, kitchen.settled().names) == ("metric", "british")
