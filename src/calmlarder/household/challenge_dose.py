"""Today's dose of a challenge in the request of an evening: in the dish where it may be, else beside it."""

from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal
from typing import TYPE_CHECKING

from calmlarder.household.challenges import Today, dose_event, protocol_ahead, today
from calmlarder.household.household import Household
from calmlarder.intake.diet_and_allergens import allergens_met
from calmlarder.intake.dose import CHALLENGE, Dose, rest_entry
from calmlarder.intake.eaten import ME
from calmlarder.intake.groups import food_figures
from calmlarder.larder.lot import Lot, why_unfit
from calmlarder.reintroduction.events import Event
from calmlarder.reintroduction.foods import grams_for
from calmlarder.reintroduction.ladders import group_of
from calmlarder.store.logs import keep_events
from calmlarder.tables.book import Tables

if TYPE_CHECKING:
    from calmlarder.compose.request import DinnerRequest

_DAYS_AHEAD = 14  # well beyond the longest plan: ours
_IN_DISHES = frozenset({"base", "protein", "vegetable", "aromatic"})


def dose_of(household: Household, who: str) -> Dose | None:
    """The dose that is due today, as a scale shows it, never more of the group than the ladder says."""
    if not household.is_kept:
        return None
    due = today(household, who)
    if due.course is None or due.standing is None or due.standing.what != "dose" or due.food is None or not due.grams:
        return None
    return _dose(household, who, due, due.grams)


def _dose(household: Household, who: str, due: Today, grams: float) -> Dose:
    assert due.course is not None
    assert due.food is not None
    group = group_of(due.course.challenge)
    figure, _ = food_figures(household.plain_tables.fermentables_of(due.food.id)).exact[group]
    return Dose(
        who=who, challenge=due.course.challenge, group=group, food=due.food.id, name=due.food.name, grams=grams,
        dose_g=round(float(figure * Decimal(str(grams))) / 100_000, 4),
    )  # fmt: skip


def with_doses(household: Household, request: "DinnerRequest", lots: Sequence[Lot]) -> "DinnerRequest":
    """The request of a dinner around the doses of those at the table; what else their foods bring takes its room."""
    if request.sitting != "dinner" or request.stacking is None:
        return request
    names = [one.who for one in request.table if not one.is_guest] or [ME]
    doses = [dose for name in names if (dose := dose_of(household, name)) is not None]
    tables = household.plain_tables
    doses = [
        _beside_others(dose, request, tables).model_copy(update={"in_dish": _may_be_in(dose, request, lots, household)})
        for dose in doses
    ]
    return laid(request, doses, tables) if doses else request


def _beside_others(dose: Dose, request: "DinnerRequest", tables: Tables) -> Dose:
    """The dose with the allergens in it that somebody at the table avoids: whoever challenges avoids none of them."""
    return dose.model_copy(update={"avoided": tuple(allergens_met(tables.food_by_id[dose.food], request.avoid))})


def laid(request: "DinnerRequest", doses: Sequence[Dose], tables: Tables) -> "DinnerRequest":
    """The doses in the dish are asked for, of the others the rest of their food counts as eaten with it."""
    assert request.stacking is not None
    at, sure = request.stacking.at, request.tolerance
    inside = [dose for dose in doses if dose.in_dish]
    return request.model_copy(
        update={
            "doses": tuple(doses),
            "use": tuple(dict.fromkeys((*request.use, *(dose.food for dose in inside)))),
            "eaten": (*request.eaten, *(rest_entry(dose, at, tables, sure) for dose in doses if not dose.in_dish)),
        }
    )


def beside(request: "DinnerRequest", tables: Tables) -> "DinnerRequest":
    """The same dinner with each dose beside it."""
    inside = {dose.food for dose in request.doses if dose.in_dish}
    plain = request.model_copy(
        update={
            "use": tuple(food for food in request.use if food not in inside),
            "eaten": tuple(one for one in request.eaten if one.text != CHALLENGE),
        }
    )
    return laid(plain, [dose.model_copy(update={"in_dish": False}) for dose in request.doses], tables)


def with_protocol(
    household: Household, request: "DinnerRequest", dinners: Sequence[datetime]
) -> "tuple[DinnerRequest, tuple[tuple[datetime, Dose], ...]]":
    """A plan's request that leaves room at dinners of dose days for what a dose's food brings besides; the doses.

    If every day is calm: the day itself says what it asks for.
    """
    inside = {dose.food for dose in request.doses if dose.in_dish}
    plain = request.model_copy(
        update={
            "doses": (),
            "use": tuple(food for food in request.use if food not in inside),
            "eaten": tuple(one for one in request.eaten if one.text != CHALLENGE),
        }
    )
    found: list[tuple[datetime, Dose]] = []
    for who in [one.who for one in request.table if not one.is_guest] or [ME]:
        due, days = today(household, who), dict(protocol_ahead(household, who, _DAYS_AHEAD))
        for at in dinners:
            if due.food is None or due.course is None or at.date() not in days:
                continue
            grams = grams_for(due.food, due.course.challenge, days[at.date()], household.plain_tables)
            if grams:
                found.append((at, _beside_others(_dose(household, who, due, grams), request, household.plain_tables)))
    sure, tables = plain.tolerance, household.plain_tables
    entries = (rest_entry(dose, at, tables, sure) for at, dose in found)
    without = tuple(dict.fromkeys((*plain.without, *(dose.food for _, dose in found))))
    return plain.model_copy(update={"eaten": (*plain.eaten, *entries), "without": without}), tuple(found)


def _may_be_in(dose: Dose, request: "DinnerRequest", lots: Sequence[Lot], household: Household) -> bool:
    food = household.plain_tables.food_by_id[dose.food]
    is_shared = request.people > 1 or request.table
    there = any(lot.food == dose.food and lot.grams > dose.grams and why_unfit(lot) is None for lot in lots)
    # What a sum of parts brings is counted part by part: its dose is weighed beside the dish.
    is_whole = household.plain_tables.composite_of(dose.food) is None and dose.grams.is_integer()
    return not is_shared and there and is_whole and bool(_IN_DISHES.intersection(food.roles))


def keep_doses(household: Household, doses: Sequence[Dose], at: datetime) -> None:
    """A dinner was eaten with its doses: they are eaten, too, once a day."""
    new: list[Event] = []
    for dose in doses:
        due: Today = today(household, dose.who)
        if due.standing is not None and due.standing.what == "dose":
            event = dose_event(due, at)
            new.append(event.model_copy(update={"grams": dose.grams, "food": dose.food}))
    if new:
        keep_events(household.store, new, "eat the dose of a challenge")
