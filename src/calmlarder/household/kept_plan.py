"""The last plan kept with what was asked of it, to be there again as long as its days are not past."""

from typing import TYPE_CHECKING, NamedTuple

from calmlarder.household.household import Household
from calmlarder.household.planning import Outcome, PlanAsked
from calmlarder.household.sharing import keep_plan, last_plan
from calmlarder.plan.sittings import Key, PlannedSitting, key_of
from calmlarder.problems import CannotGoOn
from calmlarder.store.documents import PLANNED

if TYPE_CHECKING:
    from calmlarder.plan.planned import Planned


class Changes(NamedTuple):
    """What a cook changed of a plan: meals whose dish stays, and dishes that are not wanted at a meal."""

    pins: frozenset[Key] = frozenset()
    excluded: frozenset[tuple[Key, str]] = frozenset()


class KeptPlan(NamedTuple):
    """A plan of which at least one day is not past: its meals from today on, as they were asked for.

    `days` is how many days it reaches, today among them whether or not a meal of today is left.
    """

    planned: "Planned"
    sittings: tuple[PlannedSitting, ...]
    changes: Changes
    days: int

    def asked_again(self, fresh: PlanAsked) -> PlanAsked:
        """The larder and the settings of now, with the meals as they were planned."""
        request = fresh.evening.request
        if request.stacking is not None:
            stacking = request.stacking.model_copy(update={"at": self.sittings[0].at})
            request = request.model_copy(update={"stacking": stacking})
        return fresh._replace(evening=fresh.evening._replace(request=request), sittings=self.sittings)


def keep(household: Household, outcome: Outcome, changes: Changes) -> None:
    """Remember a plan that holds and is at its end, with its changes, where the home can be written."""
    keep_plan(household, outcome, {
        "asked": [one.model_dump(mode="json") for one in outcome.asked.sittings],
        "pins": [_plain(key) for key in sorted(changes.pins)],
        "excluded": [[*_plain(key), dish] for key, dish in sorted(changes.excluded)],
    })  # fmt: skip


def kept_plan(household: Household) -> KeptPlan | None:
    """The plan that was kept last, its meals from today on; None where there is none, or its days are past."""
    try:
        note, planned = household.noted(PLANNED), last_plan(household)
        sittings = tuple(PlannedSitting.model_validate(one) for one in note["asked"])
        keys = {tuple(_plain(key)): key for key in (key_of(one.at, one.sitting) for one in sittings)}
        pins = frozenset(keys[day, kind] for day, kind in note["pins"])
        excluded = frozenset((keys[day, kind], dish) for day, kind, dish in note["excluded"] if (day, kind) in keys)
    except (CannotGoOn, KeyError, TypeError, ValueError):
        return None
    past = sum(one.day < household.today for one in sittings)
    if past == len(sittings) or len(sittings) != len(planned.sittings):
        return None
    days = (sittings[-1].day - household.today).days + 1
    return KeptPlan(_without_past(planned, past), sittings[past:], Changes(pins, excluded), days)


def _without_past(planned: "Planned", past: int) -> "Planned":
    """The meals after so many; what was to be eaten from a box of those before is told without them."""

    def moved(number: int | None) -> int | None:
        return number - past if number is not None and number >= past else None

    left = tuple(
        one.model_copy(update={"leftover_of": moved(one.leftover_of), "boxed_for": moved(one.boxed_for)})
        for one in planned.sittings[past:]
    )
    return planned.model_copy(update={"sittings": left})


def _plain(key: Key) -> list[str]:
    return [key.day.isoformat(), key.sitting]
