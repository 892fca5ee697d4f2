"""A line with another name for its food, as the answer to a question."""

import re
from datetime import date

from calmlarder.matching.line import read_line
from calmlarder.matching.line_text import line_of
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.tokens import tokens_of
from calmlarder.matching.names.words import plain, singular
from calmlarder.matching.part import SOFT


def with_name(text: str, name: str, today: date, lexicon: Lexicon) -> str:
    """The line with another name for its food, everything else as it was.

    Raises ValueError, as `read_line` does.
    """
    read = read_line(text, today, lexicon)
    line = plain(line_of(text))
    if read is None or not read.parts:
        return name
    left = read.parts[0].words
    words = [word for word in re.findall(r"[\w'-]+", left) if not word.isdigit()]
    known = [word for word in words if _is_name_word(word, lexicon)]
    for word in known:
        line = re.sub(rf"(?<!\w){re.escape(word)}(?!\w)", "\0", line, count=1)
    named = re.sub(r"\0(?:[\s-]*\0)*", name, line, count=1) if "\0" in line else f"{name}, {line}"
    return " ".join(named.replace("\0", " ").split()).strip(" ,")


def _is_name_word(word: str, lexicon: Lexicon) -> bool:
    bare = singular(word)
    return bare not in SOFT and any(token.words for token in tokens_of([bare], lexicon))
