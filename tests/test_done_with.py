"""What a line says is used up, given away or on its way to the bin is no food in the larder; what only sounds so is.

That food which has gone off is thrown away: UK Food Standards Agency, advice on food past its best.
"""

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from gone_or_off import is_gone_or_off


def foods(reader: LarderReader, line: str) -> list[str]:
    reading = reader.read(line, "line 1")
    assert reading is not None
    return [lot.food for lot in reading.lots]


@pytest.mark.parametrize(
    "line",
    [
        "ham, sweaty, chucking it", "broth, off i reckon, will bin", "celery - liquid. straight in the compost",
        "pears, brown inside, going to throw them out", "gnocchi (furry), to be binned", "sprouts for the compost",
        "half a melon, poured it away", "lamb shank, gave it to next door", "yoghurt 500g, fed it to the hens",
        "dates - bin", "spinach (binned)", "swede all soft, threw out",
        "beets, tipped out", "ham (chucked it)", "crab, smells, should go in the bin",
        "basil yellow → throw", "spinach => compost", "cheddar end, mouldy, bin", "cooked beans, a bit bubbly",
    ],
)  # fmt: skip
def test_what_is_thrown_or_given_is_not_added(line: str, reader: LarderReader) -> None:
    assert is_gone_or_off(reader, line)


@pytest.mark.parametrize(
    "line",
    [
        "cheesecake - we finished it yesterday", "lemons, used the last one in the dressing", "brie, ate it",
        "butter, used it all in the scones", "used the last of the flour", "crumble, dad scoffed the lot sorry",
        "pork mince - Niamh used it",
        "salmon (used it yesterday)", "flour - used it sunday for scones", "brie (eaten)", "cream (all gone)",
    ],
)  # fmt: skip
def test_what_is_used_up_is_not_there(line: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line 1")
    assert reading is not None
    assert not reading.lots
    assert reading.problem is not None


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("ham 100g, finish it today", "ham"), ("chorizo, half eaten", "chorizo"), ("grapes, few binned", "grapes"),
        ("kale, outer leaves in the compost", "kale"), ("finish off the ham", "ham"),
        ("beef chuck 500g", "beef-stewing"),
        ("half a fuzzy melon", "winter-melon"), ("stilton wants eating", "stilton"), ("eggs 6, used 2", "egg"),
        ("milk (half gone)", "milk"), ("bread, 2 slices gone", "bread-wholemeal"),
        ("chicken breast to be eaten today", "chicken-breast"), ("kimchi bubbly", "kimchi"),
        ("strawberries (1 fuzzy)", "strawberry"), ("2 lb cheddar, ends moldy", "cheddar"),
    ],
)  # fmt: skip
def test_what_only_sounds_so_is_there(line: str, food: str, reader: LarderReader) -> None:
    assert foods(reader, line) == [food]


def test_what_is_bad_of_a_line_leaves_the_rest(reader: LarderReader) -> None:
    reading = reader.read("spinach slimy binned, 3 carrots", "line 1")
    assert reading is not None
    assert [lot.food for lot in reading.lots] == ["carrot"]
    assert any("spinach not added" in told for told in reading.assumed)
