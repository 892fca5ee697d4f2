"""Limits of one's own laid over the rows of elimination, a second time and in fractions."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.limits import Limit, limits_of

_CLASSES = ("core", "fresh", "other")
_CUT_OFF = {
    "fructans": "0.3",
    "gos": "0.3",
    "lactose": "1",
    "excess_fructose": "0.4",
    "sorbitol": "0.2",
    "mannitol": "0.2",
}
_INSIDE = {
    "oligosaccharides": {"fructans", "gos"},
    "polyols": {"sorbitol", "mannitol"},
    "total": {"fructans", "gos", "excess_fructose", "sorbitol", "mannitol"},
}


def limits_for(folders: Sequence[Path], request: Mapping[str, Any], sitting: str) -> list[Limit]:
    """What holds for one person: the rows of their profile, or elimination with `own_limits` in it.

    `own_limits` are component, grams and classes (none for all); `own_add` says that they add up. Of a `table` of
    several it is the strictest for an equal share, each with their own limits and appetite.
    """
    if request.get("table"):
        return _of_table(folders, request["table"], sitting)
    owns = request.get("own_limits") or ()
    if request["profile"] != "own":
        return limits_of(folders, request["profile"], sitting)
    rows = limits_of(folders, "elimination", sitting)
    found = [limit for row in rows for limit in _of_row(row, owns, bool(request.get("own_add")))]
    for own in owns:
        largest = max(Fraction(str(one["grams"])) for one in owns if one["component"] == own["component"])
        grams = Fraction(str(own["grams"]))
        if grams < largest:
            found.append(Limit("sitting", own["component"], tuple(own["classes"] or ()), grams, grams))
        found.append(Limit("sitting", own["component"], (), largest, largest))
    return found


def _of_table(folders: Sequence[Path], table: Sequence[Mapping[str, Any]], sitting: str) -> list[Limit]:
    whole = sum((Fraction(one["appetite"]) for one in table), Fraction(0))
    found: dict[tuple[str, str], Limit] = {}
    for one in table:
        shares = whole / (Fraction(one["appetite"]) * len(table))
        for row in limits_for(folders, one, sitting):
            if row.scope == "day":
                continue
            mine = row._replace(typical=_down(row.typical * shares), most=row.most and _down(row.most * shares))
            other = found.get((row.scope, row.key), mine)
            bounds = [most for most in (mine.most, other.most) if most is not None]
            found[row.scope, row.key] = mine._replace(
                typical=min(mine.typical, other.typical), most=min(bounds, default=None)
            )
    return [one._replace(most=one.most and max(one.most, one.typical)) for one in found.values()]


def _down(grams: Fraction) -> Fraction:
    """To a tenth of a milligram, as a limit is told."""
    return Fraction(int(grams * 10_000), 10_000)


def _of_row(row: Limit, owns: Sequence[Mapping[str, Any]], they_add: bool) -> Iterator[Limit]:
    """What is left of a limit of elimination beside the own limits."""
    known = {own["component"] for own in owns}
    inside = _INSIDE.get(row.group, {row.group})
    if row.scope == "sitting" and row.group in _INSIDE:
        steps = [
            max(Fraction(0), *(_above(own) for own in owns if own["component"] == component))
            for component in inside & known
        ]
        more = sum(steps, Fraction(0)) if they_add else max(steps, default=Fraction(0))
        yield row._replace(typical=row.typical + more, most=None if row.most is None else row.most + more)
    if row.scope == "day" or not inside & known:
        if row.scope != "sitting" or row.group not in _INSIDE:
            yield row
        return
    if row.group == "total" or (row.group == "polyols" and row.scope == "food"):
        return
    for component in sorted(inside):
        tried = {kind for own in owns if own["component"] == component for kind in own["classes"] or _CLASSES}
        left = tuple(kind for kind in row.classes or _CLASSES if kind not in tried)
        if left and not (row.scope == "sitting" and row.group not in _INSIDE):
            yield row._replace(group=component, classes=row.classes if not tried else left)


def _above(own: Mapping[str, Any]) -> Fraction:
    return Fraction(str(own["grams"])) - Fraction(_CUT_OFF[own["component"]])
