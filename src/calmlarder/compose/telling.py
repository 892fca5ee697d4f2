"""From a plan to a dinner in the words and numbers of a cook."""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from decimal import Decimal
from typing import Literal

from calmlarder.compose.called import as_called
from calmlarder.compose.dinner import (
    Contribution,
    Dinner,
    FoodNear,
    PerPerson,
    PlateUse,
    Rescued,
    weigh_list,
)
from calmlarder.compose.garlic_named import says_garlic
from calmlarder.compose.portions import plates_of
from calmlarder.compose.provenance import not_measured, upper_ends
from calmlarder.compose.solve import Plan, Use
from calmlarder.compose.weights import URGENT_DAYS
from calmlarder.intake.load import load_under
from calmlarder.intake.plate import Item, Row, exact_grams, in_grams, rows_of
from calmlarder.kitchen.filling import Filling, Told, is_salted, is_small, made_ready, mashes, sprouts
from calmlarder.kitchen.minutes import minutes_of
from calmlarder.kitchen.timeline import told_twice
from calmlarder.kitchen.title import title_of
from calmlarder.kitchen.wording import OIL_GRAMS, OIL_TEASPOONS, granted_fats
from calmlarder.larder.lot import Lot
from calmlarder.larder.trimmed import MOULDY_CORNER, TRIM
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.household import in_household_measure, in_packs
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import COOKED_STATES

_IN_DOUBT = "if in doubt, throw it away"
_NEAR = Decimal("0.9")  # of its own cut-off: from there on a food is named; ours, no source

# Thawed in the fridge overnight or in the microwave: Food Standards Agency, "How to chill, freeze and defrost".
_THAWED_KINDS = frozenset({"fish", "shellfish", "poultry", "meat", "tofu", "tempeh", "seitan"})
_COMMON_PRACTICE = "common_practice"
# Chilled within one to two hours and eaten within two days: Food Standards Agency, chilling and leftovers.
_ADVICE = "fsa_uk"
_SPOILS_RAW = frozenset({"fish", "shellfish", "poultry", "meat"})
_KEEPS_COOKED = frozenset({"tofu", "tempeh", "seitan"})  # on their last day, too
_WORTH_COOKING_G = 15
_NO_REST_G = 5
_GRAMS = re.compile(r"(?<![\d.,/])(\d+(?:\.\d+)?) ?(?:g|gr|gm|gms|grams?)\b", re.IGNORECASE)
_OF_A_PACK = re.compile(r"\b(?:block|tin)s?\b")
_OIL_KCAL = 9 * OIL_GRAMS  # fat has 9 kcal/g (Atwater)


def dinner_of(plan: Plan, proven: bool, tables: Tables) -> Dinner:
    """A plan in the words and numbers of a cook."""
    people = plan.problem.wanted.people
    pattern = plan.problem.pattern
    foods = as_called(plan.uses, tables)
    uses = tuple(_use(use, foods, tables) for use in plan.uses)
    fillings = [
        _filling(use, one.option.offered.lot, pattern, tables, foods[use.food])
        for use, one in zip(uses, plan.uses, strict=True)
    ]
    fillings = _with_minutes(fillings, plan)
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
        cautions=_cautions(plan, foods, tables),
        contributions=tuple(_contribution(use, plan, foods, tables) for use in plan.uses),
        unknown_nutrients=_unknown(plan, "protein_g", tables),
        unknown_energy=_unknown(plan, "energy_kcal", tables),
        tolerance=plan.problem.wanted.tolerance,
        sitting=plan.problem.wanted.sitting,
        protein_target_g=plan.problem.wanted.protein_g,
        doses=plan.problem.wanted.doses,
        portions=tuple(plate.served(share, plan.problem.wanted.sitting) for plate, share in plates_of(plan)),
    )


def _unknown(plan: Plan, figure: Literal["protein_g", "energy_kcal"], tables: Tables) -> tuple[str, ...]:
    """Names of foods without the figure, those in boxed dishes among them."""
    foods: list[Food] = []
    for offered in (use.option.offered for use in plan.uses):
        box = offered.lot.box
        foods += [offered.food] if box is None else [tables.food_by_id[part.food] for part in box.mixture.parts]
    return tuple(dict.fromkeys(food.name for food in foods if getattr(food, figure) is None))


def _filling(use: PlateUse, lot: Lot, pattern: Pattern, tables: Tables, food: Food) -> Filling:
    slot = pattern.slots[use.slot]
    return Filling(
        slot=use.slot,
        food=food,
        grams=use.grams,
        how=use.how,
        household=use.household,
        prep=made_ready(
            slot.prep_of(food), food, Told(lot.line, lot.condition, _thaws(lot, food)), mashes(pattern, use.slot)
        ),
        minutes=slot.minutes_for(food),
        done=tables.done_sign(food),
        whole=use.whole,
        salted=is_salted(lot.line),
    )


def _with_minutes(fillings: Sequence[Filling], plan: Plan) -> list[Filling]:
    """Each with its minutes, after its line and all that there is of it in its slot."""
    there: Counter[str] = Counter()
    for one in fillings:
        there[one.key] += one.grams
    return [
        one._replace(
            minutes=minutes_of(
                plan.problem.pattern.slots[one.slot], one.food, use.option.offered.lot.line, there[one.key]
            )
        )
        for one, use in zip(fillings, plan.uses, strict=True)
    ]


def _use(use: Use, foods: Mapping[str, Food], tables: Tables) -> PlateUse:
    food, lot = foods[use.option.offered.food.id], use.option.offered.lot
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
    if is_small(food, lot.line):
        return None
    said = in_household_measure(food, grams, tables, "nearest")
    pack = _typed_pack(lot) if said is not None and _OF_A_PACK.search(said) else None
    return said if pack is None else in_packs(grams, pack)


def _typed_pack(lot: Lot) -> float | None:
    """Grams of one pack where the line says them (`tofu 2 x 200g`): they rule what a pack usually weighs."""
    weights = _GRAMS.findall(lot.line)
    if len(weights) != 1 or lot.grams_low != lot.grams_high:
        return None
    pack = float(weights[0])
    packs = lot.grams / pack if pack else 0.0
    return pack if 1 <= packs == round(packs) else None


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
    lots = [use.option.offered.lot for use in urgent if _uses_up(use)]
    in_time = [use for use in urgent if (use.option.offered.lot.days_left or 0) >= 0]  # not what is past its best
    portions = sum(use.grams / float(use.option.offered.food.portion_g) for use in in_time)
    return Rescued(
        portions=round(portions, 2),
        grams=sum(use.grams for use in in_time),
        finished_ids=tuple(lot.id for lot in lots),
        lots_finished=tuple(lot.line for lot in lots),
    )


def _uses_up(use: Use) -> bool:
    """Whether nothing worth keeping is left; of an amount that is guessed (a bunch, half of one) nobody can tell."""
    lot = use.option.offered.lot
    return lot.grams_low == lot.grams_high and lot.grams - use.grams < min(_NO_REST_G, use.option.unit)


def _contribution(use: Use, plan: Plan, foods: Mapping[str, Food], tables: Tables) -> Contribution:
    people = plan.problem.wanted.people
    food = foods[use.option.offered.food.id]
    sure = plan.problem.wanted.tolerance
    loads = {
        cap.key: in_grams(load_under(use.option.offered.brings, cap, sure).load(use.grams), people)
        for cap in plan.problem.limits.sitting_caps
    }
    rows = tables.fermentables_of(food.id)
    return Contribution(
        food=food.id,
        name=food.name,
        loads_g={key: load for key, load in loads.items() if load},
        not_measured=not_measured(rows, use.grams / people),
        upper_ends=upper_ends(rows, use.grams / people),
    )


def _cautions(plan: Plan, foods: Mapping[str, Food], tables: Tables) -> tuple[str, ...]:
    """What to mind with the dish and its foods, each once, and behind it who says so."""
    cautions = list(plan.problem.pattern.cautions)
    said_by: list[str] = []
    for use in plan.uses:
        food, lot = foods[use.option.offered.food.id], use.option.offered.lot
        rows = tables.cautions_of(food)
        cautions += [f"{row.caution}." for row in rows if row.caution]
        said_by += [row.source for row in rows if row.source != _COMMON_PRACTICE]
        cautions += _lot_cautions(lot, food, says_garlic(use.option.offered.food))
        rest = _rest_of(use, food, plan)
        if rest:
            cautions.append(rest)
            said_by.append(_ADVICE)
    if said_by:
        names = dict.fromkeys(tables.authority(source) for source in said_by)
        cautions.append(f"Food safety as advised by: {'; '.join(names)}.")
    return tuple(dict.fromkeys(cautions))


# Fridge and microwave as the UK Food Standards Agency advises, cold water as the US Department of Agriculture does
# (a pound an hour or less): both recalled. Minutes in the microwave: common practice, no source.
_THAWING = (
    "overnight in the fridge, in a sealed bag in cold water (an hour for 500 g), or on the microwave's thawing setting "
    "(about 8 minutes for 500 g), and cook it at once"
)


def _rest_of(use: Use, food: Food, plan: Plan) -> str:
    """What to do today with the rest of raw fish or meat in its last days, of tofu on its last.

    At a table of several it may go apart.
    """
    lot, main = use.option.offered.lot, plan.problem.pattern.slots[use.option.slot].role == "protein"
    rest = int(lot.grams) - use.grams
    last = lot.days_left in {0, 1} and not lot.days_estimated and lot.place == "fridge"
    spoils = food.kind in _SPOILS_RAW and food.state == "raw"
    spoils |= food.kind in _KEEPS_COOKED and lot.days_left == 0
    if plan.problem.wanted.table or not (main and last and spoils):
        return ""
    if rest < _WORTH_COOKING_G:
        return ""
    day = "today is its last day" if lot.days_left == 0 else "tomorrow is its last day"
    return (
        f"{food.name.capitalize()}: {rest} g is left, and {day}: cook it with the rest today, chill it within two "
        "hours, and eat it within two days."
    )


def _lot_cautions(lot: Lot, food: Food, garlic: bool) -> list[str]:
    cautions = []
    if lot.days_left is not None and lot.days_left < 0:
        look = "cook white and yolk firm" if food.kind == "egg" else "look and smell"
        cautions.append(
            f"{food.name.capitalize()}, past its best ({lot.days_from}): {look}; if in doubt, throw it away."
        )
    elif lot.condition == MOULDY_CORNER:
        cautions.append(f"{food.name.capitalize()} ({lot.condition}): {TRIM}.")
    elif lot.condition and (sprouts(food, lot.condition) or "sprout" not in lot.condition):
        cautions.append(
            f"{food.name.capitalize()} ({lot.condition}): cut away what is bad; if in doubt, throw it away."
        )
    if food.state in COOKED_STATES and lot.days_left == 0:
        cautions.append(f"{food.name.capitalize()}: today is its last day, so keep nothing of this dish for tomorrow.")
    if _thaws(lot, food):
        cautions.append(f"{food.name.capitalize()}: thaw before you start, {_THAWING}.")
    if garlic:
        cautions.append(f"{food.name.capitalize()}: what it holds of garlic or onion is no more known than its label.")
    if lot.owner:
        cautions.append(f"{food.name.capitalize()} from {lot.owner}: say that you used it.")
    return cautions
