"""Without a dinner: first the line whose answer makes one, then the nearest dinner whole, then one thing to buy."""

import json
from pathlib import Path
from typing import Any

import pytest

from calmlarder.cli import main
from calmlarder.compose.market import Market

OPEN = ["meat", "500 g potatoes", "3 carrots", "spinach 200g", "rapeseed oil", "lemon"]


def told(folder: Path, lines: list[str], capsys: pytest.CaptureFixture[str], *more: str) -> str:
    path = folder / "larder.txt"
    path.write_text("\n".join(lines), encoding="utf-8")
    main(["tonight", "--larder", str(path), "--today", "2026-03-11", "--seconds", "60", *more])
    return capsys.readouterr().out


def test_the_line_that_would_make_a_dinner_is_said_first(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = told(tmp_path, OPEN, capsys)
    assert text.startswith("Answer `meat`: if it is ")
    (answer,) = json.loads(told(tmp_path, OPEN, capsys, "--json"))["answers"]
    # What it says to write makes that dinner.
    again = told(tmp_path, [answer["write"], *OPEN[1:]], capsys, "--json")
    assert json.loads(again)["dinners"][0]["title"] == answer["title"]


def test_with_a_dinner_nothing_need_be_answered_first(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = told(tmp_path, ["6 eggs", *OPEN], capsys)
    assert "Answer `meat`" not in text.splitlines()[0]


def test_the_nearest_dinner_is_told_whole(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = told(tmp_path, ["1 egg", *OPEN[1:]], capsys, "--protein", "20", "--protein-floor", "18")
    nearest = text[text.index("Nearest: ") :]
    assert "Steps" in nearest
    assert "One cook, " in nearest


def test_what_is_there_is_not_to_be_bought_under_another_name(wanting: Any, tables: Any) -> None:
    there = [tables.food_by_id[food] for food in ("tofu-smoked", "rice-white-dry", "salmon")]
    market = Market(wanting(diet="vegan"), tables, 10, (), there)
    sold = {ware.food.id for ware in market.wares if market.offered(ware) is not None}
    plain = Market(wanting(diet="vegan"), tables, 10)
    everything = {ware.food.id for ware in plain.wares if plain.offered(ware) is not None}
    gone = everything - sold
    assert "tofu-firm" in gone
    assert {tables.food_by_id[food].kind for food in gone} <= {"tofu", "rice"}
    assert {"tofu-smoked", "rice-white-dry"} & everything <= sold  # more of it may be bought


def test_silken_tofu_does_not_stand_for_firm(wanting: Any, tables: Any) -> None:
    market = Market(wanting(diet="vegan"), tables, 10, (), [tables.food_by_id["tofu-silken"]])
    assert "tofu-firm" in {ware.food.id for ware in market.wares if market.offered(ware) is not None}
