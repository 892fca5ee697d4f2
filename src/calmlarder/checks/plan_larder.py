"""What the dishes of a plan draw from the larder, each on its day: there still, not past it, thawed in time.

Nothing of calmlarder is imported here but the other checks.
"""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any, NamedTuple

from calmlarder.checks.lots import COOKED, days_of, keeping_row
from calmlarder.checks.patterns import pattern_of
from calmlarder.checks.shown import is_all_poorly
from calmlarder.checks.tables import Row

_PACKS = {
    "tofu", "tempeh", "soya", "seitan", "cheese", "yoghurt", "fish", "shellfish", "poultry", "meat", "plant-drink",
    "milk", "cream", "juice", "stock", "sauce",
}  # fmt: skip
_GRACE_DAYS = 2  # how long past its last day what is dry, or frozen, may still be planned: ours
_DRY_GOODS_DAYS = 180  # what a cupboard keeps so long is dry goods: ours
_NOT_FROZEN_FOR_LATER = {"egg", "potato", "yoghurt"}  # they come out as another food: common practice
_EATEN_THAWED = {"bread", "wrap", "fruit", "cheese", "butter", "milk", "juice", "sauce", "paste"}


def in_freezer(lot: Mapping[str, Any], today: date) -> Mapping[str, Any]:
    """A lot as it stands when it was frozen on the first day."""
    if lot["place"] == "freezer":
        return lot
    dates = [one for one in lot["dates"] if one["kind"] != "frozen"]
    return {**lot, "place": "freezer", "dates": [*dates, {"kind": "frozen", "on": today.isoformat()}]}


def too_little_frozen(plan: Mapping[str, Any], lots: Sequence[Mapping[str, Any]]) -> list[str]:
    """What a later sitting takes out of the freezer is put into it today."""
    frozen: dict[str, Decimal] = {lot["id"]: Decimal(str(lot["grams"])) for lot in lots if lot["place"] == "freezer"}
    for one in plan["freeze_today"]:
        frozen[one["lot"]] = frozen.get(one["lot"], Decimal(0)) + Decimal(str(one["grams"]))
    for one in plan["sittings"]:
        for use in one["dinner"]["uses"] if one["dinner"] and one["leftover_of"] is None else ():
            if use["lot"] in one["from_freezer"]:
                frozen[use["lot"]] = frozen.get(use["lot"], Decimal(0)) - Decimal(use["grams"])
    lines = {lot["id"]: lot["line"] for lot in lots}
    return [f"of `{lines[lot]}` {-left} g more are thawed than frozen" for lot, left in frozen.items() if left < 0]


def thawed_raw(dinner: Mapping[str, Any], thawed: frozenset[str], larder: "LarderLeft", recipes: Path) -> list[str]:
    """What freezes as a food to be cooked is not eaten as it thaws."""
    slots = pattern_of(recipes, dinner["pattern"])["slots"]
    already = {lot["id"] for lot in larder.lots if lot["place"] == "freezer"}
    return [
        f"`{use['line']}` was frozen and is eaten raw"
        for use in dinner["uses"]
        if use["lot"] in thawed - already
        and slots[use["slot"]]["method"] == "raw"
        and larder.foods[use["food"]]["kind"] not in _EATEN_THAWED
    ]


def pinned(lot: Mapping[str, Any], today: date) -> Mapping[str, Any]:
    """What is open since nobody knows when is open since the day before the plan begins, on which the line was read."""
    since = (today - timedelta(days=1)).isoformat()
    dates = [{**one, "on": since} if one["on"] is None and one["kind"] == "opened" else one for one in lot["dates"]]
    return {**lot, "dates": dates, "read_on": today.isoformat()}


def days_in_a_dish(food: Row, keeping: Mapping[tuple[str, ...], Row]) -> int | None:
    """Days that a food keeps in the fridge in a cooked dish; what is never kept cooked (oil, spices) as once opened.

    None where no row says so.
    """
    known = (("fridge", "cooked"), ("fridge", "opened"), ("cupboard", "opened"))
    days = (days_kept(food, place, state, keeping) for place, state in known)
    return next((some for some in days if some is not None), None)


def days_kept(food: Row, place: str, state: str, keeping: Mapping[tuple[str, ...], Row]) -> int | None:
    """Days that a food keeps there in that state; None where no row says so."""
    row = keeping_row(food, place, state, keeping)
    return int(row["days"]) if row else None


class LarderLeft(NamedTuple):
    """What is there on the first day, what is left of each lot, and since when packs are open."""

    today: date
    lots: Sequence[Mapping[str, Any]]
    stock: list[Decimal]
    opened: dict[int, date]
    foods: Mapping[str, Row]
    keeping: Mapping[tuple[str, ...], Row]


def take(use: Mapping[str, Any], day: date, larder: LarderLeft, thawed: bool = False) -> list[str]:
    """Take it from its lot, if that holds it and may be eaten that day; `thawed` out of the freezer, since today."""
    faults: list[str] = []
    stock, opened = larder.stock, larder.opened
    for place, lot in enumerate(larder.lots):
        if lot["id"] != use["lot"]:
            continue
        faults = _past(lot, day, larder, thawed)
        if stock[place] < Decimal(use["grams"]):
            faults.append(f"{use['grams']} g of `{use['line']}` where {stock[place]} g are left")
        food = larder.foods.get(use["food"])  # a boxed dish is no food of the tables, and no pack that is opened
        if food and _packed(food) and not (lot["opened"] or thawed) and lot["place"] != "freezer":
            since = opened.get(place, day)
            days = days_kept(food, "fridge", "opened", larder.keeping)
            if days is not None and (day - since).days > days:
                faults.append(f"`{use['line']}` was opened on {since} and keeps {days} days")
        if not faults:
            opened.setdefault(place, day)
            stock[place] -= Decimal(use["grams"])
            return []
    return faults or [f"`{use['line']}` is not in the larder"]


def _packed(food: Row) -> bool:
    packed = food["kind"] in _PACKS or food["state"] in {"canned", "canned drained"}
    return packed and food["staple"] != "yes"


def _past(lot: Mapping[str, Any], day: date, larder: LarderLeft, thawed: bool) -> list[str]:
    """Whether it is past its last day then: an estimate of what is fresh counts, of dry goods it may pass a little."""
    days = [on for on, _ in days_of(lot, larder.foods, larder.keeping, larder.today)]
    days += [larder.today + timedelta(days=1)] if is_all_poorly(lot) else []
    last, food = min(days, default=day), larder.foods.get(lot["food"])
    if day <= max(last, larder.today) or lot["place"] == "freezer":
        return []
    keeps = None if food is None else days_kept(food, "cupboard", "whole", larder.keeping)
    dry = lot["place"] == "cupboard" and (keeps or 0) >= _DRY_GOODS_DAYS and not lot.get("condition")
    if (dry or thawed) and day > max(last, larder.today) + timedelta(days=_GRACE_DAYS):
        return [f"`{lot['line']}` is long past its last day, {last}"]
    if dry:
        return []
    if not thawed:
        return [f"`{lot['line']}` is past its last day, {last}, and not said to be frozen before"]
    if last < larder.today:
        return [f"`{lot['line']}` is past its last day, {last}, and is not frozen any more"]
    state = "cooked" if food and food["state"] in COOKED else "whole"
    freezes = 0 if food is None else days_kept(food, "freezer", state, larder.keeping) or 0
    if food is None or food["kind"] in _NOT_FROZEN_FOR_LATER or not freezes:
        return [f"`{lot['line']}` is no food to freeze for later"]
    return []
