"""What a food is said to have turned to, which elsewhere names a food: `mostly mush`, `cilantro's compost now`."""

from calmlarder.matching.late_patterns import LatePattern

_END = r"(?=\s*[!.]*\s*(?:$|[,;:.)!]| - | but\b| so\b| and\b))"
_LEAD = (
    r"(?:(?:it'?s|they'?re|is|are|was|were|has|have|all|mostly|mainly|largely|basically|literally|practically|just"
    r"|more or less|pretty much|pure|total|totally|complete|completely|absolute|nothing but|now|already|gone|going"
    r"|turned|turning|went|become|to|into|a|an|bag of|tub of|pile of|puddle of|like) )"
)
_AFTER = r"(?: (?:now|already|sadly|i'?m afraid|by now|in (?:the|a|its) (?:bag|tub|box|pot|drawer|bottom)))*"
# What nobody keeps in a larder, and what some do: those need a word that says that it is so now.
_REMAINS = r"(?:(?:green|brown|black|wet|slimy|smelly) )?(?:mush|goo|gunk|gloop|sludge|slime|sludgy mess|slimy mess)"
_ENDED = r"(?:died|compost|history|goner|lost cause|write[ -]off|dead as a dodo|rip)"
_MADE_OF = r"(?:soup|toast|liquid|water|dust|compost|mush)"
TURNED_TO = LatePattern(
    rf"(?:\b{_LEAD}+|(?<=[,;:(] )|(?<=[,;:(])|(?<= - ))(?:{_REMAINS}|{_ENDED}){_AFTER}{_END}"
    rf"|(?<=[a-z)] )(?<!\bthe )(?<!\bfor )(?<!\bin )(?:{_REMAINS}|compost|history|died|rip){_AFTER}(?=\s*[!.]*\s*$)"
    rf"|\b(?:gone|going|went|turned|turning|become) (?:(?:all|back|in|mostly|straight) )*(?:to"
    rf"|into) {_MADE_OF}{_AFTER}{_END}"
    rf"|(?:\b{_LEAD}+|(?<=[,;:(] )|(?<=[,;:(])|(?<= - )|(?<=[a-z)] ))"
    rf"{_MADE_OF} (?:now|already|by now|at this (?:stage|point)|by this (?:stage|point))\b{_END}"
    r"|\b(?:all|pure|total(?:ly)?|complete(?:ly)?|basically|literally|practically|pretty much|nothing but) "
    rf"{_MADE_OF}\b{_END}",
    needs=("died", "mush", "goo", "gunk", "gloop", "sludg", "slim", "compost", "history", "goner", "lost cause",
           "write", "dodo", "rip", "soup", "toast", "liquid", "water", "dust"),
)  # fmt: skip
# `half mush`, `nearly mush`: it is still there, and not for long.
_NEARLY = LatePattern(
    r"\b(?:(?:a |an )?(?:bit of|bit|half|nearly|almost|partly|part|some|few|top|bottom|ends?|outside)(?: is| are"
    r"| gone)* )"
    rf"(?:a |to )?mush\b{_END}"
)
# Some of it is, and the rest must be looked over: `one gone to mush`; `soup at the bottom` is slime there.
_SOME_OF_IT = LatePattern(
    r"\b(one|two|three|(?:a )?couple|some|(?:a )?few|bits?|half)( of (?:them|it))? (?:(?:has|have|is|are|all|now) )*"
    r"(?:gone|turned|going|turning) (?:(?:to|into|a|complete|total) )*(?:mush|goo|soup|slime|sludge)\b"
)
_AT_THE_BOTTOM = LatePattern(
    r"(?:\b(?:(?:some|a bit of|bit of|all|a little) )?(?:mush|slime|goo|gunk|sludge)"
    r"|(?:\b(?:some|a bit of|bit of|all|a little) |(?<=[,;(] )|(?<=[,;(]))(?:soup|liquid))"
    r" (?:at|in|on|near|round) (?:the |its )?(?:bottom|base|middle|corners?|ends?|edges?)\b"
    r"(?! (?:drawer|shelf|of (?:the )?(?:freezer|fridge|drawer|cupboard)))"
)
_LISTED = LatePattern(r"[,;]")
_AMOUNT = LatePattern(
    r"\d+(?:[.,/]\d+)? ?(?:k?g|ml|l|oz|lbs?|x)?\b|\b(?:bag|box|tub|punnet|pack|packet|bunch|head|half|some|few|big"
    r"|small)s?\b"
)
_NAMES = LatePattern(r"[a-z]{3}")
_FIRST = LatePattern(
    r"^(?:(?:already|just|sadly|now|all|being|was|were|went|gone) )*"
    r"(?:(?:binned|chucked|composted|thrown (?:out|away)|used up|all gone|past saving|beyond saving|(?:in|for) the"
    r" (?:bin|compost|trash|garbage|rubbish))\s*[:,-]?|(?:gone|finished|eaten|dead|bin|bye|rip)\s*:|rip,?)\s*"
    r"(?:the |my |our )?(?=[a-z]{3})"
)
_NOT_ALL = LatePattern(r"\b(?:half|some|most|bits?|few|one|two|left|rest|but|bags?|lid|box|packet|skin|peel|tops?)\b")
_BEHIND = r"(?:[,;:(-] ?|(?<=[a-z\d)]) (?:is |are |it'?s |they'?re |looks? |all )*)(?:a bit |bit |getting |all )*"
_NOT_FRESH = LatePattern(
    rf"{_BEHIND}(?:not (?:so|very|that|too|quite|really|all that|super|exactly|at all)|far from|no longer|none too"
    rf"|less than"
    rf"|not) (?:the )?(?:fresh(?:est)?|crisp(?:y)?|perky|young|new)(?: (?:any ?more|anymore|now|looking))?\)?{_END}",
    needs=("fresh", "crisp", "perky", "young", "new"),
)
_NOT_FRESH_FIRST = LatePattern(
    r"^not (?:so|very|that|too|quite|really|all that|super|exactly|the) fresh(?:est)? (?=[a-z])"
)
_FRESH = LatePattern(
    rf"{_BEHIND}(?:(?:very|super|really|so|still|nice and|lovely and|quite|pretty|extra|fairly|all|perfectly"
    rf"|beautifully) )+"
    rf"(?:fresh|crisp(?:y)?|crunchy)(?: (?:and|&) (?:fresh|crisp|crunchy|good|lovely|nice))?\)?{_END}"
    r"|^(?:very|super|really|so|still|nice and|quite|pretty) fresh (?=[a-z])"
    rf"|{_BEHIND}(?:nice and |very |super |still |so )?fresh from (?:the )?(?:market|shop|garden|farm|fishmongers?"
    rf"|butchers?"
    rf"|bakery|allotment|tree|ground|boat)\)?{_END}",
    needs=("fresh", "crisp", "crunchy"),
)
_RUN_TO_SEED = LatePattern(
    r"\b(?:going|gone|running|run|ran|went)(?: a bit| all)? to seed\b"
    r"|\b(?:is|are|just|bit|starting|started)(?: to| a bit)? flower(?:ing)?\b(?: a (?:bit|little))?"
    r"|\b(?:flowering|bolting) a (?:bit|little)\b"
)
_ROUGH_EDGES = LatePattern(
    r"\b(?:(?:a )?(?:bit|little|tad) |slightly |looking |going |gone )*(?:manky|minging|grotty|rough|ropey|ratty"
    r"|scruffy|dodgy)"
    r" (?:round|around|at|on|along) (?:the |its |their )?(?:edges?|ends?|tips?|outside|corners?|top)\b"
)

# The oil or the brine that stands on what is left in a jar is no food of its own.
_MOSTLY_OIL = LatePattern(
    r"(?<=[a-z)])(?: -|[,;:(]| is| it'?s)*"
    r" ?\b(?:mostly|mainly|largely|nearly all|all|just|basically|half) (?:oil|vinegar|brine|juice|liquid)"
    r"(?: now| by now| left| on top)?"
    r"\)?(?=\s*(?:$|[,;]))"
)


def nearly_there(text: str) -> str:
    """A plain line with a state for what is on its way to mush, all of it or in part."""
    return _NEARLY.sub(
        "going mushy", _AT_THE_BOTTOM.sub("slimy at the bottom", _SOME_OF_IT.sub(r"\1\2 gone mushy", text))
    )


def is_in_a_list(text: str, start: int) -> bool:
    """Whether what stands there is one of several things that a line lists: `eggs, mush, spinach`."""
    if text[start:].split(",")[0].strip(" .!") != "mush":
        return False
    others = _LISTED.split(f"{text[:start]},{text[start:].partition(',')[2]}")
    return sum(bool(_NAMES.search(_AMOUNT.sub(" ", piece))) for piece in others) > 1


def told_first(text: str) -> str:
    """A plain line with what became of a thing behind it, where it stands first: `binned: the lettuce`."""
    found = _FIRST.match(text)
    if not found or _NOT_ALL.search(text):
        return text
    return f"{text[found.end() :]}, past eating"


def freshness(text: str) -> str:
    """A plain line without how fresh a thing is, which is no kind of it; what is not fresh is past its best."""
    text = _RUN_TO_SEED.sub("bolted", _ROUGH_EDGES.sub("gone rough", text))
    if found := _NOT_FRESH_FIRST.match(text):
        text = f"{text[found.end() :]}, past its best"
    text = _MOSTLY_OIL.sub("", text)
    return _FRESH.sub("", _NOT_FRESH.sub(", past its best", text))
