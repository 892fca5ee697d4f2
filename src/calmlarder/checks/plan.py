"""Replay a plan day by day in exact arithmetic, sharing no code with the model.

Nothing of calmlarder is imported on purpose but the check of a dinner and the second reading of the tables.
"""

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.dinner import verify
from calmlarder.checks.loads import GROUPS, Part, apart, deviation, plate_of, sure_of, typical_of
from calmlarder.checks.lots import COOKED
from calmlarder.checks.patterns import pattern_of
from calmlarder.checks.plan_larder import (
    LarderLeft,
    days_in_a_dish,
    in_freezer,
    pinned,
    take,
    thawed_raw,
    too_little_frozen,
)
from calmlarder.checks.tables import Row, figures_of, mixtures, rows

_LEFTOVER_DAYS = 2  # UK Food Standards Agency: leftovers within two days
_OF_SITTING = {"apart", "portions", "minutes", "cautions"}  # what parts served apart change of a dinner
_COLD = {"salad-leaf", "fruit-vegetable"}  # common practice, no source
_APART_DAYS = 3  # a dish again on the third day at the earliest: the plan's own promise


def verify_plan(
    plan: Mapping[str, Any],
    request: Mapping[str, Any],
    lots: Sequence[Mapping[str, Any]],
    table_folders: Sequence[Path],
    recipes: Path,
) -> tuple[str, ...]:
    """What is wrong with a plan; nothing when it holds.

    `plan` is the JSON object shown, with `people`, `protein_g` and `minutes` of each sitting; `request` is that of
    `compose.verify` for what all sittings share; `lots` is the larder of the first day as plain values.
    """
    faults: list[str] = []
    foods = {row["id"]: row for row in rows(table_folders, "foods.csv", ("id",)).values()}
    keeping = rows(table_folders, "keeping.csv", ("food", "place", "state"))
    boxes = {lot["food"]: lot["box"] for lot in lots if lot.get("box")}
    mixed, figures = _composition(plan, boxes, table_folders)
    today = date.fromisoformat(str(request["today"]))
    lots = [pinned(lot, today) for lot in lots]
    larder = LarderLeft(today, lots, [Decimal(str(lot["grams"])) for lot in lots], {}, foods, keeping)
    eaten: list[dict[str, Any]] = list(request.get("eaten") or ())
    larders: dict[int, list[Mapping[str, Any]]] = {}  # as each dish was cooked from it
    sittings = plan["sittings"]
    for number, one in enumerate(sittings):
        dinner = one["dinner"]
        if dinner is None:
            continue
        day = datetime.fromisoformat(one["at"]).date()
        found = _repeats(sittings, number)
        cook = one if one["leftover_of"] is None else sittings[one["leftover_of"]]
        asked = {**_asked(one, cook, request), "eaten": eaten}
        if one is cook:
            found += _cooked(one, day, larder, recipes)
            there = larders[number] = _cooked_from(one, larder)
            found += _served(sittings, number)
        else:
            there = larders.get(one["leftover_of"], list(lots))
            found += _leftover(one, cook, foods, keeping)
            found += _salad_warmed(one, foods, recipes)
            for part in dinner.get("apart", ()):
                found += take(part, day, larder)
        if not _is_dish_for(one, cook, recipes):
            found.append(f"{dinner['pattern']} is no dish for it")
        found += verify(dinner, asked, there, table_folders, recipes)
        faults += [f"{one['sitting']} of {day}: {fault}" for fault in found]
        plate = apart(plate_of(dinner, boxes), mixed, figures)
        eaten += [_log(one, plate, (foods, figures), request, whose) for whose in _who_eats(dinner, request)]
        for part in dinner.get("apart", ()):
            its_plate = apart(plate_of({"uses": [part]}, boxes), mixed, figures)
            eaten += [_log(one, its_plate, (foods, figures), request, whose) for whose in _who_gets(part, request)]
    if "freeze_today" in plan:
        faults += too_little_frozen(plan, lots)
    return tuple(faults)


def _composition(
    plan: Mapping[str, Any], boxes: Mapping[str, Mapping[str, Any]], table_folders: Sequence[Path]
) -> tuple[Mapping[str, Any], Mapping[tuple[str, ...], Row]]:
    """What the mixtures of a plan are made of, and the figures of all foods in it."""
    dinners = [one["dinner"] for one in plan["sittings"] if one["dinner"] is not None]
    beside = [{"uses": [part]} for dinner in dinners for part in dinner.get("apart", ())]
    used = {part.food for dish in (*dinners, *beside) for part in plate_of(dish, boxes)}
    mixed = mixtures(table_folders, used)
    return mixed, figures_of(table_folders, mixed, used)


def _asked(one: Mapping[str, Any], cook: Mapping[str, Any], request: Mapping[str, Any]) -> dict[str, Any]:
    """The request of one sitting, for the check of its dinner; what was eaten before is not in it."""
    at = datetime.fromisoformat(one["at"])
    asked = {**request, "sitting": one["sitting"], "people": one["dinner"]["people"], "protein_g": one["protein_g"],
             "protein_floor_g": one["protein_floor_g"], "minutes": cook["minutes"],
             "today": at.date().isoformat(), "stacking": {**request["stacking"], "at": at.isoformat()}}  # fmt: skip
    # When it was cooked is what counts for the lots of a leftover.
    return asked if one is cook else {**asked, "use": [], "today": cook["at"][:10]}


def _cooked(one: Mapping[str, Any], day: date, larder: LarderLeft, recipes: Path) -> list[str]:
    """Take what a dish is cooked from out of the larder; what is wrong with that."""
    thawed = frozenset(one["from_freezer"])
    faults = list(thawed_raw(one["dinner"], thawed, larder, recipes))
    for use in one["dinner"]["uses"]:
        faults += take(use, day, larder, use["lot"] in thawed)
    for part in one["dinner"].get("apart", ()):
        faults += take(part, day, larder)
    return faults


def _cooked_from(one: Mapping[str, Any], larder: LarderLeft) -> list[Mapping[str, Any]]:
    """The larder that a dish was cooked from, where `larder` is what it left of it."""
    there: list[Mapping[str, Any]] = []
    for lot, before in zip(larder.lots, _before(larder.stock, one["dinner"], larder.lots), strict=True):
        # What is left of a pack that an earlier dish took from has no weight that anybody knows.
        unsure = {} if before == Decimal(str(lot["grams"])) else {"grams_low": "0"}
        as_frozen = in_freezer(lot, larder.today) if lot["id"] in one["from_freezer"] else lot
        there.append({**as_frozen, "grams": str(before), **unsure})
    return there


def _served(sittings: Sequence[Mapping[str, Any]], number: int) -> list[str]:
    """A dish has a share for each who eats of it, now or as a leftover."""
    served = sittings[number]["dinner"]["people"]
    eaters = sum(one["people"] for place, one in enumerate(sittings) if number in {place, one["leftover_of"]})
    return [] if eaters == served else [f"serves {served} where {eaters} eat"]


def _before(stock: Sequence[Decimal], dinner: Mapping[str, Any], lots: Sequence[Mapping[str, Any]]) -> list[Decimal]:
    """The larder before the dish was cooked, for the check of the dinner alone."""
    used: dict[str, Decimal] = {}
    for use in (*dinner["uses"], *dinner.get("apart", ())):
        used[use["lot"]] = used.get(use["lot"], Decimal(0)) + Decimal(use["grams"])
    return [left + used.get(lot["id"], Decimal(0)) for left, lot in zip(stock, lots, strict=True)]


def _dish(one: Mapping[str, Any]) -> dict[str, Any]:
    """A sitting's dish without what is served apart with it, which is of that sitting alone."""
    return {name: value for name, value in one["dinner"].items() if name not in _OF_SITTING}


def _leftover(
    one: Mapping[str, Any],
    cook: Mapping[str, Any],
    foods: Mapping[str, Row],
    keeping: Mapping[tuple[str, ...], Row],
) -> list[str]:
    """Eaten within its days, warmed up once, and the very dish that was cooked."""
    gap = (datetime.fromisoformat(one["at"]).date() - datetime.fromisoformat(cook["at"]).date()).days
    faults = [] if _dish(one) == _dish(cook) else ["is not the dish it is a leftover of"]
    if not 0 <= gap <= _LEFTOVER_DAYS or one["at"] <= cook["at"] or cook["leftover_of"] is not None:
        faults.append(f"is a leftover of {gap} days")
    for use in cook["dinner"]["uses"]:
        if use["how"] == "box":
            faults.append(f"`{use['line']}` would be boxed twice")
            continue
        food = foods[use["food"]]
        days = days_in_a_dish(food, keeping)
        if days is None or gap > days:
            faults.append(f"{food['id']} keeps {days} days once cooked, not {gap}")
        if food["state"] in COOKED:
            faults.append(f"{food['id']} would be warmed up twice")
    return faults


def _salad_warmed(one: Mapping[str, Any], foods: Mapping[str, Row], recipes: Path) -> list[str]:
    """No raw leaves and no cucumber in a box that is warmed."""
    pattern = pattern_of(recipes, one["dinner"]["pattern"])
    if one["sitting"] == "packed" and "packed" in pattern["sittings"]:
        return []
    raw = [use for use in one["dinner"]["uses"] if pattern["slots"][use["slot"]]["method"] == "raw"]
    cold = [use for use in raw if use["food"] in foods and foods[use["food"]]["kind"] in _COLD]
    return [f"`{use['line']}` would be warmed, and is raw" for use in cold]


def _repeats(sittings: Sequence[Mapping[str, Any]], number: int) -> list[str]:
    """No dish twice within three days unless its own leftover."""
    one = sittings[number]
    root = number if one["leftover_of"] is None else one["leftover_of"]
    day = datetime.fromisoformat(one["at"]).date()
    for before in range(number):
        other = sittings[before]
        if other["dinner"] is None or (before if other["leftover_of"] is None else other["leftover_of"]) == root:
            continue
        apart = (day - datetime.fromisoformat(other["at"]).date()).days
        if other["dinner"]["pattern"] == one["dinner"]["pattern"] and apart < _APART_DAYS:
            return [f"{one['dinner']['pattern']} again after {apart} days"]
    return []


def _is_dish_for(one: Mapping[str, Any], cook: Mapping[str, Any], recipes: Path) -> bool:
    """Cooked for a sitting it is a dish for; as leftovers it keeps so long, and a dinner may be a packed lunch."""
    pattern = pattern_of(recipes, one["dinner"]["pattern"])
    if one is cook:
        return one["sitting"] in pattern["sittings"]
    days = (datetime.fromisoformat(one["at"]).date() - datetime.fromisoformat(cook["at"]).date()).days
    lunch = (cook["sitting"], one["sitting"]) == ("dinner", "packed")
    return pattern["keeps_days"] >= max(1, days) and (lunch or one["sitting"] in pattern["sittings"])


def _who_eats(dinner: Mapping[str, Any], request: Mapping[str, Any]) -> list[tuple[str, Fraction]]:
    """Whose share is logged, and how many such shares the dish has: everybody's equal one where nobody is named."""
    table = request.get("table") or ()
    if not table:
        return [("everyone", Fraction(dinner["people"]))]
    meals = Fraction(dinner["people"], len(table))
    whole = sum((Fraction(eater["appetite"]) for eater in table), Fraction(0))
    return [(eater["who"], meals * whole / Fraction(eater["appetite"])) for eater in table]


def _who_gets(part: Mapping[str, Any], request: Mapping[str, Any]) -> list[tuple[str, Fraction]]:
    """Whose share of what is served apart is logged, and how many such shares it has."""
    those = [eater for eater in request["table"] if eater["who"] in part["for"]]
    whole = sum((Fraction(eater["appetite"]) for eater in those), Fraction(0))
    return [(eater["who"], whole / Fraction(eater["appetite"])) for eater in those]


def _log(
    one: Mapping[str, Any],
    plate: Sequence[Part],
    read: tuple[Mapping[str, Row], Mapping[tuple[str, ...], Row]],
    request: Mapping[str, Any],
    whose: tuple[str, Fraction],
) -> dict[str, Any]:
    """One person's share as an entry of the log, by item, food and group, in exact micrograms."""
    foods, figures = read
    sure, share = sure_of(request["tolerance"]), 1_000_000 / whose[1]
    loads = [
        {
            "item": part.item,
            "food": part.food,
            "cutoff_class": foods[part.food]["cutoff_class"],
            "group": group,
            "likely_ug": typical_of(figures, part.food, group) / 100 * part.grams * share,
            "off_ug": deviation(part, group, figures, sure) * share,
        }
        for part in plate
        for group in GROUPS
    ]
    return {"at": one["at"], "who": whose[0], "text": "", "loads": loads}
