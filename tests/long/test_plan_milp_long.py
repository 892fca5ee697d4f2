"""Tiny random plans cost what SciPy's HiGHS finds on a programme written apart from the model (tests/plan_twin.py)."""

import random
import sys
from pathlib import Path
from typing import Any

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from answers import lots_read
from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.weights import POINT
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.patterns.pattern import Pattern
from calmlarder.plan.dishes_for_sittings import house_of
from calmlarder.plan.joint import Joint
from calmlarder.tables.book import Tables
from plan_twin import least_cost
from random_larders import rich_larder
from test_plan import sittings

_NEAR = 0.05  # points: HiGHS works in floats
_SITTINGS = ("tonight; tomorrow", "tonight; tomorrow packed; tomorrow", "tonight; tomorrow packed")


@pytest.mark.parametrize("seed", range(500))
def test_a_plan_costs_what_a_linear_programme_of_its_own_costs(
    seed: int, tables: Tables, patterns: tuple[Pattern, ...], reader: LarderReader, wanting: Any
) -> None:
    rng = random.Random(f"plan {seed}")
    every = lots_read(rich_larder(90_000 + seed), reader)
    lots = rng.sample(every, min(len(every), 9 + seed % 4))
    floor = (5.0, 10.0, 14.0)[seed % 3]
    proteins = {"protein_g": floor, "protein_floor_g": floor}
    asked = [one.model_copy(update=proteins) for one in sittings(_SITTINGS[seed % len(_SITTINGS)])]
    wanted = wanting(**proteins)
    fillable = [one.pattern for one in pattern_problems(lots, wanted, patterns, tables) if one.fillable]
    house = house_of(lots, asked, wanted, rng.sample(fillable, min(len(fillable), 3)), tables)
    solved = Joint(house, house.columns, {}).solve(120)
    assert solved.proven
    assert solved.cost / POINT == pytest.approx(least_cost(house), abs=_NEAR)
