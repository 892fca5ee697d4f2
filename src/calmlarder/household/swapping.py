"""What can stand in for a food: ranked, put through the check, and only then handed on."""

from collections import defaultdict
from collections.abc import Sequence
from decimal import Decimal
from typing import TYPE_CHECKING, NamedTuple

from calmlarder.checks.swap import verify
from calmlarder.household.household import Household
from calmlarder.intake.plate import Serving
from calmlarder.intake.table import Eater, table_profile
from calmlarder.larder.lot import Lot, why_unfit
from calmlarder.patterns.load import shipped_patterns
from calmlarder.render.swap_text import swap_object
from calmlarder.swaps.dish import Dish, dish_of
from calmlarder.swaps.model import MOST_GRAMS, Answer, Asked
from calmlarder.swaps.rank import substitutes
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import DIETS, Allergen

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.request import DinnerRequest


class Swaps(NamedTuple):
    """The substitutes that hold, and what is wrong with those that do not."""

    answer: Answer
    tables: Tables
    faults: tuple[str, ...] = ()


def swaps(household: Household, asked: Asked, dish: Dish | None = None, beside: Sequence[Serving] = ()) -> Swaps:
    """What can stand in for it, in a dish where one is given; `beside` is what lies on the plate besides."""
    tables, folders = household.tables, household.folders
    answer = substitutes(asked, tables, dish, tuple(beside))

    def faults_of(some: Answer) -> tuple[str, ...]:
        request = {
            **asked.profile.plain,
            "sitting": asked.sitting,
            "diet": asked.diet,
            "avoid": asked.avoid,
            "beside": [{"food": one.food.id, "grams": float(one.grams)} for one in beside],
            **asked.sure.model_dump(),
        }
        return verify(swap_object(some), request, folders)

    faults = faults_of(answer)
    if not faults:
        return Swaps(answer, tables)
    alone = [answer.model_copy(update={"substitutes": (one,)}) for one in answer.substitutes]
    held = tuple(one.substitutes[0] for one in alone if not faults_of(one))
    return Swaps(answer.model_copy(update={"substitutes": held}), tables, faults)


def asked_for(asked: Asked, eaters: Sequence[Eater], lots: Sequence[Lot]) -> Asked:
    """The same for those who are named: everybody's limits, diets and allergens; grams are of an equal share."""
    avoid = tuple(dict.fromkeys((*asked.avoid, *(one for eater in eaters for one in eater.avoid))))
    diet = min((asked.diet, *(one.diet for one in eaters)), key=DIETS.index)
    return asked.model_copy(
        update={
            "profile": table_profile(eaters),
            "diet": diet,
            "avoid": avoid,
            "at_home": grams_to_eat(lots, avoid),
            "never": tuple(dict.fromkeys((*asked.never, *(food for eater in eaters for food in eater.never)))),
        }
    )


def swaps_at_home(
    household: Household, food_id: str, request: "DinnerRequest | None" = None, dinner: "Dinner | None" = None
) -> Swaps:
    """What can stand in for a food of the larder, or for what a dinner takes of it in the place it has there."""
    lots = [one.lot for one in household.lots()]
    food, home = household.tables.food_by_id[food_id], household.settled()
    grams, dish = food.portion_g, None
    if dinner is not None:
        own = [use.grams for use in dinner.uses if use.food == food_id]
        grams = min(Decimal(MOST_GRAMS), max(Decimal("0.1"), Decimal(sum(own)) / dinner.people))
        pattern = next((one for one in shipped_patterns() if one.id == dinner.pattern), None)
        dish = dish_of(food, pattern) if pattern is not None else None
    asked = Asked(
        food=food,
        grams=grams,
        profile=request.profile if request else household.profile(),
        sitting=request.sitting if request else "dinner",
        diet=request.diet if request else home.diet,
        avoid=request.avoid if request else home.avoid,
        sure=request.tolerance if request else home.tolerance,
        at_home=grams_to_eat(lots, request.avoid if request else home.avoid),
    )
    return swaps(household, asked, dish)


def grams_to_eat(lots: Sequence[Lot], avoid: Sequence[Allergen]) -> dict[str, float]:
    """Grams of each food in the larder that may be eaten, without lots whose label names what is to be avoided."""
    grams: dict[str, float] = defaultdict(float)
    for lot in lots:
        if why_unfit(lot) is None and not set(lot.label_allergens) & set(avoid):
            grams[lot.food] += lot.grams
    return dict(grams)
