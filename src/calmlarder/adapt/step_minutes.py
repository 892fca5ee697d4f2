"""How long what a food is now is boiled or baked, where a step heats it for another time."""

import re
from bisect import bisect_right
from collections.abc import Sequence

from calmlarder.adapt.model import Change
from calmlarder.adapt.names import Names, spans_in
from calmlarder.adapt.sentences import SENTENCE_ENDS, TIME, ends_in, minutes_in, says, sentence_at
from calmlarder.adapt.step_notes import parts_of_how

_HOT = re.compile(
    r"\b(?:boil\w*|simmer\w*|cook\w*|soak\w*|bak(?:e|ed|ing)(?! (?:powder|soda|sheet|tray|dish|paper|parchment))"
    r"|roast\w*|stew\w*|steam\w*|pressure|oven|minutes?|mins?)\b",
    re.IGNORECASE,
)
COOKS = re.compile(r"\b(?:simmer|cook|boil)(?:s|ed|ing)?\b(?! water)", re.IGNORECASE)
OVEN = re.compile(r"\b(?:bake|(?<!dutch )oven)\b", re.IGNORECASE)
_LAST_MINUTES = re.compile(r"add only for the last (\d+) minutes$")
_MORE_IN_THE_OVEN = 10  # minutes: common practice, no source
_BOILS = re.compile(r"\bto (?:the|a) (?:boil|simmer)\b", re.IGNORECASE)
_COOKED_FOR_LONG = re.compile(r"\b(?:simmer|cook|boil|stew|bak|roast|brais|bubbl|oven)\w*", re.IGNORECASE)
_LATE_IN_IT = re.compile(
    r",? and only for the last \d+ minutes|(?:; )?[^;]*\bonly (?:for the last \d+ minutes|at the end)"
)
_LATE = re.compile(r"about (\d+) minutes: begin earlier$")
_ABOUT = re.compile(r"about (\d+) minutes(?!: begin)")
_BY_THE_PACKET = re.compile(
    r"\b(?:minutes?|less|longer|shorter) (?:less |before |shorter |short )?(?:than|of)? ?[^.;]*"
    r"\b(?:pack(?:et|age)?|box|label)\b"
    r"|\b(?:as|according to|by|following) [^.;,]*\b(?:pack(?:et|age)?|box|label)\b",
    re.IGNORECASE,
)
_BOILED_AWAY = "in as much liquid as its packet says"  # of what is boiled by itself before it goes in
# What is tossed, drained or served was boiled before.
_TOSSED = re.compile(
    r"\b(?:toss|serve|divide|pile|spoon|plate|drain|rinse|refresh|twirl|share|return|add back|fold)\w*\b[^.;,]*$",
    re.IGNORECASE,
)
_NEVER_RAW = "never raw"
_HEATS = re.compile(
    r"\b(?:boil|simmer|cook|fry|fried|stir-fry|roast|bake|oven|steam|blanch|grill|griddle|saut[eé]|microwav)\w*",
    re.IGNORECASE,
)
# What is mashed or stirred into a batter cooks no longer than that.
_IN_A_BATTER = re.compile(r"\b(?:batter|fritters?|patties|pancakes?|mash\w*|blitz\w*|omelettes?|frittata)\b", re.I)
_LONG = 30  # minutes: ours


def raw_there(step: str, behind: str, change: Change) -> int:
    """For how many minutes a stand-in is boiled that is never eaten raw, where neither step nor rest heats it; or 0."""
    needs = _ABOUT.search(change.heat)
    told = f"{step}\n{behind}"
    if needs is None:
        return 0
    if _NEVER_RAW in change.how.casefold() and not says(_HEATS, told):
        return int(needs[1])
    if _LATE.search(change.how) is None or not says(_IN_A_BATTER, told):
        return 0
    cooked = sum(minutes_in(one) for one in SENTENCE_ENDS.split(told) if says(_HEATS, one))
    return int(needs[1]) if 0 < cooked < int(needs[1]) else 0


def time_told(step: str, end: int, change: Change, beside_others: bool = True) -> str:
    """How long what a food is now is heated, where the step heats it and that is another time.

    What goes in alone has its own time in the place of the step's, what goes in `beside_others` is begun before them.
    """
    heat = change.heat if says(_COOKED_FOR_LONG, step) else _LATE_IN_IT.sub("", change.heat)  # blended, shaped
    if not heat or not says(_HOT, step) or is_by_the_packet(step, end):
        return ""
    so_far = text_up_to(step, end)
    if _BOILED_AWAY in change.how and _TOSSED.search(so_far) and not _boils_next(step, end, so_far):
        return ""  # it was cooked before
    needs, given = _ABOUT.search(heat), TIME.search(step, end)
    minutes = minutes_in(given[0]) if given else 0
    if needs is not None and minutes == int(needs[1]):
        return ""
    alone = None if beside_others else _LAST_MINUTES.match(heat)
    if alone is not None and minutes > int(alone[1]):
        return f": about {alone[1]} minutes, not {minutes}"
    if needs is not None and minutes > int(needs[1]) and not beside_others:
        return f": {heat[: needs.end()]}, not {minutes}{heat[needs.end() :]}"
    if needs is not None and 0 < minutes < int(needs[1]):
        ahead = f"so {int(needs[1]) - minutes} minutes ahead of the rest" if beside_others else f"not {minutes}"
        heat = f"{heat[: needs.end()]}, {ahead}{heat[needs.end() :]}"
    return f": {heat}"


def baked_later(step: str, end: int, change: Change, behind: str) -> str:
    """When a quicker grain goes into a dish that bakes for long; nothing where it is boiled, or as slow.

    `behind` is the step that follows. In the oven it takes ten minutes more than in a pot (common practice, no source).
    """
    needs = _ABOUT.search(change.heat) or _LAST_MINUTES.match(change.heat)
    if needs is None or says(COOKS, sentence_at(step, end)):
        return ""
    minutes = int(needs[1]) + _MORE_IN_THE_OVEN
    baked = max(
        (minutes_in(one) for one in SENTENCE_ENDS.split(f"{step[end:]}\n{behind}") if OVEN.search(one)), default=0
    )
    return f": not yet, only for the last {minutes} minutes in the oven" if baked >= minutes + _MORE_IN_THE_OVEN else ""


def has_its_time(step: str, end: int, change: Change) -> bool:
    """Whether a step boils something for the very minutes that what it is now needs, so that no later one has to."""
    needs, given = _ABOUT.search(change.heat), TIME.search(sentence_at(step, end))
    return needs is not None and given is not None and minutes_in(given[0]) == int(needs[1]) and says(COOKS, step)


def _boils_next(step: str, end: int, so_far: str) -> bool:
    """Whether what is rinsed or drained there is boiled in the same sentence: `Rinse the rice and simmer it`."""
    behind = sentence_at(step, end)[len(so_far) :]
    return COOKS.search(behind) is not None or _BOILS.search(behind) is not None


def text_up_to(step: str, end: int) -> str:
    """The sentence around a place, up to it."""
    ends = ends_in(step)
    behind = bisect_right(ends, end - 1)
    return step[ends[behind - 1] if behind else 0 : end]


def is_by_the_packet(step: str, end: int) -> bool:
    """Whether a step cooks something as its packet says, whatever it is: then no step need tell the minutes."""
    return says(_BY_THE_PACKET, sentence_at(step, end))


def on_time(change: Change, steps: Sequence[str], food: str, names: Names) -> Change:
    """The change without its `begin earlier` where the steps heat it as long anyhow, from where it goes in."""
    late = next((found for part in parts_of_how(change.how) if (found := _LATE.search(part))), None)
    if late is None:
        return change
    for number, step in enumerate(steps):
        ends = [end for _, end, meant in spans_in(step, names) if food in meant]
        if ends:
            rest = f"{step[ends[0] :]} . {' '.join(steps[number + 1 : number + 2])}"
            heated = [minutes_in(one) for one in SENTENCE_ENDS.split(rest) if _HOT.search(one)]
            if sum(heated) >= int(late[1]):
                how = "; ".join(part for part in parts_of_how(change.how) if not _LATE.search(part))
                return change.model_copy(update={"how": how, "heat": ""})
            break
    return change


def boils_long(step: str) -> bool:
    """Whether a step boils something as long as only what is dry needs."""
    return says(COOKS, step) and minutes_in(step) >= _LONG
