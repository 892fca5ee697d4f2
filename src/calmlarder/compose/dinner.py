"""A dinner as it is told: amounts, loads against limits, what was rescued."""

import re
from collections.abc import Mapping
from decimal import Decimal
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, model_validator

from calmlarder.compose.portions import Apart, Served, plates_of
from calmlarder.compose.problem import MAIN_ROLES
from calmlarder.compose.provenance import not_measured, upper_ends
from calmlarder.compose.request import Liked
from calmlarder.compose.solve import Plan, Use
from calmlarder.compose.taste import says_garlic
from calmlarder.compose.weights import URGENT_DAYS
from calmlarder.intake.amounts import USUAL, Tolerance
from calmlarder.intake.load import load_under
from calmlarder.intake.plate import Item, Row, exact_grams, in_grams, rows_of
from calmlarder.kitchen.filling import Filling, made_ready, mashes
from calmlarder.kitchen.timeline import Timeline, told_twice
from calmlarder.kitchen.title import title_of
from calmlarder.kitchen.wording import OIL_GRAMS, OIL_TEASPOONS, granted_fats
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern, Slot
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.household import in_household_measure
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Group, Sitting

_NEAR = Decimal("0.9")  # of its own cut-off: from there on a food is named; ours, no source

# Thawed in the fridge overnight or in the microwave: Food Standards Agency, "How to chill, freeze and defrost".
_SMALL = re.compile(r"\b(?:baby|babies|new|mini|small|tiny|fingerling)\b", re.IGNORECASE)
_THAWED_KINDS = frozenset({"fish", "shellfish", "poultry", "meat", "tofu", "tempeh", "seitan"})
_COMMON_PRACTICE = "common_practice"
_OIL_KCAL = 9 * OIL_GRAMS  # fat has 9 kcal/g (Atwater)


class _Told(BaseModel):
    model_config = ConfigDict(frozen=True)


class PlateUse(_Told):
    """One lot in the dish, by its id and its words; `grams` is of the whole dish.

    `whole` says that a pack of known weight is used up, so that nobody need weigh it.
    """

    lot: str
    line: str
    food: str
    name: str
    slot: str
    grams: int
    how: Literal["weigh", "eye", "staple", "box"]
    days_left: int | None
    household: str | None
    whole: bool = False


class FoodNear(_Told):
    """A food that comes near its own cut-off: g of a group that are likely, and the limit."""

    food: str
    group: Group
    g: float
    limit_g: float


class PerPerson(_Told):
    """What one person gets, in g. Loads by the limit of the sitting (`group`, or `group:classes`): likely, at most.

    `limits_g` holds the limit of each, for what is likely and for what may come at most; `foods_near` what comes
    within a tenth of its own cut-off.
    """

    protein_g: float
    lysine_mg: float
    energy_kcal: float
    fibre_g: float
    loads_g: dict[str, float]
    at_most_g: dict[str, float]
    limits_g: dict[str, tuple[float, float | None]]
    foods_near: tuple[FoodNear, ...] = ()

    @model_validator(mode="before")
    @classmethod
    def _of_before(cls, kept: Any) -> Any:
        """A dinner that was proposed before: its worst case is what may come at most."""
        if not isinstance(kept, dict) or "worst_g" not in kept:
            return kept
        new = {name: value for name, value in kept.items() if name not in {"worst_g", "caps_g"}}
        limits = {key: (grams, grams) for key, grams in kept["caps_g"].items()}
        return {**new, "at_most_g": kept["worst_g"], "limits_g": limits}


class Rescued(_Told):
    """Urgent food used: portions of one person, grams, and the ids and lines of lots used up."""

    portions: float
    grams: int
    finished_ids: tuple[str, ...]
    lots_finished: tuple[str, ...]


class MoreProtein(_Told):
    """Grams of one food, of the whole dish, that would bring the protein that is aimed at; where it comes from."""

    food: str
    name: str
    grams: int
    household: str | None
    weighed: bool
    where: Literal["larder", "shop"]


class Contribution(_Told):
    """What one food brings to the loads of one person, in g as planned, and where its figures come from."""

    food: str
    name: str
    loads_g: dict[str, float]
    not_measured: tuple[str, ...]
    upper_ends: tuple[str, ...] = ()


class Dinner(_Told):
    """A dinner for `people`, ready to be shown; `tolerance` is how far off its amounts may be.

    `protein_target_g` is what was aimed at for one person, `more_protein` what would bring it there where it is
    missed. Of protein and energy there is at least so much where a figure is unknown (`unknown_...` name the foods).
    """

    title: str
    pattern: str
    family: str
    people: int
    proven: bool
    minutes: int
    timeline: Timeline
    uses: tuple[PlateUse, ...]
    per_person: PerPerson
    rescued: Rescued
    weigh_first: tuple[str, ...]
    steps: tuple[str, ...]
    cautions: tuple[str, ...]
    contributions: tuple[Contribution, ...]
    unknown_nutrients: tuple[str, ...]
    taken_for_granted: tuple[str, ...] = ()
    tolerance: Tolerance = USUAL
    sitting: Sitting = "dinner"
    protein_target_g: float = 0.0
    more_protein: tuple[MoreProtein, ...] = ()
    unknown_energy: tuple[str, ...] = ()
    portions: tuple[Served, ...] = ()  # where those who eat are named
    apart: tuple[Apart, ...] = ()  # what only some of them get

    @property
    def protein_short_g(self) -> float:
        """Protein that each person's plate lacks of what was aimed at, as far as figures are known."""
        return max(0.0, round(self.protein_target_g - self.per_person.protein_g, 1))

    @property
    def at_least(self) -> tuple[str, ...]:
        """What there may be more of, as a figure is unknown."""
        lacks = (("protein_g", self.unknown_nutrients), ("energy_kcal", self.unknown_energy))
        return tuple(name for name, foods in lacks if foods)


def dinner_of(plan: Plan, proven: bool, tables: Tables) -> Dinner:
    """A plan in the words and numbers of a cook."""
    people = plan.problem.wanted.people
    pattern = plan.problem.pattern
    uses = tuple(_use(use, tables) for use in plan.uses)
    fillings = [
        _filling(use, one.option.offered.lot, pattern, tables) for use, one in zip(uses, plan.uses, strict=True)
    ]
    steps, timeline = told_twice(pattern, fillings, plan.problem.wanted.equipment, people)
    granted = granted_fats(pattern, fillings)
    return Dinner(
        title=title_of(pattern, fillings, people),
        pattern=pattern.id,
        family=plan.family,
        people=people,
        proven=proven,
        minutes=timeline.minutes,
        timeline=timeline,
        uses=uses,
        per_person=_per_person(plan, _OIL_KCAL * len(granted)),
        rescued=_rescued(plan),
        weigh_first=weigh_list(uses),
        taken_for_granted=(f"{OIL_TEASPOONS * people * len(granted)} tsp oil",) if granted else (),
        steps=steps,
        cautions=_cautions(plan, tables),
        contributions=tuple(_contribution(use, plan, tables) for use in plan.uses),
        unknown_nutrients=_unknown(plan, "protein_g"),
        unknown_energy=_unknown(plan, "energy_kcal"),
        tolerance=plan.problem.wanted.tolerance,
        sitting=plan.problem.wanted.sitting,
        protein_target_g=plan.problem.wanted.protein_g,
        portions=tuple(plate.served(share, plan.problem.wanted.sitting) for plate, share in plates_of(plan)),
    )


def _unknown(plan: Plan, figure: Literal["protein_g", "energy_kcal"]) -> tuple[str, ...]:
    foods = (use.option.offered.food for use in plan.uses)
    return tuple(dict.fromkeys(food.name for food in foods if getattr(food, figure) is None))


def liked(dinner: Dinner, slots: Mapping[str, Slot]) -> Liked:
    """A dinner to have more of; `slots` are those of its pattern."""
    mains = dict.fromkeys(use.food for use in dinner.uses if slots[use.slot].role in MAIN_ROLES)
    return Liked(pattern=dinner.pattern, family=dinner.family, mains=tuple(mains))


def weigh_list(uses: tuple[PlateUse, ...]) -> tuple[str, ...]:
    """A line for each food; where several lots of it are weighed, how much of which."""
    weighed: dict[str, list[PlateUse]] = {}
    for use in uses:
        if use.how == "weigh" and not use.whole:
            weighed.setdefault(use.food, []).append(use)
    lines = []
    for lots in weighed.values():
        parts = "; ".join(f"{use.grams} g of `{use.line}`" for use in lots)
        whole = f"{sum(use.grams for use in lots)} g {lots[0].name}"
        lines.append(f"{whole} ({parts})" if len(lots) > 1 else whole)
    return tuple(lines)


def _filling(use: PlateUse, lot: Lot, pattern: Pattern, tables: Tables) -> Filling:
    food, slot = tables.food_by_id[use.food], pattern.slots[use.slot]
    return Filling(
        slot=use.slot,
        food=food,
        grams=use.grams,
        how=use.how,
        household=use.household,
        prep=made_ready(slot.prep_of(food), lot.line, lot.condition, mashes(pattern, use.slot), _thaws(lot, food)),
        minutes=slot.minutes_for(food),
        done=tables.done_sign(food),
        whole=use.whole,
    )


def _use(use: Use, tables: Tables) -> PlateUse:
    food, lot = use.option.offered.food, use.option.offered.lot
    how: Literal["weigh", "eye", "staple", "box"] = "weigh" if use.weighed else "staple" if food.is_staple else "eye"
    if use.option.boxed:
        how = "box"
    return PlateUse(
        lot=lot.id,
        line=lot.line,
        food=food.id,
        name=food.name,
        slot=use.option.slot,
        grams=use.grams,
        how=how,
        days_left=lot.days_left,
        whole=use.grams + use.option.unit > lot.grams and lot.grams_low == lot.grams_high,
        household=_household(food, lot, use.grams, tables) if how != "weigh" else None,
    )


def _thaws(lot: Lot, food: Food) -> bool:
    """Whether a thing from the freezer is thawed first; what is sold frozen is cooked from frozen."""
    return lot.place == "freezer" and food.kind in _THAWED_KINDS and food.state != "frozen"


def _household(food: Food, lot: Lot, grams: int, tables: Tables) -> str | None:
    """Grams in a cook's measure; small potatoes and carrots are not counted by the usual piece."""
    if food.kind in {"potato", "root"} and _SMALL.search(lot.line):
        return None
    return in_household_measure(food, grams, tables, "nearest")


def _per_person(plan: Plan, granted_kcal: int) -> PerPerson:
    people = plan.problem.wanted.people

    def nutrient(name: str) -> float:
        total = sum((getattr(use.option.offered.food, name) or Decimal(0)) * use.grams for use in plan.uses)
        return round(float(total) / 100 / people, 1)

    rows = list(rows_of(items_of(plan), plan.problem.wanted.limits))
    sitting = [row for row in rows if row.food is None]
    return PerPerson(
        protein_g=nutrient("protein_g"),
        lysine_mg=round(nutrient("lysine_mg")),
        energy_kcal=round(nutrient("energy_kcal")) + granted_kcal,
        fibre_g=nutrient("fibre_g"),
        loads_g={row.cap.key: in_grams(row.sum.likely, people) for row in sitting},
        at_most_g={row.cap.key: in_grams(row.sum.at_most, people) for row in sitting},
        limits_g={row.cap.key: limit_grams(row.cap) for row in sitting},
        foods_near=tuple(near for row in rows if row.food and (near := _near(row, row.food, people)) is not None),
    )


def items_of(plan: Plan) -> list[Item]:
    """The lots of a plan as they count under the limits."""
    sure = plan.problem.wanted.tolerance
    return [
        Item(use.option.offered.food.id, use.option.offered.brings, use.grams, use.weighed, sure) for use in plan.uses
    ]


def limit_grams(cap: Cap) -> tuple[float, float | None]:
    """A limit as it is told: for what is likely, and for what may come at most."""
    return float(cap.typical_g), None if cap.at_most_g is None else float(cap.at_most_g)


def _near(row: Row, food: str, people: int) -> FoodNear | None:
    if exact_grams(row.sum.likely) < _NEAR * row.cap.typical_g * people:
        return None
    grams = in_grams(row.sum.likely, people)
    return FoodNear(food=food, group=row.cap.group, g=grams, limit_g=float(row.cap.typical_g))


def _rescued(plan: Plan) -> Rescued:
    urgent = [
        use
        for use in plan.uses
        if use.option.offered.lot.days_left is not None and use.option.offered.lot.days_left <= URGENT_DAYS
    ]
    lots = [use.option.offered.lot for use in urgent if use.grams + use.option.unit > use.option.offered.lot.grams]
    portions = sum(use.grams / float(use.option.offered.food.portion_g) for use in urgent)
    return Rescued(
        portions=round(portions, 2),
        grams=sum(use.grams for use in urgent),
        finished_ids=tuple(lot.id for lot in lots),
        lots_finished=tuple(lot.line for lot in lots),
    )


def _contribution(use: Use, plan: Plan, tables: Tables) -> Contribution:
    people = plan.problem.wanted.people
    food: Food = use.option.offered.food
    sure = plan.problem.wanted.tolerance
    loads = {
        cap.key: in_grams(load_under(use.option.offered.brings, cap, sure).load(use.grams), people)
        for cap in plan.problem.sitting_caps
    }
    rows = tables.fermentables_of(food.id)
    return Contribution(
        food=food.id,
        name=food.name,
        loads_g={key: load for key, load in loads.items() if load},
        not_measured=not_measured(rows, use.grams / people),
        upper_ends=upper_ends(rows, use.grams / people),
    )


def _cautions(plan: Plan, tables: Tables) -> tuple[str, ...]:
    """What to mind with the dish and its foods, each once, and behind it who says so."""
    cautions = list(plan.problem.pattern.cautions)
    said_by: list[str] = []
    for use in plan.uses:
        food, lot = use.option.offered.food, use.option.offered.lot
        rows = tables.cautions_of(food)
        cautions += [f"{row.caution}." for row in rows if row.caution]
        said_by += [row.source for row in rows if row.source != _COMMON_PRACTICE]
        cautions += _lot_cautions(lot, food)
    if said_by:
        names = dict.fromkeys(tables.authority(source) for source in said_by)
        cautions.append(f"Food safety as advised by: {'; '.join(names)}.")
    return tuple(dict.fromkeys(cautions))


def _lot_cautions(lot: Lot, food: Food) -> list[str]:
    cautions = []
    if lot.days_left is not None and lot.days_left < 0:
        cautions.append(f"{food.name.capitalize()}, past its best ({lot.days_from}): look, smell, and bin it in doubt.")
    elif lot.condition:
        cautions.append(f"{food.name.capitalize()} ({lot.condition}): cut away what is bad, and bin it in doubt.")
    if _thaws(lot, food):
        cautions.append(
            f"{food.name.capitalize()}: thaw before you start, in the fridge, or the microwave if in haste."
        )
    if says_garlic(food):
        cautions.append(f"{food.name.capitalize()}: what it holds of garlic or onion is no more known than its label.")
    if lot.owner:
        cautions.append(f"{food.name.capitalize()} from {lot.owner}: say that you used it.")
    return cautions
