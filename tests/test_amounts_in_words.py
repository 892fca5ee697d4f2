"""Amounts that people put in words of their own. Pound and ounce: NIST Handbook 44, Appendix C (453.59 g, 28.35 g)."""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader


def weighs(reader: LarderReader, line: str, food: str, grams: tuple[float, float]) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert [lot.food for lot in read.lots] == [food]
    assert grams[0] <= read.lots[0].grams <= grams[1]


@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("salmon fillets x2 (approx 300g)", "salmon", 295, 305),
        ("2 salmon fillets (300g)", "salmon", 295, 305),
        ("chicken breasts x 3 (450 g total)", "chicken-breast", 445, 455),
        ("2 tins tomatoes (400g)", "tomato-canned", 795, 805),
        ("butter lb and a half", "butter", 680, 681),
        ("a pound and a half of mince", "beef-mince", 680, 681),
        ("firm tofu 2 of the 14oz", "tofu-firm", 793, 795),
        ("extra firm tofu - 2 of the 14oz + a third thats opened in water", "tofu-firm", 925, 928),
        ("double cream 200 ml, halfway down", "cream-double", 95, 105),
        ("cream 200ml half full", "cream-double", 95, 105),
        ("brown rice bulk jar ~3 cups", "rice-brown-dry", 540, 580),
        ("brown rice cups", "rice-brown-cooked", 50, 1000),
        ("half full tub of cream", "cream-double", 100, 160),
        ("full tub of cream", "cream-double", 200, 350),
        ("punnet cherry toms, 1/2 gone", "tomato-cherry", 120, 130),
        ("milk 2 l, 1/4 gone", "milk", 1495, 1505),
        ("corn tortillas 1 pack of 30", "tortilla-corn", 700, 800),
        ("eggs 18 ct, about ten left", "egg", 500, 600),
        ("cheddar - the end of a block", "cheddar", 30, 150),
        ("eggs: 4 dozen", "egg", 2400, 2900),
        ("brown eggs 2½ doz", "egg", 1500, 1800),
        ("avocado 4 halves", "avocado", 250, 400),
        ("10 walnut halves", "walnuts", 10, 60),
        ("corn tortillas 60 pk half gone", "tortilla-corn", 600, 900),
        ("peas, quart bag", "peas-frozen", 500, 1400),  # a size of bag, no quart
        ("mackerel 2 (wrapped 3x)", "mackerel", 150, 400),
        ("3 tblsp sour cream", "sour-cream", 30, 60),
        ("grapes, big bag", "grapes", 600, 1500),
        ("apple slices", "apple", 40, 180),
    ],
)
def test_how_much_it_is(reader: LarderReader, line: str, food: str, low: float, high: float) -> None:
    weighs(reader, line, food, (low, high))


# Weights of pieces: USDA FoodData Central SR Legacy portions where it has them (plum tomato 62 g, large russet potato
# 369 g and small 170 g, breakfast sausage link 23 g to patty 35 g, saltine 3 g of forty in a sleeve), else what a cook
# would take them for.
@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("meatballs frozen 12", "beef-burgers", 240, 600),
        ("8 breakfast sausage links", "sausages", 160, 320),
        ("brats 4", "sausages", 280, 440),
        ("roma tomatoes 6", "tomato", 300, 510),
        ("3 russets", "potato", 450, 900),
        ("romaine hearts 2", "lettuce-cos", 240, 440),
        ("tamales 6", "tamales", 540, 1200),
        ("cabbage rolls 4", "stew-meat", 440, 800),
        ("half a tourtiere", "pie-savoury", 250, 450),
        ("american cheese singles 10", "cheese-processed", 160, 240),
        ("bag of mini sweet peppers", "pepper-yellow", 200, 500),
        ("sleeve of saltines", "crackers", 80, 140),
        ("2 bags of milk", "milk", 2000, 2800),  # of Canada: three of them are four litres
        ("milk", "milk", 900, 1100),
        ("kielbasa half rope", "frankfurters", 120, 250),
        ("lb n half ground chuck", "beef-mince", 680, 681),
        ("2# hamburger", "beef-mince", 907, 908),
        ("hamburger 4 patties", "beef-burgers", 400, 520),
        ("3 yams", "sweet-potato", 300, 900),
        ("yam 1 tuber", "yam", 800, 2500),
        ("rotissary chix, half", "chicken-cooked", 300, 450),
        ("ny strip x2", "beef-steak", 300, 500),
        ("can of biscuits", "dough-bread", 250, 450),
    ],
)
def test_a_named_piece_weighs_what_it_does(reader: LarderReader, line: str, food: str, low: float, high: float) -> None:
    weighs(reader, line, food, (low, high))


# What people say of how much is left, and of packs: common practice, no source, where the measure has no standard.
@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("gallon milk almost gone", "milk", 150, 1000),  # of 3785 ml: NIST Handbook 44, Appendix C
        ("half a gallon of milk", "milk", 1890, 1895),
        ("80g ham scraps", "ham", 79, 81),
        ("chunk of parm", "parmesan", 50, 200),
        ("hunk of cheddar", "cheddar", 50, 200),
        ("provolone 5", "provolone", 90, 200),
        ("sliver of butter", "butter", 10, 60),
        ("6 garlic cloves, in slivers", "garlic", 15, 25),
        ("glob of mayo", "mayonnaise", 8, 25),
        ("ketchup packets 4", "ketchup", 20, 60),
        ("instant oatmeal 3 packets", "oats-rolled", 80, 140),
        ("sugar packets few", "sugar", 8, 20),
        ("bag of sugar", "sugar", 700, 1200),
        ("half tray of baked ziti", "pasta-bake", 400, 900),
        ("1/4 pan enchiladas", "burrito", 90, 400),
        ("sliced pan", "bread-white", 600, 900),
        ("side of salmon", "salmon", 700, 1500),
        ("tupperware of rice", "rice-white-cooked", 150, 400),
        ("family pack chicken thighs", "chicken-thigh", 600, 1400),
        ("coupla chicken thighs", "chicken-thigh", 150, 300),
        ("ground pork 3/4 lb", "pork-mince", 340, 341),
        ("beef mince 2/3 lb", "beef-mince", 302, 303),
        ("canned tomatoes 2 big", "tomato-canned", 800, 1600),
        ("half a challah", "brioche", 150, 300),
        ("turkey breast frozen 3 lb", "turkey-breast", 1360, 1361),
        ("tamales pork 4", "tamales", 360, 800),
    ],
)
def test_what_is_left_or_packed(reader: LarderReader, line: str, food: str, low: float, high: float) -> None:
    weighs(reader, line, food, (low, high))


# A box of eggs holds six and a tray thirty, an egg weighs 50 to 60 g: common practice, no source.
@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("box of eggs minus 2", "egg", 4 * 50, 4 * 60),
        ("eggs tray minus 5", "egg", 25 * 50, 25 * 60),
        ("1 doz eggs minus 2", "egg", 10 * 50, 10 * 60),
        ("half a dozen eggs minus 1", "egg", 5 * 50, 5 * 60),
        ("half dozen eggs (1 cracked)", "egg", 5 * 50, 5 * 60),
        ("two dozen eggs, 3 smashed", "egg", 21 * 50, 21 * 60),
        ("12 free range eggs minus 3", "egg", 9 * 50, 9 * 60),
        ("bulb garlic minus 2 cloves", "garlic", 25, 38),
        ("block cheddar minus a slice", "cheddar", 280, 345),
        ("bag of apples minus three", "apple", 350, 560),
    ],
)
def test_minus_some_takes_them_off_and_finds_no_fault(
    reader: LarderReader, line: str, food: str, low: float, high: float
) -> None:
    weighs(reader, line, food, (low, high))
    plain = reader.read(line.split(" minus ")[0], "line")
    read = reader.read(line, "line")
    assert read is not None
    assert plain is not None
    assert read.lots[0].days_left == plain.lots[0].days_left
