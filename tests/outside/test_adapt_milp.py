"""The smallest change against SciPy's MILP solver (HiGHS) on random recipes; a hundred in tests/long."""

import pytest

from adapt_twin import lowest_price, made_up_recipe
from calmlarder.adapt.counted import counted
from calmlarder.adapt.model import Eaters
from calmlarder.adapt.open_lines import open_lines
from calmlarder.adapt.solve import solve
from calmlarder.intake.profile import profile_named
from calmlarder.tables.book import Tables

# HiGHS works in floating point: a tenth of a point on prices of tens to hundreds.
TOLERANCE = 100


# All hundred are in tests/long/test_more_seeds.py.
@pytest.mark.parametrize("seed", [0, 18, 36, 54, 90])
def test_the_same_smallest_change(seed: int, tables: Tables) -> None:
    serves = 1 + seed % 6
    profile = profile_named("wide" if seed % 5 == 4 else "elimination", tables)
    diet = ("omnivore", "omnivore", "vegetarian", "vegan")[seed % 4]
    eaters = Eaters(profile=profile, diet=diet, avoid=("milk",) if seed % 7 == 3 else ())
    lines = counted(made_up_recipe(tables, 4 + seed % 9, serves, seed), eaters, tables).counted
    opened = open_lines(lines, serves, eaters, tables)
    ours = solve(opened, serves, eaters.limits)
    theirs = lowest_price(opened, serves, eaters.limits)
    assert ours.kind in {"best", "none"}
    assert (ours.kind == "none") == (theirs is None)
    if theirs is not None:
        assert ours.price == pytest.approx(theirs, abs=TOLERANCE)


def test_they_are_not_all_alike(tables: Tables) -> None:
    """The comparison above would say little if no recipe needed a change, or all the same one."""
    eaters = Eaters(profile=profile_named("elimination", tables))
    kinds = set()
    for seed in range(0, 100, 10):
        lines = counted(made_up_recipe(tables, 4 + seed % 9, 2, seed), eaters, tables).counted
        opened = open_lines(lines, 2, eaters, tables)
        solved = solve(opened, 2, eaters.limits)
        kinds |= {line.choices[n].kind for line, n in zip(opened, solved.chosen, strict=False)}
        kinds |= {"serving"} if solved.serves > 2 else set()
    assert {None, "swap", "less"} <= kinds
    assert kinds & {"out", "serving"}
