"""Roots on a tray are no dinner where rice is there. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import NO_BASE
from calmlarder.compose.wishes.fitting import FilledBase
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny


def test_a_dish_without_a_base_costs_where_there_is_one(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    slots = dict(PAN.slots)
    slots["base"] = slots["base"].model_copy(update={"items": (0, 1)})
    pattern: Pattern = PAN.model_copy(update={"slots": slots})

    def points(pattern: Pattern, lines: list[str], units: dict[str, int]) -> float:
        problem = pattern_problems(lots_of(lines), wanting(people=1), [pattern], tables)[0]
        return Tiny(problem).points(FilledBase(), units)

    with_rice = ["dry white rice 1kg", "salmon fillets 300g", "carrots 400g"]
    rice = next(
        option
        for option in pattern_problems(lots_of(with_rice), wanting(people=1), [pattern], tables)[0].options
        if option.slot == "base"
    )
    assert points(pattern, with_rice, {"salmon": 150}) == -NO_BASE
    assert points(pattern, with_rice, {"salmon": 150, rice.offered.food.id: rice.unit * rice.least}) == 0
    assert points(pattern, ["salmon fillets 300g", "carrots 400g"], {"salmon": 150}) == 0
    roots = pattern.slots["base"].model_copy(update={"kinds": ("rice", "potato")})
    rooty = pattern.model_copy(update={"slots": {**slots, "base": roots}})
    sweet = [*with_rice, "sweet potatoes 1kg"]
    assert points(rooty, sweet, {"salmon": 150, "sweet-potato": 65}) == -NO_BASE  # of which 75 g fit


def test_tortillas_fill_and_wheat_does_not_where_it_is_limited(
    lots_of: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    """Four corn tortillas are enough for two; of wheat ones nobody in elimination gets as many."""
    slots = dict(PAN.slots)
    slots["base"] = slots["base"].model_copy(update={"items": (0, 1)})
    pattern: Pattern = PAN.model_copy(update={"slots": slots})

    def has_base(line: str, **asked: str) -> bool:
        lots = lots_of([line, "salmon fillets 300g"])
        return pattern_problems(lots, wanting(people=2, **asked), [pattern], tables)[0].has_base

    assert has_base("6 corn tortillas")
    assert has_base("4 corn tortillas")  # two each make tacos
    assert not has_base("3 corn tortillas")
    assert not has_base("8 wheat tortillas")
    assert has_base("gnocchi 500g")
    assert not has_base("dry wheat pasta 500g")  # half a plateful fits
    assert not has_base("sweet potatoes 1kg")
    assert has_base("potatoes 280g")  # of a portion of 200 g most for each
    assert has_base("cooked white rice 400g")
    assert not has_base("cooked white rice 200g")
