"""Onion and garlic in made things, in amounts that only a maker knows: out until fructans have a limit of one's own.

Nothing of calmlarder is imported here but the other checks.
"""

import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from calmlarder.checks.own_limits import limits_for
from calmlarder.checks.tables import Row

_NO_SURPRISE = {"oil", "herb", "allium"}  # bulbs, greens and infused oil are what they are


def held_by_name(food: Row | None) -> set[str]:
    """Which of garlic and onion a made thing has in its name."""
    if food is None or food["kind"] in _NO_SURPRISE:
        return set()
    return {found.rstrip("s") for found in re.findall(r"\b(?:garlic|onions?)\b", food["name"].split(" without ")[0])}


def held_by_most(food: Row | None) -> set[str]:
    """Which of the two its name says, or its note says of most of its kind; what its name denies is not held."""
    if food is None:
        return set()
    denied = food["name"].partition(" without ")[2]
    noted = re.findall(r"\bmost (?:\w+ )?hold ([^:;]*)|\bsome (?:\w+ )?hold no ([^:;]*)", food["note"])
    words = " ".join("".join(one) for one in noted)
    return held_by_name(food) | {one for one in ("garlic", "onion") if one in words and one not in denied}


def hidden_faults(
    taken: Mapping[str, Any],
    lots: Mapping[str, Mapping[str, Any]],
    request: Mapping[str, Any],
    foods: Mapping[str, Row],
    folders: Sequence[Path],
) -> Iterator[str]:
    """Nothing holds what nobody can tell, unless its label was read or its line denies it."""
    if not any(_must_do_without(one, request["sitting"], folders) for one in request.get("table") or [request]):
        return
    for use in taken["uses"]:
        lot = lots.get(use["lot"], {})
        said = " ".join(one for one in lot.get("assumed", ()) if one.startswith("without "))
        unknown = held_by_most(foods.get(use["food"])) - set(said.split())
        if unknown and not lot.get("label"):
            yield f"nobody can tell how much {' and '.join(sorted(unknown))} is in `{use['line']}`"


def _must_do_without(person: Mapping[str, Any], sitting: str, folders: Sequence[Path]) -> bool:
    if any(own["component"] == "fructans" for own in person.get("own_limits") or ()):
        return False
    return any(limit.scope == "food" for limit in limits_for(folders, person, sitting))
