"""Recompute what a substitute brings from the CSV rows, sharing no code with the ranking.

Nothing of calmlarder is imported here but the other checks.
"""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.allergens import held_by
from calmlarder.checks.limits import Limit
from calmlarder.checks.loads import Figures, Part, Sure, apart, sum_of, sure_of, typical_of
from calmlarder.checks.own_limits import limits_for
from calmlarder.checks.tables import DIETS, USUAL_EYE, USUAL_SCALE, Row, figures_of, foods_of, mixtures
from calmlarder.checks.within_limits import Past, passes

# Figures are rounded up to a milligram in 100 g, likely and off; shown loads up and shown room down to a milligram.
_ROUNDED, _SHOWN = Fraction("0.00003"), Fraction("0.001")


def verify(answer: Mapping[str, Any], request: Mapping[str, Any], table_folders: Sequence[Path]) -> tuple[str, ...]:
    """What is wrong with the substitutes shown; nothing when all hold.

    `answer` is the JSON object of `swap`; `request` holds profile, diet and avoid, and
    `eye_percent` where it is not the usual; `beside` is what lies on the plate besides.
    """
    beside = list(request.get("beside", ()))
    used = {part["food"] for one in answer["substitutes"] for part in (*one["parts"], *beside)}
    mixed = mixtures(table_folders, used)
    foods = foods_of(table_folders, mixed, used)
    figures = figures_of(table_folders, mixed, used)
    limits = limits_for(table_folders, request, request.get("sitting", "dinner"))
    sure = sure_of({"eye_percent": request.get("eye_percent", USUAL_EYE), "scale_grams": USUAL_SCALE})
    faults: list[str] = []
    for one in answer["substitutes"]:
        name = " + ".join(part["food"] for part in one["parts"])
        faults += [f"{name}: {fault}" for fault in _allowed(one, request, foods)]
        plates = [apart(_plate(parts), mixed, figures) for parts in ([*one["parts"], *beside], beside, one["parts"])]
        wrong = _wrong(one, plates, limits, sure, (foods, figures))
        faults += [f"{name}: {fault}" for fault in wrong]
    return tuple(faults)


def _allowed(one: Mapping[str, Any], request: Mapping[str, Any], foods: Mapping[str, Row]) -> list[str]:
    faults = []
    for part in one["parts"]:
        food = foods[part["food"]]
        if DIETS.index(food["diet"]) > DIETS.index(request["diet"]):
            faults.append(f"{food['id']} is not {request['diet']}")
        held = held_by([food])
        faults += [f"{food['id']} holds {allergen}" for allergen in request["avoid"] if allergen in held]
    return faults


def _plate(parts: Sequence[Mapping[str, Any]]) -> list[Part]:
    """All judged by eye."""
    return [Part(one["food"], one["food"], Fraction(str(one["grams"])), False, Fraction(1)) for one in parts]


def _wrong(
    one: Mapping[str, Any],
    plates: Sequence[Sequence[Part]],
    limits: Sequence[Limit],
    sure: Sure,
    read: tuple[Mapping[str, Row], Figures],
) -> list[str]:
    """Limits passed, loads that are not what is shown, and room that is said to be more than there is.

    `plates` are the whole plate, what lies beside, and what stands in.
    """
    plate, rest, own = plates
    faults = []
    slack = _SHOWN + _ROUNDED * sum((part.grams for part in plate), Fraction(0))
    rooms: dict[str, list[tuple[Fraction, Fraction]]] = {}
    for limit, food in _rows(plate, limits, read[0]):
        brought, before = (
            sum_of([part for part in parts if food in {None, part.food}], limit, read, 1, sure)
            for parts in (plate, rest)
        )
        passed = passes(brought, limit, Past())
        # What the rest of the plate passes already is no reason against what adds nothing to it.
        if passed and (brought.likely, brought.at_most()) != (before.likely, before.at_most()):
            faults.append(f"{limit.key}: {passed}")
        if food is not None and not brought.at_most():
            continue
        room = limit.typical - brought.likely
        if limit.most is not None:
            room = min(room, limit.most - brought.at_most())
        rooms.setdefault(limit.group, []).append((brought.likely, room))
    for group, shown in one["load_g"].items():
        truth = sum((typical_of(read[1], part.food, group) * part.grams / 100 for part in own), Fraction(0))
        if not truth <= Fraction(str(shown)) <= truth + slack:
            faults.append(f"is shown with {shown} g of {group}, it brings {float(truth):.4f} g")
    for group, shown in one["headroom_g"].items():
        used = min([room for load, room in rooms[group] if load > 0] or [room for _, room in rooms[group]])
        if not used - slack <= Fraction(str(shown)) <= used:
            faults.append(f"is shown with {shown} g of room for {group}, there are {float(used):.4f} g")
    return faults


def _rows(
    plate: Sequence[Part], limits: Sequence[Limit], foods: Mapping[str, Row]
) -> Iterator[tuple[Limit, str | None]]:
    """Each limit, that of one food once for each food it is for."""
    for limit in limits:
        if limit.scope == "sitting":
            yield limit, None
        elif limit.scope == "food":
            for food in dict.fromkeys(part.food for part in plate):
                if not limit.classes or foods[food]["cutoff_class"] in limit.classes:
                    yield limit, food
