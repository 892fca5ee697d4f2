"""The cautious end of a range: what it does to the worst case, to made foods, and to tables from before it.

Checked by hand against the rules of DEVELOPERS.md and the cut-offs of Varney et al. 2017.
"""

from decimal import Decimal
from pathlib import Path

import pytest

from calmlarder.render.food_text import food_text
from calmlarder.tables.check import check_tables
from calmlarder.tables.doubts import doubts
from calmlarder.tables.load import load_tables
from calmlarder.tables.mine import Called, Part, made_food, write_made
from calmlarder.tables.places import shipped, table_folders

OLD_HEADER = "food,component,g_per_100g,basis,source,code,note\n"
HEADER = "food,component,g_per_100g,high,basis,source,code,note\n"


def own(tmp_path: Path, text: str) -> Path:
    (tmp_path / "fermentables.csv").write_text(text, encoding="utf-8")
    return tmp_path


def test_a_high_end_below_the_figure_is_a_fault(tmp_path: Path) -> None:
    folder = own(tmp_path, f"{HEADER}kale,fructans,0.5,0.4,recalled,recalled_general,kale; raw,a test\n")
    faults = [str(fault) for fault in check_tables([shipped("ingredient_tables"), folder])[1]]
    assert [fault for fault in faults if fault.startswith("fermentables.csv:2:4") and "below" in fault]


@pytest.mark.parametrize("high", ["", "0.2"])
def test_a_range_in_a_note_without_its_end_is_a_doubt(high: str, tmp_path: Path) -> None:
    row = f"kale,fructans,0,{high},recalled,recalled_general,kale; raw,range 0.0 to 0.3\n"
    tables = load_tables([shipped("ingredient_tables"), own(tmp_path, HEADER + row)])
    assert [doubt for doubt in doubts(tables) if doubt.where == "kale" and "range to 0.3" in doubt.what]


def test_tables_from_before_the_column_are_read_and_added_to(tmp_path: Path) -> None:
    old = "kale,gos,0.5,assumed,by_nature,,a test\n"
    tables = load_tables(table_folders(own(tmp_path, OLD_HEADER + old)))
    assert tables.fermentables_of("kale")["gos"].high is None
    leek, egg = tables.food_by_id["leek-green"], tables.food_by_id["egg"]
    made = made_food(
        Called("leek egg", "sauce", "sauce"), [Part(leek, Decimal(50)), Part(egg, Decimal(50))], None, tables
    )
    write_made(made, tmp_path, tables)
    assert (tmp_path / "fermentables.csv").read_text(encoding="utf-8") == OLD_HEADER + old
    again = load_tables(table_folders(tmp_path))
    fructans = again.fermentables_of("leek-egg")["fructans"]
    # Half of it is leek green, 0 to 0.1.
    assert (fructans.g_per_100g, fructans.high) == (Decimal("0.000"), Decimal("0.050"))
    assert "up to 0.050 at most" in food_text(again.food_by_id["leek-egg"], again)
    assert again.fermentables_of("leek-egg")["lactose"].high is None
