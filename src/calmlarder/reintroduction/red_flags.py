"""Red flags in what people answer or type: whatever they say, a doctor sees them first.

The list: AGA clinical practice update 2022 on diet in irritable bowel syndrome, and common referral advice (recalled).
The words people use for them are ours.
"""

import re
from typing import Literal, NamedTuple

Flag = Literal["blood", "weight loss", "night waking", "fever", "anaemia", "new after 50", "family", "coeliac"]

# Why a challenge was stopped.
RED_FLAG = "you noted a sign that a doctor should know of; please see one before you begin again"
_STOOL = r"stools?|poo\w*|motions?|diarrho?ea|mucus"
_RELATIVES = r"mum|mom|mother|dad|father|sister|brother|parents?|family|aunt|uncle|gran\w*|daughter|son"
_GUT = r"pains?|painful|cramp\w*|diarrho?ea|loo|toilet|urgency|bloat\w*|gut|stomach|tummy|belly|symptoms?"
_HOW_MANY = r"(?:\d+(?:[.,]\d+)?|a|half a|one|two|three|four|five|six|seven|eight|ten)"
# What must stand together, in any order, within one clause.
_SIGNS: tuple[tuple[Flag, tuple[str, ...]], ...] = (
    ("blood", (r"blood|bleed\w*|bled",)),
    ("blood", (r"bloody|black|tarry", _STOOL)),
    ("blood", (r"red (?:streaks?|spots?|drops?|stripes?)", rf"{_STOOL}|paper|bowl|toilet")),
    ("weight loss", (r"los(?:t|ing|e) (?:a lot of |some |so much |more )?weight|weight loss",)),
    ("weight loss", (
        r"weight (?:is |keeps |has |went )?(?:dropping|dropped|falling|fallen|going down|gone down|down)|"
        r"(?:clothes|jeans|trousers) (?:are )?(?:too )?loose",
    )),
    ("weight loss", (
        rf"(?:lost|dropped|shed|down) (?:(?:about|around|over|nearly|another) )?{_HOW_MANY} ?"
        r"(?:kg|kilos?|lbs?|pounds?|stones?)",
    )),
    ("night waking", (
        r"w(?:oke|ake|akes|oken|aking)\b(?: me| up)*|wakened|awake",
        _GUT,
    )),
    ("night waking", (r"wakes? me(?: up)? (?:at|every|most|each) nights?",)),
    ("night waking", (r"(?:(?:get|got|getting) )?up (?:at|in the|during the|all|every|most) nights?", _GUT)),
    ("night waking", (r"all night", r"pains?|cramp\w*|diarrho?ea|toilet|loo")),
    ("fever", (r"(?:have|had|got|running|ran|with) a temperature|(?:3[89]|4[01])[.,]\d ?(?:°|degrees|temperature)",)),
    ("fever", (r"fever\w*|high temperature|temperature of (?:3[89]|4[0-2])\S*|shivers|chills",)),
    ("anaemia", (r"an(?:a)?emi[ac]|low iron|iron[- ]deficien\w+|low ferritin",)),
    ("anaemia", (r"(?:iron|ferritin) (?:is |was )?(?:too )?low",)),
    ("new after 50", (
        r"(?:5[0-9]|[6-9][0-9])(?: years old| yrs?)?|over 50|past 50|after 50",
        r"started|new|first time|never had|began|out of nowhere",
    )),
    ("family", (r"(?:bowel|colon|colorectal|ovarian) cancer|cancer of the (?:bowel|colon|ovar\w+)", _RELATIVES)),
    ("coeliac", (r"co?eliac", _RELATIVES)),
)  # fmt: skip

_DENIED_BEFORE = re.compile(
    r"\b(?:no|not|never|without|none|nor|neither|any|nobody|no one|zero|nothing like|isn't|wasn't|didn't|don't|"
    r"haven't|hasn't|stopped|free of|negative for|ruled out)\b[^;.]*$"
)
_DENIED_BEHIND = re.compile(r"^-free\b|^.{0,25}\b(?:none|negative|ruled out|clear)\b|^\s*[:?=-]?\s*(?:no|nope|none)\b")
_NOT_SURE = re.compile(r"\b(?:can't|cannot|couldn't) (?:say|rule out|be sure)[^,;.]*?\b(?:no|not|any)\b")
_OF_OTHER_THINGS = re.compile(
    r"\bblood (?:cells?|tests?|pressure|sugars?|oranges?|sausages?|pudding|types?|work|counts?|results?|donat\w+)|"
    r"\b(?:gave|give|giving|donated) blood|\bblack (?:beans?|pepper|tea|rice|olives?|coffee|lentils?|pudding)"
)
# Denies a feeling, and nothing that is told behind it.
_FEELING = re.compile(
    r"\b(?:never felt|no (?:calm|better|improvement)|"
    r"(?:not|isn't|wasn't|don't|didn't|haven't)(?: been)?(?: feel(?:ing)?)? (?:very |so |too |at all )?"
    r"(?:well|calm|good|great|fine|ok|okay|right|better))\b"
)
_MEANT_LOSS = re.compile(
    r"\bon purpose|\bmeant to\b|\bplanned\b|\btrying to\b|\bdiet(?:ed|ing) to\b|\bwant(?:ed)? to lose\b"
)
_ANSWERED = re.compile(r"\s*(?:\?\s*(?=(?:no|nope|none)\b)|,\s*(?=(?:no|nope|none)\s*(?:[,.;!]|$)))")
# A list behind one denial ("no blood, fever or weight loss") stays together; another comma begins a new clause.
_CLAUSES = re.compile(
    r"(?:[;!?\n]|\.(?!\d))+|,(?![^.;!?\n]*\b(?:or|nor)\b)|\b(?:but|though|however|yet)\b|"
    r"\band\b(?=\s+(?:there|i|some|a (?:bit|little)|then|also|saw|had|have|again)\b)"
)


class RedFlag(NamedTuple):
    """Which one, and the words it was found in."""

    flag: Flag
    words: str


def red_flags(text: str) -> tuple[RedFlag, ...]:
    """Each red flag that a note tells of, once; what it denies ("no blood") is none."""
    plain = text.casefold().replace("’", "'")
    plain = _FEELING.sub(" ", plain)
    plain = _NOT_SURE.sub(" ", _OF_OTHER_THINGS.sub(" ", _ANSWERED.sub(" ", plain)))
    meant = _MEANT_LOSS.search(plain) is not None
    found: dict[Flag, RedFlag] = {}
    for clause in _CLAUSES.split(plain):
        for flag, signs in _SIGNS:
            if flag not in found and _tells(clause, signs) and not (flag == "weight loss" and meant):
                found[flag] = RedFlag(flag, clause.strip())
    return tuple(found.values())


def _tells(clause: str, signs: tuple[str, ...]) -> bool:
    places = [place for sign in signs if (place := re.search(rf"\b(?:{sign})\b", clause))]
    if len(places) < len(signs):
        return False
    last = max(place.end() for place in places)
    denied = any(_DENIED_BEFORE.search(clause[: place.start()]) for place in places)
    return not denied and not _DENIED_BEHIND.search(clause[last:])
