"""Fish and meat go with potatoes, not with toast. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable, Sequence

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import BREAD_FOR_A_BASE
from calmlarder.compose.wishes.fitting import CookedBase
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny


def _toast(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> Tiny:
    """A pan dish that takes bread alone as its base."""
    slots = dict(PAN.slots)
    slots["base"] = slots["base"].model_copy(update={"kinds": ("bread",), "method": "roast", "items": (1, 1)})
    slots["protein"] = slots["protein"].model_copy(update={"kinds": ("egg", "fish", "cheese")})
    pattern: Pattern = PAN.model_copy(update={"slots": slots})
    return Tiny(pattern_problems(lots, wanted, [pattern], tables)[0])


def test_toast_under_fish_costs_where_rice_is_there(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    lots = lots_of(["gluten-free bread", "salmon fillets 300g", "eggs x6", "dry white rice 1kg", "halloumi 200g"])
    toast = _toast(lots, wanting(people=1), tables)
    bread = next(option for option in toast.problem.options if option.slot == "base")
    under = {bread.offered.food.id: bread.unit * 2}
    assert toast.points(CookedBase(), under | {"salmon": 150}) == -BREAD_FOR_A_BASE
    assert toast.points(CookedBase(), under | {"halloumi": 80}) == -BREAD_FOR_A_BASE
    assert toast.points(CookedBase(), under | {"egg": 110}) == 0


def test_toast_is_welcome_where_nothing_else_is_there(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    toast = _toast(lots_of(["gluten-free bread", "salmon fillets 300g"]), wanting(people=1), tables)
    bread = next(option for option in toast.problem.options if option.slot == "base")
    assert toast.points(CookedBase(), {bread.offered.food.id: bread.unit * 2, "salmon": 150}) == 0
