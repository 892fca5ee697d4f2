"""A later part of a line that describes its food is no second food: every common food with parts of each sort."""

import itertools

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.matching.names.common_foods import NAMES
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.tables.book import Tables

SAID = (
    "sushi grade", "restaurant quality", "the orange no the white", "great on toast", "nice with cheese",
    "like butter", "needs salt", "colour of carrots", "size of an egg", "next to the milk", "behind the eggs",
    "in the egg box", "in an ice cream tub", "in the butter dish", "egg sized", "salmon pink", "lime green",
    "lemon yellow", "plum coloured", "to go with the rice", "goes in the soup", "pear shaped",
    "tastes of lemon", "in the cheese drawer", "egg shelf", "in with the eggs", "by the milk",
    "hidden behind the beer", "from the fish van", "from the cheese counter", "on the bread board",
    "use with chicken", "under the cheese", "for sunday roast potatoes", "not the chicken one",
    "not with milk", "egg free", "nut free", "too much salt", "lemony", "hard as nuts", "sweet as honey",
    "cold as ice", "kids want pizza", "burger night", "fish friday", "enough for soup", "could be soup",
    "maybe soup", "soup?",
)  # fmt: skip
SHAPES = ("{}, {}", "{} - {}", "{} ({})", "{} 200g, {}")


def test_a_description_is_no_second_food(reader: LarderReader, tables: Tables) -> None:
    lexicon, wrong, count = Lexicon(tables), {}, 0
    told = itertools.cycle(itertools.product(SHAPES, SAID))
    for name in NAMES:
        alone = reader.read(name, "line")
        if alone is None or not alone.lots:
            continue
        own = {lot.food for lot in alone.lots}
        own |= {kin for one in own for kin in lexicon.kin(one)}
        for shape, said in itertools.islice(told, 5):
            line, count = shape.format(name, said), count + 1
            read = reader.read(line, "line")
            assert read is not None
            foods = {lot.food for lot in (*read.lots, *read.standing)}
            if not foods or not foods <= own:
                wrong[line] = sorted(foods)
    assert not [line for line, foods in wrong.items() if foods], wrong
    assert len(wrong) <= 0.01 * count, (count, wrong)


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("half a turnip (the orange one)", {"swede"}),
        ("red peppers, not the green", {"pepper-red"}),
        ("milk by the door, butter", {"milk", "butter"}),
        ("milk, butter", {"milk", "butter"}),
        ("chicken, butter", {"chicken-breast", "butter"}),
        ("bread, cheese", {"bread-wholemeal", "cheddar"}),
        ("milk, almond", {"almond-drink"}),
        ("lamb, lettuce", {"lamb-roast", "lettuce"}),
        ("milk, margarine", {"milk", "margarine"}),
        ("pasta, leftover, dry as anything", {"pasta-cooked"}),
        ("hummus, beetroot", {"hummus-flavoured"}),
        ("jam, sugar free", {"sweets-sugar-free"}),
        ("frozen peas in freezer half bag", {"peas-frozen"}),
        ("ham, opened sunday", {"ham"}),
        ("lime, green beans", {"lime", "green-beans"}),
        ("cheddar, butter, egg box", {"cheddar", "butter", "egg"}),
    ],
)
def test_what_only_looks_like_one_stays(reader: LarderReader, line: str, foods: set[str]) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert {lot.food for lot in read.lots} == foods


@pytest.mark.parametrize("line", ["rice, tastes of garlic", "sausages in onion gravy pot"])
def test_what_may_hold_more_is_not_dropped(reader: LarderReader, line: str) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert read.to_answer is not None or any("onion" in name or "garlic" in name for name in read.names)


def test_days_and_owners_are_no_descriptions(reader: LarderReader) -> None:
    for line, days, owner in (("chicken, use by fri night", 2, None), ("ham, not for me", None, "somebody else")):
        read = reader.read(line, "line")
        assert read is not None
        assert read.lot is not None
        assert read.lot.owner == owner
        assert days is None or read.lot.days_left == days


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("gf pasta (rice/quinoa) 12 oz unopened", "pasta-gluten-free-dry"),
        ("spinach big bag, 2 handfuls gone slimy but rest is ok", "spinach"),
        ("pork rillettes", "liver-pate"),
        ("egusi soup in ice cream tub, freezer (has onion)", "stew-meat"),
        ("cannoli 2, Rosemary's", "cheesecake"),
        ("leftover pesto pasta", "pasta-in-sauce"),
    ],
)
def test_the_nearest_kin_with_more_is_taken_and_said(reader: LarderReader, line: str, food: str) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert [lot.food for lot in read.lots] == [food]
