"""Lines as people type them for the log: what was eaten, and how much.

Written down before looking at how the reader takes them; grams are what a cook would say such a thing weighs (an
imperial pint is 568 ml by the Weights and Measures Act 1985). Where a line leaves open what it was, it is asked.
"""

from datetime import datetime

import pytest

from calmlarder.history.log_entry import Meal, eaten_of
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.tables.book import Tables
from conftest import TODAY

SIX = datetime(2026, 3, 11, 18)
CLEAR = """
coffee 150 350 coffee
a cup of coffee 150 300 coffee
2 coffees 300 600 coffee
americano 150 350 coffee
flat white 150 350 coffee-latte
mug of tea 200 350 tea-black
a pot of tea 300 1000 tea-black
glass of orange juice 150 300 orange-juice
small glass of orange juice 90 200 orange-juice
OJ 100 300 orange-juice
a glass of apple juice 150 300 apple-juice
a pint of beer 560 575 beer
half a pint of lager 280 290 beer
a beer 270 500 beer
a bottle of beer 270 520 beer
glass of red wine 100 260 wine-red
large glass of white wine 190 260 wine-white
2 squares dark chocolate 8 25 chocolate-dark
bar of milk chocolate 40 110 chocolate-milk-bar
half a bar of dark chocolate 40 60 chocolate-dark
a chocolate biscuit 10 25 biscuits-chocolate
2 digestives 25 36 biscuits-wheatmeal
a slice of sponge cake 40 120 cake-plain
croissant 40 90 croissant
an apple 90 200 apple
half an apple 45 100 apple
a pear 90 200 pear
1 firm banana 80 140 banana-firm
an orange 90 200 orange
a yoghurt 100 200 yoghurt-plain
an egg 40 70 egg
a piece of toast 20 50 bread-white
2 slices of toast 50 100 bread-white
handful of peanuts 20 45 peanuts
handful of crisps 12 30 potato-crisps-flavoured
2 scoops of vanilla ice cream 80 160 ice-cream
spoonful of honey 15 25 honey
big bowl of cooked pasta 250 500 pasta-cooked
bag of apples 150 2000 apple
"""
ASKED = {
    "two squares of chocolate": {"dark chocolate", "milk chocolate", "white chocolate"},
    "chai": {"weak black tea", "tea with milk"},
    "3 biscuits": {"plain sweet biscuits", "wheatmeal biscuits", "chocolate biscuits"},
    "a slice of cake": {"plain cake"},
    "2 glasses wine": {"red wine", "dry white wine"},
}


@pytest.mark.parametrize("row", CLEAR.strip().splitlines())
def test_what_was_eaten_is_read(row: str, reader: LarderReader, tables: Tables) -> None:
    line, low, high, food = row.rsplit(" ", 3)
    reading = reader.read(line, "test")
    assert reading is not None
    assert reading.lot is not None, reading
    entry = eaten_of(reading.lot, Meal(SIX, "me"), TODAY, tables)
    assert entry.food == food
    assert float(low) <= entry.grams <= float(high)


@pytest.mark.parametrize("line", ASKED)
def test_what_may_be_several_things_is_asked(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "test")
    assert reading is not None
    assert reading.lot is None
    assert {one.name for one in reading.candidates} >= ASKED[line]


def test_a_size_says_how_large_the_glass_was_and_nothing_of_what_was_weighed(reader: LarderReader) -> None:
    def grams(line: str) -> float:
        reading = reader.read(line, "test")
        assert reading is not None
        assert reading.lot is not None
        return reading.lot.grams

    assert grams("small glass of milk") < grams("glass of milk") < grams("large glass of milk")
    assert grams("large bowl of cooked white rice, 200 g") == 200
    assert grams("large carrot") != grams("carrot") or grams("small carrot") != grams("carrot")
