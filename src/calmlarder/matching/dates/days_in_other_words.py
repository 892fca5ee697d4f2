"""Days that people put another way, written the way days are read."""

import re

from calmlarder.matching.dates.day_names import DAY, MONTH
from calmlarder.matching.dates.days_rewritten import days_alone
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

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
    r"|farm(?: shop| gate)?|super ?market|store|corner shop|wet market|bazaar|mart|co-?op|bakery|warehouse"
    r"|wharf|(?:farmers'? ?)?market|shop|docks?|pier|quay|boat|stall|harbou?r)'?s?"
)
_WHEN = rf"(?:yesterday|today|this (?:morning|afternoon)|last night|last {_DAY}|{_DAY})"
_MEALS = r"(?:lunch|dinner|supper|tea|breakfast|brunch|roast|takeaway|batch|left|last|this|that|the|when|before)"
_COOKED_THEN = LatePattern(
    r"\b(?:left ?overs?|left|cooked|made|from|since|boiled|roast(?:ed)?|baked|takeaway|take ?out)\b"
)
_DAYS_BY_START = {
    "mon": "monday", "tue": "tuesday", "wed": "wednesday", "thu": "thursday", "fri": "friday", "sat": "saturday",
    "sun": "sunday",
}  # fmt: skip


def _long_night(found: re.Match[str]) -> str:
    """The night of a day on which something was cooked; of what is fresh it is the meal it is for, and no label."""
    return f"{_DAYS_BY_START[found[1][:3]]} night" if _COOKED_THEN.search(found.string) else found[0]


def _so_many_days_ago(found: re.Match[str]) -> str:
    return f" from {int(found[1]) - 1} days ago"


# What stands in a line, and how it is read.
_PLAINLY = (
    (LatePattern(r"\bb\. ?b\.(?: ?e\.)?(?= ?[\d:a-z])"), "bb "),  # `b.b. 14 jan`
    (LatePattern(r"\bthis arvo\b"), "today"),
    # How long past: `past its date 2 days` is two days past.
    (
        LatePattern(
            r"\b(?:gone )?(?:past|over|out of|beyond) (?:(?:its|the|their) )?(?:(?:use by|best before|sell by) )?date"
            r"(?: by)?(?: about)? (\d{1,2}|an?|one|two|three|four|five|six) (day|week)s?\b(?! (?:left|to go))"
        ),
        lambda found: f"{1 if found[1] in {'a', 'an'} else found[1]} {found[2]}s past",
    ),
    (LatePattern(r"\b(?:frm|fm)\b(?= (?:the |last )?[a-z])"), "from"),
    # What has not gone by yet: `nearly out of date`.
    (
        LatePattern(
            r"\b(?:nearly|almost|just about|about to (?:go|be)|close to|coming up to|not far off|near|going)"
            r"(?: (?:at|its|the))* (?:out of date|past (?:its |the )?(?:date|best)|date|expired"
            r"|(?:use by|best before|sell by|expiry)(?: date)?)\b"
        ),
        "needs using",
    ),
    (LatePattern(r"\bwk(s?)\b"), r"week\1"),
    (LatePattern(r"\bexp'?d\b"), "expired"),
    (LatePattern(r"\b(?<!last )(?:nite|nyt)\b"), "night"),
    (LatePattern(r"\b(mon|tues?|wed|wednes|thurs?|fri|sat|satur|sun) night\b"), _long_night),
    (LatePattern(r"\bnights? ago\b"), "days ago"),
    (LatePattern(r"\b(?:went |gone |now |just )*out of date (?=yesterday|last |on |\d|" + rf"{_DAY}\b)"), "expired "),
    # The first day is the one on which it was opened or made.
    (LatePattern(r"[,;(]? ?\bday (?:(?:no|number) )?([2-9])(?: of \d)?\)?(?=\s*(?:$|[,;]))"), _so_many_days_ago),
    (
        LatePattern(rf"\bfrom (?:the |our |my |a )?{_SELLER},? (?:on )?({_WHEN})\b", needs=("from",)),
        r"bought \1",
    ),
    # `from aunties party sunday`: the day that has been.
    (
        LatePattern(
            r"\bfrom (?:[a-z']+ ){0,3}?(?:party|do|potluck|bbq|barbecue|wedding|church|picnic|tailgate|shower|funeral"
            rf"|birthday|bday|reunion|feast|barbie|cookout|wake)\b,? (?:on |last |this )*(?={_DAY}\b)",
            needs=("from",),
        ),
        "from ",
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
    (LatePattern(r"\b(days?|weeks?|months?) back\b"), r"\1 ago"),
    (LatePattern(r"\b(?:about )?(?:a|one|1) month (ago|left|old)\b"), r"30 days \1"),
    (LatePattern(r"\b(?:a )?(?:couple(?: of)?|two|2) months (ago|left|old)\b"), r"60 days \1"),
    (LatePattern(r"\b(?:a )?(?:few|three|3|several|4|5|6) months (ago|old)\b"), r"90 days \1"),
    (LatePattern(r"\blast weekend\b"), "last saturday"),
    (LatePattern(r"\b(?:from|out of) (?:the )?freezer,? (?=thawing|defrosting|thawed|defrosted)"), " "),
    (
        LatePattern(
            r"\b(?:from|out of) (?:the )?freezer,? (?:now |and )?(?:in|into|put in|moved to) (?:the )?fridge,? since\b",
            needs=("freezer",),
        ),
        "defrosting since",
    ),
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
    (LatePattern(r"\b(?:tm(?:ro|rrw|orrow|oro|rw)|tmoz|tomorr|tomor?o|tomm?orr?ow|tomor|tmw|tomo|2mrw)\b"), "tomorrow"),
    (LatePattern(r"\bthis am\b|\bmawnin\b|\bthis mornin'?(?!\w)"
            r"|(?<=from )(?:the )?mornin[g']?(?![\w'])"), "this morning"),
    (LatePattern(r"\b(?:ytd|yday|ydy|ystd|yest|yst|yesturday|yestday|yesterdy)\b"
            r"(?! ?(?:night|nite|nyt|evening))"), "yesterday"),
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
    # The same the other way round: `hummus 3 days open`, `passata, a week open`.
    (
        LatePattern(
            r"(?<![\w./-])(\d{1,2}|an?|one|two|three|four|five|six) (day|week)s? open(?:ed)?\b"
            rf"(?! (?:on|since|from|last|yesterday|today|{_DAY})\b)",
            needs=(" open",),
        ),
        lambda found: f"opened {1 if found[1] in {'a', 'an'} else found[1]} {found[2]}s ago",
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


def days_plainly(text: str) -> str:
    """A plain line with its days written the way they are read: `thawing since mon` is defrosted on that day."""
    return days_alone(put_in_turn(text, _PLAINLY))
