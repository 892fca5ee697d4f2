"""A lot: one thing in the larder, how much of it there is, and how many days it has left."""

from collections.abc import Iterable
from datetime import date
from typing import Literal

from pydantic import BaseModel, ConfigDict

from calmlarder.and_list import whose
from calmlarder.larder.box import Box
from calmlarder.larder.with_bones import without_bones
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Allergen

CRUMB_GRAMS = 5  # of a lot, less than this is nothing left: common practice, no source


class LotDate(BaseModel):
    """A day of a lot and what it says.

    `assumed`: the line says that it is open and not since when, and the day before it was typed was taken.
    """

    model_config = ConfigDict(frozen=True)

    kind: Literal["use-by", "best-before", "opened", "made", "bought", "frozen", "noted"]
    on: "date | None"
    assumed: bool = False


class Lot(BaseModel):
    """Grams are of the edible food as it stands.

    `id` is its number in the store; in a file its line and which thing of that line it is, such as `12.1`. It is what
    a dish, a box, the log and the store call the lot by: two lots may share their words and their food.
    `days_left` counts to the nearest of its days, None where nothing presses; `safety_days_left` to the nearest after
    which it must not be eaten, whatever else came before it.
    """

    model_config = ConfigDict(frozen=True)

    id: str
    line: str
    food: str
    grams_low: float
    grams: float
    grams_high: float
    place: Literal["fridge", "freezer", "cupboard"]
    opened: bool
    dates: tuple[LotDate, ...]
    days_left: int | None
    days_from: str
    safety_days_left: int | None
    safety_from: str
    condition: str | None
    to_bin: bool
    owner: str | None
    owner_agrees: bool
    box: Box | None = None
    always: bool = False  # said to be there at all times: of usual pack size, and never cooked away
    assumed: tuple[str, ...] = ()  # what its line leaves unsaid and was taken for granted, in words (`dry`)
    label: str = ""  # the list of ingredients on its packet, as it was typed
    label_allergens: tuple[Allergen, ...] = ()  # that list names them, or says that there may be traces
    label_triggers: tuple[str, ...] = ()  # words of that list that surely hold what the food's figures do not count
    kept_for: str | None = None  # what the cook keeps it for (`tomorrow's lunch`): theirs, but not for tonight

    @property
    def is_unsafe(self) -> bool:
        """Whether any day after which it must not be eaten has passed."""
        return self.safety_days_left is not None and self.safety_days_left < 0

    @property
    def days_estimated(self) -> bool:
        """Whether its days are no label's: what is fresh keeps so long from the day it was typed."""
        return any(one.kind == "noted" for one in self.dates)

    @property
    def first_date(self) -> LotDate | None:
        """The earliest day the line gives, or what it says without one."""
        dated = [one for one in self.dates if one.on is not None and one.kind != "noted" and not one.assumed]
        return (
            min(dated, key=lambda one: one.on or date.max)
            if dated
            else next((one for one in self.dates if one.on is None or one.assumed), None)
        )


_WORDS = {"made": "made", "opened": "opened", "bought": "bought", "use-by": "use by", "best-before": "best before",
          "frozen": "frozen", "noted": "noted"}  # fmt: skip


def lot_line(lot: Lot, tables: Tables) -> str:
    """Grams of the edible food, its dates, condition, place and owner."""
    food = tables.food_by_id[lot.food]
    parts = [f"{'always have: ' if lot.always else ''}{lot.grams:g} g {without_bones(food, food.name)}"]
    parts += [f"{_WORDS[one.kind]} {one.on.isoformat()}" if one.on else _WORDS[one.kind] for one in lot.dates]
    parts += [lot.condition] if lot.condition else []
    owner = f" ({whose(lot.owner)}{', ok' if lot.owner_agrees else ''})" if lot.owner else ""
    return f"{', '.join(parts)}, in the {lot.place}{owner}"


def with_labels_of(lot: Lot, parts: Iterable[Lot]) -> Lot:
    """What is made of several lots holds what their labels name."""
    found = list(parts)
    return lot.model_copy(
        update={
            "label_allergens": tuple(dict.fromkeys(one for part in found for one in part.label_allergens)),
            "label_triggers": tuple(dict.fromkeys(one for part in found for one in part.label_triggers)),
        }
    )


def is_last_day(lot: Lot) -> bool:
    """By its label or by what is safe; an estimate of how long it is at its best is no such day."""
    return lot.safety_days_left == 0 or (lot.days_left == 0 and not lot.days_estimated)


def why_unfit(lot: Lot, use_shared: bool = False) -> str | None:
    """Why nobody may cook with this lot, or None; `use_shared` lets others' things pass."""
    if lot.to_bin:
        return f"{lot.condition}: put it in the bin, do not taste it"
    if lot.is_unsafe:
        past = f"past the day it is safe to eat ({lot.safety_from}): do not eat, cook or freeze it"
        return f"it belongs to {lot.owner}, and is {past}" if lot.owner and not lot.owner_agrees else past
    if lot.owner and not (lot.owner_agrees or use_shared):
        return f"it belongs to {lot.owner}: ask first, then write ({whose(lot.owner)}, ok) behind it"
    if lot.kept_for:
        return f"it is kept for {lot.kept_for}: write the line without that to use it now"
    return None
