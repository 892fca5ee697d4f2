"""Some of a thing in the freezer and some not: two lines of it, since each has its own days.

`chicken thighs x6 (4 in freezer)`, `2 salmon fillets, 3 frozen`, `minced beef 500g (fresh) 500g (freezer)`.
"""

from calmlarder.matching.amounts.measures import UNIT
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS
from calmlarder.matching.late_patterns import LatePattern

_NUMBER = rf"(?:\d{{1,2}}|{'|'.join(sorted(WHOLE_WORDS, key=len, reverse=True))})"
_WEIGHT = rf"\d+(?:[.,]\d+)? ?(?:{UNIT})"
_COLD = r"(?:in (?:the |my )?freezer|(?<!in )(?<!the )freezer|frozen)"
_SOME_FROZEN = LatePattern(
    rf"^(?P<head>[a-z][a-z' -]*? )?(?:x ?)?(?P<all>{_NUMBER})(?: ?x\b)?(?P<tail> [a-z][a-z' -]*?)?[ ,;(-]+"
    rf"(?P<some>{_NUMBER})(?P<of> of (?:them|which|em))?(?P<again> [a-z][a-z' -]*?)?(?: (?:is|are))? {_COLD}\)?"
    r"(?P<by>,? \(?(?:use by|ub|bbe?|best before|exp\w*|bought|due) [^,;()]{2,20}\)?)?$",
    needs=("freezer", "frozen"),
)
_TWO_WEIGHTS = LatePattern(
    rf"^(?P<food>[a-z][a-z' -]*?) (?P<one>{_WEIGHT}) ?\(?(?:fresh|new|(?:in (?:the )?)?fridge)\)?"
    rf"(?: ?[,;&+] ?| and | )(?P<other>{_WEIGHT}) ?\(?(?P<how>{_COLD}|old|open(?:ed)?)\)?$",
    needs=("fresh", "new", "fridge"),
)
_FRESH = LatePattern(r"\b(?:fresh|in (?:the )?fridge)\b")


# `1 bag + another frozen`: the same again.
_ANOTHER = LatePattern(
    rf"^(?P<food>[a-z][a-z' -]*?)?(?P<all> ?(?:1|one|an?) [a-z]+(?: of [a-z][a-z' -]*?)?) ?(?:\+|,|&|and|plus) "
    rf"(?:another|1 more|one more|a second)(?: (?:one|bag|pack|packet|loaf|box|tub|jar|bunch))?"
    rf" ?\(?(?:is )?{_COLD}\)?$",
    needs=("another", " more", "second"),
)


def apart_by_place(line: str) -> tuple[str, str] | None:
    """The two lines that a plain line tells of, the one in the fridge first; None where it tells of one place."""
    found = _ANOTHER.search(line)
    if found is not None and (found["food"] or " of " in found["all"]):
        one = f"{found['food'] or ''}{found['all']}"
        return one, f"{one} frozen"
    found = _TWO_WEIGHTS.search(line)
    if found is not None:
        how = found["how"] if found["how"].startswith("o") else "frozen"
        return f"{found['food']} {found['one']}", f"{found['food']} {found['other']} {how}"
    found = _SOME_FROZEN.search(line)
    if found is None:
        return None
    food = f"{found['head'] or ''}{found['tail'] or ''}"
    again = set((found["again"] or "").split())
    if not again <= set(food.split()):
        return None  # another thing, and frozen
    beside = bool(_FRESH.search(food)) or bool(again)
    food = " ".join(_FRESH.sub(" ", food).split())
    everything, some = _value(found["all"]), _value(found["some"])
    here = everything if beside or (some >= everything and not found["of"]) else everything - some
    return (f"{here} {food}{found['by'] or ''}", f"{some} {food} frozen") if food and here > 0 else None


def _value(word: str) -> int:
    return int(word) if word.isdigit() else int(WHOLE_WORDS[word])
