"""What counts against another dinner: the points of a dinner taken apart add up to what the search gave it."""

from collections.abc import Callable, Sequence
from typing import Any

import pytest

from calmlarder.compose.compose import Asked, best_dinners
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.weights import POINT
from calmlarder.compose.why.model import Why
from calmlarder.compose.why.reasons import points_by_wish, reasons
from calmlarder.compose.why.why import why
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.style import Style
from calmlarder.render.why_text import why_text
from calmlarder.tables.book import Tables

LINES = ("dry rice 1 kg", "cooked rice 250g, made yesterday", "carrots 300g", "eggs x6", "firm tofu 280g", "soy sauce",
         "spinach 200g", "lemon")  # fmt: skip

LotsOf = Callable[[Sequence[str]], list[Lot]]


def test_the_points_of_a_dinner_taken_apart_are_its_score(
    lots_of: LotsOf, wanting: Callable[..., DinnerRequest], patterns: tuple[Pattern, ...], tables: Tables
) -> None:
    found, _ = best_dinners(lots_of(LINES), wanting(count=3), patterns, tables)
    assert len(found.plans) >= 2
    for plan in found.plans:
        assert sum(points_by_wish(plan).values()) == pytest.approx(plan.score / POINT, abs=0.001)
    against = reasons(found.plans[0], found.plans[-1])
    assert against
    mine, other = points_by_wish(found.plans[0]), points_by_wish(found.plans[-1])
    losses = sorted((mine[name] - other[name] for name in mine), reverse=True)
    assert [one.points for one in against] == [pytest.approx(loss, abs=0.06) for loss in losses[: len(against)]]


def test_a_later_dinner_is_explained_as_itself(
    lots_of: LotsOf, wanting: Callable[..., DinnerRequest], patterns: tuple[Pattern, ...], tables: Tables,
    short_why: Any,
) -> None:  # fmt: skip
    lots = lots_of(LINES)
    _, dinners = best_dinners(lots, wanting(count=2), patterns, tables)
    food = tables.food_by_id[dinners[1].uses[0].food]
    *_, answer = why(food, Asked(lots, wanting(count=2), patterns, tables))
    assert isinstance(answer, Why)
    assert (answer.place, answer.outcome, answer.done) == (2, "used", True)
    assert answer.tonight is not None
    assert answer.tonight.title == dinners[1].title
    told = why_text(answer, wanting(), Style(False, True, 200), in_points=False)
    assert f"in dinner 2 of tonight, {dinners[1].title}" in told
    assert "As good" not in told or answer.instead is None or answer.instead.points > -1


def test_why_not_says_what_counts_against_it_without_points(
    lots_of: LotsOf, wanting: Callable[..., DinnerRequest], patterns: tuple[Pattern, ...], tables: Tables,
    short_why: Any,
) -> None:  # fmt: skip
    lots = lots_of([*LINES, "cod fillet 150g, use by today"])  # eggs and tofu have no place beside it
    _, (dinner, *_) = best_dinners(lots, wanting(), patterns, tables)
    out = next(one for one in lots if one.food in {"eggs", "tofu-firm", "egg"} and one.food not in
               {use.food for use in dinner.uses})  # fmt: skip
    *_, answer = why(tables.food_by_id[out.food], Asked(lots, wanting(), patterns, tables))
    assert isinstance(answer, Why)
    assert answer.outcome == "could"
    assert answer.instead is not None
    assert answer.instead.points > 0
    told = why_text(answer, wanting(), Style(False, True, 200), in_points=False)
    assert "What counts against it: " in told
    assert "points" not in told
