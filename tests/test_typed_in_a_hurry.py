"""What people leave out when they type in a hurry: the small words round a day, a look, a vessel, a name.

The lines are ours; how long things keep is told in `keeping.csv` with its sources.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.meaning import Reading
from calmlarder.tables.book import Tables

TODAY = date(2026, 3, 11)


def read(tables: Tables, line: str) -> Reading:
    reading = LarderReader(tables, TODAY).read(line, "line 1")
    assert reading is not None
    return reading


@pytest.mark.parametrize(
    ("line", "food", "days"),
    [
        ("yoghurt past its date 2 days", "yoghurt-plain", -2),
        ("ham past date by 1 day", "ham", -1),
        ("cheddar over date a week", "cheddar", -7),
        ("hummus 3 days open", "hummus", -1),
        ("passata 5 days open", "passata", -2),
        ("passata a week open", "passata", -4),
        ("banana black 2", "banana-ripe", 1),
        ("bananas v brown 4", "banana-ripe", 1),
        ("celery yellow x2", "celery", 1),
        ("punnet raspberries some fluffy", "raspberry", 1),
        ("strawberries, fluffy bits", "strawberry", 1),
        ("mushrooms dry looking", "mushroom-button", 1),
        ("sausages 4 cooked", "sausages", 2),
        ("3 leftover burgers", "beef-burgers", 2),
        ("cucumber end gone soft", "cucumber", 1),
        ("leftover nuggets 5", "chicken-nuggets", 2),
        ("beef rendang frm sat", "curry-chicken", -2),
        ("palak paneer half box yday", "curry-paneer", 1),
        ("packet ham nearly out of date", "ham", 1),
        ("milk almost at its date", "milk", 1),
        ("guava 2 over ripe", "guava", 1),
        ("bbq snags cold 3", "sausages", 2),
        ("parsnips 3 hairy", "parsnip", 1),
        ("fish fingers 3 cooked", "fish-fingers", 2),
        ("dumplings made sunday", "dumplings", -1),
        ("2 egg yolks in cup from mon", "egg-yolk", 0),
        ("tin of peaches open since em monday", "peaches-canned", 1),
        ("green beans 1 bundle (sunday mkts)", "green-beans", 3),
        ("ham that says use by the twelfth", "ham", 1),
        ("cauli, black spots on top rest ok", "cauliflower", 1),
    ],
)
def test_days_that_are_told_by_other_words(tables: Tables, line: str, food: str, days: int) -> None:
    lots = read(tables, line).lots
    assert [lot.food for lot in lots] == [food]
    assert lots[0].days_left is not None
    assert lots[0].days_left <= days


@pytest.mark.parametrize("line", ["blackberries gone fluffy", "cheese fluffy on top", "lemons 2, fluffy"])
def test_what_has_fluff_all_over_is_thrown_away(tables: Tables, line: str) -> None:
    reading = read(tables, line)
    assert not reading.lots
    assert reading.problem is not None
    assert "fluffy" in reading.problem.what


@pytest.mark.parametrize(
    "line",
    [
        "coconut yoghurt, blue spot on it", "bread with blue spots", "rice, grey fluff on it", "mince a bit off",
        "mince bit off", "sandwich half chewed",
    ],
)  # fmt: skip
def test_spots_and_bites_are_thrown_away(tables: Tables, line: str) -> None:
    """Mould on soft food and bread is not cut off (FSA, from memory); a bit off is off (common practice)."""
    reading = read(tables, line)
    assert not reading.lots
    assert reading.problem is not None
    assert any(word in reading.problem.what for word in ("mould", "off", "chewed"))


@pytest.mark.parametrize("line", ["worm tablets for the dog", "mum's blood pressure tabs", "baby paracetamol syrup"])
def test_medicine_is_no_food(tables: Tables, line: str) -> None:
    reading = read(tables, line)
    assert not reading.lots
    assert reading.problem is not None
    assert "nothing that people eat" in reading.problem.what


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("honey off own bees, set", ["honey"]),
        ("green tomatoes off windowsill, 9", ["tomato-green"]),
        ("cod 4 fillets off Murray", ["cod"]),
        ("butter w. sea salt", ["butter"]),
        ("trout 2, turmeric + salt already put", ["trout"]),
        ("feijoa pulp frozen, 2 ice cream tubs", ["feijoa"]),
        ("2 ice cream tubs", ["ice-cream"]),
        ("couscous salad w. apricots, big bowl", ["grain-salad"]),
        ("half a packet of bacon and a pound of mints no mince", ["bacon", "beef-mince"]),
        ("flower plain flower", ["flour-wheat-white"]),
        ("pasta no parmesan", ["pasta-dry"]),
        ("two eggs, and one hard boiled", ["egg", "egg-boiled"]),
        ("chicken breast 2kg frozen in bags of 2", ["chicken-breast"]),
        ("nolen gur 1 block - 1st of winter!!", ["sugar-brown"]),
        ("neeps mashed, left from sat, cupful", ["swede-boiled"]),
        ("carrot & swede mash no marg 2 portions freezer", ["mash-roots"]),
        ("free from bread, frozen", ["bread-gluten-free"]),
        ("free from cheese slices", ["vegan-cheese"]),
        ("gf fish fingers 10 (frzr)", ["fish-fingers-gluten-free"]),
        ("yoghurts 2 vanilla 1 peach", ["yoghurt-vanilla", "yoghurt-fruit"]),
        ("quiche 1/3 broccoli + stilton", ["quiche"]),
        ("7 eggs from Jodies chooks", ["egg"]),
        ("duck eggs 5 hens eggs 20 odd", ["egg-duck", "egg"]),
        ("dhania with roots", ["coriander"]),
        ("turkey crown frozen 2kg", ["turkey-breast"]),
        ("pizzas 1 ham 1 cheese", ["pizza-meat", "pizza"]),
        ("sausages: 4 pork 2 veggie", ["sausages", "plant-sausages"]),
        ("mangoes - a lot. some dripping", ["mango"]),
        ("quiche from mums group?? bacon in it i think", ["quiche-lorraine"]),
        ("bean stew, pumpkin + beans, pot half full", ["chilli-bean"]),
        ("bun cooked mon, half a box", ["rice-noodles-cooked"]),
        ("mackerel fish 2 whole, iced block", ["mackerel"]),
        ("butter crunch lettuce 2", ["lettuce"]),
        ("prawns cooked frozen 200g", ["prawns-cooked"]),
        ("rice cooked frozen", ["rice-white-cooked"]),
        ("mixed veg frozen carrot corn peas", ["mixed-vegetables-frozen"]),
        ("mixed veg (carrot, corn, peas)", ["mixed-vegetables-frozen"]),
        ("plums windfall 8", ["plum"]),
        ("windfall pears", ["pear"]),
        ("red onion half cling film", ["onion-red"]),
        ("peppers red green yellow", ["pepper-red", "pepper-green", "pepper-yellow"]),
    ],
)
def test_one_thing_stays_one(tables: Tables, line: str, foods: list[str]) -> None:
    assert [lot.food for lot in read(tables, line).lots] == foods


@pytest.mark.parametrize(
    ("line", "least", "most"),
    [
        ("courgettes glut 5", 500, 1500),
        ("2 egg yolks in a cup", 25, 45),
        ("cucumber watery end", 200, 400),
        ("cucumber soggy one end", 200, 400),
        ("eggs, 1/2 doz. less one", 250, 300),
        ("a dozen eggs minus 3", 450, 540),
        ("EGGS 1 DOZ MINUS 3", 450, 540),
        ("butter 100g, less than half", 20, 50),
        ("cream cheese 200g tub, more than half left", 105, 150),
        ("tomato puree tube, squeezed flat", 5, 40),
        ("green curry paste, nearly finished", 5, 60),
        ("egg whites 3 in a jar", 80, 120),
        ("peanut butter no bits", 150, 500),
    ],
)
def test_grams_are_of_what_is_there(tables: Tables, line: str, least: float, most: float) -> None:
    lots = read(tables, line).lots
    assert len(lots) == 1
    assert least <= lots[0].grams <= most


@pytest.mark.parametrize(
    ("line", "owner"),
    [
        ("Tom & Beth's lasagne", "tom and beth"),
        ("Mark n Lisa's milk", "mark and lisa"),
        ("leftover pizza Josh", "josh"),
        ("yoghurts Tom", "tom"),
        ("milk (Ben)", "ben"),
        ("bhaiyas eggs 6", "bhaiya"),
        ("mrs's salad", "mrs"),
        ("cheese - ask Kate", "kate"),
        ("ham, ask dad first", "dad"),
        ("jake's leftover curry", "jake"),
        ("smoothie 1/2 belongs to me", None),
        ("leftover Rogan Josh", None),
        ("kale for the sheep - dont cook", "sheep"),
        ("tofu block - Hemis - ask first", "hemi"),
        ("choc mousse x2 (me sisters)", "sisters"),
        ("stale bread for the ducks", "ducks"),
    ],
)
def test_whose_it_is(tables: Tables, line: str, owner: str | None) -> None:
    lots = read(tables, line).lots
    assert [lot.owner for lot in lots] == ([owner] if lots else [])
    assert lots or owner is None


@pytest.mark.parametrize(
    ("line", "food", "least", "most"),
    [
        ("baby corn 6", "baby-corn", 40, 90),
        ("bocconcini 5", "mozzarella", 100, 250),
        ("mini scotch eggs 6", "scotch-egg", 80, 170),
        ("sausage rolls party frozen 10", "sausage-roll", 200, 400),
        ("satay 6 sticks leftover", "satay-skewers", 100, 280),
        ("otah 3 sticks", "curry-fish", 75, 210),
        ("twiggy sticks 3", "salami", 45, 90),
        ("gulab jamun 3", "milk-sweets", 75, 150),
        ("coriander bag wilting", "coriander", 20, 100),
        ("chorizo half ring", "chorizo", 90, 140),
        ("barbecued prawns 8 leftover", "prawns-cooked", 60, 160),
        ("chicken schnitty 1", "chicken-nuggets", 100, 220),
        ("mutton chops 2", "lamb-chops", 160, 320),
        ("zucchini slice 3 pieces", "quiche", 240, 480),
    ],
)
def test_small_things_weigh_little(tables: Tables, line: str, food: str, least: float, most: float) -> None:
    """Weights in `measures.csv`, common practice."""
    lots = read(tables, line).lots
    assert [lot.food for lot in lots] == [food]
    assert least <= lots[0].grams <= most


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("fish curry from last nite", "curry-fish"),
        ("beef rendang half box frm sat", "curry-chicken"),
        ("char kway teow leftover", "noodles-leftover"),
        ("chicken rice tapao", "rice-with-meat"),
        ("rice pud pot", "rice-pudding"),
        ("nutrition yeast", "nutritional-yeast"),
        ("beef schnitzel 2 crumbed", "meat-breaded"),
        ("salt n pepper squid leftover", "squid-breaded"),
        ("yorkshire pudding batter", "pancake-batter"),
        ("tau geh", "bean-sprouts"),
        ("raspberry ripple half tub", "ice-cream"),
        ("tau kwa fried 2", "tofu-fried"),
        ("mint chutney ice cubes", "chutney-green"),
        ("toned milk 1 pkt boiled", "milk-semi"),
        ("brown shrimps potted 1", "shrimps-potted"),
        ("shami kebab freezer 18", "shami-kebabs"),
        ("home made slaw, no onion", "coleslaw-plain"),
        ("pan haggerty, a third, from last night", "pan-haggerty"),
        ("pickled red cabbage", "cabbage-red-pickled"),
        ("lahana turşusu", "cabbage-pickled-garlic"),
        ("cocktail cherries", "cherries-in-syrup"),
        ("adrak lasan paste - 1 jar", "ginger-garlic-paste"),
        ("coconut rice pouch", "rice-coconut"),
        ("cold pasta w tuna mayo", "pasta-tuna"),
    ],
)
def test_a_dish_is_no_food_with_less_in_it(tables: Tables, line: str, food: str) -> None:
    """What holds onion, wheat or milk is no plain food beside it: a satay stick is no sauce, rice pudding no rice."""
    assert [lot.food for lot in read(tables, line).lots] == [food]


@pytest.mark.parametrize("line", ["mince (for tomorrows tacos)", "bacon for sun brekkie", "peppers for wed stir fry"])
def test_what_it_is_kept_for_is_no_food(tables: Tables, line: str) -> None:
    lots = read(tables, line).lots
    assert len(lots) == 1
    assert lots[0].kept_for is not None
