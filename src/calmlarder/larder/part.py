"""A part of a lot in a cook's words: `100 g`, `half`, `a third`, `40 %`, `all`; of boxes how many."""

import re

from calmlarder.larder.lot import Lot
from calmlarder.matching.amounts.measures import UNIT_GRAMS
from calmlarder.matching.amounts.numbers_and_fractions import NUMBER, number

_UNIT = "|".join(sorted(UNIT_GRAMS, key=len, reverse=True))
_PART = re.compile(rf"({NUMBER})\s?({_UNIT}|%|percent|box|boxes)?(?: of (?:it|them))?")
_ALL = frozenset({"all", "all of it", "the whole", "everything"})
_HELP = "say it like 100 g, half, a third or 40 %"


def part_grams(text: str, lot: Lot) -> float:
    """Grams of the lot that are meant. A number alone is grams, or boxes of a boxed dish; below one it is a share.

    Raises ValueError, in words for a cook, for what cannot be.
    """
    words = " ".join(text.casefold().split())
    if words in _ALL:
        return lot.grams
    found = _PART.fullmatch(words)
    if not found:
        raise ValueError(_HELP)
    value, unit = number(found[1]), found[2]
    box = lot.box.mixture.share_grams if lot.box is not None else None
    grams = round(_grams(value, unit, lot.grams, box), 1)
    if not 0 < grams <= lot.grams:
        raise ValueError(f"there are {lot.grams:g} g of it")
    if box is not None and grams % box:
        raise ValueError(f"boxes stay whole: each holds {box:g} g")
    return grams


def part_of(text: str, whole: float) -> float:
    """Grams of an amount of so many grams that was no lot; more than it is possible. Raises ValueError in words."""
    words = " ".join(text.casefold().split())
    if words in _ALL:
        return whole
    found = _PART.fullmatch(words)
    if not found:
        raise ValueError(_HELP)
    return round(_grams(number(found[1]), found[2], whole, None), 1)


def _grams(value: float, unit: str | None, whole: float, box: int | None) -> float:
    if unit in {"%", "percent"}:
        return whole * value / 100
    if unit in {"box", "boxes"} or (unit is None and box is not None and value >= 1):
        if box is None:
            raise ValueError(f"it is not in boxes: {_HELP}")
        return value * box
    if unit is None:
        return whole * value if value < 1 else value
    return value * UNIT_GRAMS[unit]
