"""What was proposed or planned, against what is left out at home now: settings and labels may have changed since."""

from collections.abc import Iterable
from typing import TYPE_CHECKING

from calmlarder.household.household import Household
from calmlarder.household.people import people
from calmlarder.intake.eaters import allergens_met
from calmlarder.problems import CannotGoOn, Problem

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner


def refuse_left_out(household: Household, dinners: "Iterable[Dinner]", command: str) -> None:
    """Nothing, where no food and no label of the dinners holds what is avoided now. Raises CannotGoOn where one does.

    Avoided is what the one who eats avoids, and those whose portions are told by name.
    """
    avoided_by = {one.name: one.avoid for one in people(household)}
    labels = {one.lot.id: one.lot.label_allergens for one in household.lots()}
    foods = household.tables.food_by_id
    for dinner in dinners:
        names = [portion.who for portion in dinner.portions]
        avoid = tuple(
            dict.fromkeys((*household.settled().avoid, *(one for name in names for one in avoided_by.get(name, ()))))
        )
        taken = [(one.lot, one.food, one.line) for one in dinner.uses]
        taken += [(one.lot, one.food, one.line) for one in dinner.apart]
        for lot, food, line in taken:
            held = allergens_met(foods[food], avoid) if food in foods else []
            held += [one for one in labels.get(lot, ()) if one in avoid and one not in held]
            if held:
                what = f"`{dinner.title}` takes {line}, which holds {', '.join(held)}: that is left out here now"
                raise CannotGoOn([Problem(where="share", what=what, remedy=f"ask `calmlarder {command}` again")])
