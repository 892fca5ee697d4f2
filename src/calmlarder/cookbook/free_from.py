"""What is said beside a name and makes another food of it: free from lactose, gluten, onion or garlic."""

import re

from calmlarder.matching.names.words import plain

# What is said in a bracket or behind a comma, and makes another food of what stands before it.
_FREE_FROM = re.compile(
    r"\b(?:(lactose|gluten|dairy)[ -]free|(?:free (?:from|of)|without|no) (lactose|gluten|dairy)|(vegan|plant-based))\b"
    r"(?!,? (?:if|or|when|option|version))"
)
_FREE_OF_ALLIUMS = re.compile(
    r"\b(?:(?:onion|garlic)[ -]free|(?:no|without|free (?:from|of)) (?:\w+ ){0,2}?(?:onions?|garlic)"
    r"|(?:onion|garlic)s? (?:and|or|&) (?:onion|garlic)s?[ -]free|low[ -]fodmap)\b"
)
_CUBE = re.compile(r"\b(?:cubes?|powder|bouillon|granules)\b")
_STOCK = re.compile(r"\b(?:stock|broth|bouillon)\b")
_OF_MEAT = re.compile(r"\b(?:chicken|beef|lamb|veal|turkey|duck|pork|ham|meat|bones?|fish|seafood)\b")


def freed(head: str, beside: str) -> str:
    """A name with what is said beside it and makes another food of it (`cream`, `lactose-free`).

    Stock said to be without onion or garlic is the one without.
    """
    if _STOCK.search(head) and _FREE_OF_ALLIUMS.search(f"{head} {beside}"):
        if _CUBE.search(head):
            return "alliumless stock cube"
        return "alliumless meat stock" if _OF_MEAT.search(head) else "alliumless stock"
    found = _FREE_FROM.search(beside)
    if found is None:
        return head
    word = f"{found[1] or found[2]}-free" if found[1] or found[2] else "vegan"
    return head if plain(word) in plain(head) else f"{word} {head}"
