"""A share of so much, put as it is read: of 4 pints a third is left, and half of 6 eggs are 3."""

import re
from collections.abc import Mapping
from types import MappingProxyType

from calmlarder.matching.late_patterns import LatePattern

# What is called most of it is three quarters: ours.
_SHARES: Mapping[str, str] = MappingProxyType({
    **dict.fromkeys(("half", "1/2", "a half"), "1/2"), **dict.fromkeys(("third", "a third", "one third", "1/3"), "1/3"),
    **dict.fromkeys(("quarter", "a quarter", "one quarter", "1/4"), "1/4"), "2/3": "2/3", "two thirds": "2/3",
    **dict.fromkeys(("3/4", "three quarters", "most"), "3/4"),
})  # fmt: skip
_SHARE = rf"(?<![\w/.])(?P<share>{'|'.join(sorted(_SHARES, key=len, reverse=True))})"
_UNIT = r"(?P<unit>kg|kilos?|g|grams?|l|lt|ltr|litres?|liters?|ml|pints?|pts?|gallons?|quarts?|lbs?|pounds?|oz|ounces?)"
_OF_SO_MUCH = LatePattern(rf"{_SHARE}(?: of)?(?: an?| the| my)? (?P<count>\d+(?:\.\d+)?) ?{_UNIT}\b")
_OF_ONE = LatePattern(rf"{_SHARE} of (?:an?|the|one) (?P<count>){_UNIT}\b", needs=(" of ",))
_HALF_OF_SO_MANY = LatePattern(
    r"(?<![\w/.])(?:a half|half|1/2) of (?:the )?(\d{1,2}) (?=[a-z]{3,}s\b)", needs=(" of ",)
)


def shares_plainly(text: str) -> str:
    """A plain text with each share of so much behind it."""
    for shape in (_OF_SO_MUCH, _OF_ONE):
        text = shape.sub(_left_of_it, text)
    return _HALF_OF_SO_MANY.sub(lambda found: f"{int(found[1]) / 2:g} ", text)


def _left_of_it(found: re.Match[str]) -> str:
    return f"{found['count'] or 1} {found['unit']} {_SHARES[found['share']]} left"
