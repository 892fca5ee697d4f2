"""Numbers as people write them: digits, fractions, words, ranges."""

import re
from collections.abc import Callable
from typing import NamedTuple

from calmlarder.matching.late_patterns import LatePattern

WHOLE_WORDS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "dozen": 12, "couple": 2, "few": 3, "several": 4,
    # In the words of other kitchens; none of them means anything else in English.
    "una": 1, "uno": 1, "une": 1, "ein": 1, "eine": 1, "einen": 1, "uma": 1, "deux": 2, "dos": 2, "zwei": 2,
    "dois": 2,
    "duas": 2, "dwa": 2, "dwie": 2, "trois": 3, "tres": 3, "drei": 3, "trzy": 3, "quatre": 4, "cuatro": 4, "vier": 4,
    "quattro": 4, "quatro": 4, "cztery": 4, "cinq": 5, "cinco": 5, "funf": 5, "cinque": 5, "seis": 6, "sechs": 6,
    "siete": 7, "sieben": 7, "ocho": 8, "acht": 8, "nueve": 9, "neun": 9, "diez": 10, "zehn": 10, "dieci": 10,
    "dez": 10,
    "zwolf": 12, "doce": 12, "dodici": 12, "douze": 12,
}  # fmt: skip
PART_WORDS = {"half": 1 / 2, "third": 1 / 3, "quarter": 1 / 4, "thirds": 1 / 3, "quarters": 1 / 4,
    "medio": 1 / 2, "mezzo": 1 / 2, "mezza": 1 / 2, "meia": 1 / 2, "meio": 1 / 2, "demi": 1 / 2, "halb": 1 / 2,
    "halbe": 1 / 2, "halber": 1 / 2, "halbes": 1 / 2, "pol": 1 / 2, "aadha": 1 / 2,
}  # fmt: skip

_DIGITS = r"\d{1,12}(?:[.,]\d{1,3})?"
_WHOLE = "|".join(WHOLE_WORDS)
_PART = "|".join(PART_WORDS)
NUMBER = (
    rf"(?:half a dozen"
    rf"|(?:{_DIGITS}|{_WHOLE}) and an? (?:{_PART})"
    rf"|\d+ \d+/\d+|\d+/\d+"
    rf"|{_DIGITS}"
    rf"|an? (?:couple|few|dozen)(?: of)?"
    rf"|(?:an? )?(?:(?:{_WHOLE}) )?(?:{_PART})(?: of)?(?: an?\b| the\b)?"
    rf"|(?:{_WHOLE}))"
)
NUMBER_ALONE = LatePattern(rf"(?<![\w.,/-]){NUMBER}(?![\w/])")
# What may be a range, looked for first: it is short.
_BEGINNINGS = "|".join(sorted({word[:3] for word in (*WHOLE_WORDS, *PART_WORDS)}))
MAY_BE_RANGE = LatePattern(rf"(?:-|to|or)\s?(?:\d|an? |{_BEGINNINGS})")
RANGE = LatePattern(rf"(?<![\w.,/-])({NUMBER})\s?(?:-|to|or)\s?({NUMBER})(?![\d/])")


class Span(NamedTuple):
    """A number that may be a range."""

    low: float
    typical: float
    high: float

    def times(self, other: "Span") -> "Span":
        """Both ranges multiplied."""
        return Span(self.low * other.low, self.typical * other.typical, self.high * other.high)


ONE = Span(1, 1, 1)


def number(text: str) -> float:
    """The value of a text that matches NUMBER. Raises ValueError for a fraction over nothing."""
    text = text.strip()
    if text.isascii() and text.isdigit():
        return _simple(text)
    readers: tuple[tuple[str, Callable[[re.Match[str]], float]], ...] = (
        (r"half a dozen", lambda _: 6.0),
        (rf"({_DIGITS}|{_WHOLE}) and an? ({_PART})", lambda m: _simple(m[1]) + PART_WORDS[m[2]]),
        (r"(\d+) (\d+)/(\d+)", lambda m: int(m[1]) + _over(m[2], m[3])),
        (r"(\d+)/(\d+)", lambda m: _over(m[1], m[2])),
        (rf"({_DIGITS})", lambda m: _simple(m[1])),
        (r"an? (couple|few|dozen)(?: of)?", lambda m: WHOLE_WORDS[m[1]]),
        (
            rf"(?:an? )?(?:({_WHOLE}) )?({_PART})(?: of)?(?: an?| the)?",
            lambda m: WHOLE_WORDS.get(m[1] or "one", 1) * PART_WORDS[m[2]],
        ),
        (rf"({_WHOLE})", lambda m: WHOLE_WORDS[m[1]]),
    )
    for pattern, value in readers:
        found = re.fullmatch(pattern, text)
        if found:
            return value(found)
    raise ValueError(f"`{text}` is no number")


def _simple(text: str) -> float:
    return float(WHOLE_WORDS[text]) if text in WHOLE_WORDS else float(text.replace(",", "."))


def _over(above: str, below: str) -> float:
    if int(below) == 0:
        raise ValueError(f"`{above}/{below}` divides by nothing")
    return int(above) / int(below)
