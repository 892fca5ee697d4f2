"""Ordinary low FODMAP plates fit and plates that a dietitian would refuse do not: common practice, no source.

Each plate stands in plates.csv with its reason. It is judged three times: by the rule, by the check in decimals, which
shares no code with it, and through the command.
"""

import csv
import json
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from calmlarder.checks.plate import verify
from calmlarder.cli import main
from calmlarder.compose.less import smallest_change
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.meal import Judged, Table, judged
from calmlarder.intake.plate import Item
from calmlarder.intake.profile import profile_named
from calmlarder.render.plate_text import OnPlate, PlateAnswer, plate_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

PLATES = Path(__file__).parent / "plates.csv"
TOLERANCE = {"eye_percent": 30, "scale_grams": 2}


def plates() -> Iterator[Any]:
    with PLATES.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            foods = [part.rsplit(" ", 1) for part in row["foods"].split("; ")]
            yield pytest.param(row["sitting"], foods, row["verdict"] == "good", id=row["name"])


def items_of(foods: list[list[str]], tables: Tables) -> list[Item]:
    return [Item(food, load_profile_of(tables.food_by_id[food], tables), Fraction(g), False) for food, g in foods]


@pytest.mark.parametrize(("sitting", "foods", "good"), [*plates()])
def test_plates(sitting: Any, foods: list[list[str]], good: bool, tables: Tables) -> None:
    items = items_of(foods, tables)
    table = Table(profile_named("elimination", tables).at(sitting), 1)
    found: Judged = judged(items, table)
    assert found.fits == good
    on_plate = tuple(OnPlate(item.food, item.food, item) for item in items)
    told = plate_object(PlateAnswer(on_plate, found, table, ()))
    request = {"profile": "elimination", "sitting": sitting, "people": 1, "tolerance": TOLERANCE}
    assert not verify(told, request, [shipped("ingredient_tables")])
    spoilt = {**told, "fits": not told["fits"], "weigh": []}
    if good != bool(told["weigh"]):
        assert verify(spoilt, request, [shipped("ingredient_tables")])


@pytest.mark.parametrize(("sitting", "foods", "good"), [p for p in plates() if not p.values[2]])
def test_the_change_makes_it_fit_and_no_gram_less_does(
    sitting: Any, foods: list[list[str]], good: bool, tables: Tables
) -> None:
    items = items_of(foods, tables)
    table = Table(profile_named("elimination", tables).at(sitting), 1)
    less = smallest_change(items, table)
    assert less
    after = list(items)
    for one in less:
        after[one.number] = items[one.number]._replace(grams=items[one.number].grams - one.grams)
    assert judged([item for item in after if item.grams], table).fits
    for one in less:
        grams = after[one.number].grams + (1 if items[one.number].grams >= 10 else Fraction(1, 2))
        nearly = [item._replace(grams=grams) if n == one.number else item for n, item in enumerate(after)]
        assert not judged([item for item in nearly if item.grams], table).fits


@pytest.mark.parametrize(
    ("lines", "status", "fits"),
    [
        (["250 g cooked white rice", "170 g firm tofu", "60 g carrot"], 0, True),
        (["250 g cooked white rice", "60 g brown onion"], 3, False),
        (["250 g cooked white rice", "30 g wizard root"], 3, None),
    ],
)
def test_the_command(lines: list[str], status: int, fits: bool | None, tmp_path: Path, capsys: Any) -> None:
    assert main(["plate", *lines, "--home", str(tmp_path), "--json"]) == status
    told = json.loads(capsys.readouterr().out)
    assert told["fits"] is fits
    assert set(told) == {"fits", "foods", "loads_g", "at_most_g", "limits_g", "over", "weigh", "less", "unread"}
    assert set(told["loads_g"]) == {"oligosaccharides", "lactose", "excess_fructose", "polyols", "total"}
    assert bool(told["unread"]) == (fits is None)
    assert main(["plate", *lines, "--home", str(tmp_path)]) == status
    assert capsys.readouterr().out


def test_wrong_use(tmp_path: Path, capsys: Any) -> None:
    assert main(["plate", "--home", str(tmp_path)]) == 2
    assert main(["plate", "1 egg", "--people", "0", "--home", str(tmp_path)]) == 2


def test_what_was_eaten_before_counts(tmp_path: Path, capsys: Any) -> None:
    plate = ["plate", "250 g cooked white rice", "75 g broccoli", "--home", str(tmp_path), "--today", "2026-03-11"]
    assert main([*plate, "--json"]) == 0
    assert (
        main(["ate", "60 g canned chickpeas", "--when", "17:00", "--home", str(tmp_path), "--today", "2026-03-11"]) == 0
    )
    capsys.readouterr()
    assert main([*plate, "--json"]) == 3
    over = json.loads(capsys.readouterr().out)["over"]
    assert [(one["scope"], one["group"]) for one in over] == [("sitting", "oligosaccharides")]
