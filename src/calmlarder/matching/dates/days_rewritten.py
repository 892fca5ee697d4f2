"""Days in one form: day and month however they are written, by a number alone, as a fraction, as a duty."""

import re
from datetime import date

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.dates.date_words import SURE
from calmlarder.matching.dates.day_names import (
    A_DAY_BEGINS,
    DAY_WORD,
    MONTH,
    MONTH_ELSEWHERE,
    MONTH_NAMES,
    MONTHS_ELSEWHERE,
    parse_day_of,
)
from calmlarder.matching.late_patterns import LatePattern

# What may be a part of a pack as well as a day: `peas frozen 1/2 bag`.
_PART_NO_DAY = LatePattern(
    r"\b(?!(?:use|best|sell|eat|ub|bb|bbe|exp|expires)\b)([a-z]+) (1/2|1/3|2/3|1/4|3/4)(?![\d/])"
    rf"( ?(?:left|of|{MEASURE}|{UNIT})s?\b)?"
)
_SOAKING = LatePattern(
    rf"\bsoak(?:ing|ed)? (?:since|from|overnight)(?: (?:{DAY_WORD}|this morning|morning|lunch))?", needs=("soak",)
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
_PARTS = {"1/2": "half", "1/3": "third", "2/3": "two thirds", "1/4": "quarter", "3/4": "three quarters"}
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
    rf" (?:by |before |on |for )?(?:the )?{A_DAY_BEGINS}"
)
# A day and a month with a dot or a dash between them, and a month cut short with a dot.
_DAY_DASH_MONTH = LatePattern(
    rf"(?<![\w./-])(\d{{1,2}})(?:st|nd|rd|th)?\.? ?[-./]? ?({MONTH})[-./ ]*(?=(\d{{2}}|\d{{4}})?(?![\w]))"
)
_MONTH_DOT_DAY = LatePattern(rf"(?<![\w./-])({MONTH})[.-]? ?(\d{{1,2}})(?:st|nd|rd|th)?(?![\w./-])")
_SHORT_YEAR = LatePattern(rf"(\d{{1,2}}) ({MONTH}) (2[4-9])(?![\w/.%-])(?! ?(?:k?g|ml|l|oz|lbs?|x|pack|tin|of)\b)")
_DOTTED = LatePattern(r"(?<![\w./-])([0-2]?[1-9]|[123]0|31)\.(0?[1-9]|1[0-2])\.(?!\d)")
# Two digits and two with a dot between, and no unit behind: `kefir do 25.11`.
_DOTTED_ALONE = LatePattern(
    r"(?<![\w./£$€-])(?P<until>(?:do|bis|tot|til|till|until|hasta|au) )?"
    r"(?P<day>(?:0[1-9]|[12]\d|3[01])\.(?:0[1-9]|1[0-2]))(?=\s*(?:$|[,;)]))",
    needs=(".0", ".1"),
)
_SLASHED = LatePattern(r"(?<![\w./-])(?<!\d )([0-3]?\d)/([0-3]?\d)(?![\w/%.-])(?! ?(?:k?g|ml|l|oz|lbs?|cups?|inch)\b)")
_A_MONTH = LatePattern(MONTH)
# Days by their number alone: what is left of them, or how long ago a thing that was cooked was made.
_DAYS_ALONE = LatePattern(
    r"(?<=[a-z] )(\d{1,2}) (days?)(?=\s*(?:$|[,;)]))|(?<=[,(-])( ?)(\d{1,2}) (days?)(?=\s*(?:$|[,;)]))", needs=(" day",)
)
_WAS_COOKED = LatePattern(
    r"\b(?:left ?overs?|cooked|boiled|roasted|fried|made|batch|soup|stew|curry|takeaway|dal|daal|rice|mash(?:ed)?|open"
    r"|opened|old|bought|picked|since|ago)\b"
)
_TOOK_DAYS = LatePattern(r"\b(?:soak|sprout|cur|age|ag|ferment|brin|proof|prov|marinat|rest|dri)(?:e|es|ed|ing)\b")
# A day and a month with a dash between them, where a range would run backwards.
_DASHED = LatePattern(
    rf"(?<![\w./-])([12]?\d|3[01])-(0?[1-9]|1[0-2])(?![\w/%.-])(?! ?(?:{UNIT}|{MEASURE}|people|days?|weeks?|months?)\b)"
)
_LABEL_OF_THE_PAST = frozenset(
    {"opened", "open", "made", "cooked", "bought", "baked", "boiled", "cut", "since", "from"}
)
_LATELY = 31  # days: a fraction behind such a word is a day of the last weeks; ours


# Feasts on a fixed day of the year, where a word before them tells that a day follows: the calendar of any diary.
_FEASTS = {
    "valentine": "14 february", "david": "1 march", "paddy": "17 march", "patrick": "17 march", "george": "23 april",
    "halloween": "31 october", "bonfire night": "5 november", "andrew": "30 november",
    "christmas eve": "24 december", "boxing day": "26 december",
}  # fmt: skip
_FEAST = LatePattern(
    r"\b(use by|by|before|bbe?|ub|exp|expires|until|till|til|since|from|made|cooked|bought|opened|frozen)(?: on)? "
    r"(?:(?:(?:saint|st\.?) )?(valentine|david|paddy|patrick|george|andrew)'?s'? day"
    r"|(halloween|bonfire night|christmas eve|boxing day))(?= *(?:$|[,;.)]))"
)


def days_alone(text: str) -> str:
    """The text with what its days by their number alone say of the food: so many left, or ago."""
    text = _FEAST.sub(lambda found: f"{found[1]} {_FEASTS[found[2] or found[3]]}", text)
    return _DAYS_ALONE.sub(lambda found: _days_alone(found, text), text)


def _days_alone(found: re.Match[str], text: str) -> str:
    """What has so many days left, or was cooked so many days ago; what was soaked or cured so long is neither."""
    if _TOOK_DAYS.search(text):
        return found[0]
    return f" {found[1] or found[4]} {found[2] or found[5]} {'ago' if _WAS_COOKED.search(text) else 'left'}"


def _dotted_alone(found: re.Match[str], today: date) -> str:
    """A day of the last weeks or the next; an amount of so many units is none that a kitchen has."""
    try:
        on = parse_day_of(found["day"], today, False)
        on = on if (today - on).days <= _LATELY else parse_day_of(found["day"], today, True)
    except ValueError:
        return found[0]
    return f"{'use by ' if found['until'] else ''}{on.isoformat()}" if abs((on - today).days) <= _LATELY else found[0]


def _dashed(found: re.Match[str]) -> str:
    return f"{found[1]}/{found[2]}" if int(found[1]) > int(found[2]) else found[0]


def _part_or_day(found: re.Match[str], today: date) -> str:
    """A part of a pack, unless a word of what has been and nothing to measure make a day of the last weeks of it."""
    if found[1] in _LABEL_OF_THE_PAST and not found[3]:
        on = parse_day_of(found[2], today, False)
        if 0 <= (today - on).days <= _LATELY:
            return f"{found[1]} {on.isoformat()} "
    return f"{found[1]} {_PARTS[found[2]]} {found[3] or ''}"


def days_in_one_form(text: str, today: date) -> str:
    """The text with its days in one form: `16-mar`, `mar. 16`, `16.03.`, and `must be eaten by` as a label."""
    has_month = _A_MONTH.search(text)
    if has_month:
        text = _MONTH_DOT_DAY.sub(r"\1 \2", _DAY_DASH_MONTH.sub(r"\1 \2 ", text))
    text = " ".join(text.split())
    if has_month:
        text = _SHORT_YEAR.sub(rf"\1 \2 {str(today.year)[:2]}\3", text)
    text = _DOTTED.sub(lambda found: f"{found[1]} {MONTH_NAMES[int(found[2]) - 1]}", text)
    text = _DOTTED_ALONE.sub(lambda found: _dotted_alone(found, today), text)
    text = _DUTY.sub(", use by ", text) if _MAY_BE_DUTY.search(text) else text
    text = _TOM.sub(r"\1 tomorrow", text)
    if _NUMBER_BEHIND.search(text):
        text = _BARE_DAY.sub(r"\1 the \2th", text)
    text = MONTH_ELSEWHERE.sub(lambda found: f"{found[1]} {MONTHS_ELSEWHERE[found[2]]}", text)
    text = _SOAKING.sub("soaking", text)
    text = _DASHED.sub(_dashed, text)
    return _PART_NO_DAY.sub(lambda found: _part_or_day(found, today), text)


_NO_PARTS = frozenset({7, 9, 10, 11, 12})  # of which nobody takes a part: `3/12` is a day, where it is a near one


def days_of_fractions(text: str, today: date) -> str:
    """The text with each `16/3` that can only be a day written as one."""
    return _SLASHED.sub(lambda found: _day_of_fraction(found, text, today), text)


def _day_of_fraction(found: re.Match[str], text: str, today: date) -> str:
    """A day where two numbers with a stroke are no part of a pack: `12/03`, `16/3`; else as they stand.

    Nobody writes a part with a nought before it, or one that is more than the whole.
    """
    first, second = int(found[1]), int(found[2])
    nought = found[1].startswith("0") or found[2].startswith("0")
    american = first <= 12 < second and not re.search(r"\beggs?\b|\bleft\b|\bof\b", text)
    ends = re.match(r"\s*(?:$|[,;)])", text[found.end() :]) is not None
    no_part = ends and second in _NO_PARTS and not re.search(r"\beggs?\b|\bleft\b", text)
    if not (nought or first > second or american or no_part):
        return found[0]
    try:
        on = parse_day_of(found[0], today, True)
    except ValueError:
        return found[0]
    if no_part and not (nought or first > second or american) and abs((on - today).days) > _LATELY:
        return found[0]
    return on.isoformat()
