"""Which part of a spring onion or a leek is there, told beside it: `scallions (white part used)`, `daepa, green part`.

Their greens hold hardly any fructans, their white part does (`fermentables.csv`), so it matters which one is left.
"""

import re
from itertools import pairwise

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon

_PART = r"(?: (?:parts?|bits?|ends?|tops?|half|halves|leaves|stalks?))?"
_IS = r"(?: (?:is|are|was|were|all|both|already|been|has|have))*"
_WHITES_GONE = LatePattern(
    rf"[,;( -]+(?:the |all |with )*\bwhites?{_PART}{_IS} (?:used(?: up)?|gone|eaten|finished|cut off|off|done)\b\)?"
)
_GREENS = (
    r"(?:greens(?: (?:parts?|bits?|ends?|tops?))?|green (?:parts?|bits?|ends?|tops?|leaves|half)|green only|only green)"
)
_GREENS_THERE = LatePattern(
    rf"[,;( -]+(?:only |just |mostly |the |nearly |all )*\b{_GREENS}"
    r"(?: (?:only|left|mostly|ok|fine|still|good|of it|there|is|are))*\)?(?=\s*(?:$|[,;(]))"
)
_SPRING_ONIONS = frozenset({"spring-onion-white", "spring-onion-green"})
_WORD = LatePattern(r"[^\W\d_]+(?:-[^\W\d_]+)?")


def greens_told(text: str, lexicon: Lexicon) -> str:
    """A plain line that tells of nothing but greens, with the name of those; any other as it stands."""
    bare = _GREENS_THERE.sub(" ", _WHITES_GONE.sub(" ", text))
    if bare == text or (stalk := _stalk(bare, lexicon)) is None:
        return text
    at, name = stalk
    if name == "leek greens" and not _WHITES_GONE.search(text):
        return text  # of a leek that is read elsewhere
    return f"{bare[: at.start()]}{name}{bare[at.end() :]}"


def _stalk(text: str, lexicon: Lexicon) -> tuple[re.Match[str], str] | None:
    """Where the one stalk of a line is named, in whatever tongue, and what its greens are called."""
    words = list(_WORD.finditer(text))
    for first, last in [*pairwise(words), *zip(words, words, strict=True)]:
        name = " ".join(text[first.start() : last.end()].split())
        food = lexicon.spelt.get(name) or lexicon.spelt.get(name.removesuffix("s"), "")
        greens = "spring onion greens" if food in _SPRING_ONIONS else "leek greens" if food.startswith("leek-") else ""
        if greens and (at := re.compile(re.escape(text[first.start() : last.end()])).search(text)):
            return at, greens
    return None
