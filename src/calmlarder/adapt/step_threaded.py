"""Green tops cannot be threaded on skewers as wedges of onion are: they are fried beside, and served with them."""

import re

from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_named_once import without_one

_SKEWERS = re.compile(r"\b(?:thread|skewer|push|slide|spear)\w*\b[^.;]*\b(?:skewers?|sticks?|kebabs?)\b", re.IGNORECASE)
_GREENS = re.compile(r"\b(?P<the>the )?(?P<name>(?:leek|spring onion) greens)\b(?: \[[^\]]*\])?", re.IGNORECASE)
_FIRST_OF_TWO = re.compile(r"(?:,? and |, )(?:the )?(?=[a-z])")
_LAST_OF_TWO = re.compile(r"(?:,? and |, )$")
_THEY_ARE = re.compile(
    r"(?:,? and|,? until) (?:the )?(?:leek|spring onion) greens (?:are|is|look|turn) [a-z ]+(?=[.,;]|$)", re.IGNORECASE
)


def fried_beside_skewers(step: str) -> str:
    """A changed step with green tops fried in a pan, where it threads them with other things."""
    start = 0
    for end in (*(one.end() for one in SENTENCE_ENDS.finditer(step)), len(step)):
        found = _GREENS.search(step, start, end)
        if found is not None and _SKEWERS.search(step[start:end]) and (rest := _without(step, found)) is not None:
            beside = f"Fry the {found['name']} in a little oil for 5 minutes, until soft, and serve them beside."
            return f"{_THEY_ARE.sub('', rest).rstrip()} {beside}"
        start = end
    return step


def _without(step: str, found: re.Match[str]) -> str | None:
    """The step without them, where something else of their list stays."""
    before, behind = step[: found.start()], step[found.end() :]
    if _LAST_OF_TWO.search(before):
        return without_one(step, found.span())
    follows = _FIRST_OF_TWO.match(behind)
    return f"{before}the {behind[follows.end() :]}" if follows else None
