"""Steps of wheat wrappers where rice paper takes their place: dipped first, pressed shut, fried and not boiled.

Dry sheets bend once they are wet, stick to themselves and to a damp cloth, and melt in water: common practice, no
source. How long what is inside cooks stays as the step has it.
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.model import Adapted
from calmlarder.adapt.sentences import SENTENCE_ENDS

_RICE_PAPER = "rice-paper"
_DIP = "Dip one sheet of rice paper at a time in warm water until it just bends, and lay it on a damp board."
_ONE = r"(?:an?|one|each|the|your|\d+)(?: [a-z-]+){0,2} (?:wrappers?|skins?|sheets?|squares?|rounds?)"
_LAID = re.compile(
    rf"\b(?:lay|place|put|take|hold|spread|set|arrange|working with|work with|spoon|dollop)\b[^.;]{{0,60}}?\b{_ONE}\b",
    re.IGNORECASE,
)
_UNDER_A_CLOTH = re.compile(
    r"(?P<lead>, (?:and |while )?| (?:and|while) |(?<=^)|(?<=[.;] ))(?:keep|keeping|cover|covering)\b[^.;,]*"
    r"\b(?:damp|moist|wet|clean)\b[^.;,]*\b(?:towel|cloth|kitchen paper|paper)\b[^.;,]*",
    re.IGNORECASE,
)
_PLEATED = re.compile(
    r"\b(?:crimp|pleat)(?P<ing>ing)?\b(?: (?:the|its|their) (?:edges?|tops?|sides?))?(?: together)?"
    r"(?: as you go)?(?: to seal)?",
    re.IGNORECASE,
)
_PLEATED_AT_WILL = re.compile(
    r",? (?:and )?(?:crimping|pleating)[^.;,]*\bif you (?:like|wish|can|want)\b", re.IGNORECASE
)
_SHUT_ALREADY = re.compile(r"\b(?P<press>press(?:ing)? [^.;]*?),? and press to seal\b", re.IGNORECASE)
_IN_THE_PAN = re.compile(
    r"\b(?:pour|add|splash|tip)\b[^.;]*\bwater\b[^.;]*\b(?:steam|cover|lid)\b[^.;]*", re.IGNORECASE
)
_MINUTES = re.compile(r"\b\d+(?: ?(?:[-–]|to) ?\d+)? ?(?:minutes?|mins?)\b")
_BOILED = re.compile(
    r"\b(?:boil|simmer|poach|drop|lower|cook)\w*\b[^.;]*\b(?:dumplings?|wontons?|parcels?|tortellini|ravioli)\b[^.;]*"
    r"\b(?:boiling|simmering|water|broth|stock|soup)\b[^.;]*"
    r"|\b(?:lower|slip|slide|drop|tip|add|put)(?: in)? the (?:dumplings?|wontons?|parcels?)\b[^.;]*\bfloat\b[^.;]*"
    r"|\b(?:boil|simmer|poach) the (?:dumplings?|wontons?|parcels?)\b[^.;]*",
    re.IGNORECASE,
)
_WATER_GONE = re.compile(
    r"(?P<until>\b(?:until|till)) (?:all )?(?:of )?the water (?:has |is )?(?:all )?"
    r"(?:gone|evaporat\w+|boiled (?:off|away)|absorbed|cooked off)(?: and|,)?",
    re.IGNORECASE,
)
_TO_A_CORNER = re.compile(
    r",? with (?:one|a|the) (?:corner|point|tip) (?:towards|facing|pointing)(?: (?!and\b)[\w']+){1,3}"
    r"|,? like a diamond|,? in a diamond shape",
    re.IGNORECASE,
)
_CORNER = re.compile(r"\b(?:bottom |near(?:est)? |closest )?corners?\b", re.IGNORECASE)
_INSTEAD = "[rice paper melts in water: fry them in oil instead, turning, until the filling is cooked through]"


def wrapped_in_rice_paper(steps: Sequence[str], adapted: Adapted) -> list[str]:
    """The changed steps as rice paper is wrapped and cooked, where it takes the place of wrappers of wheat."""
    if not any(
        change.change == "swap" and any(one.food == _RICE_PAPER for one in change.to) for change in adapted.changes
    ):
        return list(steps)
    told = [_fried(_pressed(_without_cloth(step))) for step in steps]
    first = next((place for place, step in enumerate(told) if _LAID.search(step)), None)
    if first is not None and not any("dip" in step.casefold() for step in told[: first + 1]):
        told[first] = _dipped(told[first])
    return told


def _without_cloth(step: str) -> str:
    """Without the cloth that keeps dough from drying: rice paper sticks to it."""
    found = _UNDER_A_CLOTH.search(step)
    if found is None or "wrap" not in step.casefold():
        return step
    behind = step[found.end() :]
    if not found["lead"]:
        behind = behind.lstrip(".;, ")
        behind = f"{behind[:1].upper()}{behind[1:]}"
    return f"{step[: found.start()]}{behind}".rstrip()


def _pressed(step: str) -> str:
    step = _PLEATED_AT_WILL.sub("", step)
    step = _PLEATED.sub(lambda one: f"press{one['ing'] or ''} to seal", step)
    step = _SHUT_ALREADY.sub(r"\g<press>", step)
    if "wrap" in step.casefold():  # the sheets are round
        step = _CORNER.sub(lambda one: "edges" if one[0].endswith("s") else "edge", _TO_A_CORNER.sub("", step))
    return step


def _fried(step: str) -> str:
    """A step that steams what is in the pan with water, or boils it, as it is fried."""
    steamed = _IN_THE_PAN.search(step)
    if steamed is not None:
        time = _MINUTES.search(steamed[0])
        so_long = f" for {time[0]}" if time else ""
        put = "cover and fry gently" if steamed[0][:1].islower() else "Cover and fry gently"
        now = f"{put}{so_long}, turning once, until the filling is cooked through: rice paper melts in water"
        step = f"{step[: steamed.start()]}{now}{step[steamed.end() :]}"
        step = _WATER_GONE.sub(lambda one: one["until"], step)
    boiled = _BOILED.search(step)
    return f"{step[: boiled.end()]} {_INSTEAD}{step[boiled.end() :]}" if boiled and steamed is None else step


def _dipped(step: str) -> str:
    """The step with the dipping before the sentence that lays out the first wrapper."""
    laid = _LAID.search(step)
    at = laid.start() if laid else 0
    starts = [one.end() + 1 for one in SENTENCE_ENDS.finditer(step) if one.end() < at]
    number = re.match(r"\s*\d{1,2}[.)] ", step)
    begin = starts[-1] if starts else number.end() if number else 0
    return f"{step[:begin]}{_DIP} {step[begin:]}"
