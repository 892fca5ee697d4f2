"""Recipes that were made to fit and kept: the person's own, proposed when their foods are in the larder."""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import TYPE_CHECKING, NamedTuple

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from calmlarder.household.household import Household
from calmlarder.household.request import Evening
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.eaten import Portion
from calmlarder.larder.lot import Lot, why_unfit
from calmlarder.problems import CannotGoOn, Problem

if TYPE_CHECKING:
    from calmlarder.adapt.model import Adapted
    from calmlarder.household.adapting import Answer

SETTING = "own recipes"
MOST = 200  # kept; a household has some dozens


class OwnFood(BaseModel):
    """Grams of a food in the whole recipe; `grams_high` is the most that its line may mean."""

    model_config = ConfigDict(frozen=True)

    food: str
    grams: float = Field(gt=0)
    grams_high: float
    weighed: bool


class OwnRecipe(BaseModel):
    """A kept recipe: its text as it was changed, and the foods of it that are counted."""

    model_config = ConfigDict(frozen=True)

    title: str
    serves: int = Field(gt=0)
    minutes: int | None
    text: str
    foods: tuple[OwnFood, ...]


class Ready(NamedTuple):
    """A kept recipe whose foods are there: its number from 1, what of the store cupboard to look for, days left.

    `days_left` is of what goes first in it, None where nothing presses.
    """

    number: int
    recipe: OwnRecipe
    look_for: tuple[str, ...]
    days_left: int | None
    goes_first: str


def own_recipes(household: Household) -> tuple[OwnRecipe, ...]:
    """What was kept, oldest first; what can no longer be read is passed over and stays in the store."""
    found = []
    for one in household.setting(SETTING, []) if household.is_kept else []:
        try:
            found.append(OwnRecipe.model_validate(one))
        except ValidationError:
            continue
    return tuple(found)


def keep_recipe(household: Household, answer: "Answer") -> OwnRecipe:
    """Keep a recipe that fits, in the place of one of its title. Raises CannotGoOn for one not known to fit."""
    adapted = answer.adapted
    if not (adapted.holds and adapted.known) or adapted.after is None:
        remedy = "answer its lines that were not counted, or choose another recipe"
        raise CannotGoOn([Problem(where="the recipe", what="is not known to fit, and is not kept", remedy=remedy)])
    kept = OwnRecipe(
        title=answer.recipe.title,
        serves=adapted.after.serves,
        minutes=answer.recipe.minutes,
        text=answer.changed or answer.recipe.source,
        foods=_foods(adapted),
    )
    others = [one for one in own_recipes(household) if one.title != kept.title]
    if len(others) >= MOST:
        remedy = "forget one with `calmlarder adapt --forget N`"
        raise CannotGoOn([Problem(where="the recipes", what=f"are {MOST} already", remedy=remedy)])
    _put(household, [*others, kept], f"keep the recipe {kept.title}")
    return kept


def forget_recipe(household: Household, number: int) -> OwnRecipe:
    """Take a kept recipe out. Raises CannotGoOn for a number that is none."""
    recipe = recipe_numbered(household, number)
    _put(household, [one for one in own_recipes(household) if one != recipe], f"forget the recipe {recipe.title}")
    return recipe


def recipe_numbered(household: Household, number: int) -> OwnRecipe:
    """A kept recipe by its number. Raises CannotGoOn for one that is none."""
    kept = own_recipes(household)
    if not 1 <= number <= len(kept):
        what = f"there is no kept recipe {number}"
        raise CannotGoOn([Problem(where="adapt", what=what, remedy="`calmlarder adapt --kept` shows them")])
    return kept[number - 1]


def readable(recipe: OwnRecipe) -> str:
    """A kept recipe in words: one that came from a page was kept as data."""
    from calmlarder.cookbook.read import read_recipe
    from calmlarder.cookbook.write import rewritten

    read = read_recipe(recipe.text)
    return recipe.text if read.form != "jsonld" else rewritten(read, {}, recipe.serves, "text")


def ready_recipes(household: Household, evening: Evening) -> tuple[Ready, ...]:
    """The kept recipes whose foods are there for tonight and that fit beside what was eaten, what goes first on top.

    Each is put through the check of a plate; staples that are not typed into the larder are named.
    """
    found = (ready_recipe(household, evening, one) for one in numbered_recipes(household))
    return first_to_go(one for one in found if one is not None)


def numbered_recipes(household: Household) -> tuple[tuple[int, OwnRecipe], ...]:
    """What was kept, each with its number from 1."""
    return tuple(enumerate(own_recipes(household), start=1))


def first_to_go(ready: Iterable[Ready]) -> tuple[Ready, ...]:
    """What has to be eaten first on top, then as they were kept."""
    return tuple(sorted(ready, key=lambda one: (one.days_left is None, one.days_left or 0, one.number)))


def ready_recipe(household: Household, evening: Evening, numbered: tuple[int, OwnRecipe]) -> Ready | None:
    """One kept recipe, where its foods are there and it fits; else None."""
    number, recipe = numbered

    from calmlarder.household.swapping import grams_to_eat

    there = grams_to_eat(evening.lots, evening.request.avoid)
    request, known = evening.request, household.plain_tables.food_by_id
    if request.minutes is not None and recipe.minutes is not None and recipe.minutes > request.minutes:
        return None
    look_for, portions = [], []
    for one in recipe.foods:
        food = known.get(one.food)
        if food is None or not suits_diet(food, request.diet) or allergens_met(food, request.avoid):
            return None
        if food.id in request.without:
            return None
        share = request.people / recipe.serves
        if there.get(one.food, 0.0) < one.grams * share:
            if not (food.is_staple or food.kind in {"spice", "oil"}):
                return None
            look_for.append(food.name)
        portions.append(Portion(food, one.grams * share, one.grams_high * share, one.weighed))

    from calmlarder.household.plate import PlateAsked, plate_of

    asked = PlateAsked(
        (),
        request.sitting,
        request.people,
        request.tolerance,
        False,
        request.profile.name,
        request.stacking,
        False,
        request.table,
    )
    plate = plate_of(household, asked, portions)
    if plate.faults or not plate.answer.judged.fits:
        return None
    days, name = _first(recipe, evening.lots, household)
    return Ready(number, recipe, tuple(dict.fromkeys(look_for)), days, name)


def _first(recipe: OwnRecipe, lots: Sequence[Lot], household: Household) -> tuple[int | None, str]:
    foods = {one.food for one in recipe.foods}
    pressing = [lot for lot in lots if lot.food in foods and lot.days_left is not None and why_unfit(lot) is None]
    first = min(pressing, key=lambda lot: (lot.days_left or 0, lot.id), default=None)
    return (None, "") if first is None else (first.days_left, household.name_of(first.food))


def _foods(adapted: "Adapted") -> tuple[OwnFood, ...]:
    from calmlarder.adapt.nutrition import amounts_after

    summed: dict[str, list[OwnFood]] = {}
    for one in amounts_after(adapted):
        own = OwnFood(food=one.food, grams=float(one.grams), grams_high=float(one.high), weighed=one.weighed)
        summed.setdefault(one.food, []).append(own)
    return tuple(
        OwnFood(
            food=food,
            grams=float(sum(Decimal(str(one.grams)) for one in same)),
            grams_high=float(sum(Decimal(str(one.grams_high)) for one in same)),
            weighed=all(one.weighed for one in same),
        )
        for food, same in summed.items()
    )


def _put(household: Household, recipes: Sequence[OwnRecipe], words: str) -> None:
    household.store.set({SETTING: [one.model_dump(mode="json") for one in recipes]}, words)
