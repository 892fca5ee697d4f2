"""A lot: one thing in the larder, how much of it there is, and how many days it has left."""

from datetime import date
from typing import Literal

from pydantic import BaseModel, ConfigDict


class Lot(BaseModel):
    """Grams are of the edible food as it stands. `days_left` is None where nothing presses."""

    model_config = ConfigDict(frozen=True)

    line: str
    food: str
    grams_low: float
    grams: float
    grams_high: float
    place: Literal["fridge", "freezer", "cupboard"]
    opened: bool
    date: "date | None"
    date_kind: Literal["use-by", "best-before", "opened", "made", "bought"] | None
    days_left: int | None
    days_from: str
    safety: bool
    condition: str | None
    to_bin: bool
    owner: str | None
    owner_agrees: bool
