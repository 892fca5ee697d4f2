"""Whether a plate keeps to its limits with what was eaten before, and to the floors of protein and lysine.

Nothing of calmlarder is imported here but the other checks.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import datetime, timedelta
from fractions import Fraction
from typing import Any, NamedTuple

from calmlarder.checks.limits import Limit
from calmlarder.checks.loads import ERRORS_COUNTED, Figures, Part, Sum, sum_of, sure_of
from calmlarder.checks.tables import Row

_ZERO = Fraction(0)
TO_GRAMS = Fraction("0.005")  # limits hold to so much, and so much may come where one is used up
_NEARLY = Fraction("0.00002")  # what rounding of the log to micrograms may make of a limit that is just used up


class Past(NamedTuple):
    """What one person ate before and still counts under a limit: likely, and by how much each item may be more."""

    likely: Fraction = _ZERO
    off: tuple[Fraction, ...] = ()


def pasts_of(request: Mapping[str, Any], limit: Limit, food: str | None) -> list[Past]:
    """Of each person whose past counts; nothing where nobody's does."""
    found: dict[str, Past] = {}
    for who, share, loads in _before(request):
        past, off = found.get(who, Past()), dict[str, Fraction]()
        likely = past.likely
        for load in loads:
            if load["group"] != limit.group or (limit.classes and load["cutoff_class"] not in limit.classes):
                continue
            if food is not None and load["food"] != food:
                continue
            likely += share * Fraction(load["likely_ug"]) / 1_000_000
            off[load["item"]] = off.get(load["item"], _ZERO) + share * Fraction(load["off_ug"]) / 1_000_000
        found[who] = Past(likely, (*past.off, *off.values()))
    return list(found.values()) or [Past()]


def _before(request: Mapping[str, Any]) -> Iterator[tuple[str, Fraction, Sequence[Mapping[str, Any]]]]:
    """For each person at the table: which share of an entry in their own window still counts, and its loads."""
    stacking = request.get("stacking")
    if not stacking:
        return
    now = datetime.fromisoformat(stacking["at"])
    entries = request.get("eaten") or ()
    owns = {own["who"]: own for own in stacking.get("own") or ()}
    for who in stacking["who"] or {"everyone", *owns, *(entry["who"] for entry in entries)}:
        own = owns.get(who, {})
        hours = stacking["window_hours"] if own.get("window_hours") is None else own["window_hours"]
        fade = stacking["fade"] if own.get("fade") is None else own["fade"]
        window = Fraction(str(hours)) * 3600
        for entry in entries:
            gap = (now - datetime.fromisoformat(entry["at"])) // timedelta(seconds=1)
            clocks = [60 * (a - b) for a in entry.get("offsets_min") or () for b in stacking.get("offsets_min") or ()]
            seconds = Fraction(min((gap + ahead for ahead in clocks or [0] if gap + ahead >= 0), default=-1))
            if entry["who"] in (who, "everyone") and 0 <= seconds < window:
                yield who, 1 - seconds / window if fade else Fraction(1), entry["loads"]


def passes(brought: Sum, limit: Limit, past: Past) -> str:
    """How a plate passes a limit with what was eaten before; empty where it does not."""
    before = sorted(past.off)[-ERRORS_COUNTED:]
    used_up = past.likely + _NEARLY >= limit.typical
    if limit.most is not None and past.likely + sum(before, _ZERO) + _NEARLY >= limit.most:
        used_up = True
    if used_up:
        return f"{told_grams(brought.likely)} g where the limit is used up" if brought.likely > TO_GRAMS else ""
    likely, room = past.likely + brought.likely, limit.typical + TO_GRAMS
    if likely > room:
        return f"likely {told_grams(likely)} g, the limit is {told_grams(limit.typical)} g"
    most = past.likely + brought.at_most(past.off)
    if limit.most is not None and most > limit.most + TO_GRAMS:
        return f"at most {told_grams(most)} g, it may be {told_grams(limit.most)} g"
    for item, load in brought.by_eye.items():
        if likely + load > room:
            return f"{item} must be weighed: likely {told_grams(likely)} g of {told_grams(limit.typical)} g"
    return ""


def told_grams(grams: Fraction) -> str:
    return f"{float(grams):.4f}"


def limit_faults(
    plate: Sequence[Part],
    limits: Iterable[Limit],
    people: int | Fraction,
    request: Mapping[str, Any],
    read: tuple[Mapping[str, Row], Figures],
) -> list[str]:
    """Every limit of a sitting or of one food that a plate passes; `read` are foods and figures."""
    sure, faults = sure_of(request["tolerance"]), []
    for limit in limits:
        if limit.scope == "sitting":
            brought = sum_of(plate, limit, read, people, sure)
            told = {passes(brought, limit, past) for past in pasts_of(request, limit, None)}
            faults += [f"{limit.key} a person: {one}" for one in sorted(told - {""})]
        elif limit.scope == "food":
            for food in dict.fromkeys(part.food for part in plate):
                mine = [part for part in plate if part.food == food]
                brought = sum_of(mine, limit, read, people, sure)
                if brought.likely or brought.off:
                    told = {passes(brought, limit, past) for past in pasts_of(request, limit, food)}
                    faults += [f"{food} alone, {limit.key}: {one}" for one in sorted(told - {""})]
    return faults


def protein_faults(
    dinner: Mapping[str, Any], plate: Iterable[Part], request: Mapping[str, Any], foods: Mapping[str, Row]
) -> list[str]:
    """Protein and lysine under the floors asked for; unknown is none."""
    faults, plate = [], list(plate)
    for name, floor, unit in (
        ("protein_g", Fraction(str(request["protein_floor_g"])), "g of protein"),
        ("lysine_mg", Fraction(str(request.get("lysine_mg", 0))), "mg of lysine"),
    ):
        total = sum((Fraction(foods[part.food][name] or 0) * part.grams for part in plate), _ZERO)
        each = total / 100 / dinner["people"]
        if each < floor:
            faults.append(f"{float(each):.2f} {unit} a person, the floor is {float(floor):g}")
    return faults
