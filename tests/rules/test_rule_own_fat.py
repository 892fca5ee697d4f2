"""Fat beside what gives off its own. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable, Sequence

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.rules.own_fat import OwnFat
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from tiny import PAN, Tiny, slot


def _pan(lots: Sequence[Lot], wanted: DinnerRequest, tables: Tables) -> Tiny:
    pan = PAN.model_dump()
    pan["slots"] |= {
        "protein": slot("protein", ["meat", "poultry", "tofu"], "stir-fry", [1, 3], [0.5, 1.0, 2.0]),
        "fat": slot("fat", ["oil", "butter"], "stir-fry", [0, 1], [0.2, 1.0, 1.5]),
    }
    pan["steps"] = ["pan: Warm {fat} in a pan.", *pan["steps"]]
    (problem,) = pattern_problems(lots, wanted, [Pattern.model_validate(pan)], tables)
    return Tiny(problem)


def test_mince_takes_a_spoon_and_tofu_more(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """For two: seven grams beside mince, lean or not.

    turkey mince 500g
    bacon 200g
    firm tofu 500g
    olive oil
    """
    tiny = _pan(fridge, wanting(people=2), tables)
    for own in ("turkey-mince", "bacon"):
        assert tiny.holds(OwnFat(), {own: 150, "oil-olive": 7})
        assert not tiny.holds(OwnFat(), {own: 150, "oil-olive": 12})
    assert tiny.holds(OwnFat(), {"tofu-firm": 200, "oil-olive": 12})


def test_the_least_of_a_fat_is_never_asked_away(
    fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]
) -> None:
    """Of butter four grams are the least for one.

    beef mince 500g
    butter
    """
    tiny = _pan(fridge, wanting(people=1), tables)
    assert tiny.holds(OwnFat(), {"beef-mince": 120, "butter": 4})
    assert not tiny.holds(OwnFat(), {"beef-mince": 120, "butter": 8})
