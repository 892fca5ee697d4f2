"""What would bring a planned meal to the protein that is aimed at, of what the plan leaves over."""

from collections.abc import Mapping, Sequence

from calmlarder.compose.dinner import MoreProtein
from calmlarder.compose.more_protein import more_protein
from calmlarder.compose.offer import Offered
from calmlarder.compose.telling import dinner_of
from calmlarder.larder.lot import CRUMB_GRAMS
from calmlarder.plan.dishes_for_sittings import Dish, PlanInstance
from calmlarder.plan.stacked import earlier_shares
from calmlarder.plan.unreached import grams_left
from calmlarder.tables.book import Tables

More = Mapping[int, tuple[MoreProtein, ...] | None]


def protein_left(house: PlanInstance, dishes: Sequence[Dish], tables: Tables) -> More:
    """By the number of its column, for each dish; None where it was not looked for.

    That is where another meal still counts at a sitting, or this one at a later: then its limits are not enough.
    """
    left, counting = grams_left(house, dishes), _counting(house)
    found: dict[int, tuple[MoreProtein, ...] | None] = {}
    for dish in dishes:
        number = dish.column.number
        if counting.isdisjoint(dish.column.covers):
            dinner = dinner_of(dish.plan, False, tables)
            found[number] = more_protein(dish.plan, dinner, _offered(house, dish, left), tables)
        else:
            found[number] = None
    return found


def _counting(house: PlanInstance) -> set[int]:
    """Sittings of which one counts at the other."""
    people = house.stacking.people(house.wanted.eaten)
    return {
        number
        for later in range(len(house.sittings))
        for who in people
        for earlier, _ in earlier_shares(house, later, who)
        for number in (earlier, later)
    }


def _offered(house: PlanInstance, dish: Dish, left: Mapping[int, float]) -> list[Offered]:
    """What there is at that sitting beside the other dishes; of a box only what keeps cooked."""
    own: dict[int, float] = {}
    for use in dish.plan.uses:
        own[use.option.offered.place] = own.get(use.option.offered.place, 0) + use.grams
    keeping = {option.offered.place for option in dish.column.problem.options}
    found = []
    for thing in house.offered[dish.column.covers[0]]:
        grams = left[thing.place] + own.get(thing.place, 0)
        if grams >= CRUMB_GRAMS and (len(dish.column.covers) == 1 or thing.place in keeping):
            found.append(thing._replace(lot=thing.lot.model_copy(update={"grams": grams})))
    return found
