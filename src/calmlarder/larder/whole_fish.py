"""Fish as they swim: what one weighs in a shop, and how much of it is eaten.

Weights are those of a fish as fishmongers sell it for one or two (common practice, no source). Of a round fish with
head and guts 50 to 60 in 100 are flesh, of one with a large head and of flat fish 40 to 45: FAO Fisheries Technical
Paper 309, Yield and nutritional value of the commercially more important fish species, 1989 (recalled).
"""

import re

from calmlarder.matching.amounts.numbers_and_fractions import Span
from calmlarder.matching.late_patterns import LatePattern

_EATABLE = 0.55
_OF_A_LARGE_HEAD = 0.45
_ANY_FISH_G = Span(200, 350, 600)
# Grams of one, least to most, and whether it is flat or has a large head.
_KINDS: tuple[tuple[str, Span, bool], ...] = (
    ("sprats?|whitebait|anchov(?:y|ies)|dilis|smelts?", Span(6, 12, 25), False),
    ("sardines?|sardinas?|sardinhas?|pilchards?|iwashi", Span(40, 65, 100), False),
    ("galunggong|scads?|aji|kembung|red mullets?|rouget|barbounia|salmonete", Span(70, 120, 200), False),
    ("saury|sanma|herrings?|whitings?|garfish", Span(120, 180, 280), False),
    ("horse mackerels?|mackerels?|saba|titus|trouts?|rainbow trouts?", Span(200, 300, 450), False),
    ("tilapias?|pomfrets?|crappies?|croakers?|yellow croakers?|perch|porg(?:y|ies)", Span(250, 400, 650), True),
    ("plaice|soles?|flounders?|dabs?|brill|turbots?", Span(250, 380, 600), True),
    ("breams?|sea ?breams?|dorad[ae]s?|orat[ae]|sea ?bass|branzin[oi]|barramundi|flathead", Span(300, 420, 650), True),
    ("bangus|milkfish|mullets?|haddocks?|pollock|gurnards?|catfish|magur|basa", Span(300, 500, 900), False),
    ("snappers?|john dory|parrot ?fish|grunts?|rockfish|jacks?|trevally", Span(350, 600, 1100), True),
    ("hilsa|ilish|rohu|carps?|karp|hake|merluza|groupers?|lapu|zander|pike", Span(700, 1100, 2000), True),
    ("salmons?|cods?|king ?fish|barracudas?", Span(2000, 3000, 5000), False),
)  # fmt: skip
_NAMES = LatePattern("|".join(rf"\b(?P<k{n}>{names})\b" for n, (names, _, _) in enumerate(_KINDS)), re.IGNORECASE)
# Fish that are sold whole where nobody says how they are cut: common practice, no source.
SOLD_WHOLE = LatePattern(
    r"\b(?:bangus|bream|dorad[ae]s?|galunggong|kembung|mackerels?|milkfish|orat[ae]|pomfrets?|sardines?|sardinas?"
    r"|sardinhas?|sprats|herrings?|sea ?breams?|breams|sea ?bass|branzin[oi]|tilapias?|titus|trouts?|croakers?"
    r"|porg(?:y|ies)|red mullets?|sanma|saury|aji|carps?|dover soles?|parrot ?fish)\b",
    re.IGNORECASE,
)


def _kind_of(line: str) -> tuple[Span, bool]:
    found = _NAMES.search(line)
    if found is None or found.lastgroup is None:
        return _ANY_FISH_G, False
    _, grams, large_head = _KINDS[int(found.lastgroup[1:])]
    return grams, large_head


def whole_fish_g(line: str) -> Span:
    """Grams of one fish that a line names, with its head."""
    return _kind_of(line)[0]


def eatable_of_a_fish(line: str) -> float:
    """How much of the fish that a line names is eaten."""
    return _OF_A_LARGE_HEAD if _kind_of(line)[1] else _EATABLE
