"""A dinner as it was cooked: what each person had of it, by share, by weight and by dose."""

from collections.abc import Mapping
from datetime import datetime
from fractions import Fraction

from calmlarder.compose.dinner import Dinner
from calmlarder.intake.dose import Dose
from calmlarder.intake.eaten import EVERYONE, ME, Eaten, Portion, loads_of
from calmlarder.intake.nourished import nourished_of
from calmlarder.tables.book import Tables


def share_eaten(
    dinner: Dinner, weighed: Mapping[str, int], at: datetime, tables: Tables, eaters: int | None = None
) -> Eaten:
    """One person's equal share, with the amounts the scale showed where it was asked.

    `weighed` gives grams of the whole dish by lot id; `eaters` is how many ate now (default: all it serves). What
    one person alone ate is mine; a shared dish counts for everyone.
    """
    portions = []
    for use in dinner.uses:
        each = weighed.get(use.lot, use.grams) / dinner.people
        portions.append(Portion(tables.food_by_id[use.food], each, each, use.how == "weigh", dinner.people))
    loads, unknown = loads_of(portions, tables, dinner.tolerance)
    return Eaten(
        at=at,
        who=ME if (eaters or dinner.people) == 1 else EVERYONE,
        text=dinner.title,
        food="",
        title=dinner.title,
        grams=round(sum(portion.grams for portion in portions), 1),
        loads=loads,
        unknown=unknown,
        sitting=dinner.sitting,
        pattern="" if any(use.how == "box" for use in dinner.uses) else dinner.pattern,
        mains=_mains(dinner, tables),
        nourished=nourished_of((portion.food, portion.grams) for portion in portions),
    )


def shares_eaten(dinner: Dinner, weighed: Mapping[str, int], at: datetime, tables: Tables) -> tuple[Eaten, ...]:
    """What each person at the table had, by name and share, what was served apart with it; guests keep no log."""
    alike = share_eaten(dinner, weighed, at, tables)
    found = []
    for one in dinner.portions:
        if one.is_guest:
            continue
        own = Fraction(str(one.appetite)) / sum(Fraction(str(other.appetite)) for other in dinner.portions)
        portions = [
            _portion(tables, use.food, weighed.get(use.lot, use.grams), use.how == "weigh", own) for use in dinner.uses
        ]
        for part in dinner.apart:
            if one.who in part.whose:
                those = [other for other in dinner.portions if other.who in part.whose]
                part_of = Fraction(str(one.appetite)) / sum(Fraction(str(other.appetite)) for other in those)
                portions.append(_portion(tables, part.food, part.grams, part.how == "weigh", part_of))
        loads, unknown = loads_of(portions, tables, dinner.tolerance)
        grams = round(sum(portion.grams for portion in portions), 1)
        found.append(alike.model_copy(update={"who": one.who, "loads": loads, "unknown": unknown, "grams": grams}))
    return tuple(found)


def dose_eaten(dose: Dose, at: datetime, tables: Tables) -> Eaten:
    """The dose of a challenge that was eaten beside a dish, with all that it brings."""
    food, grams = tables.food_by_id[dose.food], dose.grams
    loads, unknown = loads_of([Portion(food, grams, grams, True)], tables)
    title = f"{dose.grams:g} g {dose.name}, the challenge"
    return Eaten(
        at=at, who=dose.who, text=title, food=dose.food, title=title, grams=grams, loads=loads, unknown=unknown
    )


def _portion(tables: Tables, food: str, grams: int, is_weighed: bool, share: Fraction) -> Portion:
    each = float(grams * share)
    return Portion(tables.food_by_id[food], each, each, is_weighed, 1 / share)


def _mains(dinner: Dinner, tables: Tables) -> tuple[str, ...]:
    """Protein and base foods; of a boxed dish those in the box."""
    foods: list[str] = []
    for use in dinner.uses:
        mixture = tables.mixtures.get(use.food) if use.how == "box" else None
        foods += [use.food] if mixture is None else [part.food for part in mixture.parts]
    return tuple(
        dict.fromkeys(food for food in foods if {"protein", "base"}.intersection(tables.food_by_id[food].roles))
    )
