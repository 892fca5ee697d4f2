"""The signs and words between the foods of a line."""

import re

from calmlarder.matching.part import SOFT
from calmlarder.matching.words import singular

ENDS = " .-+*&,;/:!?\"'~"
MOST_PARTS = 20  # of a line that is read as a list; a longer one is none: ours
SPLIT = re.compile(
    r"\s*(?:,|;|&|\+|\band\b|\bplus\b|(?<!\w)n(?!\w)|/(?=[a-z])|(?<!\d)/(?!\d)"
    r"|(?<=\w)[.!] (?=[a-z]))\s*"
)
COLON = re.compile(r"\s*(?::|(?<=\w) -+ )\s*")
_AMOUNT_LIKE = re.compile(r"x?\d+[a-z]*|\d+/\d+")


def says_amount(word: str) -> bool:
    return bool(_AMOUNT_LIKE.fullmatch(word)) or singular(word) in SOFT
