"""A dinner as it was cooked: what each person had of it, and what goes into boxes."""

from collections.abc import Mapping
from datetime import date, datetime
from fractions import Fraction
from typing import NamedTuple

from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.intake.dose import Dose
from calmlarder.intake.eaten import EVERYONE, ME, Eaten, Portion, loads_of
from calmlarder.intake.nourished import nourished_of
from calmlarder.larder.box import LEFTOVER_DAYS, Box, with_boxes
from calmlarder.larder.lot import Lot, LotDate
from calmlarder.larder.urgency import COOKED_STATES
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.mixture import Mixture, MixturePart

_POOR_KEEPER_DAYS = 1  # of a dish whose pattern says that it does not keep: common practice, no source


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


class Boxed(NamedTuple):
    """What is left in boxes, or why it must not be kept."""

    lot: Lot | None
    why: str


def box_up(
    dinner: Dinner, weighed: Mapping[str, int], boxes: int, made: date, pattern: Pattern, tables: Tables
) -> Boxed:
    """So many shares of a dinner as one lot of its own composition, in the fridge since `made`.

    `weighed` gives grams of the whole dish by lot id. The lot has no id before it is kept.

    What was warmed from a box is never boxed again, nor what could be neither warmed nor eaten cold later.
    """
    if any(use.how == "box" for use in dinner.uses):
        return Boxed(None, "it was warmed from a box already: eat it now, and bin what is left")
    heated = any(
        tables.food_by_id[use.food].state in COOKED_STATES and pattern.slots[use.slot].method != "raw"
        for use in dinner.uses
    )
    cold = not any(pattern.slots[use.slot].role == "liquid" for use in dinner.uses)
    if heated and not cold:
        return Boxed(None, "something in it was warmed already, and it is no dish to eat cold: bin what is left")
    days, why = _keeps(dinner, pattern, tables)
    parts = tuple(
        MixturePart(food=use.food, grams=grams, most_hundredths=100 * grams + off, weighed=use.how == "weigh")
        for use in dinner.uses
        if (grams := weighed.get(use.lot, use.grams)) > 0
        and (off := dinner.tolerance.off_hundredths(grams, use.how == "weigh")) >= 0
    )
    mixture = Mixture(shares=dinner.people, share_grams=sum(p.grams for p in parts) // dinner.people, parts=parts)
    box = Box(
        title=dinner.title, mixture=mixture, keeps_days=days, keeps_why=why, freezes=pattern.freezes, heated=heated,
        cold=cold,
    )  # fmt: skip
    return Boxed(_lot(box, boxes, made, tables), why)


def _keeps(dinner: Dinner, pattern: Pattern, tables: Tables) -> tuple[int, str]:
    """Days in the fridge and what sets them: the shortest of its parts, of the pattern, and of leftovers at all."""
    limits = [(LEFTOVER_DAYS, "leftovers within two days")]
    limits.append((pattern.keeps_days or _POOR_KEEPER_DAYS, "this dish is best soon"))
    limits += [_part_keeps(use, tables) for use in dinner.uses]
    return min(limits, key=lambda limit: limit[0])


def _part_keeps(use: PlateUse, tables: Tables) -> tuple[int, str]:
    food = tables.food_by_id[use.food]
    row = tables.keeping_of(food, "fridge", "cooked")
    days = row.days if row is not None and row.kind == "safety" else LEFTOVER_DAYS
    if food.state in COOKED_STATES and use.days_left is not None:
        days = max(0, min(days, use.days_left))
    return days, f"{food.name} in it"


def _lot(box: Box, boxes: int, made: date, tables: Tables) -> Lot:
    name = with_boxes(tables, [box]).food_by_id[box.food_id].name
    grams = float(box.mixture.share_grams * boxes)
    why = f"made {made.isoformat()}; keeps {box.keeps_days} days"
    return Lot(
        id="", line=f"{name}, made {made.isoformat()}", food=box.food_id, grams_low=grams, grams=grams,
        grams_high=grams, place="fridge", opened=False, dates=(LotDate(kind="made", on=made),),
        days_left=box.keeps_days,
        days_from=why, safety_days_left=box.keeps_days, safety_from=why, condition=None, to_bin=False, owner=None,
        owner_agrees=False, box=box,
    )  # fmt: skip
