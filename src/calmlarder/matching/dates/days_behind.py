"""Days that lie behind where people do not say so, and ages that nobody knows: `done sun`, `opened idk when`.

What stands open, or was cooked, since nobody knows when is long enough ago that no cautious cook eats it (ours).
"""

from calmlarder.matching.dates.day_names import DAY
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_DAY = rf"(?:{DAY})"
_END = r"(?=\s*[!.?]*\s*(?:$|[,;)]))"
_LONG_DAY = r"(?:mon|tues|wednes|thurs|fri|satur|sun)day"
_NOBODY_KNOWS = (
    r"(?:idk|dunno|(?:i )?(?:do not|don'?t|dont|can'?t|cant|cannot) (?:really )?(?:know|remember|recall)"
    r"|no (?:idea|clue)|not sure|unsure|who knows|god knows|forget|forgot|couldn'?t say)"
)
_WHEN = (
    r"(?:(?:from |since |of )?when(?: it was (?:opened|made|from))?"
    r"|how (?:old|long)(?: (?:it'?s|it is|its|it has|they'?re)(?: been)?(?: open(?:ed)?| there| in (?:there|here))?)?"
    r"|(?:from |since )?(?:what|which) day"
    r"|(?:from |of )?(?:its|the|their) age)"
)
_AGE_UNKNOWN = rf"(?:{_NOBODY_KNOWS},? {_WHEN}|(?:age|date|day) (?:is )?(?:unknown|not known|unsure|a mystery))"
# What is said of a thing that was cooked and stands cold.
_COLD = (
    r"(?:(?:roast(?:ed)?|boiled|mash(?:ed)?|cooked|poached|meat|chicken|lamb|beef|pork|turkey|mutton|duck|goose|rice"
    r"|pasta|noodles|potato(?:es)?|spuds|tatties|roasties|pizza|takeaway|sausages?|gammon|curry|stew)\b)"
)
_OPEN = r"\b(open(?:ed)?|cut|started)"
_SEASON = r"(?:spring|summer|autumn|fall|winter|holidays?|term|semester)"
_LONG_AGO = (
    rf"(?:last (?:month|year|{_SEASON})|months? ago|(?:back )?(?:in|over|during|since|before) (?:the |my |our "
    rf"|last )*{_SEASON}"
    r"|before (?:i|we) (?:went|left|moved)[a-z ]*)"
)
_PLAINLY = (
    # A day's with no apostrophe: `cold rice, tuesdays`, `from tuesdays`.
    (LatePattern(rf"(?:(?<=[,(-])|\bfrom\b) ?({_LONG_DAY})s{_END}"), r" from \1"),
    # Of two numbers of days, or a number more or less, the longer time counts.
    (
        LatePattern(r"(?<![\w./])(\d{1,2}) ?(?:-|–|/|to|or) ?(\d{1,2}) (days?|weeks?) (?=ago|old)\b"),
        lambda found: f"{max(int(found[1]), int(found[2]))} {found[3]} ",
    ),
    # What is not quite sure is told all the same: `opened maybe sunday?`, `opened sometime last week`.
    (
        LatePattern(
            r"\b(open(?:ed)?(?: since)?|cut|started|made|cooked|bought|from|since)"
            r"(?: (?:some ?time|some ?day|at some point|some point|i think|i guess|i reckon|probably|prob|maybe|perhaps"
            r"|possibly|around|roughly|like|mayb))+,? (?=[a-z\d])",
            needs=("some", "think", "guess", "reckon", "prob", "mayb", "perhaps", "possib", "around", "rough", "like"),
        ),
        r"\1 ",
    ),
    (
        LatePattern(rf"{_OPEN}(?: it)?,? (?:but )?(?:{_AGE_UNKNOWN}|{_NOBODY_KNOWS}{_END})"),
        "opened 30 days ago",
    ),
    (LatePattern(rf"{_OPEN},? {_LONG_AGO}\b"), "opened 60 days ago"),
    (
        LatePattern(
            r"\bopened ?\(?\?+\)?(?=\s*(?:$|[,;)]))|\bopen(?:ed)? \(?when\?+\)?|\bopen(?:ed)? (?:for )?\? ?days?\b"
            r"|\bopen(?:ed)? (?:for )?(?:too long|so long|way too long|a long time|quite a while|a good while|a"
            r" while)\b"
            r"(?! ago| back)|\bopen(?:ed)?[ ,(–-]+(?:the )?date (?:is |has )?(?:rubbed off|worn off|gone|smudged"
            r"|unreadable)\b",
            needs=("open",),
        ),
        "opened 30 days ago",
    ),
    (
        LatePattern(
            r"[,;(-]? ?\b(?:(?:it'?s |has |have )?been )?(?:sat |sitting )?(?:in )?(?:there|here|fridge) (?:for"
            r" )?(?:a (?:good )?while"
            r"|ages|too long|some time|forever|so long)\b\)?(?! ago)"
        ),
        " 21 days old",
    ),
    (LatePattern(rf"[,;(-]? ?\bfrom {_LONG_AGO}\b\)?"), " 21 days old"),
    (LatePattern(r"\bfrom (?:last week|some ?time last week)\b"), "from 7 days ago"),
    (
        LatePattern(
            rf"[,;(-]? ?\b(?:{_AGE_UNKNOWN}|of unknown age|how old\?+)\b\)?|\(how old\?*\)",
            needs=("when", "how ", " day", "age", "day ", "date "),
        ),
        lambda found: found[0] if "oil" in found.string else " 21 days old",  # oil is judged by itself
    ),
    # `open, 2 d ago`
    (LatePattern(rf"{_OPEN} ?[,;(–-]+ ?(?:about )?(?=\d{{1,2}} ?(?:d|dys?|days?) ago\b)"), "opened "),
    (
        LatePattern(
            r"\b(open(?:ed)?)(?: (?:for|since))? (?:ages|donkeys years|months|weeks|forever|yonks"
            r"|(?:god|who) knows when)\b(?: ago| now)*",
            needs=("open",),
        ),
        r"\1 30 days ago",
    ),
    # Nobody knows when: long enough ago (three weeks, ours).
    (LatePattern(r"\b(?:for )?(?:ages|a while|ages and ages|donkey'?s years|god knows how long|forever|long"
                 r"|(?<!\d )(?<!\ba )(?<!few )(?<!two )(?<!three )(?<!four )(?<!couple )(?<! of )weeks)"
                 r" (?:ago|back)\b"), "21 days ago"),
    # What was done with it on a day that has been.
    (LatePattern(rf"\b(?:all )?done (?:on |last )*(?={_DAY}\b)"), "made "),
    (
        LatePattern(
            rf"(?<=[a-z\d])[ ,;(-]+(?:i |we )?(?:changed|swapped|renewed)(?: (?:it|the water|its water|water))?"
            rf" (?:on |last )*(?=(?:{_DAY}|yesterday|today)\b)"
        ),
        " opened ",
    ),
    (
        LatePattern(
            r"\b(tofu|bean ?curd|dubu|doufu|tauhu|tahu|tokwa|mozzarella|feta)\b([^;&+]*?) in ?(?:a )?"
            r"(?:(?:fresh|salted|cold|bowl of|tub of) )*(?:water|brine),? (?:since|from)\b"
        ),
        r"\1\2 opened",
    ),
    # What is left of a day's meal: `nanas sunday veg`.
    (
        LatePattern(
            rf"\b({_DAY})(?:'?s)? (?=(?:veg|veggies|vegetables|trimmings|roasties|left ?overs?|remains|rest)\b"
            r"(?! (?:box|bag|delivery|shop|market|order)))"
        ),
        r"from \1 ",
    ),
    # A day behind what stands cold, or was made at home, is that of its cooking.
    (
        LatePattern(
            rf"(\bcold (?:[a-z]+ )?{_COLD}[^;&+]*?|\bhome ?made\b[^;&+]*?)(?:, ?| |\()(?:on )?(?={_DAY}\s*(?:$|[,;)]))"
            r"(?<!by )(?<!ub )(?<!bb )(?<!bbe )(?<!exp )(?<!before )(?<!use )(?<!until )(?<!till )(?<!til )(?<!for )"
            r"(?<!from )(?<!since )(?<!eat )(?<!best )(?<!last )(?<!next )(?<!this )(?<!on )"
            r"(?<!made )(?<!cooked )(?<!opened )"
        ),
        r"\1 from ",
    ),
)  # fmt: skip


def days_behind(text: str) -> str:
    """A plain line with such days put plainly; all others stay as they are."""
    return " ".join(put_in_turn(text, _PLAINLY).split())
