"""The lines of a text, where each begins, and a line without its bullet and marks."""

import re
from typing import NamedTuple

from calmlarder.cookbook.bounds import LONGEST_STEP

# What stands before an ingredient: a bullet, a box to tick, or a number with a dot.
BULLET = re.compile(r"[ \t]*(?:(?:[-*+•·▢☐□–‣◦]|\d{1,2}[.)](?=\s))[ \t]*)?(?:\[[ xX]?\][ \t]*)?")
_MARKS = re.compile(r"^\s{0,3}#{1,6}\s+|[*_]{1,3}(?=\S)|(?<=\S)[*_]{1,3}|\s#+\s*$")


class Line(NamedTuple):
    """A line as it stands, and the place of its first sign in the text."""

    start: int
    text: str


def lines_of(text: str) -> list[Line]:
    """Every line of a text, empty ones as well."""
    found, start = [], 0
    for line in text.split("\n"):
        found.append(Line(start, line))
        start += len(line) + 1
    return found


def bare_line(line: str) -> str:
    """A line without bullets and marks of Markdown."""
    if len(line) > LONGEST_STEP:
        line = line[:LONGEST_STEP]
    bulleted = BULLET.match(line)
    bare = line[bulleted.end() :] if bulleted and not re.match(r"\s*[*_]{1,3}\S", line) else line
    return unmarked(bare)


def unmarked(text: str) -> str:
    """A text without marks of Markdown, its words a space apart."""
    return " ".join(_MARKS.sub("", text).split())
