"""The dinner of several, of limits of one's own, and around a dose: SciPy's HiGHS finds the same best score."""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.compose import pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import search
from calmlarder.intake.dose import Dose
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.intake.own_profile import own_profile
from calmlarder.intake.profile import profile_named
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from conftest import TODAY
from larders import larder_lines
from made_up_households import eaters_of, request_for
from milp_twin import best_score

LotsOf = Callable[[Sequence[str]], list[Lot]]
Wanting = Callable[..., DinnerRequest]


def agree(lots: list[Lot], wanted: DinnerRequest, patterns: Sequence[Pattern], tables: Tables) -> bool:
    """Whether there is a dinner; the scores are the same, up to what the twin's floats round."""
    problems = [problem for problem in pattern_problems(lots, wanted, patterns, tables) if problem.fillable]
    if not problems:
        return False
    ours, theirs = search(problems, 1, 20).plans, best_score(problems).score
    assert bool(ours) == (theirs is not None)
    if ours:
        assert ours[0].score == pytest.approx(theirs, abs=100)
    return bool(ours)


def _near(lots: list[Lot], wanted: DinnerRequest, patterns: tuple[Pattern, ...], tables: Tables) -> list[Pattern]:
    """The pattern of the best dinner and some others."""
    problems = [problem for problem in pattern_problems(lots, wanted, patterns, tables) if problem.fillable]
    best = search(problems, 1, 20).plans[0].problem.pattern.id
    return [one for number, one in enumerate(patterns) if one.id == best or number % 16 == 0]


@pytest.mark.long
def test_at_a_table_of_several(tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf) -> None:
    found = 0
    for seed in range(14):
        lots = [
            lot.model_copy(update={name: 4 * getattr(lot, name) for name in ("grams", "grams_low", "grams_high")})
            for lot in lots_of(larder_lines(tables, 14, seed))
        ]
        wanted = request_for(eaters_of(seed, tables), tables)
        plain = wanted.model_copy(update={"protein_g": 12.0, "protein_floor_g": 8.0, "diet": "omnivore", "avoid": ()})
        found += agree(lots, plain, patterns[seed::12], tables)
    assert found >= 3


def test_with_a_limit_of_ones_own(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    owns = [OwnLimit(component="gos", grams=2, on=TODAY, said_by="d")]
    profile = own_profile(profile_named("elimination", tables), owns)
    lots = lots_of(["boiled chickpeas 300g", "cooked rice 350g, made today", "firm tofu 200g", "spinach 300g",
                    "carrots x3", "olive oil", "soy sauce", "1 lime"])  # fmt: skip
    wanted = wanting(protein_g=12, protein_floor_g=6).model_copy(update={"profile": profile})
    assert agree(lots, wanted, _near(lots, wanted, patterns, tables), tables)


def test_around_a_dose(tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting) -> None:
    """41 g of boiled chickpeas, 0.5 g of GOS, weighed and exempt."""
    lots = lots_of(["boiled chickpeas 300g", "cooked rice 350g, made today", "firm tofu 200g", "spinach 300g",
                    "carrots x3", "olive oil", "soy sauce"])  # fmt: skip
    dose = Dose(
        who="me", challenge="gos", group="gos", food="chickpeas-boiled", name="chickpeas", grams=41, dose_g=0.49,
        in_dish=True,
    )  # fmt: skip
    wanted = wanting(protein_g=12, protein_floor_g=10, doses=(dose,), use=(dose.food,))
    assert agree(lots, wanted, _near(lots, wanted, patterns, tables), tables)
