"""Recompute what a substitute brings from the CSV rows in decimals, sharing no code with the ranking.

Nothing of calmlarder is imported here but the second reading of the tables, which imports nothing itself.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal
from pathlib import Path
from typing import Any

from calmlarder.checks.tables import DIETS, USUAL_EYE, Row, figures_of, foods_of, load_of, mixtures, rows

# Figures are rounded up to a milligram in 100 g, shown loads up and shown room down to a milligram.
_ROUNDED, _SHOWN = Decimal("0.00001"), Decimal("0.001")


def verify(answer: Mapping[str, Any], request: Mapping[str, Any], table_folders: Sequence[Path]) -> tuple[str, ...]:
    """What is wrong with the substitutes shown; nothing when all hold.

    `answer` is the JSON object of `swap`; `request` holds profile, diet and avoid, and
    `eye_percent` where it is not the usual; `beside` is what lies on the plate besides.
    """
    beside = list(request.get("beside", ()))
    used = {part["food"] for one in answer["substitutes"] for part in (*one["parts"], *beside)}
    mixed = mixtures(table_folders)
    foods = foods_of(table_folders, mixed, used)
    figures = figures_of(table_folders, mixed, used)
    all_caps = rows(table_folders, "caps.csv", ("profile", "scope", "group", "applies_to"))
    caps = [cap for cap in all_caps.values() if cap["profile"] == request["profile"]]
    eye = 1 + Decimal(request.get("eye_percent", USUAL_EYE)) / 100
    faults: list[str] = []
    for one in answer["substitutes"]:
        name = " + ".join(part["food"] for part in one["parts"])
        faults += [f"{name}: {fault}" for fault in _allowed(one, request, foods)]
        faults += [f"{name}: {fault}" for fault in _wrong(one, beside, caps, foods, figures, eye)]
    return tuple(faults)


def _allowed(one: Mapping[str, Any], request: Mapping[str, Any], foods: Mapping[str, Row]) -> list[str]:
    faults = []
    for part in one["parts"]:
        food = foods[part["food"]]
        if DIETS.index(food["diet"]) > DIETS.index(request["diet"]):
            faults.append(f"{food['id']} is not {request['diet']}")
        held = set(food["allergens"].split(";")) | ({"gluten"} if food["gluten"] != "no" else set())
        faults += [f"{food['id']} holds {allergen}" for allergen in request["avoid"] if allergen in held]
    return faults


def _wrong(
    one: Mapping[str, Any],
    beside: Sequence[Mapping[str, Any]],
    caps: Sequence[Row],
    foods: Mapping[str, Row],
    figures: Mapping[tuple[str, ...], Row],
    eye: Decimal,
) -> list[str]:
    """Caps passed, loads that are not what is shown, and room that is said to be more than there is."""
    faults = []
    plate, rest = {"parts": [*one["parts"], *beside]}, {"parts": beside}
    case = {cap["group"]: cap["holds"] == "worst" for cap in caps}
    slack = _SHOWN + _ROUNDED * eye * sum((Decimal(str(part["grams"])) for part in plate["parts"]), Decimal(0))
    rooms: dict[str, list[tuple[Decimal, Decimal]]] = {}
    for cap in caps:
        if not _covered(plate, cap, foods):
            continue
        load = _load(plate, cap, foods, figures, eye)
        # What the rest of the plate passes already is no reason against what adds nothing to it.
        if load > max(Decimal(cap["grams"]), _load(rest, cap, foods, figures, eye)):
            faults.append(f"brings {load:.4f} g of {cap['group']}, the cap is {cap['grams']} g")
        rooms.setdefault(cap["group"], []).append((load, Decimal(cap["grams"]) - load))
    for group, shown in one["load_g"].items():
        truth = sum((_brings(part, group, case.get(group, True), figures, eye) for part in one["parts"]), Decimal(0))
        if not truth <= Decimal(str(shown)) <= truth + slack:
            faults.append(f"is shown with {shown} g of {group}, it brings {truth:.4f} g")
    for group, shown in one["headroom_g"].items():
        used = min([room for load, room in rooms[group] if load > 0] or [room for _, room in rooms[group]])
        if not used - slack <= Decimal(str(shown)) <= used:
            faults.append(f"is shown with {shown} g of room for {group}, there are {used:.4f} g")
    return faults


def _load(
    one: Mapping[str, Any],
    cap: Row,
    foods: Mapping[str, Row],
    figures: Mapping[tuple[str, ...], Row],
    eye: Decimal,
) -> Decimal:
    """G under a cap: of all parts for a sitting, of the part that brings most for a cap of one food."""
    parts = _covered(one, cap, foods)
    loads = [_brings(part, cap["group"], cap["holds"] == "worst", figures, eye) for part in parts]
    return sum(loads, Decimal(0)) if cap["scope"] == "sitting" else max(loads, default=Decimal(0))


def _covered(one: Mapping[str, Any], cap: Row, foods: Mapping[str, Row]) -> list[Mapping[str, Any]]:
    """The parts that count under a cap."""
    classes = [part for part in cap["applies_to"].split(";") if part]
    return [part for part in one["parts"] if not classes or foods[part["food"]]["cutoff_class"] in classes]


def _brings(
    part: Mapping[str, Any], group: str, worst: bool, figures: Mapping[tuple[str, ...], Row], eye: Decimal
) -> Decimal:
    """G of a group in one part, judged by eye."""
    grams = Decimal(str(part["grams"])) * (eye if worst else 1)
    return load_of(figures, part["food"], group, worst) * grams / 100
