"""How sure an eye and a scale are: a looser eye never allows a bigger load, held against decimals by hand."""

from collections.abc import Callable, Sequence
from decimal import Decimal

import pytest
from pydantic import ValidationError

from calmlarder.checks.dinner import verify
from calmlarder.cli import main
from calmlarder.compose.compose import compose, pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import search
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.limit import limit_of
from calmlarder.intake.profile import profile_named
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from how_much import some
from larders import larder_lines
from milp_twin import best_score

LotsOf = Callable[[Sequence[str]], list[Lot]]
Wanting = Callable[..., DinnerRequest]
EYES = (10, 30, 45, 60)


def test_how_far_off_by_hand() -> None:
    assert Tolerance().off_hundredths(75, weighed=False) == 2250
    assert Tolerance().off_hundredths(75, weighed=True) == 200
    assert Tolerance(eye_percent=60, scale_grams=0).off_hundredths(75, weighed=False) == 4500
    assert Tolerance(eye_percent=60, scale_grams=0).off_hundredths(75, weighed=True) == 0


@pytest.mark.parametrize("values", [{"eye_percent": 9}, {"eye_percent": 61}, {"scale_grams": -1}, {"scale_grams": 11}])
def test_what_cannot_be_is_refused(values: dict[str, int]) -> None:
    with pytest.raises(ValidationError):
        Tolerance(**values)


def misjudged_by_hand(tables: Tables, food: str, grams: int, eye: int) -> Decimal:
    """Oligosaccharides of an amount by eye that is as much more as the eye may err, g, from the rows in decimals."""
    rows = tables.fermentables_of(food)
    each = rows["fructans"].g_per_100g + rows["gos"].g_per_100g
    return each * grams * (1 + Decimal(eye) / 100) / 100


def test_a_looser_eye_allows_less_of_one_food(tables: Tables) -> None:
    profile = profile_named("elimination", tables).at()
    broccoli = tables.food_by_id["broccoli"]
    cap = next(c for c in profile.food_caps + profile.sitting_caps if c.group == "oligosaccharides"
               and c.covers(broccoli.cutoff_class))  # fmt: skip
    most = []
    for eye in EYES:
        answer = limit_of(broccoli, profile, tables, Tolerance(eye_percent=eye))
        assert answer.grams_eye is not None
        assert misjudged_by_hand(tables, "broccoli", answer.grams_eye, eye) <= cap.typical_g + Decimal("0.005")
        most.append(answer.grams_eye)
    assert most == sorted(most, reverse=True)
    assert most[0] > most[-1]


@pytest.mark.parametrize("seed", some(range(8), 4))
def test_no_dinner_passes_the_check_of_a_looser_eye_and_the_twin_agrees(
    seed: int, tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    """SciPy's HiGHS finds the same best score, which never rises as the eye gets looser."""
    lots = lots_of(larder_lines(tables, 14, seed))
    chosen = patterns[seed::8]
    scores = []
    for eye in EYES[::3]:
        wanted = wanting(protein_g=12, protein_floor_g=12, tolerance=Tolerance(eye_percent=eye, scale_grams=eye // 10))
        problems = [p for p in pattern_problems(lots, wanted, chosen, tables) if p.fillable]
        ours, theirs = search(problems, 1, 20), best_score(problems) if problems else None
        scores.append(ours.plans[0].score if ours.plans else float("-inf"))
        if theirs is not None and theirs.score is not None:
            assert scores[-1] == pytest.approx(theirs.score, abs=100)
    assert scores == sorted(scores, reverse=True)


def test_the_check_takes_the_eye_from_the_request(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    lots = lots_of(["firm tofu 250g", "cooked rice 350g, made today", "broccoli 300g, use by today", "rapeseed oil"])
    wanted = wanting(tolerance=Tolerance(eye_percent=10))
    dinner = dinner_object(compose(lots, wanted, patterns, tables).dinners[0])
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    plain = [lot.model_dump(mode="json") for lot in lots]
    where = [shipped("ingredient_tables")], shipped("recipes")
    assert verify(dinner, request, plain, *where) == ()
    request["tolerance"] = {"eye_percent": 60, "scale_grams": 10}
    assert verify(dinner, request, plain, *where)


def test_on_the_command_line(capsys: pytest.CaptureFixture[str]) -> None:
    def by_eye(*options: str) -> str:
        assert main(["limit", "broccoli", *options]) == 0
        return capsys.readouterr().out.split("by eye")[1].split(" g")[0].strip()

    assert int(by_eye("--eye", "60")) < int(by_eye()) < int(by_eye("--eye", "10"))
    assert main(["limit", "broccoli", "--eye", "70"]) == 2
    assert "--eye" in capsys.readouterr().err
