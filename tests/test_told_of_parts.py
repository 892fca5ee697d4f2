"""What a line tells of a part: what is inside, which part is left, its fat, its day, how many are bad, how much each.

Alliums in what they were put into: fructans dissolve in water (Tuck et al. 2018). All else recalled cookery.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables

TODAY = date(2026, 11, 28)


def lots(tables: Tables, line: str) -> tuple[Lot, ...]:
    reading = LarderReader(tables, TODAY).read(line, "line 1")
    assert reading is not None
    return reading.lots if reading.problem is None else ()


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("chilli oil w crispy garlic in it", ["chilli-crisp"]),
        ("ogórki kiszone - homemade, czosnek inside", []),  # a question
        ("pickles - garlic in them", []),
        ("olives, has got loads of garlic in", []),
        ("stew, full of onion", ["stew-meat"]),
        ("garlic oil, garlic still in it", ["oil-garlic-made"]),
        ("tofu, no onion in it", ["tofu-firm"]),
        ("onions, garlic in the basket", ["onion-brown", "garlic"]),
        ("scallions (white part used)", ["spring-onion-green"]),
        ("spring onions, whites gone", ["spring-onion-green"]),
        ("daepa 1 (green part mostly)", ["spring-onion-green"]),
        ("leeks 2, white bit used", ["leek-green"]),
        ("scallions whites only", ["spring-onion-white"]),
        ("garlic & herb houmous open since sunday", ["hummus"]),
        ("sauerkraut, garlic dill", ["cabbage-pickled-garlic"]),
        ("vegan sausage, 1, ingredients say onion powder", ["vegan-sausages"]),
        # in water they are no boiled ones yet: raw kidney beans make ill (FDA Bad Bug Book, phytohaemagglutinin)
        ("chickpeas, dry, steeping since last night", ["chickpeas-dry"]),
        ("black beans in soak", ["rajmah-black-dry"]),
        ("turkey, cooked thurs, mostly white meat", ["turkey-cooked"]),
        ("venison 750g, mate shot it", ["venison"]),
        ("lac free milk", ["milk-lactose-free"]),
        ("milk, lactose free yoghurt", ["milk", "yoghurt-lactose-free"]),
        ("milk (not lactose free) 1l", ["milk"]),
        ("froz mixed veg peas carrot corn", ["mixed-vegetables-frozen"]),
        ("feta (guest, not vegan)", ["feta"]),  # what is said not to be made of plants has its lactose
        ("cheese, not vegan", ["cheddar"]),
        ("mackerel fish 2 (freezer)", ["mackerel"]),
        ("leftover lentil bolognaise", ["bolognese-plant"]),
        ("collards cooked w ham hock + onion", []),
        ("hommus, garlic one, ub 29/11", ["hummus"]),
        ("asparagus bunch, tips a bit mushy", ["asparagus"]),
        ("half cucumber slimy one end", ["cucumber"]),
        ("gravy granuals, onion", ["gravy-granules"]),
        ("smoked paprika/cumin/chilli", ["paprika", "cumin", "chilli-dried"]),
        ("ginger, chilli, coriander", ["ginger", "chilli-red", "coriander"]),
    ],
)
def test_what_is_in_it(line: str, foods: list[str], tables: Tables) -> None:
    assert [lot.food for lot in lots(tables, line)] == foods


@pytest.mark.parametrize(
    "line",
    [
        "milk, a bit off", "yoghurt a bit mouldy", "bread, some mouldy", "hummus some mouldy",
        "strawberries, some mouldy",
        "chicken breast, slimy one end", "salmon fillet, end is slimy", "tofu slimy edges",
        "sliced cucumber slimy ends",
        "cooked rice a bit slimy",
    ],
)  # fmt: skip
def test_what_goes_off_all_through_is_not_picked_over(line: str, tables: Tables) -> None:
    """Food Standards Agency and US Department of Agriculture on mould and slime of soft and cooked food (recalled)."""
    assert lots(tables, line) == ()


def test_a_potato_that_is_green_is_left_out_and_one_with_green_bits_is_cut(tables: Tables) -> None:
    """Solanine (Food Standards Agency on potatoes: recalled)."""
    assert lots(tables, "potato, 1, green") == ()
    (lot,) = lots(tables, "spuds with green bits")
    assert lot.condition == "green"


@pytest.mark.parametrize(
    ("line", "least", "most"),
    [
        ("sour cream 18", 100, 400),  # per cent of fat: Codex CXS 288-1976
        ("śmietana 18, half cup", 80, 160),
        ("milk 3.2, 1 carton", 900, 1100),
        ("tofu 2 packs, 200 g each, smoked", 400, 400),
        ("salmon 2 pcs boneless, 150g each, from the market", 300, 300),
        ("rice 500g bag and half of another", 700, 800),
        ("basmati pouch 2 min x1", 200, 300),
        ("tomatoes 6 - 2 spoiled", 300, 500),
        ("marg, low", 5, 100),
        ("kimchi little", 20, 120),
        ("spinach, bag, bit wet but ok", 100, 350),
        ("frozen spinach nuggets", 300, 1000),
        ("glass of white left in the bottle", 100, 250),
    ],
)
def test_how_much_it_is(line: str, least: float, most: float, tables: Tables) -> None:
    (lot,) = lots(tables, line)
    assert least <= lot.grams <= most


@pytest.mark.parametrize(
    ("line", "on"),
    [
        ("kefir do 25.11", date(2026, 11, 25)),
        ("milk 02.12", date(2026, 12, 2)),
        ("sausages 4 - dated 24th", date(2026, 11, 24)),  # of this week, and not in four
        ("bacon ub 2nd", date(2026, 12, 2)),
        ("haddock, fresh, from the wharf fri", date(2026, 11, 27)),
    ],
)
def test_its_day(line: str, on: date, tables: Tables) -> None:
    (lot,) = lots(tables, line)
    told = lot.first_date
    assert told is not None
    assert told.on == on
