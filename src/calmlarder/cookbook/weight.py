"""Grams of an ingredient from all the amounts its line gives."""

from typing import NamedTuple

from calmlarder.cookbook.line_amount import VOLUMES, Found, Quantity
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.larder.grams import grams_of, grams_of_volume, told_by_piece
from calmlarder.matching.amounts.amount_of_line import Amount
from calmlarder.matching.amounts.measures import CONTAINERS
from calmlarder.matching.amounts.numbers_and_fractions import ONE, Span
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES

# Millilitres: NIST Handbook 44, Appendix C; a dessertspoon is two teaspoons: common practice, no source.
_SPOONS = {"cup": 236.6, "tbsp": 14.79, "tsp": 4.93}
_TWO = Span(2, 2, 2)
# Poured as they are, a millilitre of these is a gram; a cup of cream in the tables is whipped.
LIQUIDS = frozenset({"milk", "plant-drink", "cream", "juice", "stock"})
_LEVEL = Span(0.9, 1, 1.1)  # how well people fill a cup: common practice, no source
_SIZES = frozenset({"small", "medium", "large", "piece"})
_STICK_OF_BUTTER = Span(113, 113, 113)  # usda_sr28_portions 01001


class Weight(NamedTuple):
    """Grams, low to high; `weighed` where the line gives a weight or a volume."""

    grams: Span
    weighed: bool


def weight_of(found: Found, unit_in_name: str | None, food: Food, tables: Tables) -> Weight | None:
    """Grams of a food: a weight before a volume, a volume before pieces; None where nothing tells."""
    if found.main is None:
        return None
    weights = [one for one in found.sizes if one.unit == "g"]
    if found.main.unit == "g":
        return Weight(found.main.number, True)
    if weights:
        size = weights[0].number
        counts = found.each or found.main.unit in CONTAINERS
        amount = Amount(found.main.number if counts else ONE, found.main.unit, size, "weighed")
        grams = grams_of(amount, food, tables)
        return Weight(grams, True) if grams is not None else None
    said = tuple(one for one in found.sizes if one.unit == "ml" and found.main.unit == "cup" and not found.each)
    for one in (*said, found.main, *found.sizes):  # `1 cup (250 ml)` tells how large its cup is
        grams = _volume(one, food, tables)
        if grams is not None:
            counts = one not in said and one is not found.main and (found.each or found.main.unit in CONTAINERS)
            return Weight(grams.times(found.main.number) if counts else grams, True)
    unit = found.main.unit or unit_in_name
    if unit == "stick" and food.kind == "butter":
        return Weight(found.main.number.times(_STICK_OF_BUTTER), True)
    own = {row.measure for row in tables.own_measures(food)}
    if unit in _SIZES and unit not in own and "piece" not in own:
        unit = unit_in_name  # `1 large celery stalk`
    if unit is not None and found.main.unit != unit and unit not in own:
        unit = None
    if unit is None and food.state in CANNED_STATES and "piece" in own:
        unit = "piece"  # where a recipe means tins it says so
    if unit is None and not told_by_piece(food, tables):
        return None  # `8 curry leaves`: so many of what nobody weighed
    grams = grams_of(Amount(found.main.number, unit, None, "counted"), food, tables)
    return Weight(grams, False) if grams is not None else None


def with_weight(read: IngredientRead, weight: Weight | None) -> IngredientRead:
    """A reading with its grams, where it has any."""
    if weight is None:
        return read
    low, typical, high = (round(grams, 2) for grams in weight.grams)
    return read.model_copy(update={"grams_low": low, "grams": typical, "grams_high": high, "weighed": weight.weighed})


def _volume(one: Quantity, food: Food, tables: Tables) -> Span | None:
    liquid = food.kind in LIQUIDS
    if one.unit in VOLUMES:
        low, high = VOLUMES[one.unit]
        if liquid:
            return one.number.times(Span(low, (low + high) / 2, high))
        return grams_of_volume(one.number.times(Span(low, (low + high) / 2, high)), food, tables)
    if one.unit == "dessertspoon":
        one = one._replace(number=one.number.times(_TWO), unit="tsp")
    if one.unit not in _SPOONS:
        return None
    if liquid:
        return one.number.times(_LEVEL).times(Span(*[_SPOONS[one.unit]] * 3))
    own = {row.measure for row in tables.own_measures(food)}
    if one.unit not in own and own & {"cup", "tbsp"} and food.kind != "spice":
        size = _SPOONS[one.unit]
        return grams_of_volume(one.number.times(Span(size, size, size)), food, tables)
    return grams_of(Amount(one.number, one.unit, None, "counted"), food, tables)
