"""Phrases that people put another way, written the way names have them."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.retold.bean_pots import pots_plainly
from calmlarder.matching.retold.by_nature import STATES
from calmlarder.matching.retold.flavours import flavours_aside
from calmlarder.matching.retold.foods_in_other_words import BIRDS_AND_POTS, DISHES, FOODS
from calmlarder.matching.retold.in_passing import said_in_passing
from calmlarder.matching.retold.measured_otherwise import AMOUNTS, SPOONS_AND_PIECES
from calmlarder.matching.retold.texted import as_texted
from calmlarder.matching.retold.what_it_holds import FREE_FROM, HELD
from calmlarder.matching.rewriting import Rewrite, rewritten

_WITH_STROKE = LatePattern(r"\bw/ ?(?=[a-z])(?!o\b)")
_PUNYA = LatePattern(r" ?\(?\b([a-z]{2,}) punya\b\)?")  # the possessive of Malay
# `a tin an a bag`.
_AN_A = LatePattern(r"\ban (?=(?:a|an|\d+|one) )")
_JARS = r"(jars?|tins?|cans?|pouch(?:es)?|cartons?)"
_IN_BRACKET = LatePattern(rf"\(\s*(?:in |from )?(?:an? |the )?{_JARS}\s*\)")
_IN_JAR = LatePattern(rf"(?<=[a-z]) (?:in|from) (?:an? |the )?{_JARS}\b(?! of\b)")
# Herbs stand in it, whatever it once held.
_IN_WATER = LatePattern(
    r"\b(?:in|sitting in|standing in) (?:an? |the )?(?:jar|glass|mug|jug|vase|cup|tumbler)(?: of water)\b"
)

_OWNERS = (Rewrite(_PUNYA, r" (\1's)"),)
_VESSELS = (
    Rewrite(_AN_A, "and "),
    Rewrite(_IN_WATER, " "),
    Rewrite(_IN_BRACKET, r" \1"),
    Rewrite(_IN_JAR, r" \1"),
)
_BEFORE = (*HELD, *STATES, *SPOONS_AND_PIECES, *DISHES, *_OWNERS)
_BEHIND = (*FREE_FROM, *AMOUNTS, *BIRDS_AND_POTS)


def plainly_put(text: str) -> str:
    """A plain line with its container beside the food: `peppers (jar)`, `beetroot in a jar`; `not ripe` is unripe."""
    text = flavours_aside(said_in_passing(_WITH_STROKE.sub("with ", text)))
    text = as_texted(rewritten(text, _BEFORE))
    text = pots_plainly(rewritten(text, _BEHIND))
    return rewritten(text, (*FOODS, *_VESSELS))
