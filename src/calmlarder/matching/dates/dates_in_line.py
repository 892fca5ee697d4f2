"""Find the dates in a line: what happened or will, and on which day."""

import re
from datetime import date, timedelta

from calmlarder.matching.dates.begun_on_a_day import begun_then
from calmlarder.matching.dates.date_words import KINDS, SURE, Dated, DateKind
from calmlarder.matching.dates.day_names import (
    A_DAY_BEGINS,
    DAY,
    DAY_WORD,
    DAYS_IN_WORDS,
    MONTH,
    parse_day_of,
    weekday_slip,
)
from calmlarder.matching.dates.days_rewritten import days_in_one_form, days_of_fractions
from calmlarder.matching.dates.feasts import feasts_as_days
from calmlarder.matching.dates.month_first import day_first
from calmlarder.matching.late_patterns import LatePattern

_KIND = "|".join(sorted(map(re.escape, KINDS), key=len, reverse=True))
_BETWEEN = r"[:.]?(?: (?:on|date|by|the|is|it|in|end of day|this|was|were|says|said))*[:]?\s+"
_MAY_BE_KIND_AND_DATE = LatePattern(rf"(?<![\w-])(?:{_KIND}){_BETWEEN}{A_DAY_BEGINS}")
_KIND_AND_DATE = LatePattern(rf"(?<![\w-])({_KIND}){_BETWEEN}({DAY_WORD})(?![\w/])")
_KIND_BEHIND = LatePattern(r"\w (?:use|ub|best|bb|exp|sell)")  # what may be such a label, looked for first: it is short
# A day between two labels is that of the first: `defrosted yesterday ub fri`.
_DATE_AND_KIND = LatePattern(
    rf"(?<![\w./-])({DAY_WORD}) (use by|use-by|ub|best before|bbe|bb|expiry|exp|sell by)(?![\w/])"
    rf"(?! (?:on )?(?:{DAY}|today|tomorrow|tonight)\b)",
    needs=("use by", "use-by", "ub", "best before", "bb", "exp", "sell by"),
)
_DAY_OR_WEEK = (" day", " week")
_LEFT = LatePattern(
    rf"(?<![\w./-])(?:about |only |just |maybe |has |got |with )?(\d{{1,3}}|{DAYS_IN_WORDS}) (?:more )?(day|week)s?"
    r"(?:'s?)?(?: or so)? (?:left|to go|remaining|of life|on it|life|till|until|left on it|more"
    r"|shelf life)\b(?: on (?:it|them))?",
    needs=_DAY_OR_WEEK,
)
_WITHIN = LatePattern(rf"\b(?:with)?in (?:the )?next (\d{{1,2}}|{DAYS_IN_WORDS}) (day|week)s?\b", needs=("next ",))
_OVER = LatePattern(
    rf"(?<![\w./-])(\d{{1,2}}|{DAYS_IN_WORDS}) (day|week)s? (?:over(?:due)?|past|out of date|gone over|after)"
    r"(?: (?:its |the |their )?(?:sell by |use by |best before )?(?:date|it))?\b",
    needs=_DAY_OR_WEEK,
)
# What came from a shop or a market on a day was bought then, whatever stands between.
_SHOPPING = (
    r"(?:(?:big|weekly|main|farmers'?|veg|vegetable|food|grocery|supermarket|fruit|street) )*"
    r"(?:shop|shops|shopping|market|markets|delivery|deliveries|box|haul|groceries|grocery run|grocery|run|order|stall)"
)
_BOUGHT = LatePattern(
    rf"\b(?:from|bought in|got in|in) (?:the )?({DAY_WORD})(?:'?s)? {_SHOPPING}\b"
    rf"|(?<![\w-])(?!(?:1/[234]|2/3|3/4) box\b)({DAY_WORD})(?:'?s)? {_SHOPPING}(?=\s*(?:$|[,;)]))"
    rf"|\b(?:from (?:the )?|weekly |big |main |veg |farmers'? ){_SHOPPING},? (?:on |last |this )?({DAY_WORD})(?![\w/])",
    needs=("shop", "market", "deliver", "box", "haul", "grocer", "run", "order", "stall"),
)
# What is left over was made on the day that is told, and has none ahead.
_LEFT_OVER = LatePattern(
    r"\b(?:left ?overs?|cooked|boiled|roasted|made|batch|soup|stew|curry|takeaway|take ?out|roast dinner)\b"
)
_HOURS = LatePattern(r"(?<![\w./-])\d{1,2} ?(?:hours?|hrs?|h) (?:left|old|ago)\b")
_LAST_DAY = LatePattern(
    r"\b(?:its |their |on its |on their )?last day\b|\b(?:use|eat|needs using|need using)(?: it"
    r"| them)?(?: up)? (?:asap )?(?:today|tonight|now)\b"
)
_OLD = LatePattern(rf"(?<![\w./-])(\d{{1,2}}|{DAYS_IN_WORDS}) (day|week)s? old\b", needs=_DAY_OR_WEEK)
# Without a word before it only what can be nothing but a day counts: `1/2` is a half, `sun` is half of sun-dried.
_LONG_DAYS = "monday|tuesday|wednesday|thursday|friday|saturday|sunday"
# `monday's soup`; `tues` and `thurs` are days themselves.
_DAYS_POSSESSIVE = LatePattern(
    rf"\b((?:last |this )?(?:yesterday|{_LONG_DAYS}))'?s (?=[a-z])|\b((?:last |this )?(?:{DAY_WORD}))'s (?=[a-z])",
    needs=("days ", "'s "),
)
_BARE_ON = (
    rf"(?:\d{{4}}-\d{{1,2}}-\d{{1,2}}|\d{{1,2}}[./-]\d{{1,2}}[./-]\d{{2,4}}|\d{{1,2}}(?:st|nd|rd"
    rf"|th)? {MONTH}(?: \d{{4}})?"
    rf"|{MONTH} \d{{1,2}}(?:st|nd|rd|th)?(?: \d{{4}})?|(?:the )?\d{{1,2}}(?:st|nd|rd|th)"
    rf"|today|tonight|tonite|tomorrow|tmrw|tmr|tomoz|tomorow|tommorow|tommorrow|2moro|yesterday"
    rf"|the day before yesterday"
    rf"|day before yesterday|day after tomorrow|last night|(?:the )?end of (?:the |this )?month"
    rf"|(?:the )?(?:end|start|middle|mid|early|late|beginning)(?: of)? {MONTH}(?: \d{{4}})?"
    rf"|in (?:\d{{1,3}}|{DAYS_IN_WORDS}) (?:day|week)s?"
    rf"|(?:{DAY}) (?:the )?\d{{1,2}}(?:(?:st|nd|rd|th)(?: {MONTH})?| {MONTH}|(?=\s*(?:$|[,;)])))"
    rf"|(?:\d{{1,3}}|{DAYS_IN_WORDS}) (?:day|week)s? ago|(?:{_LONG_DAYS}) week|a week on (?:{_LONG_DAYS})"
    rf"|(?:last |next |this |on |for )?(?:{_LONG_DAYS})(?: night)?"
    rf"|(?:tues|weds|thurs|(?:last |next |this |on )(?:mon|tue|wed|thu|fri|sat|sun)))"
)
_BARE = LatePattern(rf"(?<![\w./-])({_BARE_ON})(?![\w/-]|')")
_MAY_BE_BARE = LatePattern(  # the same, short
    rf"\d[./-]\d|\d(?:st|nd|rd|th)|{MONTH}|day|week|month|night|tonite|tmr|tomo|tommo|2mo|\b(?:{DAY})(?![a-z])"
)
_WEEKDAY_ALONE = rf"(?:on )?(?:{DAY})"
_SHORT_END = LatePattern(r"(?:^|[\s,])(mon|tue|wed|weds|thu|thur|fri|sat|sun)[.!]*$")
_OPENED = LatePattern(
    r"\b(?:(?:just|already|only just|barely|half|recently|been|not long) begun"
    r"|just opened|already open(?:ed)?|opened|open(?!\w)|part used|half used|started"
    r"|abiert[oa]s?|ouverte?s?|entamee?s?|apert[oaie]|abert[oa]s?|angebrochene?[rsn]?|geo?offnete?[rsn]?|otwart[aey]"
    r"|geopende?|oppna[dt]e?|a[ab]?pnet|abnet)\b"
)
_UNOPENED = LatePattern(r"\b(?:un-?opened|not open(?:ed)?|sealed|never opened)\b")
_KIND_ALONE = LatePattern(
    rf"(?<![\w-])({'|'.join(sorted(map(re.escape, SURE), key=len, reverse=True))})[:.]?(?: (?:on|date"
    rf"|the))*\s+([a-z0-9][\w/.'-]*)"
)
_WAS = LatePattern(r"\b(?:was|were)\b")
# Said of what is past, so that the day lies behind.
_BEHIND = frozenset({"expired", "ran out on", "went out of date"})
_NAMED_MONTH = LatePattern(rf"{MONTH}|\d[./-]\d")
_FUTURE: frozenset[DateKind] = frozenset({"use-by", "best-before"})


class UnreadDay(ValueError):
    """A word stands where a day should, and is none that is known. Its text is the question to the cook."""


def _counted_days(text: str, today: date) -> tuple[list[Dated], str]:
    """Days that are told by their number: within three days, two days over, four days left, a week old."""
    dates: list[Dated] = []
    while found := _WITHIN.search(text):
        dates.append(Dated("use-by", parse_day_of(f"in {found[1]} {found[2]}", today, True)))
        text = _cut(text, found)
    while found := _OVER.search(text):
        dates.append(Dated("use-by", parse_day_of(f"{found[1]} {found[2]} ago", today, False)))
        text = _cut(text, found)
    while found := _LEFT.search(text):
        dates.append(Dated("use-by", parse_day_of(f"in {found[1]} {found[2]}", today, True)))
        text = _cut(text, found)
    while found := _LAST_DAY.search(text):
        dates.append(Dated("use-by", today))
        text = _cut(text, found)
    while found := _OLD.search(text):
        dates.append(Dated("made", parse_day_of(f"{found[1]} {found[2]} ago", today, False)))
        text = _cut(text, found)
    if found := _DAYS_POSSESSIVE.search(text):
        dates.append(Dated("made", parse_day_of(found[1] or found[2], today, False)))
        text = _cut(text, found)
    return dates, text


def take_dates(text: str, today: date, month_first: bool = False) -> tuple[tuple[Dated, ...], str]:
    """The dates in a plain text, and the text without them; `month_first` as the home writes its days.

    Raises ValueError, in words for a cook, for a day that does not exist, and UnreadDay for one that cannot be read.
    """
    text = day_first(text) if month_first else text
    dates: list[Dated] = []
    while found := _BOUGHT.search(text):
        dates.append(Dated("bought", parse_day_of(found[1] or found[2] or found[3], today, False)))
        text = _cut(text, found)
    while found := _HOURS.search(text):
        text = _cut(text, found)
    text = days_in_one_form(feasts_as_days(text, today), today)
    text = text if _LEFT_OVER.search(text) else begun_then(text, today)
    counted, text = _counted_days(text, today)
    dates += counted
    while found := _DATE_AND_KIND.search(text) if _KIND_BEHIND.search(text) else None:
        kind = KINDS[found[2]]
        dates.append(Dated(kind, parse_day_of(found[1], today, True)))
        text = _cut(text, found)
    while found := _KIND_AND_DATE.search(text) if _MAY_BE_KIND_AND_DATE.search(text) else None:
        kind = KINDS[found[1]]
        ahead = kind in _FUTURE and found[1] not in _BEHIND and not _WAS.search(found[0])
        on = parse_day_of(found[2], today, ahead)
        if found[1].endswith("before") and kind == "use-by":
            on -= timedelta(days=1)  # before a day is the day before it
        dates.append(Dated(kind, on))
        kept = (
            " leftover "
            if found[1].startswith("left")
            else f" {found[1]} "
            if kind == "made" and found[1] not in {"from", "since"}
            else " "
        )
        text = f"{text[: found.start()]}{kept}{text[found.end() :]}"
        if len(dates) > 20:
            break
    text = _slips(text, today, dates)
    text = days_of_fractions(text, today)
    bare = _bare_day(text) or (_SHORT_END.search(text) if not dates else None)
    if bare:
        on = parse_day_of(bare[1].removeprefix("for "), today, not dates and not _LEFT_OVER.search(text))
        # A day alone is a label when it lies ahead, and the day of making when it lies behind; a day of a month is what
        # stands on a pack, so that one behind is past.
        label = on >= today or (_NAMED_MONTH.search(bare[1]) and not dates and not _LEFT_OVER.search(text))
        dates.append(Dated("use-by" if label else "made", on, bare=bool(re.fullmatch(_WEEKDAY_ALONE, bare[1]))))
        text = _cut(text, bare)
    text = _UNOPENED.sub(" ", text)
    opened = _OPENED.search(text)
    if opened:
        if not any(dated.kind == "opened" for dated in dates):
            dates.append(Dated("opened", None))
        text = _cut(text, opened)
    return tuple(dict.fromkeys(dates)), " ".join(text.split())


def _bare_day(text: str) -> re.Match[str] | None:
    return _BARE.search(text) if _MAY_BE_BARE.search(text) else None


def _slips(text: str, today: date, dates: list[Dated]) -> str:
    """A day's word that is misspelt behind a word for a label; what cannot be read is asked."""
    found = _KIND_ALONE.search(text)
    if not found:
        return text
    day = weekday_slip(found[2])
    kind = KINDS[found[1]]
    other = _bare_day(text)
    if day is None and other:  # `exp besok (tmrw)`
        dates.append(Dated(kind, parse_day_of(other[1].removeprefix("for "), today, kind in _FUTURE)))
        return _cut(_cut(text, other), found) if other.start() > found.end() else _cut(_cut(text, found), other)
    if day is None:
        raise UnreadDay(f"`{found[2]}` is no day that can be read")
    dates.append(Dated(kind, parse_day_of(day, today, kind in _FUTURE)))
    return _cut(text, found)


def _cut(text: str, found: re.Match[str]) -> str:
    return f"{text[: found.start()]} {text[found.end() :]}"
