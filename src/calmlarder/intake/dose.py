"""A weighed dose of one group in a meal: what the rest of its food brings, with the group exempt exactly by the dose.

The dose is all that so many grams of the food hold of the group, so the group is left out of that food's figures, in
the sums that it is a part of, too. Everything else in the food counts.
"""

from collections.abc import Mapping
from datetime import datetime
from decimal import Decimal
from fractions import Fraction

from pydantic import BaseModel, ConfigDict

from calmlarder.intake.amounts import PER_MG, Tolerance
from calmlarder.intake.eaten import Eaten, Load
from calmlarder.intake.groups import food_figures
from calmlarder.intake.load import LoadProfile, PartLoad, load_of_group
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Fermentable
from calmlarder.tables.vocabulary import ALL_GROUPS, Allergen, Component, Group

CHALLENGE = "challenge"  # the text of an entry that stands for what else a dose's food brings


class Dose(BaseModel):
    """Grams of a food that hold `dose_g` of a group, for one person; in the dish itself, or beside it.

    Whole from 10 g on, tenths below; of a dose in the dish always whole. `avoided` are allergens in it that somebody
    else at the table avoids.
    """

    model_config = ConfigDict(frozen=True)

    who: str
    challenge: str
    group: Group
    food: str
    name: str
    grams: float
    dose_g: float
    in_dish: bool = False
    avoided: tuple[Allergen, ...] = ()


def rest_of(food: str, group: Group, tables: Tables) -> LoadProfile:
    """What a food brings without a group. Raises KeyError when a figure is unknown."""
    rows = _without(tables.fermentables_of(food), group)
    return LoadProfile((PartLoad(food, tables.food_by_id[food].cutoff_class, 1, food_figures(rows)),))


def rest_entry(dose: Dose, at: datetime, tables: Tables, sure: Tolerance) -> Eaten:
    """The same as something eaten at a moment: it takes its room, and the dose takes none."""
    profile, grams = rest_of(dose.food, dose.group, tables), Fraction(str(dose.grams))
    cutoff, loads = tables.food_by_id[dose.food].cutoff_class, list[Load]()
    for group in ALL_GROUPS:
        use = load_of_group(profile, group, sure)
        likely, off = _ug(use.load(grams)), _ug(use.deviation(grams, True, sure))
        if likely or off:
            loads.append(
                Load(item=dose.food, food=dose.food, cutoff_class=cutoff, group=group, likely_ug=likely, off_ug=off)
            )
    title = f"{dose.grams:g} g {dose.name}, the challenge"
    return Eaten(
        at=at, who=dose.who, text=CHALLENGE, food=dose.food, title=title, grams=float(dose.grams), loads=tuple(loads)
    )


def _ug(load: int | Fraction) -> int:
    return -int(-load * 1000 // PER_MG)


def _without(rows: Mapping[Component, Fermentable], group: Group) -> dict[Component, Fermentable]:
    found = dict(rows)
    if group == "excess_fructose":
        least = min(rows["fructose"].g_per_100g, rows["glucose"].g_per_100g)
        found["fructose"] = rows["fructose"].model_copy(
            update={"g_per_100g": least, "high": rows["glucose"].g_per_100g}
        )
    else:
        nothing = {"g_per_100g": Decimal(0), "high": None}
        found[group] = rows[group].model_copy(update=nothing)  # type: ignore[index]
    return found
