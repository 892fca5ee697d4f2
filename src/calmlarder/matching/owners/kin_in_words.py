"""Whose a thing is, told by kin of two words, by who speaks, or by whose meal it is for.

`por por's congee`, `nan said hands off`, `ham for ellies sandwiches`.
"""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.owners.given_names import GIVEN_NAMES
from calmlarder.matching.owners.owner_words import KIN, MEMBERS, PEOPLE

# Grandparents and the like who are called twice by one word, in whatever tongue: common usage, no source.
_TWICE = (
    "por", "poh", "po", "gung", "gong", "kung", "mah", "yeh", "yeye", "nai", "lao", "lolo", "baba", "bibi", "dede",
    "mor", "far", "pop", "paw", "maw",
)  # fmt: skip
_CALLED_TWICE = LatePattern(rf"\b({'|'.join(_TWICE)})[ -]\1(?='?s?\b)")
_AH = LatePattern(r"\bah[ -](ma|gong|kong|por|poh|po|yeh|ba|mah|yee|jie)(?='?s?\b)")
_SAID = LatePattern(
    r"[,;(-]? ?\b(?:my |our |the )?([a-z]+) (?:said|says)(?: that)?(?: it'?s| to| we)? "
    r"(?=(?:(?:hands|paws|keep) off|don'?t|do not|leave|not to|off limits|(?:can'?t|cannot) )\b)"
)
_MEAL = (
    r"(?:(?:packed |school |work )?(?:sandwich(?:es)?|lunch(?:es|box(?:es)?)?|wraps?|salads?|toasties?|rolls"
    r"|breakfasts?|porridge|cereal|dinners?|tea|packed lunch|snacks?|smoothies?|omelettes?|sarnies|butties|bottles?))"
)
_FOR_A_MEAL = LatePattern(rf"[,;(-]? ?\bfor (?:my |our |the )?([a-z]{{3,}}?)(?:'s|s'|s) {_MEAL}\b\)?(?=\s*(?:$|[,;]))")


def kin_in_words(text: str) -> str:
    """A plain line with such words put as owners are read."""
    text = _CALLED_TWICE.sub(r"\1\1", text)
    text = _AH.sub(r"ah\1", text)
    text = _SAID.sub(_by_whom, text)
    return _FOR_A_MEAL.sub(_for_whom, text)


def _by_whom(found: re.Match[str]) -> str:
    return f" ({found[1]}'s) " if found[1] in PEOPLE | KIN | GIVEN_NAMES else found[0]


def _for_whom(found: re.Match[str]) -> str:
    who = found[1]
    if who in MEMBERS:
        return " for lunch"  # one of the house, for whom it is kept
    return f" ({who}'s)" if who in GIVEN_NAMES or {who, f"{who}s"} & (PEOPLE | KIN) else found[0]
