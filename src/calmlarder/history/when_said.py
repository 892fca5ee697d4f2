"""When something was eaten or felt, as its line says: `at one o'clock`, `yesterday evening`, `an hour ago`.

What a day says of the food stays with the food: `rice cooked yesterday`, `last night's curry`.
"""

import re
from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from typing import NamedTuple

from calmlarder.intake.zone import EVENING

SOON = timedelta(minutes=30)  # what is eaten in a moment may be logged already; ours, no source
_NIGHT_ENDS = 5  # o'clock; nobody who says `at one` at eleven means the night: common practice, no source
_NIGHT_BEGINS = 18
# A part of the day or a meal: its hours, and where it stands without a clock. Common practice, no source.
_PARTS: dict[str, tuple[int, int, time]] = {
    "morning": (_NIGHT_ENDS, 11, time(8)), "breakfast": (_NIGHT_ENDS, 11, time(8)), "brunch": (9, 13, time(11)),
    "lunch": (11, 15, time(13)), "lunchtime": (11, 15, time(13)), "afternoon": (12, 17, time(15)),
    "evening": (16, 23, EVENING), "dinner": (16, 23, EVENING), "supper": (16, 23, time(20)),
    "tonight": (16, 23, EVENING), "night": (_NIGHT_BEGINS, 23, time(20)),
}  # fmt: skip
_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_NUMBERS = {
    word: number
    for number, word in enumerate(
        ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"), start=1
    )
} | {"a quarter": 15, "quarter": 15, "half": 30, "twenty": 20, "twenty-five": 25, "twenty five": 25}
_HOUR = rf"(?:{'|'.join([*_NUMBERS][:12])}|\d{{1,2}})"
_AT = r"(?:\b(?:at|around|about|by|circa)\s+(?:about |around )?|[~@]\s*)"
_M = r"(?P<half_day>[ap])\.?\s?m\b\.?"
_PART = r"morning|afternoon|evening|night|lunchtime"
_MEAL = r"breakfast|brunch|lunch|lunchtime|dinner|supper"
_END = r"(?=\s*(?:$|[,;:)]|\.(?!\d)|(?:yesterday|today|tonight|this|last|on|in the|at night|at lunch|for|and|with)\b))"
_PHRASES = (
    rf"(?P<ago>(?P<count>half an|an?|{_HOUR}|\d{{1,3}})\s+(?P<unit>hours?|hrs?|h|minutes?|mins?)\s+ago|just now)\b",
    rf"(?:{_AT})?(?P<past>half past|a?\s?quarter past|a?\s?quarter to"
    rf"|{_AT}(?:half|five|ten|twenty(?:[- ]five)?|\d{{1,2}})(?:\s+minutes?)?(?:\s+(?:past|to))?)\s+"
    rf"(?P<past_hour>{_HOUR})\b(?:\s*{_M})?",
    rf"(?:{_AT})?(?P<hour>\d{{1,2}}):(?P<minute>[0-5]\d)(?!\d)(?:\s*{_M.replace('half_day', 'half_day2')})?",
    rf"{_AT}(?P<hour2>\d{{1,2}})[.h](?P<minute2>[0-5]\d)(?!\d)(?:\s*{_M.replace('half_day', 'half_day3')})?",
    rf"(?:{_AT})?(?P<hour3>{_HOUR})\s*(?:{_M.replace('half_day', 'half_day4')}|o\s?['’]?\s?clock\b)",
    rf"(?:{_AT})?\b(?P<noon>noon|midday|midnight)\b",
    rf"(?:{_AT}(?P<hour4>{_HOUR})\b{_END}|^\s*at\s+(?P<hour5>{_HOUR})\b(?=\s))",
    rf"\b(?P<part>(?:this|in the|at)\s+(?:{_PART})|tonight|(?:at|for)\s+(?:my |our )?(?:{_MEAL}))\b",
    rf"\b(?P<day>(?:the )?day before yesterday|yesterday|last night|(?:earlier )?today|\d{{1,2}} days ago"
    rf"|(?:on )?\d{{4}}-\d\d-\d\d|(?:on |last )?(?:{'|'.join(_WEEKDAYS)}))\b(?:\s+(?P<of_day>{_PART}|{_MEAL})\b)?",
)
_ISO = re.compile(r"\d{4}-\d\d-\d\d")
_PHRASE = re.compile(rf"(?:{'|'.join(f'(?:{one})' for one in _PHRASES)})(?!['’]?\w)", re.IGNORECASE)
# Behind these a day or an hour is told of the food, or compared with.
_OF_THE_FOOD = frozenset({
    "made", "cut", "left", "leftover", "leftovers", "from", "since", "by", "until", "till", "before", "after", "use",
    "best", "of", "than", "like", "as", "frozen", "bought", "open", "fresh", "due", "date", "dated", "woke",
})  # fmt: skip
_TWO = "two times are named: log each of them on a line of its own"


class Said(NamedTuple):
    """A line without what says when, and that moment; None where it says none.

    `is_apart`: it stands at the beginning, behind numbers or behind a comma, and is no part of a sentence.
    `problem` is why the moment cannot be.
    """

    text: str
    at: datetime | None = None
    is_apart: bool = True
    problem: str = ""


class _Clock(NamedTuple):
    hour: int
    minute: int
    is_sure: bool  # by am, pm, or as nobody writes the other half of a day


def when_said(text: str, now: datetime) -> Said:
    """The moment that a line of a log names, at or before now; what would be still to come was yesterday."""
    found = list(_told(text))
    if not found:
        return Said(text)
    clocks = {*filter(None, map(_clock, found))}
    days, parts = {*filter(None, map(_day, found))}, {*filter(None, map(_part, found))}
    agos = [match for match in found if match["ago"]]
    if len(clocks) + len(agos) > 1 or len(days) > 1 or len(parts) > 1:
        return Said(text, problem=_TWO)
    rest, is_apart = _without(text, found), _apart(text, found)
    if agos:
        return Said(rest, now - _passed(agos[0]), is_apart)
    day, part, clock = next(iter(days), ""), next(iter(parts), ""), next(iter(clocks), None)
    at = _moment(day, part, clock, now)
    problem = f"{day or part or 'that'} is still to come" if at is None else ""
    return Said(rest if at else text, at, is_apart, problem)


def stands_at(at: datetime) -> str:
    """As it is told: `Tue 10 Mar, 18:00`."""
    return f"{at:%a} {at.day} {at:%b}, {at:%H:%M}"


def _told(text: str) -> Iterator[re.Match[str]]:
    """The phrases of a line that say when it was eaten."""
    end = 0
    for match in _PHRASE.finditer(text):
        before = text[: match.start()]
        words = before.split()
        last = words[-1].casefold() if words else ""
        is_of_food = last in _OF_THE_FOOD or (last.endswith("ed") and len(last) > len("ed"))
        follows = not before[end:].strip(" ,;:(.") or before.rstrip().endswith((",", ";", "(", ":"))
        is_bare = bool(match["hour"]) and match[0][0].isdigit() and not match["half_day2"]
        if is_of_food or (is_bare and not follows) or not _is_a_day(match["day"]):  # cordial 1:10
            continue
        yield match
        end = match.end()


def _is_a_day(told: str | None) -> bool:
    """False of the 30th of February."""
    found = _ISO.search(told or "")
    try:
        return found is None or bool(date.fromisoformat(found[0]))
    except ValueError:
        return False


def _without(text: str, found: list[re.Match[str]]) -> str:
    for match in reversed(found):
        text = f"{text[: match.start()].rstrip()} {text[match.end() :].lstrip()}"
    text = re.sub(r"\(\s*\)", "", text)
    return re.sub(r"\s*(?:[,;:]\s*)+(?=[,;]|$)|^[\s,;:.]+", "", " ".join(text.split())).strip()


def _apart(text: str, found: list[re.Match[str]]) -> bool:
    end = 0
    for match in found:
        between = text[end : match.start()].rstrip()
        if between.strip(" 0123456789") and not between.endswith((",", ";", ":", "(")):
            return False
        end = match.end()
    return True


def _passed(match: re.Match[str]) -> timedelta:
    count, unit = (match["count"] or "").casefold(), (match["unit"] or "").casefold()
    if not unit:
        return timedelta(0)
    number = 0.5 if count.startswith("half") else 1 if count in {"a", "an"} else _number(count)
    return timedelta(hours=number) if unit.startswith("h") else timedelta(minutes=number)


def _number(word: str) -> int:
    return int(word) if word.isdigit() else _NUMBERS[" ".join(word.casefold().split())]


def _clock(match: re.Match[str]) -> _Clock | None:
    named = match.groupdict()
    half_day = next((named[one] for one in ("half_day", "half_day2", "half_day3", "half_day4") if named[one]), "")
    if named["noon"]:
        return _Clock(0 if named["noon"].casefold() == "midnight" else 12, 0, True)
    if named["past"]:
        hour, minute = _past(named["past"].casefold(), _number(named["past_hour"]))
    else:
        of = next((one for one in ("hour", "hour2", "hour3", "hour4", "hour5") if named[one]), None)
        if of is None:
            return None
        hour, minute = _number(named[of]), int(named.get(of.replace("hour", "minute")) or 0)
    if hour > 23 or minute > 59:
        return None
    if half_day and 1 <= hour <= 12:
        return _Clock(hour % 12 + 12 * (half_day.casefold() == "p"), minute, True)
    return _Clock(hour, minute, hour == 0 or hour > 12 or (named["hour"] or "").startswith("0"))


def _past(words: str, hour: int) -> tuple[int, int]:
    """`half past six`, `half six`, `quarter to six`, `at ten past six`."""
    bare = re.sub(rf"^{_AT}", "", words)
    minutes = _number(re.sub(r"\s+(?:minutes?|past|to)\b", "", bare))
    return ((hour - 2) % 12 + 1, 60 - minutes) if bare.endswith(" to") else (hour, minutes)


def _day(match: re.Match[str]) -> str:
    if match["day"]:
        return " ".join(match["day"].casefold().removeprefix("on ").removeprefix("the ").split())
    part = (match["part"] or "").casefold()
    return "today" if part.startswith("this") or part == "tonight" else ""


def _part(match: re.Match[str]) -> str:
    if match["day"] and match["day"].casefold() == "last night":
        return "night"
    told = match["of_day"] or match["part"] or ""
    return told.casefold().split()[-1] if told else ""


def _back(day: str, now: datetime) -> int:
    """How many days ago."""
    if _ISO.fullmatch(day):
        return (now.date() - date.fromisoformat(day)).days
    if day[:1].isdigit():
        return int(day.split()[0])
    name = day.removeprefix("last ")
    if name in _WEEKDAYS:
        back = (now.weekday() - _WEEKDAYS.index(name)) % 7
        return back or (7 if day.startswith("last ") else 0)
    return {"": 0, "today": 0, "earlier today": 0, "day before yesterday": 2}.get(day, 1)


def _moment(day: str, part: str, clock: _Clock | None, now: datetime) -> datetime | None:
    """What is meant, at or before now; None where the day that was named has not come so far."""
    on = now.date() - timedelta(days=_back(day, now))
    if on > now.date():
        return None
    if clock is None:
        return (
            _of_part(on, part, now, is_named=bool(day))
            if part
            else now
            if on == now.date()
            else datetime.combine(on, EVENING)
        )
    hours = _hours(clock, part)
    if part == "night":
        hours = [hour + 24 if hour < _NIGHT_ENDS and day == "last night" else hour for hour in hours]
    moments = [datetime.combine(on, time(0, clock.minute)) + timedelta(hours=hour) for hour in hours]
    past = [moment for moment in moments if moment <= now + SOON]
    if past and day and on != now.date() and len(past) > 1:
        return past[0] if clock.hour > 6 else past[1]  # `yesterday at eight`, `yesterday at one`
    by_day = [one for one in past if clock.is_sure or one.hour >= _NIGHT_ENDS or now.hour < _NIGHT_ENDS]
    if by_day or day:
        return max(by_day or past, default=None)
    return max(moments) - timedelta(days=1)


def _hours(clock: _Clock, part: str) -> list[int]:
    hours = [clock.hour] if clock.is_sure else [clock.hour % 12, clock.hour % 12 + 12]
    first, last, _ = _PARTS.get(part, (0, 23, EVENING))
    at_night = range(_NIGHT_ENDS) if part == "night" else range(0)
    return [hour for hour in hours if first <= hour <= last or hour in at_night] or hours


def _of_part(on: date, part: str, now: datetime, *, is_named: bool) -> datetime | None:
    begins, _, usual = _PARTS[part]
    moment = datetime.combine(on, usual)
    if moment <= now:
        return moment
    if now >= datetime.combine(on, time(begins)):
        return now
    return None if is_named else moment - timedelta(days=1)
