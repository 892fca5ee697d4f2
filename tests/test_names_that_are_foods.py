"""Whose a thing is where the name is a food's word too: capital letter and 's decide, and a state unmakes it."""

import itertools

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.matching.names.common_foods import NAMES
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.tables.book import Tables

THEIRS = (
    "{} for Uncle Stan", "{}, for the small ones", "{} keep for our Gethin", "{} (River's)", "River's {}",
    "{}, that's for Uncle Stan when he comes by", "{} 200g, Rosemary's", "{} (Rosemary's)", "Rosemary's {}",
    "{} - Rosemary's", "{} belongs to Basil", "Basil's {}", "{} for Ginger", "{}, Olive's", "{} is Sage's", "{} (Beth)",
    "{} are Gethin's", "{} that one is Sylvain's", "Aunt Peg's {}", "{} property of Tariq", "{} for the twins",
    "Tariq has {}", "Con's {}", "{} saved for Tariq", "my flatmate Ana's {}",
)  # fmt: skip
OURS = (
    "{} from Rosemary's garden", "{} from Tariq", "{} Tariq gave me", "{} for the pie", "{} my mom's recipe",
    "{} thanks to Ana", "{} for dinner with Ana", "{} for us", "{} off Uncle Stan", "{}, Con's recipe",
)  # fmt: skip


@pytest.fixture(scope="module")
def foods(reader: LarderReader, tables: Tables) -> dict[str, frozenset[str]]:
    """The foods that common names are by themselves, with their kin."""
    lexicon = Lexicon(tables)
    alone = {name: reader.read(name, "line") for name in NAMES}
    own = {name: {lot.food for lot in read.lots} for name, read in alone.items() if read is not None and read.lots}
    return {name: frozenset(one | {kin for food in one for kin in lexicon.kin(food)}) for name, one in own.items()}


def unlike(reader: LarderReader, line: str, own: frozenset[str], is_theirs: bool) -> str:
    read = reader.read(line, "line")
    assert read is not None
    if not read.lots or not {lot.food for lot in read.lots} <= own:
        return f"reads {[lot.food for lot in read.lots]}"
    return "" if all(bool(lot.owner) == is_theirs for lot in read.lots) else f"owner {read.lots[0].owner}"


@pytest.mark.long
@pytest.mark.parametrize("is_theirs", [True, False])
def test_every_common_food_keeps_its_owner(
    reader: LarderReader, foods: dict[str, frozenset[str]], is_theirs: bool
) -> None:
    shapes = itertools.cycle(THEIRS if is_theirs else OURS)
    lines = [(shape.format(name), own) for name, own in foods.items() for shape in itertools.islice(shapes, 4)]
    wrong = {line: found for line, own in lines if (found := unlike(reader, line, own, is_theirs))}
    assert len(wrong) <= 0.01 * len(lines), wrong


@pytest.mark.parametrize(
    ("line", "foods"),
    [
        ("Basil, Rosemary and Sage", {"basil", "rosemary", "sage"}),
        ("Shepherd's pie", {"shepherds-pie"}),
        ("Jacob's cattle beans", {"kidney-beans-dry"}),
        ("Goat's Cheese", {"goat-cheese"}),
        ("Lamb's lettuce", {"lettuce"}),
        ("Rosemary 1 bunch", {"rosemary"}),
    ],
)
def test_a_food_s_own_name_is_nobody_s(reader: LarderReader, line: str, foods: set[str]) -> None:
    read = reader.read(line, "line")
    assert read is not None
    assert {lot.food for lot in read.lots} == foods
    assert all(lot.owner is None for lot in read.lots)


@pytest.mark.parametrize(
    ("whose", "owner"), [("{}, Priya's", "priya"), ("Owen's {}", "owen"), ("{} - Lena's, not mine", "lena")]
)
@pytest.mark.parametrize("thing", ["leftover curry", "vegan brie", "mushroom stew", "cashew sauce"])
def test_what_is_somebody_elses_is_set_aside_and_nobody_is_asked_which_kind(
    reader: LarderReader, thing: str, whose: str, owner: str
) -> None:
    reading = reader.read(whose.format(thing), "test")
    assert reading is not None
    assert [lot.owner for lot in reading.lots] == [owner]
    assert "kind not asked, as it is somebody else's" in reading.assumed
    bare = reader.read(thing, "test")
    assert bare is not None
    assert not bare.lots  # of one's own it is asked


@pytest.mark.parametrize("line", ["Owen's things", "Lena's something"])
def test_a_mere_thing_of_somebody_else_is_no_food(reader: LarderReader, line: str) -> None:
    reading = reader.read(line, "test")
    assert reading is None or not reading.lots
