"""Lines as cooks of other lands type them: bad, bought, cooked, given, counted, dated. The lines are ours."""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from gone_or_off import is_gone_or_off


def lots(reader: LarderReader, line: str) -> tuple[Lot, ...]:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading.lots


@pytest.mark.parametrize(
    ("line", "bad"),
    [
        ("cabbage don spoil", True), ("the milk's turned", True), ("kale went slimy", True),
        ("spinach got bad", True),
        ("tomatoes exploded", True), ("carrots spoilt", True), ("strawberries furry", True), ("eggs are bad", True),
        ("2 bad carrots", True),
        ("tofu, not bad", False), ("carrots, bad ends cut off", False),
        ("cream hasn't gone off", False), ("spinach not turned yet", False), ("tofu turned brown", False),
    ],
)  # fmt: skip
def test_what_has_gone_bad_is_not_added(line: str, bad: bool, reader: LarderReader) -> None:
    assert is_gone_or_off(reader, line) is bad
    assert len(lots(reader, line)) == (not bad)


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("carrot & green beans from Sunday shopping", ["carrot", "green-beans"]),
        ("carrots from sunday's shop", ["carrot"]),
        ("kale from the market on sunday", ["kale"]),
    ],
)
def test_what_was_bought_on_a_day_is_raw(line: str, foods: list[str], reader: LarderReader) -> None:
    found = lots(reader, line)
    assert [lot.food for lot in found] == foods
    assert {(one.kind, one.on) for lot in found for one in lot.dates} == {("bought", date(2026, 3, 8))}


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("rice in the cooker, ~2 bowls", "rice-white-cooked"), ("rice in the rice cooker", "rice-white-cooked"),
        ("quinoa in a pan", "quinoa-cooked"), ("lentils in a pot", "lentils-boiled"),
        ("plate of pasta", "pasta-cooked"),
        ("rice, one bowl boiled", "rice-white-cooked"), ("rice in a pot, 500g, dry", "rice-white-dry"),
        ("rice in a jar", "rice-white-dry"), ("basil in a pot", "basil"), ("oats, 2 bowls", "oats-rolled"),
    ],
)  # fmt: skip
def test_what_stands_in_a_pot_is_cooked_where_it_comes_dry(line: str, food: str, reader: LarderReader) -> None:
    assert [lot.food for lot in lots(reader, line)] == [food]


@pytest.mark.parametrize(
    ("line", "food", "owner"),
    [
        ("3 eggs from next door's hens", "egg", None), ("6 eggs from Carol's chickens", "egg", None),
        ("pasta (gf one for mum)", "pasta-gluten-free-dry", None), ("pasta (mum's)", "pasta-dry", "mum"),
        ("kimchi mom sent", "kimchi", None), ("pecans from Earl's tree", "pecans", None),
        ("mango from grandma", "mango", None), ("dad's cheddar", "cheddar", "dad"),
        ("rice for the dog", "rice-white-dry", "dog"), ("oat milk for Ben", "oat-drink", "ben"),
    ],
)  # fmt: skip
def test_what_was_given_or_is_meant_for_one_of_us_is_ours(
    line: str, food: str, owner: str | None, reader: LarderReader
) -> None:
    assert [(lot.food, lot.owner) for lot in lots(reader, line)] == [(food, owner)]


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("eggs, 18 carton, 15 inside", "egg", 825), ("tray of eggs, 30, six used", "egg", 1320),
        ("dozen eggs minus 3", "egg", 495), ("eggs: 4 of 12 left", "egg", 220),
        ("1 and a half kilos potatoes", "potato", 1500), ("lettuce 1/2", "lettuce", 200), ("60 eggs", "egg", 3300),
        ("potatoes kilo y medio", "potato", 1500),
        ("medio kilo de tomates", "tomato", 500), ("half kilo carrots", "carrot", 500),
        ("cuarto de kilo mushrooms", "mushroom-button", 250), ("a matchbox of cheddar", "cheddar", 30),
        ("10 tomatoes, six are mouldy", "tomato", 400), ("gluten free rice", "rice-white-dry", 1000),
        ("tins of tomatoes, 2 left", "tomato-canned", 800),
    ],
)  # fmt: skip
def test_how_much_there_is(line: str, food: str, grams: float, reader: LarderReader) -> None:
    (found,) = lots(reader, line)
    assert (found.food, found.grams) == (food, grams)


def test_more_eggs_than_anybody_has_are_asked_about(reader: LarderReader) -> None:
    reading = reader.read("999 eggs", "line 1")
    assert reading is not None
    assert reading.to_answer is not None
    assert reading.to_answer.about == "amount"


@pytest.mark.parametrize(
    ("line", "day"),
    [
        ("spinach mar 9", 9), ("spinach 9 mar", 9), ("spinach 16.03.2026", 16), ("spinach 13.03.", 13),
        ("tofu 16-mar", 16), ("tofu Mar. 16", 16), ("milk expired 9/3", 9), ("milk consume by 14/3", 14),
        ("milk sell by mar 9", 9), ("mushrooms gotta cook em tonight", 11), ("mushrooms must be cooked today", 11),
        ("kale gotta go by friday", 13), ("salmon 12/03", 12), ("salmon 16/3", 16), ("salmon 12.3.", 12),
        ("salmon mar10", 10), ("salmon 12-03-2026", 12), ("chicken to be cooked by thursday", 12),
        ("chicken best by 16-mar-26", 16),
    ],
)  # fmt: skip
def test_labels_and_days_are_read_and_are_no_amounts(line: str, day: int, reader: LarderReader) -> None:
    (found,) = lots(reader, line)
    assert [(one.on, one.kind in {"use-by", "best-before"}) for one in found.dates] == [(date(2026, 3, day), True)]
    assert found.grams <= 1000


def test_what_was_cooked_on_a_day_was_made_then(reader: LarderReader) -> None:
    for line, day in (("chicken cooked today", 11), ("sunday roast leftovers", 8)):
        (found,) = lots(reader, line)
        assert [(one.kind, one.on) for one in found.dates] == [("made", date(2026, 3, day))]


@pytest.mark.parametrize(
    ("line", "food", "place"),
    [
        ("GF tamari", "tamari", "cupboard"), ("queso panela", "queso-fresco", "fridge"),
        ("ugu", "pumpkin-leaves", "fridge"), ("spitzkohl", "cabbage-white", "fridge"),
        ("oat bev", "oat-drink", "fridge"), ("oat m*lk", "oat-drink", "fridge"),
        ("red bell pep", "pepper-red", "fridge"),
        ("mess of collards", "spring-greens", "fridge"), ("okra froze", "okra", "freezer"),
    ],
)  # fmt: skip
def test_other_names(line: str, food: str, place: str, reader: LarderReader) -> None:
    assert [(lot.food, lot.place) for lot in lots(reader, line)] == [(food, place)]


def test_a_food_the_tables_lack_is_offered_nothing_that_is_only_spelt_alike(reader: LarderReader) -> None:
    reading = reader.read("kashk", "line 1")
    assert reading is not None
    assert reading.to_answer is not None
    assert reading.to_answer.choices == ()


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("pot of rice from lunch", "rice-white-cooked", 800), ("kanin from lunch, kaldero half full", None, 400),
        ("brown rice in the cooker from this am", "rice-brown-cooked", 800),
        ("big pan of bolognese", "bolognese", 1440),
        ("half a pot of beef stew", "stew-meat", 400), ("olla de frijoles negros", "black-beans-boiled", 800),
        ("slow cooker half full of pulled pork", "pork-cooked", 400), ("wok of fried rice, half", None, 400),
        ("small pot of beans", "chilli-bean", 440), ("pot of chili (beans, onion), Tues", "chilli-bean", 800),
        # no cooking pots
        ("yoghurt pot", "yoghurt-plain", 125), ("pot of basil", "basil", 40), ("pan de sal 6", "bread-roll", 300),
        ("rice in the pot 200g", "rice-white-cooked", 200),
    ],
)  # fmt: skip
def test_what_was_cooked_in_a_pot_is_a_cooking_pot_of_it(
    reader: LarderReader, line: str, food: str | None, grams: float
) -> None:
    """A cooking pot holds some 800 g of what a household cooks: common practice, no source."""
    reading = reader.read(line, "line")
    assert reading is not None
    ((found, weight),) = [(lot.food, lot.grams) for lot in reading.lots]
    assert weight == grams
    assert found == (food or found)


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        # Malayalam, Kannada and Sinhala (recalled kitchen words)
        ("payar 100g", "green-beans", 100), ("velichenna half bottle", "oil-coconut", None),
        ("naranga achar", "lime-pickle", None), ("nendran raw 2", "plantain-green", None),
        ("kudampuli", "garcinia-dried", None), ("bendekai 200g", "okra", 200), ("tuppa", "ghee", None),
        ("wambatu 2", "aubergine", None), ("eerulli 3", "onion-brown", None),
        # West Africa: what is iced there is frozen fish, and no salted one
        ("mackerel iced fish 2 (frozen)", "mackerel", None), ("g/nut oil", "oil-groundnut", None),
        ("zobo", "tea-herbal", None), ("sampalok mix", "sinigang-mix", None), ("feijoa chutney", "pickle-sweet", None),
        # by a thumb, a box and a darne (common practice, no source)
        ("hard cheese about a thumb's worth, dried out", "cheddar", 30), ("2 darnes salmon", "salmon", 360),
        ("half a box of beer", "beer", 1980), ("chile serrano a handful", "chilli-green", 60),
        ("pnut butter, scrapings", "peanut-butter", 20.4), ("jar of salsa, scrapings only", "salsa", 18),
        # what is hairy on a root are rootlets
        ("few hairy carrots", "carrot", 500), ("hairy parsnips 3", "parsnip", None),
    ],
)  # fmt: skip
def test_words_of_more_kitchens(reader: LarderReader, line: str, food: str, grams: float | None) -> None:
    """What a cook of that kitchen would say of each: recalled cookery."""
    reading = reader.read(line, "line")
    assert reading is not None
    ((found, weight, owner),) = [(lot.food, lot.grams, lot.owner) for lot in reading.lots]
    assert (found, owner) == (food, None)
    assert weight == (grams or weight)


@pytest.mark.parametrize("line", ["hairy strawberries", "eba leftover - throway", "soup throw away"])
def test_what_is_hairy_or_thrown_away_is_gone(reader: LarderReader, line: str) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert not reading.lots


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("ham, left by tom", "tom"), ("white pudding - himself left it", "himself"),
        ("yoghurts that kate left", "kate"),
        ("lasagne - sophie left it here", "sophie"), ("milk, half left", None), ("carrots a week's worth", None),
    ],
)  # fmt: skip
def test_what_somebody_left_is_theirs(reader: LarderReader, line: str, owner: str | None) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert [lot.owner for lot in reading.lots] == [owner]
