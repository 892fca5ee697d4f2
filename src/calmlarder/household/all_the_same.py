"""No dinner? What of the larder can be eaten all the same: a plain plate within the limits, put through the check."""

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction

from calmlarder.household.household import Household
from calmlarder.household.plate import PlateAsked, plate_of
from calmlarder.household.request import Evening
from calmlarder.intake.eaten import Portion
from calmlarder.intake.load import load_profile_of
from calmlarder.intake.meal import Table, judged
from calmlarder.intake.plate import Item
from calmlarder.intake.stacking import still_counted
from calmlarder.intake.table import table_profile
from calmlarder.tables.rows import Food

# Raw flesh wants care, and flour is no meal.
_NOT_BY_ITSELF = frozenset({"meat", "poultry", "fish", "shellfish", "flour", "starch"})
# So many of each at most, in this order; what there is something to mind with is left out. Ours.
_ROLES = (("base", 1), ("protein", 1), ("vegetable", 2))
# Nobody eats bare potatoes: a fat, and one of the sauces that go with anything plain. Not by themselves.
_WITH_IT = (("fat", 1), ("sauce", 1))
_GOES_WITH_ALL = frozenset({"soy-sauce", "tomato", "yoghurt"})


def all_the_same(household: Household, evening: Evening) -> tuple[Portion, ...]:
    """Usual portions for one person, to weigh, that fit together by themselves; none where nothing does."""
    request = evening.request
    profile = table_profile(request.table) if request.table else request.profile
    counted = () if request.stacking is None else still_counted(request.eaten, request.stacking)
    table = Table(profile.at(request.sitting), 1, counted)
    chosen: list[Portion] = []
    items: list[Item] = []
    for role, most in (*_ROLES, *_WITH_IT):
        had = most if (role, most) in _WITH_IT and not chosen else 0
        for portion in _portions(evening, role):
            item = _item(portion, evening)
            if had < most and all(one.food != item.food for one in items) and judged([*items, item], table).fits:
                items.append(item)
                chosen.append(portion)
                had += 1
    if not {"base", "protein"} & {role for one in chosen for role in one.food.roles}:
        return ()  # a leaf of lettuce with oil is no meal
    if request.table:  # a table's own check wants a dish for all of them
        return ()
    asked = PlateAsked(
        (), request.sitting, 1, request.tolerance, True, profile=request.profile.name, before=request.stacking,
        wants_change=False,
    )  # fmt: skip
    found = plate_of(household, asked, chosen)
    return tuple(chosen) if found.answer.fits and not found.faults else ()


def _portions(evening: Evening, role: str) -> Iterator[Portion]:
    """A usual portion of each food of a role that may be eaten, or what is there of it; what goes first in front."""
    from calmlarder.compose.offer import offer

    offered, _ = offer(evening.lots, evening.request, evening.tables)
    for one in sorted(offered, key=lambda one: (one.lot.days_left is None, one.lot.days_left or 0, one.place)):
        grams = float(int(min(float(one.food.portion_g), one.lot.grams)))
        suits = role != "sauce" or one.food.kind in _GOES_WITH_ALL
        if suits and role in one.food.roles and grams >= 1 and one.lot.box is None and _is_plain(one.food, evening):
            yield Portion(one.food, grams, grams, True)


def _is_plain(food: Food, evening: Evening) -> bool:
    """Whether it is cooked as anybody knows, with nothing to mind; of a base only its leftovers are minded."""
    minds = "base" not in food.roles and any(row.caution for row in evening.tables.cautions_of(food))
    return not minds and food.kind not in _NOT_BY_ITSELF


def _item(portion: Portion, evening: Evening) -> Item:
    grams = Fraction(str(portion.grams))
    sure = evening.request.tolerance.for_range(Decimal(str(portion.grams)), Decimal(str(portion.high)))
    return Item(portion.food.id, load_profile_of(portion.food, evening.tables), grams, True, sure)
