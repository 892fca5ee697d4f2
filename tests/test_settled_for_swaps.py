"""What is settled at home holds for swaps and recipes too: allergens above all. Who may eat nuts: Regulation (EU)
No 1169/2011, Annex II, names the fourteen allergens a kitchen must know."""

import json
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables


@pytest.fixture
def home(tmp_path: Path) -> Path:
    with Store.at(tmp_path / "home") as store:
        store.set({"diet": "vegan", "avoid": "nuts,soya"}, "settings")
    return tmp_path / "home"


def foods_of(out: str) -> set[str]:
    return {part["food"] for one in json.loads(out)["substitutes"] for part in one["parts"]}


def test_a_swap_keeps_the_allergens_and_the_diet_of_the_home(
    home: Path, tables: Tables, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--home", str(home), "swap", "milk", "--json"]) == 0
    found = foods_of(capsys.readouterr().out)
    assert found
    for food in found:
        row = tables.food_by_id[food]
        assert row.diet == "vegan"
        assert not {"nuts", "soya"} & set(row.allergens)


def test_what_is_avoided_today_joins_what_is_settled(
    home: Path, tables: Tables, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["--home", str(home), "swap", "milk", "--avoid", "gluten", "--json"]) == 0
    found = foods_of(capsys.readouterr().out)
    assert found
    for food in found:
        row = tables.food_by_id[food]
        assert row.gluten == "no"
        assert not {"nuts", "soya"} & set(row.allergens)
