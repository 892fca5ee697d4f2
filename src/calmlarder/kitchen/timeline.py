"""A dinner's work as one schedule, told twice: as steps, and as a timeline that one cook can follow."""

import re
from collections.abc import Sequence
from itertools import groupby

from pydantic import BaseModel, ConfigDict

from calmlarder.kitchen.equipment import USUAL, Equipment
from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.piece import COOK, MICROWAVE, OVEN, PAN, RING, TOASTER, Work
from calmlarder.kitchen.shortest_schedule import Schedule, schedule
from calmlarder.kitchen.work import work_of
from calmlarder.patterns.pattern import Pattern

_WAITS_MINUTES = 6  # what is drained is hot for so long by itself: common practice, no source
_WARM = re.compile(r"\b(?:foil|keep (?:it )?(?:warm|hot)|[Ww]arm \S+ [^;]*? in an?)\b")
_WARMED_UNDER_LID = re.compile(r"\b[Ww]arm [^.;]*? in a covered pot [^.;]*? until steaming hot\b")
_UNDER_ITS_LID = ", and keep hot in the pot with the lid on."
_DRAINED = re.compile(r"(?:, and drain|^Then drain)\.(?= About \d+ minutes\.$|$)")


class Moment(BaseModel):
    """Something that begins `start_min` after the start and takes `minutes`; `hands_on` keeps the cook at it.

    `adds` are the ids of the foods that come into the dish with it; `step` is the place among the steps of the one
    that tells it, from 0, and None where it is told apart from them.
    """

    model_config = ConfigDict(frozen=True)

    start_min: int
    minutes: int
    what: str
    hands_on: bool
    equipment: str
    adds: tuple[str, ...] = ()
    step: int | None = None


class Timeline(BaseModel):
    """All moments in order, the length of the whole in minutes, and whether it is proven the shortest."""

    model_config = ConfigDict(frozen=True)

    moments: tuple[Moment, ...]
    minutes: int
    proven: bool


def told_twice(
    pattern: Pattern, fillings: Sequence[Filling], equipment: Equipment = USUAL, people: int = 1
) -> tuple[tuple[str, ...], Timeline]:
    """The steps, and the timeline: the shortest order of work for one cook with what the kitchen has.

    Raises NoOrder where the pattern needs an oven or a microwave that is not there.
    """
    work = work_of(pattern, fillings, people)
    planned = schedule([one.task for one in work], _capacity(equipment))
    work = [_kept_warm(_kept_hot(one, work, planned), work, planned) for one in work]
    places = {one.task.name: number for number, one in enumerate(work)}
    begun = {one.stage: min(planned.starts[o.task.name] for o in work if o.stage == one.stage) for one in work}

    def order(one: Work) -> tuple[int, bool, bool, int]:
        """By the clock; at one minute first what goes on with a step that was begun: warm fat waits for nothing."""
        at = planned.starts[one.task.name]
        goes_on = begun[one.stage] < at and all(planned.starts.get(name, 0) < at for name in one.task.after)
        return at, one.stage == "ready", not goes_on, places[one.task.name]

    work.sort(key=order)
    groups = [list(group) for _, group in groupby(work, key=lambda one: one.stage)]  # as _steps tells them
    moments = tuple(_moment(one, planned, step) for step, group in enumerate(groups) for one in group)
    return _steps(work, planned), Timeline(moments=moments, minutes=planned.minutes, proven=planned.proven)


def _kept_hot(one: Work, work: Sequence[Work], planned: Schedule) -> Work:
    """What is drained long before anything is done with it goes back into its hot pot, under the lid."""
    found = _DRAINED.search(one.said) or _WARMED_UNDER_LID.search(one.said)
    boiled = next((other for other in work if other.task.name == (one.task.before_end_of or (one.task.name,))[0]), one)
    if found is None or not boiled.task.needs.get(RING):
        return one
    ends = planned.starts[boiled.task.name] + boiled.task.minutes
    name = boiled.task.name
    wanted = [planned.starts[other.task.name] for other in work if name in (*other.task.after, other.task.at_end_of)]
    if min(wanted, default=planned.minutes) - ends < _WAITS_MINUTES:
        return one
    if found.re is _WARMED_UNDER_LID:
        return one._replace(said=f"{one.said[: found.end()]}, and keep it hot with the lid on{one.said[found.end() :]}")
    drained = "Then drain" if "Then" in found[0] else "; drain"
    said = f"{one.said[: found.start()]}{drained}{_UNDER_ITS_LID}{one.said[found.end() :]}"
    return one._replace(said=said, alone=one.alone and f"{one.alone.removesuffix('.')}{_UNDER_ITS_LID}")


def _kept_warm(one: Work, work: Sequence[Work], planned: Schedule) -> Work:
    """What is done in its pan long before it is served, as there was no ring for it later, waits under foil."""
    on = next((other for other in work if other.task.name == (one.task.before_end_of or (one.task.name,))[0]), one)
    joined = [other for other in work if (other.task.before_end_of or ("",))[0] == on.task.name]
    lifted = "lift out" in on.said
    if one is not on if lifted or not joined else one is not joined[-1]:
        return one
    last = on.task.weight > 1 and COOK not in on.task.needs
    if (
        not last
        or any(_WARM.search(other.said) for other in (on, *joined))
        or any(on.task.name in other.task.after for other in work if _on_heat(other))
    ):
        return one
    wanted = [planned.starts[other.task.name] for other in work if on.task.name in other.task.after]
    if min(wanted, default=planned.minutes) - planned.starts[on.task.name] - on.task.minutes < _WAITS_MINUTES:
        return one
    if lifted:
        return one._replace(said=one.said.replace("lift out", "lift out onto a warm plate under foil", 1))
    return one._replace(said=f"{one.said} Keep it warm under foil.")


def _on_heat(one: Work) -> bool:
    return bool({RING, OVEN, MICROWAVE, PAN} & set(one.task.needs))


def _moment(one: Work, planned: Schedule, step: int) -> Moment:
    return Moment(
        start_min=planned.starts[one.task.name],
        minutes=one.task.minutes,
        what=one.line,
        hands_on=COOK in one.task.needs,
        equipment=next((place for place in (RING, OVEN, MICROWAVE) if place in one.task.needs), ""),
        adds=one.adds,
        step=step,
    )


def _steps(work: Sequence[Work], planned: Schedule) -> tuple[str, ...]:
    """What follows one upon the other at one place is one step; what goes on beside it begins with meanwhile."""
    steps: list[str] = []
    on: dict[str, int] = {}  # until when each vessel is on the heat, the last one told behind the others
    for stage, group in groupby(work, key=lambda one: one.stage):
        pieces = list(group)
        first = pieces[0]
        said = [first.alone or first.said, *(piece.said for piece in pieces[1:])]
        if stage == "ready":
            steps.append(f"{'Meanwhile get' if on else 'Get'} ready: {'; '.join(said)}.")
            continue
        text = " ".join(said)
        told_before = next(reversed(on), "")
        beside = told_before and told_before != first.vessel and planned.starts[first.task.name] < on[told_before]
        if first.vessel and beside and not first.alone and not text.startswith("For the last"):
            text = f"Meanwhile {text[:1].lower()}{text[1:]}"
        steps.append(text)
        if first.vessel and first.vessel != TOASTER:
            ends = [planned.starts[one.task.name] + one.task.minutes for one in pieces]
            on[first.vessel] = max([on.pop(first.vessel, 0), *ends])
    return tuple(f"{step.rstrip('.')}." for step in steps)


def _capacity(equipment: Equipment) -> dict[str, int]:
    """One cook and one wide pan; as many rings as there are; an oven and a microwave if they are there."""
    return {
        COOK: 1,
        PAN: 1,
        RING: equipment.rings,
        OVEN: int("oven" not in equipment.missing),
        MICROWAVE: int("microwave" not in equipment.missing),
    }
