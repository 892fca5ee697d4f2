"""Cups of what is cut or crushed, and pieces that weigh less or more than usual, in ingredient lines.

Cups: USDA SR28 portions, by the code beside each; pieces: common practice, no source.
"""

import pytest

from calmlarder.cookbook.lines import LineReader
from calmlarder.tables.book import Tables


@pytest.fixture(scope="module")
def lines(tables: Tables) -> LineReader:
    return LineReader(tables)


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("1 cup crushed saltine crackers", "crackers", 70),  # 18228, cup, crushed
        ("20 round butter crackers", "crackers-butter", 64),  # 18229, cracker, round 3.2 g
        ("1 cup crumbled blue cheese", "blue-cheese", 135),  # 01004
        ("2 cups grated Gruyère", "gruyere", 216),  # 01023, cup, shredded
        ("1 cup cooked kale", "kale-boiled", 130),  # 11234
        ("1/2 cup dried cranberries", "cranberries-dried", 80),  # 09079, a quarter cup is 40 g
        ("1 cup jicama matchsticks", "jicama", 120),  # 11603, cup slices
        ("1 cup carrot matchsticks", "carrot", 128),  # 11124
        ("1 cup courgette ribbons", "courgette", 124),  # 11477
    ],
)
def test_a_cup_is_what_the_data_set_weighed(line: str, food: str, grams: float, lines: LineReader) -> None:
    read = lines.read(line)
    assert (read.outcome, read.food) == ("read", food)
    assert read.grams == pytest.approx(grams, rel=0.05)


def test_a_cup_of_crumbs_holds_up_to_a_sleeve(lines: LineReader) -> None:
    """A cup crushed is 52 g in SR28 (18229); crumbs as fine as bread's are 108 g a cup (18079)."""
    read = lines.read("1 cup crushed butter crackers (about 1 sleeve)")
    assert read.grams_low is not None
    assert read.grams_high is not None
    assert read.grams_low <= 52
    assert read.grams_high >= 108


@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("8 chipolatas", "sausages", 200, 320), ("4 Italian sausages, casings removed", "sausages", 320, 480),
        ("2 banana shallots, sliced", "shallot", 90, 160), ("1 Lebanese cucumber", "cucumber", 90, 170),
        ("2 Persian cucumbers", "cucumber", 180, 330), ("1-inch piece fresh ginger", "ginger", 8, 20),
        ("1 1/2-inch piece ginger", "ginger", 15, 30), ("1 (2-inch) piece of ginger, peeled", "ginger", 20, 40),
        ("a couple of cloves of garlic", "garlic", 5, 8), ("2 tbsp tarragon leaves, chopped", "tarragon", 2, 6),
    ],
)  # fmt: skip
def test_pieces_of_their_own_size(line: str, food: str, low: float, high: float, lines: LineReader) -> None:
    read = lines.read(line)
    assert (read.outcome, read.food) == ("read", food)
    assert read.grams is not None
    assert low <= read.grams <= high


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("4 cups cooked short grain rice", "rice-white-cooked"), ("2 cups cooked sushi rice", "rice-white-cooked"),
        ("2 cups cooked elbow macaroni", "pasta-cooked"), ("3 cups cooked rotini", "pasta-cooked"),
        ("300g ready-to-wok udon noodles", "udon-cooked"), ("150g straight-to-wok rice noodles", "rice-noodles-cooked"),
        ("2 cups cooked black lentils", "lentils-boiled"),
        ("4 thick slices of sourdough toast", "bread-sourdough-white"),
        ("2 slices of rye toast", "bread-rye"), ("2 slices wholemeal toast", "bread-wholemeal"),
        ("1/2 cup (120 g) full-fat Greek yogurt", "yoghurt-greek"), ("200g Greek-style yoghurt", "yoghurt-plain"),
        ("10 Greek olives", "olives"), ("1 tsp sweet smoked paprika", "paprika"),
        ("1 tsp hot paprika", "paprika-smoked"),
        ("1-2 Thai bird's eye chillies, sliced", "chilli-birds-eye"),
    ],
)  # fmt: skip
def test_what_is_cooked_toasted_or_told_more_closely_is_known(line: str, food: str, lines: LineReader) -> None:
    read = lines.read(line)
    assert (read.outcome, read.food) == ("read", food)


@pytest.mark.parametrize(
    "line", ["thick slices of sourdough toast, to serve", "thick slices of ham", "a few gratings of Parmesan"]
)
def test_slices_without_a_number_are_not_one(line: str, lines: LineReader) -> None:
    read = lines.read(line)
    assert read.outcome == "read"
    assert read.grams is None


def test_weighed_dry_and_cooked_later_stays_dry(lines: LineReader) -> None:
    assert lines.read("1 lb elbow macaroni, cooked").food == "pasta-dry"


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("1 acorn squash, halved, seeds removed", "squash-acorn"), ("2 tomatoes, seeds scooped out", "tomato"),
        ("1 green pepper, seeds and membranes removed", "pepper-green"), ("1/4 cup bourbon", "spirits"),
        ("4 bourbon biscuits", "sandwich-biscuits"), ("1 (8.8 oz) pouch ready rice", "rice-white-cooked"),
        ("15 oz whole-milk ricotta", "ricotta"), ("1 cup dry navy beans", "kidney-beans-dry"),
        ("1 cup dry pinto beans", "kidney-beans-dry"), ("2 x 200g tins red salmon", "salmon-canned"),
        ("4 slices prepared polenta", "polenta-cooked"), ("1 lb shell-on shrimp", "prawns"),
        ("2 (90-second) pouches microwavable jasmine rice", "rice-white-cooked"), ("60g manchego shavings", "manchego"),
        ("a few drops of hot sauce", "hot-sauce"),
        ("3 cups hot chicken stock, fat skimmed off", "stock-meat"), ("4 wholemeal pittas", "pitta-wholemeal"),
        ("1 cup frozen lima beans", "butter-beans-boiled"), ("1/4 cup fresh dill fronds", "dill"),
        ("4 cups no-salt-added beef stock", "stock-meat"), ("2 fat leeks, sliced", "leek-whole"),
        ("2 tablespoons creamy almond butter", "almond-butter"), ("1 cup 00 flour", "flour-wheat-white"),
        ("1 (4.5-ounce) can chopped green chilies", "chilli-poblano"), ("1 tbsp tikka curry paste", "curry-paste"),
        ("1 1/2 cups cooked navy beans", "kidney-beans-boiled"), ("1/2 cup fat-free half-and-half", "half-and-half"),
        ("2 tablespoons double-concentrated tomato paste", "tomato-puree"),
        ("200 g sliced processed cheese, cubed", "cheese-processed"), ("14 oz wide rice noodles", "rice-noodles-dry"),
    ],
)  # fmt: skip
def test_what_is_taken_out_or_poured_changes_no_food(line: str, food: str, lines: LineReader) -> None:
    read = lines.read(line)
    assert (read.outcome, read.food) == ("read", food)


@pytest.mark.parametrize(
    ("line", "food", "low", "high"),
    [
        ("10 cloves of garlic confit", "garlic-paste", 25, 40),
        ("2 blocks dried noodles", "noodles-wheat-dry", 110, 170),
        ("1 ancho chile, soaked", "chilli-dried", 10, 20),  # 11978, pepper 17 g
        ("2 dried red chillies", "chilli-dried", 1, 4), ("4 tuna steaks", "tuna-fresh", 480, 800),
        ("4 canned peach halves", "peaches-canned", 250, 390),  # 09238, half with liquid 98 g
        ("1 small sourdough loaf, sliced", "bread-sourdough-white", 300, 500),
        ("12 baby potatoes", "potato", 300, 700), ("12 pearl onions", "onion-brown", 120, 420),
        ("2 mini cucumbers, sliced", "cucumber", 180, 330), ("4 hoagie rolls", "bread-roll", 280, 440),
        ("2 cups cooked farro", "spelt-grain-cooked", 340, 430),  # 20141, cup
        ("1 cup cooked wild rice", "rice-wild-cooked", 150, 180),  # 20089, cup
        ("8 slider buns", "bread-roll", 200, 280), ("20 jumbo pasta shells", "pasta-dry", 130, 200),
        ("2 ears corn, kernels cut off (about 1 1/2 cups)", "sweetcorn-cob", 210, 250),  # 11900, cup kernels 154 g
        ("1 cup Greek yogurt", "yoghurt-greek", 225, 290), ("1/2 cup sunflower seeds", "sunflower-seeds", 50, 80),
    ],
)  # fmt: skip
def test_cups_and_pieces_of_shops(line: str, food: str, low: float, high: float, lines: LineReader) -> None:
    read = lines.read(line)
    assert read.food == food
    assert read.grams is not None
    assert low <= read.grams <= high


def test_a_cup_of_crushed_crisps_is_no_heavier_than_one_of_crushed_crackers(lines: LineReader) -> None:
    """A cup of crackers crushed is 70 g in SR28 (18228); crisps are as light."""
    read = lines.read("1 cup crushed potato chips")
    assert read.food == "potato-crisps"
    assert read.grams is not None
    assert 25 < read.grams <= 70
