"""A packet's list kept with its lot: told in the list from then on, from the command and from the larder's screen."""

import asyncio
import json
from collections.abc import Callable
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList

from calmlarder.cli import main
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp
from calmlarder.tui.line_input import LineInput
from calmlarder.tui.packet_screen import PacketScreen
from calmlarder.tui.page import Page
from programs import shown, type_line, until

LIST = "Ingredients: tofu (soya beans, water), onion powder, spices, salt"


@pytest.fixture
def home(tmp_path: Path) -> list[str]:
    where = ["--home", str(tmp_path), "--today", "2026-03-11"]
    assert main([*where, "larder", "add", "firm tofu 280g"]) == 0
    return where


def test_a_lot_carries_its_label(home: list[str], capsys: Any) -> None:
    assert main([*home, "label", "--lot", "1", LIST]) == 0
    capsys.readouterr()
    assert main([*home, "larder", "list"]) == 0
    listed = capsys.readouterr().out
    assert "its label holds" in listed
    assert "onion powder" in listed
    assert "may hide in spice" in listed
    assert main([*home, "label", "--item", "1"]) == 0  # read again
    assert "onion powder" in capsys.readouterr().out
    assert main([*home, "larder", "freeze", "1"]) == 0
    assert main([*home, "larder", "list", "--json"]) == 0
    out = capsys.readouterr().out
    lots = json.loads(out[out.index("{") :])["lots"]
    assert [one["label"] for one in lots] == [LIST]  # it stays with it into the freezer
    assert main([*home, "larder", "undo"]) == 0
    assert main([*home, "larder", "undo"]) == 0
    capsys.readouterr()
    assert main([*home, "larder", "list"]) == 0
    assert "label" not in capsys.readouterr().out


def test_what_cannot_be_is_said(home: list[str], capsys: Any) -> None:
    assert main([*home, "label", "--lot", "9", LIST]) != 0
    assert "item 9" in capsys.readouterr().err
    assert main([*home, "label", "--lot", "1"]) != 0
    assert main([*home, "label"]) != 0


def test_from_the_larders_screen(home: list[str], tmp_path: Path) -> None:
    folders = [shipped("ingredient_tables")]

    async def typed() -> None:
        app = LarderApp(tmp_path, load_tables(folders), date(2026, 3, 11), folders)
        async with app.run_test(size=(100, 30)) as pilot:
            await pilot.pause()
            await pilot.press("shift+f9")
            app.screen.query_one(Input).value = LIST
            await pilot.press("enter")
            await pilot.pause()
            assert isinstance(app.screen, Page)

    asyncio.run(typed())
    from calmlarder.household.household import Household

    with Household(tmp_path, load_tables(folders), date(2026, 3, 11), folders) as household:
        assert [one.lot.label for one in household.lots()] == [LIST]


def test_a_packet_in_the_hand_is_read_from_every_page(play: Callable[..., LarderApp]) -> None:
    """Found by the words a cook has for it; its allergens are held against those of the home."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app._kitchen.set("avoid", "soya")
        for page in ("escape", "ctrl+l", "f2", "ctrl+r", "shift+f4"):
            await pilot.press(page)
            await pilot.pause()
            await pilot.press("f12")
            await pilot.pause()
            assert isinstance(app.screen, PacketScreen), page
            await pilot.press("f12", "escape", *(["escape"] if page != "escape" else []))
            await pilot.pause()
        for words in ("label", "packet", "ingredients", "scan list"):
            await pilot.press("ctrl+p")
            await pilot.pause()
            app.screen.query_one(Input).value = words
            listed = app.screen.query_one(OptionList)
            await until(pilot, lambda: listed.option_count and listed.display)  # noqa: B023
            found = [str(listed.get_option_at_index(place).prompt) for place in range(listed.option_count)]
            assert any("F12" in one for one in found), words
            await pilot.press("escape", "escape")
            await pilot.pause()
        await pilot.press("f12")
        await pilot.pause()
        app.screen.post_message(LineInput.Pasted(LIST.replace(", onion", ",\nonion")))
        await pilot.pause()
        assert shown(app, "#packet").startswith("It names soya, which somebody here avoids.\nIt holds GOS")
        await pilot.press("ctrl+s", "enter")
        await pilot.pause()
        assert [one.lot.label for one in app._kitchen.lots()] == [LIST]
        await pilot.press("escape", "ctrl+z")
        await pilot.pause()
        assert [one.lot.label for one in app._kitchen.lots()] == [""]

    async def kept(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "firm tofu 280g")
        await act(app, pilot)

    play(kept)


def test_a_label_leaves_its_lot_out_of_a_dinner(home: list[str], capsys: Any) -> None:
    for line in ("rice", "carrots 400g", "soy sauce", "oil", "spinach 200g"):
        assert main([*home, "larder", "add", line]) == 0

    def dinner(*options: str) -> dict[str, Any]:
        capsys.readouterr()
        assert main([*home, "tonight", "--json", *options]) in {0, 3}
        found: dict[str, Any] = json.loads(capsys.readouterr().out)
        return found

    def uses(found: dict[str, Any]) -> set[str]:
        return {use["food"] for one in found["dinners"] for use in one["uses"]}

    assert "tofu-firm" in uses(dinner())
    assert main([*home, "label", "--lot", "1", LIST]) == 0
    left = dinner()
    assert "tofu-firm" not in uses(left)
    assert "its label names onion powder" in json.dumps(left)
    assert "tofu-firm" in uses(dinner("--profile", "roomy"))  # past elimination it is for the cook to judge
    # Sesame is one of the fourteen of Regulation (EU) No 1169/2011, Annex II.
    assert main([*home, "label", "--lot", "1", "tofu (soya beans, water), salt. May contain sesame"]) == 0
    assert "tofu-firm" in uses(dinner())
    assert "tofu-firm" not in uses(dinner("--avoid", "sesame"))


PEANUTS = "carrots, water, PEANUTS, salt"


@pytest.fixture
def stocked(tmp_path: Path) -> list[str]:
    """A larder for one dish, whose carrots name peanuts on their label."""
    where = ["--home", str(tmp_path), "--today", "2026-03-11"]
    for line in ("firm tofu 280g", "rice noodles 200g", "carrots 300g", "spinach 200g", "soy sauce", "olive oil",
                 "lemon", "ginger 40g"):  # fmt: skip
        assert main([*where, "larder", "add", line]) == 0
    assert main([*where, "label", "--item", "3", PEANUTS]) == 0
    return where


def _kept(home: list[str]) -> dict[str, Any]:
    from calmlarder.household.household import Household

    folders = [shipped("ingredient_tables")]
    with Household(Path(home[1]), load_tables(folders), date(2026, 3, 11), folders) as household:
        return {one.lot.food: one.lot for one in household.lots()}


def test_a_box_holds_what_the_labels_of_its_parts_name(stocked: list[str], capsys: Any) -> None:
    assert main([*stocked, "tonight", "--people", "2", "--use", "carrots"]) == 0
    assert main([*stocked, "cooked", "--boxes", "1"]) == 0
    (box,) = [lot for lot in _kept(stocked).values() if lot.box is not None]
    assert box.label_allergens == ("peanuts",)
    capsys.readouterr()
    main([*stocked, "tonight", "--avoid", "peanuts", "--json"])
    told = json.loads(capsys.readouterr().out)
    dinners = [*told["dinners"], *([told["nearest"]["dinner"]] if told.get("nearest") else [])]
    assert box.food not in {use["food"] for dinner in dinners for use in dinner["uses"]}


@pytest.mark.parametrize("line", ["carrots 200g", "carrots 300g, use by 2026-03-14"])
def test_a_label_stays_with_a_line_that_is_written_again(stocked: list[str], line: str) -> None:
    assert main([*stocked, "larder", "edit", "3", line]) == 0
    assert _kept(stocked)["carrot"].label == PEANUTS
    assert _kept(stocked)["carrot"].label_allergens == ("peanuts",)
    assert main([*stocked, "larder", "edit", "3", "parsnips 200g"]) == 0  # another food, another packet
    assert _kept(stocked)["parsnip"].label == ""


def test_what_a_label_names_stands_in_for_nothing(stocked: list[str], capsys: Any) -> None:
    capsys.readouterr()
    main([*stocked, "swap", "parsnips", "--from-larder", "--json"])
    assert "carrot" in capsys.readouterr().out
    main([*stocked, "swap", "parsnips", "--from-larder", "--avoid", "peanuts", "--json"])
    out = capsys.readouterr().out
    assert "carrot" not in out[out.index("{") :] if "{" in out else True


def test_an_export_says_what_the_label_named(stocked: list[str], capsys: Any) -> None:
    capsys.readouterr()
    assert main([*stocked, "larder", "export"]) == 0
    line = next(one for one in capsys.readouterr().out.splitlines() if "carrots" in one)
    assert "peanuts" in line
    assert "label --item" in line
