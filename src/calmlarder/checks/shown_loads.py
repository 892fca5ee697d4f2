"""Loads, limits and foods near their own cut-off as a cook is shown them, beside the recomputed ones.

Nothing of calmlarder is imported here but the other checks.
"""

from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from typing import Any, NamedTuple

from calmlarder.checks.limits import Limit
from calmlarder.checks.loads import Figures, Part, likely_of, sum_of, sure_of, whole_grams
from calmlarder.checks.tables import Row
from calmlarder.checks.within_limits import told_grams

_NEAR = Fraction("0.9")  # of its own cut-off: from there on a food is named
_ROUNDED = Fraction("0.0001")  # of numbers shown


class Recount(NamedTuple):
    """What the numbers that are shown are of: a plate for so many, under limits, by rows and figures read again."""

    plate: Sequence[Part]
    limits: Sequence[Limit]
    people: int
    tolerance: Mapping[str, Any]
    read: tuple[Mapping[str, Row], Figures]


def shown_faults(shown: Mapping[str, Any], recount: Recount) -> list[str]:
    """Numbers shown are never below the recomputed ones, and above them by rounding only."""
    plate, limits, people, tolerance, read = recount
    sure, faults = sure_of(tolerance), []
    # Figures are rounded up to a milligram in 100 g, likely and off, each food by itself.
    slack = _ROUNDED + Fraction("0.00003") * whole_grams(plate) / people
    for limit in limits:
        if limit.scope != "sitting":
            continue
        brought = sum_of(plate, limit, read, people, sure)
        for name, truth in (("loads_g", brought.likely), ("at_most_g", brought.at_most())):
            told = Fraction(str(shown[name][limit.key]))
            if not truth - _ROUNDED <= told <= truth + slack:
                faults.append(f"{name} of {limit.key} is shown as {told_grams(told)}, it is {told_grams(truth)}")
        if "limits_g" in shown:
            told_limit = [None if one is None else Fraction(str(one)) for one in shown["limits_g"][limit.key]]
            same = [one for one in limits if one.scope == "sitting" and one.key == limit.key]
            most = min((one.most for one in same if one.most is not None), default=None)
            if told_limit != [min(one.typical for one in same), most]:
                faults.append(f"the limit of {limit.key} is shown as {shown['limits_g'][limit.key]}")
    if "foods_near" in shown:
        faults += _near_faults(
            shown["foods_near"], plate, limits, lambda part, limit: likely_of(part, limit, read, people)
        )
    return faults


def _near_faults(
    near: Sequence[Mapping[str, Any]],
    plate: Sequence[Part],
    limits: Sequence[Limit],
    likely: Callable[[Sequence[Part], Limit], Fraction],
) -> list[str]:
    """Whatever comes within a tenth of its own cut-off is named; `likely` is what a part of the plate brings each."""
    named = {(one["food"], one["group"]) for one in near}
    return [
        f"{food} is near its own limit of {limit.key} and not named"
        for limit in limits
        if limit.scope == "food"
        for food in dict.fromkeys(part.food for part in plate)
        if (food, limit.group) not in named
        and likely([part for part in plate if part.food == food], limit) >= _NEAR * limit.typical
    ]
