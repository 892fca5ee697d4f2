"""Days that people put another way, written the way days are read."""

import re
from datetime import date

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.dates.date_words import SURE
from calmlarder.matching.dates.day_names import (
    A_DAY_BEGINS,
    DAY,
    DAY_WORD,
    MONTH,
    MONTH_ELSEWHERE,
    MONTH_NAMES,
    MONTHS_ELSEWHERE,
    parse_day_of,
)
from calmlarder.matching.late_patterns import LatePattern

_DAY = rf"(?:{DAY})"
_TO_THAW = r"(?:thaw|defrost)(?:ing|ed)?(?: out)?(?: (?:in|on) (?:the )?(?:fridge|side|counter|sink))?"
_DAY_BEHIND = rf"(?:yesterday|last night|this morning|last {_DAY}|on (?:last )?{_DAY})\b"
# What was done to a thing on a day, so that it keeps as long as what was cut then.
_DONE_TO_IT = (
    r"(?:pressed|peeled|chopped|grated|sliced|halved|drained|diced|shredded|prepped|trimmed|podded|shelled|unwrapped"
    r"|squeezed|zested|torn)"
)
# Who sells food: what came from there was not cooked there.
_SELLER = (
    r"(?:(?:local|halal|village|good) )?(?:butcher|fish ?monger|green ?grocer|grocer|baker|deli|fish (?:man|van)"
    r"|farm(?: shop| gate)?|super ?market|store|corner shop|wet market|bazaar|mart|co-?op|bakery|warehouse)'?s?"
)
_WHEN = rf"(?:yesterday|today|this (?:morning|afternoon)|last night|last {_DAY}|{_DAY})"
_MEALS = r"(?:lunch|dinner|supper|tea|breakfast|brunch|roast|takeaway|batch|left|last|this|that|the|when|before)"
# What stands in a line, and how it is read.
_PLAINLY = (
    (LatePattern(r"\bwk(s?)\b"), r"week\1"),
    (
        LatePattern(rf"\bfrom (?:the |our |my |a )?{_SELLER},? (?:on )?({_WHEN})\b", needs=("from",)),
        r"bought \1",
    ),
    (
        LatePattern(rf"\bfrom (?!{_MEALS}\b)[a-z][a-z']+,? on (?:last )?({_DAY})\b", needs=("from",)),
        r"bought \1",
    ),
    (LatePattern(r"(?<![\d/.-])(20\d\d)[/.](\d{1,2})[/.](\d{1,2})(?![\d/])"), r"\1-\2-\3"),
    # `ub vrij 13/3`: a weekday of another tongue beside the day of the month, which tells more.
    (
        LatePattern(
            r"\b(ub|use by|bbe?|best before|exp|expiry|expires|sell by|dlc|tht|mhd) (?!"
            rf"(?:on|the|end|start|mid|early|late|of|in|by|is|{MONTH}|{DAY})\b)[a-z]{{2,9}}\.? "
            r"(?=\d{1,2}[/.-]\d{1,2}(?![\d/.]*(?:kg|g|ml|l)\b)|\d{1,2}(?:st|nd|rd|th)\b)"
        ),
        r"\1 ",
    ),
    (LatePattern(r"(?<![\w./-])(\d{1,2}) ?(?:d|dys?) (?=ago|left|old|to go|over)"), r"\1 days "),
    (LatePattern(r"(?<![\w./-])(\d{1,2}) ?w (?=ago|left|old|to go|over)"), r"\1 weeks "),
    (LatePattern(r"\b(open(?:ed)?) (\d)d\b", needs=("open",)), r"\1 \2 days ago"),
    (LatePattern(r"\b(?:about )?(?:a )?fortnight\b"), "2 weeks"),
    # For so long, more or less: `been open a week or so`, `opened about 5 days ago`.
    (
        LatePattern(
            r"\b(open(?:ed)?|made|cooked)(?: for)? (?:about |around |over |maybe |roughly |nearly |almost |more than "
            r"|like |for |at least |well over |a good |approx )*(?:a|an|one|1|the last) week\b"
            r"(?: ago| now| or (?:so|two|more))*",
            needs=(" week",),
        ),
        r"\1 7 days ago",
    ),
    (
        LatePattern(
            r"\b(open(?:ed)?|made|cooked)(?: for)? (?:about|around|over|maybe|roughly|nearly|almost|more than|approx)"
            r" (?=\d{1,2} (?:days?|weeks?)\b)",
            needs=("about", "around", "over", "maybe", "roughly", "nearly", "almost", "more than", "approx"),
        ),
        r"\1 ",
    ),
    (
        LatePattern(
            r"\b(open(?:ed)?)(?: (?:for|since))? (?:ages|donkeys years|months|weeks|forever|yonks"
            r"|(?:god|who) knows when)\b(?: ago| now)*",
            needs=("open",),
        ),
        r"\1 30 days ago",
    ),
    (LatePattern(r"\b(days?|weeks?|months?) back\b"), r"\1 ago"),
    (LatePattern(r"\b(?:about )?(?:a|one|1) month (ago|left|old)\b"), r"30 days \1"),
    (LatePattern(r"\b(?:a )?(?:couple(?: of)?|two|2) months (ago|left|old)\b"), r"60 days \1"),
    (LatePattern(r"\b(?:a )?(?:few|three|3|several|4|5|6) months (ago|old)\b"), r"90 days \1"),
    (LatePattern(r"\blast weekend\b"), "last saturday"),
    (LatePattern(r"\b(?:from|out of) (?:the )?freezer,? (?=thawing|defrosting|thawed|defrosted)"), " "),
    (LatePattern(r"\b(yesterday|last night|this) eve\b"), r"\1 evening"),
    (LatePattern(r"(?<=[a-z\d,] )of (?=(?:today|yesterday|this morning|last night)\s*(?:$|[,;)]))"), "from "),
    (LatePattern(r"\b(use|eat|cook|finish)(?: (?:me|it|them|this))? 1st\b(?! of)", needs=(" 1st",)), r"\1 first"),
    (
        LatePattern(r"\bopen(?:ed)?[,;:]? (?:ever |it |'?s been |been |there )*(?:since|from)\b", needs=("open",)),
        "open since",
    ),
    (LatePattern(r"\bthe other (?:night|nite|evening|morning)\b"), "the other day"),
    (LatePattern(r"\bthe other week\b"), "10 days ago"),
    (LatePattern(r"\blast day (?:is )?(?=tomorrow|tm|today|on |\d|the \d)", needs=("last day",)), "use by "),
    # Out of the freezer, and not out of an oven.
    (
        LatePattern(
            r"\b(?:taken|took|got|pulled|moved|came)(?: it| them)? (?:out|down)(?: (?:to|for) (?:thaw|defrost)\w*)?"
            rf",? (?=yesterday|last night|this morning|on {_DAY}|{_DAY}\b)"
        ),
        "defrosted ",
    ),
    # Tofu and fresh cheese lie in water once their pack is open.
    (
        LatePattern(
            r"\b(tofu|bean ?curd|mozzarella|feta)\b([a-z ,]*?) in ?(?:a )?(?:(?:fresh|salted|cold|bowl of|tub of) )*"
            r"(?:water|brine) (?:since|from)\b"
        ),
        r"\1\2 opened",
    ),
    (LatePattern(r"\b(?:tm(?:ro|rrw|orrow|oro|rw)|tmoz|tomorr|tomm?orr?ow|tomor|tmw|tomo|2mrw)\b"), "tomorrow"),
    (LatePattern(r"\bthis am\b|\bmawnin\b|\bthis mornin'?(?!\w)"
            r"|(?<=from )(?:the )?mornin[g']?(?![\w'])"), "this morning"),
    (LatePattern(r"\b(?:ytd|ystd|yest|yst|yesturday|yestday|yesterdy)\b(?! ?(?:night|nite|nyt|evening))"), "yesterday"),
    # The date on its label: `reduced, today's date`.
    (LatePattern(rf"\b(today|tomorrow|yesterday|{_DAY})'?s date\b"), r"use by \1"),
    (
        LatePattern(
            rf"\bdate(?: on (?:it|(?:the )?[a-z]+))?(?:'s| is| says| said|:)? (?=today|tomorrow|\d|the \d|{_DAY}\b)",
            needs=("date",),
        ),
        "use by ",
    ),
    # `by tomorrow 12th` is one day, told twice.
    (
        LatePattern(r"\b(?:tomorrow|today|tonight),? (?:the )?(?=\d{1,2}(?:st|nd|rd|th)\b)"),
        "the ",
    ),
    (LatePattern(r"\blast nite\b|\byest(?:erday)?(?:'?s)? (?:night|nite|nyt|evening)\b"), "last night"),
    # What is left of a meal is left over.
    (
        LatePattern(
            r"(?<!\bleft )(?<!\bleft over )\bfrom "
            r"(?:(?:today|yesterday|tonight|last night|this (?:morning|afternoon))'?s? )?"
            r"(?:lunch|dinner|supper|tea|breakfast|brunch)\b(?: (?:time|today))?(?! (?:box|bag))"
        ),
        "leftover",
    ),
    (
        LatePattern(rf"\b(?:(?:that |which )?(?:i|we|mum|mom|dad) )?{_DONE_TO_IT}(?: (?:it|them))? (?={_DAY_BEHIND})"),
        "cut ",
    ),
    (LatePattern(rf"\b(?:that |which )?(?:i|we) {_DONE_TO_IT}(?: (?:it|them))? (?={_DAY}\b)"), "cut "),
    (LatePattern(rf"\b(?:pressed|halved|drained|squeezed|torn|unwrapped) (?={_DAY}\b)"), "cut "),
    (
        LatePattern(
            rf"\bfor (?:a |the )?({_DAY})(?:'?s)? (?:stir[ -]?fry|curry|soup|stew|salad|pasta|bake|pie|risotto|chilli"
            r"|tacos?|pizza|dish|meal|recipe|sandwich(?:es)?|wraps?)\b"
        ),
        r"for \1's dinner",
    ),
    (
        LatePattern(
            r"\b(?:taken |took |just |came )*out (?:of )?(?:the )?freezer"
            r"(?: (?:this morning|earlier|today|now|just now))?(?! (?:on|last|yesterday))"
        ),
        "defrosted today",
    ),
    # Thawing since a day is out of the freezer since then, and not cooked.
    (LatePattern(rf"\b{_TO_THAW} (?:since|from|overnight since)\b"), "defrosted"),
    (
        LatePattern(
            r"\b(?:use|eat|consume|keep|best|good) (?:with)?in \w+ days? (?:of|after|once|from) (?:being )?"
            r"open(?:ing|ed)\b"
        ),
        " ",
    ),
    (
        LatePattern(
            r"^open(?:ed)? (?!.*\b(?:ub|use|by|bbe?|best|exp\w*|until|til)\b)([a-z][a-z ]*) "
            rf"(?=(?:on |last )?{_DAY}\s*$)",
            needs=("open",),
        ),
        r"\1 opened ",
    ),
    # Nobody knows when: long enough ago (three weeks, ours).
    (LatePattern(r"\b(?:for )?(?:ages|a while|ages and ages|donkey'?s years|god knows how long|forever|long"
                 r"|(?<!\d )(?<!\ba )(?<!few )(?<!two )(?<!three )(?<!four )(?<!couple )(?<! of )weeks)"
                 r" (?:ago|back)\b"), "21 days ago"),
    (
        LatePattern(
            rf"\bopen(?:ed)? (?:a |the |an? )?(?:tins?|cans?|jars?|packs?|packets?|bags?|tubs?|cartons?|bottles?)"
            rf",? (?=(?:on |last )?(?:{DAY})\b|yesterday|last night|this morning)",
            needs=("open",),
        ),
        "opened ",
    ),
    # Open for so long is open since so long ago: `passata opened, 3 days`.
    (
        LatePattern(
            r"\b(open(?:ed)?),? (?:for |about |like |maybe |already |now )*"
            r"(\d{1,2}|one|two|three|four|five|six) (day|week)s?\b(?! (?:ago|left|to go|old|more|remaining))",
            needs=("open",),
        ),
        r"\1 \2 \3s ago",
    ),
    # A label's day that has gone by: `ub tue gone` is the tuesday before, and nobody has eaten it.
    (
        LatePattern(
            rf"\b(ub|use by|bbe?|best before|best by|sell by|exp|expires?|expiry)(?: (?:on|was|date))* ({_DAY}) "
            r"(?:(?:has|is|just|been|long|already) )*(?:gone|passed|past)\b"
        ),
        r"\1 last \2",
    ),
    (
        LatePattern(
            r"\b(?:use by|ub)(?: date)? (?:(?:has|is|just|been|long|already) )*(?:gone|passed|past)\b"
        ),
        "use by yesterday",
    ),
    (
        LatePattern(
            r"\b(?:best before|bbe?|sell by|expiry)(?: date)? (?:(?:has|is|just|been|long|already) )*"
            r"(?:gone|passed|past)\b"
        ),
        "past the date",
    ),
    (
        LatePattern(r"\bopen(?:ed)? ([a-z][a-z ]*?)[,;(-] ?(\d) (day|week)s?\)?\s*$", needs=("open",)),
        r"\1 opened \2 \3s ago",
    ),
    (LatePattern(r"\bgone past (?:the |its |their )?date\b"), "past the date"),
    (LatePattern(rf"\b({_DAY}) ?/ ?{_DAY}\b"), r"\1"),
    (LatePattern(rf"\b({_DAY}) next week\b"), r"\1 week"),
    (LatePattern(r"\b(?<!the )(?:the )?(?:end|back) of (?:the |this )?week\b"), "friday"),
    (LatePattern(r"(?:(?<=^)|(?<=[a-z,;(] ))(?<!\bone )(?:a |only a |just a )?day left\b"), "1 day left"),
    (LatePattern(r"\b(?:a |about a |over a |nearly a )?(?<!\d )(?<!\d)week(?:'?s)? old\b"), "7 days old"),
    (LatePattern(rf"\bwent out(?: of date)?(?: on)? (?=yesterday|last |\d|{_DAY}\b)"), "expired "),
    (LatePattern(rf"\bfrozen (?:in |since |from |back in )?{MONTH}(?! ?\d)"), "frozen"),
    (LatePattern(r"\b'?til (?=\d{1,2}[/.]\d)"), "till "),
    (
        LatePattern(
            r"\b(?:ends|ending|finishes|runs out|dated?)(?: on)? "
            rf"(?=(?:the )?\d{{1,2}}(?:[/.]\d|st|nd|rd|th)|\d{{1,2}} {MONTH}|{MONTH} \d|today|tomorrow|{_DAY}\b)"
        ),
        "exp ",
    ),
    (LatePattern(rf"\b(?<!cut )(?<!half )(?<!price )off (?=(?:on )?{_DAY}\b)"), "goes off "),
    (LatePattern(r"\b(?:ood|oo date)\b"), "past the date"),
    (
        LatePattern(
            r"\b(?:bbe?|best before|best by|ub|use by|exp|expires|good for|keeps|has) (?:in )?(?:about |another )?"
            r"(\d{1,2}) (day|week)s?\b(?! (?:old|ago|left|after|of))"
        ),
        r"\1 \2s left",
    ),
)  # fmt: skip
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


def days_plainly(text: str) -> str:
    """A plain line with its days written the way they are read: `thawing since mon` is defrosted on that day."""
    for shape, plainly in _PLAINLY:
        text = shape.sub(plainly, text)
    return _DAYS_ALONE.sub(lambda found: _days_alone(found, text), text)


def _days_alone(found: re.Match[str], text: str) -> str:
    """What has so many days left, or was cooked so many days ago; what was soaked or cured so long is neither."""
    if _TOOK_DAYS.search(text):
        return found[0]
    return f" {found[1] or found[4]} {found[2] or found[5]} {'ago' if _WAS_COOKED.search(text) else 'left'}"


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
    text = _DUTY.sub(", use by ", text) if _MAY_BE_DUTY.search(text) else text
    text = _TOM.sub(r"\1 tomorrow", text)
    if _NUMBER_BEHIND.search(text):
        text = _BARE_DAY.sub(r"\1 the \2th", text)
    text = MONTH_ELSEWHERE.sub(lambda found: f"{found[1]} {MONTHS_ELSEWHERE[found[2]]}", text)
    text = _SOAKING.sub("soaking", text)
    text = _DASHED.sub(_dashed, text)
    return _PART_NO_DAY.sub(lambda found: _part_or_day(found, today), text)


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
    if not (nought or first > second or american):
        return found[0]
    try:
        return parse_day_of(found[0], today, True).isoformat()
    except ValueError:
        return found[0]
