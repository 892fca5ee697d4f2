"""The bare line: its comment, its bullet and the words that lead it taken off."""

import re

from calmlarder.matching.late_patterns import LatePattern

LONGEST_LINE = 400
_BULLET = LatePattern(r"^\s*(?:[-*•·–—>+~]+\s*|\[[ x]?\]\s*|\d{1,2}[.)]\s+)+")


def line_of(text: str) -> str:
    """The line without its comment and its bullet. Raises ValueError for what is no line of text."""
    if len(text) > LONGEST_LINE:
        raise ValueError(f"the line is longer than {LONGEST_LINE} signs")
    line = re.sub(r"(?:^|\s)#.*$", "", text).strip()
    if any(not sign.isprintable() for sign in line.replace("\t", " ")):
        raise ValueError("the line holds signs that are no text")
    return line


def without_bullet(line: str) -> str:
    """The line without the sign that lists begin their lines with."""
    bare = _BULLET.sub("", line) if not re.match(r"^-\s?\d", line) else line
    return bare.strip() or line
