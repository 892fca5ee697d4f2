"""A food of the cook's own keeps as what is in it: two days with anything fresh, and raw meat in it is cooked through.

Leftovers within 48 hours, cooked rice within a day: UK Food Standards Agency, "Chilling" and "Home food fact checker"
(recalled). Opened raw poultry within a day or two: USDA FSIS, as in keeping.csv.
"""

from datetime import date
from pathlib import Path

import pytest

from calmlarder.checks.lots import last_safe_day
from calmlarder.checks.tables import foods_of, mixtures, rows
from calmlarder.cli import main
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.tables.book import Tables
from calmlarder.tables.doubts import doubts
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped

DAY = date(2026, 3, 11)
SHIPPED = shipped("ingredient_tables")


def with_made(home: Path, name: str, parts: str, *more: str) -> Tables:
    assert main(["--home", str(home), "tables", "mine", "add", name, "--from", parts, *more]) == 0
    return load_tables([SHIPPED, home / "tables"])


@pytest.mark.parametrize(
    ("parts", "days", "more"),
    [
        ("200 g tinned chickpeas; 100 g tomatoes; 20 g olive oil", 2, ()),
        ("50 g basil; 20 g walnuts; 50 g olive oil", 2, ()),
        ("200 g cooked rice; 100 g carrots", 1, ()),
        ("300 g chicken breast; 20 g soy sauce", 1, ()),
        ("100 g mayonnaise; 50 g boiled eggs", 2, ()),
        ("100 g firm tofu; 10 g soy sauce", 2, ("--kind", "condiment")),
    ],
)
def test_with_anything_fresh_it_is_a_leftover(parts: str, days: int, more: tuple[str, ...], tmp_path: Path) -> None:
    tables = with_made(tmp_path, "zubble mix", parts, *more)
    reader = LarderReader(tables, DAY)
    reading = reader.read("zubble mix 300g", "line")
    assert reading is not None
    (lot,) = reading.lots
    assert (lot.safety_days_left, lot.days_left) == (days, days)
    assert "estimated" in lot.days_from
    out = reader.read("zubble mix 300g, in the cupboard, bought yesterday", "line")
    assert out is not None
    assert out.lots[0].safety_days_left == -1


def test_the_check_that_shares_no_code_has_the_same_day(tmp_path: Path) -> None:
    tables = with_made(tmp_path, "zubble mix", "200 g cooked rice; 100 g carrots")
    reading = LarderReader(tables, DAY).read("zubble mix 300g, made yesterday", "line")
    assert reading is not None
    folders = [SHIPPED, tmp_path / "tables"]
    lot, foods = reading.lots[0].model_dump(mode="json"), foods_of(folders, mixtures(folders))
    last = last_safe_day(lot, foods, rows(folders, "keeping.csv", ("food", "place", "state")), DAY)
    assert last == DAY


@pytest.mark.parametrize("parts", ["20 g cumin; 10 g turmeric; 5 g salt", "50 g soy sauce; 50 g cider vinegar"])
def test_of_dry_and_lasting_things_alone_it_lasts(parts: str, tmp_path: Path) -> None:
    tables = with_made(tmp_path, "zubble mix", parts)
    reading = LarderReader(tables, DAY).read("zubble mix 50g", "line")
    assert reading is not None
    (lot,) = reading.lots
    assert lot.safety_days_left is None
    assert lot.days_left is None or lot.days_left >= 60


def test_raw_meat_in_it_is_never_eaten_raw(tmp_path: Path) -> None:
    tables = with_made(tmp_path, "zubble mix", "300 g turkey mince; 20 g soy sauce")
    food = next(one for one in tables.foods if one.name == "zubble mix")
    mince = tables.food_by_id["turkey-mince"]
    assert "raw" not in food.minutes
    assert food.minutes["stir-fry"] == mince.minutes["stir-fry"]
    assert tables.done_sign(food) == tables.done_sign(mince) != ""


def test_a_food_from_before_its_days_were_written_is_doubted(tmp_path: Path) -> None:
    with_made(tmp_path, "zubble mix", "200 g tinned chickpeas; 100 g tomatoes")
    folders = [SHIPPED, tmp_path / "tables"]
    assert [doubt for doubt in doubts(load_tables(folders)) if doubt.where == "zubble-mix"] == []
    (tmp_path / "tables" / "keeping.csv").unlink()
    (doubt,) = [doubt for doubt in doubts(load_tables(folders)) if doubt.where == "zubble-mix"]
    assert "how long it keeps" in doubt.what


def test_own_tables_of_before_go_on_and_are_written_anew(tmp_path: Path) -> None:
    """The columns were called `until` and `note`: they are read as of now, by the check too."""
    own = tmp_path / "tables"
    own.mkdir()
    of_before = "applies_to,states,until,caution,source\ncod,raw,white to the middle,,fsa_uk\n"
    (own / "cautions.csv").write_text(of_before, encoding="utf-8")
    days = "food,place,state,days,kind,source,note\ncod,freezer,whole,30,quality,own_recipe,in cubes\n"
    (own / "keeping.csv").write_text(days, encoding="utf-8")
    columns = ("applies_to", "states", "done_when", "caution")
    for name in ("zubble mix", "zubble dip"):
        tables = load_tables([SHIPPED, own])
        assert tables.done_sign(tables.food_by_id["cod"]) == "white to the middle"
        keeping = tables.keeping_of(tables.food_by_id["cod"], "freezer", "whole")
        assert keeping is not None
        assert (keeping.days, keeping.how_or_why) == (30, "in cubes")
        assert ("cod", "raw", "white to the middle", "") in rows([SHIPPED, own], "cautions.csv", columns)
        with_made(tmp_path, name, "300 g chicken breast; 20 g soy sauce")
    written = (own / "cautions.csv").read_text(encoding="utf-8").splitlines()
    assert written[0] == "applies_to,states,done_when,caution,source"
    assert written[1] == "cod,raw,white to the middle,,fsa_uk"
