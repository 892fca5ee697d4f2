"""Days as people write them: `thurs`, `next friday`, `14th`, `13/3`, `end of march`, `in 3 days`."""

import re
from calendar import monthrange
from datetime import date, timedelta

from rapidfuzz.distance import DamerauLevenshtein

from calmlarder.matching.dates.date_words import YEARS
from calmlarder.matching.dates.month_first import FAR_DAYS
from calmlarder.matching.late_patterns import LatePattern

_DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_DAY_WORDS = {name[:size]: index for index, name in enumerate(_DAYS) for size in (3, 4, len(name))}
_DAY_WORDS |= {"tues": 1, "weds": 2, "thur": 3, "thurs": 3, "wednes": 2}
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
MONTH_NAMES = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
    "december",
)  # fmt: skip
_SIMPLE = {
    "today": 0, "tonight": 0, "now": 0, "asap": 0, "this evening": 0, "this morning": 0, "tomorrow": 1, "tmrw": 1,
    "tmr": 1, "tmw": 1, "tomoz": 1, "2moro": 1, "tomorow": 1, "tommorow": 1, "tommorrow": 1, "yesterday": -1,
    "yday": -1, "last night": -1, "last week": -7, "the day before yesterday": -2, "day before yesterday": -2,
    "day after tomorrow": 2, "the day after tomorrow": 2, "next week": 7, "tomo": 1, "2mrw": 1, "2morrow": 1,
    "tmrow": 1, "tomorro": 1, "tommorro": 1, "2day": 0,
    "2nite": 0, "tonite": 0, "2night": 0, "this week": 4, "yest": -1, "last nite": -1, "the other day": -3,
}  # fmt: skip
_MONTH_END = LatePattern(r"(?:the )?end of (?:the |this )?month|month end")
_WEEKEND = {"the wkend": 5, "wkend": 5, "the weekend": 5, "weekend": 5, "this weekend": 5}
_SMALL_NUMBERS = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "ten": 10, "couple of": 2, "a couple of": 2, "a few": 3, "few": 3, "another": 1,
}  # fmt: skip
_NEAR_DAYS = 3  # `next friday` is the one after the coming one when that is no further off: common practice
_JUST_GONE = 7  # a label of a day of the month that far behind is past, and not nearly a month ahead: ours

DAYS_IN_WORDS = "|".join(sorted(_SMALL_NUMBERS, key=len, reverse=True))
MONTH = (
    r"(?:jan(?:uary)?|feb(?:ruary|uary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?"
    r"|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)(?![a-z])"
)
# Months of other tongues, behind a number; `mayo` is none of them, for it is eaten.
MONTHS_ELSEWHERE = {
    **dict.fromkeys(("janvier", "enero", "ene", "januar", "januari", "gennaio", "janeiro", "stycznia"), "january"),
    **dict.fromkeys(
        ("fevrier", "febrero", "fev", "februar", "februari", "febbraio", "fevereiro", "lutego"), "february"
    ),
    **dict.fromkeys(("mars", "marzo", "marz", "maerz", "maart", "marco", "marca"), "march"),
    **dict.fromkeys(("avril", "avr", "abril", "abr", "aprile", "kwietnia"), "april"),
    **dict.fromkeys(("mai", "maggio", "maio", "maja"), "may"),
    **dict.fromkeys(("juin", "junio", "juni", "giugno", "junho", "czerwca"), "june"),
    **dict.fromkeys(("juillet", "julio", "juli", "luglio", "julho", "lipca"), "july"),
    **dict.fromkeys(("aout", "agosto", "augustus", "sierpnia"), "august"),
    **dict.fromkeys(("septembre", "septiembre", "settembre", "setembro", "wrzesnia"), "september"),
    **dict.fromkeys(("octobre", "octubre", "oktober", "okt", "ottobre", "outubro"), "october"),
    **dict.fromkeys(("novembre", "noviembre", "novembro", "listopada"), "november"),
    **dict.fromkeys(("decembre", "diciembre", "dic", "dez", "dezember", "dicembre", "dezembro", "grudnia"), "december"),
}  # fmt: skip
MONTH_ELSEWHERE = LatePattern(
    rf"(?<![\w./-])(\d{{1,2}})\.? (?:de )?({'|'.join(MONTHS_ELSEWHERE)})(?![\w])", needs=(*MONTHS_ELSEWHERE,)
)
DAY = "|".join(sorted(_DAY_WORDS, key=len, reverse=True))
DAY_WORD = (
    rf"(?:\d{{4}}-\d{{1,2}}-\d{{1,2}}|\d{{1,2}}[./-]\d{{1,2}}(?:[./-]\d{{2,4}})?"
    rf"|(?:the )?\d{{1,2}}(?:st|nd|rd|th)? (?:of )?{MONTH}(?: \d{{4}})?|{MONTH} (?:the )?\d{{1,2}}(?:st|nd|rd"
    rf"|th)?(?: \d{{4}})?"
    rf"|(?:the )?\d{{1,2}}(?:st|nd|rd|th)"
    rf"|(?:the )?(?:end|start|middle|mid|early|late|beginning)(?: of)? {MONTH}(?: \d{{4}})?|{MONTH}(?: \d{{4}})?"
    rf"|(?:{DAY}) (?:the )?\d{{1,2}}(?:(?:st|nd|rd|th)(?: (?:of )?{MONTH})?| (?:of )?{MONTH}|(?=\s*(?:$|[,;)])))"
    rf"|{'|'.join(sorted(_SIMPLE, key=len, reverse=True))}|{'|'.join(_WEEKEND)}"
    rf"|(?:\d{{1,3}}|{DAYS_IN_WORDS}) (?:day|week)s? ago"
    rf"|in (?:\d{{1,3}}|{DAYS_IN_WORDS}) (?:day|week)s?"
    rf"|(?:the )?end of (?:the |this )?month|month end|a week on (?:{DAY})|(?:{DAY}) week"
    rf"|(?:last |next |this |on |coming )?(?:{DAY})(?: (?:night|morning|evening|lunch))?)"
)
# How a day begins: what is short is looked for first, and the long expressions of days wait for it.
A_DAY_BEGINS = (
    rf"(?:\d|the |in |on |an? |(?:{DAYS_IN_WORDS})\b|end|start|mid|early|late|beginning|{MONTH}|month|{DAY}"
    r"|to[dnm]|tm|y|now|asap|this |last |next |coming |day |w(?:eek|k))"
)
_SLIP_WORDS = {name: name for name in (*_DAYS, *MONTH_NAMES, "tomorrow", "yesterday", "today", "tonight")}


def weekday_slip(word: str) -> str | None:
    """The day that a misspelt word can only be, or None (`thrusday`, `satuday`, `tommorow`)."""
    if len(word) < 5 or not word.isalpha():
        return None
    scored = sorted((DamerauLevenshtein.distance(word, known), known) for known in _SLIP_WORDS)
    (nearest, day), (second, _) = scored[0], scored[1]
    return day if nearest <= 2 and second > nearest else None


def parse_day(text: str, today: date) -> date:
    """A day as `--today` takes it. Raises ValueError for anything else."""
    if not re.fullmatch(DAY_WORD, text.strip().casefold()):
        raise ValueError(f"`{text}` is no day")
    return parse_day_of(text.strip().casefold(), today, True)


def parse_day_of(text: str, today: date, ahead: bool) -> date:
    """The day that a text of the form DAY_WORD means; `ahead` where it is one to come.

    Raises ValueError, in words for a cook, for a day that does not exist or is too far off.
    """
    text = re.sub(rf"^(?:{DAY}) (?:the )?(?=\d)", "", text)  # the number tells more than the weekday before it
    text = re.sub(r" (?:night|morning|evening|lunch)$", "", text) if text not in _SIMPLE else text
    if text in _SIMPLE:
        return today + timedelta(days=_SIMPLE[text])
    if text in _WEEKEND:
        return _weekday(_WEEKEND[text], None, today, ahead)
    found = re.fullmatch(rf"(?:(in) )?(\d{{1,3}}|{DAYS_IN_WORDS}) (day|week)s?(?: (ago))?", text)
    if found:
        count = _SMALL_NUMBERS.get(found[2]) or int(found[2])
        days = count * (7 if found[3] == "week" else 1)
        return today + timedelta(days=days if found[1] else -days)
    found = re.fullmatch(rf"(?:a week on ({DAY})|({DAY}) week)", text)
    if found:
        return _weekday(_DAY_WORDS[found[1] or found[2]], None, today, True) + timedelta(days=7)
    found = re.fullmatch(rf"(?:(last|next|this|on|coming) )?({DAY})", text)
    if found:
        return _weekday(_DAY_WORDS[found[2]], found[1], today, ahead)
    if _MONTH_END.fullmatch(text):
        return today.replace(day=monthrange(today.year, today.month)[1])
    return _calendar(text.removeprefix("the "), today, ahead)


def _weekday(day: int, which: str | None, today: date, ahead: bool) -> date:
    if which == "next":
        coming = (day - today.weekday()) % 7 or 7
        return today + timedelta(days=coming + 7 if coming <= _NEAR_DAYS else coming)
    if which in {"this", "coming"}:
        ahead = True
    if which == "last":
        ahead = False
    if ahead:
        return today + timedelta(days=(day - today.weekday()) % 7)
    back = (today.weekday() - day) % 7
    if which == "last" and back <= 1:
        back += 7  # who means yesterday says so
    return today - timedelta(days=back)


def _calendar(text: str, today: date, ahead: bool) -> date:
    iso = re.fullmatch(r"(\d{4})-(\d{1,2})-(\d{1,2})", text)
    slashed = re.fullmatch(r"(\d{1,2})[./-](\d{1,2})(?:[./-](\d{2,4}))?", text)
    named = re.fullmatch(rf"(\d{{1,2}})(?:st|nd|rd|th)? (?:of )?({MONTH})(?: (\d{{4}}))?", text)
    american = re.fullmatch(rf"({MONTH}) (?:the )?(\d{{1,2}})(?:st|nd|rd|th)?(?: (\d{{4}}))?", text)
    part = re.fullmatch(rf"(?:(end|start|middle|mid|early|late|beginning)(?: of)? )?({MONTH})(?: (\d{{4}}))?", text)
    numbered = re.fullmatch(r"(\d{1,2})(?:st|nd|rd|th)?", text)
    try:
        if iso:
            on = date(int(iso[1]), int(iso[2]), int(iso[3]))
        elif slashed:
            on = _slashed(int(slashed[1]), int(slashed[2]), slashed[3], today, ahead)
        elif numbered:
            on = _day_of_month(int(numbered[1]), today, ahead)
        elif named:
            on = _of_year(int(named[1]), _month(named[2]), named[3], today, ahead)
        elif american:
            on = _of_year(int(american[2]), _month(american[1]), american[3], today, ahead)
        elif part:
            on = _part_of_month(part[1], _month(part[2]), part[3], today, ahead)
        else:
            raise ValueError(text)
    except (ValueError, OverflowError):
        raise ValueError(f"`{text}` is a day that does not exist") from None
    if on.year not in YEARS:
        raise ValueError(f"`{text}` is too far off")
    return on


def _month(word: str) -> int:
    return _MONTHS.index(word[:3]) + 1


def _of_year(day: int, month: int, year: str | None, today: date, ahead: bool) -> date:
    if year is not None:
        return date(int(year) + (2000 if len(year) == 2 else 0), month, day)
    return _nearest_year(month, day, today, ahead)


def _slashed(first: int, second: int, year: str | None, today: date, ahead: bool) -> date:
    """Day before month, unless only the other way there is such a day, or it is much nearer."""
    readings = []
    for day, month in ((first, second), (second, first)):
        try:
            readings.append(_of_year(day, month, year, today, ahead))
        except ValueError:
            continue
    if not readings:
        raise ValueError("no such day")
    far = timedelta(days=FAR_DAYS)
    first_way = readings[0]
    if len(readings) == 2 and abs(first_way - today) > far >= abs(readings[1] - today):
        return readings[1]
    # 31/2 is no second of a 31st month: the wrong order is only taken where the first number can be no day of it.
    return first_way


def _day_of_month(day: int, today: date, ahead: bool) -> date:
    """The next (or last) day of that number."""
    month, year = today.month, today.year
    if ahead and 0 < today.day - day <= _JUST_GONE:
        return today.replace(day=day)  # `dated 10th` on the eleventh is yesterday, and not in four weeks
    for _ in range(12):
        if 1 <= day <= monthrange(year, month)[1]:
            on = date(year, month, day)
            if (on >= today) if ahead else (on <= today):
                return on
        month += 1 if ahead else -1
        year, month = (year + 1, 1) if month == 13 else (year - 1, 12) if month == 0 else (year, month)
    raise ValueError("no such day")


def _part_of_month(part: str | None, month: int, year: str | None, today: date, ahead: bool) -> date:
    """The first day it can mean for the start of a month, or of one that has been, the middle, else its last day."""
    if year is not None:
        of = int(year)
    elif ahead:
        of = today.year + (month < today.month - 6)
    else:
        of = today.year - (month > today.month)
    if part is None and not ahead:
        return date(of, month, 1)
    if part in {"start", "early", "beginning"}:
        return date(of, month, 5)
    if part in {"middle", "mid"}:
        return date(of, month, 15)
    return date(of, month, monthrange(of, month)[1])


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
