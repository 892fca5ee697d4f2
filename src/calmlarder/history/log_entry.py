"""What somebody says they ate, in the words of a larder line, as an entry of the log."""

from datetime import date, datetime
from typing import TYPE_CHECKING, Literal, NamedTuple

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.eaten import Eaten, Portion, loads_of
from calmlarder.intake.nourished import nourished_of
from calmlarder.larder.lot import Lot
from calmlarder.matching.amounts.measures import CONTAINERS
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

if TYPE_CHECKING:
    from calmlarder.matching.amounts.amount_of_line import Amount

_PIECES = ("piece", "medium", "fillet", "ball")
_SMALL_PACK_G = 350  # a can or a bottle that one person empties: common practice, no source


class Meal(NamedTuple):
    """When it was eaten and by whom, and how sure its amounts are."""

    at: datetime
    who: str
    sure: Tolerance = USUAL


def eaten_of(lot: Lot, meal: Meal, today: date, tables: Tables, amount: "Amount | None" = None) -> Eaten:
    """The entry for one line that was read as a lot; of one thing among several of a line, with its own amount."""
    return entry_of(portion_of(lot, today, tables, amount), lot.line, meal, tables)


def box_eaten(food: Food, meal: Meal, tables: Tables) -> Eaten:
    """The entry for one box of a boxed dish: what it holds is known."""
    grams = float(food.portion_g)
    return entry_of(Portion(food, grams, grams, False), food.name, meal, tables)


def entry_of(portion: Portion, text: str, meal: Meal, tables: Tables) -> Eaten:
    """The entry for an amount of one food, in the words it was told in."""
    loads, unknown = loads_of([portion], tables, meal.sure)
    return Eaten(
        at=meal.at, who=meal.who, text=text, food=portion.food.id, title=portion.food.name,
        grams=round(portion.grams, 1), loads=loads, unknown=unknown,
        nourished=nourished_of([(portion.food, portion.grams)]),
    )  # fmt: skip


def portion_of(lot: Lot, today: date, tables: Tables, told: "Amount | None" = None) -> Portion:
    """What was eaten of a food: where no amount was given one portion, not the whole pack."""
    food = tables.food_by_id[lot.food]
    amount = told or _amount_in(lot.line, today)
    how = amount.how if amount else "none"
    if how == "none":
        grams = float(food.portion_g)
        return Portion(food, grams, grams, False)
    if how == "counted" and amount is not None and amount.measure is None and not _has_pieces(food, tables):
        one, number = _one_of(food, tables), amount.number
        grams = number.typical * one
        return Portion(food, grams, number.high * one, False)
    return Portion(food, lot.grams, lot.grams_high, how == "weighed")


def how_told(lot: Lot, today: date) -> Literal["weighed", "counted", "guessed", "none"]:
    """How the amount of a lot was told in its line."""
    amount = _amount_in(lot.line, today)
    return amount.how if amount else "none"


def _amount_in(text: str, today: date) -> "Amount | None":
    from calmlarder.matching.line import amount_in  # what reads lines is a good part of a start

    return amount_in(text, today)


def _has_pieces(food: Food, tables: Tables) -> bool:
    return any(row.measure in _PIECES for row in tables.own_measures(food))


def _one_of(food: Food, tables: Tables) -> float:
    """Grams of what somebody means by `a yoghurt` or `two coffees`: a small pack of it, else a portion."""
    packs = [float(row.grams) for row in tables.own_measures(food) if row.measure in CONTAINERS]
    return min((grams for grams in packs if grams <= _SMALL_PACK_G), default=float(food.portion_g))
