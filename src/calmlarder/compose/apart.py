"""Parts of a dinner that only some of those at the table get: in a pan of their own, or at the table.

After one dish for everybody, what would be worth it: protein for those whose plate lacks it, what is near its day, and
what somebody tolerates and the others do not. Each part costs points, an own pan more than the table; an allergen of
anybody is never one. Prices are ours, no source.
"""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from calmlarder.compose import weights
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.offer import Offered, offer
from calmlarder.compose.portions import Apart, OnPlate
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.eaters import suits_diet
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.plate import Item
from calmlarder.intake.table import Eater
from calmlarder.kitchen.timeline import Moment
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import DIETS, Method

MOST_PARTS = 3  # more than one cook can serve apart: common practice, no source
OWN_PAN, AT_TABLE = 24, 10  # points: another pan to mind and wash; a thing to put on the table
TOLERATED = 30  # points, for each person: a food they tolerate and the shared dish cannot hold
_LEAST_PROTEIN_G = 3.0  # so little short is left alone
_PORTIONS = (Fraction(1), Fraction(3, 4), Fraction(1, 2), Fraction(1, 3))
_LEAST_PORTION = Fraction(2, 5)  # of what is no protein food: less is no part worth serving
_MOST_PORTIONS = Fraction(3, 2)
_ON_RING: tuple[Method, ...] = ("stir-fry", "boil", "steam")
_ROLES = frozenset({"protein", "vegetable", "aromatic", "topping"})
_RING = "ring"
_WORDS: Mapping[Method, str] = {
    "stir-fry": "in a pan of its own", "boil": "in a pot of its own", "steam": "steamed by itself",
    "roast": "on a tray of its own", "microwave": "in the microwave by itself", "raw": "at the table",
}  # fmt: skip


class _Choice(NamedTuple):
    thing: Offered
    eaters: tuple[Eater, ...]
    grams: int
    weighed: bool
    method: Method
    points: float


def with_apart(dinner: Dinner, lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> Dinner:
    """The dinner with the parts that are worth it, and each plate as it is then."""
    things = _things(lots, wanted, tables)
    left = {thing.lot.id: thing.lot.grams for thing in things}
    for use in dinner.uses:
        left[use.lot] = left.get(use.lot, 0) - use.grams
    parts: list[Apart] = []
    plates = plates_with(dinner, parts, wanted, tables)
    while len(parts) < MOST_PARTS:
        choices = [one for thing in things for one in _choices(thing, left[thing.lot.id], plates, wanted)]
        choices = [one for one in choices if one.points > 0]
        worth = {one.thing.lot.id for one in choices}
        things = tuple(one for one in things if one.lot.id in worth)  # fuller plates leave no more room for the others
        choices.sort(key=lambda one: (-one.points, one.thing.place, len(one.eaters)))
        part = next((p for one in choices if (p := _part(one, dinner, parts, wanted, tables))), None)
        if part is None:
            break
        parts.append(part)
        left[part.lot] = 0  # one part of a lot
        plates = plates_with(dinner, parts, wanted, tables)
    if not parts:
        return dinner
    minutes = max(dinner.minutes, *(part.moment.start_min + part.moment.minutes for part in parts))
    rows = [row for part in parts for row in tables.cautions_of(tables.food_by_id[part.food])]
    cautions = [f"{row.caution}." for row in rows if row.caution]
    whole = sum((Fraction(str(one.appetite)) for one in wanted.table), Fraction(0))
    portions = tuple(
        plate.served(Fraction(str(plate.eater.appetite)) / whole, wanted.sitting).model_copy(
            update={"apart": tuple(part.name for part in parts if plate.eater.who in part.whose)}
        )
        for plate in plates
    )
    return dinner.model_copy(
        update={
            "apart": tuple(parts), "portions": portions, "minutes": minutes,
            "cautions": tuple(dict.fromkeys((*dinner.cautions, *cautions))),
        }
    )  # fmt: skip


def plates_with(dinner: Dinner, parts: Iterable[Apart], wanted: DinnerRequest, tables: Tables) -> list[OnPlate]:
    """Everybody's plate with their share of the dish, and of the parts that are theirs."""
    whole = sum((Fraction(str(one.appetite)) for one in wanted.table), Fraction(0))
    found = []
    for eater in wanted.table:
        plate = OnPlate(eater, wanted.counted)
        for use in dinner.uses:
            food = tables.food_by_id[use.food]
            item = Item(food.id, load_profile_of(food, tables), use.grams, use.how == "weigh", wanted.tolerance)
            plate.add(food, item, Fraction(str(eater.appetite)) / whole)
        for part in parts:
            if eater.who in part.whose:
                those = [one for one in wanted.table if one.who in part.whose]
                food = tables.food_by_id[part.food]
                item = Item(food.id, load_profile_of(food, tables), part.grams, part.how == "weigh", wanted.tolerance)
                plate.add(food, item, _share(eater, those))
        found.append(plate)
    return found


def _share(eater: Eater, those: Sequence[Eater]) -> Fraction:
    return Fraction(str(eater.appetite)) / sum((Fraction(str(one.appetite)) for one in those), Fraction(0))


def _things(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> tuple[Offered, ...]:
    """What may be served to somebody: of anybody's diet, but of nobody's allergens."""
    never = {food for eater in wanted.table for food in eater.never}
    diet = max((eater.diet for eater in wanted.table), key=DIETS.index)
    without = tuple(food for food in wanted.without if food not in never)
    offered, _ = offer(lots, wanted.model_copy(update={"diet": diet, "without": without}), tables)
    return tuple(
        thing
        for thing in offered
        if thing.food.kind != "boxed"
        and not thing.food.is_staple
        and _ROLES.intersection(thing.food.roles)
        and "sweet" not in thing.food.roles
    )


def _choices(thing: Offered, left_g: float, plates: Sequence[OnPlate], wanted: DinnerRequest) -> Iterator[_Choice]:
    """For whom a lot could be a part, and how much of it, with what that is worth above its price."""
    food = thing.food
    method = _method(food, wanted)
    if "protein" not in food.roles and not _is_held_back(thing, plates, wanted):
        return
    may = [one for one in plates if _may_eat(one.eater, food)]
    if method is None or not may or left_g < thing.unit_grams:
        return
    price = AT_TABLE if method == "raw" else OWN_PAN
    for some in _groups(may, food, len(plates)):
        grams = _grams(thing, left_g, some)
        if not grams or _worth(thing, grams, some) <= price:  # less of it is worth no more
            continue
        found = _that_fits(thing, grams, some, wanted)
        if found is not None:
            worth = _worth(thing, found[0], some) - price - (weights.WEIGHING if found[1] else 0)
            yield _Choice(thing, tuple(one.eater for one in some), *found, method, worth)


def _is_held_back(thing: Offered, plates: Sequence[OnPlate], wanted: DinnerRequest) -> bool:
    """Whether the dish for all cannot hold it, for what somebody does not eat or does not tolerate."""
    if not all(_may_eat(one.eater, thing.food) for one in plates):
        return True
    those = [one.eater for one in plates]
    grams = math.ceil(thing.food.portion_g * len(those) * _PORTIONS[-1].numerator / _PORTIONS[-1].denominator)
    item = Item(thing.food.id, thing.brings, grams, True, wanted.tolerance)
    return not all(one.would_fit(item, _share(one.eater, those), wanted.sitting) for one in plates)


def _groups(may: Sequence[OnPlate], food: Food, everybody: int) -> list[tuple[OnPlate, ...]]:
    """For whom a food may come apart: who lacks protein, or who may have what not everybody may, together or alone."""
    if "protein" in food.roles:
        may = [one for one in may if _short(one) > 0]
        together = [tuple(may)]
    else:
        together = [tuple(may), tuple(one for one in may if one.eater.profile.own_limits)]
    alone = [(one,) for one in may]
    some = dict.fromkeys(group for group in (*together, *alone) if group)
    return [group for group in some if "protein" in food.roles or len(group) < everybody]


def _may_eat(eater: Eater, food: Food) -> bool:
    return suits_diet(food, eater.diet) and food.id not in eater.never and food.id not in eater.disliked


def _method(food: Food, wanted: DinnerRequest) -> Method | None:
    """How it is made ready by itself: as it is where it may be, else the quickest way that the kitchen has."""
    if "raw" in food.minutes and ("topping" in food.roles or len(food.minutes) == 1):
        return "raw"
    missing = wanted.equipment.missing
    ways = [
        (minutes, way)
        for way, minutes in food.minutes.items()
        if way != "raw"
        and not (way == "roast" and "oven" in missing)
        and not (way == "microwave" and "microwave" in missing)
    ]
    return min(ways)[1] if ways else None


def _grams(thing: Offered, left_g: float, some: Sequence[OnPlate]) -> int:
    """For protein what is short, else a portion each; in steps of the food, never more than there is."""
    food = thing.food
    whole = sum((Fraction(str(one.eater.appetite)) for one in some), Fraction(0))
    each = Fraction(food.portion_g)
    if "protein" in food.roles and food.protein_g:
        shorts = [_short(one) * whole / Fraction(str(one.eater.appetite)) for one in some]
        needed = max(shorts) * 100 / Fraction(food.protein_g) if min(shorts) > 0 else Fraction(0)
        grams = min(needed, _MOST_PORTIONS * each * whole)
    else:
        grams = each * whole
    most = int(left_g) // thing.unit_grams
    return min(most, math.ceil(grams / thing.unit_grams)) * thing.unit_grams


def _short(plate: OnPlate) -> Fraction:
    """Protein that a plate lacks of its target, g; nothing where it is little."""
    short = Fraction(str(plate.eater.protein_g)) - plate.protein_g
    floor = Fraction(str(plate.eater.protein_floor_g)) - plate.protein_g
    return short if short >= _LEAST_PROTEIN_G or floor > 0 else Fraction(0)


def _that_fits(thing: Offered, grams: int, some: Sequence[OnPlate], wanted: DinnerRequest) -> tuple[int, bool] | None:
    """The most of it that fits everybody's plate, by eye where it may be; None where too little does."""
    those = [one.eater for one in some]
    least = Fraction(thing.food.portion_g) * len(some) * _LEAST_PORTION
    for share in _PORTIONS:
        steps = int(grams * share) // thing.unit_grams
        if steps < 1 or ("protein" not in thing.food.roles and steps * thing.unit_grams < least):
            return None
        for weighed in (False, True):
            item = Item(thing.food.id, thing.brings, steps * thing.unit_grams, weighed, wanted.tolerance)
            if all(one.would_fit(item, _share(one.eater, those), wanted.sitting) for one in some):
                return steps * thing.unit_grams, weighed
    return None


def _worth(thing: Offered, grams: int, some: Sequence[OnPlate]) -> float:
    """Points: protein that was short, urgent food used, and what the shared dish cannot hold."""
    food, those = thing.food, [one.eater for one in some]
    points = 0.0
    for one in some:
        brought = Fraction(food.protein_g or 0) * grams / 100 * _share(one.eater, those)
        points += weights.PROTEIN_UNDER_TARGET * float(min(_short(one), brought))
    portions = grams / float(food.portion_g)
    points += portions * weights.rescue_points(thing.lot.days_left, False)
    if "protein" not in food.roles:
        points += TOLERATED * sum(bool(one.eater.profile.own_limits) for one in some)
    return points


def _part(
    choice: _Choice, dinner: Dinner, parts: Sequence[Apart], wanted: DinnerRequest, tables: Tables
) -> Apart | None:
    """The part in words, at a time when there is room for it; None where it would take too long."""
    food, lot = choice.thing.food, choice.thing.lot
    minutes = max(1, food.minutes[choice.method]) if choice.method != "raw" else 1
    place = _RING if choice.method in _ON_RING else {"roast": "oven", "microwave": "microwave"}.get(choice.method, "")
    whose = tuple(eater.who for eater in choice.eaters)
    busy = [*dinner.timeline.moments, *(part.moment for part in parts)]
    start = _free(busy, minutes, place, dinner.minutes, wanted)
    if wanted.minutes is not None and start + minutes > wanted.minutes:
        return None
    done = tables.done_sign(food) if choice.method != "raw" else None
    for_whom = f"for {_and(whose)} only"
    until = f", until {done}" if done else f", {minutes} minutes" if choice.method != "raw" else ""
    said = f"{_WORDS[choice.method].capitalize()}, {for_whom}: {choice.grams} g {food.name}{until}."
    if not all(suits_diet(food, eater.diet) for eater in wanted.table):
        said += " Keep its board, knife and spoon apart."
    return Apart(
        lot=lot.id, line=lot.line, food=food.id, name=food.name, grams=choice.grams,
        how="weigh" if choice.weighed else "eye",
        household=None if choice.weighed else in_household_measure(food, choice.grams, tables, "nearest"),
        whose=whose, said=said,
        moment=Moment(
            start_min=start, minutes=minutes, what=f"{food.name}, {_WORDS[choice.method]}, {for_whom}",
            hands_on=False, equipment=place, adds=(food.id,),
        ),
    )  # fmt: skip


def _free(busy: Sequence[Moment], minutes: int, place: str, end: int, wanted: DinnerRequest) -> int:
    """The latest start that ends with the dish, where the place is free; else when the dish is done."""
    room = wanted.equipment.rings if place == _RING else 1
    for start in range(max(0, end - minutes), -1, -1):
        span = range(start, start + minutes)
        taken = [
            sum(one.equipment == place and one.start_min <= now < one.start_min + one.minutes for one in busy)
            for now in span
        ]
        if not place or max(taken) < room:
            return start
    return max([end, *(one.start_min + one.minutes for one in busy if one.equipment == place)])


def _and(names: Sequence[str]) -> str:
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
