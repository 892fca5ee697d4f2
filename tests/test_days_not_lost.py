"""Days and states that a line tells in passing: what is out of the freezer, what was stewed, soaked and boiled, pink.

Thawed food is eaten within a day: UK Food Standards Agency (recalled). All else is what a cook would say of each line,
common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.matching.dates.feasts import feasts_as_days
from gone_or_off import is_gone_or_off

TODAY = date(2026, 3, 11)  # a Wednesday


def lot_of(reader: LarderReader, line: str) -> Lot:
    reading = reader.read(line, "line 1")
    assert reading is not None
    (lot,) = reading.lots
    return lot


@pytest.mark.parametrize(
    ("line", "food", "days"),
    [
        # out of the freezer: a day from then, whenever it went in
        ("haddock 1 lb, frozen since last week, thawed today", "fish-white", 1),
        ("salmon 2 fillets frozen in january, defrosted last night", "salmon", 0),
        ("mince 500g frozen 2 weeks ago now thawed", "beef-mince", 1),
        ("chicken thighs, froze sunday, out of the freezer this morning", "chicken-thigh", 1),
        ("2 pork chops (freezer) got out this morning", "pork-chops", 2),
        ("frozen prawns, thawed yesterday", "prawns", 0),
        ("chicken from freezer thawed mon", "chicken-breast", -1),
        ("chicken parts 2lb thaw out since this morning", "chicken-drumsticks", 1),
        ("salmon 200g from freezer, thaw before use", "salmon", None),
        # the day of its cooking lies behind, and so does one that nobody knows
        ("hummus opened idk when", "hummus", -28),
        ("meatloaf from Carol, don't know how old", "meatloaf", -19),
        ("cold roast lamb 5oz, saturday", "lamb-cooked", -2),
        ("boxes of rice done sun", "rice-white-cooked", -2),
        ("half a tofu in water, changed it tues", "tofu-firm", 2),
        ("firm tofu - half block in water since mon", "tofu-firm", 1),
        ("oat milk open since last tues", "oat-drink", -4),  # who means yesterday says so
        ("pumpkin puree, can, opened valentines", "pumpkin-puree", -21),
        ("passata opened last month", "passata", -57),
        ("parsley—limp", "parsley", 1),
        ("half a quiche, fri", "quiche", -3),  # what is begun has no label
        ("passata opened sometime last week", "passata", -4),
        ("passata opened ??", "passata", -27),
        ("passata opened 3-4 days ago", "passata", -1),  # and not on the third of April
        ("passata opened maybe sunday?", "passata", 0),
        ("soup of unknown age", "soup-vegetable", -19),
        ("stew, been there a while", "stew-meat", -19),
        ("peas in freezer, not thawed yet", "peas-frozen", None),
        # a day between two labels is that of the first
        ("sausages defrosted yesterday ub fri", "sausages", 0),
        ("milk opened mon ub fri", "milk", 1),
        ("ham 12 mar use by", "ham", 1),
        # made at home it is no sealed jar; a tin is one
        ("stewed apple, tub, since sun", "apple-sauce", 2),
        ("homemade hummus", "hummus", 2),
        ("tomato soup 2 tins", "soup-tomato", None),
        ("soup carton, opened", "soup-vegetable", 1),
        # since a day, and nothing says that it was cooked
        ("chicken thighs since sunday", "chicken-thigh", -1),
        ("cooked chicken since sunday", "chicken-cooked", -1),
        ("rice since sunday", "rice-white-cooked", -2),
        # where it came from is no smell
        ("lemon off the neighbours tree x4", "lemon", None),
        ("apples off our tree 6", "apple", 6),
        # spots
        ("cauliflower half, brown spots", "cauliflower", 1),
        ("onion half, cut", "onion-brown", 4),  # what is cut: keeping.csv, common practice
        ("lettuce, rusty edges", "lettuce", 1),
        ("cooked ham 4 slices curled", "ham", 1),
        ("bananas with brown spots", "banana-ripe", 6),
        ("cauliflower, black specks", "cauliflower", 1),
        ("pad thai from the party sunday", "pad-thai", -1),
    ],
)
def test_the_days_of_a_line(reader: LarderReader, line: str, food: str, days: int | None) -> None:
    lot = lot_of(reader, line)
    assert (lot.food, lot.days_left) == (food, days)


@pytest.mark.parametrize("line", ["frozen prawns, thawed yesterday", "mince 500g frozen 2 weeks ago now thawed"])
def test_what_is_thawed_is_no_longer_in_the_freezer(reader: LarderReader, line: str) -> None:
    assert lot_of(reader, line).place == "fridge"


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("chickpeas soaked n boiled", "chickpeas-boiled"),
        ("black beans (soaked and boiled) 1 tub", "black-beans-boiled"),
        ("chickpeas, soaked overnight then boiled sunday", "chickpeas-boiled"),
        ("kidney beans soaked, boiled, 2 cups", "kidney-beans-boiled"),
        ("chickpeas soaking", "chickpeas-dry"),
    ],
)
def test_soaked_and_boiled_is_boiled(reader: LarderReader, line: str, food: str) -> None:
    assert lot_of(reader, line).food == food


@pytest.mark.parametrize(
    ("line", "to_bin"),
    [
        ("ricotta 250g, bit pink on top", True), ("cream cheese, pink spots", True), ("hummus with pink bits", True),
        ("pink salmon tin", False), ("grapefruit pink", False), ("lemon off the neighbours tree x4", False),
    ],
)  # fmt: skip
def test_pink_on_what_is_white_is_not_added(reader: LarderReader, line: str, to_bin: bool) -> None:
    assert is_gone_or_off(reader, line) is to_bin


# Raw fish, poultry and mince keep one or two days in the fridge: UK Food Standards Agency (recalled).
@pytest.mark.parametrize(
    ("line", "food", "here", "frozen"),
    [
        ("chicken thighs x6 (4 in freezer)", "chicken-thigh", 200, 400),
        ("Chicken Thighs x6 (4 in freezer), use by friday", "chicken-thigh", 200, 400),
        ("2 salmon fillets, 3 frozen", "salmon", 240, 360),
        ("salmon fillets 2 fresh, 3 frozen", "salmon", 240, 360),
        ("minced beef 500g (fresh) 500g (freezer)", "beef-mince", 500, 500),
        ("5 bread rolls, 3 of them frozen", "bread-roll", 100, 150),
        ("pita 1 bag + another frozen", "pitta-white", 360, 360),
    ],
)
def test_some_in_the_freezer_and_some_not_are_two_lots(
    reader: LarderReader, line: str, food: str, here: int, frozen: int
) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert [(lot.food, lot.place, round(lot.grams)) for lot in reading.lots] == [
        (food, "fridge", here), (food, "freezer", frozen),
    ]  # fmt: skip
    assert len({lot.id for lot in reading.lots}) == 2
    assert {lot.line for lot in reading.lots} == {line}


# Once opened milk keeps three days, what is sealed its own time: keeping.csv (common practice, no source).
@pytest.mark.parametrize(
    ("line", "food", "opened", "sealed"),
    [
        ("milk 2 cartons, one open", "milk", 1000, 1000),
        ("passata x3 (1 opened monday)", "passata", 680, 1360),
        ("3 tins coconut milk, one open", "coconut-milk", 400, 800),
        ("firm tofu 2 x 280g, one started", "tofu-firm", 280, 280),
        ("extra firm tofu, 4 pk x 350 g, one already opened yesterday", "tofu-firm", 350, 1050),
    ],
)
def test_one_pack_that_is_open_is_a_lot_beside_the_sealed_ones(
    reader: LarderReader, line: str, food: str, opened: int, sealed: int
) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert [(lot.food, lot.opened, round(lot.grams)) for lot in reading.lots] == [
        (food, True, opened), (food, False, sealed),
    ]  # fmt: skip
    assert {lot.line for lot in reading.lots} == {line}


@pytest.mark.parametrize("line", ["2 tubs hummus, both open", "milk 1 carton, one open", "3 eggs, one cracked"])
def test_packs_that_are_all_alike_stay_one_lot(reader: LarderReader, line: str) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert len(reading.lots) <= 1


# An avocado ripens off the tree and is hard until then: recalled cookery.
@pytest.mark.parametrize(
    ("line", "waits"),
    [
        ("avocado, rock", True), ("2 avocados, unripe", True), ("avocado rock hard, ready by friday", True),
        ("avocado, ripe", False), ("2 avocados, 1 hard 1 soft", False), ("avocado", False), ("pears rock hard", False),
    ],
)  # fmt: skip
def test_what_nobody_can_eat_yet_is_kept_until_it_is_soft(reader: LarderReader, line: str, waits: bool) -> None:
    assert (lot_of(reader, line).kept_for == "when it is soft") is waits


# A 400 g can holds 240 g drained (measures.csv); a picking is a bunch: common practice, no source.
@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("lentils 2 cans x 400 g", "lentils-canned", 480), ("butter 2 blocks x 250g", "butter", 500),
        ("firm tofu 3pkts x 280g", "tofu-firm", 840), ("collards - last of garden", "spring-greens", 250),
        ("last of the garden chard", "chard", 300), ("last of the chard", "chard", 36),
    ],
)  # fmt: skip
def test_so_many_of_so_much_and_the_last_of_a_garden(reader: LarderReader, line: str, food: str, grams: float) -> None:
    lot = lot_of(reader, line)
    assert (lot.food, lot.grams) == (food, pytest.approx(grams, rel=0.01))


# Day and month as they stand on packs in much of Europe: CLDR, short dates of pl and de (recalled).
@pytest.mark.parametrize("line", ["sour cream 18 % to 15.3", "yoghurt to 15.03", "kefir do 15.3", "milk 1.5 % to 15.3"])
def test_to_a_day_and_a_month_with_a_dot_is_a_day(reader: LarderReader, line: str) -> None:
    assert lot_of(reader, line).days_left == 4


# What goes off all through is thrown away, whatever was cut off it (USDA FSIS on moulds: recalled).
@pytest.mark.parametrize(
    "line",
    ["chicken, slimy bits cut off", "bread, mouldy bits cut off", "yogurt, moldy bit taken out",
     "hummus (mouldy bits removed)", "salmon, off bits cut off", "cooked rice, slimy bits removed"],
)  # fmt: skip
def test_what_goes_off_all_through_is_not_saved_by_a_knife(reader: LarderReader, line: str) -> None:
    assert is_gone_or_off(reader, line)


@pytest.mark.parametrize("line", ["strawberries, moldy ones tossed", "spinach, slimy leaves picked out"])
def test_of_berries_and_leaves_the_good_ones_stay(reader: LarderReader, line: str) -> None:
    assert not is_gone_or_off(reader, line)
    assert (lot_of(reader, line).days_left or 0) <= 1  # and go first


# A month behind the number of its day is no person; ISO 8601 names the days counted here.
@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("feta bb 14 jan", -56), ("feta b.b. 14 Apr", 34), ("milk use by 3 april", 23), ("crema cad 15 abr", 35),
        ("milk B.B.E. 12/4", 32), ("feta, best before 14 June", 95),
    ],
)  # fmt: skip
def test_a_month_behind_its_day_is_no_owner(reader: LarderReader, line: str, days: int) -> None:
    lot = lot_of(reader, line)
    assert (lot.owner, lot.days_left) == (None, days)


def test_a_name_behind_an_amount_is_one(reader: LarderReader) -> None:
    assert lot_of(reader, "4 tomatoes Josh").owner == "josh"


@pytest.mark.parametrize("line", ["2 sausages, 1 bag peas frozen", "2 onions, 1 bag frozen peas"])
def test_another_thing_that_is_frozen_is_no_part_of_the_first(reader: LarderReader, line: str) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert len({lot.food for lot in reading.lots}) == 2


# Thanksgiving: 5 U.S.C. 6103 and the Canadian proclamation of 1957; Easter: Meeus, Astronomical Algorithms (recalled).
@pytest.mark.parametrize(
    ("said", "today", "day"),
    [
        ("from thanksgiving", date(2026, 11, 28), date(2026, 11, 26)),
        ("since thxgiving dinner", date(2026, 10, 20), date(2026, 10, 12)),
        ("from christmas", date(2026, 1, 3), date(2025, 12, 25)),
        ("from easter sunday", date(2026, 4, 8), date(2026, 4, 5)),
    ],
)
def test_a_feast_is_the_last_one_that_has_been(said: str, today: date, day: date) -> None:
    assert feasts_as_days(f"ham {said}", today).endswith(f" {day.isoformat()}")


@pytest.mark.parametrize(
    ("line", "to_bin"),
    [
        ("croaker fish 2 - no light all tuesday, it defrost and freeze back", True),
        ("chicken thawed then refrozen", True),
        ("chicken thighs frozen, thawed today", False),
        ("bread refrozen", False),
        ("salmon, back in the freezer", False),
    ],
)
def test_raw_flesh_that_thawed_is_not_frozen_again(reader: LarderReader, line: str, to_bin: bool) -> None:
    """Food Standards Agency, "How to chill, freeze and defrost": recalled."""
    assert lot_of(reader, line).to_bin is to_bin
