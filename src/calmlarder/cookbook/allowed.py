"""What a line allows in its food's place with words of its own: in a bracket, or behind `or` with an amount."""

import re
from typing import NamedTuple

from calmlarder.cookbook.line_amount import take_quantity
from calmlarder.cookbook.wording import names_nothing
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS

_COUNT = (
    rf"(?:[\d½¼¾⅓⅔⅛][\d./]*|half|{'|'.join(word for word in WHOLE_WORDS if len(word) > 2)}"
    r"|an?(?= (?:tin|can|jar|packet|pack|pouch|carton|bag)\b))"
)
_WHO = (
    r"(?:you'?re |you are |using |a |it'?s )?(?:vegetarians?|vegans?|gluten[- ]free|dairy[- ]free|coeliacs?|celiacs?)"
)
# `(or 1 thinly sliced potato)`, `(feta works too)`, `(soy for vegetarians)`.
_IN_BRACKETS = tuple(
    re.compile(rf"\s*\({inside}\)", re.IGNORECASE)
    for inside in (
        r"(?:or|sub(?:stitute)?|alternatively,?)(?: use| with| for)? (?P<other>[^()]{2,80})",
        r"(?:or )?(?P<other>[^()]{2,40}?)(?: also| will)? (?:works?|does?|(?:is|are) fine)"
        r"(?: too| as well| instead)?",
        rf"(?:or )?(?P<other>[^()]{{2,40}}?) (?:if|for) {_WHO}[^()]{{0,20}}",
    )
)
_ANEW = re.compile(rf"(?P<line>[^()]{{3,}}?),?\s+or\s+(?P<other>(?:a |an |about )?{_COUNT}\s[^()]+)", re.IGNORECASE)
_ITS_STATES = frozenset({"frozen", "dried", "canned", "tinned", "fresh", "chopped", "cooked"})
_FOR_WHOM = re.compile(rf"\s+(?:if|for) {_WHO}\b.*", re.IGNORECASE)


class Allowed(NamedTuple):
    """A line without what it allows besides, and that."""

    line: str
    other: str


def what_is_allowed(line: str) -> Allowed | None:
    """A line parted from what it allows in its food's place; None for every other line."""
    for pattern in _IN_BRACKETS:
        found = pattern.search(line)
        if found is not None:
            rest = f"{line[: found.start()]}{line[found.end() :]}".strip()
            return Allowed(rest, _FOR_WHOM.sub("", found["other"]).strip())
    anew = _ANEW.fullmatch(line)
    return Allowed(anew["line"].strip(), anew["other"].strip()) if anew is not None else None


def is_so_much_of_it(other: str) -> bool:
    """Whether what a line allows is the same food by another measure: `half a tin`, `2 cans`, `a handful of frozen`."""
    found = take_quantity(other)
    measured = found.main is not None and found.main.unit is not None
    return measured and (names_nothing(found.rest) or found.rest in _ITS_STATES)


def with_amount_of(line: str, other: str) -> str:
    """What a line allows, with the amount of the line where it has none of its own (`1 parsley root (or parsnip)`)."""
    rest = take_quantity(line).rest
    if re.search(r"\d", other) or not line.endswith(rest):
        return other
    return f"{line[: len(line) - len(rest)]}{other}"
