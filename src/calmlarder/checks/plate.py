"""Recompute a plate from the CSV rows, sharing no code with what judged it.

Nothing of calmlarder is imported here but the second reading of the tables, which imports nothing itself.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.loads import Part, apart, limit_faults, plate_of, shown_faults
from calmlarder.checks.own_limits import limits_for
from calmlarder.checks.tables import figures_of, mixtures, rows, within


def verify(answer: Mapping[str, Any], request: Mapping[str, Any], table_folders: Sequence[Path]) -> tuple[str, ...]:
    """What is wrong with the answer of `plate`; nothing when it holds.

    `request` holds profile, sitting, people and tolerance; `most_g` the end of each food's range, `boxes` the boxed
    dishes by food, and `eaten` with `stacking` what was eaten before, where there is any.
    """
    boxes = request.get("boxes") or {}
    used = {one["food"] for one in answer["foods"]} - {*boxes}
    used |= {part["food"] for box in boxes.values() for part in box["mixture"]["parts"]}
    mixed = mixtures(table_folders, used)
    foods = {row["id"]: row for row in rows(table_folders, "foods.csv", ("id",), within(used, mixed)).values()}
    figures, people = figures_of(table_folders, mixed, used), request["people"]
    limits = limits_for(table_folders, request, request["sitting"])

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
    faults = limit_faults(as_told, limits, people, request, (foods, figures))
    told = shown_faults(answer, as_told, limits, people, request, (foods, figures))
    if answer["fits"] is not False:
        return (*told, *faults)
    if not faults:
        told.append("is said not to fit, and does")
    return tuple(told)
