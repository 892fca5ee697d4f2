"""10,000 random larders: no dinner passes a limit by the recount in decimals, and nothing crashes.

Every fifth under `roomy`, every seventh under `very-careful`, others under `elimination`; one to three people; each
larder with ten of the patterns.
"""

import sys
from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).resolve().parents[1]))

from calmlarder.compose.compose import best_dinners
from calmlarder.compose.request import DinnerRequest
from calmlarder.household.checked import faults_of
from calmlarder.household.request import Evening
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from larders import larder_lines

_IN_ALL, _AT_ONCE = 10_000, 100


@pytest.mark.parametrize("first", range(0, _IN_ALL, _AT_ONCE))
def test_no_dinner_passes_a_limit(
    first: int,
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> None:
    cooked = 0
    for seed in range(first, first + _AT_ONCE):
        lots = lots_of(larder_lines(tables, 12 + seed % 14, 100_000 + seed))
        profile = "roomy" if seed % 5 == 4 else "very-careful" if seed % 7 == 6 else "elimination"
        wanted = wanting(profile, people=1 + seed % 3)
        chosen = [patterns[(seed + step * 7) % len(patterns)] for step in range(10)]
        _, dinners = best_dinners(lots, wanted, chosen, tables)
        cooked += len(dinners)
        evening = Evening(wanted, lots, tables, [shipped("ingredient_tables")])
        faults = [fault for dinner in dinners for fault in faults_of(dinner, (), evening)]
        assert not faults, (seed, faults)
    assert cooked > _AT_ONCE // 10
