"""Foods of which a piece, a cup, a slice or a loaf weighs less or more than usual, by the words of their line."""

import re

from calmlarder.cookbook.line_amount import Found
from calmlarder.cookbook.names import Part
from calmlarder.matching.amounts.numbers_and_fractions import Span

# What is sold small too, and how much of a grown one a small one is: common practice, no source.
_SOLD_SMALL = ("baby", "pearl", "pickling", "silverskin", "new")
_BABY = re.compile(rf"\b(?:{'|'.join(_SOLD_SMALL)}) \w")
_GROWN_SMALL = frozenset({"allium", "fruit-vegetable", "root", "potato"})
_OF_A_WHOLE = Span(0.12, 0.22, 0.35)
# Shapes of pasta that lie close: a cup of them weighs twice a cup of tubes (common practice, no source).
_CLOSE = re.compile(r"\b(?:orzo|risoni|ditalini|stelline|pastina|acini di pepe|kritharaki|soup pasta)\b")
_AGAINST_TUBES = Span(1.7, 2.0, 2.2)
# A slice of a stick of bread against one of a loaf: 14 g for 36 (common practice, no source).
_THIN_LOAF = re.compile(r"\b(?:baguettes?|french stick|ficelle)\b")
_AGAINST_A_LOAF = Span(0.3, 0.4, 0.55)
# `1.5 cm thick` is how thin it is.
_THICK = re.compile(r"(?<!cm )(?<!mm )(?<!inch )(?<!inches )\bthick(?:ly)?\b")
_THICK_AGAINST_A_LOAF = Span(0.5, 0.7, 0.9)  # 25 g: common practice, no source
# A ciabatta is 270 g where a loaf is 800 g (common practice, no source).
_LOAF = "loaf"
_SMALL_LOAF = re.compile(r"\b(?:ciabattas?|focaccias?)\b")
_OF_A_LARGE_LOAF = Span(0.27, 0.34, 0.5)
_SMALL = re.compile(r"\bsmall\b")
_SMALL_OF_A_LARGE_LOAF = Span(0.4, 0.5, 0.6)  # 400 g for 800: common practice, no source
# Of noodles weighed fresh, how much is left of them dry: 8 oz for 12 (common practice, no source).
_FRESH_STRANDS = re.compile(r"\bfresh (?:\w+ ){0,3}noodles?\b|\bfresh (?:\w+ )?(?:ramen|udon|soba|rice sticks)\b")
_DRY_OF_FRESH = Span(0.6, 0.67, 0.75)


def as_it_weighs(found: Found, part: Part, rest: str, line: str) -> Found:
    """The amount of a food in usual pieces, cups, slices or loaves; `rest` is its name in the line."""
    if found.main is None:
        return found
    unit = found.main.unit
    if unit is None and not found.sizes and _BABY.search(rest) and part.unit_in_name not in _SOLD_SMALL:
        found = _small(found, part)
    if unit == "cup" and _CLOSE.search(rest):
        found = _times(found, _AGAINST_TUBES)
    if unit == "slice" and _THIN_LOAF.search(rest):
        found = _times(found, _THICK_AGAINST_A_LOAF if _THICK.search(line) else _AGAINST_A_LOAF)
    if _LOAF in {unit, part.unit_in_name} and _SMALL_LOAF.search(rest):
        found = _times(found, _OF_A_LARGE_LOAF)
    elif _LOAF in {unit, part.unit_in_name} and _SMALL.search(line):
        found = _times(found, _SMALL_OF_A_LARGE_LOAF)
    if unit == "g" and _is_dry_noodle(part) and _FRESH_STRANDS.search(rest):
        found = _times(found, _DRY_OF_FRESH)._replace(sizes=())
    return found


def _times(found: Found, share: Span) -> Found:
    return (
        found if found.main is None else found._replace(main=found.main._replace(number=found.main.number.times(share)))
    )


def _small(found: Found, part: Part) -> Found:
    """`10 baby onions`: far less than so many onions; of a kind that has no such small ones nothing changes."""
    food = part.match.food
    return _times(found, _OF_A_WHOLE) if food is not None and food.kind in _GROWN_SMALL else found


def _is_dry_noodle(part: Part) -> bool:
    return part.match.food is not None and part.match.food.kind == "noodle" and part.match.food.state == "dry"
