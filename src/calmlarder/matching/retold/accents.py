"""Names in other tongues that nothing but their accents tells from other words, put in English."""

import re
import unicodedata

from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.retold.tongues import LONGEST_NAME, WORD_OF_A_NAME, spaced


def told_by_accents(line: str, lexicon: Lexicon) -> str:
    """A line as typed, with the names in English that only their accents tell from other words."""
    if line.isascii():
        return line
    line = unicodedata.normalize("NFC", line)
    words = list(WORD_OF_A_NAME.finditer(line))
    told: list[tuple[re.Match[str], str]] = []
    at = 0
    while at < len(words):
        size = _size_of_name(words[at : at + LONGEST_NAME], line, lexicon)
        english = lexicon.tongues.accented.get(words[at][0].casefold()) if size == 1 else None
        told += [(words[at], english)] if english else []
        at += size
    for word, english in reversed(told):
        line = f"{line[: word.start()]}{english}{line[word.end() :]}"
    return line


def _size_of_name(words: list[re.Match[str]], line: str, lexicon: Lexicon) -> int:
    """How many words the longest name has that begins here: `bắp cải` is no `bắp`; 1 where there is none."""
    return next(
        (
            count
            for count in range(len(words), 1, -1)
            if spaced(line[words[0].start() : words[count - 1].end()]) in lexicon.tongues.names
        ),
        1,
    )
