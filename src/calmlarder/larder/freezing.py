"""The freezer: what to freeze today, into it and out of it again."""

import math
import re
from collections.abc import Iterable
from datetime import date, timedelta
from types import MappingProxyType

from pydantic import BaseModel, ConfigDict

from calmlarder.larder.lot import Lot, LotDate, why_unfit
from calmlarder.larder.whole_fish import whole_fish_g
from calmlarder.larder.with_bones import is_whole_fish
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food, Keeping
from calmlarder.tables.vocabulary import COOKED_STATES

# Thawed food is eaten within a day: UK Food Standards Agency (recalled).
_THAWED_DAYS = 1


# Thawed in the fridge overnight or in the microwave: Food Standards Agency, "How to chill, freeze and defrost".
_THAWED_KINDS = frozenset({"fish", "shellfish", "poultry", "meat", "tofu", "tempeh", "seitan"})
_IN_PIECES = re.compile(r"\b(?:diced?|cubed|cubes|sliced?|slices|strips?|pieces|pcs)\b", re.IGNORECASE)


def thaws(lot: Lot, food: Food) -> bool:
    """Whether a thing from the freezer is thawed first; what is sold frozen is cooked from frozen."""
    return lot.place == "freezer" and food.kind in _THAWED_KINDS and food.state != "frozen"


# As thick as an arm, or a whole bird: what thaws outside within the hour is hard inside, so it thaws overnight.
_THICK = frozenset({
    "chicken-whole", "duck-whole", "turkey-whole", "lamb-roast", "beef-roast", "pork-shoulder", "pork-belly",
})  # fmt: skip
# Minutes in a sealed bag in cold water: an hour or less for a pound (US Department of Agriculture, recalled); what is
# thin takes less (common practice, no source).
_THAWING = MappingProxyType({"shellfish": 20, "fish": 30, "tempeh": 30})
_THAWING_ELSE = 60  # the hour for a pound
_IN_WATER_ALWAYS = frozenset({"fish", "shellfish"})
_IN_A_LUMP = frozenset({"meat", "poultry"})


_A_POUND_G, _EACH_POUND_MORE = 500, 30  # a lump of two pounds wants more than the hour: US Department of Agriculture
# On the microwave's thawing setting, eight minutes for 500 g and two to turn and stand: packets, recalled.
_MICROWAVE_START, _MICROWAVE_PER_100_G = 2, 1.6


_LARGE_FISH_G = 700  # with its head: more than the pound that thaws in an hour is eaten of it. Ours


def thaw_minutes(lot: Lot, food: Food, grams: float, microwave: bool) -> int:
    """How long so many grams of a thing out of the freezer thaw before they are cooked, the sooner way of two.

    Fish and seafood lie in cold water in any kitchen: the rays of a microwave have cooked their edges by then.
    0 where it need not thaw.
    """
    if not thaws(lot, food):
        return 0
    if is_whole_fish(food, lot.line):
        return _THAWING_ELSE
    in_water = _in_water(food, grams)
    soon = math.ceil(_MICROWAVE_START + _MICROWAVE_PER_100_G * grams / 100)
    return min(in_water, soon) if microwave and food.kind not in _IN_WATER_ALWAYS else in_water


def thawed_how(lot: Lot, food: Food, grams: float, microwave: bool) -> str:
    """The same as a cook reads it: `thawed 30 minutes in a sealed bag in cold water`."""
    minutes = thaw_minutes(lot, food, grams, microwave)
    in_water = is_whole_fish(food, lot.line) or minutes == _in_water(food, grams)
    where = "in a sealed bag in cold water" if in_water else "on the microwave's thawing setting, turned once"
    return f"thawed {minutes} minutes {where}"


def _in_water(food: Food, grams: float) -> int:
    more = math.ceil(max(0.0, grams - _A_POUND_G) / _A_POUND_G) if food.kind in _IN_A_LUMP else 0
    return _THAWING.get(food.kind, _THAWING_ELSE) + _EACH_POUND_MORE * more


def thaws_overnight(lot: Lot, food: Food) -> bool:
    """Whether a thing out of the freezer is too thick for the same evening."""
    if not thaws(lot, food):
        return False
    if is_whole_fish(food, lot.line):
        return whole_fish_g(lot.line).typical > _LARGE_FISH_G
    return food.id in _THICK and not _IN_PIECES.search(lot.line)


def why_not_frozen(lot: Lot) -> str | None:
    """Why a lot must stay out of the freezer, or None."""
    if lot.box is not None and not lot.box.freezes:
        return "this dish does not freeze well"
    return why_unfit(lot, use_shared=True)


def why_not_thawed(lot: Lot) -> str | None:
    """Why a lot must not come out of the freezer to be eaten, or None: thawing gives no food new days."""
    return why_unfit(lot, use_shared=True)


def frozen(lot: Lot, today: date) -> Lot:
    """The lot in the freezer since today; what its label said is kept."""
    return lot.model_copy(update={"place": "freezer", "dates": (*_labels(lot), LotDate(kind="frozen", on=today))})


def thawed(lot: Lot, today: date) -> Lot:
    """The lot back in the fridge, to be eaten within a day."""
    by = LotDate(kind="use-by", on=today + timedelta(days=_THAWED_DAYS))
    return lot.model_copy(update={"place": "fridge", "dates": (by,)})


def _labels(lot: Lot) -> tuple[LotDate, ...]:
    return tuple(one for one in lot.dates if one.kind != "frozen")


DAYS_AHEAD = 1  # what has more days left can wait for tomorrow: ours
# Sold alive: the cold kills them, and a dead one is thrown away (UK Food Standards Agency, recalled).
_KEPT_ALIVE = frozenset({"mussels"})
_LEAST_G = 15  # less is not worth a box: common practice, no source


class ToFreeze(BaseModel):
    """A lot for the freezer: edible grams, how to portion it, and for how many weeks it stays good."""

    model_config = ConfigDict(frozen=True)

    lot: str
    line: str
    food: str
    grams: float
    days_left: int
    how: str
    weeks: int
    source: str


def freeze_today(lots: Iterable[Lot], tables: Tables, days_ahead: int = DAYS_AHEAD) -> tuple[ToFreeze, ...]:
    """Lots of the fridge with `days_ahead` days or fewer, the most urgent first.

    Never what is past its day, what belongs in the bin, or what is somebody else's: by use-by at the latest is
    what the UK Food Standards Agency tells the public (recalled).
    """
    found = [one for lot in lots if (one := _to_freeze(lot, tables, days_ahead)) is not None]
    return tuple(sorted(found, key=lambda one: (one.days_left, -one.grams)))


def _to_freeze(lot: Lot, tables: Tables, days_ahead: int) -> ToFreeze | None:
    if lot.place != "fridge" or lot.to_bin or lot.grams < _LEAST_G or (lot.owner and not lot.owner_agrees):
        return None
    if lot.days_left is None or not 0 <= lot.days_left <= days_ahead:
        return None
    return for_the_freezer(lot, tables)


def freezer_keeping(food: Food, tables: Tables) -> Keeping | None:
    """How a food is frozen and how long it keeps then; None for what does not freeze."""
    keeps = tables.keeping_of(food, "freezer", "cooked" if food.state in COOKED_STATES else "whole")
    return keeps if keeps is not None and keeps.days else None


def for_the_freezer(lot: Lot, tables: Tables) -> ToFreeze | None:
    """A lot that has days left as it goes into the freezer; None where it does not freeze, or has none."""
    keeps = freezer_keeping(tables.food_by_id[lot.food], tables)
    if keeps is None or lot.days_left is None or lot.food in _KEPT_ALIVE:
        return None
    return ToFreeze(
        lot=lot.id,
        line=lot.line,
        food=lot.food,
        grams=lot.grams,
        days_left=lot.days_left,
        how=keeps.how_or_why,
        weeks=keeps.days // 7,
        source=keeps.source,
    )
