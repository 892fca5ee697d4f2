"""`plate`: the smallest change against trying every change, boxes, ranges, what was eaten before, the program's line.

Outside check: whether a tried plate fits is recounted from the CSV rows by the code of checks/, which
shares nothing with the model; the changes tried are all there are.
"""

import json
import random
from collections.abc import Iterator, Mapping, Sequence
from datetime import date, datetime
from fractions import Fraction
from itertools import chain, combinations, product
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from calmlarder.checks.limits import limits_of
from calmlarder.checks.loads import Part, apart
from calmlarder.checks.plate import verify
from calmlarder.checks.tables import figures_of, mixtures, rows, within
from calmlarder.checks.within_limits import limit_faults
from calmlarder.cli import main
from calmlarder.compose.less import smallest_change
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import kept
from calmlarder.household.plate import Plate, PlateAsked, plate
from calmlarder.intake.amounts import USUAL
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.meal import Table, judged
from calmlarder.intake.plate import Item
from calmlarder.intake.profile import profile_named
from calmlarder.intake.stacking import Stacking
from calmlarder.larder.box import Box
from calmlarder.larder.lot import Lot
from calmlarder.render.plate_text import plate_object
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.mixture import Mixture, MixturePart
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp
from how_much import some
from programs import run_program, type_line, until

FOLDERS = [shipped("ingredient_tables")]
TODAY = date(2026, 3, 11)
DAY = TODAY.isoformat()
REQUEST = {"tolerance": {"eye_percent": 30, "scale_grams": 2}}


def fits_in_decimals(plate: Sequence[tuple[str, Fraction]], weighed: Sequence[str], read: Mapping[str, Any]) -> bool:
    """Whether amounts of foods fit a dinner of one person, some of the foods weighed."""
    parts = [Part(food, food, grams, food in weighed, Fraction(1)) for food, grams in plate if grams]
    counted = apart(parts, read["mixed"], read["figures"])
    return not limit_faults(counted, read["limits"], 1, REQUEST, (read["foods"], read["figures"]))


def tables_for(foods: Sequence[str], sitting: str, profile: str) -> Mapping[str, Any]:
    mixed = mixtures(FOLDERS)
    used = within(foods, mixed)
    return {
        "mixed": mixed,
        "foods": {row["id"]: row for row in rows(FOLDERS, "foods.csv", ("id",), used).values()},
        "figures": figures_of(FOLDERS, mixed, used),
        "limits": limits_of(FOLDERS, profile, sitting),
    }


def left_of(grams: int) -> Iterator[Fraction]:
    """All that may be left of a food: whole grams, halves of little."""
    step = Fraction(1) if grams >= 10 else Fraction(1, 2)
    return (step * count for count in range(int(grams / step) + 1))


def fewest_grams(plate: Sequence[tuple[str, int]], sitting: str, profile: str = "elimination") -> Fraction:
    """By trying every change, those of the fewest grams first, with every choice of what is weighed."""
    names = [food for food, _ in plate]
    read = tables_for(names, sitting, profile)
    whole = sum(grams for _, grams in plate)
    tried = sorted(product(*(left_of(grams) for _, grams in plate)), key=lambda left: whole - sum(left))
    weighings = list(chain.from_iterable(combinations(names, count) for count in range(len(names) + 1)))
    for left in tried:
        if any(fits_in_decimals(list(zip(names, left, strict=True)), one, read) for one in weighings):
            return whole - sum(left)
    raise AssertionError("an empty plate fits")


@pytest.mark.parametrize(
    ("foods", "sitting"),
    some([
        ((("garlic", 3), ("onion-brown", 14)), "dinner"),
        ((("chickpeas-canned", 62), ("garlic", 2)), "dinner"),
        ((("chickpeas-canned", 50), ("lentils-canned", 60)), "dinner"),
        ((("mushroom-button", 22), ("cauliflower", 12)), "dinner"),
        ((("mango", 60),), "dinner"),
        ((("honey", 9), ("apple", 20)), "snack"),
        ((("almonds", 30), ("cashews", 8)), "snack"),
        ((("onion-powder", 4), ("kidney-beans-canned", 60)), "dinner"),
        ((("garlic", 1), ("onion-brown", 5), ("bread-wholemeal", 9)), "dinner"),
        ((("chickpeas-canned", 62), ("rice-white-cooked", 3)), "dinner"),
    ], 2),
)  # fmt: skip
def test_less_is_as_few_grams_as_any_change(foods: tuple[tuple[str, int], ...], sitting: Any, tables: Tables) -> None:
    items = [Item(food, load_profile_of(tables.food_by_id[food], tables), grams, False) for food, grams in foods]
    table = Table(profile_named("elimination", tables).at(sitting), 1)
    found = judged(items, table)
    change = () if found.fits else smallest_change(items, table)
    assert sum((one.grams for one in change), Fraction(0)) == fewest_grams(foods, sitting)


@pytest.mark.parametrize("seed", some(range(12), 3))
def test_less_of_random_plates(seed: int, tables: Tables) -> None:
    dice = random.Random(seed)
    known = [food for food in tables.foods if not tables.unknown_of(food.id) and food.id not in tables.mixtures]
    foods = [(food.id, dice.randint(4, 24)) for food in dice.sample(known, 2)]
    items = [Item(food, load_profile_of(tables.food_by_id[food], tables), grams, False) for food, grams in foods]
    table = Table(profile_named("very-careful", tables).at("snack"), 1)
    change = () if judged(items, table).fits else smallest_change(items, table)
    assert sum((one.grams for one in change), Fraction(0)) == fewest_grams(foods, "snack", "very-careful")


def asked_of(home: Path, tables: Tables, *texts: str, people: int = 1) -> Plate:
    with Household(home, tables, TODAY, FOLDERS) as household:
        return plate(household, PlateAsked(texts, "dinner", people, USUAL, False))


def test_a_range_is_as_far_off_as_its_end(tmp_path: Path, tables: Tables) -> None:
    wide, narrow = (asked_of(tmp_path, tables, text).answer for text in ("60-120 g broccoli", "90 g broccoli"))
    assert not asked_of(tmp_path, tables, "60-120 g broccoli").faults
    assert [one.item.grams for one in wide.foods] == [one.item.grams for one in narrow.foods] == [90]
    rows = [(a.sum, b.sum) for a, b in zip(wide.judged.rows, narrow.judged.rows, strict=True)]
    assert all(a.likely == b.likely for a, b in rows)
    assert all(a.at_most >= b.at_most for a, b in rows)
    assert any(a.at_most > b.at_most for a, b in rows)


def boxed(home: Path, tables: Tables, chickpeas: int) -> None:
    """Two shares of rice and chickpeas in the fridge."""
    parts = tuple(
        MixturePart(food=food, grams=grams, most_hundredths=130 * grams)
        for food, grams in (("rice-white-cooked", 400), ("chickpeas-canned", chickpeas))
    )
    mixture = Mixture(shares=2, share_grams=(400 + chickpeas) // 2, parts=parts)
    box = Box(title="Rice bowl", mixture=mixture, keeps_days=1, keeps_why="rice", freezes=True, heated=False, cold=True)
    lot = Lot(
        id="", line="rice bowl (boxed)", food=box.food_id, grams_low=0, grams=2 * mixture.share_grams,
        grams_high=2 * mixture.share_grams, place="fridge", opened=False, dates=(), days_left=1, days_from="",
        safety_days_left=1, safety_from="", condition=None, to_bin=False, owner=None, owner_agrees=False, box=box,
    )  # fmt: skip
    with Store.at(home) as store:
        store.add_lots([kept(lot)], "add a box")


@pytest.mark.parametrize(
    ("text", "shares"),
    [("boxed rice bowl", 1), ("2 boxed rice bowl", 2), ("220 g boxed rice bowl", 1), ("half a boxed rice bowl", 0.5)],
)
def test_a_boxed_dish_by_its_name(text: str, shares: float, tmp_path: Path, tables: Tables) -> None:
    boxed(tmp_path / "home", tables, 40)
    found = asked_of(tmp_path / "home", tables, text, "60 g carrot")
    assert not found.faults
    assert float(found.answer.foods[0].item.grams) == pytest.approx(220 * shares)
    told = plate_object(found.answer)
    assert [one["how"] for one in told["foods"]] == ["box", "eye"]
    plain = asked_of(tmp_path / "home", tables, f"{200 * shares} g cooked rice", f"{20 * shares} g canned chickpeas",
                     "60 g carrot")  # fmt: skip
    for key, grams in plate_object(plain.answer)["loads_g"].items():
        assert told["loads_g"][key] == pytest.approx(grams, abs=0.001)


def test_a_boxed_dish_with_too_much_in_it_does_not_fit(tmp_path: Path, tables: Tables) -> None:
    boxed(tmp_path / "home", tables, 240)
    found = asked_of(tmp_path / "home", tables, "boxed rice bowl")
    assert not found.faults
    assert found.answer.fits is False
    assert found.answer.judged.less


def run(capsys: Any, home: Path, *words: str) -> tuple[int, dict[str, Any]]:
    capsys.readouterr()
    status = main([*words, "--home", str(home), "--today", DAY, "--json"])
    return status, json.loads(capsys.readouterr().out)


def test_lunch_is_a_word_for_the_packed_meal(tmp_path: Path, capsys: Any) -> None:
    read = [run(capsys, tmp_path, "plate", "170 g firm tofu", "--meal", word) for word in ("lunch", "packed")]
    assert read[0] == read[1]
    assert read[0][1]["fits"] is True


def test_what_was_eaten_before_is_checked_too(tmp_path: Path, capsys: Any, tables: Tables) -> None:
    run(capsys, tmp_path, "ate", "60 g canned chickpeas", "--when", "17:00")
    status, told = run(capsys, tmp_path, "plate", "20 g canned chickpeas", "200 g cooked rice")
    assert status == 3
    over = next(one for one in told["over"] if one["food"] == "chickpeas-canned")
    alone = run(capsys, tmp_path / "none", "plate", "20 g canned chickpeas")[1]["loads_g"]["oligosaccharides"]
    assert over["g"] == pytest.approx(4 * alone, abs=0.001)  # 60 g and 20 g, whatever the tables say of them
    how = Stacking(at=datetime(2026, 3, 11, 18))
    with Household(tmp_path, tables, TODAY, FOLDERS) as household:
        found = plate(household, PlateAsked(["20 g canned chickpeas"], "dinner", 1, USUAL, False, before=how))
        eaten = [one.model_dump(mode="json") for one in household.eaten(how.at, 3)]
    assert not found.faults
    request = {"profile": "elimination", "sitting": "dinner", "people": 1, **REQUEST, "eaten": eaten,
               "stacking": how.model_dump(mode="json")}  # fmt: skip
    assert verify({**plate_object(found.answer), "fits": True}, request, FOLDERS)
    assert verify(plate_object(found.answer), {**request, "eaten": []}, FOLDERS)


@pytest.mark.parametrize(
    ("words", "status", "fits"),
    [
        (["75 g broccoli"], 0, True),
        (["75 g broccoli", "30 g wizard root"], 3, None),
        (["60 g onion", "30 g wizard root"], 3, False),
        (["30 g wizard root"], 3, None),
    ],
)
def test_what_is_not_known_is_never_called_fine(
    words: list[str], status: int, fits: bool | None, tmp_path: Path, capsys: Any
) -> None:
    assert run(capsys, tmp_path, "plate", *words)[0] == status
    assert run(capsys, tmp_path, "plate", *words)[1]["fits"] is fits


def test_a_plate_is_one_entry_of_the_log(tmp_path: Path, capsys: Any) -> None:
    _, told = run(capsys, tmp_path, "plate", "200 g cooked rice", "75 g broccoli", "--log")
    _, log = run(capsys, tmp_path, "eaten")
    assert [one["text"] for one in log["eaten"]] == ["200 g cooked rice, 75 g broccoli"]
    _, again = run(capsys, tmp_path, "plate", "60 g canned chickpeas")
    over = {one["group"]: one["g"] for one in again["over"] if one["scope"] == "sitting"}
    brought = told["loads_g"]["oligosaccharides"] + again["loads_g"]["oligosaccharides"]
    assert over["oligosaccharides"] == pytest.approx(brought, abs=0.001)


def test_a_plate_in_the_larders_line(tmp_path: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        line = app.screen.query_one(Input)
        line.value = "plate 170 g firm tofu, 75 g broccoli, 200 g cooked rice"
        meaning = app.screen.query_one("#meaning", Static)
        await until(pilot, lambda: str(meaning.content))
        assert str(meaning.content).startswith("This plate fits. Fullest:")
        await pilot.press("enter")
        await pilot.pause()
        app.screen.query_one(OptionList).highlighted = 1
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("escape")
        await pilot.pause()
        assert not app.screen.query_one(Input).value  # what is typed next is a line of its own
        await pilot.press("up")
        assert app.screen.query_one(Input).value.startswith("plate 170 g")
        await type_line(pilot, "plate 60 g onion, 2 garlic cloves")
        await pilot.press("enter")
        await pilot.pause()
        assert not app.screen.query_one(Input).value

    run_program(tmp_path / "home", tables, act)
    with Store.at(tmp_path / "home") as store:
        assert [one["text"] for _, one in store.eaten("2026-03-11")] == ["60 g onion, 2 garlic cloves"]
