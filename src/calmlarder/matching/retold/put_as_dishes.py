"""Dishes that a line tells by their making: stewed together, bought ready, in a marinade; and greens by their roots."""

import re

from calmlarder.matching.late_patterns import LatePattern

_FRUIT = (
    r"(?:apples?|pears?|plums?|prunes?|rhubarb|apricots?|peach(?:es)?|cherr(?:y|ies)|figs?|berr(?:y|ies)|[a-z]+berr(?:y|ies)"
    r"|raisins?|gooseberries|quinces?|fruit|oranges?)"
)
# Two vegetables that were stewed together are one pot.
_STEWED = LatePattern(
    rf"\bstewed (?!{_FRUIT}\b)[a-z]+ ?(?:&|\+|/|\band\b|\bn\b) ?(?!{_FRUIT}\b)[a-z]+\b", needs=("stewed ",)
)
# Meat from a takeaway of which nothing more is told comes in a sauce.
_READY = r"\b(?:take[ -]?(?:out|away)|carry[ -]?out|doggy bag)\b"
_FLESH = r"(?:beef|chicken|pork|shrimps?|prawns?|lamb|duck|fish|tofu|veg(?:gies|etables)?)"
_TAKEAWAY = LatePattern(
    rf"^(?P<lead>(?:(?:some|the|half|\d{{1,2}}) )*)(?:leftover |rest of |cold |last of )*(?:{_READY}(?: of)? {_FLESH}"
    rf"|{_FLESH} (?:from )?(?:the )?{_READY})(?=\s*(?:$|[,;(]|from|half|box|left|tub|of|[a-z]{{3,6}}(?:day)?$|\d))",
    needs=("take", "carry", "doggy"),
)
# Rice and potatoes in a soup, and the sauce of so many pieces, are no foods beside it.
_RICE_IN_SOUP = LatePattern(
    r"\b((?:soup|broth)\b[^,;()]*?) (?:with|w) (?:rice|potato(?:es)?)\b", needs=("soup", "broth")
)
_SAUCE_BESIDE = LatePattern(
    r"(?<=\d )(pcs?|pieces?) ?(?:\+|&|and|w|with) (?:the |some )?(?:sauce|juices?)\b", needs=("sauce", "juice")
)
# What is told of a marinade is in it, and no food beside the other.
_MARINADE = LatePattern(
    r"\bin (?:an? |the |its |some )?(?:[a-z]+ )?(?:marinade|brine) ?\(([^()]*)\)", needs=("marinade", "brine")
)
# What lies in a marinade of which nothing is told is asked about as what was marinated.
_IN_A_MARINADE = LatePattern(r"\bmarinat(?:ing|e)\b(?!.*\()", needs=("marinat",))
_ALLIUM = LatePattern(r"garlic|onion|shallot|leek|chive|\bspices?\b|curry|sauce|paste")
_ROOTS = r"(?:turnips?|mustard|collards?|beets?|dandelion|radish)"
_GREENS = LatePattern(
    rf"\bgreens ?[:(-] ?({_ROOTS}(?: ?(?:,|\+|&|/|\band\b) ?{_ROOTS})+)\)?(?=\s*(?:$|[,;]|\d))", needs=("greens",)
)


def put_as_dishes(text: str) -> str:
    """A plain line with such dishes by a name that the tables have."""
    text = _STEWED.sub("vegetable stew with onion", text)
    text = _RICE_IN_SOUP.sub(r"\1", _SAUCE_BESIDE.sub(r"\1", text))
    text = _TAKEAWAY.sub(r"\g<lead>takeaway meal", text)
    text = _MARINADE.sub(lambda found: "marinated" if _ALLIUM.search(found[1]) else "", text)
    text = _IN_A_MARINADE.sub("marinated", text)
    return _GREENS.sub(_greens, text)


def _greens(found: re.Match[str]) -> str:
    return ", ".join(f"{root.strip()} greens" for root in re.split(r",|\+|&|/|\band\b", found[1]) if root.strip())
