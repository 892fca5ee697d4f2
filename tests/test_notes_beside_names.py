"""An exact name takes a strange word as a note (design, section 4), unless the word decides. The lines are ours."""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.meaning import Reading


def read(line: str, reader: LarderReader) -> Reading:
    found = reader.read(line, "line 1")
    assert found is not None
    return found


def foods(line: str, reader: LarderReader) -> list[str]:
    return [lot.food for lot in read(line, reader).lots]


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("huevos camperos 6", "egg"), ("nye poteter 1 kg", "potato"), ("patatas nuevas bolsa", "potato"),
        ("falafel fertig", "falafel"), ("Senf mittelscharf", "mustard"), ("salvia sul balcone", "sage"),
        ("champignons braun", "mushroom-button"), ("lime juice bottle thing", "lime-juice"),
        ("carton of veg soup", "soup-vegetable"), ("plantain 2, very ripe", "plantain-ripe"),
        ("noodle pot, curry flavour", "noodles-instant-seasoned"), ("iced coffee", "coffee-latte"),
        ("gf pasta, half a bag (fusilli)", "pasta-gluten-free-dry"), ("ice cream, butter pecan", "ice-cream"),
        ("rice? scratch that, it's couscous", "couscous-dry"), ("seasoning cubes (veg one)", "stock-cube-onion"),
        ("farina di polenta", "polenta-dry"), ("oat creamer", "oat-cream"),
    ],
)  # fmt: skip
def test_a_strange_word_beside_an_exact_name_is_a_note(line: str, food: str, reader: LarderReader) -> None:
    assert foods(line, reader) == [food]


@pytest.mark.parametrize(
    "line",
    [
        # seasoned, filled, smoked, breaded, pressed: another food, or one that may hold garlic
        "peito de frango temperado",
        "kip gekruid",
        "aceitunas rellenas",
        "huevos fritos 2",
        "tomates secos",
        # another dish of the same word, in tongues where the food stands last or gives its name to it
        "almond creamer",
        "soya glorp",
    ],
)
def test_a_word_that_may_make_another_food_is_asked(line: str, reader: LarderReader) -> None:
    found = read(line, reader)
    assert not found.lots
    assert found.match.outcome == "ask"


def test_what_is_taken_for_granted_is_shown(reader: LarderReader) -> None:
    assert read("amendoim torrado", reader).assumed == ("peanuts",)


def test_foods_side_by_side_pass_over_no_name(reader: LarderReader) -> None:
    assert foods("sumac pul biber cumin", reader) == ["sumac", "chilli-flakes", "cumin"]


def test_so_many_left_of_a_pack_are_pieces(reader: LarderReader) -> None:
    few, pieces = (
        read(line, reader).lots[0] for line in ("pkg of corn tortillas (maybe 14 left)", "14 corn tortillas")
    )
    assert few.grams == pieces.grams


@pytest.mark.parametrize(
    "line",
    [
        "bait - squid - NOT FOOD",
        "eye drops, not food",
        "face masks (cosmetic)",
        "herring (bait!!)",
        "holy water",
        "breast milk 4 oz x 5",
    ],
)
def test_what_is_said_to_be_no_food_is_no_lot(line: str, reader: LarderReader) -> None:
    found = read(line, reader)
    assert not found.lots
    assert found.problem is not None
    assert "nothing that people eat" in found.problem.what


@pytest.mark.parametrize(("line", "owner"), [("rashers are mam's, not mine", "mam"), ("the milk is dad's", "dad")])
def test_whose_it_is_stands_behind_the_food(line: str, owner: str, reader: LarderReader) -> None:
    assert [lot.owner for lot in read(line, reader).lots] == [owner]


def test_a_heading_holds_for_the_lines_below_it(reader: LarderReader) -> None:
    lines = [
        "milk",
        "Freezer:",
        "peas # last bag",
        "bread",
        "",
        "eggs",
        "NOT MINE",
        "cheddar",
        "our rice",
        "mine:",
        "tofu",
    ]
    lots = {lot.food: lot for reading in reader.read_all(lines, "list") for lot in reading.lots}
    assert [food for food, lot in lots.items() if lot.place == "freezer"] == ["peas-frozen", "bread-wholemeal"]
    assert [food for food, lot in lots.items() if lot.owner] == ["cheddar"]
    assert lots["bread-wholemeal"].line == "bread, in the freezer"  # it says so by itself from now on
