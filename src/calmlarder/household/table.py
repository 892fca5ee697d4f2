"""Who eats tonight: people of the home and guests, laid over the request of an evening."""

from collections.abc import Iterable
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.household.going_on import is_challenged
from calmlarder.household.household import Household
from calmlarder.household.people import person_of
from calmlarder.household.person import GUEST, Person
from calmlarder.intake.own_profile import BASE
from calmlarder.intake.profile import Profile
from calmlarder.intake.table import Eater, equal_shares_of, table_profile
from calmlarder.tables.vocabulary import DIETS, Sitting

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.request import DinnerRequest


class Seats(NamedTuple):
    """Names of people of the home, and how many guests there are besides: in elimination, of any diet."""

    names: tuple[str, ...] = ()
    guests: int = 0


def eaters_at(household: Household, seats: Seats, sitting: Sitting) -> tuple[Eater, ...]:
    """Everybody at the table, as they count at a kind of sitting. Raises CannotGoOn for somebody who is not here."""
    home = [person_of(household, name) for name in seats.names]
    guests = [
        GUEST.model_copy(update={"name": GUEST.name if seats.guests == 1 else f"{GUEST.name} {number}"})
        for number in range(1, seats.guests + 1)
    ]
    return (
        *(_eater(household, one, sitting, is_guest=False) for one in home),
        *(_eater(household, one, sitting, is_guest=True) for one in guests),
    )


def _eater(household: Household, one: Person, sitting: Sitting, is_guest: bool) -> Eater:
    from calmlarder.compose.request import PROTEIN_TARGET_G, protein_floor, protein_target_by_weight

    target, usual = one.protein_g, PROTEIN_TARGET_G["dinner"]
    if target == usual and one.weight_kg:  # never said: by weight, else by appetite
        target = float(protein_target_by_weight(one.weight_kg, one.age))
    elif target == usual:
        target *= min(1.0, one.appetite)
    if sitting != "dinner":
        target = PROTEIN_TARGET_G[sitting] * min(1.0, one.appetite)
    going = not is_guest and is_challenged(household, one.name)
    return Eater(
        who=one.name, profile=one.limits(household.tables, during_challenge=going), diet=one.diet, avoid=one.avoid,
        never=one.never, disliked=one.disliked, protein_g=target,
        protein_floor_g=min(protein_floor(sitting, target), target), appetite=one.appetite, is_guest=is_guest,
    )  # fmt: skip


def at_table(request: "DinnerRequest", eaters: tuple[Eater, ...]) -> "DinnerRequest":
    """The request for these people: one dish under everybody's limits, in shares by appetite.

    What was asked for of this evening stays: a diet or an allergen asked for joins theirs. The dish is as rich in
    protein as whoever needs most of it in their share.
    """
    diet = min((request.diet, *(one.diet for one in eaters)), key=DIETS.index)
    shares = [(one, float(equal_shares_of(one, eaters))) for one in eaters]
    how = request.stacking
    named = tuple(one.who for one in eaters if not one.is_guest)
    return request.model_copy(
        update={
            "table": eaters,
            "profile": table_profile(eaters),
            "people": len(eaters),
            "diet": diet,
            "avoid": tuple(dict.fromkeys((*request.avoid, *(one for eater in eaters for one in eater.avoid)))),
            "without": _but(request, (food for eater in eaters for food in eater.never), request.without),
            "disliked": _but(request, (food for eater in eaters for food in eater.disliked), request.disliked),
            "protein_g": min(100.0, max(one.protein_g * share for one, share in shares)),
            "protein_floor_g": min(100.0, max(one.protein_floor_g * share for one, share in shares)),
            "stacking": None if how is None or not named else how.model_copy(update={"who": named}),
        }
    )


def limits_of_dinner(household: Household, dinner: "Dinner") -> Profile:
    """The limits that a dinner was made under: of those it names, of elimination around a dose, else the home's.

    Raises CannotGoOn where somebody it names is not here any more.
    """
    if dinner.portions:
        names = tuple(one.who for one in dinner.portions if not one.is_guest)
        guests = sum(one.is_guest for one in dinner.portions)
        return table_profile(eaters_at(household, Seats(names, guests), dinner.sitting))
    return household.profile_named(BASE) if dinner.doses else household.profile()


def _but(request: "DinnerRequest", foods: Iterable[str], before: tuple[str, ...]) -> tuple[str, ...]:
    """Foods that are left out or not liked; what must be in it is asked for on purpose."""
    return tuple(dict.fromkeys((*before, *(food for food in foods if food not in request.use))))
