"""A larder beyond any household's: the search still ends, what goes first is looked at, and that is said."""

from collections.abc import Callable, Sequence

from calmlarder.compose.compose import compose
from calmlarder.compose.offer import BEYOND, offer
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.shortlist import MOST_LOTS
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.plan_days import Asked, How, plan_days
from calmlarder.plan.sittings_typed import read_sittings
from calmlarder.tables.book import Tables
from conftest import TODAY

LotsOf = Callable[[Sequence[str]], list[Lot]]
FOODS = ("kale", "firm tofu", "carrots", "cooked rice", "eggs", "courgette", "soy sauce", "rapeseed oil")


def many(lots_of: LotsOf, count: int) -> list[Lot]:
    """So many lots; the last ones of each food go first."""
    some = lots_of([f"200 g {food}, use by 2026-03-{day}" for day in range(25, 11, -1) for food in FOODS])
    return [some[number % len(some)].model_copy(update={"id": str(number)}) for number in range(count)]


def test_a_large_larder_is_looked_at_whole(
    lots_of: LotsOf, wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    offered, excluded = offer(many(lots_of, MOST_LOTS), wanting(), tables)
    assert len(offered) == MOST_LOTS
    assert not excluded


def test_of_far_too_many_what_goes_first_is_looked_at(
    lots_of: LotsOf, wanting: Callable[..., DinnerRequest], tables: Tables
) -> None:
    lots = many(lots_of, 2000)
    offered, excluded = offer(lots, wanting(use=("carrot",)), tables)
    assert len(offered) < MOST_LOTS + sum(lot.food == "carrot" for lot in lots)
    assert [one.lot for one in excluded] == [BEYOND]
    assert {thing.food.id for thing in offered} == {lot.food for lot in lots}
    for food in ("kale", "tofu-firm"):
        days = [thing.lot.days_left for thing in offered if thing.food.id == food]
        assert max(days) == min(lot.days_left or 0 for lot in lots if lot.food == food), food  # type: ignore[type-var]
    assert offered == offer(lots, wanting(use=("carrot",)), tables)[0]


def test_no_dinner_of_some_of_them_is_called_the_best(
    lots_of: LotsOf, wanting: Callable[..., DinnerRequest], tables: Tables, patterns: Sequence[Pattern]
) -> None:
    some = [pattern for pattern in patterns if pattern.id in {"stir-fry", "fried-rice", "frittata"}]
    composed = compose(many(lots_of, 1000), wanting(), some, tables)
    assert composed.dinners
    assert composed.status == "best_found"
    assert not composed.dinners[0].proven
    assert any("were looked at" in one.why for one in composed.excluded)


def test_no_plan_of_some_of_them_is_called_the_best(
    lots_of: LotsOf, wanting: Callable[..., DinnerRequest], tables: Tables, patterns: Sequence[Pattern]
) -> None:
    some = [pattern for pattern in patterns if pattern.id == "stir-fry"]
    lots, meals = many(lots_of, 1000), read_sittings("dinner", TODAY, 1, None, None)
    planned = plan_days(Asked(lots, meals, wanting(), some, tables), How(seconds=600, rounds=0, most_to_buy=0))
    assert planned.looked_at
    assert planned.looked_at < len(lots)
    assert (planned.status, planned.gap_percent) == ("best_found", None)
