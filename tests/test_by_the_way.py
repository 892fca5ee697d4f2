"""What is corrected, sized or told by the way in a line; leftovers of a dish are no plain food.

Months of two letters on packs: Canadian Food Inspection Agency, date markings (recalled). Amounts: common practice.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot

TODAY = date(2026, 3, 11)


def only(reader: LarderReader, line: str) -> Lot:
    reading = reader.read(line, "line 1")
    assert reading is not None
    (lot,) = reading.lots
    return lot


@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("4 limes.. wait 3", "lime", 150, 260), ("half a thing of garlic", "garlic", 12, 40),
        ("cooked rice, huge bowl", "rice-white-cooked", 400, 1300), ("4 largeish carrots", "carrot", 280, 600),
        ("crunchy peanut butter, scrapings + a new jar", "peanut-butter", 250, 500),
        ("rice, a mug maybe, bottom of the jar", "rice-white-dry", 120, 300),
        ("eggs 18ish, chooks are going mad", "egg", 800, 1200),
        ("milk 2L, kids drink it like water", "milk", 1990, 2010),
        ("ginger small finger", "ginger", 10, 60), ("brown rice sachet", "rice-brown-cooked", 150, 400),
        ("onions braided", "onion-brown", 100, 1500), ("half a sub w onions from yest", "sandwich", 60, 150),
        ("pb (whole nut)", "peanut-butter", 150, 500),
        ("soy sauce sachets from the takeaway 6 or so", "soy-sauce", 20, 120),
        ("rotisserie chicken, mostly bones", "chicken-cooked", 10, 150), ("lime, half, dry", "lime", 20, 50),
        ("microwave rice 250g x 2 (plain basmati)", "rice-basmati-cooked", 500, 500),
        ("pumpkin, about a third left, 700g", "pumpkin", 690, 710), 
        ("celery sticks left from lunchbox", "celery", 20, 150),
        ("a quarter of the gallon milk", "milk", 900, 1000), ("apple pie 1/4", "apple-pie", 120, 300),
        ("lamb neck 1lb 6oz", "lamb-roast", 620, 628), ("beef mince 2 lb and 4 oz", "beef-mince", 1015, 1025),
        ("green banana hand of 5", "banana-firm", 400, 700), ("wheaten loaf heel end", "bread-soda", 20, 180),
        ("celeriac, size of a fist", "celeriac", 150, 450), ("oat drink like 2 coffees worth", "oat-drink", 40, 120),
        ("jar of capers on its last legs", "capers", 5, 40), ("rhubarb frozen in bits", "rhubarb", 100, 600),
        ("bolognese, 2 takeaway packs", "bolognese", 500, 900),
        ("groundnut paste, 1 marg cup", "peanut-butter", 200, 600),
        ("baklava box 5pc left", "baklava", 100, 400), ("lasagne veg half left", "lasagne-vegetable", 250, 600),
        ("birthday cake, 1/4, buttercream", "brownie", 100, 300), ("mini quiches 4", "quiche", 120, 280),
        ("from the kids' plates last night: 3 fish fingers", "fish-fingers", 60, 110),
        ("soda farls x2", "bread-soda", 150, 300), ("clementines, net bag, ~12", "mandarin", 700, 1100),
        ("buckwheat 2 bags of 100", "buckwheat-dry", 200, 200), ("calamansi 1/4 kl", "calamansi", 250, 250),
        ("1,5x smoked tofu (175g each)", "tofu-smoked", 255, 270), ("ayran 1.5lt half", "yoghurt-drink", 600, 900),
        ("milk about gone", "milk", 20, 450), ("collard leaf x 5", "spring-greens", 80, 350),
        ("baloney sliced thick x6", "luncheon-sausage", 50, 260),
        ("cream cheese 1 finger left", "cream-cheese", 10, 120),
        ("farmer sausage, half a ring", "frankfurters", 100, 260), ("lasagna noodles 8", "pasta-dry", 100, 220),
        ("half of a 9x13 lasagna", "lasagne", 1000, 1400), ("9x13 pan of enchiladas", "burrito", 2000, 2800),
        ("deli ham ends 1/2#", "ham", 226, 228),  # half a pound, and no day
        ("2 mangoes super ripe n 1 rock hard", "mango", 550, 900), ("avocados 2 hard 1 soft", "avocado", 400, 700),
        ("feta 1/2 of 200g", "feta", 95, 105), ("satsumas - net, 5 left", "mandarin", 250, 500),
        ("eggs box 4 left", "egg", 200, 260), ("clementines bag 8 in it", "mandarin", 450, 900),
        ("courgette x1 & half", "courgette", 250, 400), ("paella leftover big bowl", "paella", 400, 900),
        ("5 chips left", "potato-chips-frozen", 30, 110), ("shallots plaited string", "shallot", 300, 1200),
        ("one lonely sausage", "sausages", 40, 90),
        ("courgettes, 3 lil ones", "courgette", 200, 450), ("bara brith 1/3", "fruit-cake", 120, 350),
        ("llaeth 4pt", "milk", 1800, 2400), ("wyau x 10", "egg", 500, 650),
        ("plantain 2 yellow 1 black", "plantain-ripe", 450, 750), ("½ cabbage, savoy", "cabbage-savoy", 300, 500),
        ("1kg bag froz mixed veg - corn carrot beans - bout half", "mixed-vegetables-frozen", 400, 600),
    ],
)  # fmt: skip
def test_how_much(line: str, food: str, low: float, high: float, reader: LarderReader) -> None:
    lot = only(reader, line)
    assert lot.food == food
    assert low <= lot.grams <= high


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("sardine tin x2 tomato tin x3", ["sardines-canned", "tomato-canned"]),
        ("hummus 2 tubs, 1 beetroot 1 plain", ["hummus-flavoured", "hummus"]),
        ("milk 4 pint green + 1 pint blue", ["milk-semi", "milk"]),
        ("marg, plant milk (soya)", ["plant-spread", "soya-drink"]),
        ("pizza margherita x2 (lads' tea friday - not eaten)", ["pizza"]), ("pear, 1 big, butter soft", ["pear"]),
        ("salt n pep", ["salt", "pepper-black"]), ("flax meal, stock pots", ["linseed", "stock-cube-onion"]),
        ("light soup from wed, fish finish, only soup", ["stew-meat"]), ("moi moi 4 wraps", ["moin-moin"]),
        ("half a tin of beetroot in a bowl with a plate on top", ["beetroot-canned"]),
        ("cawl, veg, 2 litre", ["stew-vegetable"]),
        ("green tomatoes in a drawer w/ a banana", ["tomato-green"]),
        ("Priya's dal, finish it before mon", ["dal-cooked"]),
        ("halal chicken whole x2 cut curry size", ["chicken-whole"]),
        ("tartare + egg mayo", ["tartare-sauce", "sandwich-filling"]),
        ("eggs, butter soft", ["egg", "butter"]), ("stew, no onion in it", ["stew-meat-plain"]),
        ("chips and curry sauce leftover", ["potato-roasted", "curry-vegetable"]),
        ("cheese scrolls 2", ["sandwich-cheese"]), ("courgette huge marrow-ish one", ["courgette"]),
        ("toad in the hole leftover", ["toad-in-the-hole"]),
        ("noodles 3 pkts curry flav", ["noodles-instant-seasoned"]),
        ("bresych coch half", ["cabbage-red"]), ("pratai 2kg", ["potato"]), ("tatws a bucket", ["potato"]),
        ("pasta bake from thurs, got onion in it", ["pasta-bake"]), ("mushroom pate", ["pate-vegetable"]),
        ("chicken fillet roll", ["sandwich"]), ("sausage rolls - meat ones", ["sausage-roll"]),
        ("treacle sponge", ["cake-plain"]),
        ("carrot halwa", ["milk-sweets"]), ("glamorgan sausages", ["glamorgan-sausages"]),
        ("mango thokku", ["mango-pickle"]),
    ],
)  # fmt: skip
def test_which_foods(line: str, foods: list[str], reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == foods


def test_only_one_thing_of_a_list_is_somebodys(reader: LarderReader) -> None:
    reading = reader.read("rice noodles, fish sauce (Kev's), limes x5", "line 1")
    assert reading is not None
    assert {lot.food: lot.owner for lot in reading.lots} == {
        "rice-noodles-dry": None,
        "lime": None,
        "fish-sauce": "kev",
    }


@pytest.mark.parametrize(
    "line",
    [
        "Daddy's insulin", "vitamin D drops for the baby", "expressed milk, 2 bottles", "breast milk in freezer",
        "seed potatoes", "dahlia tubers in a paper bag", "Judith's casserole dish, empty", "electrolyte tabs",
    ],
)  # fmt: skip
def test_what_is_no_food_of_a_dinner(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.problem is not None


def test_months_of_two_letters(reader: LarderReader) -> None:
    assert only(reader, "milk 2L best before 26 MR 18").days_left == 7


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("onions (for husband only)", "husband"),
        ("1 sirloin (Tom's, im veggie)", "tom"),
        ("gin (husbands)", "husband"),
        ("priya's paneer (roommate)", "priya"),
    ],
)
def test_whose(line: str, owner: str, reader: LarderReader) -> None:
    assert only(reader, line).owner == owner


@pytest.mark.parametrize(
    "line", ["freezer bit:", "from the freezer:", "veg box came monday so:", "just got in, not much"]
)
def test_headings_and_chatter_are_no_question(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert reading.problem is not None
    assert reading.to_answer is None


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("chilli from sunday", "chilli-con-carne"), ("sambar, monday", "sambar"), ("toum my dad made", "toum"),
        ("garlic coil 300g", "frankfurters"), ("yorkshires x3", "yorkshire-pudding"), ("romanesco", "romanesco"),
        ("doro wat from yesterday", "wat-chicken"), ("baingan bharta", "curry-vegetable"), 
        ("sour cream and onion dip", "dressing-creamy"),
    ],
)  # fmt: skip
def test_a_dish_is_not_its_plain_part(line: str, food: str, reader: LarderReader) -> None:
    assert only(reader, line).food == food


@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("tahini, mostly oil now", "tahini", 100, 400), ("peanut butter, all oil on top", "peanut-butter", 100, 400),
        ("spinach 20 bob", "spinach", 50, 400), ("eggs 6, 3 euros", "egg", 250, 400),
        ("mugs worth of milk", "milk", 200, 400), ("coconut cream tin", "coconut-cream", 380, 420),
        ("soy sce", "soy-sauce", 20, 500), ("fish sce", "fish-sauce", 20, 700),
        ("chkn brst 2", "chicken-breast", 200, 400), ("frozen petit pois", "peas-frozen", 400, 1000),
        ("miso sachets", "soup-miso", 100, 800), ("canchita", "sweetcorn-dried", 50, 500),
    ],
)  # fmt: skip
def test_prices_oil_on_top_and_short_forms(reader: LarderReader, line: str, food: str, low: float, high: float) -> None:
    lot = only(reader, line)
    assert lot.food == food
    assert low <= lot.grams <= high


def test_what_may_be_dried_or_fresh_is_asked(reader: LarderReader) -> None:
    """Crayfish: dried and ground in West Africa, elsewhere a shellfish as fresh as prawns."""
    reading = reader.read("crayfish", "line 1")
    assert reading is not None
    assert reading.match.outcome == "ask"
    assert only(reader, "ground crayfish").food == "shrimp-dried"


@pytest.mark.parametrize(
    "line", ["gas lighter", "pouches for the cat", "cat pouches", "kids lunches", "box of matches"]
)
def test_no_food_is_offered_for_what_is_none(reader: LarderReader, line: str) -> None:
    reading = reader.read(line, "line 1")
    assert reading is None or (reading.match.outcome == "unknown" and not reading.lots)


def test_a_misspelt_room_mate_is_one(reader: LarderReader) -> None:
    assert only(reader, "roomates perogies").owner is not None
