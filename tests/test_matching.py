"""A cook's lines: what they mean, what is asked, what is not known."""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.meaning import Reading
from gone_or_off import is_gone_or_off
from how_much import some

TODAY = date(2026, 3, 11)  # a Wednesday


def read(reader: LarderReader, line: str) -> Reading:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("garlic oil", "oil-garlic"),
        ("spring onion tops", "spring-onion-green"),
        ("scallion greens 20g", "spring-onion-green"),
        ("coconut milk", "coconut-milk"),
        ("peanut butter", "peanut-butter"),
        ("butter beans, tin", "butter-beans-canned"),
        ("butter 50 g", "butter"),
        ("soft tofu 200 g", "tofu-silken"),
        ("tofu, firm", "tofu-firm"),
        ("eggplant", "aubergine"),
        ("brinjal x2", "aubergine"),
        ("zucchini", "courgette"),
        ("cilantro, handful", "coriander"),
        ("hing", "asafoetida"),
        ("besan 200 g", "flour-gram"),
        ("palak 1 bag", "spinach"),
        ("arugula", "rocket"),
        ("capsicum red", "pepper-red"),
        ("SPINACH", "spinach"),
        ("spinich", "spinach"),
        ("brocolli head", "broccoli"),
        ("beans green 140g", "green-beans"),
        ("potatoes 1kg", "potato"),
        ("boiled potatoes", "potato-boiled"),
        ("potatoes 300g, cooked yesterday", "potato-boiled"),
        ("frozen peas", "peas-frozen"),
        ("tin tomatoes", "tomato-canned"),
        ("tomatoes x3", "tomato"),
        ("sun-dried tomatoes", "tomato-sundried"),
        ("leek tops", "leek-green"),
        ("green banana", "banana-firm"),
        ("spotty banana", "banana-ripe"),
        ("oat milk", "oat-drink"),
        ("tinned chickpeas", "chickpeas-canned"),
        ("chickpeas 400g tin", "chickpeas-canned"),
        ("dry rice noodles", "rice-noodles-dry"),
        ("black pepper", "pepper-black"),
        ("sweet potato", "sweet-potato"),
        ("smoked tofu", "tofu-smoked"),
        ("heel of spelt sourdough", "bread-sourdough-spelt"),
    ],
)
def test_matched(line: str, food: str, reader: LarderReader) -> None:
    reading = read(reader, line)
    assert reading.match.outcome == "matched", reading.candidates
    assert reading.match.food is not None
    assert reading.match.food.id == food


@pytest.mark.parametrize(
    ("line", "among"),
    [
        ("noodles", {"rice-noodles-dry"}),
        ("chocolate", {"chocolate-dark", "chocolate-milk-bar"}),
        ("smoked potatoes", {"potato"}),
        ("vegan brie", {"vegan-cheese"}),
        ("carrot risotto", {"carrot"}),
        ("leftover curry", {"curry-vegetable"}),
        ("rice and beans", {"rice-white-dry"}),
        ("chicken 15g", {"chicken-breast"}),
        ("tortillas 3kg", {"tortilla-wheat"}),
    ],
)
def test_asked(line: str, among: set[str], reader: LarderReader) -> None:
    reading = read(reader, line)
    assert reading.match.outcome == "ask"
    assert among <= {candidate.food for candidate in reading.candidates}
    assert reading.lot is None


@pytest.mark.parametrize(
    ("line", "meant"),
    [("oinon x2", "brown onion"), ("soy souce", "soy sauce"), ("appel", "apple"), ("carots", "carrots")],
)
def test_a_short_word_that_is_one_slip_off_and_sounds_the_same_is_read(
    line: str, meant: str, reader: LarderReader
) -> None:
    """Two neighbours that changed places, or one sign that is another: the commonest slips (Damerau 1964)."""
    reading = reader.read(line, "line")
    assert reading is not None
    assert reading.names == (meant,)


@pytest.mark.parametrize(("line", "meant"), [("leak", "whole leek"), ("bred", "wholemeal bread")])
def test_a_short_word_misspelt_is_asked_and_never_guessed(line: str, meant: str, reader: LarderReader) -> None:
    """Two neighbours that changed places, or one sign that is another: the commonest slips (Damerau 1964)."""
    reading = reader.read(line, "line")
    assert reading is not None
    assert reading.lot is None
    assert reading.match.outcome == "ask"
    assert meant in [candidate.name for candidate in reading.candidates]


@pytest.mark.parametrize("line", ["my old boots", "plutonium", "xyzzy 200g", "3 spanners", "the", "200 g"])
def test_unknown(line: str, reader: LarderReader) -> None:
    reading = read(reader, line)
    assert reading.match.outcome == "unknown"
    assert reading.lot is None


@pytest.mark.parametrize(
    ("line", "low", "typical", "high"),
    [
        ("140g green beans", 140, 140, 140),
        ("1.5 kg potatoes", 1500, 1500, 1500),
        ("100-150 g spinach", 100, 125, 150),
        ("2-3 carrots", 112, 175, 252),
        ("1 1/2 carrots", 84, 105, 126),
        ("½ cauliflower", 240, 300, 360),
        ("1/2 lemon", 29, 42, 50.5),
        ("half a cucumber", 120, 150, 180),
        ("third of a block of tempeh", 42.7, 66.7, 96),
        ("two and a half courgettes", 400, 500, 600),
        ("half a dozen eggs", 264, 330, 396),
        ("parsnip x2", 192, 240, 288),
        ("2 x 400g tins black beans", 480, 480, 480),
        ("400 g tin chickpeas", 240, 240, 240),
        ("8 oz firm tofu", 226.8, 226.8, 226.8),
        ("200 ml double cream", 200, 200, 200),
    ],
)
def test_amounts(line: str, low: float, typical: float, high: float, reader: LarderReader) -> None:
    lot = read(reader, line).lot
    assert lot is not None
    assert (lot.grams_low, lot.grams, lot.grams_high) == pytest.approx((low, typical, high), abs=0.1)


def test_vague_amounts_are_less_than_their_container(reader: LarderReader) -> None:
    jar, dregs = read(reader, "jar of tahini").lot, read(reader, "nearly empty jar of tahini").lot
    slice_, heel = read(reader, "slice of rye bread").lot, read(reader, "heel of spelt sourdough").lot
    assert jar
    assert dregs
    assert slice_
    assert heel
    assert 0 < dregs.grams < jar.grams / 4
    assert heel.grams < 100


@pytest.mark.parametrize(
    ("line", "kind", "days_left"),
    [
        ("firm tofu, use by today", "use-by", 0),
        ("firm tofu use by friday", "use-by", 2),
        ("firm tofu use-by 12 mar", "use-by", 1),
        ("firm tofu, use by 2026-03-20", "use-by", 9),
        ("firm tofu use by 13/3", "use-by", 2),
        ("firm tofu, best before tomorrow", "best-before", 1),
        ("firm tofu, use by yesterday", "use-by", -1),
        ("half tin coconut milk opened monday", "opened", 1),
        ("cooked rice 300g made yesterday", "made", 0),
        ("boiled potatoes 2 cups yesterday", "made", 1),
        ("coconut milk, half tin, opened 2 days ago", "opened", 1),
        ("courgette, soft", None, 1),
        ("bendy parsnip x2", None, 1),
        ("courgette", None, 8),
        ("soy sauce", None, None),
        ("courgette, soft, use by 2026-03-30", "use-by", 1),
    ],
)
def test_days_left(line: str, kind: str | None, days_left: int | None, reader: LarderReader) -> None:
    lot = read(reader, line).lot
    assert lot is not None
    told = lot.first_date
    assert (told.kind if told else None, lot.days_left) == (kind, days_left)
    assert bool(lot.days_from) == (days_left is not None)


def test_rice_keeps_a_day_and_leftovers_two(reader: LarderReader) -> None:
    """UK Food Standards Agency: cooked rice within a day, other leftovers within two days."""
    rice, potatoes = read(reader, "cooked rice, made today").lot, read(reader, "boiled potatoes, made today").lot
    assert rice
    assert potatoes
    assert (rice.days_left, rice.safety_days_left) == (1, 1)
    assert (potatoes.days_left, potatoes.safety_days_left) == (2, 2)


def test_owner_place_and_condition(reader: LarderReader) -> None:
    pot = read(reader, "cottage cheese 200g (robin's)").lot
    agreed = read(reader, "cottage cheese 200g (robin's, ok)").lot
    frozen = read(reader, "frozen mango cubes x10").lot
    noted = read(reader, "kale 1 bag (opened yesterday)").lot
    assert pot
    assert agreed
    assert frozen
    assert noted
    assert (pot.owner, pot.owner_agrees) == ("robin", False)
    assert (agreed.owner, agreed.owner_agrees) == ("robin", True)
    assert (frozen.food, frozen.place, frozen.grams) == ("mango", "freezer", 120)
    assert is_gone_or_off(reader, "mouldy cheddar")
    assert noted.owner is None
    assert noted.opened


@pytest.mark.parametrize(
    "line",
    [
        "-50g spinach",
        "0 g spinach",
        "spinach 99999999 kg",
        "firm tofu use by 31 feb",
        "1/0 lemon",
        "spinach 2026-02-30",
    ],
)
def test_what_cannot_be_says_so(line: str, reader: LarderReader) -> None:
    reading = read(reader, line)
    assert reading.problem is not None
    assert reading.lot is None


@pytest.mark.parametrize("line", ["", "   ", "# a note", "   # 200 g spinach"])
def test_nothing_said(line: str, reader: LarderReader) -> None:
    assert reader.read(line, "line 1") is None


@pytest.mark.parametrize(
    ("line", "foods", "assumed"),
    [
        ("tofu", "tofu-firm", "firm"),
        ("rice 2 cups", "rice-white-dry", "dry"),
        ("leftover rice", "rice-white-cooked", ""),
        ("quinoa", "quinoa-dry", "dry"),
        ("chickpeas", "chickpeas-canned", "from a tin, drained"),
        ("dried chickpeas", "chickpeas-dry", ""),
        ("banana", "banana-ripe", "ripe"),
        ("leek", "leek-green+leek-white", "whole"),
        ("pepper", "pepper-yellow", "yellow"),
        ("spring onions", "spring-onion-green+spring-onion-white", "whole"),
        ("milk & bread", "milk+bread-wholemeal", "wholemeal"),
        ("salt and pepper", "salt+pepper-black", ""),
        ("1 red pepper 1 yellow pepper", "pepper-red+pepper-yellow", ""),
        ("leftover roast veg (carrots parsnips)", "carrot-microwaved+parsnip-boiled", "microwaved carrots"),
    ],
)
def test_what_goes_without_saying_is_taken_and_shown(line: str, foods: str, assumed: str, reader: LarderReader) -> None:
    reading = read(reader, line)
    assert [lot.food for lot in reading.lots] == foods.split("+")
    assert assumed in " ".join(reading.assumed)
    assert bool(assumed) == bool(reading.assumed)


@pytest.mark.long
def test_every_name_of_a_food_finds_it(tables, reader: LarderReader) -> None:  # type: ignore[no-untyped-def]
    """Each name of foods.csv is matched to its own food, or asked with it among the candidates."""
    for food in tables.foods:
        reading = read(reader, f"100 g {food.name}")
        found = {candidate.food for candidate in reading.candidates}
        assert food.id in found, food.name
        assert reading.match.outcome in {"matched", "ask"}
    for row in some(tables.names, 30):
        reading = read(reader, f"100 g {row.name}")
        assert row.food in {candidate.food for candidate in reading.candidates}, row.name
