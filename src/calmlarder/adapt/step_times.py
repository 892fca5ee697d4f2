"""Steps in the time of what is in the pan now: the minutes and the sign of a stand-in in the place of the old food's.

What each stand-in takes stands in `steps.csv`. Where a sentence cooks other things too that stay, its minutes are
theirs, and only what it says of the old food itself makes room.
"""

import re
from collections.abc import Iterator
from functools import partial
from typing import NamedTuple

from calmlarder.adapt.in_words import VERBS_NEXT, short_name
from calmlarder.adapt.names import spans_in
from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_dough import as_dough, with_capital, with_more_eggs
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.things_now import Told
from calmlarder.tables.step_rows import StandInStep

_FRIES = re.compile(
    r"\b(?:fry|fried|frying|saut[eé]\w*|soften\w*|sweat\w*|brown(?:ed|ing)?|cook\w*|caramelise|caramelize|sizzl\w*)\b",
    re.IGNORECASE,
)
_NOT_IN_A_PAN = re.compile(
    r"\b(?:(?<!dutch )oven|bak(?:e|ed|ing)(?! (?:powder|soda))|roast\w*|grill\w*|simmer\w*|boil\w*|slow cooker"
    r"|deep[- ]fr(?!ying pan)\w+|batter|(?:to|into) the (?:casserole|stew|soup|sauce|curry|broth)"
    # not where the next sentence fries it there: `Add the onions to the casserole. Cook over a low heat …`
    r"(?![^.;]*[.;] (?:cook|fry|soften|sweat|saut\w+|gently)\b[^.;]*\b(?:heat|until)\b))\b",
    re.IGNORECASE,
)
_GOES_ON = re.compile(
    r"\s*(?:and |then |gently )?(?:fry|cook|let|stir|saut\w+|keep|continue|leave|sweat|soften)\b", re.I
)
_MORE_OF_IT = (
    r"(?:,? (?:golden|brown\w*|sweet|soft\w*|translucent|sticky|jammy|tender|silky|glossy|carameli[sz]ed)"
    r"(?: and [^.,;]*)?(?=[,.;]|$))*"
)
_SIGN = re.compile(
    r"\b(?:until|till?|’til|'til) "
    r"(?P<sign>(?:(?!,? then\b|,? and (?:add|stir|tip|pour|put|season)\b| about \d)"
    r"(?:[^.;,(\[]|\[[^\]]*\](?= (?:is|are|ha[sv]e?|starts?|begins?|looks?|turns?|soften|brown|give|release)\b)))*)"
    + _MORE_OF_IT,
    re.IGNORECASE,
)
_OF_THE_OLD = re.compile(
    r"\b(?:gold\w*|brown\w*|translucent|transparent|see-through|clear|glassy|carameli\w*|released?|releas\w+|water|liquid"
    r"|juices?|evaporat\w*|dry|sticky|jammy|sweet|colou?r\w*|opaque|shrunk\w*|charred|crisp\w*)\b",
    re.IGNORECASE,
)
_TIME = re.compile(
    r"(?:about |around |approximately |roughly )?(?<![\d.])(?P<low>\d{1,2})(?:(?: ?[-–—] ?| to | or )\d{1,2})?"
    r"[ -]?(?P<unit>minutes?|mins?)\b(?P<more> more)?",
    re.IGNORECASE,
)
_LEADS_A_TIME = re.compile(r"\b(?:for|an?|a good|another|a further|the (?:last|first|next)) $", re.IGNORECASE)
_NO_BROWNING = re.compile(r" \[only (?:until soft, not golden|a minute|a minute, off the heat)\]")
_ONCE_GOLDEN = re.compile(
    r"^(?P<when>\s*(?:once|when|as soon as)(?: they are| it is)?) (?:soft and |lightly |nicely |just )*"
    r"(?:golden|brown(?:ed)?|translucent|carameli[sz]ed)(?: brown)?",
    re.IGNORECASE,
)
# How one sees that meat, fish or egg is cooked through: never written over.
_SAFELY_COOKED = re.compile(
    r"\bno longer pink\b|\bno (?:more )?pink\b|\bcooked (?:all the way )?through\b|\bjuices? runs? clear\b|\bopaque\b"
    r"|\bsteaming hot\b"
    r"|\b\d{2,3} ?°",
    re.IGNORECASE,
)
# What goes in later, in the same sentence, has a time of its own.
_THEN_ADD = re.compile(r",? (?:and )?then (?=(?:add|stir|tip|throw|put|toss|pour)\b)", re.IGNORECASE)
_OF_THE_REST = re.compile(
    r"\bthe (?:meat|beef|lamb|pork|chicken|fish|steak|sauce|rice|potatoes|pasta|gravy|stew|lentils|beans)\b",
    re.IGNORECASE,
)
_TENDER = 5  # minutes of what is green tops and not a vegetable of its own: ours
_A_MOMENT = 1  # minutes: ours
_FAR_LONGER = 7  # minutes more than they bear: ours
_GOES_ALONG = frozenset({
    "oil", "butter", "spice", "herb", "salt", "acid", "allium", "paste", "sauce", "soy-sauce", "stock", "sweetener",
})  # fmt: skip
_CUT = r"(?:slice|chop|dice|cut|halve|quarter|wash|grate)"
_PEELS = (
    rf"\b(?:{_CUT}(?:,|,? and) )*(?:peel|core|stone|deseed)(?:(?:,|,? and) (?:peel|core|stone|deseed|{_CUT}))*"
    r" the {name}(?P<also> and (?:[\d./ ]+(?:g|tbsp|tsp|cups?) of the )?(?:[a-z]+ )?sugar)?"
    r"(?: (?:into|in) [^,.;]+?(?= and |[,.;]|$))?"
    rf"(?:,? (?:and |then )+{_CUT} (?:it|them)(?: (?:into|in) [^,.;]+?(?= and |[,.;]|$))?)?"
)
# What neither peels nor grates as the old one did: `coarsely grate the firm banana`.
_GRATES = (
    r"|\b(?:(?:coarsely|finely|roughly|quickly) )?grate (?:(?:in|up) )?the {name}"
    r"(?:,? (?:skin on|skin and all|unpeeled|peel and all|coarsely))?"
)


class _Thing(NamedTuple):
    """What takes a food's place, as steps call it, and how it is fried."""

    name: re.Pattern[str]
    row: StandInStep


def in_their_own_time(step: str, told: Told) -> str:
    """A changed step with the minutes and signs of what is fried in it now, and without the kneading of a batter."""
    things = tuple(_fried(told))
    if things:
        chunks = list(_with_what_goes_on(step, things))
        timed = ["".join(_timed(one, things, told) for one in _in_turn(chunk)) for chunk in chunks]
        for place in range(1, len(timed)):
            if timed[place - 1] != chunks[place - 1]:
                timed[place] = _ONCE_GOLDEN.sub(r"\g<when> soft", timed[place])
        step = "".join(timed)
    return with_more_eggs(as_dough(_prepared(step, told), told), told)


def _prepared(step: str, told: Told) -> str:
    """`Peel, core and slice the rhubarb`: what has neither skin nor core is prepared as its row says."""
    for food, change in told.changed.items():
        for one in change.to if change.change == "swap" else ():
            to = told.tables.food_by_id[one.food]
            row = told.tables.step_of(told.tables.food_by_id[food], to, "prepared")
            if row is not None:
                name = rf"(?:\w+ ){{0,2}}{re.escape(to.name)}"
                done = re.compile((_PEELS + _GRATES).format(name=name), re.IGNORECASE)
                step = done.sub(partial(_done_so, row.sign, step), step)
    return step


def _fried(told: Told) -> Iterator[_Thing]:
    for food, change in told.changed.items():
        for one, line in zip(change.to, change.lines, strict=False):
            row = told.tables.step_of(told.tables.food_by_id[food], told.tables.food_by_id[one.food], "fried")
            if change.change == "swap" and row is not None and one.food != food:
                name = re.escape(short_name(bare(line)).removesuffix("s"))
                yield _Thing(re.compile(rf"\b{name}s?\b", re.IGNORECASE), row)


def _with_what_goes_on(step: str, things: tuple[_Thing, ...]) -> Iterator[str]:
    """The sentences of a step, one that names a thing with the next that says how it goes on: `Fry for 10 minutes.`"""
    start = 0
    ends = [one.end() for one in SENTENCE_ENDS.finditer(step)]
    for end in (*ends, len(step)):
        named = any(one.name.search(step, start, end) for one in things)
        if named and end in ends and _GOES_ON.match(step, end) and not _TIME.search(step, start, end):
            continue
        if end > start:
            yield step[start:end]
            start = end


def _in_turn(sentence: str) -> Iterator[str]:
    """What a sentence does first and then, each with its own minutes and signs."""
    start = 0
    for one in _THEN_ADD.finditer(sentence):
        if _TIME.search(sentence, start, one.start()) or _SIGN.search(sentence, start, one.start()):
            yield sentence[start : one.start()]
            start = one.start()
    yield sentence[start:]


def _timed(sentence: str, things: tuple[_Thing, ...], told: Told) -> str:
    """A sentence in the time of the slowest stand-in that it fries."""
    found = [(one, there) for one in things if (there := one.name.search(sentence))]
    if not found or "ahead of the rest" in sentence or not _FRIES.search(sentence) or _NOT_IN_A_PAN.search(sentence):
        return sentence
    slowest = max((one for one, _ in found), key=lambda one: one.row.minutes or 0)
    first = min(there.start() for _, there in found)
    signs = (one for one in _SIGN.finditer(sentence) if not _is_in_brackets(sentence, one.start()))
    sign = next((one for one in signs if one.start() > first or _names(one["sign"], found)), None)
    # What stands behind the time or the sign goes in later.
    ends = [one.start() for one in (sign, _time(sentence, first)) if one is not None]
    ahead = sentence[: min(ends, default=len(sentence))]
    for one in things:
        ahead = one.name.sub(" . ", ahead)  # of leek greens no word is the greens of another line
    others = _others(ahead, told)
    said = sentence
    if sign is not None and (_SAFELY_COOKED.search(sign["sign"]) or _OF_THE_REST.search(sign["sign"])):
        return sentence
    if sign is not None and (
        _OF_THE_OLD.search(sign["sign"]) or (_is_too_long(sentence, first, slowest) and not others)
    ):
        if not others:
            said = f"{said[: sign.start('sign')]}{slowest.row.sign}{said[sign.end() :]}"
        elif _names(sign["sign"], found):
            said = f"{said[: sign.start('sign')]}they are soft{said[sign.end() :]}"
    if others:
        told_by_sign = sign is not None and _names(sign["sign"], found)
        return _NO_BROWNING.sub("", said) if told_by_sign else _greens_later(said, first, found)
    time = _time(said, first)
    if time is not None and (_is_too_long(said, first, slowest) or _is_too_short(time, slowest)):
        unit = "minute" if slowest.row.minutes == 1 else "minutes"
        about = "" if _LEADS_A_TIME.search(said[: time.start()]) else "about "
        said = f"{said[: time.start()]}{about}{slowest.row.minutes} {unit}{time['more'] or ''}{said[time.end() :]}"
    return _NO_BROWNING.sub("", said) if said != sentence else said


def _greens_later(sentence: str, first: int, found: list[tuple[_Thing, re.Match[str]]]) -> str:
    """Green tops out of what is fried far longer than they bear, and with it for its last minutes."""
    time = _time(sentence, first)
    thing = found[0][0]
    minutes = thing.row.minutes or 0
    if len(found) > 1 or time is None or minutes > _TENDER or int(time["low"]) < minutes + _FAR_LONGER:
        return sentence
    name = rf"(?:the )?{thing.name.pattern}(?: \[[^\]]*\])?"
    for pattern, instead in (
        (rf"\bthe {name.removeprefix('(?:the )?')}(?:, (?:and )?| and )(?:the )?(?!{VERBS_NEXT})(?=[\w ]+)", "the "),
        (rf", {name}(?=, | and )", ""),
        (rf",? and {name}(?= (?:and|in|to|with|until|for|over|on)\b|[,.;])", ""),
    ):
        rest, done = re.subn(pattern, instead, sentence, count=1, flags=re.IGNORECASE)
        if done:
            break
    else:
        return sentence
    if instead == "" and pattern.startswith(",? and"):
        head, comma, tail = rest[: found[0][1].start()].rpartition(", ")
        rest = f"{head} and {tail}{rest[found[0][1].start() :]}" if comma else rest
    unit = "minute" if minutes == 1 else "minutes"
    rest = rest.replace("the both ", "both ")
    end = len(rest.rstrip(".!; "))
    return f"{rest[:end]}, with the {found[0][1][0]} for the last {minutes} {unit}{rest[end:]}"


def _is_too_long(sentence: str, first: int, slowest: _Thing) -> bool:
    time = _time(sentence, first)
    return time is not None and int(time["low"]) > (slowest.row.minutes or 0)


def _is_too_short(time: re.Match[str], slowest: _Thing) -> bool:
    """Whether green tops would stay raw in the minute that shallot and garlic take."""
    minutes = slowest.row.minutes or 0
    return minutes <= _TENDER and int(time["low"]) <= _A_MOMENT and minutes >= 2 * int(time["low"]) + 1


def _time(sentence: str, first: int) -> re.Match[str] | None:
    """The minutes that a sentence gives behind a place; what stands in brackets is said of something else."""
    return next((one for one in _TIME.finditer(sentence, first) if not _is_in_brackets(sentence, one.start())), None)


def _is_in_brackets(text: str, place: int) -> bool:
    return text.rfind("[", 0, place) > text.rfind("]", 0, place)


def _names(sign: str, found: list[tuple[_Thing, re.Match[str]]]) -> bool:
    return any(one.name.search(sign) for one, _ in found)


def _others(text: str, told: Told) -> bool:
    """Whether a text names what stays as it was and takes a time of its own."""
    meant_there = {food for _, _, meant in spans_in(text, told.names) for food in meant}
    named = {food for food in meant_there if food not in told.changed or _is_much_the_same(food, told)}
    swaps = (told.changed[food] for food in told.changed if not _is_much_the_same(food, told))
    stand_ins = {one.food for change in swaps for one in change.to}
    return any(told.tables.food_by_id[food].kind not in _GOES_ALONG for food in named - stand_ins)


def _is_much_the_same(food: str, told: Told) -> bool:
    """Whether less of it, or another of its kind, is cooked as it was: a green pepper for a yellow one."""
    change = told.changed[food]
    kind = told.tables.food_by_id[food].kind
    alike = change.change == "swap" and all(told.tables.food_by_id[one.food].kind == kind for one in change.to)
    return change.change in {"less", "weigh", "more"} or (alike and kind == "pepper")


def _done_so(sign: str, step: str, found: re.Match[str]) -> str:
    """What is done instead; the sugar that goes with it is told where the step names none of its own."""
    own = re.search(r"\bsugar\b", step[: found.start()] + step[found.end() :]) is not None
    sugar = ", add the sugar" if found["also"] and not own else ""
    return f"{with_capital(sign, found[0])}{sugar}"
