"""Recompute an adapted recipe from the CSV rows, sharing no code with the model.

Nothing of calmlarder is imported here but the other checks.
"""

import re
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from pathlib import Path
from typing import Any

from calmlarder.checks.allergens import held_by
from calmlarder.checks.loads import Part, apart, error_of, typical_of
from calmlarder.checks.own_limits import limits_for
from calmlarder.checks.shown_loads import Recount, shown_faults
from calmlarder.checks.tables import DIETS, USUAL_EYE, USUAL_SCALE, Row, figures_of, foods_of, mixtures
from calmlarder.checks.within_limits import limit_faults

_COMPONENTS = 7
# What no line may name that was not counted and is called harmless: what elimination limits first of all, and what may
# hide it. Common knowledge of the approach, no source.
_LIKELY = re.compile(
    r"(?:onion|garlic|shallot|leek|scallion|ramps?\b|honey|agave|apple|pear|mango|cherr|plum|peach|prune|date|fig|mushroom"
    r"|cauliflower|wheat|flour|rye|barley|bread|pasta|couscous|spaghetti|noodle|bean|lentil|pea\b|peas\b|chickpea|hummus"
    r"|dal\b|milk|cream|yogh?urt|ricotta|custard|stock|broth|bouillon|soup|sauce|seasoning|spice|mix|rub\b|curry|paste"
    r"|marinade|gravy|sausage|cashew|pistachio|inulin|chicory|artichoke|asparagus)",
    re.IGNORECASE,
)


def verify(answer: Mapping[str, Any], request: Mapping[str, Any], table_folders: Sequence[Path]) -> tuple[str, ...]:
    """What is wrong with an answer; nothing when it holds.

    `answer` is the JSON object shown to the cook; `request` holds profile, diet and avoid, and
    `eye_percent` and `scale_grams` where they are not the usual.
    """
    tolerance = {"eye_percent": USUAL_EYE, "scale_grams": USUAL_SCALE, **request}
    after = _after(answer)
    used = {one["food"] for one in (*answer["ingredients"], *after) if one["food"]}
    mixed = mixtures(table_folders, used)
    foods = foods_of(table_folders, mixed, used)
    figures = figures_of(table_folders, mixed, used)
    known = {food for food in used if sum(key[0] == food for key in figures) == _COMPONENTS}
    limits = limits_for(table_folders, request, request.get("sitting", "dinner"))

    def wrong(lines: Sequence[Mapping[str, Any]], shown: Mapping[str, Any], when: str, fits: bool) -> list[str]:
        plate = [part for line in _counted(lines, known) for part in apart([_part(line)], mixed, figures)]
        asked = {"tolerance": tolerance}
        found = shown_faults(shown, Recount(plate, limits, shown["serves"], tolerance, (foods, figures)))
        if fits:
            found += limit_faults(plate, limits, shown["serves"], asked, (foods, figures))
        return [f"{when}: {fault}" for fault in found]

    faults = wrong(answer["ingredients"], answer["before"], "before", False)
    if answer["after"] is None:
        return (*faults, *_silent(answer, answer["ingredients"], known))
    fits = (answer["for_what_was_read"] or answer["status"]).startswith(("fits", "adapted"))
    faults += wrong(after, answer["after"], "after", fits)
    if fits:
        faults += _allowed(after, request, foods)
        faults += _unmeasured(answer, figures)
    return (*faults, *_silent(answer, after, known))


def _part(line: Mapping[str, Any]) -> Part:
    """A line as it counts; an amount told as a range may be off as far as its end."""
    grams = Fraction(str(line["grams"]))
    ends = max(grams, Fraction(str(line["grams_high"] or 0))) / grams - 1
    return Part(line["food"], line["food"], grams, line["weighed"], Fraction(1), wider=ends)


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
        if typical_of(figures, one["food"], group) + error_of(figures, one["food"], group) > 0
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
    harmless = set(answer["harmless"])
    faults = [f"`{text}` is called harmless" for text in sorted(harmless) if _LIKELY.search(text)]
    faults += [
        f"`{line['text']}` is not counted and not named"
        for line in lines
        if line["text"] not in named | harmless
        and (line["outcome"] in {"ask", "unknown"} or (line["outcome"] == "read" and line["food"] not in known))
    ]
    if named and answer["status"] not in {"not_known", "nothing_read"}:
        faults.append(f"the status is {answer['status']} where lines were not counted")
    return faults


def _allowed(lines: Iterable[Mapping[str, Any]], request: Mapping[str, Any], foods: Mapping[str, Row]) -> list[str]:
    faults = []
    for line in lines:
        if line["outcome"] != "read":
            continue
        food = foods[line["food"]]
        if DIETS.index(food["diet"]) > DIETS.index(request["diet"]):
            faults.append(f"{food['id']} is not {request['diet']}")
        held = held_by([food])
        faults += [f"{food['id']} holds {allergen}" for allergen in request["avoid"] if allergen in held]
    return faults
