"""What bears a quarter of an hour in the oven goes in with its last stage, told where that stage is."""

import re
from collections.abc import Sequence
from typing import NamedTuple

from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_named_once import without_one

_NAME = r"(?P<the>the )?(?P<much>\d+ g of the )?(?P<name>(?:[a-z][a-z-]* ){0,2}[a-z]+)"
_LATER = re.compile(
    rf"\b{_NAME} \[(?:not yet, )?only for the last (?P<minutes>\d+) minutes(?P<oven> in the oven)?\]", re.IGNORECASE
)
_VERB = re.compile(
    r"^(?:put|add|toss|scatter|spread|place|tip|arrange|tuck|lay|mix|stir|and|then|in|over)\s+(?:the )?", re.IGNORECASE
)
_BEFORE_IT = re.compile(r"(?:,| and| with) (?:the )?$")
_IN_THE_OVEN = re.compile(r"\b(?:roast|bake|cook|oven|return)\b", re.IGNORECASE)
_TIME = re.compile(r"(\d+)(?:\s*(?:[-–—]|to)\s*\d+)?[\s-]*(minute|min|hour|hr)", re.IGNORECASE)
_BRACKETS = re.compile(r"\[[^\[\]]*\]")
_ON_THE_STOVE = re.compile(r"\b(?:simmer|fry|boil|pan over|saucepan|wok|rest)\b", re.IGNORECASE)

_NEAR = 5  # minutes in the oven that make no difference: ours
_LONG = 45  # minutes: a roast that has one long time is done with it, what is baked later is something else; ours


class _Stage(NamedTuple):
    """A sentence that has the dish in the oven: in which step, from where to where, for how many minutes."""

    step: int
    start: int
    end: int
    minutes: int
    after: int = 0  # minutes of the stages behind it


def put_in_the_oven_later(steps: Sequence[str]) -> list[str]:
    """The changed steps in which such a thing stands with the last time that the dish is in the oven."""
    told = list(steps)
    for place, step in enumerate(steps):
        found = _LATER.search(step)
        if found is None:
            continue
        rest = _without(step, found)
        stage = _stage_for(told, place, found)
        if rest is None or stage is None:
            continue
        shift = len(step) - len(rest) if stage.step == place else 0
        told[place] = rest
        told[stage.step] = _joined(
            told[stage.step], stage._replace(start=stage.start - shift, end=stage.end - shift), found
        )
    return told


def _joined(text: str, stage: _Stage, found: re.Match[str]) -> str:
    """A step with the thing put in for the last minutes of its stage, or before it where that is no longer."""
    much, needs = f"{found['much'] or 'the '}{_VERB.sub('', found['name'])}", int(found["minutes"])
    needs -= stage.after if stage.after >= _NEAR else 0
    if stage.minutes > needs:
        before, behind = text[: stage.end], text[stage.end :]
        return f"{before} Put in {much} for the last {needs} minutes of it.{behind}"
    before, behind = text[: stage.start].rstrip(), text[stage.start :].lstrip()
    return f"{before} Scatter {much} over. {behind}".lstrip()


def _without(step: str, found: re.Match[str]) -> str | None:
    """The step without the thing, where something else of its list stays."""
    verb = _VERB.match(found[0])
    start = found.start() + (verb.end() if verb else 0)
    before, behind = step[:start], step[found.end() :]
    follows = re.match(r"(?:,| and|, and) (?:the )?(?=[a-z])", behind)
    joined = _BEFORE_IT.search(before.removesuffix("the "))
    if joined is not None and not joined[0].startswith(" with"):
        return without_one(step, (start, found.end()))
    if follows is None:
        return None
    the = "the " if not before.endswith("the ") else ""
    return f"{before}{the}{behind[follows.end() :]}"


def _stage_for(steps: Sequence[str], place: int, found: re.Match[str]) -> _Stage | None:
    """The last stage behind a place in the steps from which there is time enough, or the first where none is later."""
    behind, later, needs = found.end(), found["oven"] is not None, int(found["minutes"])
    stages: list[_Stage] = []
    for at in range(place, len(steps)):
        step = steps[at]
        start = 0
        for end in (*(one.end() for one in SENTENCE_ENDS.finditer(step)), len(step)):
            sentence, first = _BRACKETS.sub("", step[start:end]), start
            start = end
            minutes = sum(
                int(one[1]) * (60 if one[2].lower().startswith("h") else 1) for one in _TIME.finditer(sentence)
            )
            goes = minutes and _IN_THE_OVEN.search(sentence) and not _ON_THE_STOVE.search(sentence)
            if goes and not (at == place and end <= behind):
                stages.append(_Stage(at, first, end, minutes))
    if not stages:
        return None
    if not later or stages[0].minutes >= _LONG:
        return stages[0]
    left = 0
    for stage in reversed(stages):
        left += stage.minutes
        if left + _NEAR >= needs:  # of the last stages together as long as it needs
            return stage._replace(after=left - stage.minutes)
    return stages[0]
