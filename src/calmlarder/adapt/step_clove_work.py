"""Peeling, halving, chopping and browning of cloves that are an infused oil now: it goes out of the steps.

Where a sentence does it to nothing else, all of the sentence goes; else only what it says of the garlic. It stays
where the oil is named nowhere behind, since there it goes in.
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.step_named_once import without_one

_OIL = (
    r"(?:(?:some|half|most|\d[\d ½¼/]*(?:tsp|tbsp)) of )?(?:all (?:of )?)?(?:the )?"
    r"(?:(?:cloves?|heads?|bulbs?) of )?garlic-infused oil(?: cloves?| heads?| bulbs?)?(?: \[[^\]]*\])?"
)
_WORK = (
    r"(?:peel|halve|quarter|split|trim|chop|crush|mince|slice|grate|smash|squash|bash|bruise|flatten|separate"
    r"|break up|cut|take)"
)
_HOW = r"(?:very|finely|roughly|thinly|lightly|gently|coarsely)"
_AT_WORK = rf"{_WORK}(?:(?:,| and|,? then| or) {_WORK})*(?: {_HOW})*"
_INTO = (
    r"(?:(?:in|into|to) (?:(?:thin|fine|small|rough|thick) )*"
    r"(?:slivers|slices|pieces|cloves|a paste|quarters|halves|rounds|half|two)"
    r"|across|lengthways?|lengthwise|crossways?|(?:with|under|using|in|through) (?:the |a )[a-z -]{0,30}?"
    r"(?:knife|blade|pestle|press|pin|grater|palm|hand|mortar))"
)
_OUT = (
    r"(?:remove|discard|take out|pull out|pick out|throw away) (?:the |any )?(?:[a-z]+ )?"
    r"(?:germs?|sprouts?|shoots?|cores?|skins?|roots?|stalks?)(?: (?:from|of|in) (?:each|it|them|the middle)(?: \w+)?)?"
)
_JUST_SO = r"(?:just|lightly|enough|only)? ?to (?:bruise|crack|break|open|loosen|release|split) [a-z ]{2,30}"
_TAIL = (
    rf"(?:,?(?: and| then| or)* (?:{_HOW}|{_INTO}|{_OUT}|{_WORK}(?: (?:it|them))?|{_JUST_SO}|set (?:it |them )?aside))*"
)
# What is done beside it, to which the oil may belong as well.
_ELSE = (
    r"(?:add|cook|stir|fry|put|place|tip|mix|toss|remove|discard|rub|spread|scatter|blend|whisk|season|drizzle|pour|throw"
    r"|drop|heat|roast|bake|return|push|tuck|use|leave|keep|mash|squeeze|pound|simmer|sizzle|set|let|serve|combine|brown"
    rf"|process|bring|cover|turn|then|it|them|{_WORK})"
)
_BEGINS = r"(?:(?<=[.;!?] )|(?<=^)|(?<=^\d[.)] )|(?<=^\d\d[.)] ))(?:(?:first|meanwhile),? )?"
_ALONE = re.compile(rf"{_BEGINS}{_AT_WORK} {_OIL}{_TAIL}[.;!](?: +|$)", re.IGNORECASE)
# A bulb that roasts in a parcel of its own: `Drizzle the garlic with a little oil, wrap in foil and tuck it in.`
_IN_A_PARCEL = re.compile(
    rf"{_BEGINS}(?:drizzle|rub|brush|sprinkle|moisten|coat|toss|wrap|put|place|sit|roast|season) {_OIL}"
    r"(?=[^.;]*\b(?:foil|parcel|parchment)\b)[^.;]*[.;](?: +|$)",
    re.IGNORECASE,
)
_BEHIND_ANOTHER = re.compile(
    rf"(?:, (?:and )?(?:then )?|,? and (?:then )?|,? then ){_AT_WORK} {_OIL}{_TAIL}(?=[.;,])", re.IGNORECASE
)
_FIRST_OF_SEVERAL = re.compile(
    rf"(?P<work>\b{_AT_WORK}) {_OIL}(?:, and|,| and) (?:the )?(?!{_ELSE}\b)(?=[a-z])", re.IGNORECASE
)
_LAST_OF_SEVERAL = re.compile(
    rf"\b{_AT_WORK} (?:(?!\b{_ELSE}\b)[a-z ,-]){{3,60}}?(?:,? and |, )(?P<oil>{_OIL})(?=[.;,]| and\b| {_HOW}\b)",
    re.IGNORECASE,
)
# `and let the garlic turn gold, not brown`, `so the garlic mellows`: oil does neither. A sentence that does nothing
# else has words of its own (`step_left_over`).
_COLOURS = re.compile(
    rf"(?:,? (?:and|then) (?:let|wait for|wait until)|,? (?:until|so(?: that)?)) (?:{_OIL}|the garlic \[[^\]]*\])"
    r"(?: is| has| to| just| starts? to| begins? to)* (?:turn|go|get|colou?r|brown|gold|crisp|mellow|soft|tender|pale)"
    r"[a-z]*\b[^.;]*(?=[.;])",
    re.IGNORECASE,
)
_NAMED = "garlic-infused oil"
_READY = "The garlic-infused oil is ready as it is."


def without_work_on_cloves(steps: Sequence[str]) -> list[str]:
    """The changed steps without what is done to cloves before they go in."""
    return [_without_it(step, " ".join(steps[place + 1 :])) for place, step in enumerate(steps)]


def _without_it(step: str, behind: str) -> str:
    step = _COLOURS.sub("", step)
    for what in (_ALONE, _IN_A_PARCEL, _BEHIND_ANOTHER, _FIRST_OF_SEVERAL, _LAST_OF_SEVERAL):
        found = what.search(step)
        if found is None or _NAMED not in f"{step[found.end() :]} {behind}".casefold():
            continue
        if what is _FIRST_OF_SEVERAL:
            step = f"{step[: found.start()]}{found['work']} the {step[found.end() :]}"
        elif what is _LAST_OF_SEVERAL:
            step = without_one(step, found.span("oil"))
        else:
            step = f"{step[: found.start()]}{step[found.end() :]}".rstrip()
            step = step if re.search(r"[a-z]", step) else f"{step} {_READY}".strip()
    return step
