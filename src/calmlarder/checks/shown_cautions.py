"""Signs that something is cooked through, and what is to be minded: said to the cook, or missed.

Nothing of calmlarder is imported here but the other checks.
"""

import re
from collections.abc import Iterable, Iterator

from calmlarder.checks.dinner_read import Read
from calmlarder.checks.hidden import held_by_name
from calmlarder.checks.lots import COOKED, Lot
from calmlarder.checks.tables import Row, rows

_SAID_BY = "Food safety as advised by: "
_THAWED = {"fish", "shellfish", "poultry", "meat", "tofu", "tempeh", "seitan"}


def _is_poorly(read: Read, lot: Lot) -> bool:
    """In a condition to speak of; what is called sprouting sprouts only where it is a root, a tuber or a bulb."""
    condition = lot.get("condition") or ""
    if "sprout" in condition and lot["food"] not in read.boxes:
        return read.foods[lot["food"]]["kind"] in {"potato", "root", "allium"}
    return bool(condition)


def sign_faults(read: Read) -> Iterator[str]:
    """Of what must be cooked through a step says how that is seen, in the words of cautions.csv or their beginning."""
    cautions = rows(read.folders, "cautions.csv", ("applies_to", "states", "done_when", "caution")).values()
    text = " ".join(read.dinner["steps"]).lower()
    eaten_cold = not {"dinner", "breakfast"}.intersection(read.pattern["sittings"])
    for use in read.dinner["uses"]:
        food = read.foods.get(use["food"])
        if food is None or read.pattern["slots"][use["slot"]]["method"] == "raw":
            continue
        if eaten_cold and food["state"] in COOKED:  # a box, a shake: what is cooked goes in as it is
            continue
        signs = [row["done_when"] for row in cautions if row["done_when"] and is_about(row, food)]
        if signs and not any(is_said(sign, text) for sign in signs):
            yield f"no step says how to see that {food['name']} is cooked through: {signs[0]}"


def is_about(row: Row, food: Row) -> bool:
    """Whether a row of cautions.csv speaks of a food in its state."""
    states = [state for state in row["states"].split(";") if state]
    return row["applies_to"] in (food["id"], f"kind:{food['kind']}") and (not states or food["state"] in states)


def is_said(sign: str, text: str) -> bool:
    """Whether a text, in small letters, has a sign or the beginning of its last word."""
    if sign.endswith("steaming hot"):
        return "steaming hot" in text  # a bowl that steams is not hot all through
    return re.search(rf"\b{sign.split()[-1][:4]}", text) is not None


def _thaws(lot: Lot, food: Row | None) -> bool:
    """What was frozen at home and goes to the heat whole; what is sold frozen is cooked from frozen."""
    if food is None or lot["place"] != "freezer":
        return False
    return food["kind"] in _THAWED and food["state"] != "frozen"


def caution_faults(read: Read) -> Iterator[str]:
    """What the pattern, the foods and the lots ask to be minded is said."""
    wanted = list(read.pattern.get("cautions", ()))
    cautions = rows(read.folders, "cautions.csv", ("applies_to", "states", "done_when", "caution"))
    sources = rows(read.folders, "sources.csv", ("key",))
    said, who = read.dinner["cautions"], next((c for c in read.dinner["cautions"] if c.startswith(_SAID_BY)), "")
    for use in read.dinner["uses"]:
        lot, food = read.lots[use["lot"]], read.foods.get(use["food"])
        for row in cautions.values() if food is not None else ():
            if food is None or not is_about(row, food):
                continue
            wanted += [f"{row['caution']}."] if row["caution"] else []
            authority = sources[(row["source"],)]["citation"].split(",")[0]
            if row["source"] != "common_practice" and authority not in who:
                yield f"it is not said that {authority} advises so"
        name = read.name(use["food"]).capitalize()
        about = [
            (use["days_left"] is not None and use["days_left"] < 0, f"{name}, past its best"),
            (
                _thaws(lot, food),
                f"{name}: thaw before you start, in a sealed bag in cold water",
            ),
            (bool(held_by_name(food)), f"{name}: what it holds of garlic or onion"),
            (bool(lot["owner"]), f"{name} from {lot['owner']}"),
        ]
        poorly = f"{name} ({lot.get('condition')})"  # several of these share a sentence
        if _is_poorly(read, lot) and (use["days_left"] or 0) >= 0 and not _names(said, poorly):
            yield f"nothing is said of: {poorly}"
        for holds, start in about:
            if holds and not any(line.startswith(start) for line in said):
                yield f"nothing is said of: {start}"
    for line in dict.fromkeys(wanted):
        if line not in said:
            yield f"the caution is not shown: {line}"


def _names(said: Iterable[str], thing: str) -> bool:
    """Whether a line is about a thing, alone or among others."""
    return any(thing.lower() in line.partition(":")[0].lower() for line in said)
