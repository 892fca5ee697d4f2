"""Random larders recounted from the CSV rows, and answers spoilt in one place; the long forms are in tests/long.

Outside check: allergens, diets, dates and protein are read from the tables' own cells and from how the larder was
made up (random_larders.py), by code that shares nothing with the program or its checks.
"""

from itertools import islice

import pytest

from answers import answers, check, dinners_of, lots_read
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from how_much import WHOLE
from mutations import SPOILS, spoilt
from random_larders import TODAY, larder, last_safe, recount


@pytest.mark.parametrize("seed", range(10))
def test_dinners_of_random_larders_hold_by_a_recount(seed: int, tables: Tables, patterns: tuple[Pattern, ...]) -> None:
    case = larder(seed)
    _, dinners = dinners_of(case, lots_read(case, LarderReader(tables, TODAY)), tables, patterns)
    for dinner in dinners:
        assert list(recount(dinner_object(dinner), case)) == []


def test_the_larders_hold_what_the_recount_looks_for() -> None:
    """Something past a day of safety is in most of them, two dates are on half of the lines."""
    cases = [larder(seed) for seed in range(60)]
    made = [one for case in cases for one in case.lots.values()]
    past = [one for one in made if (last := last_safe(one)) is not None and last < TODAY]
    assert len(past) > 100
    assert 0.4 < sum(len(one.dates) == 2 for one in made) / len(made) < 0.6
    assert {people for case in cases for people in [case.people]} == {1, 2, 3, 4, 5, 6}
    assert {allergen for case in cases for allergen in case.avoid} >= {"milk", "mustard", "gluten", "soya", "celery"}


@pytest.mark.long
def test_each_way_to_spoil_an_answer_is_rejected() -> None:
    seen = set()
    for seed, answer in islice(answers(50_000), 4):
        assert check(answer) == ()
        for how, other in spoilt(answer, seed):
            if WHOLE or how not in seen:
                assert check(other), (seed, how)
                seen.add(how)
    assert len(seen) >= len(SPOILS) - 3
