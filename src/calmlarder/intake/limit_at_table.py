"""How much of one food alone fits each of several people, and how much of it in one dish that they share."""

from collections.abc import Sequence
from fractions import Fraction

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.diet_and_allergens import allergens_met, suits_diet
from calmlarder.intake.limit import Limit, limit_of
from calmlarder.intake.table import Eater
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Sitting


class OnesLimit(BaseModel):
    """What fits one person; `not_eaten` says why it is not for them at all, empty where it may be."""

    model_config = ConfigDict(frozen=True)

    who: str
    profile: str
    limit: Limit
    not_eaten: str = ""


class TableLimit(BaseModel):
    """Each person's, and grams of a dish for all in shares by appetite; None where no limit binds below 500 g each.

    `first` is who comes to their limit first. Where somebody does not eat the food the dish is for the others,
    `shared_by` those who do; nobody where it holds an allergen of any.
    """

    model_config = ConfigDict(frozen=True)

    food: Food
    each: tuple[OnesLimit, ...]
    grams_weighed: int | None
    grams_eye: int | None
    first: str | None
    shared_by: tuple[str, ...]


def limits_at_table(
    food: Food, eaters: Sequence[Eater], sitting: Sitting, tables: Tables, sure: Tolerance = USUAL
) -> TableLimit:
    """The largest amounts under everybody's limits. Raises KeyError for a food with unknown figures.

    A share of what was weighed is off by a share of what the scale is off: the dish is a little below what would fit.
    """
    each = tuple(
        OnesLimit(
            who=one.who, profile=one.profile.name, not_eaten=_not_eaten(food, one),
            limit=limit_of(food, one.profile.at(sitting), tables, sure),
        )
        for one in eaters
    )  # fmt: skip
    # An allergen is the whole kitchen's.
    is_barred = any(allergens_met(food, eater.avoid) for eater in eaters)
    those = (
        []
        if is_barred
        else [(mine.limit, eater) for mine, eater in zip(each, eaters, strict=True) if not mine.not_eaten]
    )
    whole = sum((Fraction(str(eater.appetite)) for _, eater in those), Fraction(0))
    shares = [Fraction(str(eater.appetite)) / whole for _, eater in those]
    weighed = [
        (limit.grams_weighed / share, eater.who)
        for (limit, eater), share in zip(those, shares, strict=True)
        if limit.grams_weighed is not None
    ]
    eye = [
        limit.grams_eye / share for (limit, _), share in zip(those, shares, strict=True) if limit.grams_eye is not None
    ]
    return TableLimit(
        food=food,
        each=each,
        grams_weighed=int(min(weighed)[0]) if weighed else None,
        grams_eye=int(min(eye)) if eye else None,
        first=min(weighed)[1] if weighed else None,
        shared_by=tuple(eater.who for _, eater in those),
    )


def _not_eaten(food: Food, eater: Eater) -> str:
    if met := allergens_met(food, eater.avoid):
        return f"holds {', '.join(met)}"
    if not suits_diet(food, eater.diet):
        return f"is not {eater.diet}"
    return "is among what they never eat" if food.id in eater.never else ""
