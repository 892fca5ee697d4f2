"""Feasts as days: `from thanksgiving`, `since christmas`; each is the last one that has been.

Thanksgiving is the fourth Thursday of November in the United States (5 U.S.C. 6103) and the second Monday of October in
Canada (proclamation of 1957); Easter is reckoned by Meeus, Astronomical Algorithms, chapter 8 (both recalled).
"""

import re
from datetime import date, timedelta

from calmlarder.matching.late_patterns import LatePattern

# Month and day of those that have one, by the group that names them.
_FIXED = {
    "eve": (12, 24), "christmas": (12, 25), "boxing": (12, 26), "year": (1, 1), "halloween": (10, 31),
    "valentine": (2, 14), "july": (7, 4), "canada": (7, 1), "bonfire": (11, 5), "remembrance": (11, 11),
    "patrick": (3, 17), "burns": (1, 25),
}  # fmt: skip
_THURSDAY, _MONDAY = 3, 0
_SINCE = {"after": "since", "open": "opened"}
_FEAST = LatePattern(
    r"\b(from|since|after|on|opened|open|made|cooked)(?: on| at| over)?(?: the| our| last| us| canadian| american)* "
    r"(?:(?P<eve>christmas eve|xmas eve)"
    r"|(?P<thanks>thanks ?giv\w*|thx ?giv\w*|tgiving|turkey day)|(?P<christmas>christmas|xmas|crimbo)"
    r"|(?P<boxing>boxing day)|(?P<year>new year'?s?)|(?P<halloween>hallowe'?en)|(?P<easter>easter)"
    r"|(?P<valentine>valentine'?s?)|(?P<july>(?:the )?4th of july|july 4th)|(?P<canada>canada day)"
    r"|(?P<bonfire>bonfire night|guy fawkes(?: night)?)|(?P<remembrance>(?:remembrance|veterans'?|armistice) day)"
    r"|(?P<patrick>(?:st|saint)\.? patrick'?s(?: day)?|paddy'?s day)|(?P<burns>burns night))"
    r"(?:'s)?(?: (?:day|eve|dinner|lunch|party|meal|feast|table|supper|sunday|monday))*\b",
    needs=(
        "giv", "christmas", "xmas", "crimbo", "turkey day", "boxing", "new year", "hallow", "easter", "valentine",
        "july", "canada", "bonfire", "fawkes", "remembrance", "veteran", "armistice", "patrick", "paddy", "burns",
    ),
)  # fmt: skip


def feasts_as_days(text: str, today: date) -> str:
    """A plain text with the day of a feast that has been in the feast's place."""
    return _FEAST.sub(lambda found: f"{_SINCE.get(found[1], found[1])} {_last(found, today)}", text)


def _last(found: re.Match[str], today: date) -> str:
    days = [day for year in (today.year, today.year - 1) for day in _days_of(found, year) if day <= today]
    return max(days).isoformat()


def _days_of(found: re.Match[str], year: int) -> list[date]:
    """The days of a feast in a year; thanksgiving has two."""
    if found["thanks"]:
        return [_nth(year, 11, _THURSDAY, 4), _nth(year, 10, _MONDAY, 2)]
    if found["easter"]:
        return [_easter(year)]
    return [date(year, *day) for group, day in _FIXED.items() if found[group]]


def _nth(year: int, month: int, weekday: int, count: int) -> date:
    """The first, second … such weekday of a month."""
    first = date(year, month, 1)
    return first + timedelta(days=(weekday - first.weekday()) % 7 + 7 * (count - 1))


def _easter(year: int) -> date:
    """Easter Sunday of the Gregorian calendar."""
    golden, (century, rest) = year % 19, divmod(year, 100)
    epact = (19 * golden + century - century // 4 - (century - (century + 8) // 25 + 1) // 3 + 15) % 30
    to_sunday = (32 + 2 * (century % 4) + 2 * (rest // 4) - epact - rest % 4) % 7
    shift = epact + to_sunday - 7 * ((golden + 11 * epact + 22 * to_sunday) // 451) + 114
    return date(year, shift // 31, shift % 31 + 1)
