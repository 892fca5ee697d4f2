"""A lot over the days: its last day, what opening it starts, and what is left of it as time goes by."""

from collections.abc import Sequence
from datetime import date, timedelta
from typing import NamedTuple

from calmlarder.compose.offer import unit_grams, unit_of
from calmlarder.compose.problem import PERISHABLE_KEEPS_DAYS, PORTION
from calmlarder.intake.load import load_profile_of
from calmlarder.larder.freezing import freezer_keeping, frozen
from calmlarder.larder.lot import Lot, why_unfit
from calmlarder.plan.weights import GRACE_DAYS, PORTIONS_IN_A_BOX, UNDATED_PERCENT, risk_percent, waste_percent
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES

# Sold in a pack that is whole until it is cut open; of carrots the rest stays whole. Ours, no source.
_PACKED_KINDS = frozenset({
    "tofu", "tempeh", "soya", "seitan", "cheese", "yoghurt", "fish", "shellfish", "poultry", "meat", "plant-drink",
    "milk", "cream", "juice", "stock", "sauce",
})  # fmt: skip
# What of them comes out of the freezer is another food: beaten, watery, parted. Ours; common practice, no source.
_NOT_FROZEN_FOR_LATER = frozenset({"egg", "potato", "yoghurt", "boxed"})
_DRY_GOODS_DAYS = 180  # what keeps so long in a cupboard is no worse a little past its best; ours


class StockItem(NamedTuple):
    """A lot, numbered as in the larder. `units` of `unit` grams are dealt out; less than one is no waste.

    `portion_units` are the portions of food in a unit, in the model's fractions; a boxed dish is several.
    `day` is the last day by its nearest date, `safety_day` the last on which it may be eaten at all, `opened_days`
    how long it keeps once a sitting opens it (None where it is open already, or nothing changes). What a sitting takes
    past `day` is frozen today, and keeps `frozen_days` then (None where it is not frozen for that); of `dry_goods` it
    is cooked as it is.
    """

    place: int
    lot: Lot
    food: Food
    unit: int
    units: int
    portion_units: int
    day: date | None
    safety_day: date | None
    opened_days: int | None
    perishable: bool
    countable: bool
    frozen_days: int | None
    dry_goods: bool

    def usable(self, on: date, today: date) -> bool:
        """Whether a sitting on that day may use it as it lies there: past its last day only what is dry."""
        if self.safety_day is not None and on > self.safety_day:
            return False
        if self.day is None or on <= max(self.day, today):
            return True
        return self.dry_goods and self._little_later(on, today)

    def thawed(self, on: date, today: date) -> bool:
        """Whether a sitting on that day takes it out of the freezer, where it was put today."""
        if self.frozen_days is None or self.day is None or self.day < today or self.usable(on, today):
            return False
        return self._little_later(on, today) and (self.safety_day is None or on <= self.safety_day)

    def _little_later(self, on: date, today: date) -> bool:
        return self.day is not None and on <= max(self.day, today) + timedelta(days=GRACE_DAYS)

    def risk(self, on: date, today: date) -> int:
        """How much of what is eaten on that day counts as wasted by then, in percent; none of it today."""
        if self.day is None or not self.countable or on == today:
            return 0
        days = (max(self.day, today) - on).days
        return 0 if days >= 0 and self.day == self.safety_day else risk_percent(days)

    def percent(self, end: date, today: date) -> int:
        """How much of what is left counts as wasted, in percent."""
        if not self.countable:
            return 0
        if self.day is None:
            return UNDATED_PERCENT if self.perishable else 0
        return waste_percent((max(self.day, today) - end).days)

    def opened_percent(self, opened: date, end: date) -> int:
        """The same once it was opened on that day; 0 where opening changes nothing."""
        if self.opened_days is None or not self.countable:
            return 0
        return waste_percent((opened + timedelta(days=self.opened_days) - end).days)

    def on_day(self, on: date) -> Lot:
        """The lot as it stands on a day when nobody has touched it."""
        if self.day is None:
            return self.lot
        safe = None if self.safety_day is None else (self.safety_day - on).days
        return self.lot.model_copy(update={"days_left": (self.day - on).days, "safety_days_left": safe})

    def from_freezer(self, on: date, today: date) -> Lot:
        """The lot as it stands on a day when it was frozen today."""
        left = (self.frozen_days or 0) - (on - today).days
        update = {"days_left": left, "days_from": "frozen", "safety_days_left": None, "safety_from": ""}
        return frozen(self.lot, today).model_copy(update=update)


def shelves_of(lots: Sequence[Lot], today: date, use_shared: bool, tables: Tables) -> tuple[StockItem, ...]:
    """Every lot of the larder, in its order."""
    return tuple(_shelf(place, lot, today, use_shared, tables) for place, lot in enumerate(lots))


def _shelf(place: int, lot: Lot, today: date, use_shared: bool, tables: Tables) -> StockItem:
    food = tables.food_by_id[lot.food]
    # As dishes take it; of what has no figures none does.
    known = not tables.unknown_of(food.id)
    unit = unit_of(lot, food, load_profile_of(food, tables), tables) if known else unit_grams(food, tables)
    keeps = tables.keeping_of(food, "fridge", "whole")
    shut = tables.keeping_of(food, "cupboard", "whole")
    return StockItem(
        place=place,
        lot=lot,
        food=food,
        unit=unit,
        units=int(lot.grams) // unit,
        portion_units=round(PORTION * unit / float(food.portion_g))
        * (PORTIONS_IN_A_BOX if food.kind == "boxed" else 1),
        day=_after(today, lot.days_left),
        safety_day=_after(today, lot.safety_days_left),
        opened_days=_opened_days(lot, food, tables),
        perishable=lot.place == "fridge" and keeps is not None and keeps.days <= PERISHABLE_KEEPS_DAYS,
        countable=not food.is_staple and lot.place != "freezer" and why_unfit(lot, use_shared) is None,
        frozen_days=_frozen_days(lot, food, tables),
        dry_goods=lot.place == "cupboard" and shut is not None and shut.days >= _DRY_GOODS_DAYS and not lot.condition,
    )


def _frozen_days(lot: Lot, food: Food, tables: Tables) -> int | None:
    if lot.place == "freezer" or food.kind in _NOT_FROZEN_FOR_LATER:
        return None
    keeps = freezer_keeping(food, tables)
    return None if keeps is None else keeps.days


def _after(today: date, days: int | None) -> date | None:
    """What follows from today is pinned to today's date."""
    return None if days is None else today + timedelta(days=days)


def _opened_days(lot: Lot, food: Food, tables: Tables) -> int | None:
    if lot.opened or food.is_staple or lot.place == "freezer":
        return None
    if food.kind not in _PACKED_KINDS and food.state not in CANNED_STATES:
        return None
    row = tables.keeping_of(food, "fridge", "opened")
    return row.days if row else None
