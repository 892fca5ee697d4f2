"""Amounts as a cook writes them, and the grams they stand for: as the reader of lines takes them."""

import re
from collections.abc import Iterator
from decimal import ROUND_HALF_UP, Decimal
from typing import NamedTuple

from calmlarder.adapt.model import Amount
from calmlarder.cookbook.line_amount import take_quantity
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.cookbook.weight import weight_of
from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.tables.book import Tables
from calmlarder.tables.household import BY_SPOON
from calmlarder.tables.rows import Food

BY_THE_PIECE = frozenset({"bread", "wrap"})
CUBE = "stock-cube-plain"
_EGG = "egg"
_SAUSAGES = "sausages"
# Poured things are told in millilitres, weighed by what a cup of them weighs.
_POURED = frozenset({"oil", "soy-sauce", "acid", "milk", "cream", "plant-drink", "stock", "juice"})
_MOST_SPOONED = 25  # g; more of a spice is weighed: ours
_BY_FIVES = 50  # g; more is told in steps of five
_ON_THE_SCALE = 10  # g; less is spooned: common practice
_SPOONS = (
    "1 pinch",
    "1/4 tsp",
    "1/2 tsp",
    "3/4 tsp",
    "1 tsp",
    "1 1/4 tsp",
    "1 1/2 tsp",
    "1 3/4 tsp",
    "2 tsp",
    "2 1/4 tsp",
    "2 1/2 tsp",
    "1 tbsp",
    "3 1/2 tsp",
    "4 tsp",
    "5 tsp",
    "2 tbsp",
)
_BIG_SPOONS = (
    "1 tsp",
    "1 1/2 tsp",
    "2 tsp",
    "1 tbsp",
    "1 1/2 tbsp",
    "2 tbsp",
    "3 tbsp",
    "4 tbsp",
)  # of syrup and sugar; more is weighed
# Of what is poured by the spoon so many are as near as any jug.
_POURED_SPOONS = (
    "1 tsp", "1 1/2 tsp", "2 tsp", "2 1/2 tsp", "1 tbsp", "4 tsp", "1 1/2 tbsp", "5 tsp", "2 tbsp", "2 1/2 tbsp",
    "3 tbsp", "4 tbsp",
)  # fmt: skip
_DRIPPED = frozenset({"oil", "soy-sauce", "acid", "paste"})
_NEAR_A_SPOON = Decimal("0.08")
_NEAR_FAT_OR_SUGAR = Decimal("0.12")  # nobody measures 49 ml of oil, 22 ml of lemon juice or 23 g of sugar
_SAME_SPOON = Decimal("0.06")
_OWN_MEASURE = re.compile(
    r"\s*(\d+(?:[.,/]\d+)?(?: \d/\d)?\s?(?:ml|l|litres?|liters?|tbsp|tsp|tablespoons?|teaspoons?|cups?)"
    r"(?: \((?:about )?\d{1,4} ?(?:ml|g)\))?)(?![\w/])(?!\s*/)",
    re.IGNORECASE,
)
_WRAP, _FLAT_BREADS = "wrap", ("pitta", "flatbread")
_COUNTED = re.compile(r"\s*(\d{1,2}) (?=[a-z])(?!(?:x|g|kg|ml|l|oz|cups?|slices?|lbs?|pounds?|ounces?|tins?)\b)", re.I)
_A_ROLL = Decimal("0.45")  # of bread: those without gluten are heavier
# How far a spoon may be from the grams asked for, as a share of them; of less than a gram no scale tells.
_NEAR, _NEAR_A_PINCH = Decimal("0.26"), Decimal("0.6")


class Written(NamedTuple):
    """A line, and what it stands for."""

    line: str
    amount: Amount


def written(food: Food, grams: Decimal, tables: Tables, words: str = "", sure: Tolerance = USUAL) -> Written:
    """The line for so many grams of a food: measured from 10 g on, spooned below where a spoon comes near.

    `words` are what the line calls the food, its name where there are none.
    """
    words = words or food.name
    if food.id == _EGG and (eggs := _so_many(grams, food, tables)) is not None:
        count, whole = eggs
        words = words if count > 1 else re.sub(r"\beggs\b", "egg", words, count=1)
        return Written(f"{count} {words}", whole.model_copy(update={"sure": sure}))
    if (food.kind == _WRAP or food.name.endswith(_FLAT_BREADS)) and (
        wraps := _so_many(grams, food, tables)
    ) is not None:
        count, whole = wraps  # nobody weighs tortillas
        return Written(f"{count} {words}", whole.model_copy(update={"sure": sure}))
    if grams < _ON_THE_SCALE or (food.kind == "spice" and grams < _MOST_SPOONED):
        spoon = min(_spoons(food, tables), key=lambda one: abs(one[1].grams - grams), default=None)
        least = spoon is not None and food.kind == "spice" and grams < spoon[1].grams  # a pinch is the least there is
        if spoon is not None and (least or abs(spoon[1].grams - grams) <= _near(grams) * grams):
            return Written(f"{spoon[0]} {words}", spoon[1].model_copy(update={"sure": sure}))
    if food.kind == "sweetener":
        big = min(_BIG_SPOONS, key=lambda one: abs(_spooned(one, food, tables) - grams))
        near = abs(_spooned(big, food, tables) - grams) <= _NEAR_FAT_OR_SUGAR * grams
        amount = amount_told(big, food, tables) if near else None
        if amount is not None:
            return Written(f"{big} {words}", amount.model_copy(update={"sure": sure}))
    if food.kind in _DRIPPED:
        so_many = min(_POURED_SPOONS, key=lambda one: abs(_spooned(one, food, tables) - grams))
        amount = amount_told(so_many, food, tables)
        if amount is not None and abs(amount.grams - grams) <= _near_spoon(food) * grams:
            return Written(f"{so_many} {words}", amount.model_copy(update={"sure": sure}))
    if food.kind in _POURED:
        cup = amount_told("100 ml", food, tables)
        if cup is not None:
            told = f"{float(_sane(grams * 100 / cup.grams)):g} ml"
            poured = amount_told(told, food, tables)
            if poured is not None:
                return Written(f"{told} {words}", poured.model_copy(update={"sure": sure}))
    sane = _sane(grams)
    amount = Amount(food=food.id, grams=sane, high=sane, weighed=True, sure=sure)
    return Written(f"{float(sane):g} g {words}", amount)


def _so_many(grams: Decimal, food: Food, tables: Tables) -> tuple[int, Amount] | None:
    """So many whole eggs or wraps as come nearest, one at least."""
    one = amount_told("1", food, tables)
    count = max(1, int((grams / one.grams).quantize(Decimal(1), ROUND_HALF_UP))) if one is not None else 0
    amount = amount_told(str(count), food, tables) if count else None
    return (count, amount) if amount is not None else None


def in_own_measure(read: IngredientRead, food: Food, grams: Decimal, tables: Tables) -> Written | None:
    """The measure at the head of a line (`2 tbsp`, `1.2 litres`), where so much of the food weighs these grams too."""
    found = _OWN_MEASURE.match(read.text)
    amount = amount_told(found[1].casefold(), food, tables) if found else None
    if found is None or amount is None or abs(amount.grams - grams) > _SAME_SPOON * grams:
        return None
    return Written(found[1], amount)


def in_own_count(read: IngredientRead, food: Food, grams: Decimal, tables: Tables) -> Written | None:
    """`4` of a line that counts rolls or cubes, where as many of the food weigh much the same.

    Small wraps take the place of large ones by their weight, two for one at the most; a roll is a roll.
    """
    found = _COUNTED.match(read.text)
    if found is None or not (food.kind in BY_THE_PIECE or food.id == CUBE or food.id.startswith(_SAUSAGES)):
        return None
    amount = amount_told(found[1], food, tables)
    if amount is None:
        return None
    if food.kind == "wrap" and int(found[1]) > 1 and amount.grams < grams * (1 - _NEAR):
        told = str(min(2 * int(found[1]), int(grams * int(found[1]) / amount.grams)))
        more = amount_told(told, food, tables)
        return Written(told, more) if more is not None else None
    near = _A_ROLL if food.kind == "bread" else _NEAR
    return Written(found[1], amount) if abs(amount.grams - grams) <= near * grams else None


def _near_spoon(food: Food) -> Decimal:
    return _NEAR_FAT_OR_SUGAR if food.kind in {"oil", "acid"} else _NEAR_A_SPOON


def _near(grams: Decimal) -> Decimal:
    return _NEAR if grams >= 1 else _NEAR_A_PINCH


def _sane(amount: Decimal) -> Decimal:
    """As a scale or a jug shows it."""
    step = Decimal(5) if amount >= _BY_FIVES else Decimal(1) if amount >= _ON_THE_SCALE else Decimal("0.5")
    return max(step, (amount / step).quantize(Decimal(1), ROUND_HALF_UP) * step)


def _spoons(food: Food, tables: Tables) -> Iterator[tuple[str, Amount]]:
    """Spoons and pinches of a food, in words and grams; none where it is not spooned."""
    if food.kind not in BY_SPOON:
        return
    for words in _SPOONS:
        if words == "1 pinch" and food.kind != "spice":
            continue
        amount = amount_told(words, food, tables)
        if amount is not None:
            yield words, amount


def _spooned(words: str, food: Food, tables: Tables) -> Decimal:
    amount = amount_told(words, food, tables)
    return amount.grams if amount is not None else Decimal(0)


def amount_told(words: str, food: Food, tables: Tables) -> Amount | None:
    """What the reader makes of an amount of a food."""
    try:
        weight = weight_of(take_quantity(words), None, food, tables)
    except ValueError:  # more than any kitchen measures so: `35000000 ml`
        return None
    if weight is None:
        return None
    grams, high = (Decimal(str(round(one, 2))) for one in (weight.grams.typical, weight.grams.high))
    return Amount(food=food.id, grams=grams, high=max(grams, high), weighed=weight.weighed)
