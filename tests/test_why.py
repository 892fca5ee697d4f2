"""Why, why not: against SciPy's MILP solver, the cut-offs of Varney et al. 2017 (doi:10.1111/jgh.13698), the rows of
the tables' own files, and the check that shares nothing with the model."""

import json
from collections import defaultdict
from collections.abc import Callable, Sequence
from decimal import Decimal
from functools import cache
from importlib import resources
from pathlib import Path
from typing import Any

import pytest

from by_hand import AT_MOST, EXACT, VARNEY_2017, figures, foods, likely, off, rows
from calmlarder.cli import main
from calmlarder.compose.compose import Asked, pattern_problems
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import Watch
from calmlarder.compose.stop import Stop
from calmlarder.compose.why.model import Why
from calmlarder.compose.why.why import _Asking, why
from calmlarder.household.checked import faults_of
from calmlarder.household.request import Evening
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.style import Style
from calmlarder.render.why_text import why_text
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from calmlarder.tables.rows import Food
from how_much import some
from larders import larder_lines
from milp_twin import best_score

LotsOf = Callable[[Sequence[str]], list[Lot]]
POINT = 10_000
TOLERANCE = 0.03  # points: HiGHS works in floating point, and two scores are compared
SEEDS = (0, 1, 2, 3, 6, 7, 11, 14, 15, 17, 22, 25)  # larders that have a dinner in the patterns chosen
DISHES = {"stir-fry", "rice-bowl", "tray-bake", "noodle-bowl", "supper-plate", "vegetable-soup"}
DEMO = Path(str(resources.files("calmlarder"))) / "demo_larder.txt"


def last(answers: Any) -> Why:
    *_, answer = answers
    assert isinstance(answer, Why)
    return answer


def chosen(patterns: Sequence[Pattern]) -> list[Pattern]:
    return [pattern for pattern in patterns if pattern.id in DISHES]


Case = tuple[Food, list[Lot], DinnerRequest, list[Pattern]]


@pytest.fixture(scope="module")
def case_of(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Callable[..., DinnerRequest]
) -> Callable[[int], Case]:
    """One of the foods of a larder, and what is asked of it."""

    def made(seed: int) -> Case:
        lots = lots_of(larder_lines(tables, 18, seed))
        return tables.food_by_id[lots[seed % 4].food], lots, wanting(protein_g=12, seconds=20), chosen(patterns)

    return made


@pytest.fixture(scope="module")
def instead_of(case_of: Callable[[int], Case], tables: Tables) -> Callable[[int], Why | None]:
    """Why of that food, as far as the second dinner and no further; each once."""

    @cache
    def answer(seed: int) -> Why | None:
        food, *rest = case_of(seed)
        return next((one for one in why(food, Asked(*rest, tables)) if one.instead is not None), None)

    return answer


@pytest.mark.parametrize("seed", some(SEEDS, 4))
def test_next_best_agrees_with_scipy(
    seed: int, tables: Tables, case_of: Callable[[int], Case], instead_of: Callable[[int], Why | None]
) -> None:
    """Without what is used, with what is not: HiGHS finds the same difference, or none feasible just the same."""
    food, lots, wanted, few = case_of(seed)

    def score(request: DinnerRequest) -> float | None:
        problems = [p for p in pattern_problems(lots, request, few, tables) if p.fillable]
        return best_score(problems).score if problems else None

    best = score(wanted)
    answer = instead_of(seed)
    if answer is None or answer.instead is None:
        return
    assert best is not None
    used = answer.outcome == "used"
    changed = wanted.model_copy(update={"without": (food.id,)} if used else {"use": (food.id,)})
    other = score(changed)
    assert (answer.instead.dinner is None) == (other is None)
    assert answer.instead.proven
    if other is not None:
        assert answer.instead.points == pytest.approx((best - other) / POINT, abs=TOLERANCE)
        assert (food.id in {use.food for use in answer.instead.dinner.uses}) is not used


def test_the_comparison_sees_all_cases(instead_of: Callable[[int], Why | None]) -> None:
    seen = set()
    for seed in SEEDS:
        answer = instead_of(seed)
        seen.add((answer.outcome, answer.instead.dinner is None) if answer and answer.instead else None)
    assert {("used", False), ("could", False)} <= seen


@pytest.fixture
def demo(lots_of: LotsOf) -> Callable[..., list[Lot]]:
    lines = [line for line in DEMO.read_text(encoding="utf-8").splitlines() if line and not line.startswith("#")]
    return lambda *more: lots_of([*lines, *more])


BINDING = [
    ["broccoli 400g use by today", "green pepper 400g use by today", "firm tofu 400g", "rice 500g", "soy sauce"],
    ["mange tout 300g use by today", "broccoli 300g use by today", "tempeh 400g", "rice 500g", "soy sauce", "ginger"],
]


@pytest.mark.long
@pytest.mark.parametrize("lines", BINDING)
def test_room_under_a_cap_is_worth_what_scipy_says(
    lines: list[str],
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: LotsOf,
    wanting: Callable[..., DinnerRequest],
) -> None:
    """The same programme with that cap 0.10 g higher, for the sitting and for one food."""
    lots, few = lots_of(lines), chosen(patterns)
    wanted = wanting(protein_g=12, seconds=60)
    answer = last(why(tables.food_by_id[lots[0].food], Asked(lots, wanted, few, tables)))
    found = {bound.cap: bound for bound in answer.bounds}
    base = best_score([p for p in pattern_problems(lots, wanted, few, tables) if p.fillable]).score
    assert base is not None
    worth = {}
    for cap in wanted.profile.sitting_caps:
        update = {
            scope: tuple(
                one.model_copy(
                    update={
                        "typical_g": (typical := one.typical_g + Decimal("0.10")),
                        "at_most_g": one.at_most_g and one.at_most_g * typical / one.typical_g,
                    }
                )
                if one.group == cap.group
                else one
                for one in getattr(wanted.profile, scope)
            )
            for scope in ("sitting_caps", "food_caps")
        }
        roomy = wanted.model_copy(update={"profile": wanted.profile.model_copy(update=update)})
        score = best_score([p for p in pattern_problems(lots, roomy, few, tables) if p.fillable]).score
        assert score is not None
        worth[cap.key] = (score - base) / POINT
    for key, points in worth.items():
        if points > 0.52:  # what is worth less than half a point is not told
            assert found[key].points_per_g == pytest.approx(points / 0.10, abs=1)
            assert found[key].buys is not None
            assert all(one.what != "foods" for one in found[key].buys)  # an analysis, no dinner to cook
        elif points < 0.48 and key in found:
            assert not found[key].points_per_g
    assert any(points > 0.52 for points in worth.values())


def test_alone_over_is_recomputed_from_the_files(
    tables: Tables, patterns: tuple[Pattern, ...], demo: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    """Whole leek: Muir et al. 2007 measured fructans in its white part; the cut-off for other foods is 0.20 g."""
    answer = next(why(tables.food_by_id["leek-whole"], Asked(demo("300 g whole leek"), wanting(), patterns, tables)))
    assert answer.outcome == "breaks"
    assert answer.no_place
    group = "oligosaccharides"
    over = next(one for one in answer.alone_over if one.cap.startswith(f"{group}:"))
    cut = VARNEY_2017[group, foods()["leek-whole"]["cutoff_class"]]
    per_gram, error = likely("leek-whole", 1)[group], off("leek-whole", 1, group, eye=0)
    assert over.load_g == pytest.approx(per_gram * over.grams, abs=0.002)
    assert over.load_g > cut == over.cap_g

    def weighed(grams: float) -> bool:  # 2 g off on the scale
        most = per_gram * (grams + 2) + error * grams
        return per_gram * grams <= cut + EXACT and most <= AT_MOST * cut + EXACT

    def by_eye(grams: float) -> bool:  # misjudged by 30 % alone, and with its composition
        most = per_gram * grams + off("leek-whole", grams, group)
        return per_gram * grams * 1.3 <= cut + EXACT and most <= AT_MOST * cut + EXACT

    # The amount told fits, and a gram more would not.
    assert weighed(over.fits_weighed_g) > weighed(over.fits_weighed_g + 1)
    assert by_eye(over.fits_eye_g) > by_eye(over.fits_eye_g + 1)
    assert answer.part is not None
    assert answer.part.food == "leek-green"
    assert likely("leek-green", 60)[group] + off("leek-green", 60, group) < cut


@pytest.mark.parametrize(
    ("line", "food", "request_", "words"),
    [
        ("chicken thighs 300g, use by yesterday", "chicken-thigh", {}, "past the day"),
        ("250 g salmon (robin's)", "salmon", {}, "belongs to robin"),
        ("250 g salmon", "salmon", {"diet": "vegan"}, "not vegan"),
        ("250 g salmon", "salmon", {"avoid": ("fish",)}, "holds"),
        ("50 g lychees", "lychee", {}, "no figure is known"),
        ("250 g salmon", "salmon", {"without": ("salmon",)}, "as asked"),
    ],
)
def test_hard_rules_are_said_plainly(
    line: str, food: str, request_: dict[str, Any], words: str, tables: Tables, patterns: tuple[Pattern, ...],
    lots_of: LotsOf, demo: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    lots = [lot for lot in demo() if lot.food != food] + lots_of([line])
    answer = next(why(tables.food_by_id[food], Asked(lots, wanting(**request_), patterns, tables)))
    assert answer.outcome == "excluded"
    assert words in answer.excluded[-1][1]


@pytest.mark.long
def test_what_is_shown_holds_under_the_check(
    tables: Tables, patterns: tuple[Pattern, ...], demo: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    lots, wanted = demo(), wanting(seconds=30)
    outcomes: dict[str, int] = defaultdict(int)
    for food in map(tables.food_by_id.__getitem__, ("spinach", "tofu-firm", "pepper-red", "kale", "chicken-thigh")):
        for answer in why(food, Asked(lots, wanted, patterns, tables)):
            if answer.instead is not None or answer.outcome == "excluded":
                break
        outcomes[answer.outcome] += 1
        told = [answer.tonight, answer.instead.dinner if answer.instead else None]
        shown = [dinner for dinner in told if dinner is not None]
        assert shown
        evening = Evening(wanted, lots, tables, [shipped("ingredient_tables")])
        assert not any(faults_of(dinner, (), evening) for dinner in shown)
        for one in answer.does:
            grams = sum(use.grams for use in answer.tonight.uses if use.line == one.line)
            assert one.protein_g == pytest.approx(float(foods()[food.id]["protein_g"]) * grams / 100, abs=0.06)
            plan = likely(food.id, grams)
            for key, load in one.loads_g.items():
                assert load == pytest.approx(plan[key.partition(":")[0]], abs=0.002)
    assert outcomes["used"] >= 2
    assert outcomes["could"] >= 2
    assert outcomes["excluded"] == 1


def test_what_it_rests_on_is_added_up_from_the_files(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Callable[..., DinnerRequest]
) -> None:
    """A larder whose tempeh and greens hold recalled figures."""
    lots = lots_of(["200 g tempeh, use by today", "300 g cooked white rice", "150 g kale, use by today", "soy sauce"])
    answer = next(why(tables.food_by_id["tempeh"], Asked(lots, wanting(), patterns, tables)))
    basis = {(row["food"], row["component"]): row["basis"] for row in rows("fermentables")}
    sums: dict[str, float] = defaultdict(float)
    assert answer.tonight is not None
    assert answer.resting is not None
    for use in answer.tonight.uses:
        parts = figures()[use.food]
        for component in ("fructans", "gos", "lactose", "sorbitol", "mannitol"):
            sums[basis[use.food, component]] += parts[component][0] * use.grams / 100
        weak = max(("fructose", "glucose"), key=lambda name: parts[name][1])
        sums[basis[use.food, weak]] += max(0.0, parts["fructose"][0] - parts["glucose"][0]) * use.grams / 100
    told = answer.resting.by_basis_g
    assert told == pytest.approx({key: grams for key, grams in sums.items() if key in told}, abs=0.001)
    assert sum(told.values()) == pytest.approx(sum(sums.values()), abs=0.002)
    assert answer.resting.recalled_share == pytest.approx(sums["recalled"] / sum(sums.values()), abs=0.001)


@pytest.mark.long
@pytest.mark.parametrize(("larder", "decides"), [((10, 3), True), ((10, 2), False)])
def test_the_deciding_figure_changes_the_dinner_as_told(
    larder: tuple[int, int], decides: bool, tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf,
    wanting: Callable[..., DinnerRequest],
) -> None:  # fmt: skip
    """Tables in which that figure is measured give HiGHS a dinner that is better by the points told.

    Larders of ten lots here, of eighteen in tests/long.
    """
    lots = lots_of(larder_lines(tables, *larder))
    wanted, few = wanting(protein_g=12, seconds=60), chosen(patterns)
    answer = last(why(tables.food_by_id[lots[0].food], Asked(lots, wanted, few, tables)))
    one = answer.deciding
    assert answer.tonight is not None
    assert (one is not None and one.how == "measured") is decides
    assert answer.figures_tried == answer.figures_all

    def points(book: Tables) -> float:
        score = best_score([p for p in pattern_problems(lots, wanted, few, book) if p.fillable]).score
        assert score is not None
        return score / POINT

    measured = {row.food for row in tables.fermentables if row.basis in {"borrowed", "recalled", "assumed"}}
    now = points(tables)
    gains = {food: points(_measured(tables, food)) - now for food in {lot.food for lot in lots} & measured}
    if one is not None and one.how == "measured":
        assert gains[one.food] == pytest.approx(one.points, abs=TOLERANCE)
    assert max(gains.values(), default=0.0) <= max(one.points if one else 0.0, 0.5) + TOLERANCE


def _measured(tables: Tables, food: str) -> Tables:
    changed = tuple(
        row.model_copy(update={"basis": "analysed", "high": None}) if row.food == food else row
        for row in tables.fermentables
    )
    fields = {name: getattr(tables, name) for name in type(tables).model_fields}
    return type(tables).model_construct(None, **{**fields, "fermentables": changed})


def test_a_stop_ends_it_and_keeps_what_is_known(
    tables: Tables, patterns: tuple[Pattern, ...], demo: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    stop = Stop()
    answers = why(tables.food_by_id["spinach"], Asked(demo(), wanting(), patterns, tables, Watch(stop=stop)))
    first = next(answers)
    stop.ask()
    end = last(answers)
    assert end.tonight == first.tonight
    assert not end.done


def test_no_time_is_told_not_hidden(
    tables: Tables, patterns: tuple[Pattern, ...], demo: Callable[..., list[Lot]], wanting: Callable[..., DinnerRequest]
) -> None:
    asking = _Asking(tables.food_by_id["spinach"], Asked(demo(), wanting(), patterns, tables))
    answers = asking.answers()
    next(answers)
    asking._stop.at = 0.0  # the time has come when tonight's dinner is there
    answer = last(answers)
    assert answer.figures_tried < answer.figures_all
    assert not answer.resting or "ended before the others" in why_text(answer, wanting(), Style(False, True, 200))


def asked(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int, str, str]:
    status = main(["why", *words])
    printed = capsys.readouterr()
    return status, printed.out, printed.err


@pytest.mark.long
@pytest.mark.usefixtures("short_why")
def test_on_the_command_line(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    larder = ["--larder", str(DEMO), "--today", "2026-03-11"]
    status, out, _ = asked(capsys, "red pepper", *larder, "--json")
    told = json.loads(out)
    assert status == 0
    assert told["food"] == "pepper-red"
    assert told["outcome"] == "could"
    assert "pepper-red" in {use["food"] for use in told["instead"]["dinner"]["uses"]}
    assert told["instead"]["differences"]
    status, out, _ = asked(capsys, "chicken thigh", *larder)
    assert status == 0
    assert "past the day it is safe to eat" in out
    assert max(map(len, out.splitlines())) <= 80
    assert "\033" not in out
    assert asked(capsys, "plutonium", *larder)[0] == 2
    assert asked(capsys, "salmon", *larder, "--seconds", "-1")[0] == 2
    poor = tmp_path / "poor.txt"
    poor.write_text("200 g spinach\n", encoding="utf-8")
    status, out, _ = asked(capsys, "spinach", "--larder", str(poor))
    assert status == 3
    assert "Problem" in out
    status, out, _ = asked(capsys, "salmon", *larder)
    assert status == 0
    assert "The larder holds no salmon" in out


def test_pepper_is_in_the_words_of_every_dish_and_not_too_little(
    lots_of: Any, wanting: Any, patterns: Any, tables: Any
) -> None:
    """40 g were told to be too little for a portion of 1 g."""
    from calmlarder.compose.why.place import no_place

    wanted = wanting(people=1)

    def reason(food: str, line: str) -> str:
        return no_place(tables.food_by_id[food], lots_of([line]), wanted, patterns, tables) or ""

    assert "the steps of every dish season with black pepper" in reason("pepper-black", "black pepper 40 g")
    assert "too little" in reason("carrot", "carrots 10 g")
