"""Words for a state that are a letter wrong, made at random from a seed: what is mouldy is never taken as fresh.

The slips are those of Damerau (1964), as for the names of foods (test_slips).
"""

import random
import re
from collections import Counter
from pathlib import Path

import pytest

from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.matching.conditions.misspelt_conditions import conditions_mended
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.plain_words import PLAIN_WORDS
from calmlarder.tables.book import Tables
from test_slips import slipped

TO_BIN = ("mouldy", "slimy", "rotten", "furry", "rancid", "curdled")
USE_SOON = ("wilted", "yellowing", "bendy", "wrinkled")
FOODS = ("carrots", "spinach", "tomatoes", "strawberries", "peppers", "milk", "chicken thighs", "mushrooms")
SLIPS = 500
MOST_FRESH = 0.02  # measured when this was written: 10 of 500 taken as fresh, all English words (`fury`); 465 before
ROOT = Path(__file__).parents[1]


def lines() -> list[tuple[str, bool]]:
    """Foods with a condition that is a letter wrong, before or behind, and whether it means the bin."""
    chance = random.Random(1964)
    found: list[tuple[str, bool]] = []
    while len(found) < SLIPS:
        word = chance.choice(TO_BIN + USE_SOON)
        wrong, food = slipped(word, chance), chance.choice(FOODS)
        if wrong != word and wrong not in PLAIN_WORDS:
            line = f"{wrong} {food}" if chance.random() < 0.5 else f"{food}, {wrong}"
            found.append((line, word in TO_BIN))
    return found


def test_hardly_any_condition_that_is_a_letter_wrong_is_taken_as_fresh(reader: LarderReader) -> None:
    count = Counter[str]()
    for line, is_bin in lines():
        reading = reader.read(line, "line")
        assert reading is not None
        if not reading.lots:
            count["not added" if reading.problem else "asked"] += 1
            assert is_bin or not reading.problem, line
        else:
            count["shown" if all(lot.condition for lot in reading.lots) else "fresh"] += 1
    assert count["fresh"] <= MOST_FRESH * SLIPS, count
    assert count["asked"] <= MOST_FRESH * SLIPS, count


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("mouldey strawberrys", "mouldy"),
        ("slimey spinach", "slimy"),
        ("rottn tomatos", "rotten"),
        ("moldey bread", "moldy"),
        ("furrry peppers", "furry"),
        ("ham smels off", "smells off"),
        ("milk gone of", "gone bad"),
    ],
)
def test_what_may_be_bad_is_not_added_and_told(line: str, said: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert not reading.lots
    assert reading.problem is not None
    assert said in reading.problem.what


@pytest.mark.parametrize(
    ("line", "food", "condition"),
    [
        ("brocoli going yelowing", "broccoli", "yellowing"),
        ("blakc banana", "banana-ripe", "black"),
        ("carrots, bendyy", "carrot", "bendy"),
    ],
)
def test_what_has_to_go_soon_has_a_day(line: str, food: str, condition: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    (lot,) = reading.lots
    assert lot.food == food
    assert condition in (lot.condition or "")
    assert lot.days_left == 1


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("carrots use by mondy", "carrot"),  # a day, and not mouldy
        ("molly's carrots", "carrot"),
        ("packet of carrots", "carrot"),
        ("not mouldey carrots", "carrot"),
    ],
)
def test_what_is_no_condition_stays_what_it_is(line: str, food: str, reader: LarderReader) -> None:
    reading = reader.read(line, "line")
    assert reading is not None
    assert [(lot.food, lot.condition) for lot in reading.lots] == [(food, None)]


def test_no_ordinary_word_beside_carrots_is_a_condition(tables: Tables) -> None:
    """The words of our own papers for readers: English that was written without a thought of conditions."""
    lexicon = Lexicon(tables)
    papers = (ROOT / "README.md", ROOT / "DEVELOPERS.md", *(ROOT / "ingredient_tables").glob("c*.csv"))
    text = " ".join(re.sub(r"`[^`\n]*`", " ", path.read_text(encoding="utf-8")) for path in papers)
    words = sorted(set(re.findall(r"(?<![\w'])[a-z]{4,}(?![\w'])", text.casefold())))
    assert len(words) > 1500
    words.remove("wilt")  # a verb there; beside carrots it is `wilted`, typed short
    assert [word for word in words if conditions_mended(f"{word} carrots", lexicon) != f"{word} carrots"] == []
