"""Table values against the figures of the data sets and papers, copied from these by their own codes."""

import csv
from decimal import Decimal
from pathlib import Path

import pytest

from calmlarder.tables.book import Tables

ROWS = list(csv.DictReader((Path(__file__).parent / "published_figures.csv").open(encoding="utf-8")))


def test_there_are_enough_over_all_components() -> None:
    assert len(ROWS) >= 150
    assert {row["component"] for row in ROWS} == {
        "fructans", "gos", "lactose", "fructose", "glucose", "sorbitol", "mannitol",
    }  # fmt: skip


@pytest.mark.parametrize("row", ROWS, ids=lambda row: f"{row['food']}-{row['component']}-{row['source']}")
def test_value_is_the_published_one(row: dict[str, str], tables: Tables) -> None:
    """As the typical figure, or as the upper end where the source has a range or another source fits better."""
    ours = tables.fermentables_of(row["food"])[row["component"]]  # type: ignore[index]
    stands = {"typical": ours.g_per_100g, "upper end": ours.high}[row["stands_as"]]
    assert stands == Decimal(row["g_per_100g"])
    assert (ours.source, ours.code) == (row["source"], row["code"])
