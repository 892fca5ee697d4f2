"""Recompute a plate from the CSV rows, sharing no code with what judged it.

Nothing of calmlarder is imported here but the other checks.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.allergens import held_by
from calmlarder.checks.dose import dose_faults, exempted
from calmlarder.checks.loads import Figures, Part, apart, plate_of
from calmlarder.checks.own_limits import limits_for
from calmlarder.checks.shown_loads import Recount, shown_faults
from calmlarder.checks.tables import figures_of, mixtures, rows, within
from calmlarder.checks.within_limits import limit_faults


def verify(answer: Mapping[str, Any], request: Mapping[str, Any], table_folders: Sequence[Path]) -> tuple[str, ...]:
    """What is wrong with the answer of `plate`; nothing when it holds.

    `request` holds `table` for several who are named, and profile, sitting, people and tolerance; `doses` a challenge's
    dose on the plate, `most_g` the end of each food's range, `boxes` the boxed dishes by food, and `eaten` with
    `stacking` what was eaten before, where there is any.
    """
    boxes = request.get("boxes") or {}
    used = {one["food"] for one in answer["foods"]} - {*boxes}
    used |= {part["food"] for box in boxes.values() for part in box["mixture"]["parts"]}
    mixed = mixtures(table_folders, used)
    foods = {row["id"]: row for row in rows(table_folders, "foods.csv", ("id",), within(used, mixed)).values()}
    people = request["people"]
    figures: Figures = figures_of(table_folders, mixed, used)
    limits = limits_for(table_folders, request, request["sitting"])
    dosed = {"uses": answer["foods"], "people": people}
    wrong_dose = list(dose_faults(dosed, request, foods, figures))
    figures = exempted(figures, request)

    most = request.get("most_g") or [one["grams"] for one in answer["foods"]]
    found: list[Part] = []
    for one, high in zip(answer["foods"], most, strict=True):
        grams = Fraction(str(one["grams"]))
        if one["food"] in boxes:
            found += plate_of({"uses": [{**one, "grams": grams}]}, boxes)
            continue
        is_weighed = one["how"] == "weigh" or one["food"] in answer["weigh"]
        wider = max(Fraction(0), Fraction(str(high)) - grams) / grams if grams else Fraction(0)
        found.append(Part(one["food"], one["food"], grams, is_weighed, Fraction(1), wider=wider))
    as_told = apart(found, mixed, figures)
    faults = _limit_faults(as_told, request, table_folders, (foods, figures))
    told = shown_faults(answer, Recount(as_told, limits, people, request["tolerance"], (foods, figures)))
    told += wrong_dose
    avoided = _avoided(answer, request, mixed, foods)
    if avoided != {one["food"]: set(one["allergens"]) for one in answer.get("avoided", ())}:
        told.append(f"what is left out and on the plate is {avoided}")
    if avoided and answer["fits"] is not False:
        told.append("it holds what is left out, and is not said not to fit")
    if avoided:
        return tuple(told)  # it does not fit, whatever the limits say
    if answer["fits"] is not False:
        return (*told, *faults)
    if not faults:
        told.append("is said not to fit, and does")
    return tuple(told)


def _avoided(
    answer: Mapping[str, Any],
    request: Mapping[str, Any],
    mixed: Mapping[str, Mapping[str, Fraction]],
    foods: Mapping[str, Any],
) -> dict[str, set[str]]:
    """Foods of the plate that hold what the request says to avoid, by themselves or in what is in them."""
    boxes, found = request.get("boxes") or {}, {}
    for one in answer["foods"]:
        parts = {part["food"] for part in boxes[one["food"]]["mixture"]["parts"]} if one["food"] in boxes else None
        rows_in = [foods[food] for food in within(parts or {one["food"]}, mixed) if food in foods]
        if met := held_by(rows_in) & set(request.get("avoid") or ()):
            found[one["food"]] = met
    return found


def _limit_faults(
    plate: Sequence[Part], request: Mapping[str, Any], folders: Sequence[Path], read: tuple[Mapping[str, Any], Figures]
) -> list[str]:
    """Of several who are named each by their own limits, share and past."""
    table = request.get("table") or ()
    if not table:
        return limit_faults(plate, limits_for(folders, request, request["sitting"]), request["people"], request, read)
    whole = sum((Fraction(one["appetite"]) for one in table), Fraction(0))
    faults = []
    for one in table:
        mine = {**request, "stacking": None}
        if request.get("stacking") and not one["is_guest"]:
            mine["stacking"] = {**request["stacking"], "who": [one["who"]]}
        limits, shares = limits_for(folders, one, request["sitting"]), whole / Fraction(one["appetite"])
        faults += [f"{one['who']}: {fault}" for fault in limit_faults(plate, limits, shares, mine, read)]
    return faults
