"""What the scale really said: the loads computed again, and what to leave out if a limit would be passed."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from calmlarder.compose.dinner import Dinner
from calmlarder.intake.dose import rest_of
from calmlarder.intake.load import Number, at_most_of, load_profile_of
from calmlarder.intake.plate import Item, Row, in_grams, load_of_item, rows_of, sum_under
from calmlarder.intake.profile import Profile
from calmlarder.intake.stacking import Counted, Room
from calmlarder.tables.book import Tables
from calmlarder.tables.cap_rows import Cap


class Passed(NamedTuple):
    """A limit that would be passed, by how much of one person's load, and grams of a food to leave out."""

    cap: Cap
    grams_over: float
    leave_out_food: str
    leave_out_grams: int


def passed_caps(
    dinner: Dinner, weighed: Mapping[str, int], profile: Profile, tables: Tables, counted: Sequence[Counted] = ()
) -> tuple[Passed, ...]:
    """Limits that the amounts really weighed would pass, each with what to take off the scale.

    `weighed` gives grams by lot id; every other food stays as planned. `counted` is what was eaten before.
    """
    rows = rows_of(items_of(dinner, weighed, tables), profile.at(dinner.sitting), counted)
    return tuple(passed for row in rows if (passed := _passed(row, dinner, weighed, tables)) is not None)


def items_of(dinner: Dinner, weighed: Mapping[str, int], tables: Tables) -> list[Item]:
    """The lots of a dinner as they count, with the amounts the scale showed; of a dose only what is beyond it."""
    doses = {dose.food: dose for dose in dinner.doses if dose.in_dish}
    found = []
    for use in dinner.uses:
        grams = weighed.get(use.lot, use.grams) if use.how == "weigh" else use.grams
        dose = doses.get(use.food)
        if dose is not None:
            rest = rest_of(dose.food, dose.group, tables)
            exempt = min(grams, int(dose.grams))  # whole, in a dish
            found.append(Item(use.food, rest, exempt, True, dinner.tolerance))
            grams -= exempt
        if grams or dose is None:
            profile = load_profile_of(tables.food_by_id[use.food], tables)
            found.append(Item(use.food, profile, grams, use.how == "weigh", dinner.tolerance))
    return found


def _passed(row: Row, dinner: Dinner, weighed: Mapping[str, int], tables: Tables) -> Passed | None:
    items = items_of(dinner, weighed, tables)
    over = _over(row, dinner.people)
    if over <= 0:
        return None
    mine: dict[str, Number] = {}
    for item in items:
        load = load_of_item(item, row.cap, row.food).load(item.grams)
        if item.weighed and load:
            mine[item.food] = mine.get(item.food, 0) + load
    if not mine:
        return None
    food = max(mine, key=lambda name: mine[name])
    whole = int(sum(item.grams for item in items if item.food == food and item.weighed))
    enough = (grams for grams in range(1, whole) if _over(_without(row, items, food, grams), dinner.people) <= 0)
    return Passed(row.cap, in_grams(over, dinner.people), food, next(enough, whole))


def _without(row: Row, items: Sequence[Item], food: str, grams: int) -> Row:
    """The same limit with so many grams less of a food on the scale."""
    left, kept = grams, []
    for item in items:
        taken = min(left, int(item.grams)) if item.weighed and item.food == food else 0
        left -= taken
        kept.append(item._replace(grams=item.grams - taken))
    return row._replace(sum=sum_under(kept, row.cap, row.food))


def _over(row: Row, people: int) -> Number:
    """By how much of the dish's load a limit is passed, likely or at most, by whoever has the least room."""
    return max(_over_room(row, room, people) for room in row.rooms)


def _over_room(row: Row, room: Room, people: int) -> Number:
    """The same for one person's room."""
    over = row.sum.likely - room.likely * people
    if room.at_most is None:
        return over
    off = [*row.sum.off.values(), *(one * people for one in room.before)]
    return max(over, at_most_of(row.sum.likely, off) - room.at_most * people)
