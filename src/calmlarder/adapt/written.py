"""Ingredient lines as a cook writes them, and the amounts they stand for."""

from collections.abc import Iterator
from decimal import ROUND_HALF_UP, Decimal
from typing import NamedTuple

from calmlarder.adapt.model import Amount
from calmlarder.larder.grams import grams_of
from calmlarder.matching.amounts import Amount as Said
from calmlarder.matching.numbers import Span
from calmlarder.tables.book import Tables
from calmlarder.tables.household import BY_SPOON
from calmlarder.tables.rows import Food

# Poured things are told in millilitres, which count as grams (common practice, as in matching/amounts.py).
_POURED = frozenset({"oil", "soy-sauce", "acid", "milk", "cream", "plant-drink", "stock", "juice"})
_ON_THE_SCALE = 10  # g; less is spooned: common practice
_SPOONS = (("tsp", "1/4"), ("tsp", "1/2"), ("tsp", "1"), ("tsp", "1 1/2"), ("tsp", "2"))
_COUNT = {"1/4": 0.25, "1/2": 0.5, "1": 1.0, "1 1/2": 1.5, "2": 2.0}
_NEAR = 0.26  # how far a spoon may be from the grams asked for, as a share of them


class Written(NamedTuple):
    """A line, and what it stands for."""

    line: str
    amount: Amount


def written(food: Food, grams: Decimal, tables: Tables, tail: str = "") -> Written:
    """The line for so many grams of a food: weighed from 10 g on, spooned below where a spoon comes near."""
    if grams < _ON_THE_SCALE:
        spoon = min(_spoons(food, tables), key=lambda one: abs(one[1].typical - float(grams)), default=None)
        if spoon is not None and abs(spoon[1].typical - float(grams)) <= _NEAR * float(grams):
            words, span = spoon
            amount = Amount(food=food.id, grams=_decimal(span.typical), high=_decimal(span.high), weighed=False)
            return Written(f"{words} {food.name}{tail}", amount)
    step = Decimal(5) if grams >= 100 else Decimal(1) if grams >= _ON_THE_SCALE else Decimal("0.5")
    sane = max(step, (grams / step).quantize(Decimal(1), ROUND_HALF_UP) * step)
    unit = "ml" if food.kind in _POURED else "g"
    amount = Amount(food=food.id, grams=sane, high=sane, weighed=True)
    return Written(f"{float(sane):g} {unit} {food.name}{tail}", amount)


def _spoons(food: Food, tables: Tables) -> Iterator[tuple[str, Span]]:
    """Spoons and pinches of a food, in words and grams; none where it is not spooned."""
    if food.kind not in BY_SPOON:
        return
    for words, measure, number in (("1 pinch", "pinch", "1"), *((f"{n} {m}", m, n) for m, n in _SPOONS)):
        if measure == "pinch" and food.kind != "spice":
            continue
        count = _COUNT[number]
        span = grams_of(Said(Span(count, count, count), measure, None, "counted", None), food, tables)
        if span is not None:
            yield words, span


def _decimal(grams: float) -> Decimal:
    """Grams to a hundredth."""
    return Decimal(str(round(grams, 2)))
