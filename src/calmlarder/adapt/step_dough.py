"""Dough and batter of a flour without gluten: kneaded, risen and rolled as `steps.csv` says; an egg more."""

import re
from collections.abc import Mapping

from calmlarder.adapt.things_now import Told
from calmlarder.tables.step_rows import StandInStep

_KNEADS = re.compile(
    r"(?:(?:turn|tip|put|place) (?:(?!not|n[’']t|without|never)[^.;])*?\b(?:out|onto|on)\b"
    r"(?:(?!\bnot\b|n[’']t\b|without|never)[^.;])*?,? (?:and )?)?"
    r"(?<!not )(?<!n[’']t )(?<!without )(?<!never )\bknead\b[^.;,]*?"
    r"(?:,? (?:until|till) [^.;,]*)?(?=(?P<next>,? (?:and|then) |, (?:then )?)|[.;]|$)",
    re.IGNORECASE,
)
_PASTRY = re.compile(
    r"\bpastry\b|\b(?:resembl\w+|looks? like|like|to|into) (?:\w+ ){0,2}(?:bread)?crumbs\b"
    r"|\bknead\w* (?:it |them )?(?:very )?(?:briefly|lightly|gently)",
    re.IGNORECASE,
)
_ROLLS = re.compile(r"\broll out the (?:pastry|dough)\b|\broll the (?:pastry|dough) out\b", re.IGNORECASE)
_ONE_EGG = re.compile(r"\s*(?:1|one|an)\b", re.IGNORECASE)
_THE_EGG = re.compile(
    r"\b(?P<one>(?:an|1|one) )?(?P<egg>egg)\b(?![- ](?:wash|yolk|white|mix|noodle|is|has)\w*)", re.IGNORECASE
)
_ONCE_KNEADED = "kneaded"  # no food has this name
_RISES = re.compile(
    r"\b(?:until|till) (?:it has |it is |they have |has |have )?(?:roughly |about |nearly |almost |just )?"
    r"(?:doubled|double)\b(?: in (?:size|volume|bulk))?",
    re.IGNORECASE,
)
_KNOCKS = re.compile(
    r"(?:(?<=[.;] )|(?<=^))(?:(?:knock|punch) (?:back|down) the \w+|deflate the \w+)(?:,? (?:and|then) |, "
    r"|[.;]\s*)(?P<next>\w)",
    re.IGNORECASE,
)


def with_more_eggs(step: str, told: Told) -> str:
    """`the egg` as `the eggs`, where one more binds a flour without gluten."""
    change = told.changed.get("egg")
    alone = change is not None and change.change == "more" and _ONE_EGG.match(change.ingredient) is not None
    return _THE_EGG.sub(lambda one: f"{'the ' if one['one'] else ''}{one['egg']}s", step) if alone else step


def _as_pastry(step: str, sign: str) -> str:
    """Pastry is pressed together where it was kneaded for a moment; in a step of pastry nothing is beaten."""
    found = _KNEADS.search(step)
    if found is None or not _PASTRY.search(step):
        return step
    return f"{step[: found.start()]}{with_capital(sign, found[0])}{step[found.end() :]}"


def as_dough(step: str, told: Told) -> str:
    """Dough of a flour that has no stretch is beaten, not kneaded, and rises less."""
    rows: Mapping[str, StandInStep] = {
        work: row
        for food, change in told.changed.items()
        for one in change.to
        for work in ("kneaded", "risen", "knocked back", "pressed", "rolled")
        if (row := told.tables.step_of(told.tables.food_by_id[food], told.tables.food_by_id[one.food], work))
        is not None
    }
    if "knocked back" in rows:
        step = _KNOCKS.sub(lambda one: one["next"].upper(), step)
    if "risen" in rows:
        step = _RISES.sub(f"until {rows['risen'].sign}", step)
    if "pressed" in rows:
        step = _as_pastry(step, rows["pressed"].sign)
    if "rolled" in rows and rows["rolled"].sign not in step:
        step = _ROLLS.sub(lambda one: f"{one[0]} {rows['rolled'].sign}", step, count=1)
    if "kneaded" in rows:
        step = _kneaded(step, rows["kneaded"].sign, told)
    return step


def _kneaded(step: str, sign: str, told: Told) -> str:
    """What is done in the place of kneading, the first time; later nothing is."""
    found = _KNEADS.search(step)
    if found is None:
        return step
    if _ONCE_KNEADED not in told.marked:
        told.marked.add(_ONCE_KNEADED)
        return f"{step[: found.start()]}{with_capital(sign, found[0])}{step[found.end() :]}"
    rest = step[found.end() + len(found["next"] or "") :]
    return f"{step[: found.start()]}{with_capital(rest, found[0])}" if found["next"] else step


def with_capital(text: str, like: str) -> str:
    return f"{text[:1].upper()}{text[1:]}" if like[:1].isupper() else text
