"""Amounts keep two foods of a line apart; small ends, dozens and more, and words that are typed as two."""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader


def lots(reader: LarderReader, line: str) -> list[tuple[str, float]]:
    reading = reader.read(line, "test")
    assert reading is not None
    return [(lot.food, lot.grams) for lot in reading.lots]


@pytest.mark.parametrize("sign", [", ", " + ", " and ", " & ", " "])
@pytest.mark.parametrize(
    ("first", "second", "foods"),
    [
        ("6 eggs", "500g tofu", {"egg", "tofu-firm"}),
        ("12 eggs", "400g firm tofu", {"egg", "tofu-firm"}),
        ("2 limes", "250g butter", {"lime", "butter"}),
        ("1 coconut", "500ml milk", {"coconut-fresh", "milk"}),
    ],
)
def test_no_name_reaches_from_one_amount_into_the_next(
    reader: LarderReader, first: str, second: str, foods: set[str], sign: str
) -> None:
    """Egg tofu and coconut milk are foods too, and neither is there."""
    assert {food for food, _ in lots(reader, f"{first}{sign}{second}")} == foods


@pytest.mark.parametrize(("first", "food"), [("rice 1kg", "rice-white-dry"), ("3 eggs", "egg")])
def test_what_is_general_behind_it_is_asked_and_the_first_stands(reader: LarderReader, first: str, food: str) -> None:
    reading = reader.read(f"{first}, 400g noodles", "test")
    assert reading is not None
    assert not reading.lots
    assert [lot.food for lot in reading.standing] == [food]


@pytest.mark.parametrize(
    ("line", "eggs"),
    [("eggs, 1 doz + 4", 16), ("dozen eggs plus 3", 15), ("2 dozen and 6 eggs", 30), ("a dozen and a half eggs", 18)],
)
def test_a_dozen_and_some_are_one_number(reader: LarderReader, line: str, eggs: int) -> None:
    """One egg without its shell is taken for 55 g, as in the tables."""
    assert lots(reader, line) == [("egg", 55.0 * eggs)]


@pytest.mark.parametrize(
    "line", ["{}, almost none left", "{} hardly any", "barely any {} left", "{} almost nothing left"]
)
@pytest.mark.parametrize("thing", ["butter", "basmati rice", "peanut butter"])
def test_hardly_any_is_there_and_little(reader: LarderReader, line: str, thing: str) -> None:
    ((food, little),) = lots(reader, line.format(thing))
    ((usual, much),) = lots(reader, thing)
    assert food == usual
    assert 0 < little <= much / 4


@pytest.mark.parametrize(
    ("typed", "meant"),
    [("grape fruit 2", "2 grapefruit"), ("horse radish jar", "horseradish jar"), ("pea nut butter", "peanut butter"),
     ("black berries punnet", "blackberries punnet"), ("butter nut squash half", "half butternut squash")],
)  # fmt: skip
def test_a_word_typed_as_two_is_that_word(reader: LarderReader, typed: str, meant: str) -> None:
    assert lots(reader, typed) == lots(reader, meant) != []


@pytest.mark.parametrize(("line", "food"), [("merlot half bottle", "wine-red"), ("open sauv blanc", "wine-white")])
def test_a_wine_by_its_grape(reader: LarderReader, line: str, food: str) -> None:
    assert [one for one, _ in lots(reader, line)] == [food]


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("eggs milk", {"egg", "milk"}),
        ("eggs butter", {"egg", "butter"}),
        ("tomatoes mozzarella", {"tomato", "mozzarella"}),
        ("carrots red pepper", {"carrot", "pepper-red"}),
        ("2 carrots red onion", {"carrot", "onion-red"}),
        ("almonds milk", {"almond-drink"}),
        ("strawberries jam", {"jam-berry"}),
    ],
)
def test_several_of_a_kind_stand_beside_another_food_and_before_a_product_name_its_kind(
    reader: LarderReader, line: str, foods: set[str]
) -> None:
    assert {food for food, _ in lots(reader, line)} == foods


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("ginger and lemon tea", {"tea-herbal"}),
        ("beetroot & garlic dip", {"dip-vegetable"}),
        ("apple & blackberry crumble", {"apple-pie"}),
        ("mango & lime chutney", {"mango-chutney"}),
        ("sweet potato and chickpea curry", {"curry-vegetable"}),
        ("lentil and tomato soup", {"soup-lentil"}),  # the richer one of what it may be
        ("pasta sauce tomato n garlic", {"pasta-sauce-tomato"}),
        ("yoghurt peach & passionfruit", {"yoghurt-fruit"}),
        ("rice and chickpea curry", {"rice-white-dry", "curry-chickpea"}),
    ],
)
def test_what_tastes_of_two_things_is_one_thing(reader: LarderReader, line: str, foods: set[str]) -> None:
    assert {food for food, _ in lots(reader, line)} == foods


@pytest.mark.parametrize("line", ["carrot & turnip bake leftover", "leek and pumpkin bake"])
def test_a_dish_of_two_that_no_table_knows_is_asked_and_neither_of_the_two_is_there(
    reader: LarderReader, line: str
) -> None:
    reading = reader.read(line, "test")
    assert reading is not None
    assert reading.match.outcome == "ask"
    assert not reading.lots
    assert not reading.standing


@pytest.mark.parametrize("leaf", ["spinach", "lettuce", "basil"])
def test_leaves_without_a_number_are_what_it_is(reader: LarderReader, leaf: str) -> None:
    assert lots(reader, f"{leaf} leaves, 1 day left") == lots(reader, f"{leaf}, 1 day left")
    assert lots(reader, f"few {leaf} leaves")[0][1] < lots(reader, leaf)[0][1] / 2


@pytest.mark.parametrize(
    ("line", "owner"), [("ham for sis Dana", "dana"), ("roommate kevs sausages", "kev"), ("flatmate dans milk", "dan")]
)
def test_the_word_before_a_name_tells_only_who_it_is(reader: LarderReader, line: str, owner: str) -> None:
    reading = reader.read(line, "test")
    assert reading is not None
    assert [lot.owner for lot in reading.lots] == [owner]


def test_the_end_of_a_block_is_little_of_it(reader: LarderReader) -> None:
    assert lots(reader, "butter, end of block") == lots(reader, "butter, end of the block")


@pytest.mark.parametrize(
    ("line", "grams"),
    [
        ("med-firm tofu 350g, extra firm 350g x 2", [350, 700]), ("milk 1L, milk 500ml", [1000, 500]),
        ("butter 250g + 100g", [250, 100]), ("eggs 6, eggs 12", [330, 660]), ("tofu 1 block, tofu half", [280, 140]),
        ("cheddar mature 300g, mild 200g", [300, 200]), ("carrots 1kg, 3 loose carrots", [1000, 210]),
        # what tells how much that is, or what is left of it, is no second lot
        ("chicken thighs 1kg, 8 thighs", [1000]), ("eggs 6, 4 left", [220]), ("salmon 2 fillets, 240g", [240]),
        # a measure of no such food is a food of its own
        ("white bread 1, rolls 4", [800, 200]), ("bread 1 loaf, 4 slices", [800]),
    ],
)  # fmt: skip
def test_what_is_there_twice_is_two_lots(reader: LarderReader, line: str, grams: list[float]) -> None:
    """What a cook would say of each; the weights of pieces are those of the tables (common practice, no source)."""
    assert [found for _, found in lots(reader, line)] == grams
