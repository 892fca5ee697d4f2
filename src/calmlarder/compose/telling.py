"""From a plan to a dinner in the words and numbers of a cook."""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Literal

from calmlarder.compose.called import as_called
from calmlarder.compose.dinner import (
    Contribution,
    Dinner,
    PlateUse,
    Rescued,
    weigh_list,
)
from calmlarder.compose.dinner_cautions import cautions_of, look_first
from calmlarder.compose.per_person import per_person
from calmlarder.compose.portions import plates_of
from calmlarder.compose.problem import Option
from calmlarder.compose.provenance import not_measured, upper_ends
from calmlarder.compose.solve import Plan, Use
from calmlarder.compose.weights import URGENT_DAYS
from calmlarder.intake.load import load_under
from calmlarder.intake.plate import in_grams
from calmlarder.kitchen.cut_already import is_cut
from calmlarder.kitchen.equipment import has_microwave
from calmlarder.kitchen.filling import Filling, is_said_cooked, is_salted, sign_of, was_cooked
from calmlarder.kitchen.granted_oil import OIL_GRAMS, OIL_TEASPOONS
from calmlarder.kitchen.made_ready import Told, is_small, made_ready, mashes
from calmlarder.kitchen.minutes import from_frozen, is_stirred_stiff, minutes_of
from calmlarder.kitchen.piece import oil_taken
from calmlarder.kitchen.sauces import mixed
from calmlarder.kitchen.shared_pot import folds_in
from calmlarder.kitchen.timeline import told_twice
from calmlarder.kitchen.title import title_of
from calmlarder.kitchen.toasting import rinsed_hot, toasted
from calmlarder.larder.freezing import thawed_how, thaws
from calmlarder.larder.lot import Lot
from calmlarder.larder.with_bones import (
    bones_too,
    count_in,
    eatable_of_one,
    has_bones,
    is_in_shell,
    is_whole_fish,
    shells_too,
)
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure, in_packs
from calmlarder.tables.rows import Food

_NO_REST_G = 5
_GRAMS = re.compile(r"(?<![\d.,/])(\d+(?:\.\d+)?) ?(?:g|gr|gm|gms|grams?)\b", re.IGNORECASE)
_PART_OF_ONE = re.compile(
    r"(?<!\w)(?:half(?![ -](?:price|off|dead|frozen|used))|quarter|third|[½¼⅓]|1/[234]|wedge|chunk|end|heel|lump|hunk)"
    r"(?!\w)",
    re.IGNORECASE,
)
_PACKED = re.compile(
    r"\b(?:bag|box|bunch|crate|jar|net|pack(?:et)?|pkt|punnet|sack|tin|tub)s?\b|\d ?(?:kg|g|lbs?|oz)\b|\bkilos?\b",
    re.IGNORECASE,
)
_SQUEEZED = "squeezed"  # of thawed leaves, which no pot of water asks for
_OF_A_PACK = re.compile(r"\b(?:block|tin)s?\b")
_OIL_KCAL = 9 * OIL_GRAMS  # fat has 9 kcal/g (Atwater)


def dinner_of(plan: Plan, proven: bool, tables: Tables) -> Dinner:
    """A plan in the words and numbers of a cook."""
    people = plan.problem.wanted.people
    pattern = plan.problem.pattern
    foods = as_called(plan.uses, tables)
    uses = tuple(_use(use, foods, tables) for use in plan.uses)
    fillings = [
        _filling(use, one.option, plan, tables, foods[use.food]) for use, one in zip(uses, plan.uses, strict=True)
    ]
    fillings = _with_minutes(fillings, plan)
    pattern = mixed(pattern, fillings, people)
    steps, timeline = told_twice(pattern, fillings, plan.problem.wanted.equipment, people)
    oil = oil_taken(pattern, fillings, people)
    return Dinner(
        title=title_of(pattern, fillings, people),
        pattern=pattern.id,
        family=plan.family,
        people=people,
        proven=proven,
        minutes=timeline.minutes,
        timeline=timeline,
        uses=uses,
        per_person=per_person(plan, _OIL_KCAL * oil / (OIL_TEASPOONS * people)),
        rescued=_rescued(plan),
        weigh_first=weigh_list(uses),
        taken_for_granted=(f"{oil} tsp oil",) if oil else (),
        steps=steps,
        cautions=cautions_of(plan, foods, tables),
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


def _filling(use: PlateUse, option: Option, plan: Plan, tables: Tables, food: Food) -> Filling:
    pattern, wanted, lot = plan.problem.pattern, plan.problem.wanted, option.offered.lot
    slot = pattern.slots[use.slot]
    thawed = thawed_how(lot, food, use.grams, has_microwave(wanted.equipment)) if option.before else "thawed"
    thawed = thawed if thaws(lot, food) else ""
    told = Told(lot.line, lot.condition, thawed, _each_g(lot), lot.place == "freezer")
    own = slot.prep_of(food)
    if slot.method == "boil" and _SQUEEZED in own and not folds_in(pattern):
        own = ""
    prep = made_ready(own, food, told, mashes(pattern, use.slot))
    return Filling(
        slot=use.slot,
        food=food,
        grams=use.grams,
        how=use.how,
        household=use.household,
        prep=rinsed_hot(toasted(prep, food, use.slot, lot.line, use.grams, pattern), food, use.slot, pattern),
        minutes=slot.minutes_for(food),
        done=sign_of(tables.done_sign(food), food, lot.line),
        whole=use.whole,
        salted=is_salted(lot.line),
        frozen=lot.place == "freezer",
        stiff=is_stirred_stiff(food, lot.line),
        soft=was_cooked(food) or is_said_cooked(food, lot.line),
    )


def _each_g(lot: Lot) -> float | None:
    """Grams of one of a lot, where its line counts them."""
    count = count_in(lot.line)
    return lot.grams / count if count else None


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
            + from_frozen(one)
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
        look=look_first(lot, food),
        whole=use.grams + use.option.unit > lot.grams and lot.grams_low == lot.grams_high,
        household=_with_bones(food, lot, use.grams, tables) if how != "weigh" else None,
    )


# Long pasta fills no cup, and what is grated has no slices.
_NO_SUCH_SHAPE = (
    (re.compile(r"\b(?:spaghetti(?:ni)?|linguine|tagliatelle|fettuccine|bucatini)\b", re.I), re.compile(r"\bcup")),
    (re.compile(r"\b(?:grated|shredded)\b", re.I), re.compile(r"\bslice")),
)


def _with_bones(food: Food, lot: Lot, grams: int, tables: Tables) -> str | None:
    """A cook's measure, and what it weighs as it goes into the pot where it has its bones: nobody cuts them out."""
    said, with_bones = _household(food, lot, grams, tables), bones_too(food, lot.line, grams)
    if with_bones is None:
        return said
    return ", ".join(filter(None, (said, f"{with_bones} g including the bones")))


def _household(food: Food, lot: Lot, grams: int, tables: Tables) -> str | None:
    """Grams in a cook's measure; small potatoes and carrots are not counted by the usual piece.

    Of `half a turnip` no half is told: nobody knows how large the whole one was.
    """
    if is_small(food, lot.line):
        return None
    if is_in_shell(food, lot.line):
        return f"{shells_too(grams)} g in their shells"
    each = _each_g(lot)
    if each is not None and (is_whole_fish(food, lot.line) or has_bones(food)):
        count, all_of_them = max(1, round(grams / each)), round(lot.grams / each)
        return f"all {count}" if count >= all_of_them else f"{count} of the {all_of_them}"
    if is_whole_fish(food, lot.line):
        return None  # no fillets are counted of it
    one = eatable_of_one(food, lot.line)
    if one is not None:
        return f"about {max(1, round(grams / one[1]))}"
    part_of_one = _PART_OF_ONE.search(lot.line) is not None and _PACKED.search(lot.line) is None
    in_pieces = is_cut(food, lot.line) and food.kind != "nut"
    no_count = (part_of_one and food.kind != "egg") or in_pieces
    said = in_household_measure(food, grams, tables, "nearest", counted=not no_count)
    said = said if in_pieces else said or in_household_measure(food, grams, tables, "nearest")
    if said is not None and any(shape.search(lot.line) and in_it.search(said) for shape, in_it in _NO_SUCH_SHAPE):
        return None
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
