"""Lines on the larder that are for a log: `ate 200 ml orange juice`, `plate 170 g tofu`, `feel 3 a bit tight`."""

import re
from typing import NamedTuple

from calmlarder.history.felt import CALM, LONGEST_NOTE, WORST

_BEGINS = re.compile(r"(ate|feel|plate)\s+(\S.*)?", re.IGNORECASE | re.DOTALL)
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


def gut_meaning(rest: str) -> str:
    """What the line says, or what to write."""
    felt = gut_of(rest)
    if felt is None:
        return f"how does the gut feel? a number from {CALM} calm to {WORST} the worst you know, and a note if you like"
    return f"gut {felt[0]} of {WORST}{f', {felt[1]}' if felt[1] else ''}"
