"""Two main things share a plate. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.two_mains import TwoMains
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny, slot


def test_two_packs_are_not_both_fried_whole(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Of pollock and smoked haddock 1.8 portions in all, or two of one; common practice, no source.

    hake 400g
    smoked haddock 300g
    """
    dish = PAN.model_dump()
    dish |= {
        "slots": dish["slots"]
        | {"smoked": slot("protein", ["fish"], "stir-fry", [0, 1], [0.0, 1.0, 1.5]) | {"foods": ["haddock-smoked"]}},
        "steps": [*dish["steps"], "pan: Fry {smoked}."],
    }
    dish["slots"]["protein"] |= {"not_foods": ["haddock-smoked"]}
    (problem,) = pattern_problems(fridge, wanting(people=1), [Pattern.model_validate(dish)], tables)
    pan = Tiny(problem)
    assert pan.holds(TwoMains(), {"fish-white": 260})  # of 130 g a portion
    assert pan.holds(TwoMains(), {"fish-white": 65, "haddock-smoked": 150})
    assert not pan.holds(TwoMains(), {"fish-white": 130, "haddock-smoked": 150})
