"""What a dinner takes of the larder: lots by their id, no more than is there, nothing unsafe, nothing of others.

The days of a lot are read from its dates and from keeping.csv: what the larder says about them is not trusted. A box
keeps no longer than leftovers at all and each of its parts, whatever it says; that it says less (of a dish that is best
soon, of rice that was cooked the day before) cannot be made again from its parts and is believed.
Nothing of calmlarder is imported here on purpose.
"""

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.tables import Row, rows

Lot = Mapping[str, Any]
COOKED = {"cooked", "boiled", "roasted"}
_SINCE_YESTERDAY = 1  # a pack that is open since nobody knows when
# Vegetables that the tables may know raw alone: made some day, they keep as what is cooked.
_NO_OTHER_FOOD_COOKED = {
    "leaf", "brassica", "root", "squash", "mushroom", "pepper", "pod", "shoot", "stem", "fruit-vegetable", "sweetcorn",
}  # fmt: skip
_BOX_FROZEN_DAYS = 90
_WEEK, _FAR_BEYOND = 7, 2  # days once opened of what spoils soon, and how often them nobody eats it at all: ours
_LEFTOVER_DAYS = 2  # in the fridge: UK Food Standards Agency (recalled)


def amount_faults(dinner: Mapping[str, Any], lots: Sequence[Lot]) -> list[str]:
    """Grams that are not there, lots that are none, a lot called by another name."""
    there = {lot["id"]: lot for lot in lots}
    faults = [f"{len(lots) - len(there)} lots share an id"] if len(there) != len(lots) else []
    used: dict[str, Decimal] = {}
    for use in dinner["uses"]:
        lot = there.get(use["lot"])
        if lot is None:
            faults.append(f"lot {use['lot']} (`{use['line']}`) is not in the larder")
            continue
        if (use["line"], use["food"]) != (lot["line"], lot["food"]):
            faults.append(f"lot {use['lot']} is `{lot['line']}`, {lot['food']}, not `{use['line']}`, {use['food']}")
        used[use["lot"]] = used.get(use["lot"], Decimal(0)) + Decimal(use["grams"])
        if Decimal(use["grams"]) <= 0:
            faults.append(f"{use['grams']} g of `{use['line']}`")
    return faults + [
        f"{grams} g of `{there[lot]['line']}` where there are {there[lot]['grams']} g"
        for lot, grams in used.items()
        if grams > Decimal(str(there[lot]["grams"]))
    ]


def lot_faults(
    dinner: Mapping[str, Any],
    lots: Sequence[Lot],
    request: Mapping[str, Any],
    foods: Mapping[str, Row],
    keeping: Mapping[tuple[str, ...], Row],
) -> list[str]:
    """What may not be eaten on the day of the request: past a day of safety, for the bin, or somebody else's."""
    faults = []
    by_id = {lot["id"]: lot for lot in lots}
    day = date.fromisoformat(str(request["today"]))
    for use in dinner["uses"]:
        lot = by_id.get(use["lot"])
        if lot is None or lot["food"] != use["food"]:
            continue  # said already
        last = last_safe_day(lot, foods, keeping, day)
        if lot["to_bin"] or (last is not None and last < day):
            faults.append(f"`{use['line']}` is not safe to eat")
        if open_for_days(lot, foods, keeping, day) > _FAR_BEYOND:
            faults.append(f"`{use['line']}` has been open for more than twice the days it keeps")
        if set(lot.get("label_allergens", ())) & set(request["avoid"]):
            faults.append(f"`{use['line']}` names on its label what is to be avoided")
        if lot["owner"] and not (lot["owner_agrees"] or request["use_shared"]):
            faults.append(f"`{use['line']}` is somebody else's")
    return faults


def open_for_days(lot: Lot, foods: Mapping[str, Row], keeping: Mapping[tuple[str, ...], Row], today: date) -> Fraction:
    """How often the days that it keeps once opened a lot in the fridge has been open; 0 of what keeps over a week."""
    opened = [one["on"] for one in lot["dates"] if one["kind"] == "opened" and one["on"] is not None]
    food = foods.get(lot["food"])
    if not opened or food is None or lot["place"] != "fridge" or any(one["kind"] == "frozen" for one in lot["dates"]):
        return Fraction(0)
    row = keeping_row(food, "fridge", "opened", keeping)
    if row is None or int(row["days"]) > _WEEK or int(row["days"]) < 1:
        return Fraction(0)
    return Fraction((today - min(date.fromisoformat(str(on)) for on in opened)).days, int(row["days"]))


def opened_faults(
    dinner: Mapping[str, Any],
    lots: Sequence[Lot],
    today: date,
    keeping: Mapping[tuple[str, ...], Row],
    read: tuple[Mapping[str, Row], Mapping[str, Any]],
) -> list[str]:
    """What has been open for longer than it keeps is not served cold. `read`: the foods, and the dish's pattern."""
    foods, pattern = read
    by_id = {lot["id"]: lot for lot in lots}
    cold = [use for use in dinner["uses"] if use["lot"] in by_id and pattern["slots"][use["slot"]]["method"] == "raw"]
    return [
        f"`{use['line']}` has been open for longer than it keeps, and is served cold"
        for use in cold
        if open_for_days(by_id[use["lot"]], foods, keeping, today) > 1
    ]


def last_safe_day(
    lot: Lot, foods: Mapping[str, Row], keeping: Mapping[tuple[str, ...], Row], today: date
) -> date | None:
    """The earliest of all days of a lot after which it must not be eaten; None where none is about safety."""
    return min((on for on, is_safety in days_of(lot, foods, keeping, today) if is_safety), default=None)


def days_of(
    lot: Lot, foods: Mapping[str, Row], keeping: Mapping[tuple[str, ...], Row], today: date
) -> list[tuple[date, bool]]:
    """The last day by each date of a lot that counts, and whether it is about safety.

    `foods` are rows by id, those of the parts of a boxed dish among them. In the freezer only what had run out before
    it was frozen counts.
    """
    dates = [(one["kind"], None if one["on"] is None else date.fromisoformat(str(one["on"]))) for one in lot["dates"]]
    frozen = min((on for kind, on in dates if kind == "frozen" and on is not None), default=None)
    found = []
    for kind, on in dates:
        if kind in {"use-by", "best-before"}:
            last = None if on is None else (on, kind == "use-by")
        elif kind == "frozen" and lot["place"] != "freezer":
            continue
        else:
            place = "fridge" if lot["place"] == "freezer" and frozen is not None and kind != "frozen" else lot["place"]
            days = _keeps(kind, place, foods, lot, keeping)
            since = on or today - timedelta(days=_SINCE_YESTERDAY)
            last = None if days is None else (since + timedelta(days=days[0]), days[1])
        stopped = lot["place"] == "freezer" and frozen is not None and kind != "frozen"
        if last is not None and not (stopped and frozen is not None and last[0] >= frozen):
            found.append(last)
    return found


def _keeps(
    kind: str, place: str, foods: Mapping[str, Row], lot: Lot, keeping: Mapping[tuple[str, ...], Row]
) -> tuple[int, bool] | None:
    """Days since one of its dates, and whether they are about safety."""
    food = foods.get(lot["food"])
    if food is None:
        if place == "fridge":
            return (_box_keeps(lot["box"], foods, keeping), True) if kind == "made" else None
        return (_BOX_FROZEN_DAYS, False) if kind == "frozen" and lot["box"]["freezes"] else None
    cooked = kind == "made" and food["state"] == "raw" and food["kind"] in _NO_OTHER_FOOD_COOKED
    if cooked or (kind in {"made", "frozen", "noted"} and food["state"] in COOKED):
        state = "cooked"
    else:
        state = {"made": "opened", "opened": "opened", "bought": "whole", "frozen": "whole", "noted": "whole"}[kind]
    if food["state"] == "dry" and place == "fridge":  # the days there are those of what is cooked
        place = "cupboard"
    row = keeping_row(food, place, state, keeping)
    if row is None and place == "cupboard":  # out of the fridge it keeps no longer than in it
        row = keeping_row(food, "fridge", state, keeping)
        row = row if row is not None and row["kind"] == "safety" else None
    return None if row is None else (int(row["days"]), row["kind"] == "safety")


def _box_keeps(box: Mapping[str, Any], foods: Mapping[str, Row], keeping: Mapping[tuple[str, ...], Row]) -> int:
    """Days in the fridge: what the box says, leftovers at all, and each part once it is cooked; the least of them."""
    parts = (keeping_row(foods[part["food"]], "fridge", "cooked", keeping) for part in box["mixture"]["parts"])
    known = (int(row["days"]) for row in parts if row is not None and row["kind"] == "safety")
    return min(int(box["keeps_days"]), _LEFTOVER_DAYS, *known)


def keeping_of(folders: Sequence[Path], foods: Mapping[str, Row]) -> dict[tuple[str, ...], Row]:
    """The rows of keeping.csv for these foods and their kinds."""
    asked = {*foods} | {f"kind:{food['kind']}" for food in foods.values()}
    return rows(folders, "keeping.csv", ("food", "place", "state"), asked)


def keeping_row(food: Row, place: str, state: str, keeping: Mapping[tuple[str, ...], Row]) -> Row | None:
    """How long a food keeps: its own row, else that of its kind."""
    return keeping.get((food["id"], place, state)) or keeping.get((f"kind:{food['kind']}", place, state))
