"""What a regular expression needs is held by every text that fits it, so that nothing is passed over.

Checked against Python's own `re` without that short cut, on all our lines, and on lines made for each.
"""

import re
from pathlib import Path

import pytest

from calmlarder.matching import amount_phrases, amounts, dates, numbers, owners
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.words import plain

_HERE = Path(__file__).parent
_LINES = sorted(
    {
        plain(line)
        for path in _HERE.glob("fridges/*.txt")
        for line in path.read_text(encoding="utf-8").splitlines()
        if line.strip()
    }
)
_MADE = (
    "carrots from saturday's shop", "kale in the friday box", "beans soaking since monday", "monday's soup",
    "ham 12 mar use by", "milk fri bbe", "tin and a half of beans", "leeks (4)", "4", "half", "ham (half)",
    "rice (a few)",
    "veg box last tuesday", "weekly delivery on monday", "groceries run thursday", "market stall today",
    "spinach 400", "tofu 2 x 350", "eggs bbe 15", "milk until 15", "peas 1kg", "oats 500 g", "order, monday",
)  # fmt: skip
_WITH_NEEDS = [
    (module.__name__.rpartition(".")[2], name, one)
    for module in (amounts, dates, owners)
    for name, one in vars(module).items()
    if isinstance(one, LatePattern) and one.needs != ("",)
] + [("amount_phrases", words, one) for one, words in amount_phrases.PLAINLY if one.needs != ("",)]


def test_there_are_lines_and_patterns_to_compare() -> None:
    assert len(_LINES) > 300
    assert len(_WITH_NEEDS) >= 6


@pytest.mark.parametrize(("module", "name", "late"), _WITH_NEEDS, ids=lambda one: str(one)[:20])
def test_no_text_that_fits_lacks_what_the_pattern_needs(module: str, name: str, late: LatePattern) -> None:
    whole = re.compile(late._written, late._flags)
    fitting = 0
    for line in (*_LINES, *_MADE):
        found = whole.search(line)
        assert (late.search(line) is None) == (found is None), line
        assert late.sub("-", line) == whole.sub("-", line), line
        fitting += found is not None
    assert fitting, f"no line tries {name} of {module}"


def test_grams_without_a_unit_have_such_a_number() -> None:
    fitting = 0
    for line in (*_LINES, *_MADE):
        bare = any(shape.search(line) for shape, _ in amount_phrases.BARE_GRAMS)
        fitting += bare
        assert not bare or amount_phrases.MAY_BE_GRAMS.search(line), line
    assert fitting


def test_a_day_by_its_number_alone_has_a_number_behind_its_word() -> None:
    fitting = 0
    for line in (*_LINES, *_MADE):
        bare = dates._BARE_DAY.search(line)
        fitting += bare is not None
        assert not bare or dates._NUMBER_BEHIND.search(line), line
    assert fitting


@pytest.mark.parametrize("text", ["0", "7", "12", "400"])
def test_plain_digits_are_their_number(text: str) -> None:
    assert numbers.number(text) == float(text)
