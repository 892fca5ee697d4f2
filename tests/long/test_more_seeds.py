"""What the tests by default ask of a few random larders, recipes, foods and dishes, asked of many: optima against
SciPy's HiGHS, adapted recipes that pass the check and stay as they are, the nearest dinner, plans, swaps, schedules.
"""

import sys
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from outside.test_adapt_milp import test_the_same_smallest_change as the_same_smallest_change
from outside.test_milp import test_same_best_score as same_best_score
from test_adapt import adapted as adapted
from test_adapt import test_hundreds_of_ingredients_are_answered as hundreds_are_answered
from test_adapt import test_random_recipes_pass_the_check_and_stay_when_adapted_again as pass_and_stay
from test_households import test_two_households_over_four_days as four_days
from test_likes import test_same_best_score_with_likes_and_lysine as same_with_likes
from test_nearest import test_the_best_of_what_gives_is_that_of_scipy as same_nearest
from test_plan import planning as planning
from test_plan import test_every_plan_passes_the_replay as passes_the_replay
from test_swaps import answer_for as answer_for
from test_swaps import test_whatever_is_asked_only_sound_things_are_offered as only_sound_things
from test_two_lots import test_a_dish_with_each_food_twice_has_an_order as has_an_order
from test_why import test_the_deciding_figure_changes_the_dinner_as_told as decides_as_told


@pytest.mark.parametrize("seed", range(150))
def test_dinners(seed: int, tables: Any, patterns: Any, lots_of: Any, wanting: Any) -> None:
    same_best_score(seed, tables, patterns, lots_of, wanting)


@pytest.mark.parametrize("seed", range(24))
def test_likes_and_lysine(seed: int, tables: Any, patterns: Any, lots_of: Any, wanting: Any) -> None:
    same_with_likes(seed, tables, patterns, lots_of, wanting)


@pytest.mark.parametrize("seed", range(24))
def test_nearest_dinners(seed: int, tables: Any, patterns: Any, lots_of: Any, wanting: Any) -> None:
    same_nearest(seed, tables, patterns, lots_of, wanting)


@pytest.mark.parametrize("seed", range(100))
def test_smallest_changes(seed: int, tables: Any) -> None:
    the_same_smallest_change(seed, tables)


@pytest.mark.parametrize("seed", range(25))
def test_adapted_recipes(seed: int, tables: Any, adapted: Any) -> None:
    pass_and_stay(seed, tables, adapted)


def test_a_recipe_of_five_hundred(tables: Any, adapted: Any) -> None:
    hundreds_are_answered(500, tables, adapted)


@pytest.mark.parametrize("seed", range(12))
def test_plans_made_better_three_times(seed: int, planning: Any, tables: Any) -> None:
    passes_the_replay(seed, 3, planning, tables)


def test_swaps_of_every_food(answer_for: Any) -> None:
    only_sound_things(1, answer_for)


def test_every_dish_with_each_food_twice(patterns: Any, tables: Any) -> None:
    has_an_order(1, patterns, tables)


def test_two_households_that_live_by_a_plan(tables: Any, patterns: Any) -> None:
    four_days("plan", tables, patterns)


@pytest.mark.parametrize("seed", [3, 10])
def test_deciding_figures(seed: int, tables: Any, patterns: Any, lots_of: Any, wanting: Any) -> None:
    """Of larders in which no figure decides."""
    decides_as_told((18, seed), False, tables, patterns, lots_of, wanting)
