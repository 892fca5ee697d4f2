"""The fat of milk, cream and curd by its number alone, as packets print it: `sour cream 18`, `milk 3.2, 1 carton`.

Percentages sold in Europe (Codex CXS 288-1976 for cream, from 10 %; recalled for the usual grades).
"""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.retold.in_one_word import PERCENT

_CREAM = LatePattern(
    r"\b(?P<food>(?:sour )?cream|smietan\w*|smetana|schmand|sahne|rahm|nata|creme fraiche|crema|smantana)"
    r" (?P<fat>10|12|15|18|20|22|24|25|28|30|32|33|35|36|38|40|42|48)(?=\s*(?:$|[,;(]))"
)
_MILK = LatePattern(r"\b(?P<food>milk|kefir) (?P<fat>3\.[2358]|0\.5)(?=\s*[,;(] ?\w)")


def fat_told(text: str) -> str:
    """A plain line whose number behind cream or milk is a percentage of fat, and no amount."""
    return _MILK.sub(_percent, _CREAM.sub(_percent, text))


def _percent(found: re.Match[str]) -> str:
    return f"{found['food']} {found['fat'].replace('.', '')}{PERCENT}"
