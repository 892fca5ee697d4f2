"""A fridge as it is texted to a friend: the typed line, and what came out. Grams are what a cook would say."""

from datetime import date

import hypothesis.strategies as st
import pytest
from hypothesis import HealthCheck, given, settings

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from gone_or_off import is_gone_or_off

TODAY = date(2026, 3, 11)  # a Wednesday


def lots(reader: LarderReader, line: str) -> tuple[Lot, ...]:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.problem is None
    return reading.lots


def lot(reader: LarderReader, line: str) -> Lot:
    (only,) = lots(reader, line)
    return only


@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("limes", "lime", 90, 300),
        ("eggs", "egg", 260, 420),
        ("cherries", "cherry", 100, 400),
        ("ham slices", "ham", 60, 200),
        ("4 cans beer", "beer", 1300, 2100),
        ("pack of 6 eggs", "egg", 300, 400),
        ("eggs half doz", "egg", 300, 400),
        ("eggs box of 12, 7 left", "egg", 350, 420),
        ("peppers 3 pack", "pepper-yellow", 350, 550),
        ("tempeh, 2 packs", "tempeh", 300, 620),
        ("block of feta, half gone", "feta", 70, 130),
        ("half a 500g bag of pasta", "pasta-dry", 250, 250),
        ("2x125g mozzarella", "mozzarella", 250, 250),
        ("1 lb beef mince (450g)", "beef-mince", 450, 455),
        ("2 cartons soya milk", "soya-drink", 1600, 2400),
        ("4 pints milk", "milk", 2200, 2400),
        ("grape tomatoes pint", "tomato-cherry", 240, 420),
        ("sack of potatoes", "potato", 3000, 26000),
        ("cucumber 1 n a half", "cucumber", 330, 600),
        ("a bit of cheese", "cheddar", 20, 160),
        ("loads of tomatoes", "tomato", 500, 3000),
        ("heel of bread", "bread-wholemeal", 20, 110),
        ("quarter red cabbage", "cabbage-red", 150, 350),
        ("stick of butter", "butter", 105, 121),
    ],
)
def test_how_much_there_is(line: str, food: str, low: float, high: float, reader: LarderReader) -> None:
    found = lot(reader, line)
    assert found.food == food
    assert low <= found.grams <= high


@pytest.mark.parametrize(
    ("line", "days_left"),
    [
        ("spinach big bag, 3 days left", 3),
        ("tempeh ub 14th", 3),
        ("ham sat 14", 3),
        ("cheese bbe sunday", 4),
        ("yoghurt bb end of march", 20),
        ("cottage cheese use by next friday", 9),  # the coming one is in two days
        ("carrots bb friday week", 9),
        ("ground turkey sell by 3/12", 1),  # the third of December is no day for turkey
        ("feta use by thrusday", 1),
        ("milk use today", 0),
        ("salmon (use tonight!)", 0),
        ("rice cooked last night", 0),
        ("tempeh use before mon", 4),
        ("courgette", 8),
        ("chicken breasts 2", 2),
    ],
)
def test_how_long_it_keeps(line: str, days_left: int, reader: LarderReader) -> None:
    assert lot(reader, line).days_left == days_left


def test_days_without_a_date_are_an_estimate(reader: LarderReader) -> None:
    assert lot(reader, "kale").days_estimated
    assert not lot(reader, "kale ub friday").days_estimated
    assert lot(reader, "kale in the freezer").days_left is None
    assert lot(reader, "rice").days_left is None


def test_a_day_that_cannot_be_read_is_asked_and_never_lost(reader: LarderReader) -> None:
    reading = reader.read("feta use by xyzday", "line 1")
    assert reading is not None
    assert reading.to_answer is not None
    assert "xyzday" in reading.to_answer.question


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("dan's cheese", "dan"),
        ("garlic - dan's", "dan"),
        ("kimchi (ana's)", "ana"),
        ("cheese slices (priya)", "priya"),
        ("bens milk", "ben"),
        ("flatmate's butter", "flatmate"),
        ("half onion (not mine)", "somebody else"),
        ("tuna tin for the cat", "cat"),
        ("cheddar (mine)", None),
        ("tomatoes (squishy)", None),
        ("bread (everyone's)", None),
        ("goat's cheese", None),
        ("eggs (for tomorrow's lunch)", None),
    ],
)
def test_whose_it_is(line: str, owner: str | None, reader: LarderReader) -> None:
    assert lot(reader, line).owner == owner


def test_what_is_kept_for_later_says_what_for(reader: LarderReader) -> None:
    assert lot(reader, "eggs (for tomorrow's lunch)").kept_for == "tomorrow's lunch"


@pytest.mark.parametrize(
    ("line", "to_bin"),
    [
        ("milk (off)", True),
        ("yogurt w mould on", True),
        ("bean sprouts going slimy", True),
        ("milk smells", True),
        ("peas with freezer burn", False),
        ("aubergine a bit wrinkly", False),
        ("kale half bag, yellowing", False),
    ],
)
def test_what_state_it_is_in(line: str, to_bin: bool, reader: LarderReader) -> None:
    assert is_gone_or_off(reader, line) is to_bin
    assert to_bin or lot(reader, line).condition


def test_staples_are_said_in_one_line(reader: LarderReader) -> None:
    found = lots(reader, "always have: oil, rice, soy sauce, salt")
    assert [one.food for one in found] == ["oil-rapeseed", "rice-white-dry", "soy-sauce", "salt"]


@pytest.mark.parametrize(
    "line",
    ["hummus in garlic oil soup", "chilli cheese bites", "onion bhaji mix", "almond milk powder"],
)
def test_what_may_be_another_food_is_never_taken_in_silence(line: str, reader: LarderReader) -> None:
    assert lots(reader, line) == ()


@pytest.mark.parametrize("food", ["onion", "garlic", "apple", "mushroom", "carrot"])
@pytest.mark.parametrize(
    "product",
    ["soup", "bhaji", "pie", "bread", "powder", "crisps", "chutney", "risotto", "tart", "juice", "cake", "balls",
     "loaf", "sauce", "skewers", "burger", "quiche", "fritters", "tea", "salt", "rolls"],
)  # fmt: skip
def test_a_product_of_a_food_is_never_the_plain_food(food: str, product: str, reader: LarderReader) -> None:
    plain_food = lot(reader, food).food
    assert plain_food not in [one.food for one in lots(reader, f"{food} {product}")]


_WORDS = st.sampled_from((
    "2", "500g", "x3", "half", "a bag of", "tofu", "rice", "cooked", "spring onions", "garlic", "bread", "powder",
    "and",
    ",", "ub fri", "use by xyzday", "(off)", "(sam's)", "- jess", "mouldy", "#", "dried", "soup", "wibble", "not mine",
    "-3", "31 feb", "in the freezer", "always have:", "chocolate", "(", ")",
))  # fmt: skip


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(lines=st.lists(st.lists(_WORDS, max_size=8).map(" ".join) | st.text(max_size=50), max_size=6))
def test_nothing_typed_is_dropped(lines: list[str], reader: LarderReader) -> None:
    """Every line is a comment, lots, a question, or named with its reason; and each is just one of these."""
    for number, line in enumerate(lines, start=1):
        reading = reader.read(line, f"fridge.txt:{number}")
        if reading is None:
            assert not line.split("#")[0].strip() or line.strip().startswith("#")
            continue
        became = [
            bool(reading.lots), bool(reading.gone), reading.to_answer is not None, reading.problem is not None,
        ]  # fmt: skip
        assert became.count(True) == 1
        assert all(0 < one.grams_low <= one.grams <= one.grams_high for one in reading.lots)
        if reading.to_answer is not None:
            assert reading.to_answer.where == f"fridge.txt:{number}"
            assert reading.to_answer.question


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("salsa verde jar (onion in it)", ["salsa-verde"]),  # what a bracket says of a food is no second food
        ("tofu (and kale)", ["tofu-firm", "kale"]),
        ("zurbelmus leftover from tues", []),  # the strange word is the food: asked, never a ready meal in silence
    ],
)
def test_a_bracket_and_a_strange_word_make_no_other_food(reader: LarderReader, line: str, foods: list[str]) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == foods


def test_the_owner_behind_a_dash_keeps_the_end_of_the_name(reader: LarderReader) -> None:
    for line, owner in (("milk - jess", "jess"), ("milk - dans", "dan"), ("milk - dan's", "dan")):
        reading = reader.read(line, "line 1")
        assert reading is not None
        assert [lot.owner for lot in reading.lots] == [owner]


@pytest.mark.parametrize(
    ("line", "kept_for", "days_left"),
    [
        ("bean sprouts (for tonight)", None, 3),
        ("bean sprouts for tonight's tea", None, 3),
        ("bean sprouts for today only", None, 0),
        ("bean sprouts for tomorrow's lunch", "tomorrow's lunch", 3),
        ("bean sprouts for dinner friday", "dinner friday", 3),
    ],
)
def test_what_is_meant_for_tonight_is_there_tonight(
    line: str, kept_for: str | None, days_left: int, reader: LarderReader
) -> None:
    """Only what is kept for another meal is held back; three days: keeping.csv."""
    found = lot(reader, line)
    assert (found.food, found.kept_for) == ("bean-sprouts", kept_for)
    assert found.days_left == days_left


def test_two_states_of_one_thing_are_one_lot(reader: LarderReader) -> None:
    """`brown` beside `cooked` and `frozen` makes no second rice."""
    assert lot(reader, "cooked brown rice 2 tubs frozen").food == "rice-brown-cooked"


@pytest.mark.parametrize("line", ["cheese", "some cheese", "that cheese in the blue paper", "grated cheese"])
def test_which_cheese_was_taken_is_told(line: str, reader: LarderReader) -> None:
    """Lactose hangs on the kind: softer ones are nearly always called by their name, and what was taken is shown."""
    reading = reader.read(line, "line")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == ["cheddar"]
    assert "cheddar" in reading.assumed
