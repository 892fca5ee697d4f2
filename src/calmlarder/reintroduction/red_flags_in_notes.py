"""Warning signs in what people answer or type: whatever they say, a doctor hears of them first.

Which signs, and the words people use for them: `red_flag_words.py`.
"""

from typing import NamedTuple

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.reintroduction.red_flag_words import SIGNS, URGENCIES, URGENCY, Flag, Urgency

# Why a challenge was stopped.
RED_FLAG = "you noted a sign that a doctor should know of; please see one before you begin again"
_DENIED_BEFORE = LatePattern(
    r"\b(?:no|not|never|without|none|nor|neither|any|nobody|no one|zero|nothing like|isn't|wasn't|didn't|don't|"
    r"haven't|hasn't|stopped|free of|negative for|ruled out)\b[^;.]*$|^\s*0\s*$"
)
_DENIED_BEHIND = LatePattern(r"^-free\b|^.{0,25}\b(?:none|negative|ruled out|clear)\b|^\s*[:?=-]?\s*(?:no|nope|none)\b")
_NOT_SURE = LatePattern(r"\b(?:can't|cannot|couldn't) (?:say|rule out|be sure)[^,;.]*?\b(?:no|not|any)\b")
_OF_OTHER_THINGS = LatePattern(
    r"\b(?:yellow|hay) fever|\b(?:baby|child|kids?|son|daughter|cat|dog|phone|alarm|noise|neighbou?rs?|storm|husband|"
    r"wife|partner) w(?:oke|akes?|aking) me\b|\bheavy period|\bperiod (?:blood|bleed\w*)|"
    r"\b(?:pigs?|pork|ducks?|chickens?|cows?|beef|lambs?|goose)(?:'s)? blood\b|\bweight loss (?:shakes?|bars?|drinks?)|"
    r"\bblood (?:tofu|curd|cakes?|cells?|tests?|pressure|sugars?|oranges?|sausages?|pudding|types?|work|counts?)|"
    r"\bblood (?:results?|donat\w+)|"
    r"\b(?:gave|give|giving|donated|took|takes|taking|drew) (?:my |some )?blood|blood (?:was |being )?(?:taken|drawn)|"
    r"\bnose ?bleeds?|\b(?:nose|gums?|knee|lips?) (?:bled|bleed\w*)|"
    r"\bblack (?:beans?|pepper|tea|rice|olives?|coffee|lentils?|pudding)"
)
# Denies a feeling, and nothing that is told behind it.
_FEELING = LatePattern(
    r"\b(?:never felt|no (?:calm|better|improvement)|"
    r"(?:not|isn't|wasn't|don't|didn't|haven't)(?: been)?(?: feel(?:ing)?)? (?:very |so |too |at all )?"
    r"(?:well|calm|good|great|fine|ok|okay|right|better))\b"
)
_MEANT_LOSS = LatePattern(
    r"\bon purpose|\bmeant to\b|\bplanned\b|\btrying to\b|\bdiet(?:ed|ing) to\b|"
    r"\b(?:want(?:ed)?|hop(?:e|ing)|like|going|need) to lose\b"
)
# Not meaning to lose weight denies no loss.
_UNMEANT = LatePattern(
    r"\b(?:not|never|without|wasn't|weren't|isn't|didn't|haven't|don't)(?: \w+){0,2}? "
    r"(?:on purpose|mean(?:t|ing)?|planned|planning|try(?:ing)?|tried|want(?:ed|ing)?(?= to lose)|"
    r"diet(?:ed|ing)?)\b(?: to\b)?"
)
# Some of it is some, and what may be is not denied.
_SOME = LatePattern(
    r"\bnot (?:very |so |too )?(?:much|a lot of|many)(?= (?:blood|bleed|drops))|\bnot sure (?:if|whether)\b"
)
_SHORT = LatePattern(r"\b(did|does|was|were|is|are|has|have|had|do|ca|could|would)nt\b")  # typed without its sign
# Says that it is new, and denies nothing.
_NEVER_BEFORE = LatePattern(r"\bnever (?:had|felt|got|knew) (?:this|it|them|these|that|such|anything like)\b")
_AGED = LatePattern(r"\b(?:i'm|im|i am|aged|age)(?: now)? (?:5\d|[6-9]\d)\b(?! ?(?:k?g|km|cm|min|%|lbs?|steps)\b)")
_IS_NEW = LatePattern(r"\b(?:symptoms?|trouble|pains?|gut|this|it|all|these|they) (?:\w+ ){0,4}(?:new|started|began)\b")
_ANSWERED = LatePattern(r"\s*(?:\?\s*(?=(?:no|nope|none)\b)|,\s*(?=(?:no|nope|none)\s*(?:[,.;!]|$)))")
# A list behind one denial ("no blood, fever or weight loss") stays together; another comma begins a new clause.
_CLAUSES = LatePattern(
    r"(?:[;!?\n]|\.(?!\d))+|,(?![^.;!?\n]*\b(?:or|nor)\b)|\b(?:but|though|however|yet)\b|"
    r"\band\b(?=\s+(?:there|i|some|a (?:bit|little)|then|also|saw|had|have|again)\b)"
)

_SIGNS = tuple((flag, tuple(LatePattern(rf"\b(?:{sign})\b") for sign in signs)) for flag, signs in SIGNS)


class RedFlag(NamedTuple):
    """Which one, and the words it was found in."""

    flag: Flag
    words: str

    @property
    def urgency(self) -> Urgency:
        """Whom to reach, and when."""
        return URGENCY[self.flag]


def red_flags(text: str) -> tuple[RedFlag, ...]:
    """Each sign that a note tells of, once, the most urgent first; what it denies ("no blood") is none."""
    plain = _SHORT.sub(r"\1n't", text.casefold().replace("’", "'"))
    plain = _NEVER_BEFORE.sub("first time", _FEELING.sub(" ", plain))
    plain = _NOT_SURE.sub(" ", _OF_OTHER_THINGS.sub(" ", _ANSWERED.sub(" ", plain)))
    plain = _SOME.sub(" ", _UNMEANT.sub(" ", plain))
    meant = _MEANT_LOSS.search(plain) is not None
    found: dict[Flag, RedFlag] = {}
    for clause in _CLAUSES.split(plain):
        for flag, signs in _SIGNS:
            if flag not in found and _tells(clause, signs) and not (flag == "weight loss" and meant):
                found[flag] = RedFlag(flag, clause.strip())
    is_new = _AGED.search(plain) if _IS_NEW.search(plain) else None
    if is_new is not None and "new after 50" not in found:  # told in two clauses
        found["new after 50"] = RedFlag("new after 50", is_new[0])
    return tuple(sorted(found.values(), key=lambda one: URGENCIES.index(one.urgency)))


def _tells(clause: str, signs: tuple[LatePattern, ...]) -> bool:
    places = [place for sign in signs if (place := sign.search(clause))]
    if len(places) < len(signs):
        return False
    last = max(place.end() for place in places)
    denied = any(_DENIED_BEFORE.search(clause[: place.start()]) for place in places)
    return not denied and not _DENIED_BEHIND.search(clause[last:])
