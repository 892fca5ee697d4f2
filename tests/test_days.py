"""Days of loads and feelings. Outside checks: scipy.stats for the rank correlation and the normal distribution."""

import json
import random
from collections.abc import Callable
from datetime import date, datetime, timedelta
from itertools import pairwise
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats

from calmlarder.cli import main
from calmlarder.history.correlation import LEAST_DAYS, LEVEL, TESTED, interval, rank_correlation, related
from calmlarder.history.days import days_of
from calmlarder.history.felt import Felt
from calmlarder.intake.eaten import EVERYONE, Eaten, Load
from calmlarder.render.days_svg import days_svg
from calmlarder.render.days_text import days_text
from calmlarder.render.style import Style

DAY = "2026-03-11"
TODAY = date.fromisoformat(DAY)


def ate(on: date, lactose_ug: int, who: str = "me", clock: str = "12:00", unknown: tuple[str, ...] = ()) -> Eaten:
    load = Load(cutoff_class="other", group="lactose", plan_ug=lactose_ug, worst_ug=lactose_ug)
    at = datetime.fromisoformat(f"{on}T{clock}")
    return Eaten(at=at, who=who, text="t", food="", title="t", grams=1, loads=(load,), unknown=unknown)


def felt(on: date, score: int, who: str = "me", note: str = "", clock: str = "20:00") -> Felt:
    return Felt(at=datetime.fromisoformat(f"{on}T{clock}"), who=who, score=score, note=note)


@given(st.lists(st.tuples(st.integers(0, 6), st.integers(0, 10)), min_size=4, max_size=60))
def test_the_rank_correlation_is_scipys(pairs: list[tuple[int, int]]) -> None:
    one, other = [a / 10 for a, _ in pairs], [float(b) for _, b in pairs]
    ours = rank_correlation(one, other)
    if len(set(one)) == 1 or len(set(other)) == 1:
        assert ours is None
    else:
        assert ours == pytest.approx(stats.spearmanr(one, other).statistic, abs=1e-12)


@given(st.floats(-0.99, 0.99), st.integers(5, 400), st.floats(0.5, 0.999))
def test_the_interval_is_bonett_and_wrights(rho: float, days: int, level: float) -> None:
    reach = stats.norm.ppf((1 + level) / 2) * np.sqrt((1 + rho**2 / 2) / (days - 3))
    low, high = interval(rho, days, level)
    assert low == pytest.approx(np.tanh(np.arctanh(rho) - reach), abs=1e-9)
    assert high == pytest.approx(np.tanh(np.arctanh(rho) + reach), abs=1e-9)


def test_the_least_number_of_days_is_where_nothing_is_told_from_a_half() -> None:
    assert pytest.approx(1 - 0.05 / len(TESTED)) == LEVEL
    for days, narrow in ((LEAST_DAYS - 1, False), (LEAST_DAYS, True)):
        assert bool(np.tanh(stats.norm.ppf((1 + LEVEL) / 2) / np.sqrt(days - 3)) <= 0.5) is narrow


def test_where_there_is_nothing_the_interval_says_so_as_often_as_it_claims() -> None:
    """2,000 made-up diaries of 25 unrelated days: at 99 %, about 20 false alarms; 60 would be far too many."""
    rng = np.random.default_rng(11)
    wrong = 0
    for _ in range(2000):
        rho = rank_correlation(list(rng.gamma(2, size=LEAST_DAYS)), [float(x) for x in rng.integers(0, 11, LEAST_DAYS)])
        assert rho is not None
        low, high = interval(rho, LEAST_DAYS, LEVEL)
        wrong += low > 0 or high < 0
    assert 3 <= wrong <= 60


def diary(count: int, related_to: bool, seed: int = 3) -> tuple[list[Eaten], list[Felt]]:
    rng = random.Random(seed)
    meals, feelings = [], []
    for number in range(count):
        on = TODAY - timedelta(days=number)
        grams = rng.random()
        meals.append(ate(on, round(grams * 1_000_000)))
        feelings.append(felt(on, min(10, round(10 * (grams if related_to else rng.random())))))
    return meals, feelings


def test_a_clear_relation_is_shown_with_its_interval_and_the_caution() -> None:
    days = days_of(*diary(40, True), "me", TODAY, 60)
    (found,) = related(days).found
    assert found.group == "lactose"
    assert found.low > 0.8
    text = " ".join(" ".join(days_text(days, related(days), Style(False, True, 80))).split())
    assert "worse on days with more" in text
    assert "5 groups were looked at" in text
    assert "does not diagnose" in text
    noise = days_of(*diary(40, False), "me", TODAY, 60)
    assert "may be nothing" in " ".join(days_text(noise, related(noise), Style(False, True, 80)))


def test_days_that_cannot_be_compared_are_left_out_and_few_days_say_nothing() -> None:
    meals, feelings = diary(LEAST_DAYS, True)
    assert related(days_of(meals, feelings, "me", TODAY, 60)).found
    meals[0] = meals[0].model_copy(update={"unknown": ("old boots",)})
    seen = related(days_of(meals, feelings, "me", TODAY, 60))
    assert (seen.days, seen.left_out, seen.found) == (LEAST_DAYS - 1, 1, ())
    seen = related(days_of(meals[1:], feelings, "me", TODAY, 60))
    assert (seen.days, seen.left_out, seen.found) == (LEAST_DAYS - 1, 1, ())


def test_days_are_local_days_of_one_person_and_a_day_without_a_log_is_not_zero() -> None:
    leap = date(2028, 2, 29)
    meals = [
        ate(leap, 1_000_000, clock="23:59"), ate(leap, 500_000, EVERYONE, "08:00"), ate(leap, 9_000_000, "robin"),
        ate(date(2028, 3, 1), 250_000, clock="00:01"),
    ]  # fmt: skip
    feelings = [felt(leap, 2), felt(leap, 7, clock="23:00"), felt(leap, 10, "robin")]
    before, on, after = days_of(meals, feelings, "me", date(2028, 3, 1), 3)
    assert (before.on, on.on) == (date(2028, 2, 28), leap)
    assert before.loads_g is None
    assert on.loads_g is not None
    assert after.loads_g is not None
    assert (on.loads_g["lactose"], on.loads_g["mannitol"], on.sittings, on.worst) == (1.5, 0, 2, 7)
    assert (after.loads_g["lactose"], after.worst) == (0.25, None)


@pytest.fixture
def run(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Callable[..., Any]:
    def asked(*words: str, status: int = 0) -> Any:
        capsys.readouterr()
        assert main([*words, "--home", str(tmp_path / "home"), "--today", DAY, "--json"]) == status
        out = capsys.readouterr().out
        return json.loads(out) if status == 0 else ""

    return asked


def test_feelings_are_kept_shown_and_undone(run: Callable[..., Any], tmp_path: Path) -> None:
    run("feel", "3", "--note", "a bit  tight", "--when", "14:30")
    run("feel", "10", "--who", "Robin")
    run("ate", "200 ml cow milk", "--when", "13:00")
    for words in (("11",), ("-1",), ("3", "--note", "x\x1b[31m"), ("3", "--note", "y" * 201), ("3", "--when", "25:00")):
        if words != ("-1",):  # argparse takes -1 for an option
            run("feel", *words, status=2)
    told = run("days", "--days", "2")
    day = told["days"][-1]
    assert (day["on"], day["worst"], day["felt"][0]["note"]) == (DAY, 3, "a bit tight")
    # Whole milk holds about 4.6 to 4.8 g of lactose in 100 g (USDA and AFCD agree on that span).
    assert 8.5 < day["loads_g"]["lactose"] < 10.5
    assert told["days"][0]["loads_g"] is None
    assert run("days", "--who", "robin", "--days", "1")["days"][0]["worst"] == 10
    for _ in range(3):
        assert main(["larder", "undo", "--home", str(tmp_path / "home")]) == 0
    assert run("days", "--days", "1")["days"][0]["felt"] == []
    run("days", "--days", "0", status=2)


def test_the_picture_is_sound_black_on_white_and_tells_itself(run: Callable[..., Any], tmp_path: Path) -> None:
    run("feel", "4", "--note", 'a <b> & "c" </title>')
    run("ate", "200 ml orange juice", "--when", "13:00")
    file = tmp_path / "days.svg"
    run("days", "--svg", str(file))
    root = ElementTree.parse(file).getroot()
    space = "{http://www.w3.org/2000/svg}"
    named = {root.find(f"{space}title").get("id"), root.find(f"{space}desc").get("id")}  # type: ignore[union-attr]
    assert set(root.get("aria-labelledby", "").split()) == named
    assert root.get("role") == "img"
    notes = [one.text or "" for one in root.iterfind(f".//{space}circle/{space}title")]
    assert [note.partition(", ")[2] for note in notes] == ['a <b> & "c" </title>']
    colours = {one.get(name) for one in root.iter() for name in ("fill", "stroke")} - {None}
    assert colours == {"black", "white"}
    (tmp_path / "mine.txt").write_text("mine", encoding="utf-8")
    run("days", "--svg", str(tmp_path / "mine.txt"), status=2)


@pytest.mark.parametrize("width", [40, 60, 80, 100])
@pytest.mark.parametrize("blocks", [True, False])
def test_the_plot_fits_its_width_and_plain_terminals(width: int, blocks: bool) -> None:
    days = days_of(*diary(200, False), "me", TODAY, 200)
    lines = list(days_text(days, related(days), Style(False, blocks, width)))
    assert max(map(len, lines)) <= width
    assert blocks or all(line.isascii() for line in lines)
    assert "<svg" in days_svg(days, "me")


def test_a_diary_begins_where_it_was_begun() -> None:
    few = days_of(*diary(10, True), "me", TODAY, 400)
    text = list(days_text(few, related(few), Style(False, True, 80)))
    assert f"{TODAY - timedelta(days=9)} to {TODAY}" in " ".join(text)
    assert len([line for line in text if "fructans + GOS" in line]) == 1
    nothing = days_of([], [], "me", TODAY, 400)
    assert f"{TODAY - timedelta(days=6)} to {TODAY}" in " ".join(
        days_text(nothing, related(nothing), Style(False, True, 80))
    )


@pytest.mark.parametrize("count", [1, 28, 400, 3660])
def test_the_picture_of_many_days_stays_a_picture(count: int) -> None:
    """Nothing lies outside of it or over its neighbour, whatever the number of days."""
    root = ElementTree.fromstring(days_svg(days_of(*diary(count, True), "me", TODAY, count), "me"))
    space = "{http://www.w3.org/2000/svg}"
    width = float(root.get("width", "0"))
    assert width <= max(1500, 2 * count + 300)
    assert len(list(root.iter(f"{space}circle"))) == count
    bars = [one for one in root.iter(f"{space}rect") if one.get("fill") != "white"]
    assert len(bars) == 7 * count
    floors: dict[float, list[tuple[float, float]]] = {}
    for bar in bars:
        x, y, wide, tall = (float(bar.get(name, "0")) for name in ("x", "y", "width", "height"))
        assert 0 <= x < x + wide <= width
        floors.setdefault(round(y + tall), []).append((x, x + wide))
    for places in floors.values():
        places.sort()
        assert all(end <= start + 0.01 for (_, end), (start, _) in pairwise(places))
    days_below = sorted(float(one.get("x", "0")) for one in root.iter(f"{space}text") if (one.text or "").endswith("."))
    below = [x for x in days_below if x >= 150]
    assert all(after - before >= 46 for before, after in pairwise(below))
