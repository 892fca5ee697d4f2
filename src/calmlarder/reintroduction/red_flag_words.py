"""The words in which people tell of warning signs, and how urgent each sign is.

The list of red flags: AGA clinical practice update 2022 on diet in irritable bowel syndrome, and common referral advice
(recalled). What needs help at once: common advice on bleeding from the gut, fainting, severe allergy, vomiting without
end and self-harm (recalled). The words are ours.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

Flag = Literal[
    "life", "bleeding", "faint", "allergy", "severe pain", "vomiting", "eating",
    "blood", "weight loss", "night waking", "fever", "anaemia", "new after 50", "family", "coeliac",
]  # fmt: skip
# Whom to reach and when, the most urgent first; `calmly` is a doctor, too, and in no hurry.
Urgency = Literal["crisis", "emergency", "today", "soon", "calmly"]
URGENCIES: tuple[Urgency, ...] = ("crisis", "emergency", "today", "soon", "calmly")
URGENCY: Mapping[Flag, Urgency] = MappingProxyType({
    "life": "crisis",
    "bleeding": "emergency", "faint": "emergency", "allergy": "emergency",
    "severe pain": "today", "vomiting": "today",
    "eating": "soon", "blood": "soon", "weight loss": "soon", "night waking": "soon", "fever": "soon",
    "anaemia": "soon", "new after 50": "soon",
    "family": "calmly", "coeliac": "calmly",
})  # fmt: skip
ACUTE: frozenset[Flag] = frozenset({"blood", "night waking", "fever"})  # with these an emergency may be near

_STOOL = r"stools?|poo\w*|motions?|diarrho?ea|mucus"
_RELATIVES = r"mum|mom|mother|dad|father|sister|brother|parents?|family|aunt|uncle|gran\w*|daughter|son"
_GUT = r"pains?|painful|cramp\w*|diarrho?ea|loo|toilet|urgency|bloat\w*|gut|stomach|tummy|belly|symptoms?|runs"
_HOW_MANY = r"(?:\d+(?:[.,]\d+)?|a|half a|one|two|three|four|five|six|seven|eight|ten)"
_CANNOT = r"(?:can't|cannot|can not|couldn't|could not|not able to|unable to)"
_NOT_EATEN = r"(?:haven't|have not|hasn't|didn't|did not|not)"
_VOMITING = r"vomit\w*|throwing up|threw up|throw up|being sick|pu[kc]\w+"
# A score, and no hour and no French bread.
_NO_TIME = r"(?! ?(?:[ap]\.?m\b|h\b|hours?|min\w*|days?|weeks?|o'clock|:|\.\d|slices?\b|k?g\b))"
# What must stand together, in any order, within one clause.
SIGNS: tuple[tuple[Flag, tuple[str, ...]], ...] = (
    ("life", (
        r"want(?:ed)? to die|suicid\w+|kill(?:ing)? myself|(?:end|take|taking|ending) (?:my (?:own )?life|it all)|"
        r"self[- ]harm\w*|harm(?:ing|ed)? myself|hurt(?:ing)? myself on purpose|better off dead|"
        r"wish(?:ed)? i (?:was|were) dead|"
        r"(?:don't|do not) want to (?:live|be alive|be here any ?more)|(?:can't|cannot) go on any ?more|"
        r"no (?:reason|point) (?:to|in) liv\w+|"
        r"(?:don't|do not|can't|cannot) see (?:a|any|the) (?:point|reason) "
        r"(?:\w+ ){0,3}(?:liv\w+|going on|be(?:ing)? here)",
    )),
    ("bleeding", (r"black|tarry|tar", _STOOL)),
    ("bleeding", (r"blood\w*|coffee grounds", rf"{_VOMITING}|cough\w* up|brought up")),
    ("bleeding", (r"blood\w*", r"diarrho?ea")),
    ("bleeding", (
        r"(?:a lot|lots|plenty|so much|loads) of blood|heavy bleeding|ha?emorrhag\w+|"
        r"bleed(?:ing|s)? (?:heavily|a lot|badly|(?:that )?(?:won't|will not|doesn't) stop)|blood clots?",
    )),
    ("faint", (
        r"faint(?:ed|ing|ness)|(?:feel|felt|feeling|went) faint|passed out|blacked out(?! \w+s\b)|"
        r"collapsed (?:at|in|on)|i collapsed",
    )),
    ("allergy", (r"sw(?:ollen|ell|elling|elled|ells)|puff(?:ed|y)(?: up)?", r"lips?|tongue|throat|face|mouth")),
    ("allergy", (
        rf"(?:trouble|difficulty|hard|struggl\w+) (?:with |in |to )?breath\w*|{_CANNOT} (?:\w+ )?breathe|"
        r"throat (?:is )?(?:closing|tight\w*)|anaphyla\w+",
    )),
    ("severe pain", (
        r"so bad|too much to bear|severe|unbearable|excruciating|agoni[sz]ing|worst|agony",
        r"pains?|belly|tummy|cramps?|cramping|ache\w*|(?:stomach|belly|tummy)[- ]?ache",
    )),
    ("severe pain", (
        r"pains?:? (?:was |is |of |at |a |about |level )*(?:8|9|10) ?(?:/|of|out of) ?10|"
        rf"pains?:? (?:level )?(?:8|9|10)\b{_NO_TIME}|(?:8|9|10) ?(?:/|of|out of) ?10 (?:for )?pains?",
    )),
    ("vomiting", (
        rf"{_CANNOT} (?:keep (?:\w+ ){{0,2}}(?:down|in)|hold (?:\w+ ){{0,2}}down|"
        r"stop (?:vomiting|throwing up|being sick(?! of)))",
    )),
    ("vomiting", (r"nothing (?:stays|will stay|would stay) (?:down|in)",)),
    ("vomiting", (
        _VOMITING,
        r"all (?:night|day)|since (?:last night|yesterday)|again and again|non-?stop|won't stop|"
        r"everything i (?:eat|drink)",
    )),
    ("eating", (
        r"ma(?:ke|de|king) myself (?:be )?(?:sick|vomit|throw up)|starv(?:e|ed|ing) myself|fingers? down my throat|"
        rf"{_NOT_EATEN} eat(?:en)?(?: (?:anything|a thing|at all|properly))? (?:for|in) {_HOW_MANY} days|"
        rf"{_NOT_EATEN} eat(?:en)?(?: (?:anything|a thing|at all|properly))? since \w+day|"
        r"(?:afraid|scared|frightened|terrified) (?:to eat|of eating|of food)",
    )),
    ("blood", (r"blood|bleed\w*|bled",)),
    ("blood", (r"bloody|black|tarry", _STOOL)),
    ("blood", (
        r"red (?:streaks?|spots?|drops?|stripes?|specks?)|(?:streaks?|spots?|drops?|specks?|traces?) of red|"
        r"(?:bright|dark|blood)[- ]red|maroon",
        rf"{_STOOL}|paper|bowl|toilet",
    )),
    ("weight loss", (r"los(?:t|ing|e) (?:a lot of |some |so much |more )?weight|weight loss",)),
    ("weight loss", (
        r"weight (?:is |keeps |has |went )?(?:dropping|dropped|falling|fallen|going down|gone down|down)|"
        r"(?:clothes|jeans|trousers) (?:are )?(?:too )?loose",
    )),
    ("weight loss", (
        rf"(?:los[te]|losing|dropped|shed|down) (?:(?:about|around|over|nearly|another) )?{_HOW_MANY} ?"
        r"(?:kg|kilos?|lbs?|pounds?|stones?)",
    )),
    ("weight loss", (rf"{_HOW_MANY} ?(?:kg|kilos?|lbs?|pounds?|stones?) (?:lighter|thinner)",)),
    ("night waking", (
        r"w(?:oke|ake|akes|oken|aking)\b(?: me| up)*|wakened|awake",
        _GUT,
    )),
    ("night waking", (r"w(?:akes?|oke|aking) me(?: up)? (?:at|in the|every|most|each|all) nights?",)),
    ("night waking", (
        r"(?:(?:get|got|getting) )?up (?:\w+ times |once |twice |again )?"
        r"(?:at|in the|during the|all|every|most|last) nights?",
        _GUT,
    )),
    ("night waking", (rf"{_CANNOT} (?:get to )?sleep|kept me (?:awake|up)|sleepless", _GUT)),
    ("night waking", (r"all night", r"pains?|cramp\w*|diarrho?ea|toilet|loo")),
    ("night waking", (
        r"(?:ran|run|rush\w*|dash\w*|go|went|got up)\b",
        r"toilet|loo|bathroom",
        r"at [1-5](?:[:.]\d\d)? ?a\.?m?\b|in the (?:middle of the )?night|at night",
    )),
    ("fever", (r"(?:have|had|got|running|ran|with) a temperature|(?:3[89]|4[01])[.,]\d ?(?:°|degrees|temperature)",)),
    ("fever", (
        r"fever(?!few)\w*|high temperature|shiver(?:s|ing|y)|chills|"
        r"temp(?:erature)?:?(?: (?:was|is|of|at|up to|hit|reached|went up to))* ?(?:3[89]|4[0-2]|10[0-5])\S*",
    )),
    ("anaemia", (r"an(?:a)?emi[ac]|low iron|iron[- ]deficien\w+|low ferritin|low ha?emoglobin",)),
    ("anaemia", (r"(?:iron|ferritin) (?:is |was )?(?:too )?low",)),
    ("new after 50", (
        r"(?:5[0-9]|[6-9][0-9])(?: years old| yrs?)?|over 50|past 50|after 50",
        r"started|new|first time|never had|began|out of nowhere",
    )),
    ("family", (r"(?:bowel|colon|colorectal|ovarian) cancer|cancer of the (?:bowel|colon|ovar\w+)", _RELATIVES)),
    ("coeliac", (r"co?eliac", _RELATIVES)),
)  # fmt: skip
