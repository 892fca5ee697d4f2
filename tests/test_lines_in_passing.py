"""What people say beside their food: remarks, headings, what is said of some of a lot, what a thing is free of.

The lines are ours, written before the reader was tried on them; common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.larder.meaning import Reading
from gone_or_off import is_gone_or_off

TODAY = date(2026, 3, 11)  # a Wednesday


def read(line: str, reader: LarderReader) -> Reading:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading


def lot(line: str, reader: LarderReader) -> Lot:
    (found,) = read(line, reader).lots
    return found


@pytest.mark.parametrize(
    ("line", "reason"),
    [
        ("thats it til payday", "names no food"), ("and that's about it tbh", "names no food"),
        ("need to go shopping lol", "names no food"), ("fridge is nearly empty haha", "names no food"),
        ("not much in", "names no food"), ("help, what can i make", "names no food"),
        ("MINE:", "is a heading"), ("freezer", "is a heading"), ("bottom shelf:", "is a heading"),
    ],
)  # fmt: skip
def test_a_remark_is_named_with_its_reason_and_never_asked(line: str, reason: str, reader: LarderReader) -> None:
    reading = read(line, reader)
    assert (reading.lots, reading.to_answer) == ((), None)
    assert reading.problem is not None
    assert reason in reading.problem.what


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("use it up tonight: spinach", "spinach"), ("fridge is full of carrots", "carrot"),
        ("everything else is tofu", "tofu-firm"), ("this is all the rice", "rice-white-dry"),
        ("not much milk", "milk"), ("everything bagels 3", "bagel-everything"),
        ("no tinned, only coconut milk powder", "coconut-milk-powder"), ("no rice but loads of quinoa", "quinoa-dry"),
    ],
)  # fmt: skip
def test_no_food_is_lost_in_a_remark(line: str, food: str, reader: LarderReader) -> None:
    assert lot(line, reader).food == food


@pytest.mark.parametrize(
    ("line", "condition"),
    [
        ("3 carrots, one bendy", "one bendy"),
        ("tomatoes 6, two very soft", "two soft"),
        ("bag of spuds - a couple sprouting", "a couple sprouting"),
    ],
)
def test_what_is_said_of_some_does_not_hurry_the_rest(line: str, condition: str, reader: LarderReader) -> None:
    some, whole = lot(line, reader), lot(line.split(",")[0].split(" - ")[0], reader)
    assert some.condition == condition
    assert (some.grams, some.days_left) == (whole.grams, whole.days_left)
    assert lot("3 carrots, bendy", reader).days_left == 1


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("veg stock powder (onion free)", "stock-cube-plain"), ("low fodmap stock pot x3", "stock-cube-plain"),
        ("kimchi, old & sour", "kimchi"), ("pickles sour", "gherkins"),
        ("frozen veg, the mixed one", "mixed-vegetables-frozen"),
        ("onion 1, sprouted", "onion-brown"),
    ],
)  # fmt: skip
def test_a_quality_that_is_its_nature_is_not_asked(line: str, food: str, reader: LarderReader) -> None:
    assert lot(line, reader).food == food


@pytest.mark.parametrize("line", ["leftover meatloaf (onions)", "soup carrot & ginger, onion free"])
def test_what_is_in_a_dish_or_left_out_of_it_is_no_food_of_the_line(line: str, reader: LarderReader) -> None:
    assert "onion" not in " ".join(one.food for one in read(line, reader).lots)


@pytest.mark.parametrize(
    ("line", "other"),
    [
        ("okara 200g", "okra"), ("dulse", "cream-double"), ("octopus, frozen", "squid"),
        ("baby corn tin", "sweetcorn-canned"),
        ("spaghetti sq", "pasta-dry"), ("palm oil", "oil-rapeseed"),
        ("tofu skin", "tofu-firm"),
        ("cress", "watercress"),
    ],
)  # fmt: skip
def test_a_food_of_its_own_is_not_taken_for_its_neighbour(line: str, other: str, reader: LarderReader) -> None:
    assert lot(line, reader).food != other


def test_what_was_done_on_a_day_was_done_then(reader: LarderReader) -> None:
    pressed = lot("half a block of tofu that I pressed on Tuesday", reader)
    assert [(one.kind, one.on) for one in pressed.dates] == [("opened", date(2026, 3, 10))]
    assert [one.kind for one in lot("tofu to press on thursday", reader).dates] == ["use-by"]


def test_a_bird_that_was_roasted_whole_is_more_than_a_portion(reader: LarderReader) -> None:
    """A bird of 1.4 to 1.6 kg gives about half its weight in meat; common practice, no source."""
    assert 300 <= lot("half a roast chicken", reader).grams <= 450
    assert lot("roast chicken breast 2 slices", reader).grams < 100


@pytest.mark.parametrize("line", ["leftover curry from last thursday", "dhal left over from friday"])
def test_leftovers_that_are_too_old_are_not_asked_what_they_were(line: str, reader: LarderReader) -> None:
    """Leftovers are to be eaten within two days (UK FSA, recalled): nobody need say what older ones hold."""
    old = lot(line, reader)
    assert old.safety_days_left is not None
    assert old.safety_days_left < 0
    assert "too old" in " ".join(read(line, reader).assumed)
    assert read("leftover curry from last night", reader).to_answer is not None


@pytest.mark.parametrize("line", ["cream turned?", "milk, turned i think"])
def test_what_may_have_turned_is_not_added(line: str, reader: LarderReader) -> None:
    assert read(line, reader).problem is not None
    assert not read(line, reader).lots


@pytest.mark.parametrize("line", ["cat food", "2 tins of dog food", "bin bags"])
def test_what_nobody_eats_is_no_food(line: str, reader: LarderReader) -> None:
    problem = read(line, reader).problem
    assert problem is not None
    assert "nothing that people eat" in problem.what


@pytest.mark.parametrize(
    ("line", "silly"),
    [
        ("chicken carcass", "bbq-rub"), ("old tennis shoe style", "feta"),
        ("roast chicken leftovers, both legs", "bbq-rub"),
        ("random veg", "garlic-salt"),
    ],
)  # fmt: skip
def test_a_question_offers_what_is_likely(line: str, silly: str, reader: LarderReader) -> None:
    assert silly not in {one.food for one in read(line, reader).candidates}


@pytest.mark.parametrize(
    ("line", "lots"),
    [
        ("carrots and parsnips, 1kg of each", [("carrot", 1000), ("parsnip", 1000)]),
        ("potatoes and carrots 500g each", [("potato", 500), ("carrot", 500)]),
        ("half 500g firm tofu", [("tofu-firm", 250)]), ("lentils 2k", [("lentils-green-dry", 2000)]),
    ],
)  # fmt: skip
def test_so_much_of_each(line: str, lots: list[tuple[str, float]], reader: LarderReader) -> None:
    assert [(one.food, one.grams) for one in read(line, reader).lots] == lots


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("ginger, garlic", ["ginger", "garlic"]), ("thumb ginger, 2 cloves garlic", ["ginger", "garlic"]),
        ("milk, oat", ["oat-drink"]), ("oils: olive, sesame", ["oil-olive", "oil-sesame"]),
        ("cooked quinoa and lentils in tub", ["quinoa-cooked", "lentils-boiled"]),
        ("marinating tofu (soy n ginger), big block", ["tofu-firm"]), ("three bean salad", ["kidney-beans-canned"]),
        ("tofu marinated (soy, garlic)", []), ("ham & cheese sandwich", ["sandwich"]), ("warak enab", ["grape-leaves"]),
    ],
)  # fmt: skip
def test_a_list_is_no_mixture_and_a_dish_no_list(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [one.food for one in read(line, reader).lots] == foods


@pytest.mark.parametrize(
    ("line", "bad"),
    [("kimchi a bit sour", False), ("milk bit sour", True), ("rice has bugs", True), ("kimchi, mouldy", True)],
)
def test_what_is_sour_by_its_nature_is_not_bad(line: str, bad: bool, reader: LarderReader) -> None:
    assert is_gone_or_off(reader, line) is bad


@pytest.mark.parametrize(
    ("line", "food"),
    [("chocolate oat milk", "oat-drink"), ("for the freezer: chilli 3 portions", "chilli-red"), ("bacha", "mint")],
)
def test_another_food_is_never_read_in_silence(line: str, food: str, reader: LarderReader) -> None:
    assert food not in {one.food for one in read(line, reader).lots}


def test_what_comes_out_of_the_freezer_thaws(reader: LarderReader) -> None:
    out = lot("out the freezer this morning cod 2", reader)
    assert (out.place, [(one.kind, one.on) for one in out.dates]) == ("fridge", [("opened", TODAY)])


@pytest.mark.parametrize(
    "line",
    [
        "prawns 1kg, neighbour dropped em off",
        "chicken thighs 20% off",
        "lamb £2 off",
        "carrots with tops off",
        "cheddar, rind off",
    ],
)
def test_what_was_taken_off_or_dropped_off_has_not_gone_off(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "test")
    assert reading is not None
    assert reading.lots
    assert not any(lot.to_bin for lot in reading.lots)


@pytest.mark.parametrize("line", ["Frozen pierogies potato onion, 1 bag", "pierogi potato cheese"])
def test_what_stands_behind_a_filled_thing_is_in_it(line: str, reader: LarderReader) -> None:
    """No potatoes of one's own, which would be cooked as plain ones."""
    foods = [one.food for one in read(line, reader).lots]
    assert foods in ([], ["dumplings"], ["pierogi"])


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("onion and garlic free sausages 400g", "sausages-plain"),
        ("garlic free pesto, carrots", "pesto-no-garlic"),
        ("garlic-free stock cube", "stock-cube-plain"),
    ],
)
def test_free_of_something_is_there_and_without_it(line: str, food: str, reader: LarderReader) -> None:
    assert food in [one.food for one in read(line, reader).lots]
