"""The next sittings planned together: what is asked, and every plan replayed by the check before it is handed on."""

from collections.abc import Callable, Collection, Sequence
from time import monotonic
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.household.challenge_dose import with_protocol
from calmlarder.household.household import Household
from calmlarder.household.reminders import tolerated_words
from calmlarder.household.request import Evening, evening, settled_for, stacking_for
from calmlarder.intake.eaten import ME

if TYPE_CHECKING:
    from calmlarder.compose.request import DinnerRequest
    from calmlarder.compose.stop import Stop
    from calmlarder.household.choices import Choices
    from calmlarder.larder.lot import Lot
    from calmlarder.plan.kept_dishes import KeptMeal
    from calmlarder.plan.planned import Planned, PlanSoFar, SittingPlanned
    from calmlarder.plan.sittings import Key, PlannedSitting

SECONDS = 20.0  # the longest a round takes, as the plan's aim has it
USUAL_DAYS = 3
_CHECK_SHARE, _CHECK_MOST_S = 0.1, 1.0  # of the time, for the check of the plan: ours
_APART_S = 0.5  # between two plans shown: an eye can follow


class Which(NamedTuple):
    """Which sittings: so many days, or a list in a cook's words; `barred` holds dishes not wanted at one of them."""

    days: int = USUAL_DAYS
    listed: str | None = None
    barred: "Collection[tuple[Key, str]]" = ()


class PlanAsked(NamedTuple):
    """What a round of planning works on; nothing of it is read from the store any more.

    `kept` are meals of an earlier plan that stay where they still can; `most_to_buy` is None for the usual number.
    `work` is how many rounds of improving there are: then the plan is a function of what is asked, and no clock ends
    it before `seconds` do.
    """

    evening: Evening
    sittings: "tuple[PlannedSitting, ...]"
    stop: "Stop"
    kept: "tuple[KeptMeal, ...]" = ()
    seconds: float | None = None
    most_to_buy: int | None = None
    work: int | None = None


class Outcome(NamedTuple):
    """A plan with what the check says against it."""

    asked: PlanAsked
    plan: "Planned | PlanSoFar"
    faults: tuple[str, ...]


def plan_asked(
    household: Household, choices: "Choices", which: Which, lots: "Sequence[Lot] | None" = None
) -> PlanAsked:
    """What is to be planned, on these lots or on those of the larder. Raises CannotGoOn."""
    from calmlarder.compose.stop import Stop

    asked = evening(household, choices, lots)
    sittings = sittings_ahead(household, choices, which)
    if asked.request.table:
        sittings = tuple(_for_the_table(one, asked.request) for one in sittings)
    if asked.request.stacking is None:
        how, _ = stacking_for(choices, settled_for(household, choices), sittings[0].at)
        asked = asked._replace(request=asked.request.model_copy(update={"stacking": how}))
    if household.is_kept and choices.use_challenge:
        asked = _with_protocol(household, asked, sittings)
        words = tolerated_words(household, choices.eaters or (ME,)) if choices.use_settings else []
        asked = asked._replace(from_home=(*asked.from_home, *words))
    return PlanAsked(asked, sittings, Stop())


def _with_protocol(household: Household, asked: Evening, sittings: "tuple[PlannedSitting, ...]") -> Evening:
    """The plan keeps the days of a challenge: its doses beside dinners, in words, and their room left free."""
    dinners = [one.at for one in sittings if one.sitting == "dinner"]
    request, doses = with_protocol(household, asked.request, dinners)
    words = [
        f"{at:%a %d %b} with {dose.grams:g} g {dose.name} beside dinner, the challenge of {dose.who} if all is calm"
        + (f"; it holds {', '.join(dose.avoided)}, so keep it away from the dish" if dose.avoided else "")
        for at, dose in doses
    ]
    return asked._replace(request=request, from_home=(*asked.from_home, *words))


def _for_the_table(one: "PlannedSitting", request: "DinnerRequest") -> "PlannedSitting":
    """As much protein in an equal share as the smallest eater's share needs; of a dinner as each of them wants."""
    from calmlarder.intake.table import equal_shares_of

    most = max(float(equal_shares_of(eater, request.table)) for eater in request.table)
    protein_g, floor_g = one.protein_g * most, one.protein_floor_g * most
    if one.sitting == "dinner":
        protein_g, floor_g = request.protein_g, request.protein_floor_g
    return one.model_copy(update={"protein_g": min(100.0, protein_g), "protein_floor_g": min(100.0, floor_g)})


def sittings_ahead(household: Household, choices: "Choices", which: Which) -> "tuple[PlannedSitting, ...]":
    """Those of a list; else a dinner each day and packed lunches between, but for what was eaten today.

    What is settled holds for each: people, minutes, and the protein of dinners. Of a plan by days, whoever sits down
    later than usual tonight is sitting down now. Raises CannotGoOn for a list or a number of days that cannot be.
    """
    from calmlarder.compose.request import protein_floor
    from calmlarder.plan.sittings import key_of
    from calmlarder.plan.sittings_ahead import Usual, sittings_of_days
    from calmlarder.plan.sittings_typed import read_sittings

    home = settled_for(household, choices)
    people = home.people if choices.people is None else choices.people
    people = len(choices.eaters) + choices.guests or people
    minutes = None if choices.any_time else home.minutes if choices.minutes is None else choices.minutes
    if which.listed is not None:
        found = read_sittings(which.listed, household.today, people, minutes, choices.protein_g)
    else:
        done = household.sittings_done() if choices.use_log else frozenset()
        found = sittings_of_days(which.days, household.today, Usual(people, minutes, choices.protein_g), done)
    now = household.now() if choices.at is None else choices.at
    changed = []
    for one in found:
        key = key_of(one.at, one.sitting)
        update: dict[str, object] = {"not_patterns": tuple(dish for where, dish in which.barred if where == key)}
        if which.listed is None and one.day == now.date():
            update["at"] = max(one.at, now)
        if one.sitting == "dinner" and choices.protein_g is None and "protein_g" in home.given:
            update["protein_g"] = float(home.protein_g)
            update["protein_floor_g"] = protein_floor("dinner", float(home.protein_g))
        if choices.protein_floor_g is not None:
            update["protein_floor_g"] = choices.protein_floor_g
        changed.append(one.model_copy(update=update))
    return tuple(changed)


def plan(
    asked: PlanAsked,
    better: Callable[[Outcome], object] | None = None,
    bound: Callable[[float], object] | None = None,
) -> Outcome:
    """The best plan found in the time or until the stop; `better` and `bound` hear how it comes about, in a thread."""
    from calmlarder.household.checked import plan_faults
    from calmlarder.household.parts_in_plans import with_parts
    from calmlarder.patterns.load import shipped_patterns
    from calmlarder.plan.plan_days import Asked, How, plan_days
    from calmlarder.plan.weights import MOST_TO_BUY

    shown_at = [float("-inf")]

    def outcome(found: "Planned | PlanSoFar") -> Outcome:
        faults = plan_faults(found, asked.sittings, asked.evening)
        return Outcome(asked, found, faults)

    def so_far(found: "PlanSoFar") -> None:
        if better is not None and not asked.stop.asked and monotonic() - shown_at[0] >= _APART_S:
            shown_at[0] = monotonic()
            better(outcome(found))

    def higher(points: float) -> None:
        if bound is not None and not asked.stop.asked:
            bound(points)

    lots, request, tables = asked.evening.lots, asked.evening.request, asked.evening.tables
    seconds = SECONDS if asked.seconds is None else asked.seconds
    how = How(
        seconds - min(_CHECK_SHARE * seconds, _CHECK_MOST_S), None if better is None else so_far, asked.stop,
        asked.kept, on_bound=None if bound is None else higher,
        most_to_buy=MOST_TO_BUY if asked.most_to_buy is None else asked.most_to_buy,
        rounds=asked.work, bound=asked.work is None,
    )  # fmt: skip
    planned = plan_days(Asked(lots, asked.sittings, request, shipped_patterns(), tables), how)
    return outcome(with_parts(planned, asked.sittings, asked.evening))


def checked_again(asked: PlanAsked, planned: "Planned") -> Outcome:
    """A plan made before, with what the check finds against it in the larder and the settings of now."""
    from calmlarder.household.checked import plan_faults

    return Outcome(asked, planned, plan_faults(planned, asked.sittings, asked.evening))


def meals_that_stay(
    planned: "Planned | PlanSoFar", asked: "Sequence[PlannedSitting]", stays: "frozenset[Key]"
) -> "tuple[KeptMeal, ...]":
    """Dinners of a plan that stay in the next one, by the places of their meals there: each that one of `stays` eats.

    One whose meals are not all asked for any more does not stay.
    """
    from calmlarder.plan.kept_dishes import KeptMeal
    from calmlarder.plan.sittings import key_of

    places = {key_of(one.at, one.sitting): number for number, one in enumerate(asked)}
    keys = [key_of(one.at, one.sitting) for one in planned.sittings]
    found = []
    for number, one in enumerate(planned.sittings):
        if one.dinner is None or one.leftover_of is not None or one.from_box:
            continue
        eaters = [keys[n] for n in eaters_of(planned.sittings, number)]
        if not stays.isdisjoint(eaters) and all(key in places for key in eaters):
            found.append(KeptMeal(tuple(places[key] for key in eaters), one.dinner))
    return tuple(found)


def eaters_of(sittings: "Sequence[SittingPlanned]", number: int) -> tuple[int, ...]:
    """The meals, by their place, that eat of the dish of one; itself alone where it has none."""
    first = sittings[number].leftover_of
    first = number if first is None else first
    return tuple(n for n, one in enumerate(sittings) if n == first or one.leftover_of == first)
