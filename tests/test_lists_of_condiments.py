"""Lists of sauces, spices, pickles and drinks are read without a question, each thing as by itself."""

import random

import pytest

from calmlarder.larder.lines_to_lots import LarderReader

ONES = (
    "mint sauce", "english mustard", "horseradish", "soy sauce", "ketchup", "mayo", "brown sauce", "hot sauce",
    "fish sauce", "oyster sauce", "hoisin", "sriracha", "gochujang", "doenjang", "miso", "tahini", "sesame oil",
    "olive oil", "cider vinegar", "rice vinegar", "worcestershire sauce", "dijon mustard", "pesto", "harissa",
    "curry paste", "jam", "marmalade", "honey", "maple syrup", "peanut butter", "stock cubes", "bouillon", "cumin",
    "turmeric", "smoked paprika", "cinnamon", "garam masala", "hing", "chilli flakes", "bay leaves", "capers", "olives",
    "gherkins", "pickled onions", "sauerkraut", "kimchi", "chutney", "lime pickle", "relish", "salsa", "tartare sauce",
    "salad cream", "bbq sauce", "teriyaki sauce", "sweet chilli sauce", "mirin", "tomato puree", "vanilla", "cocoa",
    "sesame seeds", "nutmeg", "curry powder", "five spice", "nori", "tea", "coffee", "beer", "lemonade", "orange juice",
    "jeera", "haldi", "seeds", "pickles", "garlic salt", "onion powder", "gravy granules", "ranch", "vinaigrette",
    "cranberry sauce", "lemon juice", "passata", "anchovies", "kombucha", "cider", "gin",
)  # fmt: skip


def test_every_list_gives_each_of_its_things(reader: LarderReader) -> None:
    pick = random.Random(20)
    alone = {one: reader.read(one, "line") for one in ONES}
    foods = {one: {lot.food for lot in read.lots} for one, read in alone.items() if read is not None}
    assert all(foods.values()), [one for one, found in foods.items() if not found]
    wrong = {}
    for _ in range(400):
        ones = pick.sample(ONES, pick.choice((2, 3, 4, 5)))
        line = pick.choice((", ", "; ", " / ", " + ")).join(ones)
        line = f"{line[0].upper()}{line[1:]}." if pick.random() < 0.3 else line
        read = reader.read(line, "line")
        assert read is not None
        if {lot.food for lot in read.lots} != set().union(*(foods[one] for one in ones)):
            wrong[line] = [lot.food for lot in read.lots]
    assert len(wrong) <= 2, wrong


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("all the masalas obvs, jeera haldi garam masala, hing", ["cumin", "turmeric", "garam-masala", "asafoetida"]),
        ("the usual spices cumin paprika turmeric", ["cumin", "paprika", "turmeric"]),
        ("allspice, cumin", ["allspice", "cumin"]),
        ("hot sausage from the pork store (garlic fennel)", ["sausages"]),
    ],
)
def test_the_sort_of_a_list_and_seasonings_are_no_foods_of_it(
    reader: LarderReader, line: str, foods: list[str]
) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert [lot.food for lot in read.lots] == foods


def test_a_bracket_with_garlic_still_asks_where_none_is_held(reader: LarderReader) -> None:
    read = reader.read("bread (garlic)", "line")
    assert read is not None
    assert read.to_answer is not None
