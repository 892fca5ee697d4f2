"""The dose of a challenge: no more of its food than its weighed grams, no more of its group than the ladder's top.

Nothing of calmlarder is imported here but the other checks.
"""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from calmlarder.checks.loads import Figures, typical_of
from calmlarder.checks.tables import Row

# The largest dose of each group, g: ours, no source.
_TOP = {"sorbitol": 2, "excess_fructose": 4, "lactose": 12, "gos": 2, "mannitol": 2, "fructans": 1}
_TO_GRAMS = Fraction("0.005")
_ROUNDED_UG = 10
_OTHERS = ("fructans", "gos", "lactose", "sorbitol", "mannitol", "excess_fructose")


def exempted(figures: Figures, request: Mapping[str, Any]) -> Figures:
    """Figures of the dish: of a dose in it the challenged group is no part any more."""
    found = dict(figures)
    for dose in request.get("doses") or ():
        if not dose["in_dish"]:
            continue
        food, group = dose["food"], dose["group"]
        if group == "excess_fructose":
            glucose = figures[food, "glucose"]["g_per_100g"]
            least = min(Fraction(figures[food, "fructose"]["g_per_100g"]), Fraction(glucose))
            found[food, "fructose"] = {**figures[food, "fructose"], "g_per_100g": str(float(least)), "high": glucose}
        else:
            found[food, group] = {**figures[food, group], "g_per_100g": "0", "high": ""}
    return found


def dose_faults(
    dinner: Mapping[str, Any], request: Mapping[str, Any], foods: Mapping[str, Row], figures: Figures
) -> Iterator[str]:
    """What of a day's dose is too much, or not counted; `figures` are whole."""
    for dose in request.get("doses") or ():
        food, group, grams = dose["food"], dose["group"], Fraction(str(dose["grams"]))
        brought = typical_of(figures, food, group) * grams / 100
        if not 0 < brought <= Fraction(str(dose["dose_g"])) + _TO_GRAMS or dose["dose_g"] > _TOP[group]:
            yield f"{dose['grams']} g {food} bring {float(brought):.3f} g {group}, the dose is {dose['dose_g']} g"
        uses = [use for use in (*dinner["uses"], *dinner.get("apart", ())) if use["food"] == food]
        if dose["in_dish"]:
            if [(use["grams"], use["how"]) for use in uses] != [(dose["grams"], "weigh")]:
                yield f"the dish has {[use['grams'] for use in uses]} g {food}, the challenge weighs {dose['grams']} g"
            if dinner["people"] != 1:
                yield "a dose is in a dish that is shared"
            continue
        if uses:
            yield f"{food} is in the dish beside its dose"
        yield from _rest_counts(dose, request, figures)


def _rest_counts(dose: Mapping[str, Any], request: Mapping[str, Any], figures: Figures) -> Iterator[str]:
    """What else the food brings is counted with what was eaten."""
    food = dose["food"]
    entries = [one for one in request.get("eaten") or () if (one["who"], one["text"]) == (dose["who"], "challenge")]
    loads = [load for one in entries for load in one["loads"] if load["food"] == food]
    for other in _OTHERS:
        brought = typical_of(figures, food, other) * Fraction(str(dose["grams"])) / 100 * 1_000_000
        counted = sum(load["likely_ug"] for load in loads if load["group"] == other)
        if other != dose["group"] and counted + _ROUNDED_UG < brought:
            yield f"of {food} {counted} µg {other} are counted, it brings {float(brought):.0f}"
