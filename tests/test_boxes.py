"""Leftovers: boxed with a composition of their own, warmed once or eaten cold, never past their days.

Outside checks: the UK Food Standards Agency's advice (leftovers within two days, cooked rice within one, reheated
once, thawed food within a day; recalled), the cut-offs of Varney et al. 2017 (J Gastroenterol Hepatol 32 Suppl 1:
53-61), and loads added up here in decimals from the CSV rows.
"""

import csv
import json
from collections.abc import Callable
from datetime import date, timedelta
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from calmlarder.checks.dinner import verify
from calmlarder.cli import main
from calmlarder.compose.boxed import InBoxes, box_up
from calmlarder.compose.compose import compose
from calmlarder.compose.dinner import Dinner
from calmlarder.household.kept_lots import kept, lots_on_day
from calmlarder.larder.box import Box, with_boxes
from calmlarder.larder.freezing import frozen, thawed, why_not_frozen
from calmlarder.larder.lot import Lot, why_unfit
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from how_much import WHOLE

DAY = "2026-03-11"
TODAY = date.fromisoformat(DAY)
LINES = (
    "firm tofu 280g, use by tomorrow", "dry white rice 500g", "spinach 200g, use by today", "3 carrots",
    "broccoli 300g, use by tomorrow", "eggs x4", "soy sauce", "rapeseed oil", "lemon x2",
)  # fmt: skip

# FSA: leftovers within 48 hours, cooked rice within 24; days after the day of cooking.
LEFTOVER_DAYS, RICE_DAYS = 2, 1


@pytest.fixture
def home(tmp_path: Path) -> Path:
    for line in LINES:
        assert main(["larder", "add", line, "--home", str(tmp_path / "home"), "--today", DAY]) == 0
    return tmp_path / "home"


@pytest.fixture
def run(home: Path, capsys: pytest.CaptureFixture[str]) -> Callable[..., dict[str, Any]]:
    def asked(*words: str, today: str = DAY, status: int = 0) -> dict[str, Any]:
        capsys.readouterr()
        assert main([*words, "--home", str(home), "--today", today, "--json"]) == status
        return dict(json.loads(capsys.readouterr().out))

    return asked


def day_after(days: int) -> str:
    return (TODAY + timedelta(days=days)).isoformat()


def cooked_for_two(lots_of: Any, wanting: Any, patterns: Any, tables: Tables, **more: Any) -> tuple[Dinner, Pattern]:
    wanted = wanting(people=2, **more)
    dinner = compose(lots_of(LINES), wanted, patterns, tables).dinners[0]
    return dinner, next(pattern for pattern in patterns if pattern.id == dinner.pattern)


def fructans_and_gos(food: str) -> Decimal:
    """G per 100 g, from the rows themselves."""
    with (shipped("ingredient_tables") / "fermentables.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = [row for row in csv.DictReader(file) if row["food"] == food and row["component"] in {"fructans", "gos"}]
    return sum((Decimal(row["g_per_100g"]) for row in rows), Decimal(0))


def test_a_box_is_warmed_and_brings_what_its_parts_bring(run: Callable[..., dict[str, Any]]) -> None:
    plan = run("tonight", "--people", "2")["dinners"][0]
    told = run("cooked", "--boxes", "1")
    assert told["boxed"]["grams"] == sum(use["grams"] for use in plan["uses"]) // 2
    assert told["boxed"]["days_left"] <= LEFTOVER_DAYS
    again = run("tonight", today=day_after(1))["dinners"][0]
    assert [use["how"] for use in again["uses"]].count("box") == 1
    # One share of the dish, each part as it was cooked.
    likely = sum((fructans_and_gos(use["food"]) * use["grams"] / 2 / 100 for use in plan["uses"]), Decimal(0))
    shown = again["per_person"]
    others = [use for use in again["uses"] if use["how"] != "box"]
    likely += sum((fructans_and_gos(use["food"]) * use["grams"] / 100 for use in others), Decimal(0))
    assert shown["loads_g"]["oligosaccharides"] == pytest.approx(float(likely), abs=0.003)
    # One food of each class at its cut-off (Varney et al. 2017): 0.50 g.
    assert shown["loads_g"]["oligosaccharides"] <= 0.505


def test_a_box_is_never_boxed_again(run: Callable[..., dict[str, Any]]) -> None:
    run("tonight", "--people", "2")
    run("cooked", "--boxes", "1")
    run("tonight", today=day_after(1))
    told = run("cooked", "--boxes", "1", today=day_after(1))
    assert told["boxed"] is None
    assert "already" in told["not_boxed"]
    assert not any("boxed" in lot["food"] for lot in run("larder", "list", today=day_after(1))["lots"])


def test_a_box_past_its_days_is_never_offered(run: Callable[..., dict[str, Any]]) -> None:
    run("tonight", "--people", "2")
    days = run("cooked", "--boxes", "1")["boxed"]["days_left"]
    late = run("tonight", today=day_after(days + 1))
    assert all(use["how"] != "box" for dinner in late["dinners"] for use in dinner["uses"])
    assert any("boxed" in one["line"] and "safe" in one["why"] for one in late["excluded"])


def test_all_of_it_is_one_action(run: Callable[..., dict[str, Any]], home: Path) -> None:
    before = run("larder", "list")
    run("tonight", "--people", "2")
    run("cooked", "--boxes", "1")
    assert run("larder", "list") != before
    assert main(["larder", "undo", "--home", str(home)]) == 0
    assert run("larder", "list") == before
    assert run("eaten")["eaten"] == []


def test_a_box_eaten_as_it_is_leaves_the_larder_and_is_logged(run: Callable[..., dict[str, Any]]) -> None:
    run("tonight", "--people", "2")
    share = run("cooked", "--boxes", "1", "--when", "18:00")["eaten"][0]
    name = next(lot["name"] for lot in run("larder", "list")["lots"] if "boxed" in lot["food"])
    eaten = run("ate", name, "--when", "12:30", today=day_after(1))["eaten"][0]
    for group, load in share["loads_g"].items():
        assert eaten["loads_g"][group] == pytest.approx(load, abs=0.002)
        # On a plate two foods may be off at once (Bertsimas & Sim 2004); a box is one thing, and all of it may be off.
        assert eaten["at_most_g"][group] >= share["at_most_g"][group] - 0.002
    assert not any("boxed" in lot["food"] for lot in run("larder", "list", today=day_after(1))["lots"])


def test_what_the_scale_showed_is_in_the_log_and_in_the_box(run: Callable[..., dict[str, Any]]) -> None:
    plan = run("tonight", "--people", "2")["dinners"][0]
    use = max(plan["uses"], key=lambda use: use["grams"])
    less = use["grams"] - 20
    told = run("cooked", "--boxes", "1", "--weighed", f"{use['food']}={less}")
    whole = sum(one["grams"] for one in plan["uses"]) - 20
    assert told["boxed"]["grams"] == whole // 2
    assert told["eaten"][0]["grams"] == pytest.approx(whole / 2)


@pytest.mark.parametrize(
    "words", [["--boxes", "3"], ["--boxes", "-1"], ["--weighed", "tofu"], ["--weighed", "cheddar=10"], ["9"]]
)
def test_cooked_says_what_cannot_be(
    words: list[str], run: Callable[..., dict[str, Any]], home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    run("tonight", "--people", "2")
    before = run("larder", "list")
    assert main(["cooked", *words, "--home", str(home), "--today", DAY]) == 2
    assert "Traceback" not in capsys.readouterr().err
    assert run("larder", "list") == before


def test_rice_keeps_a_day_and_other_leftovers_two(lots_of: Any, wanting: Any, patterns: Any, tables: Tables) -> None:
    dinner, pattern = cooked_for_two(lots_of, wanting, patterns, tables)
    lot = box_up(dinner, {}, InBoxes(1, TODAY), pattern, tables).lot
    assert lot is not None
    assert any(tables.food_by_id[use.food].kind == "rice" for use in dinner.uses)
    assert lot.days_left is not None
    assert lot.days_left <= RICE_DAYS
    for other in patterns:
        if "dinner" in other.sittings:
            found = box_up(dinner.model_copy(update={"pattern": other.id}), {}, InBoxes(1, TODAY), pattern, tables).lot
            assert found is not None
            assert found.box is not None
            assert found.box.keeps_days <= LEFTOVER_DAYS


def test_cooked_rice_fried_today_is_not_warmed_tomorrow(
    lots_of: Any, wanting: Any, patterns: Any, tables: Tables
) -> None:
    """FSA: reheat rice once."""
    lines = ("cooked rice 500g, made today", *(line for line in LINES if "rice" not in line))
    wanted = wanting(people=2, use=("rice-white-cooked",))
    dinner = compose(lots_of(lines), wanted, patterns, tables).dinners[0]
    pattern = next(one for one in patterns if one.id == dinner.pattern)
    assert any(use.food == "rice-white-cooked" for use in dinner.uses)
    lot = box_up(dinner, {}, InBoxes(1, TODAY), pattern, tables).lot
    if pattern.slots["base"].method != "raw" and lot is not None:
        food = with_boxes(tables, [lot.box]).food_by_id[lot.food] if lot.box else None
        assert food is not None
        assert "stir-fry" not in food.minutes


def test_the_check_finds_a_box_that_was_tampered_with(
    lots_of: Any, wanting: Any, patterns: Any, tables: Tables
) -> None:
    dinner, pattern = cooked_for_two(lots_of, wanting, patterns, tables)
    lot = box_up(dinner, {}, InBoxes(1, TODAY), pattern, tables).lot
    assert lot is not None
    assert lot.box is not None
    boxed = with_boxes(tables, [lot.box])
    wanted = wanting()
    again = compose([lot], wanted, patterns, boxed).dinners[0]
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}

    def faults(one: Lot) -> tuple[str, ...]:
        plain = [one.model_dump(mode="json")]
        return verify(dinner_object(again), request, plain, [shipped("ingredient_tables")], shipped("recipes"))

    assert faults(lot) == ()
    parts = tuple(
        part.model_copy(update={"most_hundredths": part.most_hundredths * 3}) for part in lot.box.mixture.parts
    )
    mixture = lot.box.mixture.model_copy(update={"parts": parts})
    assert any("it may be" in fault for fault in faults(with_box(lot, mixture=mixture)))
    assert any("does not belong" in fault for fault in faults(with_box(lot, heated=True)))


def test_a_box_that_says_it_keeps_longer_than_it_does_is_refused(
    lots_of: Any, wanting: Any, patterns: Any, tables: Tables
) -> None:
    """FSA: cooked rice within a day; the box says seven, and is three days old."""
    dinner, pattern = cooked_for_two(lots_of, wanting, patterns, tables)
    boxed = box_up(dinner, {}, InBoxes(1, TODAY - timedelta(days=3)), pattern, tables).lot
    assert boxed is not None
    assert boxed.box is not None
    lot = with_box(boxed, keeps_days=7)
    assert lot.box is not None
    lot = lot.model_copy(update={"food": lot.box.food_id, "days_left": 4, "safety_days_left": 4})
    wanted = wanting()
    # The program trusts days left as they stand in the lot; the check does not.
    late = dinner_object(compose([lot], wanted, patterns, with_boxes(tables, [lot.box])).dinners[0])
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}

    def faults(keeps_days: int, made: date) -> tuple[str, ...]:
        plain = lot.model_dump(mode="json")
        plain["box"]["keeps_days"], plain["dates"][0]["on"] = keeps_days, made.isoformat()
        return verify(late, request, [plain], [shipped("ingredient_tables")], shipped("recipes"))

    unsafe = f"`{lot.line}` is not safe to eat"
    assert unsafe in faults(7, TODAY - timedelta(days=3))
    assert unsafe not in faults(7, TODAY - timedelta(days=RICE_DAYS))
    assert unsafe in faults(0, TODAY - timedelta(days=RICE_DAYS))  # of rice that was a day old already
    # Where the larder's own lots are read anew, the days follow from the parts as well.
    row = with_boxes(tables, [lot.box]).keeping_of(
        with_boxes(tables, [lot.box]).food_by_id[lot.food], "fridge", "cooked"
    )
    assert row is not None
    assert row.days == RICE_DAYS


def with_box(lot: Lot, **update: Any) -> Lot:
    assert lot.box is not None
    return lot.model_copy(update={"box": Box.model_validate(lot.box.model_copy(update=update).model_dump())})


def test_the_freezer_stops_the_clock_and_thawing_gives_a_day(lots_of: Any, tables: Tables, tmp_path: Path) -> None:
    """FSA: freeze by the use-by day; eat within 24 hours of thawing."""
    lot = lots_of(["firm tofu 280g, use by tomorrow"])[0]
    assert why_not_frozen(lot) is None
    with Store.at(tmp_path / "home") as store:
        (number,) = store.add_lots([kept(frozen(lot, TODAY))], "freeze")
        later = TODAY + timedelta(days=20)
        (inside,) = lots_on_day(store, later, tables)
        assert why_unfit(inside.lot) is None
        assert inside.lot.days_left is None or inside.lot.days_left > 7
        store.change_lots({number: kept(thawed(inside.lot, later))}, "thaw")
        (out,) = lots_on_day(store, later, tables)
        assert out.lot.days_left == 1
        (past,) = lots_on_day(store, later + timedelta(days=2), tables)
        assert why_unfit(past.lot) is not None
    late = lots_on_day_of(lot, TODAY + timedelta(days=3), tables, tmp_path / "late")
    assert why_not_frozen(late) is not None


def lots_on_day_of(lot: Lot, day: date, tables: Tables, home: Path) -> Lot:
    with Store.at(home) as store:
        store.add_lots([kept(lot)], "add")
        return lots_on_day(store, day, tables)[0].lot


def test_frozen_too_late_stays_past_its_day(lots_of: Any, tables: Tables, tmp_path: Path) -> None:
    lot = lots_of(["firm tofu 280g, use by tomorrow"])[0]
    late = frozen(lot, TODAY + timedelta(days=3))
    assert why_unfit(lots_on_day_of(late, TODAY + timedelta(days=4), tables, tmp_path / "home")) is not None


def test_lines_about_the_freezer_come_back_from_an_export(
    home: Path, run: Callable[..., dict[str, Any]], capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    tofu = next(lot["id"] for lot in run("larder", "list")["lots"] if lot["food"] == "tofu-firm")
    run("larder", "freeze", str(tofu))
    capsys.readouterr()
    assert main(["larder", "export", "--home", str(home), "--today", DAY]) == 0
    (tmp_path / "lines.txt").write_text(capsys.readouterr().out, encoding="utf-8")
    assert main(["larder", "import", str(tmp_path / "lines.txt"), "--home", str(tmp_path / "two"), "--today", DAY]) == 0
    capsys.readouterr()
    assert main(["larder", "list", "--home", str(tmp_path / "two"), "--today", day_after(9), "--json"]) == 0
    again = json.loads(capsys.readouterr().out)["lots"]
    assert next(lot for lot in again if lot["food"] == "tofu-firm")["place"] == "freezer"
    assert main(["larder", "thaw", "999", "--home", str(home)]) == 2


# FSA: cooked rice within a day, other leftovers within two; a label's use-by on its day and not after it.
KEEPS = [("cooked rice 800g, made {}", "rice-white-cooked", 1), ("boiled potatoes 900g, made {}", "potato-boiled", 2),
         ("firm tofu 400g, use by {}", "tofu-firm", 0)]  # fmt: skip


@pytest.mark.parametrize(
    ("line", "food", "keeps", "days"),
    [(*one, days) for one in KEEPS for days in (range(6) if WHOLE else (one[-1], one[-1] + 1))],
)
def test_what_is_past_its_days_is_never_offered_whatever_is_asked(
    line: str, food: str, keeps: int, days: int, tmp_path: Path, capsys: pytest.CaptureFixture[str], tables: Tables
) -> None:
    assert food in tables.food_by_id
    told = line.format(DAY)
    home = ["--home", str(tmp_path / "home"), "--today", day_after(days)]
    for one in (told, "eggs x8", "spinach 200g", "soy sauce", "rapeseed oil", "dry white rice 500g"):
        assert main(["larder", "add", one, *home]) == 0

    def offered(*words: str) -> set[str]:
        capsys.readouterr()
        main([*words, *home, "--json"])
        answer = json.loads(capsys.readouterr().out)
        dinners = [one["dinner"] for one in answer.get("sittings", ())] + answer.get("dinners", [])
        dinners += [answer["nearest"]["dinner"]] if answer.get("nearest") else []
        return {use["line"] for dinner in dinners if dinner for use in dinner["uses"]}

    asked = offered("tonight", "--use", food, "--protein", "5")
    planned = offered("plan", "--sittings", "tonight", "--work", "1", "--buy", "0", "--protein", "5")
    if days > keeps:
        assert told not in asked | planned
        capsys.readouterr()
        number = next(one["id"] for one in json.loads(_listed(home, capsys))["lots"] if one["food"] == food)
        assert main(["larder", "freeze", str(number), *home]) == 2
    else:
        assert told in asked


def _listed(home: list[str], capsys: pytest.CaptureFixture[str]) -> str:
    assert main(["larder", "list", *home, "--json"]) == 0
    return capsys.readouterr().out


def test_the_command_says_in_a_line_what_cooking_did(
    run: Callable[..., dict[str, Any]], home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    uses = run("tonight", "--people", "2")["dinners"][0]["uses"]
    assert main(["cooked", "--boxes", "1", "--home", str(home), "--today", DAY]) == 0
    first = capsys.readouterr().out.splitlines()[0]
    assert "Logged as eaten: a portion, for you. Boxed: 1 portion, good for " in first
    out = first.partition("Out of the larder: ")[2]
    assert all(f"{use['grams']} g {use['name']}" in out for use in uses if use["how"] != "staple")
