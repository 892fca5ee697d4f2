"""Parts of a dinner that only some of those at the table get: in a pan of their own, or at the table.

After one dish for everybody, what would be worth it: protein for those whose plate lacks it, what is near its day, and
what somebody tolerates and the others do not. Each part costs points, an own pan more than the table; an allergen of
anybody is never one. Prices are ours, no source.
"""

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction

from calmlarder.and_list import and_list
from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.compose.parts_offered import Choice, best_first, parts_of, share_of, to_serve
from calmlarder.compose.portions import Apart, OnPlate
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.diet_and_allergens import suits_diet
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.plate import Item
from calmlarder.intake.table import Eater
from calmlarder.kitchen.timeline import Moment
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from calmlarder.tables.household import in_household_measure
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import Method

MOST_PARTS = 3  # more than one cook can serve apart: common practice, no source
_ON_RING: tuple[Method, ...] = ("stir-fry", "boil", "steam")
_RING = "ring"
_WORDS: Mapping[Method, str] = {
    "stir-fry": "in a pan of its own", "boil": "in a pot of its own", "steam": "steamed by itself",
    "roast": "on a tray of its own", "microwave": "in the microwave by itself", "raw": "at the table",
}  # fmt: skip
_PACKED = "in a box of its own"


def with_apart(dinner: Dinner, lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> Dinner:
    """The dinner with the parts that are worth it, and each plate as it is then."""
    things = to_serve(lots, wanted, tables)
    left = {thing.lot.id: thing.lot.grams for thing in things}
    for use in dinner.uses:
        left[use.lot] = left.get(use.lot, 0) - use.grams
    parts: list[Apart] = []
    plates = plates_with(dinner, wanted, tables)
    has: set[tuple[str, str]] = set()
    unfit: set[tuple[str, tuple[str, ...]]] = set()  # fuller plates leave no more room for them
    while len(parts) < MOST_PARTS:
        pans = sum(one.moment.equipment != "" for one in parts)
        offers = [one for thing in things for one in parts_of(thing, left[thing.lot.id], plates, wanted, pans)]
        new = [one for one in offers if one.key not in unfit and has.isdisjoint(one.served)]
        choices = best_first(new, plates, wanted, unfit)
        part = next((p for one in choices if (p := _part(one, dinner, parts, wanted, tables))), None)
        if part is None:
            break
        parts.append(part)
        left[part.lot] = 0  # one part of a lot
        has = {(part.food, who) for part in parts for who in part.whose}  # and of a food to each
        _serve(part, plates, wanted, tables)
    if not parts:
        return dinner
    minutes = max(dinner.minutes, *(part.moment.start_min + part.moment.minutes for part in parts))
    rows = [row for part in parts for row in tables.cautions_of(tables.food_by_id[part.food])]
    cautions = [f"{row.caution}." for row in rows if row.caution]
    portions = tuple(
        plate.served(_of_dish(plate.eater, dinner, wanted), wanted.sitting).model_copy(
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


def plates_with(dinner: Dinner, wanted: DinnerRequest, tables: Tables) -> list[OnPlate]:
    """Everybody's plate with their share of the dish, and of the parts that are theirs."""
    found = [OnPlate(eater, wanted.counted) for eater in wanted.table]
    items = [_item(use, wanted, tables) for use in dinner.uses]
    for plate in found:
        share = _of_dish(plate.eater, dinner, wanted)
        for food, item in items:
            plate.add(food, item, share)
    for part in dinner.apart:
        _serve(part, found, wanted, tables)
    return found


def _serve(part: Apart, plates: Iterable[OnPlate], wanted: DinnerRequest, tables: Tables) -> None:
    """The part onto the plates of those whose it is."""
    those = [one for one in wanted.table if one.who in part.whose]
    food, item = _item(part, wanted, tables)
    for plate in plates:
        if plate.eater.who in part.whose:
            plate.add(food, item, share_of(plate.eater, those))


def _item(use: PlateUse | Apart, wanted: DinnerRequest, tables: Tables) -> tuple[Food, Item]:
    food = tables.food_by_id[use.food]
    return food, Item(food.id, load_profile_of(food, tables), use.grams, use.how == "weigh", wanted.tolerance)


def _of_dish(eater: Eater, dinner: Dinner, wanted: DinnerRequest) -> Fraction:
    """Somebody's share of the dish at one sitting, 0 to 1; it may be cooked for several sittings of theirs."""
    return share_of(eater, wanted.table) * len(wanted.table) / dinner.people


def _part(
    choice: Choice, dinner: Dinner, parts: Sequence[Apart], wanted: DinnerRequest, tables: Tables
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
    for_whom = f"for {and_list(whose)} only"
    until = f", until {done}" if done else f", {minutes} minutes" if choice.method != "raw" else ""
    words = _PACKED if choice.method == "raw" and wanted.sitting == "packed" else _WORDS[choice.method]
    said = f"{words.capitalize()}, {for_whom}: {choice.grams} g {food.name}{until}."
    if not all(suits_diet(food, eater.diet) for eater in wanted.table):
        said += " Keep its board, knife and spoon apart."
    return Apart(
        lot=lot.id, line=lot.line, food=food.id, name=food.name, grams=choice.grams,
        how="weigh" if choice.weighed else "eye",
        household=None if choice.weighed else in_household_measure(food, choice.grams, tables, "nearest"),
        whose=whose, said=said,
        moment=Moment(
            start_min=start, minutes=minutes, what=f"{food.name}, {words}, {for_whom}",
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


def is_enough(dinner: Dinner, wanted: DinnerRequest, tables: Tables) -> bool:
    """Whether each plate has the least protein with what comes apart."""
    plates = plates_with(dinner, wanted, tables)
    return all(float(plate.protein_g) >= plate.eater.protein_floor_g for plate in plates)
