"""Changed steps without the same thing twice in one sentence, as several foods of it became one.

`Add 110 g of the leek greens, carrots, celery and 150 g of the leek greens` is `Add the leek greens, carrots and
celery` where no other step takes any; `the rhubarb and sugar` are named together once.
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.in_words import VERBS_NEXT
from calmlarder.adapt.sentences import SENTENCE_ENDS

_SO_MUCH = re.compile(
    r"(?P<many>\d[\d\s./]*) ?(?P<unit>g|ml|tsp|tbsp|cups?|pinch(?:es)?) of the (?P<name>[a-z][a-z-]*(?: [a-z-]+){0,3}?)"
    r"(?=,| and |[.;:]| (?:in|into|to|with|over|until|for)\b|$)"
)
LIST_ITEM = "\x1f"  # round a thing that is left out, until the sentence is read as a whole
_MARKED_ITEM = re.compile(rf"(?P<the>\bthe (?:(?!clove-)[a-z-]+ed )?)?{LIST_ITEM}(?P<item>[^{LIST_ITEM}]*){LIST_ITEM}")
# `Melt the honey and butter together`, of which one is left.
_TOGETHER = re.compile(
    r"(?P<work>\b(?:melt|mix|whisk|stir|warm|heat|beat|blend|cook|fry)(?: the)? [a-z]+(?: (?!and\b)[a-z]+)?)"
    r" together\b",
    re.IGNORECASE,
)
_BEFORE_ONE = re.compile(r"(?:, |,? and )$")
_BEHIND_ONE = re.compile(r",| and\b|[.;]|$| (?:in|into|to|with|on|over|until|for)\b")
_THINGS_FOLLOW = re.compile(rf"(?:, (?!and\b)| and )(?!{VERBS_NEXT})(?=(?:the )?[a-z])", re.IGNORECASE)
_SORTS_OF_MILK = re.compile(r"\b(?:whole|skimmed|semi-skimmed|full-fat) ")
# Fruit and what sweetens it: one thing once they are mixed.
_SWEETENED = re.compile(
    r"\b(?P<fruit>rhubarb|strawberr(?:y|ies)|cranberries) "
    r"and (?:(?:[\d./]+ (?:g|tbsp|tsp) of )?the )?sugar\b"
)
_SUGAR = re.compile(r"\bsugar\b")
_SUGAR_OF_IT = re.compile(r"\bsugar \[\d+ (?:g|tbsp|tsp) of it\]")
_IS = {
    "are": "is", "have": "has", "were": "was", "soften": "softens", "collapse": "collapses", "look": "looks",
    "bubble": "bubbles", "slump": "slumps", "give": "gives", "start": "starts", "begin": "begins",
}  # fmt: skip
_ARE = re.compile(rf"\b(?P<fruit>rhubarb) (?P<verb>{'|'.join(_IS)})\b")

_INFUSED = re.compile(
    r"(?P<of>\b(?:of|until|once|when|or|no) )?(?:\bthe )?(?P<oil>(?:garlic|onion)-infused oil)\b"
    r"(?! (?:is|are|smells?|sizzles?|turns?|begins?|starts?|has)\b)"
)
_MEASURED_OIL = re.compile(r"(?:\d [a-z]+|rest|half|some|little|third) of the (?:garlic|onion)-infused oil")

_REST_OF_OIL = re.compile(r"\brest of the (?:garlic|onion)-infused oil")


def named_once(steps: Sequence[str]) -> list[str]:
    """The steps in which one sentence names what became of several foods once, with all of it where that is all."""
    whole = "\n".join(steps)
    return [_sweetened(_by_sentences(step, whole), place, steps) for place, step in enumerate(steps)]


def out_of_lists(step: str) -> str:
    """A step without what is left out where it stands in a list of things; elsewhere the mark stays."""
    marked = step
    while (found := _MARKED_ITEM.search(step)) is not None:
        before, behind = step[: found.start()], step[found.end() :]
        first = _THINGS_FOLLOW.match(behind)
        if _BEFORE_ONE.search(before) and _BEHIND_ONE.match(behind):
            step = without_one(step, found.span())
        elif first is not None and found["the"]:
            step = f"{before}the {behind[first.end() :].removeprefix('the ')}"
        else:
            step = f"{before}{found['the'] or ''}{found['item']}{behind}"
    return _TOGETHER.sub(r"\g<work>", step) if step != marked else step  # one thing alone


def oil_shared_out(steps: Sequence[str]) -> list[str]:
    """The steps with some of an infused oil in each that takes it, and the rest in the last.

    Where steps say how much of it goes in, only the one last step behind them that says nothing takes the rest.
    """
    takes = [place for place, step in enumerate(steps) if _bare_oil(step) is not None]
    measured = [place for place, step in enumerate(steps) if _MEASURED_OIL.search(step)]
    if len(takes) == 1 and measured and takes[0] > measured[-1] and not any(map(_REST_OF_OIL.search, steps)):
        found = _bare_oil(steps[takes[0]])
        step = steps[takes[0]]
        rest = f"{step[: found.start()]}the rest of the {found['oil']}{step[found.end() :]}" if found else step
        return [*steps[: takes[0]], rest, *steps[takes[0] + 1 :]]
    if len(takes) < 2 or any(_MEASURED_OIL.search(step) for step in steps):
        return list(steps)
    told = list(steps)
    for place in takes:
        found = _bare_oil(steps[place])
        share = "the rest of" if place == takes[-1] else "some of"
        if found is not None:
            told[place] = f"{steps[place][: found.start()]}{share} the {found['oil']}{steps[place][found.end() :]}"
    return told


def _bare_oil(step: str) -> re.Match[str] | None:
    """The first place where a step puts in an infused oil without saying how much of it."""
    found = _INFUSED.finditer(step)
    return next(
        (one for one in found if not one["of"] and step.rfind("[", 0, one.start()) <= step.rfind("]", 0, one.start())),
        None,
    )


def _by_sentences(step: str, whole: str) -> str:
    ends = [one.end() for one in SENTENCE_ENDS.finditer(step)]
    start, told = 0, []
    for stop in (*ends, len(step)):
        told.append(_once_each(step[start:stop], whole))
        start = stop
    return "".join(told)


def _once_each(sentence: str, whole: str) -> str:
    found: dict[str, list[re.Match[str]]] = {}
    for one in _SO_MUCH.finditer(sentence):
        found.setdefault(_SORTS_OF_MILK.sub("", one["name"]), []).append(one)
    for name, each in found.items():
        if len(each) < 2:
            continue
        for other in reversed(each[1:]):
            sentence = without_one(sentence, other.span())
        first = each[0]
        elsewhere = sum(_SORTS_OF_MILK.sub("", one["name"]) == name for one in _SO_MUCH.finditer(whole)) > len(each)
        units = {one["unit"] for one in each}
        many = [one["many"].strip() for one in each]
        if not elsewhere:
            new = f"the {name}"
        elif len(units) == 1 and all(one.isdigit() for one in many):
            new = f"{sum(map(int, many))} {first['unit']} of the {name}"
        else:
            told = (f"{a} {b['unit']}" for a, b in zip(many, each, strict=True))
            new = f"{' and '.join(told)} of the {name}"
        at = sentence.find(first[0])  # a comma before it may be an `and` now
        sentence = f"{sentence[:at]}{new}{sentence[at + len(first[0]) :]}"
    return sentence


_COMMAS = re.compile(r"(?P<said>\[[^\[\]]*\])|, ")


def without_one(sentence: str, span: tuple[int, int]) -> str:
    """A sentence without one thing of its list, of which the last stands behind `and`."""
    before, behind = sentence[: span[0]], sentence[span[1] :]
    if before.endswith(", "):
        return f"{before.removesuffix(', ')}{behind}"
    if before.endswith(" and "):
        rest = before.removesuffix(" and ").removesuffix(",")
        comma = next((one for one in reversed([*_COMMAS.finditer(rest)]) if not one["said"]), None)
        return f"{rest[: comma.start()]} and {rest[comma.end() :]}{behind}" if comma else f"{rest}{behind}"
    return sentence


def _sweetened(step: str, place: int, steps: Sequence[str]) -> str:
    """Rhubarb and the sugar that came with it: told apart only where they first go in, and the step names no sugar."""
    before = any(_SWEETENED.search(one) for one in steps[:place])
    found = _SWEETENED.search(step)
    while found is not None:
        own = _SUGAR.search(_SWEETENED.sub("", step)) is not None
        if not before and not own:
            before = True
            found = _SWEETENED.search(step, found.end())
            continue
        step = f"{step[: found.start()]}{found['fruit']}{step[found.end() :]}"
        before = True
        found = _SWEETENED.search(step, found.start())
    if before:
        step = _ARE.sub(lambda one: f"{one['fruit']} {_IS[one['verb']]}", step)
        step = _SUGAR_OF_IT.sub("sugar", step)
    return step
