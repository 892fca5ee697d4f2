"""What a part of a line says of its food's state or end is no food: every common food with phrases of each sort.

Wherever such a part stands, no other food enters, what is gone is not added and said so, and what is not stays.
"""

import itertools

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.matching.names.common_foods import NAMES
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.tables.book import Tables

ENDS = (
    "compost now", "in the compost", "compost", "binned", "all gone", "eaten", "mouldy", "slimy", "mush", "mostly mush",
    "all mush", "pure mush", "gone to mush", "goo", "sludge", "turned to liquid", "rotten", "gone bad", "green fuzz",
    "growing fur", "stinking", "for the bin", "toast now", "soup now", "history", "died", "past saving", "a goner",
    "had to go", "chucked", "thrown out", "used up", "gone off", "smells off", "beyond saving", "done for", "rip",
)  # fmt: skip
STATES = (
    "not so fresh", "not very fresh", "not the freshest", "a bit tired", "limp", "wilting", "on the way out",
    "going to seed", "bit manky round the edges", "past its best", "rather sad", "on its last legs", "very fresh",
    "super fresh", "still crisp", "fresh from the market", "holding up great", "looks fine", "still good", "lovely",
    "needs using", "flowering a little", "getting soft", "barely alive",
)  # fmt: skip
BEHIND = (
    "{} {}", "{}, {}", "{} - {}", "{} ({})", "{} is {}", "{} are {}", "{}: {}", "{}, 200g, {}", "200g {}, {}",
    "{}, bag, {}", "bag of {} ({})",
)  # fmt: skip
FIRST = ("binned: {}", "in the bin: {}", "gone: {}", "rip {}", "thrown out {}", "used up the {}")
MOST_UNLIKE = 0.01  # of the lines; measured when this was written: see the assertions' messages


@pytest.fixture(scope="module")
def lexicon(tables: Tables) -> Lexicon:
    return Lexicon(tables)


def of_itself(reader: LarderReader, lexicon: Lexicon) -> dict[str, frozenset[str]]:
    """The foods that common names are by themselves, with their kin."""
    alone = {name: reader.read(name, "line") for name in NAMES}
    foods = {name: {lot.food for lot in read.lots} for name, read in alone.items() if read is not None and read.lots}
    return {name: frozenset(own | {kin for one in own for kin in lexicon.kin(one)}) for name, own in foods.items()}


def what_is_wrong(reader: LarderReader, line: str, own: frozenset[str], is_gone: bool) -> str:
    """What is read otherwise than it should be; nothing where all is as it should be."""
    read = reader.read(line, "line")
    assert read is not None
    foods = {lot.food for lot in (*read.lots, *read.standing)}
    if not foods <= own:
        return f"enters {sorted(foods - own)}"
    if is_gone:
        return "" if read.problem is not None else "stays, or is asked"
    return "" if foods else "lost, or asked"


@pytest.mark.long
def test_what_is_said_to_be_gone_is_not_added(reader: LarderReader, lexicon: Lexicon) -> None:
    foods = of_itself(reader, lexicon)
    told = itertools.cycle(itertools.product(BEHIND, ENDS))
    lines = [
        (shape.format(name, said), own) for name, own in foods.items() for shape, said in itertools.islice(told, 9)
    ]
    lines += [
        (shape.format(name), own) for (name, own), shape in zip(foods.items(), itertools.cycle(FIRST), strict=False)
    ]
    wrong = {line: found for line, own in lines if (found := what_is_wrong(reader, line, own, is_gone=True))}
    assert not [line for line, found in wrong.items() if "enters" in found], wrong
    assert len(wrong) <= MOST_UNLIKE * len(lines), wrong


@pytest.mark.long
def test_a_state_is_no_other_food(reader: LarderReader, lexicon: Lexicon) -> None:
    foods = of_itself(reader, lexicon)
    told = itertools.cycle(itertools.product(BEHIND, STATES))
    lines = [
        (shape.format(name, said), own) for name, own in foods.items() for shape, said in itertools.islice(told, 9)
    ]
    wrong = {line: found for line, own in lines if (found := what_is_wrong(reader, line, own, is_gone=False))}
    assert not [line for line, found in wrong.items() if "enters" in found], wrong
    assert len(wrong) <= MOST_UNLIKE * len(lines), wrong


@pytest.mark.parametrize(
    "line",
    [
        "cilantro's compost now", "basil's gone slimy", "chicken's off", "the lettuce's mush",
        "rosemary's all brown and dead",
    ],
)  # fmt: skip
def test_a_short_is_behind_a_food_tells_no_owner(reader: LarderReader, line: str) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert all(lot.owner is None and lot.condition for lot in read.lots)


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("eggs, mush, spinach", {"egg", "mushroom-button", "spinach"}),
        ("compost bags, 2 leeks", {"leek-whole", "leek-green", "leek-white"}),
        ("tomato soup, 1 tin", {"soup-tomato"}),
        ("2 slices toast, butter", {"bread-white", "butter"}),
        ("half of the rocket is mush", {"rocket"}),
        ("crispy onions", {"onion-fried-crisp"}),
    ],
)
def test_the_same_words_tell_foods_elsewhere(reader: LarderReader, line: str, foods: set[str]) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert {lot.food for lot in (*read.lots, *read.standing)} <= foods


@pytest.mark.parametrize(
    ("line", "days"),
    [
        ("tempeh exp'd 3/8", -3), ("tempeh expd 3/8 still sealed", -3), ("yoghurt exp'd yesterday", -1),
        ("yoghurt went out of date mon", -2), ("veal cutlets pounded thin, 4 of em, 3/12", 1), ("chicken 3/12", 1),
        ("brown rice cooked, mon nite - 2 cups", -1), ("rice last nite's", 0), ("leftover pizza 2 nights ago", 0),
        ("tempeh expires 14/03", 3), ("salmon, should be finished by Fri", 2), ("hummus day 3", 0),
    ],
)  # fmt: skip
def test_days_as_they_are_texted(reader: LarderReader, line: str, days: int) -> None:
    """On 11 March 2026, a Wednesday: of two ways to read a day of a month the near one counts."""
    read = reader.read(line, "line")
    assert read is not None
    assert read.lot is not None
    assert read.lot.days_left == days


def test_a_meal_s_night_is_no_label_of_fresh_food(reader: LarderReader) -> None:
    read = reader.read("fish mon nite", "line")
    assert read is not None
    assert read.lot is not None
    assert read.lot.days_left is not None
    assert read.lot.days_left <= 2
