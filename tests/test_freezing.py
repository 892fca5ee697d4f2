"""What to freeze today."""

import csv
import json
from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.compose.offer import offer
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.freezing import freeze_today
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables

TODAY = date(2026, 3, 11)
ROOT = Path(__file__).parents[1]


def lots_of(tables: Tables, *lines: str) -> list[Lot]:
    readings = LarderReader(tables, TODAY).read_all(list(lines), "test")
    lots = [reading.lot for reading in readings if reading.lot is not None]
    assert len(lots) == len(lines)
    return lots


def test_up_to_the_use_by_day_and_never_after_it(tables: Tables) -> None:
    """The UK Food Standards Agency: food may be frozen up to its use-by date; after it, do not eat, cook or freeze."""
    lots = lots_of(
        tables,
        "firm tofu 280g, use by today",
        "chicken thighs 300g, use by yesterday",
        "tempeh 200g, use by 2026-03-20",
        "spinach 200g, use by tomorrow",
    )
    assert [one.food for one in freeze_today(lots, tables)] == ["tofu-firm", "spinach"]


def test_not_what_is_elsewhere_or_somebody_elses(tables: Tables) -> None:
    lots = lots_of(
        tables,
        "frozen spinach 300g",
        "firm tofu 280g, use by today (robin's)",
        "cucumber 200g, use by today",
        "lettuce 100g, use by today",
    )
    assert freeze_today(lots, tables) == ()


def test_weeks_are_those_of_the_keeping_table(tables: Tables) -> None:
    with (ROOT / "ingredient_tables" / "keeping.csv").open(newline="", encoding="utf-8") as file:
        days = {
            (row["food"], row["state"]): int(row["days"]) for row in csv.DictReader(file) if row["place"] == "freezer"
        }
    found = freeze_today(lots_of(tables, "cooked rice 300g, made today", "carrots 200g, use by today"), tables)
    assert {one.food: one.weeks for one in found} == {
        "rice-white-cooked": days["kind:rice", "cooked"] // 7,
        "carrot": days["carrot", "whole"] // 7,
    }
    assert all(one.how for one in found)


def test_the_command_tells_how_and_how_long(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    larder = tmp_path / "fridge.txt"
    larder.write_text("firm tofu 280g, use by 2026-03-11\npotatoes 1kg\n", encoding="utf-8")
    assert main(["freeze", "--larder", str(larder), "--today", "2026-03-11", "--json"]) == 0
    [one] = json.loads(capsys.readouterr().out)["freeze_today"]
    assert one["line"] == "firm tofu 280g, use by 2026-03-11"
    assert one["grams"] == 280
    assert one["weeks"] > 4
    assert main(["freeze", "--larder", str(larder), "--today", "2026-03-11"]) == 0
    assert "never freeze again" in " ".join(capsys.readouterr().out.split())
    assert main(["freeze", "--larder", str(larder), "--today", "2026-03-08"]) == 0
    assert "Nothing needs the freezer" in capsys.readouterr().out


def test_a_frozen_joint_is_for_tomorrow(tables: Tables, wanting: Callable[..., DinnerRequest]) -> None:
    """Thick meat thaws in the fridge overnight: Food Standards Agency, How to chill, freeze and defrost."""
    lots = lots_of(tables, "pork shoulder 1kg, in the freezer", "pork shoulder 1kg, use by 2026-03-12", "rice 500g")
    tonight = wanting(diet="omnivore")
    offered, excluded = offer(lots, tonight, tables)
    assert [one.lot.id for one in offered] == [lots[1].id, lots[2].id]
    assert [one.why for one in excluded] == [
        "frozen and thick: let it thaw in the fridge overnight, and cook it tomorrow"
    ]
    later = tonight.model_copy(update={"thaw_ahead": True})
    assert len(offer(lots, later, tables)[0]) == 3
