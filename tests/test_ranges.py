"""The cautious end of a range: what it does to the worst case, to made foods, and to tables from before it.

Checked by hand against the rules of DEVELOPERS.md and the cut-offs of Varney et al. 2017.
"""

from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from calmlarder.checks.tables import load_of
from calmlarder.intake.groups import food_figures
from calmlarder.intake.limit import limit_of
from calmlarder.intake.profile import profile_named
from calmlarder.render.food_text import food_text
from calmlarder.tables.book import Tables
from calmlarder.tables.check import check_tables
from calmlarder.tables.doubts import doubts
from calmlarder.tables.load import load_tables
from calmlarder.tables.mine import Part, made_food, write_made
from calmlarder.tables.places import shipped, table_folders
from calmlarder.tables.rows import Fermentable
from calmlarder.tables.vocabulary import COMPONENTS

OLD_HEADER = "food,component,g_per_100g,basis,source,code,note\n"
HEADER = "food,component,g_per_100g,high,basis,source,code,note\n"


def parts(**figures: tuple[str, str, str]) -> dict[Any, Fermentable]:
    """Seven rows of an invented food; each figure is value, high, basis; the rest are zeros that were measured."""
    rows: dict[Any, Fermentable] = {}
    for component in COMPONENTS:
        value, high, basis = figures.get(component, ("0", "", "analysed"))
        cells = {"food": "invented", "component": component, "g_per_100g": value, "high": high, "basis": basis}
        rows[component] = Fermentable.model_validate({**cells, "source": "by_nature", "code": "", "note": ""})
    return rows


@pytest.mark.parametrize(
    ("figures", "group", "plan", "worst"),
    [
        # A zero with a range counts in the worst case, and only there.
        ({"fructans": ("0", "0.1", "recalled")}, "oligosaccharides", 0, 100),
        # The range stands in for the margin of 1.25, be it more (0.4) or less (0.16).
        ({"gos": ("0.15", "0.4", "recalled")}, "oligosaccharides", 150, 400),
        ({"gos": ("0.15", "0.16", "recalled")}, "oligosaccharides", 150, 160),
        ({"gos": ("0.4", "", "recalled"), "fructans": ("0", "0.1", "recalled")}, "oligosaccharides", 400, 600),
        # Fructose high less glucose as it stands; glucose's own range would only lessen the excess.
        ({"fructose": ("2", "2.6", "analysed"), "glucose": ("1.8", "3", "analysed")}, "excess_fructose", 200, 800),
        ({"fructose": ("2", "", "analysed"), "glucose": ("1.8", "3", "recalled")}, "excess_fructose", 200, 250),
        ({"fructose": ("1", "1.4", "recalled"), "glucose": ("1.2", "", "borrowed")}, "excess_fructose", 0, 250),
        ({"mannitol": ("1", "1.8", "recalled"), "sorbitol": ("0", "0.2", "recalled")}, "polyols", 1000, 2000),
    ],
)
def test_the_worst_case_by_hand(figures: dict[str, Any], group: Any, plan: int, worst: int) -> None:
    rows = parts(**figures)
    found = food_figures(rows)
    assert (found.plan[group], found.worst[group]) == (plan, worst)
    cells = {
        ("invented", name): {k: str(v or 0 if k == "g_per_100g" else v or "") for k, v in row}
        for name, row in rows.items()
    }
    assert load_of(cells, "invented", group, True) * 1000 == worst
    assert load_of(cells, "invented", group, False) * 1000 == plan


@pytest.mark.parametrize(
    ("food", "least", "most"),
    [
        # Amounts dietitians commonly name stay within reach: tempeh 30 g and more, spring onion greens 75 g,
        # a portion of potatoes. Common practice, no source.
        ("tempeh", 30, 100), ("spring-onion-green", 75, 90), ("potato", 150, 200), ("lettuce", 75, 200),
    ],
)  # fmt: skip
def test_the_cautious_end_binds_and_leaves_a_portion(food: str, least: int, most: int, tables: Tables) -> None:
    limit = limit_of(tables.food_by_id[food], profile_named("elimination", tables), tables)
    assert limit.grams_weighed is not None
    assert least <= limit.grams_weighed <= most


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
    made = made_food("leek egg", [Part(leek, Decimal(50)), Part(egg, Decimal(50))], None, "sauce", "sauce", tables)
    write_made(made, tmp_path)
    assert (tmp_path / "fermentables.csv").read_text(encoding="utf-8") == OLD_HEADER + old
    again = load_tables(table_folders(tmp_path))
    fructans = again.fermentables_of("leek-egg")["fructans"]
    # Half of it is leek green, 0 to 0.1.
    assert (fructans.g_per_100g, fructans.high) == (Decimal("0.000"), Decimal("0.050"))
    assert "up to 0.050 in the worst case" in food_text(again.food_by_id["leek-egg"], again)
    assert again.fermentables_of("leek-egg")["lactose"].high is None
