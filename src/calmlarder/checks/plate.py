"""Recompute a plate from the CSV rows, sharing no code with what judged it.

Nothing of calmlarder is imported here but the second reading of the tables, which imports nothing itself.
"""

from collections.abc import Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.loads import Part, apart, limit_faults, limits_of, shown_faults
from calmlarder.checks.tables import figures_of, mixtures, rows, within


def verify(answer: Mapping[str, Any], request: Mapping[str, Any], table_folders: Sequence[Path]) -> tuple[str, ...]:
    """What is wrong with the answer of `plate`; nothing when it holds.

    `request` holds profile, sitting, people and tolerance; what was eaten before is not looked at.
    """
    used = {one["food"] for one in answer["foods"]}
    mixed = mixtures(table_folders)
    foods = {row["id"]: row for row in rows(table_folders, "foods.csv", ("id",), within(used, mixed)).values()}
    figures, people = figures_of(table_folders, mixed, used), request["people"]
    limits = limits_of(table_folders, request["profile"], request["sitting"])

    def plate(weighed: Sequence[str], less: Mapping[str, Fraction], ranges: bool) -> list[Part]:
        found, left = [], dict(less)
        for one in answer["foods"]:
            grams = Fraction(str(one["grams"]))
            taken = min(grams, left.get(one["food"], Fraction(0)))
            left[one["food"]] = left.get(one["food"], Fraction(0)) - taken
            how = ranges and (one["how"] == "weigh" or one["food"] in weighed)
            found.append(Part(one["food"], one["food"], grams - taken, how, Fraction(1)))
        return apart(found, mixed, figures)

    as_told = plate(answer["weigh"], {}, True)
    faults = limit_faults(as_told, limits, people, request, (foods, figures))
    told = shown_faults(answer, as_told, limits, people, request, (foods, figures))
    if answer["fits"] is not False:
        return (*told, *faults)
    if not faults:
        told.append("is said not to fit, and does")
    return tuple(told)
