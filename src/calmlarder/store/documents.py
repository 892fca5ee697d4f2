"""What a row keeps: JSON with the version of its shape and a checksum, brought up to date as it is read.

Whatever cannot be read raises Unreadable, and stays in the store as it is. The checksum (CRC-32, RFC 1952) finds a
flipped bit that is still JSON: 150 g that became 950 g.
"""

import json
import zlib
from collections.abc import Callable, Mapping
from datetime import date, timedelta
from types import MappingProxyType
from typing import Any, Literal

Log = Literal["eaten", "ended", "felt", "challenges"]
Place = Literal["lots", "settings", "eaten", "ended", "felt", "challenges"]
# Settings that are notes of the program to itself: what `tonight` proposed, the dinner at the stove, what is asked for
# this evening only, a line that was half typed; and what may be shared: the dinner cooked last, the last plan, the last
# adapted recipe.
PROPOSED, AT_STOVE, ASKED, DRAFT = "proposed", "at the stove", "asked for tonight", "half typed"
COOKED_LAST, PLANNED, ADAPTED = "cooked last", "plan", "adapted"
NOTES = frozenset({PROPOSED, AT_STOVE, ASKED, DRAFT, COOKED_LAST, PLANNED, ADAPTED})
PLACES: tuple[Place, ...] = ("lots", "settings", "eaten", "ended", "felt", "challenges")

_Upgrade = Callable[[dict[str, Any]], dict[str, Any]]


def _as_it_is(body: dict[str, Any]) -> dict[str, Any]:
    return body


def _oligosaccharides_apart(body: dict[str, Any]) -> dict[str, Any]:
    """What was eaten before fructans and GOS were kept apart: each may have been all of their sum."""
    loads = body.get("loads")
    if not isinstance(loads, list) or not all(isinstance(load, dict) for load in loads):
        return body
    both = [
        {**load, "group": group}
        for load in loads
        if load.get("group") == "oligosaccharides"
        for group in ("fructans", "gos")
    ]
    return {**body, "loads": [*loads, *both]}


# For each place, what makes the next version of a document; the number of steps is the version written today.
# Version 0 is what was written before documents had one. A step is never changed once it has been used.
_UPGRADES: Mapping[Place, tuple[_Upgrade, ...]] = MappingProxyType(
    {**dict.fromkeys(PLACES, (_as_it_is,)), "eaten": (_as_it_is, _oligosaccharides_apart)}
)


class Unreadable(Exception):
    """A document that is damaged, or that this program does not know how to read; says why in words."""


def packed(place: Place, content: Any) -> str:
    """The text that is kept of a content; settings may be any value, the others are objects."""
    body = {"value": content} if place == "settings" else dict(content)
    body["v"] = len(_UPGRADES[place])
    return json.dumps({**body, "crc": _checksum(body)})


def unpacked(place: Place, text: str) -> Any:
    """The content in today's shape. Raises Unreadable."""
    try:
        body = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise Unreadable("is damaged") from error
    if not isinstance(body, dict):
        raise Unreadable("is damaged")
    crc, version = body.pop("crc", None), body.get("v", 0)
    if crc != (None if "v" not in body else _checksum(body)):
        raise Unreadable("is damaged")
    body.pop("v", None)
    body = upgraded(place, body, version)
    if place == "settings" and "value" not in body:
        raise Unreadable("is damaged")
    return body["value"] if place == "settings" else body


def version_of(place: Place) -> int:
    """The version of the shape in which documents of a place are written today."""
    return len(_UPGRADES[place])


def upgraded(place: Place, body: dict[str, Any], version: object) -> dict[str, Any]:
    """A document of a version in today's shape. Raises Unreadable."""
    if not isinstance(version, int) or not 0 <= version <= len(_UPGRADES[place]):
        raise Unreadable("comes from a newer calmlarder")
    for upgrade in _UPGRADES[place][version:]:
        body = upgrade(body)
    return body


def opened_by_now(text: str, today: date) -> str:
    """The text of a lot of which no day was kept on which it was opened: taken as the day before `today`.

    Until version 5 of the store it was yesterday again on every day, and never ran out. What cannot be read stays.
    """
    try:
        content = unpacked("lots", text)
        dates = [dict(one) for one in content["dates"]]
    except (Unreadable, KeyError, TypeError, ValueError):
        return text
    unknown = [one for one in dates if one.get("kind") == "opened" and one.get("on") is None]
    for one in unknown:
        one.update(on=(today - timedelta(days=1)).isoformat(), assumed=True)
    return packed("lots", {**content, "dates": dates}) if unknown else text


def _checksum(body: Mapping[str, Any]) -> int:
    return zlib.crc32(json.dumps(body, sort_keys=True).encode())
