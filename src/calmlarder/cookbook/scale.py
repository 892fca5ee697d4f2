"""What a scale or a cup showed of one food, as it is typed at the stove: read whole, or refused in words."""

import math

from calmlarder.cookbook.line_amount import VOLUMES, take_quantity
from calmlarder.cookbook.weight import LIQUIDS, weight_of
from calmlarder.matching.names.words import plain
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_SPOONED = frozenset({"cup", "tbsp", "tsp", *VOLUMES})
_MOST_G = 20_000  # more is a slip of the pen at a stove: ours
_HOW = "write it like {}"


def grams_shown(text: str, food: Food, tables: Tables, *, bare_is_grams: bool) -> int:
    """Whole grams, rounded up, of an amount that was typed; of a volume the most that it may weigh.

    A number alone is grams where `bare_is_grams`; elsewhere nobody can tell it from ounces. Raises ValueError in words
    for a cook: no part of what was typed is passed over.
    """
    how = _HOW.format("136 g, 4.8 oz or ½ cup")
    try:
        found = take_quantity(" ".join(plain(text).split()))
    except ValueError as error:
        raise ValueError(f"`{text}` is not understood: {error}; {how}") from error
    if found.main is None:
        raise ValueError(f"`{text}` is not understood: {how}")
    if found.rest:
        raise ValueError(f"`{found.rest}` is not understood: {how}")
    if found.sizes or found.main.number.low != found.main.number.high:
        raise ValueError(f"one amount, please: {how}")
    if found.main.unit is None:
        number = found.main.number.typical
        if not bare_is_grams:
            raise ValueError(f"g or oz? Write {number:g} g or {number:g} oz")
        return _checked(number, text)
    if found.main.unit == "g":
        return _checked(found.main.number.typical, text)
    weight = weight_of(found, None, food, tables) if found.main.unit in _SPOONED else None
    if weight is None or not weight.weighed or not _is_known(found.main.unit, food, tables):
        raise ValueError(f"nobody knows what that much of it weighs: {_HOW.format('136 g or 4.8 oz')}")
    return _checked(weight.grams.high, text)


def _is_known(unit: str, food: Food, tables: Tables) -> bool:
    """Whether a row of the food or its kind tells the weight, and not the general one, which is of water."""
    row = tables.measure(food, unit)
    own = {one.measure for one in tables.own_measures(food)}
    return bool(own & {"cup", "tbsp"}) or (row is not None and row.food != "*") or food.kind in LIQUIDS


def _checked(grams: float, text: str) -> int:
    if not 0.5 <= grams <= _MOST_G:
        raise ValueError(f"`{text}` is no amount for this dish; empty counts as planned")
    return math.ceil(grams - 1e-9)
