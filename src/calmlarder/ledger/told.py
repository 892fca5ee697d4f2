"""What somebody says they ate, in the words of a larder line, as an entry of the log."""

from datetime import date, datetime
from typing import Literal

from calmlarder.larder.lot import Lot
from calmlarder.matching.entry import read_entry
from calmlarder.sitting.amounts import USUAL, Sureness
from calmlarder.sitting.eaten import Eaten, Portion, loads_of, most_of
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food


def eaten_of(lot: Lot, at: datetime, who: str, today: date, tables: Tables, sure: Sureness = USUAL) -> Eaten:
    """The entry for one line that was read as a lot."""
    return entry_of(_portion(lot, today, tables, sure), lot.line, at, who, tables)


def box_eaten(food: Food, at: datetime, who: str, tables: Tables) -> Eaten:
    """The entry for one box of a boxed dish: what it holds is known."""
    grams = float(food.portion_g)
    return entry_of(Portion(food, grams, grams), food.name, at, who, tables)


def entry_of(portion: Portion, text: str, at: datetime, who: str, tables: Tables) -> Eaten:
    """The entry for an amount of one food, in the words it was told in."""
    loads, unknown = loads_of([portion], tables)
    return Eaten(
        at=at, who=who, text=text, food=portion.food.id, title=portion.food.name,
        grams=round(portion.grams, 1), loads=loads, unknown=unknown,
    )  # fmt: skip


def _portion(lot: Lot, today: date, tables: Tables, sure: Sureness) -> Portion:
    """What was eaten of a food: where no amount was given one portion, not the whole pack."""
    food = tables.food_by_id[lot.food]
    how = how_told(lot, today)
    if how == "none":
        grams = float(food.portion_g)
        return Portion(food, grams, most_of(grams, grams, weighed=False, sure=sure))
    return Portion(food, lot.grams, most_of(lot.grams, lot.grams_high, weighed=how == "weighed", sure=sure))


def how_told(lot: Lot, today: date) -> Literal["weighed", "counted", "guessed", "none"]:
    """How the amount of a lot was told in its line."""
    try:
        entry = read_entry(lot.line, today, frozenset())
    except ValueError:  # its dates were told on another day
        return "none"
    return entry.amount.how if entry else "none"
