"""What the tests by default ask of a few random larders and recipes, asked of many: optima against SciPy's HiGHS,
adapted recipes that pass the check and stay as they are, the nearest dinner.
"""

import sys
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from outside.test_adapt_milp import test_the_same_smallest_change as the_same_smallest_change
from outside.test_milp import test_same_best_score as same_best_score
from test_adapt import adapted as adapted
from test_adapt import test_random_recipes_pass_the_check_and_stay_when_adapted_again as pass_and_stay
from test_likes import test_same_best_score_with_likes_and_lysine as same_with_likes
from test_nearest import test_the_best_of_what_gives_is_that_of_scipy as same_nearest


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
