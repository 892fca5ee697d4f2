"""From an amount in a cook's words to grams of a food."""

from calmlarder.matching.amounts import CONTAINERS, Amount, spread
from calmlarder.matching.numbers import Span
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food, Measure

# What a line without any amount is taken to mean, in this order: common practice, no source.
_WITHOUT_AMOUNT = (
    "bag",
    "punnet",
    "packet",
    "block",
    "tub",
    "jar",
    "bottle",
    "tin",
    "bunch",
    "head",
    "piece",
)
_ANY_PIECE = ("piece", "medium", "head", "fillet", "ball", "block", "tin")
# Where a food has no measure of that name, the next best name for it.
_NEAREST = {
    "tin": ("tin", "can"), "can": ("can", "tin"), "heel": ("heel", "slice"), "stick": ("stick", "stalk", "piece"),
    "small": ("small", "piece"), "medium": ("medium", "piece"), "large": ("large", "piece"), "spear": ("piece",),
    "floret": ("floret", "piece"), "cube": ("cube", "piece"), "fillet": ("fillet", "piece"),
    "bag": ("bag", "packet"), "packet": ("packet", "bag"), "pouch": ("pouch", "packet"), "tube": ("tube", "jar"),
    "piece": ("piece", "slice"), "clove": ("clove", "piece"), "leaf": ("leaf", "piece"), "mug": ("mug", "cup"),
}  # fmt: skip
_GROSS_TIN_GRAMS = 400  # a standard tin with its liquid: common practice, no source
_CUP_ML = 236.6  # the US cup, which the tables' cups are of: NIST Handbook 44, Appendix C


def grams_of(amount: Amount, food: Food, tables: Tables) -> Span | None:
    """Grams, low to high, or None where the measure says nothing about this food."""
    if amount.grams is not None:
        return amount.number.times(_drained(amount, food, tables))
    row = _measure_for(amount, food, tables)
    if row is None:
        return None
    one = Span(float(row.low), float(row.grams), float(row.high))
    return amount.number.times(spread(amount)).times(one)


def told_by_piece(food: Food, tables: Tables) -> bool:
    """Whether the tables know what one of a food weighs; without that a portion or a jar would stand in for it."""
    return any(row.measure in _ANY_PIECE for row in tables.own_measures(food))


def grams_of_volume(millilitres: Span, food: Food, tables: Tables) -> Span:
    """Grams of a volume by the weight of a cup of the food where its own row tells, else as of water."""
    own = {row.measure: row for row in tables.own_measures(food)}
    row, size = own.get("cup"), _CUP_ML
    if row is None:
        row, size = own.get("tbsp"), _CUP_ML / 16
    if row is None:
        return millilitres
    return millilitres.times(Span(float(row.low) / size, float(row.grams) / size, float(row.high) / size))


def _drained(amount: Amount, food: Food, tables: Tables) -> Span:
    """A tin named by its gross weight holds what the table says drains from it, in proportion."""
    assert amount.grams is not None
    if food.state == "canned drained" and amount.measure in {"tin", "can"}:
        row = tables.measure(food, "tin")
        if row is not None and amount.grams.typical > 1.2 * float(row.grams):
            share = float(row.grams) / _GROSS_TIN_GRAMS
            return amount.grams.times(Span(share, share, share))
    return amount.grams


def _measure_for(amount: Amount, food: Food, tables: Tables) -> Measure | None:
    if amount.measure is not None:
        return _named(amount.measure, food, tables)
    own = {row.measure: row for row in tables.own_measures(food)}
    wanted = _ANY_PIECE if amount.how == "counted" else _WITHOUT_AMOUNT
    for name in (*wanted, *CONTAINERS):
        if name in own:
            return own[name]
    return tables.measure(food, "portion")


def _named(measure: str, food: Food, tables: Tables) -> Measure | None:
    tries = _NEAREST.get(measure, (measure,))
    own = {row.measure: row for row in tables.own_measures(food)}
    for name in tries:
        if name in own:
            return own[name]
    for name in tries:
        row = tables.measure(food, name)
        if row is not None:
            return row
    return None
