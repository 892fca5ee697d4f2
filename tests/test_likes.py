"""What is disliked, what is to be more of the same, and lysine: against SciPy's HiGHS, and the check."""

from collections.abc import Callable, Sequence
from decimal import Decimal

import pytest

from calmlarder.checks.dinner import verify
from calmlarder.cli import main
from calmlarder.compose.compose import compose, pattern_problems
from calmlarder.compose.dinner import liked
from calmlarder.compose.request import DinnerRequest, Liked
from calmlarder.compose.search import search
from calmlarder.compose.solve import upper_bound
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from larders import larder_lines
from milp_twin import best_score

LotsOf = Callable[[Sequence[str]], list[Lot]]
Wanting = Callable[..., DinnerRequest]
LINES = ["firm tofu 280g", "eggs x6", "cooked rice 600g, made today", "potatoes 1kg", "spinach 200g", "carrots 400g",
         "rapeseed oil", "soy sauce"]  # fmt: skip


@pytest.mark.parametrize("seed", range(6))
def test_same_best_score_with_likes_and_lysine(
    seed: int, tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(larder_lines(tables, 14 + seed % 5, seed))
    chosen = [patterns[(seed + step * 7) % len(patterns)] for step in range(5)]
    held = [lot.food for lot in lots]
    like = Liked(pattern=chosen[0].id, family=chosen[0].flavours[0], mains=tuple(held[:4]))
    wanted = wanting(
        protein_g=12,
        disliked=tuple(held[seed % 2 :: 2]),
        like=like if seed % 3 else None,
        lysine_mg=(0, 400, 900)[seed % 3],
    )
    problems = [p for p in pattern_problems(lots, wanted, chosen, tables) if p.fillable]
    if not problems:
        assert not search(problems, 1, 20).plans
        return
    ours, theirs = search(problems, 1, 20), best_score(problems)
    assert bool(ours.plans) == (theirs.score is not None)
    for plan in ours.plans:
        assert plan.score == pytest.approx(theirs.score, abs=100)
        assert plan.score <= upper_bound(plan.problem)


def foods(wanted: DinnerRequest, lots: list[Lot], patterns: tuple[Pattern, ...], tables: Tables) -> set[str]:
    (dinner,) = compose(lots, wanted, patterns, tables).dinners
    return {use.food for use in dinner.uses}


def test_what_is_disliked_stays_away_unless_nothing_else_will_do(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(LINES)
    usual = foods(wanting(), lots, patterns, tables)
    protein = "tofu-firm" if "tofu-firm" in usual else "egg"
    assert protein not in foods(wanting(disliked=(protein,)), lots, patterns, tables)
    alone = [lot for lot in lots if lot.food not in {"tofu-firm", "egg"} or lot.food == protein]
    assert protein in foods(wanting(disliked=(protein,)), alone, patterns, tables)


def test_more_like_it_is_near_and_not_the_same(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(LINES)
    slots = {pattern.id: pattern.slots for pattern in patterns}
    for first in compose(lots, wanting(count=3), patterns, tables).dinners:
        like = liked(first, slots[first.pattern])
        (other,) = compose(lots, wanting(like=like), patterns, tables).dinners
        again = liked(other, slots[other.pattern])
        assert (again.pattern, set(again.mains)) != (like.pattern, set(like.mains))
        shared = set(again.mains) & set(like.mains)
        assert shared
        assert again.family == like.family or again.pattern == like.pattern or len(shared) > 1


def test_the_lysine_floor_holds_by_the_tables_own_figures(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    """USDA FoodData Central gives lysine per 100 g, as the tables hold it."""
    lots = lots_of(LINES)
    wanted = wanting(people=2, lysine_mg=1500)
    (dinner,) = compose(lots, wanted, patterns, tables).dinners
    by_hand = sum(
        ((tables.food_by_id[use.food].lysine_mg or Decimal(0)) * use.grams for use in dinner.uses), Decimal(0)
    )
    assert by_hand / 100 / 2 >= 1500
    told, plain = dinner_object(dinner), [lot.model_dump(mode="json") for lot in lots]
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    where = [shipped("ingredient_tables")], shipped("recipes")
    assert verify(told, request, plain, *where) == ()
    assert any("lysine" in fault for fault in verify(told, {**request, "lysine_mg": 4900}, plain, *where))
    nothing = compose(lots, wanting(lysine_mg=5000), patterns, tables)
    assert any("lysine" in words for words in nothing.obstacles)


def test_on_the_command_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["demo", "--today", "2026-03-11", "--dislike", "firm tofu", "--lysine", "1000"]) == 0
    assert "g  firm tofu" not in capsys.readouterr().out
    assert main(["demo", "--lysine", "-1"]) == 2
    assert "--lysine" in capsys.readouterr().err
