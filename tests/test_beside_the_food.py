"""What is said beside a food changes no food: notes of every sort, words of other kitchens, parts of a thing.

All lines are made up. A note that turns carrots into a question, or into plaice, is a fault of the reader and not of
who typed it.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.meaning import Reading

TODAY = date(2026, 3, 11)
NOTES = (
    "from the market", "in the door", "i think", "still good", "for the weekend", "- top shelf", "(behind the milk)",
    "kinda sad", "reduced to clear", "yellow sticker", "on offer", "brand new", "my favourite", "homegrown", "in foil",
    "with the lid off", "about a week old", "no date on it", "hope its ok", "looks fine", "thx", ":)",
    "wrong place", "check the score", "carry home", "make a plan", "to match", "by the theme",
)  # fmt: skip
FOODS = {"carrots 3": "carrot", "clementines 4": "mandarin", "eggs 6": "egg", "zucchini x2": "courgette"}


@pytest.fixture(scope="module")
def reader(tables) -> LarderReader:  # type: ignore[no-untyped-def]
    return LarderReader(tables, TODAY)


def read(reader: LarderReader, line: str) -> Reading:
    reading = reader.read(line, "line")
    assert reading is not None
    return reading


@pytest.mark.parametrize("note", NOTES)
def test_a_note_is_no_food_and_makes_no_question(note: str, reader: LarderReader) -> None:
    for line, food in FOODS.items():
        assert [lot.food for lot in read(reader, f"{line} {note}").lots] == [food], f"{line} {note}"


@pytest.mark.parametrize(
    "line",
    [
        "bammy 2",  # cassava bread, no okra
        "burek half",  # a pie, no beetroot
        "shish barak",
        "posto 50g seeds",  # poppy seeds in Bengali, no pesto
        "ikan asin",  # salted fish, no salt
        "daun singkong",  # leaves, no root
        "shea nut mince",
        "kangaroo mince 500g",
        "egusi, one milk tin",  # the tin is the measure
        "parsley root 2",
        "moringa batter",
    ],
)
def test_no_other_food_is_taken_in_silence(line: str, reader: LarderReader) -> None:
    wrong = {
        "okra", "beetroot", "pesto", "salt", "cassava", "rice-white-dry", "beef-mince", "milk", "parsley",
        "drumstick-leaves",
    }  # fmt: skip
    assert wrong.isdisjoint(lot.food for lot in read(reader, line).lots)


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("tomato 3, kacha lonka", ["tomato", "chilli-green"]),
        ("tub of margarine, just begun", ["margarine"]),
        ("injera (100% teff) 6", ["injera"]),
        ("salad stuff (lettuce, cucumber, tomatoes)", ["lettuce", "cucumber", "tomato"]),
        ("beets w/ greens bunch", ["beetroot"]),
        ("less salt soy sauce", ["soy-sauce"]),
        ("sarson ka tel", ["oil-mustard"]),
        ("extra firm tofu, in water since sunday", ["tofu-firm"]),
        ("rice (cooked, frozen 3 portion)", ["rice-white-cooked"]),
        ("got green chillies", ["chilli-green"]),
        ("tk-erbsen 450g", ["peas-frozen"]),
        ("one red peper", ["pepper-red"]),
        ("soy souce", ["soy-sauce"]),
    ],
)
def test_which_foods(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in read(reader, line).lots] == foods


@pytest.mark.parametrize(
    ("line", "low", "high"),
    [
        ("eggs 6/12", 264, 400),  # six of a box of twelve
        ("dos kilos papas", 2000, 2000),
        ("potatoes +- 2kg", 1600, 2400),
        ("quinoa dry 1c", 150, 240),
        ("courgettes: 2 pcs. à 200 g", 400, 400),
        ("butter, 2 sticks and little bit", 200, 340),
        ("eggs dozen n a half", 792, 1200),
        ("huevos 1 docena", 528, 800),
        ("frozen peas 2013 500g", 500, 500),
        ("russets 5lb bag, 8 left", 800, 2400),
        ("milk (2 litres)", 2000, 2000),
        ("egg box, 4 in it", 170, 270),
        ("a lime and a half", 80, 121),
        ("soy sauce sachets", 5, 60),
        ("pumpkin piece", 100, 900),
        ("cheddar, about as big as a matchbox", 20, 50),
        ("milk until 15", 500, 2400),
        ("gouda 8 scheiben", 120, 320),
        ("yogurts x6", 500, 1000),
    ],
)
def test_how_much(line: str, low: float, high: float, reader: LarderReader) -> None:
    (lot,) = read(reader, line).lots
    assert low <= lot.grams <= high


@pytest.mark.parametrize(
    ("line", "kind", "on"),
    [
        ("carrots ub thurs organic", "use-by", date(2026, 3, 12)),  # thurs is no possessive
        ("milk until 15", "use-by", date(2026, 3, 15)),
        ("milk date was 8th", "use-by", date(2026, 3, 8)),
        ("rice cooked tues 1 box", "made", date(2026, 3, 10)),  # one box, not the first
        ("pulled pork 1 lb tues", "made", date(2026, 3, 10)),
        ("green beans from monday", "bought", date(2026, 3, 9)),
        ("boiled ham 4 slices bb tom", "best-before", date(2026, 3, 12)),
    ],
)
def test_which_day(line: str, kind: str, on: date, reader: LarderReader) -> None:
    (lot,) = read(reader, line).lots
    assert [(dated.kind, dated.on) for dated in lot.dates] == [(kind, on)]


@pytest.mark.parametrize("line", ["kale (kids don't eat it)", "basmati (Iranian) 10 kg", "toast bread nobody likes"])
def test_what_people_think_of_it_owns_nothing(line: str, reader: LarderReader) -> None:
    (lot,) = read(reader, line).lots
    assert lot.owner is None


@pytest.mark.parametrize("line", ["5 yr old cheddar", "vintage cheddar 18 months", "aged 12 months cheddar"])
def test_how_long_a_cheese_was_kept_is_no_amount(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    (lot,) = reading.lots
    assert lot.food == "cheddar"
    assert lot.grams < 1000  # a piece from a shop, common practice


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("chicken and veg stock", ["stock-meat", "stock-onion"]),  # no raw chicken
        ("sesame and sunflower oil", ["oil-sesame", "oil-rapeseed"]),
        ("sunflower and pumpkin seeds", ["sunflower-seeds", "pumpkin-seeds"]),
        ("garlic and onion powder", ["garlic-powder", "onion-powder"]),
        ("butter and oat milk", ["butter", "oat-drink"]),
        ("rice and udon noodles", ["rice-white-dry", "udon-cooked"]),
        ("carrots and frozen peas", ["carrot", "peas-frozen"]),
    ],
)
def test_one_word_behind_two_kinds_belongs_to_both(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in read(reader, line).lots] == foods


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("veggie haggis (onion, barley, oatmeal)", "haggis-vegetarian"),
        ("cauliflower cheese for one, ready meal", "cauliflower-cheese"),
        ("white rice cups x3 microwavable", "rice-white-cooked"),
        ("leftover stew, onion n barley in it", "stew-meat"),  # the one with onion
        ("chana soaked (from morning)", "chickpeas-dry"),  # raw still
        ("bap in the cooker, from this morning", "rice-white-cooked"),  # no bread rolls
    ],
)
def test_a_dish_told_by_its_parts_or_its_box_is_one_thing(line: str, food: str, reader: LarderReader) -> None:
    assert [lot.food for lot in read(reader, line).lots] == [food]


def test_rice_in_a_sealed_cup_is_no_leftover(reader: LarderReader) -> None:
    """A cooked leftover has a day (Food Standards Agency, "Chilling"); an ambient pack keeps until it is opened."""
    assert [lot.days_left for lot in read(reader, "rice cups 2").lots] == [None]
    assert [lot.days_left for lot in read(reader, "cooked rice cup").lots] == [1]


def test_a_veg_curry_with_its_vegetables_in_a_bracket_is_no_raw_vegetables(reader: LarderReader) -> None:
    assert not {"potato", "peas-frozen", "cauliflower"} & {
        lot.food for lot in read(reader, "veg curry (potato, peas, cauli)").lots
    }


@pytest.mark.parametrize(
    ("line", "days"),
    [("aguacate 1 almost black", 2), ("avocado nearly black", 2), ("avocado, black inside", 1), ("avocado 1", 8)],
)
def test_an_avocado_turns_black_outside_before_it_does_inside(line: str, days: int, reader: LarderReader) -> None:
    """Common practice, no source."""
    assert [lot.days_left for lot in read(reader, line).lots] == [days]


@pytest.mark.parametrize("line", ["(microwave only btw)", "we only have one pan", "no oven, oven's broken"])
def test_what_the_kitchen_has_is_no_food(line: str, reader: LarderReader) -> None:
    reading = read(reader, line)
    assert not reading.lots
    assert reading.to_answer is None


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("rotisserie chicken plain, 3/4 of it", "chicken-cooked", 400),
        ("kg whiting fillets 500g", "fish-white", 500),
        ("soft drinks 1.5", "tonic-water", 1500),
        ("butter 100g, little left", "butter", 25),
        ("yoghurt 200g cup, 2", "yoghurt-plain", 400),
        ("lact. free milk 2l", "milk-lactose-free", 2000),
        ("gherkin jar mostly vinegar", "gherkins", 340),
        ("baby leaf spinach", "spinach", 150),
    ],
)
def test_amounts_as_they_are_texted(line: str, food: str, grams: float, reader: LarderReader) -> None:
    """Within half and double of what a cook would take it for: common practice, no source."""
    (lot,) = read(reader, line).lots
    assert lot.food == food
    assert grams / 2 <= lot.grams <= grams * 2


@pytest.mark.parametrize(
    "line", ["blended tatashe/rodo/onion, ice cream bowl (no ice cream)", "blended pepper and onion"]
)
def test_what_was_blended_with_onion_is_one_thing_that_holds_it(line: str, reader: LarderReader) -> None:
    assert [lot.food for lot in read(reader, line).lots] == ["salsa"]


def test_a_box_of_which_one_went_mouldy_is_picked_over(reader: LarderReader) -> None:
    """Food Standards Agency (recalled): what is mouldy goes; firm fruit that does not touch it may stay."""
    (lot,) = read(reader, "mandarin box, 1 moldy").lots
    assert (lot.food, lot.days_left) == ("mandarin", 1)


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("a bowl of rice with 2 eggs and spinach", ["rice-white-cooked", "egg", "spinach"]),
        ("toast with 2 eggs", ["bread-white", "egg"]),
        ("rice and a bit of dal", ["dal-and-rice"]),
    ],
)
def test_a_base_with_so_many_of_something_is_a_list(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in read(reader, line).lots] == foods
