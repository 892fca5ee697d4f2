"""Names of foods that are verbs too: `Roll into balls`, `wrap it up`, `toast them over a flame`."""

import re

_VERB_TOO = re.compile(r"flour|butter|oil|roll|wrap|squash|top|crumb|bread|toast|cube|mash|pulse", re.IGNORECASE)
_A_CLAUSE_BEGINS = re.compile(r"(?:^|[.;:!?,(]|\b(?:and|then|or|to|now|gently|lightly|tightly))\s*$", re.IGNORECASE)
_AS_A_VERB = re.compile(
    r"\s+(?:(?:it|them|each|the|this|your|all|an?|some|half|up|out|into|around|round|tightly|lightly|loosely|in|over|with"
    r"|to|until|briefly|again)\b|\d)",
    re.IGNORECASE,
)


def may_be_a_verb(text: str, span: tuple[int, int]) -> bool:
    """Whether a clause begins with a word, and what follows is what one does it to."""
    start, end = span
    return bool(_AS_A_VERB.match(text, end) and _A_CLAUSE_BEGINS.search(text[max(0, start - 20) : start]))


def is_a_verb(word: str) -> bool:
    """Whether a name of a food says what one does, too."""
    return _VERB_TOO.fullmatch(word) is not None
