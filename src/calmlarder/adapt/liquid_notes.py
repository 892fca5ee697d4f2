"""What becomes of the liquid and of the filling of a dish that changed, in a note."""

import re
from collections.abc import Iterator, Sequence
from decimal import ROUND_HALF_UP, Decimal

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.model import Adapted
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

# Of which less means less to cook in: it is made up with water. Common practice, no source.
_WET = frozenset({"milk", "plant-drink", "stock", "juice", "cream", "tomato"})
_POURED = frozenset({"milk", "plant-drink", "stock", "juice"})
_BOILED_WITH = frozenset({"pulse", "grain"})  # in the dish's own liquid; pasta has a pot of its own
_THIN = frozenset({"coconut-milk", "tomato-canned", "passata"})
_IS_REDUCED = re.compile(r"\b(?:thick(?:en\w*|er)?|reduc\w*|trail|jammy|pulpy)\b", re.IGNORECASE)
_LEAST_WET = 30  # g; less is not missed: ours
_LEAST_TAKEN_UP = 150  # g of water; less boils away or not: ours
_RISOTTO = "rice-risotto-dry"
# Grams of stock to a gram of rice, a litre to 300 g, some of which goes as steam: common practice, no source.
_STOCK_OF_A_RISOTTO = Decimal("3.3")
_BOILED_PULSE = Decimal("2.73")  # g of one gram dry: lentils, usda_sr28 16069/16070
_STEP = Decimal(10)
_HOLDS = re.compile(r"^\d+ small \w.*, about \d+ g each|, in halves")
_HOLDS_CLEARLY_LESS = Decimal("0.8")  # ours
_WATER = re.compile(
    r"\b(\d{1,4}(?:[.,]\d{1,2})?) ?(?:(ml)|(l|litres?|liters?)|(cups?))\)? (?:of )?(?:[a-z]+ ){0,2}water\b",
    re.IGNORECASE,
)
_ML = (Decimal(1), Decimal(1000), Decimal(240))  # of a millilitre, a litre, a cup (common practice)


def liquid_notes(parts: Sequence[Part], steps: str, adapted: Adapted, tables: Tables) -> Iterator[str]:
    """What becomes of the liquid: less of a wet thing is made up, what takes up no water wants less of it."""
    told = [part.read.text for part in parts if part.read.outcome == "nothing"]
    wet, missing, not_taken = sum(map(_ml_of_water, (*told, steps)), Decimal(0)), Decimal(0), Decimal(0)
    thin: list[str] = []
    kept = False
    dry: list[str] = []
    for amount in adapted.amounts.values():
        wet += amount.grams if tables.food_by_id[amount.food].kind in _WET else 0
    for change in adapted.changes:
        food = tables.food_by_id.get(parts[change.place].read.food or "") if change.place is not None else None
        before = adapted.amounts.get(change.place) if change.place is not None else None
        if food is None or before is None:
            continue
        less = before.grams - sum((one.grams for one in change.to if one.food == food.id), Decimal(0))
        thick = food.kind == "tomato" and _IS_REDUCED.search(steps) is not None  # water would only boil away again
        if change.change in {"less", "out"} and (food.id in _THIN or food.kind in _POURED) and not thick:
            missing += less
            thin.append(food.name)
            kept = kept or change.change == "less"
        if change.change == "swap" and change.to and food.state == "dry" and food.kind in _BOILED_WITH:
            others = [(tables.food_by_id[one.food], one.grams) for one in change.to if one.food != food.id]
            if food.kind == "grain" and any(one.state == "dry" for one, _ in others):
                continue  # a grain for a grain: about the same, and the step says how it is seen to be done
            not_taken += _taken_up(food, less, tables) - sum((_taken_up(*one, tables) for one in others), Decimal(0))
            dry.append(food.name)
    water = missing - not_taken
    if thin and water >= _LEAST_WET:
        named = f"{'Less' if kept else 'Without'} {' and '.join(dict.fromkeys(thin))}"
        yield f"{named}: make up the liquid with up to {_rounded(water)} ml water."
    elif dry and _LEAST_TAKEN_UP <= -water <= wet:
        yield (
            f"What stands in for {' and '.join(dry)} takes up about {_rounded(-water)} ml less of the liquid: keep so "
            "much back, and add of it what the dish wants."
        )


def filling_notes(parts: Sequence[Part], adapted: Adapted, tables: Tables) -> Iterator[str]:
    """What becomes of the filling where what holds it is smaller than it was."""
    shares: dict[str, Decimal] = {}
    for change in adapted.changes:
        before = adapted.amounts.get(change.place) if change.place is not None else None
        if before is None or change.place is None or not change.to or not _HOLDS.search(change.lines[0]):
            continue
        share = change.to[0].grams / before.grams
        if share <= _HOLDS_CLEARLY_LESS:
            shares[tables.food_by_id[parts[change.place].read.food or ""].name] = share
    if shares:
        least = int(min(shares.values()) * 20) * 5
        yield (
            f"Less {' and '.join(shares)}: only about {least} % of the filling goes in. Bake the rest of it beside "
            "them, covered, with a splash of water where it looks dry."
        )


def _taken_up(food: Food, grams: Decimal, tables: Tables) -> Decimal:
    """Grams of water that so much of a dry pulse or grain takes up, by the tables' conversions; else nothing."""
    factors = [row.factor for row in tables.conversions if row.from_food == food.id]
    if food.id == _RISOTTO:
        return grams * _STOCK_OF_A_RISOTTO
    if food.state != "dry" or not (factors or food.kind == "pulse"):
        return Decimal(0)
    return grams * (max(factors, default=_BOILED_PULSE) - 1)


def _ml_of_water(text: str) -> Decimal:
    """Millilitres of water that a text tells of, `1.2 litres water`."""
    total = Decimal(0)
    for number, *units in _WATER.findall(text):
        unit = next(place for place, word in enumerate(units) if word)
        total += Decimal(number.replace(",", ".")) * _ML[unit]
    return total


def _rounded(grams: Decimal) -> int:
    return int((grams / _STEP).quantize(Decimal(1), ROUND_HALF_UP) * _STEP)
