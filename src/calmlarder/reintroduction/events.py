"""What happens in challenges, event by event, and the courses that the events make."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime
from types import MappingProxyType
from typing import Annotated, Literal, NamedTuple

from pydantic import BaseModel, ConfigDict, Field

from calmlarder.reintroduction.ladders import Challenge

Kind = Literal["start", "wants_control", "dose", "control", "left_out", "skip", "stop", "concluded"]
# Why a day says nothing of the group: it stays in the log and is left out of the likelihood.
LeftOut = Literal["another limit passed", "illness", "antibiotics", "new medicine", "alcohol", "period"]


class Event(BaseModel):
    """One thing that happened to one person. `at` is local time, doses are g of the group, grams are of the food.

    `why` says why a day was skipped or left out, or a course stopped; `wants_control` is of a start; `limit_g` of what
    was concluded.
    """

    model_config = ConfigDict(frozen=True)

    at: datetime
    who: str
    kind: Kind
    challenge: Challenge
    food: str = ""
    grams: Annotated[float, Field(ge=0)] = 0.0
    dose_g: Annotated[float, Field(ge=0)] = 0.0
    why: str = ""
    wants_control: bool = False
    limit_g: float | None = None


class Eaten(NamedTuple):
    """A day on which a dose was eaten: g of the group in grams of a food; a dose of 0 g is a control day."""

    on: date
    dose_g: float
    food: str = ""
    grams: float = 0.0


class Course(NamedTuple):
    """One challenge of one person, from its start; days by date. `limit_g` is what was concluded of it."""

    who: str
    challenge: Challenge
    started: date
    food: str = ""
    wants_control: bool = False
    eaten: tuple[Eaten, ...] = ()
    left_out: Mapping[date, str] = MappingProxyType({})
    skipped: Mapping[date, str] = MappingProxyType({})
    stopped: date | None = None
    why_stopped: str = ""
    limit_g: float | None = None
    concluded: date | None = None
    replaced: str = ""  # what somebody had set before, and what was found is lower

    @property
    def is_open(self) -> bool:
        """Whether it goes on."""
        return self.stopped is None and self.concluded is None


def courses_of(events: Iterable[Event], who: str) -> tuple[Course, ...]:
    """The courses of one person, oldest first; another start ends the one before."""
    found: list[Course] = []
    for event in sorted((one for one in events if one.who == who), key=lambda one: one.at):
        if event.kind == "start":
            if found and found[-1].is_open:
                found[-1] = found[-1]._replace(stopped=event.at.date(), why_stopped="another challenge was started")
            found.append(Course(who, event.challenge, event.at.date(), event.food, event.wants_control))
        elif found:
            place = _place_of(found, event)
            found[place] = _with(found[place], event)
    return tuple(found)


def _place_of(found: Sequence[Course], event: Event) -> int:
    """Which course an event is of: the last, but for what is concluded, the last with that challenge."""
    if event.kind != "concluded":
        return len(found) - 1
    same = [number for number, course in enumerate(found) if course.challenge == event.challenge]
    return same[-1] if same else len(found) - 1


def _with(course: Course, event: Event) -> Course:
    on = event.at.date()
    if event.kind in {"dose", "control"}:
        if any(one.on == on for one in course.eaten):  # once a day
            return course
        return course._replace(eaten=(*course.eaten, Eaten(on, event.dose_g, event.food, event.grams)))
    if event.kind == "left_out":
        return course._replace(left_out={**course.left_out, on: event.why})
    if event.kind == "skip":
        return course._replace(skipped={**course.skipped, on: event.why})
    if event.kind == "wants_control":
        return course._replace(wants_control=True)
    if event.kind == "stop":
        return course._replace(stopped=on, why_stopped=event.why)
    return course._replace(limit_g=event.limit_g, concluded=course.concluded or on, replaced=event.why)
