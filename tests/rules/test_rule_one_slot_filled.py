"""Of some slots one is filled. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable
from dataclasses import replace

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.one_slot_filled import OneOf
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny, slot


def test_one_is_filled(pan: Callable[..., Tiny]) -> None:
    """A sauce or something sour.

    firm tofu 280g
    soy sauce
    lime
    """
    tiny = pan()
    asks = tiny.problem.pattern.model_copy(update={"one_of": (("sauce", "acid"),)})
    asking = Tiny(replace(tiny.problem, pattern=asks))
    assert tiny.holds(OneOf(), {"tofu-firm": 80})
    assert not asking.holds(OneOf(), {"tofu-firm": 80})
    assert asking.holds(OneOf(), {"tofu-firm": 80, "lime": 10})


def test_of_two_bases_no_more_than_one_is_filled(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Rice and toast are two starches; common practice, no source.

    firm tofu 280g
    gluten-free bread
    dry rice noodles 250g
    """
    dish = PAN.model_dump()
    bread = slot("base", ["bread"], "raw", [0, 1], [0.0, 1.0, 2.0])
    dish |= {
        "slots": dish["slots"] | {"bread": bread},
        "steps": [*dish["steps"], "plate: Eat with {bread}{if:bread}."],
        "one_of": [["base", "bread"]],
    }
    (problem,) = pattern_problems(fridge, wanting(people=1), [Pattern.model_validate(dish)], tables)
    assert Tiny(problem).holds(OneOf(), {"tofu-firm": 80, "bread-gluten-free": 35})
    assert Tiny(problem).holds(OneOf(), {"tofu-firm": 80, "rice-noodles-dry": 60})
    assert not Tiny(problem).holds(OneOf(), {"tofu-firm": 80, "rice-noodles-dry": 60, "bread-gluten-free": 35})
