"""What a line says as it was spoken: pauses, days as words, and a word put right at once (`mints, no, mince`)."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import singular

_PAUSE = LatePattern(
    r"\b(since|from|by|on|until|till|about|a|the|some|and|of|with|is|its|like)[ ,]+"
    r"(?:em+|er+m?|u[hm]+m*|ehm|hmm+)\b[ ,]*"
)
_FIRST_PAUSE = LatePattern(
    r"^(?:(?:em+|er+m?|u[hm]+m*|ehm|hmm+|okay so|ok so|right so|so yeah|okay|now then)[ ,.]+)+(?=\w)"
)
_TENS = {"twenty": 20, "thirty": 30}
_ORDINALS = {
    "first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9,
    "tenth": 10, "eleventh": 11, "twelfth": 12, "thirteenth": 13, "fourteenth": 14, "fifteenth": 15, "sixteenth": 16,
    "seventeenth": 17, "eighteenth": 18, "nineteenth": 19, "twentieth": 20, "thirtieth": 30,
}  # fmt: skip
_DAY_IN_WORDS = LatePattern(
    r"\b(use by|best before|best by|bbe?|ub|exp(?:ires|iry)?(?: on)?|dated?|sell by|good (?:un)?til(?:l)?|until|till"
    r"|opened(?: on)?|made(?: on)?|bought(?: on)?|cooked(?: on)?|from|since|goes off(?: on)?)(?: date)?(?: is| says)? "
    rf"(?:on )?the (?:(twenty|thirty)[ -])?({'|'.join(_ORDINALS)})\b"
    r"(?! (?:half|one|bag|box|of (?!jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)))"
)
_SAYS = LatePattern(
    r"[,;(]? ?\b(?:that |which |it |the (?:label|date|lid|pack|packet) )?says? (?=use by|best|ub\b|bbe?\b|exp|sell by)"
)
# `mints no mince`: the second word is meant, where both sound alike.
_RIGHTED = LatePattern(
    r"\b([a-z]{4,})[ ,.-]+(?:no|sorry|i mean|no sorry|no i mean|no wait|wait no)[ ,.-]+([a-z]{4,})\b"
)


def as_written(text: str, lexicon: Lexicon) -> str:
    """A plain line as it would be written; all others stay as they are."""
    text = _FIRST_PAUSE.sub("", _PAUSE.sub(r"\1 ", text))
    text = _DAY_IN_WORDS.sub(_day, _SAYS.sub(" ", text))
    return _RIGHTED.sub(lambda found: _righted(found, lexicon), text)


def _day(found: re.Match[str]) -> str:
    return f"{found[1]} the {_TENS.get(found[2], 0) + _ORDINALS[found[3]]}th"


def _righted(found: re.Match[str], lexicon: Lexicon) -> str:
    """The food that was meant, where its word sounds as the one before does; else what stands there."""
    wrong, meant = found[1], found[2]
    named = meant in lexicon.alone or singular(meant) in lexicon.alone
    return meant if named and wrong != meant and _sound(wrong) == _sound(meant) else found[0]


def _sound(word: str) -> str:
    """The sound of a word, roughly: its consonants in the order in which they are heard, and whether a vowel leads."""
    heard = re.sub(r"c(?=[eiy])|ts|z", "s", re.sub(r"ph", "f", re.sub(r"ck?|q", "k", re.sub(r"c(?=[eiy])", "s", word))))
    return re.sub(r"(.)\1+", r"\1", heard[0] + re.sub(r"[aeiouwyh]", "", heard[1:]))
