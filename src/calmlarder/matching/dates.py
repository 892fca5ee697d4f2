"""Find the dates in a line: what happened or will, and on which day."""

import re
from datetime import date, timedelta

from calmlarder.matching.date_labels import KINDS, SURE, DateKind
from calmlarder.matching.dated import Dated
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.measures import MEASURE, UNIT
from calmlarder.matching.naming_days import (
    DAY,
    DAY_WORD,
    DAYS_IN_WORDS,
    MONTH,
    MONTH_ELSEWHERE,
    MONTH_NAMES,
    MONTHS_ELSEWHERE,
    parse_day_of,
    weekday_slip,
)

_KIND = "|".join(sorted(map(re.escape, KINDS), key=len, reverse=True))
# How a day begins: what is short is looked for first, and the long expressions of days wait for it.
_A_DAY_BEGINS = (
    rf"(?:\d|the |in |on |an? |(?:{DAYS_IN_WORDS})\b|end|start|mid|early|late|beginning|{MONTH}|month|{DAY}"
    r"|to[dnm]|tm|y|now|asap|this |last |next |coming |day |w(?:eek|k))"
)
_BETWEEN = r"[:.]?(?: (?:on|date|by|the|is|it|in|end of day|this|was|were|says|said))*[:]?\s+"
_MAY_BE_KIND_AND_DATE = LatePattern(rf"(?<![\w-])(?:{_KIND}){_BETWEEN}{_A_DAY_BEGINS}")
_KIND_AND_DATE = LatePattern(rf"(?<![\w-])({_KIND}){_BETWEEN}({DAY_WORD})(?![\w/])")
_KIND_BEHIND = LatePattern(r"\w (?:use|ub|best|bb|exp|sell)")  # what may be such a label, looked for first: it is short
_DATE_AND_KIND = LatePattern(
    rf"(?<![\w./-])({DAY_WORD}) (use by|use-by|ub|best before|bbe|bb|expiry|exp|sell by)(?![\w/])",
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
# What may be a part of a pack as well as a day: `peas frozen 1/2 bag`.
_PART_NO_DAY = LatePattern(
    r"\b(?!(?:use|best|sell|eat|ub|bb|bbe|exp|expires)\b)([a-z]+) (1/2|1/3|2/3|1/4|3/4)(?![\d/])"
)
_SOAKING = LatePattern(
    rf"\bsoak(?:ing|ed)? (?:since|from|overnight)(?: (?:{DAY_WORD}|this morning|morning|lunch))?", needs=("soak",)
)
# What came from a shop or a market on a day was bought then, whatever stands between.
_SHOPPING = (
    r"(?:(?:big|weekly|main|farmers'?|veg|vegetable|food|grocery|supermarket|fruit|street) )*"
    r"(?:shop|shops|shopping|market|markets|delivery|deliveries|box|haul|groceries|grocery run|grocery|run|order|stall)"
)
_BOUGHT = LatePattern(
    rf"\b(?:from|bought in|got in|in) (?:the )?({DAY_WORD})(?:'?s)? {_SHOPPING}\b"
    rf"|(?<![\w-])({DAY_WORD})(?:'?s)? {_SHOPPING}(?=\s*(?:$|[,;)]))"
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
    r"|just opened|already open(?:ed)?|opened|open(?!\w)|part used|half used|started)\b"
)
_UNOPENED = LatePattern(r"\b(?:un-?opened|not open(?:ed)?|sealed|never opened)\b")
_KIND_ALONE = LatePattern(
    rf"(?<![\w-])({'|'.join(sorted(map(re.escape, SURE), key=len, reverse=True))})[:.]?(?: (?:on|date"
    rf"|the))*\s+([a-z0-9][\w/.'-]*)"
)
# A day of the month by its number alone: `until 15`, `bbe 15`.
_LABELS_OF_A_DAY = SURE | {"until", "till", "til", "exp", "exp date", "expiring"}
_BEFORE_A_DAY = (
    rf"(?<![\w-])({'|'.join(sorted(map(re.escape, _LABELS_OF_A_DAY), key=len, reverse=True))})"
    r"[:.]?(?: the)? "
)
_NUMBER_BEHIND = LatePattern(rf"{_BEFORE_A_DAY}\d")  # what may be such a day, looked for first: it is short
_BARE_DAY = LatePattern(
    rf"{_BEFORE_A_DAY}([12]?\d|3[01])(?![\w/.,%:-])(?! ?(?:{UNIT}|{MEASURE}|people|days?|weeks?|months?|\d|{MONTH})\b)"
)
_TOM = LatePattern(rf"(?<![\w-])({'|'.join(sorted(map(re.escape, SURE), key=len, reverse=True))})[:.]? tom(?!\w)")
_WAS = LatePattern(r"\b(?:was|were)\b")
_PARTS = {"1/2": "half", "1/3": "third", "2/3": "two thirds", "1/4": "quarter", "3/4": "three quarters"}
# Said of what is past, so that the day lies behind.
_BEHIND = frozenset({"expired", "ran out on", "went out of date"})
# What must be cooked or eaten by a day, however it is said, is a label for that day.
_DUTY = LatePattern(
    r"\b(?:to be (?:used|eaten|cooked|finished)"
    r"|(?:i |we |you )?(?:gotta|got to|must|have to|has to|needs? to|should|better|want to|gonna|going to|ought to"
    r"|will|'?ll|please|pls) (?:be )?(?:used|use|eaten|eat|cooked|cook|go|finished|finish|gone)"
    r"|(?<![a-z] )(?:cook|eat|finish)|(?:,|;|-) ?(?:cook|eat|finish|use))"
    r"(?: (?:'?em|it|them|these|this|that|those|up|all|off|asap|soon))*,?"
    rf" (?:by |before |on |for )?(?:the )?(?={DAY_WORD}(?![\w/]))"
)
# What may be such a duty, looked for first: it is short.
_MAY_BE_DUTY = LatePattern(
    r"(?:used|use|eaten|eat|cooked|cook|go|finished|finish|gone)"
    r"(?: (?:'?em|it|them|these|this|that|those|up|all|off|asap|soon))*,?"
    rf" (?:by |before |on |for )?(?:the )?{_A_DAY_BEGINS}"
)
# A day and a month with a dot or a dash between them, and a month cut short with a dot.
_DAY_DASH_MONTH = LatePattern(
    rf"(?<![\w./-])(\d{{1,2}})(?:st|nd|rd|th)?\.? ?[-./]? ?({MONTH})[-./ ]*(?=(\d{{2}}|\d{{4}})?(?![\w]))"
)
_MONTH_DOT_DAY = LatePattern(rf"(?<![\w./-])({MONTH})[.-]? ?(\d{{1,2}})(?:st|nd|rd|th)?(?![\w./-])")
_SHORT_YEAR = LatePattern(rf"(\d{{1,2}}) ({MONTH}) (2[4-9])(?![\w/.%-])(?! ?(?:k?g|ml|l|oz|lbs?|x|pack|tin|of)\b)")
_DOTTED = LatePattern(r"(?<![\w./-])([0-2]?[1-9]|[123]0|31)\.(0?[1-9]|1[0-2])\.(?!\d)")
_SLASHED = LatePattern(r"(?<![\w./-])(?<!\d )([0-3]?\d)/([0-3]?\d)(?![\w/%.-])(?! ?(?:k?g|ml|l|oz|lbs?|cups?|inch)\b)")
_A_MONTH = LatePattern(MONTH)
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


def take_dates(text: str, today: date) -> tuple[tuple[Dated, ...], str]:
    """The dates in a plain text, and the text without them.

    Raises ValueError, in words for a cook, for a day that does not exist, and UnreadDay for one that cannot be read.
    """
    dates: list[Dated] = []
    while found := _BOUGHT.search(text):
        dates.append(Dated("bought", parse_day_of(found[1] or found[2] or found[3], today, False)))
        text = _cut(text, found)
    while found := _HOURS.search(text):
        text = _cut(text, found)
    text = _plain_days(text, today)
    if _NUMBER_BEHIND.search(text):
        text = _BARE_DAY.sub(r"\1 the \2th", text)
    text = MONTH_ELSEWHERE.sub(lambda found: f"{found[1]} {MONTHS_ELSEWHERE[found[2]]}", text)
    text = _SOAKING.sub("soaking", text)
    text = _PART_NO_DAY.sub(lambda found: f"{found[1]} {_PARTS[found[2]]} ", text)
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
    text = _SLASHED.sub(lambda found: _day_of_fraction(found, text, today), text)
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


def _day_of_fraction(found: re.Match[str], text: str, today: date) -> str:
    """A day where two numbers with a stroke are no part of a pack: `12/03`, `16/3`; else as they stand.

    Nobody writes a part with a nought before it, or one that is more than the whole.
    """
    first, second = int(found[1]), int(found[2])
    nought = found[1].startswith("0") or found[2].startswith("0")
    american = first <= 12 < second and not re.search(r"\beggs?\b|\bleft\b|\bof\b", text)
    if not (nought or first > second or american):
        return found[0]
    try:
        return parse_day_of(found[0], today, True).isoformat()
    except ValueError:
        return found[0]


def _plain_days(text: str, today: date) -> str:
    """The text with its days in one form: `16-mar`, `mar. 16`, `16.03.`, and `must be eaten by` as a label."""
    has_month = _A_MONTH.search(text)
    if has_month:
        text = _MONTH_DOT_DAY.sub(r"\1 \2", _DAY_DASH_MONTH.sub(r"\1 \2 ", text))
    text = " ".join(text.split())
    if has_month:
        text = _SHORT_YEAR.sub(rf"\1 \2 {str(today.year)[:2]}\3", text)
    text = _DOTTED.sub(lambda found: f"{found[1]} {MONTH_NAMES[int(found[2]) - 1]}", text)
    text = _DUTY.sub(", use by ", text) if _MAY_BE_DUTY.search(text) else text
    return _TOM.sub(r"\1 tomorrow", text)


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


def parse_day(text: str, today: date) -> date:
    """A day as `--today` takes it. Raises ValueError for anything else."""
    if not re.fullmatch(DAY_WORD, text.strip().casefold()):
        raise ValueError(f"`{text}` is no day")
    return parse_day_of(text.strip().casefold(), today, True)


def _cut(text: str, found: re.Match[str]) -> str:
    return f"{text[: found.start()]} {text[found.end() :]}"
