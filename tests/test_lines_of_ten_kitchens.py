"""Lines as people of ten kitchens type them: which food, how long, how much, whose. The lines are ours."""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot

TODAY = date(2026, 3, 11)  # a Wednesday


def lots(reader: LarderReader, line: str) -> tuple[Lot, ...]:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return reading.lots


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("kailan 1 bunch", ["chinese-broccoli"]), ("gai lan, washed", ["chinese-broccoli"]),
        ("choi sum 200g", ["choy-sum"]), ("yu choy", ["choy-sum"]), ("cime di rapa 1 kg", ["broccoli-rabe"]),
        ("shado beni", ["culantro"]), ("kenkey 2 balls", ["kenkey"]), ("roast breadfruit", ["breadfruit-cooked"]),
        ("1 green bell pepper + half a red one, bit wrinkly", ["pepper-green", "pepper-red"]),
        ("red onions of Tropea, garlic", ["onion-red", "garlic"]), ("olio, plenty", ["oil-olive"]),
        ("carrot 2, pietruszka (root) 1 bendy", ["carrot", "parsley-root"]), ("1 small onion", ["onion-brown"]),
        ("chickpeas, soaked n boiled, since monday", ["chickpeas-boiled"]),
        ("chicken of the woods", ["mushroom-chicken-of-the-woods"]), ("sinigang mix 1 sachet", ["sinigang-mix"]),
    ],
)  # fmt: skip
def test_which_foods(line: str, foods: list[str], reader: LarderReader) -> None:
    assert [lot.food for lot in lots(reader, line)] == foods


@pytest.mark.parametrize(
    ("line", "kind", "on"),
    [
        ("kimchi opened, since feb", "opened", date(2026, 2, 1)),
        ("peas in freezer since oct", "frozen", date(2025, 10, 1)),
        ("milk opened 1/3", "opened", date(2026, 3, 1)), ("salmon ub vrij 13/3", "use-by", date(2026, 3, 13)),
        ("cheddar use leo", "use-by", TODAY), ("tofu bb 2026/03/14", "best-before", date(2026, 3, 14)),
        ("soup, last weekend", "made", date(2026, 3, 7)), ("pasta from the other night", "made", date(2026, 3, 8)),
        ("mince, yesterday's date", "use-by", date(2026, 3, 10)),
        ("eggs bb 3 weeks ago", "best-before", date(2026, 2, 18)),
        ("ricotta 5d left", "use-by", date(2026, 3, 16)), ("ricotta (3 days)", "use-by", date(2026, 3, 14)),
        ("stew 3 days", "made", date(2026, 3, 8)), ("tofu opened 2d", "opened", date(2026, 3, 9)),
        ("yoghurt opened a fortnight ago", "opened", date(2026, 2, 25)),
        ("milk ends 13th", "use-by", date(2026, 3, 13)),
        ("salmon taken out last night", "opened", date(2026, 3, 10)), ("chicken 12-3", "use-by", date(2026, 3, 12)),
        ("tofu in water since tues", "opened", date(2026, 3, 10)),
        ("dubu half, in water since tues", "opened", date(2026, 3, 10)),
        ("mleko do 15.03", "use-by", date(2026, 3, 15)),
        ("salad bag, last day tmr", "use-by", date(2026, 3, 12)),
    ],
)  # fmt: skip
def test_what_a_line_says_of_days(line: str, kind: str, on: date, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert (kind, on) in {(one.kind, one.on) for one in lot.dates}


@pytest.mark.parametrize(
    ("line", "grams"),
    [("feta opened 1/2 tub", 125), ("pesto opened 1/2 left", 95), ("half a jar of pesto 1/2", 95), ("eggs 10-12", 605)],
)
def test_a_part_of_a_pack_is_no_day(line: str, grams: float, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.grams == pytest.approx(grams, rel=0.1)


@pytest.mark.parametrize("line", ["chicken eat me first", "spinach use 1st", "spinach asap", "ham urgent"])
def test_what_is_urgent_goes_within_a_day(line: str, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.days_left == 1


@pytest.mark.parametrize(
    ("line", "low", "high"),
    [
        ("frozen peas, nearly full bag", 600, 900), ("packet of chicken thighs, bone in, 8 of them", 500, 1200),
        ("kasza gryczana 2 bags x100g", 195, 205), ("beetroots 3, boiled vacuum pack", 180, 400),
        ("talong 4 pcs", 300, 700), ("1 japanese eggplant", 90, 200), ("brown lentils 1 cup dry", 170, 220),
        ("watermelon chunks from sunday", 150, 500), ("1 big onion, half used", 60, 120),
        ("sesame oil", 140, 500),
    ],
)  # fmt: skip
def test_how_much(line: str, low: float, high: float, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert low <= lot.grams <= high


@pytest.mark.parametrize("line", ["frozen peas n corn, cup or so", "peas and carrots, 200g"])
def test_an_amount_behind_two_is_of_both(line: str, reader: LarderReader) -> None:
    first, second = lots(reader, line)
    assert 50 <= first.grams <= 100
    assert 50 <= second.grams <= 100


def test_an_amount_behind_a_list_is_of_the_last(reader: LarderReader) -> None:
    *_, last = lots(reader, "leek, fennel, carrots, 200g")
    assert last.grams == 200


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("ham is for my suegra, she does eat it", "suegra"), ("cheddar for our schwiegermutter", "schwiegermutter"),
        ("rice n pots on the shelf are dans, not touching them", "dan"), ("yoghurt for my flatmate", "flatmate"),
        ("ham for my lunch", None), ("ham for my omelette", None), ("feta for our soup", None),
    ],
)  # fmt: skip
def test_whose(line: str, owner: str | None, reader: LarderReader) -> None:
    assert lots(reader, line)[0].owner == owner


@pytest.mark.parametrize(
    ("line", "days"),
    [
        # Fresh cheese once open: 3 to 5 days, common practice. Boiled pulses at home: 2 days, UK Food Standards Agency.
        ("queso fresco, since saturday", 2), ("paneer 200gm, opened yesterday", 4), ("gungo peas, cooked sunday", 1),
        ("dahi - 1 bowl from monday", 5),
    ],
)  # fmt: skip
def test_how_long(line: str, days: int, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.days_left is not None
    assert lot.days_left <= days


def test_cracked_eggs_go_to_the_bin(reader: LarderReader) -> None:
    """What got in through a crack is in the egg: USDA FSIS, advice on shell eggs (recalled)."""
    assert lots(reader, "3 eggs cracked")[0].to_bin
    assert not lots(reader, "3 eggs")[0].to_bin


@pytest.mark.parametrize("line", ["miso opened jan", "rice cooked 2 bowls, yesterday eve"])
def test_a_month_or_an_evening_is_nobody(line: str, reader: LarderReader) -> None:
    (lot,) = lots(reader, line)
    assert lot.owner is None


def test_hummus_made_at_home_keeps_as_open_with_or_without_garlic(reader: LarderReader) -> None:
    for line in ("hummus homemade from sat (no garlic)", "hummus opened sat"):
        (lot,) = lots(reader, line)
        assert lot.days_left is not None
        assert lot.days_left < 0  # two days once open: common practice


def test_what_thaws_from_the_freezer_is_in_it_no_more(reader: LarderReader) -> None:
    (lot,) = lots(reader, "tilapia 2 whole from freezer thawing")
    assert (lot.place, lot.days_left) == ("fridge", 1)
