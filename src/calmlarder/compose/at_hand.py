"""What of a larder counts as there: one bottle of what several are, and a base that fills a plate."""

from collections.abc import Sequence

from calmlarder.compose.most_of import MOST_OF_KIND
from calmlarder.compose.offer import Offered
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.unfit_for_slot import NIBBLED
from calmlarder.intake.plate import Item, limits_on, rows_under
from calmlarder.tables.rows import Food

_PLAIN_SOY = frozenset({"soy-sauce", "tamari"})
MAIZE_WRAPS = "tortilla-corn"
_BASES = frozenset({"potato", "rice", "noodle", "pasta", "grain", "wrap"})
_BREAKFAST = frozenset({"oats-rolled", "oats-gluten-free", "rye-flakes"})  # no pan at dinner lies on them. Ours
_LEAST_AT_HAND = 0.65  # of a portion each, two small tortillas: the same
# A base of which the limits let through less of a portion (wheat pasta, sweet potatoes) fills no plate. Ours.
_LEAST_BASE_FITS = 0.55


def one_bottle(offered: Sequence[Offered]) -> tuple[Offered, ...]:
    """Of two bottles of soy sauce (light and dark, or tamari) one, a plain one first: of both a dish is too salty.

    Of two jars of a spice the fuller one: of both there would be twice as much of it.
    """
    first: dict[str, Offered] = {}
    for thing in sorted(offered, key=lambda one: (one.food.id not in _PLAIN_SOY, -one.lot.grams)):
        first.setdefault(_bottle(thing.food), thing)
    return tuple(thing for thing in offered if not _bottle(thing.food) or first[_bottle(thing.food)] is thing)


def _bottle(food: Food) -> str:
    """What only one of is reached for; empty where it may be several."""
    if food.kind in MOST_OF_KIND:
        return food.kind
    return food.id if food.kind == "spice" else ""


def is_base(thing: Offered, wanted: DinnerRequest) -> bool:
    """Potatoes, rice, noodles, pasta, a grain or tortillas: enough for everybody, and a plateful fits the limits."""
    food = thing.food
    if food.kind not in _BASES or "base" not in food.roles or food.id in NIBBLED | _BREAKFAST:
        return False
    if thing.lot.grams < _LEAST_AT_HAND * float(food.portion_g) * wanted.people:
        return False
    return fills(thing, wanted)


def fills(thing: Offered, wanted: DinnerRequest) -> bool:
    """Whether a plateful fits the limits: a few cubes of sweet potato are no base."""
    food = thing.food
    share = _LEAST_AT_HAND if food.kind == "wrap" else _LEAST_BASE_FITS
    plateful = Item(food.id, thing.brings, round(share * float(food.portion_g)), True, wanted.tolerance)
    return all(row.holds() for row in rows_under([*limits_on([plateful], wanted.limits)], [plateful]))
