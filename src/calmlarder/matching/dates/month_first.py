"""Which of two numbers is the month: a home that writes `11/24` means the seventh of December by `12/7`."""

from collections.abc import Iterable
from datetime import date, timedelta

from calmlarder.matching.dates.date_words import KINDS
from calmlarder.matching.late_patterns import LatePattern

FAR_DAYS = 31  # one reading so near and the other further off: the near one is meant; ours
_MONTHS, _MOST_DAYS = range(1, 13), 31
_PARTS = 6  # up to this number the first of two may be a part of a pack: `1/2`, `5/6`
_TWO_NUMBERS = LatePattern(
    r"(?<![\w./-])(\d{1,2})([/-])(\d{1,2})(?![\d./-]| ?(?:k?g|lbs?|oz|ml|l|pints?|cups?|inch)\b)"
)
_LABELLED = LatePattern(
    rf"\b(?:{'|'.join(sorted((kind for kind in KINDS if kind.isalpha() or ' ' in kind), key=len, reverse=True))})"
    r"[:.]? (?:on |the |date |is )*$"
)
_EGGS = LatePattern(r"\beggs?\b|\bleft\b|\bof\b")  # eleven of eighteen are no day


def writes_month_first(lines: Iterable[str], today: date) -> bool:
    """Whether the lines of a home (plain text) hold a day with its month first, and none the other way."""
    ways = {way for line in lines if not _EGGS.search(line) for way in _ways(line, today)}
    return ways == {True}


def day_first(text: str) -> str:
    """A plain line of such a home with each of its days the other way round; parts of packs stay as they are."""
    turned, at = "", 0
    for found in _TWO_NUMBERS.finditer(text):
        first, second = int(found[1]), int(found[3])
        is_day = first in _MONTHS and second in _MONTHS and _is_no_part(first, second, text[: found.start()])
        turned += text[at : found.start()] + (f"{found[3]}{found[2]}{found[1]}" if is_day else found[0])
        at = found.end()
    return turned + text[at:]


def _ways(line: str, today: date) -> list[bool]:
    """For each day that can be read in one way alone, or is near in one alone: whether its month stands first."""
    ways = []
    for found in _TWO_NUMBERS.finditer(line):
        first, second = int(found[1]), int(found[3])
        near = [_is_near(month, day, today) for month, day in ((first, second), (second, first))]
        if near[0] != near[1] and _is_no_part(first, second, line[: found.start()]):
            ways.append(near[0])
    return ways


def _is_no_part(first: int, second: int, before: str) -> bool:
    return first > _PARTS or second not in _MONTHS or _LABELLED.search(before) is not None


def _is_near(month: int, day: int, today: date) -> bool:
    if month not in _MONTHS or not 1 <= day <= _MOST_DAYS:
        return False
    days = (abs((_on(year, month, day) - today).days) for year in (today.year - 1, today.year, today.year + 1))
    return min(days) <= FAR_DAYS


def _on(year: int, month: int, day: int) -> date:
    """The day, or the last of the month where it has no such one."""
    return date(year, month, 1) + timedelta(days=day - 1)
