"""Lines as people type them for the log: what was eaten, and how much.

Written down before looking at how the reader takes them; grams are what a cook would say such a thing weighs (an
imperial pint is 568 ml by the Weights and Measures Act 1985). Where a line leaves open what it was, it is asked.
"""

from datetime import datetime

import pytest

from calmlarder.history.log_entry import Meal, eaten_of
from calmlarder.history.when_said import when_said
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


def test_of_several_things_each_is_counted_as_it_was_told(reader: LarderReader, tables: Tables) -> None:
    """Two eggs are no two portions of rice, nor of spinach."""
    reading = reader.read("rice with 2 eggs and spinach", "test")
    assert reading is not None
    told = zip(reading.lots, reading.amounts, strict=True)
    entries = [eaten_of(lot, Meal(SIX, "me"), TODAY, tables, amount) for lot, amount in told]
    usual = [float(tables.food_by_id[one.food].portion_g) for one in entries]
    assert [one.grams for one in entries] == [usual[0], 110, usual[2]]


# Six in the evening of a Wednesday. What is meant is what people mean by it (common practice, no source).
WHEN = """
rice with 2 eggs and spinach, at one o'clock | rice with 2 eggs and spinach | 11 13:00
rice at 1 pm | rice | 11 13:00
rice, at 13:00 | rice | 11 13:00
rice at noon | rice | 11 12:00
this morning: 2 eggs | 2 eggs | 11 08:00
2 eggs yesterday evening | 2 eggs | 10 18:00
rice at half past six | rice | 11 18:30
rice at half past seven | rice | 11 07:30
rice around 8 | rice | 11 08:00
at 8 rice and 2 eggs | rice and 2 eggs | 11 08:00
coffee at 11 and a banana | coffee and a banana | 11 11:00
2 eggs at 20:00 | 2 eggs | 10 20:00
2 eggs at 7.30pm | 2 eggs | 10 19:30
2 eggs at quarter to seven yesterday evening | 2 eggs | 10 18:45
2 eggs last night at 1 | 2 eggs | 11 01:00
2 eggs half an hour ago | 2 eggs | 11 17:30
2 eggs for lunch | 2 eggs | 11 13:00
2 eggs on monday at noon | 2 eggs | 09 12:00
2 eggs (yesterday) | 2 eggs | 10 18:00
2 eggs, 2026-03-09 at 13:10 | 2 eggs | 09 13:10
"""
OF_THE_FOOD = [
    "rice cooked yesterday", "last night's curry", "rice, leftover from yesterday", "about 8 strawberries",
    "5 to 6 strawberries", "around 200 g rice", "cordial 1:10", "150 g rice made this morning", "2 eggs, 2026-02-30",
]  # fmt: skip


@pytest.mark.parametrize("row", WHEN.strip().splitlines())
def test_when_it_was_is_taken_out_of_the_line(row: str) -> None:
    line, rest, at = row.split(" | ")
    said = when_said(line, SIX)
    assert said.at is not None
    assert (said.text, f"{said.at:%d %H:%M}", said.problem) == (rest, at, "")


@pytest.mark.parametrize("line", OF_THE_FOOD)
def test_a_day_or_a_number_of_the_food_is_no_moment(line: str) -> None:
    assert when_said(line, SIX)[:2] == (line, None)


def test_what_cannot_be_is_said_and_nothing_is_dropped() -> None:
    for line in ("2 eggs at 8, rice at 1 pm", "2 eggs for lunch and one for dinner", "2 eggs today at 20:00"):
        said = when_said(line, SIX)
        assert (said.text, said.at) == (line, None)
        assert said.problem
    noon = datetime(2026, 3, 11, 11)
    assert when_said("2 eggs this evening", noon).problem == "today is still to come"
    assert when_said("2 eggs at one", noon).at == datetime(2026, 3, 10, 13)  # nobody means the night
    assert when_said("2 eggs for lunch", noon).at == noon


def test_a_score_of_another_day_stands_apart_from_what_its_note_tells() -> None:
    assert when_said("1 0 1 0 yesterday", SIX)[:3] == ("1 0 1 0", datetime(2026, 3, 10, 18), True)
    assert when_said("3 ate too much yesterday", SIX).is_apart is False
