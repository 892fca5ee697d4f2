"""What is said of each part that only some at the table get: how much of what, whose, how long, and when it is done."""

import re
from collections.abc import Iterator, Mapping
from typing import Any

from calmlarder.checks.shown import Read, is_about
from calmlarder.checks.tables import DIETS, Row, rows

_MINUTES = re.compile(r"\b(\d+) minutes?\b")
_WAYS = {"ring": {"stir-fry", "boil", "steam"}, "oven": {"roast"}, "microwave": {"microwave"}}
_BOARD = "Keep its board, knife and spoon apart."


def apart_faults(read: Read, request: Mapping[str, Any]) -> Iterator[str]:
    """All that is told wrongly of the parts served apart; `request` names the table."""
    cautions = rows(read.folders, "cautions.csv", ("applies_to", "states", "until", "caution")).values()
    for part in read.dinner.get("apart", ()):
        food, said, moment = read.foods[part["food"]], part["said"], part["moment"]
        if f"{part['grams']} g {food['name']}" not in said:
            yield f"it is not said that {part['grams']} g {food['name']} are served apart"
        if f"for {_listed(part['for'])} only" not in said:
            yield f"it is not said that {food['name']} is for {_listed(part['for'])} only"
        if any(int(number) != moment["minutes"] for number in _MINUTES.findall(said)):
            yield f"other minutes are said of {food['name']} than its {moment['minutes']}"
        if moment["equipment"]:
            yield from _heated(
                food, moment, said, [row["until"] for row in cautions if row["until"] and is_about(row, food)]
            )
        stricter = any(DIETS.index(food["diet"]) > DIETS.index(eater["diet"]) for eater in request.get("table") or ())
        if stricter and _BOARD not in said:
            yield f"it is not said to keep the board of {food['name']} apart"


def _heated(food: Row, moment: Mapping[str, Any], said: str, signs: list[str]) -> Iterator[str]:
    ways = dict(way.split(":") for way in food["minutes"].split(";") if way)
    wanted = [int(minutes) for way, minutes in ways.items() if way in _WAYS[moment["equipment"]]]
    if not wanted or moment["minutes"] < min(wanted):
        yield f"{food['name']} is on the heat for {moment['minutes']} minutes, it wants {wanted}"
    if signs and not any(sign in said for sign in signs):
        yield f"it is not said how to see that {food['name']} is cooked through: {signs[0]}"


def _listed(names: list[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
