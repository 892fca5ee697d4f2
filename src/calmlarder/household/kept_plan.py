"""The last plan kept with what was asked of it, to be there again as long as its days are not past."""

from collections.abc import Collection, Mapping
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.household.household import Household
from calmlarder.household.plan_followed import as_followed, without_past
from calmlarder.household.planning import Outcome, PlanAsked
from calmlarder.household.sharing import keep_plan, last_plan
from calmlarder.plan.sittings import Key, PlannedSitting, key_of
from calmlarder.problems import CannotGoOn
from calmlarder.store.documents import PLANNED

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
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
        """The larder and the settings of now, with the meals as they were planned.

        What will be eaten from a box that is there counts as eaten then.
        """
        from calmlarder.compose.cooked import share_eaten

        request, tables = fresh.evening.request, fresh.evening.tables
        boxes = tuple(
            share_eaten(one.dinner, {}, one.at, tables, one.people)
            for one in self.planned.sittings
            if one.from_box and one.dinner is not None and all(use.food in tables.food_by_id for use in one.dinner.uses)
        )
        if boxes:
            request = request.model_copy(update={"eaten": (*request.eaten, *boxes)})
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
    done = household.sittings_done()
    past = next((n for n, one in enumerate(sittings) if not _is_over(one, household, done)), len(sittings))
    if past == len(sittings) or len(sittings) != len(planned.sittings):
        return None
    days = (sittings[-1].day - household.today).days + 1
    lots = [one.lot for one in household.lots()]
    left = as_followed(without_past(planned, past, lots, household.today), lots, sittings[0].day)
    return KeptPlan(left, sittings[past:], Changes(pins, excluded), days)


def unfit_meals(outcome: Outcome) -> dict[int, str]:
    """The meals of a plan that the check is against, by their place, with why; empty where all of it holds.

    A meal is checked as if those before it were eaten as planned. What is eaten from the box of such a meal goes with
    it, and where more is to be thawed than is frozen, every meal that thaws something.
    """
    where = [f"{one.sitting} of {one.day}: " for one in outcome.plan.sittings]
    at_large = any(not fault.startswith(tuple(where)) for fault in outcome.faults)
    left_g = {lot.id: lot.grams for lot in outcome.asked.evening.lots}
    unfit: dict[int, str] = {}
    for number, one in enumerate(outcome.plan.sittings):
        if one.dinner is None or one.from_box:
            continue
        is_at_fault = any(fault.startswith(where[number]) for fault in outcome.faults)
        if is_at_fault or (at_large and one.from_freezer):
            unfit[number] = _why_unfit(one.dinner, left_g)
        elif one.leftover_of in unfit:
            unfit[number] = "nor does the meal whose box it is"
        elif one.leftover_of is None:
            left_g |= {use.lot: left_g.get(use.lot, 0) - use.grams for use in one.dinner.uses}
    return unfit


def _why_unfit(dinner: "Dinner", left_g: Mapping[str, float]) -> str:
    """What of its foods is gone, or no longer enough; else that it is another thing."""
    gone = [use.name for use in dinner.uses if use.lot not in left_g]
    short = [use.name for use in dinner.uses if use.lot in left_g and left_g[use.lot] + 1 <= use.grams]
    words = [f"gone: {', '.join(gone)}"] * bool(gone) + [f"not enough left: {', '.join(short)}"] * bool(short)
    return "; ".join(words) or "what is there, eaten or settled is another by now"


def _is_over(one: PlannedSitting, household: Household, done: Collection[Key]) -> bool:
    return one.day < household.today or key_of(one.at, one.sitting) in done


def _plain(key: Key) -> list[str]:
    return [key.day.isoformat(), key.sitting]
