"""Find the dates in a line: what happened or will, and on which day."""

import re
from datetime import date, timedelta
from typing import Literal, NamedTuple

DateKind = Literal["use-by", "best-before", "opened", "made", "bought", "frozen"]

_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_DAY_WORDS = {name[:size]: index for index, name in enumerate(_DAYS) for size in (3, 4, len(name))}
_DAY_WORDS |= {"tues": 1, "thurs": 3}
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_MONTH = r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
_DAY = "|".join(sorted(_DAY_WORDS, key=len, reverse=True))
_ON = (
    rf"(?:\d{{4}}-\d{{1,2}}-\d{{1,2}}|\d{{1,2}}[./]\d{{1,2}}(?:[./]\d{{2,4}})?"
    rf"|\d{{1,2}}(?:st|nd|rd|th)? {_MONTH}(?: \d{{4}})?|{_MONTH} \d{{1,2}}(?:st|nd|rd|th)?(?: \d{{4}})?"
    rf"|today|tonight|now|tomorrow|yesterday|the day before yesterday|day after tomorrow"
    rf"|(?:\d{{1,3}}|an?|one|two|three|four|five|six|seven) (?:day|week)s? ago"
    rf"|in (?:\d{{1,3}}|an?|one|two|three|four|five|six|seven) (?:day|week)s?"
    rf"|last week|(?:last |next |this |on )?(?:{_DAY}))"
)
_KINDS: dict[str, DateKind] = {
    "use by": "use-by", "use-by": "use-by", "useby": "use-by", "eat by": "use-by", "ub": "use-by",
    "expires": "use-by", "expiry": "use-by", "exp": "use-by", "best before": "best-before",
    "best-before": "best-before", "best by": "best-before", "bb": "best-before", "bbe": "best-before",
    "opened": "opened", "open since": "opened", "cut": "opened", "made": "made", "cooked": "made",
    "boiled": "made", "roasted": "made", "baked": "made", "leftover from": "made", "from": "made",
    "bought": "bought", "picked": "bought", "frozen": "frozen",
}  # fmt: skip
_KIND = "|".join(sorted(map(re.escape, _KINDS), key=len, reverse=True))
_KIND_AND_DATE = re.compile(rf"\b({_KIND}):?(?: (?:on|date|by))?\s+({_ON})(?![\w/])")
# Without a word before it only what can be nothing but a day counts: `1/2` is a half, `sun` is half of sun-dried.
_BARE_ON = (
    rf"(?:\d{{4}}-\d{{1,2}}-\d{{1,2}}|\d{{1,2}}(?:st|nd|rd|th)? {_MONTH}(?: \d{{4}})?"
    rf"|today|tomorrow|yesterday|the day before yesterday|day after tomorrow"
    rf"|(?:\d{{1,3}}|an?|one|two|three|four|five|six|seven) (?:day|week)s? ago"
    rf"|(?:last |next |this |on )?(?:{'|'.join(_DAYS)}))"
)
_BARE = re.compile(rf"(?<![\w./-])({_BARE_ON})(?![\w/-])")
_OPENED = re.compile(r"\b(?:opened|already open|open(?!\w))")
_FUTURE: frozenset[DateKind] = frozenset({"use-by", "best-before"})
# Years that a larder can mean: days are counted from there in both directions.
YEARS = range(1900, 2200)
_SMALL_NUMBERS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7}


class Dated(NamedTuple):
    """A day and what it says. `on` is None where a pack is open since nobody knows when."""

    kind: DateKind
    on: date | None


def take_dates(text: str, today: date) -> tuple[tuple[Dated, ...], str]:
    """The dates in a plain text, and the text without them.

    Raises ValueError, in words for a cook, for a day that does not exist.
    """
    dates: list[Dated] = []
    while found := _KIND_AND_DATE.search(text):
        kind = _KINDS[found[1]]
        dates.append(Dated(kind, _day(found[2], today, kind in _FUTURE)))
        text = f"{text[: found.start()]} {text[found.end() :]}"
    bare = _BARE.search(text)
    if bare:
        on = _day(bare[1], today, not dates)
        # A day alone is a label when it lies ahead, and the day of making when it lies behind.
        dates.append(Dated("use-by" if on >= today else "made", on))
        text = f"{text[: bare.start()]} {text[bare.end() :]}"
    opened = _OPENED.search(text)
    if opened:
        if not any(dated.kind == "opened" for dated in dates):
            dates.append(Dated("opened", None))
        text = f"{text[: opened.start()]} {text[opened.end() :]}"
    return tuple(dates), " ".join(text.split())


def parse_day(text: str, today: date) -> date:
    """A day as `--today` takes it. Raises ValueError for anything else."""
    if not re.fullmatch(_ON, text.strip().casefold()):
        raise ValueError(f"`{text}` is no day")
    return _day(text.strip().casefold(), today, True)


def _day(text: str, today: date, ahead: bool) -> date:
    simple = {"today": 0, "tonight": 0, "now": 0, "tomorrow": 1, "yesterday": -1, "last week": -7,
              "the day before yesterday": -2, "day after tomorrow": 2}  # fmt: skip
    if text in simple:
        return today + timedelta(days=simple[text])
    found = re.fullmatch(r"(?:(in) )?(\w+) (day|week)s?(?: (ago))?", text)
    if found:
        count = _SMALL_NUMBERS.get(found[2]) or int(found[2])
        days = count * (7 if found[3] == "week" else 1)
        return today + timedelta(days=days if found[1] else -days)
    found = re.fullmatch(rf"(?:(last|next|this|on) )?({_DAY})", text)
    if found:
        return _weekday(_DAY_WORDS[found[2]], found[1], today, ahead)
    return _calendar(text, today, ahead)


def _weekday(day: int, which: str | None, today: date, ahead: bool) -> date:
    if which in {"next", "this"}:
        ahead = True
    if which == "last":
        ahead = False
    if ahead:
        return today + timedelta(days=(day - today.weekday()) % 7)
    return today - timedelta(days=(today.weekday() - day) % 7 or (7 if which == "last" else 0))


def _calendar(text: str, today: date, ahead: bool) -> date:
    iso = re.fullmatch(r"(\d{4})-(\d{1,2})-(\d{1,2})", text)
    slashed = re.fullmatch(r"(\d{1,2})[./](\d{1,2})(?:[./](\d{2,4}))?", text)
    named = re.fullmatch(rf"(\d{{1,2}})(?:st|nd|rd|th)? ({_MONTH})(?: (\d{{4}}))?", text)
    american = re.fullmatch(rf"({_MONTH}) (\d{{1,2}})(?:st|nd|rd|th)?(?: (\d{{4}}))?", text)
    year: str | None
    if iso:
        year, month, day = iso[1], int(iso[2]), int(iso[3])
    elif slashed:
        day, month, year = int(slashed[1]), int(slashed[2]), slashed[3]
    elif named:
        day, month, year = int(named[1]), _MONTHS.index(named[2][:3]) + 1, named[3]
    elif american:
        day, month, year = int(american[2]), _MONTHS.index(american[1][:3]) + 1, american[3]
    else:
        raise ValueError(f"`{text}` is no day")
    try:
        if year is not None:
            on = date(int(year) + (2000 if len(year) == 2 else 0), month, day)
        else:
            on = _nearest_year(month, day, today, ahead)
    except ValueError:
        raise ValueError(f"`{text}` is a day that does not exist") from None
    if on.year not in YEARS:
        raise ValueError(f"`{text}` is too far off")
    return on


def _nearest_year(month: int, day: int, today: date, ahead: bool) -> date:
    """The day of this year, unless half a year off in the wrong direction makes another year likelier."""
    this = date(today.year if (month, day) != (2, 29) else _leap(today.year), month, day)
    half = timedelta(days=183)
    if ahead and today - this > half:
        return this.replace(year=this.year + 1)
    if not ahead and this - today > timedelta(0):
        return this.replace(year=this.year - 1)
    return this


def _leap(year: int) -> int:
    return year if year % 4 == 0 and (year % 100 or year % 400 == 0) else year + 1
