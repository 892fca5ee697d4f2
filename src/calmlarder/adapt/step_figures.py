"""Times that a step tells in words, in figures while it is changed, and in the page's own words again behind that.

`ten minutes`, `half an hour` and `1½ hours` are `10 minutes`, `30 minutes` and `90 minutes` for all that reads minutes.
"""

import re
from collections.abc import Sequence
from typing import NamedTuple

_NUMBERS = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12, "fifteen": 15, "eighteen": 18, "twenty": 20, "twenty-five": 25, "thirty": 30,
    "thirty-five": 35, "forty": 40, "forty-five": 45, "fifty": 50, "sixty": 60, "seventy": 70, "ninety": 90,
}  # fmt: skip
_PARTS = {"½": 30, "¼": 15, "¾": 45, "1/2": 30, "1/4": 15, "3/4": 45, ".5": 30}  # minutes of an hour
_N = "|".join(sorted(_NUMBERS, key=len, reverse=True))
_PART = "|".join(map(re.escape, _PARTS))
_HOUR = (
    rf"(?:half (?:an|a) hour|(?:a )?quarter of an hour|three[- ]quarters of an hour"
    rf"|(?:an|one|1) hour and (?:a half|a quarter|three[- ]quarters)"
    rf"|(?:{_N}) and a half hours|(?:\d|{_N})?[ -]?(?:{_PART}) ?(?:hours?|hrs?)"
    rf"|(?:{_N}) hours|an hour(?! before| ahead))"
)
_MINUTES = rf"(?:{_N})(?P<to>(?:,? (?:to|or) |-| ?– ?)(?:{_N}))? (?P<unit>minutes?|mins?|hours?|hrs?)"
_TOLD = re.compile(
    rf"(?<![\w.,/–-])(?<!\d to )(?<!\d or )"
    rf"(?:(?P<from>\d)(?P<more>{_PART})? ?(?:-|–|to|or) ?(?P<until>\d ?(?:{_PART}) ?(?:hours?|hrs?))"
    rf"|(?P<low>{_HOUR}|(?<=another )hour)(?: ?[-–] ?| to | or )(?P<high>{_HOUR})"
    rf"|(?P<hour>{_HOUR}|(?<=another )hour)|(?P<minutes>{_MINUTES})"
    r"|(?P<two>a minute or two|a couple of minutes|a few minutes))(?!\w)",
    re.IGNORECASE,
)
_WORD = re.compile(rf"\b(?:{_N})\b", re.IGNORECASE)
_A_FEW = {"a minute or two": "1–2 minutes", "a couple of minutes": "2 minutes", "a few minutes": "3 minutes"}


class InFigures(NamedTuple):
    """A step with its times in figures, and what each of them was in the page's words."""

    step: str
    words: tuple[tuple[str, str], ...]


def in_figures(step: str) -> InFigures:
    """A step with its times in figures; those that it tells in figures stay."""
    words: list[tuple[str, str]] = []

    def told(found: re.Match[str]) -> str:
        now = _in_figures(found)
        words.append((now, found[0]))
        return now

    return InFigures(_TOLD.sub(told, step), tuple(words))


def in_its_words(step: str, words: Sequence[tuple[str, str]]) -> str:
    """A changed step with the times that it still tells as the page tells them."""
    for now, was in dict.fromkeys(words):
        often = sum(one == (now, was) for one in words)
        alone = len({other for one, other in words if one == now}) == 1
        if alone and len(re.findall(rf"(?<![\d–-]){re.escape(now)}\b", step)) == often:
            step = re.sub(rf"(?<![\d–-]){re.escape(now)}\b", was, step)
    return step


def _in_figures(found: re.Match[str]) -> str:
    if found["two"]:
        return _A_FEW[found["two"].lower()]
    if found["minutes"]:
        return _WORD.sub(lambda one: str(_NUMBERS[one[0].lower()]), found["minutes"])
    if found["from"]:
        low = 60 * int(found["from"]) + _PARTS.get(found["more"] or "", 0)
        return f"{low}–{_minutes(found['until'])} minutes"
    if found["hour"]:
        minutes = _minutes(found["hour"])
        return f"{minutes} minutes" if minutes % 60 or found["hour"] == "hour" else _hours(minutes)
    return f"{_minutes(found['low'])}–{_minutes(found['high'])} minutes"


def _hours(minutes: int) -> str:
    hours = minutes // 60
    return f"{hours} hour{'s' if hours > 1 else ''}"


def _minutes(told: str) -> int:
    """The minutes of a time that is told in hours."""
    words = told.lower()
    if words.startswith("half") or " of an hour" in words:
        return 30 if "half" in words else 45 if "three" in words else 15
    number = next((_NUMBERS[one[0]] for one in _WORD.finditer(words)), 0)
    figure = re.match(r"\d(?!/)", words)
    whole = int(figure[0]) if figure else number or (1 if re.match(r"an?\b|hour", words) else 0)
    part = next((minutes for sign, minutes in _PARTS.items() if sign in words), 0)
    part = part or (30 if "a half" in words else 45 if "quarters" in words else 15 if "quarter" in words else 0)
    return 60 * whole + part
