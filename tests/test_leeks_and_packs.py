"""A leek in the fridge is its greens, which season, and its whites, which stay out; a pack is what is in it.

Green leaves of leek hold hardly any fructans, the white part 7.1 g in 100 g (Muir et al. 2007, Journal of Agricultural
and Food Chemistry 55: 6619); about two fifths of a leek are its greens (common practice, no source).
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.tables.book import Tables


@pytest.fixture
def reader(tables: Tables) -> LarderReader:
    return LarderReader(tables, date(2026, 3, 11))


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("leeks x2", {"leek-green": 120, "leek-white": 180}),
        ("2 leaks", {"leek-green": 120, "leek-white": 180}),
        ("1 leek", {"leek-green": 60, "leek-white": 90}),
        ("400 g leeks", {"leek-green": 160, "leek-white": 240}),
        ("2 leeks, a bit yellow", {"leek-green": 120, "leek-white": 180}),
        ("bit of leek, mostly green end", {"leek-green": 15}),
        ("2 whole leeks", {"leek-whole": 300}),
        ("3 baby leeks", {"leek-whole": 270}),
    ],
)
def test_a_leek_is_two_lots(reader: LarderReader, line: str, grams: dict[str, int]) -> None:
    reading = reader.read(line, "test")
    assert reading is not None
    assert {lot.food: lot.grams for lot in reading.lots} == grams
    assert ("whole: greens and whites" in reading.assumed) == ("leek-white" in grams)


def test_its_greens_keep_as_it_does(reader: LarderReader) -> None:
    """A whole leek keeps well over a week; leaves by themselves do not."""
    reading = reader.read("leeks x2", "test")
    assert reading is not None
    assert all(lot.days_left is None or lot.days_left > 7 for lot in reading.lots)


@pytest.mark.parametrize(
    "line", ["corn tortillas 1 pack of 30", "1 pack of 30 corn tortillas", "corn tortillas pack of 30"]
)
def test_a_pack_is_counted_by_what_is_in_it(reader: LarderReader, line: str) -> None:
    reading = reader.read(line, "test")
    assert reading is not None
    assert [lot.grams for lot in reading.lots] == [750]  # thirty of 25 g (measures.csv)
