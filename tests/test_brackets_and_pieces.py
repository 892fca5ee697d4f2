"""What a bracket or a few words behind tell of a food's filling, what a thing lies in, and large and small ones.

The lines are ours; what a cook would say of each is common practice, no source.
"""

from datetime import date

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables

TODAY = date(2026, 3, 11)


def lots(tables: Tables, line: str) -> tuple[Lot, ...]:
    reading = LarderReader(tables, TODAY).read(line, "line 1")
    assert reading is not None
    assert reading.problem is None
    return reading.lots


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        # what is said to be in a made food is no lot of its own
        ("arrabbiata jar opened sun (garlic)", ["pasta-sauce-tomato"]),
        ("pesto from shop, half, garlic inside", ["pesto"]),
        ("ramen broth, garlic in there", ["stock-meat"]),
        ("dal from monday (garlic, onion)", ["dal-cooked"]),
        ("dumplings frozen pork & chive 20 pcs", ["dumplings"]),
        ("potstickers frozen chicken & leek x8", ["dumplings"]),
        ("sausage rolls 6 (pork & onion)", ["sausage-roll"]),
        ("6 samosas and chutney", ["spring-rolls", "pickle-sweet"]),
        ("lasun (garlic)", ["garlic"]),
        ("small onions (sambar onion) 200 gm", ["shallot"]),
        # a stick of bread, and the fish where there is no bread
        ("bread from yesterday, barra", ["bread-white"]),
        ("loaf, barra", ["bread-white"]),
        ("barra 2 fillets", ["fish-white"]),
        # foods of one line, each with its own amount or its own bracket
        ("black beans 1 can, pinto 1 can", ["black-beans-canned", "pinto-beans-canned"]),
        ("garlic 2 bulbs ginger 1", ["garlic", "ginger"]),
        ("garlic 2 bulbs, ginger 1", ["garlic", "ginger"]),
        ("bananas 3 apples 4", ["banana-ripe", "apple"]),
        ("cumin, chili powder (has garlic)", ["cumin", "chilli-powder-mix"]),
        ("curry powder, chutney (mrs next door made it)", ["curry-powder", "pickle-sweet"]),
        ("tofu 2 pieces (white, firm)", ["tofu-firm"]),
        ("2 pieces of tofu", ["tofu-firm"]),
        ("tofu pieces pack", ["tofu-marinated"]),
        # names of other kitchens
        ("gari small left", ["garri"]),
        ("gari (pickled ginger)", ["ginger-pickled"]),
        ("peanut koot small dabba", ["peanuts"]),
        ("queso jar half", ["queso-dip"]),
        ("queso block", ["monterey-jack"]),
        ("horta boiled, from yesterday", ["dandelion-greens-boiled"]),
        # what names a food stays one
        ("bulb (garlic)", ["garlic"]),
        ("powder (garlic)", ["garlic-powder"]),
        ("6 toms + 3 cherry", ["tomato", "tomato-cherry"]),
    ],
)
def test_a_line_gives_what_is_there(tables: Tables, line: str, foods: list[str]) -> None:
    """No lot that nobody has, and none lost."""
    assert [lot.food for lot in lots(tables, line)] == foods


@pytest.mark.parametrize(
    "line",
    [
        "crackers (onion)",
        "rice (garlic)",
        "cumin, rice (has garlic)",
        "cheese (garlic)",
        "black olives (garlic)",
        "crushed tomato tin (garlic)",
        "bruschetta topping (garlic)",
        "wonton frozen pork and prawn 12",
        "tinned tomatoes (garlic & onion)",
        "kebab meat (onion, garlic)",
        "prawns (garlic butter)",
    ],
)
def test_what_does_not_hold_it_as_a_rule_is_asked(tables: Tables, line: str) -> None:
    """Garlic in what has none by the tables is a question, and no plain rice."""
    assert lots(tables, line) == ()


@pytest.mark.parametrize(
    ("line", "low", "high"),
    [
        ("white onion, half, in a zip bag", 40, 90),
        ("red onion, half, in a tub", 40, 90),
        ("lemon, half, in a bag", 25, 70),
        ("3 carrots in a bag", 150, 300),
        ("1 massive baking potato", 250, 450),
        ("a huge carrot", 90, 200),
        ("broccoli, one wee head", 150, 270),
        ("wee cauliflower", 200, 450),
        ("2 little gem", 150, 300),
        ("lettuce cogollos 2", 150, 300),
        ("bread, barra", 200, 300),
        ("yoghurt tubes x6", 250, 400),
        ("olives small bowl", 50, 130),
        ("grapes lots", 500, 1000),
        ("half a tin of chickpeas", 100, 140),
        ("lasagne slice", 200, 450),
        ("manchego wedge", 60, 300),
        ("broccoli, one wee head, yellowing a bit", 150, 270),
        ("jaggery lump", 50, 300),
        ("2 lumps of gur", 100, 500),
        ("tofu 2 pieces (white, firm)", 150, 600),
        ("gari small left", 50, 400),
    ],
)
def test_pieces_weigh_what_such_pieces_do(tables: Tables, line: str, low: float, high: float) -> None:
    """Grams of one thing, and not of the bag it lies in."""
    (lot,) = lots(tables, line)
    assert low <= lot.grams <= high
