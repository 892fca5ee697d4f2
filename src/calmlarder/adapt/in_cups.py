"""Grams of a changed line with the cups that they fill, for a recipe that measures in cups."""

import re
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from calmlarder.adapt.lessened import IN_HALVES
from calmlarder.adapt.model import Adapted, Amount
from calmlarder.tables.book import Tables

_CUPS = re.compile(r"\b(?:cups?|ounces?|oz|pounds?|lbs?|quarts?|sticks?)\b", re.IGNORECASE)
_METRIC = re.compile(r"\d ?(?:g|kg|ml|grams?|litres?)\b")
_LEAST_LINES = 2  # of a list that measure so: ours
_GRAMS = re.compile(r"(?P<grams>\d+(?:\.\d+)?) (?P<unit>g|ml) (?=[a-z])")
_ML_OF_A_CUP = Decimal("236.6")  # NIST Handbook 44, Appendix C
_SHARES = {
    Fraction(0): "", Fraction(1, 4): "1/4", Fraction(1, 3): "1/3", Fraction(1, 2): "1/2", Fraction(2, 3): "2/3",
    Fraction(3, 4): "3/4",
}  # fmt: skip
_OFF = Decimal("0.08")  # as a share; a cup that is further off is not told: ours
_MOST_CUPS = 12
_MELTED_OR_WHOLE = frozenset({"meat", "poultry", "fish", "bread", "wrap"})  # nobody fills a cup with them


def measures_in_cups(lines: Sequence[str]) -> bool:
    """Whether a list of ingredients measures in cups and ounces, and nowhere in grams."""
    return sum(map(bool, map(_CUPS.search, lines))) >= _LEAST_LINES and not any(map(_METRIC.search, lines))


def with_cups(text: str, adapted: Adapted, tables: Tables) -> str:
    """`110 g leek greens` as `110 g (about 1 1/4 cups) leek greens`, where the tables know a cup of it."""
    found = _GRAMS.match(text)
    to: list[Amount] = [one for change in adapted.changes for one in change.to]
    rest = text[found.end() :] if found else ""
    named = [one.food for one in to if rest.startswith(tables.food_by_id[one.food].name)]
    if found is None or not named or rest.endswith(IN_HALVES):
        return text
    food = tables.food_by_id[named[0]]
    cup = next((row for row in tables.own_measures(food) if row.measure == "cup"), None)
    poured = found["unit"] == "ml"
    if (cup is None and not poured) or food.kind in _MELTED_OR_WHOLE:
        return text
    of_a_cup = _ML_OF_A_CUP if poured or cup is None else Decimal(str(cup.grams))
    cups = Decimal(found["grams"]) / of_a_cup
    whole, share = min(
        ((whole, share) for whole in (int(cups), int(cups) + 1) for share in _SHARES),
        key=lambda one: abs(_number(*one) - cups),
    )
    near = _number(whole, share)
    if not 0 < near <= _MOST_CUPS or abs(near - cups) > _OFF * cups:
        return text
    said = " ".join(filter(None, (str(whole) if whole else "", _SHARES[share])))
    return f"{found['grams']} {found['unit']} (about {said} cup{'s' if near > 1 else ''}) {rest}"


def _number(whole: int, share: Fraction) -> Decimal:
    return whole + Decimal(share.numerator) / share.denominator
