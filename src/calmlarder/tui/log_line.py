"""Lines on the larder that are for a log: `ate 200 ml orange juice`, `plate 170 g tofu`, `feel 3 a bit tight`."""

import re
from typing import NamedTuple

from calmlarder.history.felt import CALM, LONGEST_NOTE, WORST, Scores

_BEGINS = re.compile(r"(ate|feel|plate)\s+(\S.*)?", re.IGNORECASE | re.DOTALL)
_FOUR = re.compile(r"(\d{1,2})\s+(\d{1,2})\s+(\d{1,2})\s+(\d{1,2})(?:[\s,:;]+(.*))?", re.DOTALL)
_SCORE = re.compile(r"(\d{1,2})(?:[\s,:;]+(.*))?", re.DOTALL)


class LogLine(NamedTuple):
    """The word a line began with, and what stands behind it."""

    word: str
    rest: str


def log_line(text: str) -> LogLine | None:
    """The parts of a line for a log; None for any other."""
    found = _BEGINS.fullmatch(text.lstrip())
    return LogLine(found[1].lower(), (found[2] or "").strip()) if found else None


def gut_of(rest: str) -> tuple[int, str] | None:
    """The number and the note; None where there is no number of the scale, or too much text."""
    found = _SCORE.fullmatch(rest)
    note = " ".join((found[2] or "").split()) if found else ""
    if not found or not CALM <= int(found[1]) <= WORST or len(note) > LONGEST_NOTE or not note.isprintable():
        return None
    return int(found[1]), note


def four_of(rest: str) -> tuple[Scores, str] | None:
    """Pain, bloating, wind and urgency with the note behind them; None where there are not four numbers."""
    found = _FOUR.fullmatch(rest)
    alone = gut_of(f"{found[1]} {found[5] or ''}") if found else None
    if found is None or alone is None or any(int(found[n]) > WORST for n in range(1, 5)):
        return None
    pain, bloating, wind, urgency = (int(found[n]) for n in range(1, 5))
    return Scores(pain=pain, bloating=bloating, wind=wind, urgency=urgency), alone[1]


def gut_meaning(rest: str) -> str:
    """What the line says, or what to write."""
    four = four_of(rest)
    if four is not None:
        told = ", ".join(f"{name} {number}" for name, number in four[0].model_dump().items())
        return f"gut {four[0].worst} of {WORST} ({told}){f', {four[1]}' if four[1] else ''}"
    felt = gut_of(rest)
    if felt is None:
        return f"how does the gut feel? a number from {CALM} calm to {WORST} the worst you know, and a note if you like"
    return f"gut {felt[0]} of {WORST}{f', {felt[1]}' if felt[1] else ''}"
