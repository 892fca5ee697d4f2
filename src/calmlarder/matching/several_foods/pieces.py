"""The signs and words between the foods of a line."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.words import singular
from calmlarder.matching.part import SOFT

ENDS = " .-+*&,;/:!?\"'~"
MOST_PARTS = 20  # of a line that is read as a list; a longer one is none: ours
SPLIT = LatePattern(
    r"\s*(?:,|;|&|\+|\band\b|\bplus\b|(?<!\w)n(?!\w)|/(?=[a-z])|(?<!\d)/(?!\d)"
    r"|(?<=\w)[.!] (?=[a-z]))\s*"
)
COLON = LatePattern(r"\s*(?::|(?<=\w) -+ )\s*")
_AMOUNT_LIKE = LatePattern(r"x?\d+[a-z]*|\d+/\d+")


def says_amount(word: str) -> bool:
    return bool(_AMOUNT_LIKE.fullmatch(word)) or singular(word) in SOFT
