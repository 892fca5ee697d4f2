"""Recompute an adapted recipe from the CSV rows in decimals, sharing no code with the model.

Nothing of calmlarder is imported here but the second reading of the tables, which imports nothing itself.
"""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal
from pathlib import Path
from typing import Any, NamedTuple

from calmlarder.checks.tables import DIETS, USUAL_EYE, USUAL_SCALE, Row, figures_of, foods_of, load_of, mixtures, rows

_COMPONENTS = 7
# Figures are rounded up to a milligram in 100 g before they are added; shown numbers to a tenth of a milligram.
_ROUNDED, _SHOWN = Decimal("0.00001"), Decimal("0.0001")


class _Sure(NamedTuple):
    """How many times as much an amount by eye may be, and g more on a scale."""

    eye: Decimal
    scale: Decimal


def verify(answer: Mapping[str, Any], request: Mapping[str, Any], table_folders: Sequence[Path]) -> tuple[str, ...]:
    """What is wrong with an answer; nothing when it holds.

    `answer` is the JSON object shown to the cook; `request` holds profile, diet and avoid, and
    `eye_percent` and `scale_grams` where they are not the usual.
    """
    sure = _Sure(
        1 + Decimal(request.get("eye_percent", USUAL_EYE)) / 100, Decimal(request.get("scale_grams", USUAL_SCALE))
    )
    after = _after(answer)
    used = {one["food"] for one in (*answer["ingredients"], *after) if one["food"]}
    mixed = mixtures(table_folders)
    foods = foods_of(table_folders, mixed, used)
    figures = figures_of(table_folders, mixed, used)
    known = {food for food in used if sum(key[0] == food for key in figures) == _COMPONENTS}
    all_caps = rows(table_folders, "caps.csv", ("profile", "scope", "group", "applies_to"))
    caps = [cap for cap in all_caps.values() if cap["profile"] == request["profile"]]
    faults = _loads("before", answer["before"], _counted(answer["ingredients"], known), caps, foods, figures, sure)
    if answer["after"] is None:
        return (*faults, *_silent(answer, answer["ingredients"], known))
    eaten = _counted(after, known)
    faults += _loads("after", answer["after"], eaten, caps, foods, figures, sure)
    if answer["status"].startswith(("fits", "adapted")):
        faults += _passed(answer["after"]["serves"], eaten, caps, foods, figures, sure)
        faults += _allowed(after, request, foods)
        faults += _unmeasured(answer, figures)
    return (*faults, *_silent(answer, after, known))


def _after(answer: Mapping[str, Any]) -> list[Mapping[str, Any]]:
    """The lines after the changes: what takes the place of a line, or the line itself."""
    to = {change["line"]: change["to"] for change in answer["changes"] if change["line"] is not None}
    lines: list[Mapping[str, Any]] = []
    for place, line in enumerate(answer["ingredients"]):
        if place in to:
            lines += [{**one, "outcome": "read", "text": line["text"]} for one in to[place]]
        else:
            lines.append(line)
    return lines


def _unmeasured(answer: Mapping[str, Any], figures: Mapping[tuple[str, ...], Row]) -> list[str]:
    """What takes the place of a line without an amount must bring nothing, however much of it is taken."""
    return [
        f"{one['food']} takes the place of a line without an amount, and brings {group}"
        for change in answer["changes"]
        for one in change["to"]
        if one["grams"] is None
        for group in ("oligosaccharides", "lactose", "excess_fructose", "polyols")
        if load_of(figures, one["food"], group, True) > 0
    ]


def _counted(lines: Iterable[Mapping[str, Any]], known: set[str]) -> list[Mapping[str, Any]]:
    return [
        line
        for line in lines
        if line["outcome"] == "read" and line["food"] in known and line["grams"] is not None and line["grams"] > 0
    ]


def _silent(answer: Mapping[str, Any], lines: Iterable[Mapping[str, Any]], known: set[str]) -> list[str]:
    """Lines that could not be counted must be named, and the status must say so."""
    named = {one["text"] for one in answer["unread"]}
    faults = [
        f"`{line['text']}` is not counted and not named"
        for line in lines
        if line["text"] not in named
        and (line["outcome"] in {"ask", "unknown"} or (line["outcome"] == "read" and line["food"] not in known))
    ]
    if named and not answer["status"].endswith("_read"):
        faults.append(f"the status is {answer['status']} where lines were not counted")
    return faults


def _both(line: Mapping[str, Any], sure: _Sure) -> tuple[Decimal, Decimal]:
    """Grams as planned, and at the most."""
    grams = Decimal(str(line["grams"]))
    high = max(grams, Decimal(str(line["grams_high"] or 0)))
    return grams, max(high, grams + sure.scale if line["weighed"] else grams * sure.eye)


def _each(
    cap: Row,
    worst: bool,
    eaten: Iterable[Mapping[str, Any]],
    foods: Mapping[str, Row],
    figures: Mapping[tuple[str, ...], Row],
    sure: _Sure,
) -> dict[str, Decimal]:
    """G of a cap's group in the whole dish, by food."""
    classes = [part for part in cap["applies_to"].split(";") if part]
    loads: dict[str, Decimal] = {}
    for line in eaten:
        food = line["food"]
        if not classes or foods[food]["cutoff_class"] in classes:
            grams = _both(line, sure)[1 if worst else 0]
            loads[food] = loads.get(food, Decimal(0)) + load_of(figures, food, cap["group"], worst) * grams / 100
    return loads


def _loads(
    when: str,
    shown: Mapping[str, Any],
    eaten: Sequence[Mapping[str, Any]],
    caps: Iterable[Row],
    foods: Mapping[str, Row],
    figures: Mapping[tuple[str, ...], Row],
    sure: _Sure,
) -> list[str]:
    """The numbers shown are never below the recomputed ones, and above them by rounding only."""
    faults = []
    serves = Decimal(shown["serves"])
    slack = _SHOWN + _ROUNDED * sum((_both(line, sure)[1] for line in eaten), Decimal(0)) / serves
    for cap in caps:
        if cap["scope"] != "sitting":
            continue
        key = f"{cap['group']}:{cap['applies_to']}" if cap["applies_to"] else cap["group"]
        for name, worst in (("loads_g", False), ("worst_g", True)):
            truth = sum(_each(cap, worst, eaten, foods, figures, sure).values(), Decimal(0)) / serves
            told = Decimal(str(shown[name][key]))
            if not truth - _SHOWN <= told <= truth + slack:
                faults.append(f"{name} of {key} {when} is shown as {told}, it is {truth:.4f}")
    return faults


def _passed(
    serves: int,
    eaten: Sequence[Mapping[str, Any]],
    caps: Iterable[Row],
    foods: Mapping[str, Row],
    figures: Mapping[tuple[str, ...], Row],
    sure: _Sure,
) -> list[str]:
    faults = []
    for cap in caps:
        loads = _each(cap, cap["holds"] == "worst", eaten, foods, figures, sure)
        held = {"the dish": sum(loads.values(), Decimal(0))} if cap["scope"] == "sitting" else loads
        faults += [
            f"{what} brings {load / serves:.4f} g of {cap['group']} a serving, the cap is {cap['grams']} g"
            for what, load in held.items()
            if load > Decimal(cap["grams"]) * serves
        ]
    return faults


def _allowed(lines: Iterable[Mapping[str, Any]], request: Mapping[str, Any], foods: Mapping[str, Row]) -> list[str]:
    faults = []
    for line in lines:
        if line["outcome"] != "read":
            continue
        food = foods[line["food"]]
        if DIETS.index(food["diet"]) > DIETS.index(request["diet"]):
            faults.append(f"{food['id']} is not {request['diet']}")
        held = set(food["allergens"].split(";")) | ({"gluten"} if food["gluten"] != "no" else set())
        faults += [f"{food['id']} holds {allergen}" for allergen in request["avoid"] if allergen in held]
    return faults
