"""Challenges day by day, limits of one's own, the clock of elimination.

Doses, days, stops: ours, after Tuck & Barrett 2017 and Van den Houte et al. 2024 (abstract read).
Limits are made again by `checks/own_limits.py`, which shares no code with `intake/own_profile.py`.
"""

import json
import random
import zlib
from collections.abc import Mapping
from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import made_up_people
from calmlarder.checks.own_limits import limits_for
from calmlarder.cli import main
from calmlarder.intake.own_limit import OWN_COMPONENTS, OwnLimit
from calmlarder.intake.own_profile import own_profile
from calmlarder.intake.profile import profile_named
from calmlarder.reintroduction.clock import clock
from calmlarder.reintroduction.course import Standing, standing
from calmlarder.reintroduction.entry_questions import QUESTIONS, SCOFF, bars
from calmlarder.reintroduction.events import Course, Eaten
from calmlarder.reintroduction.foods import challenge_food, foods_for, grams_for
from calmlarder.reintroduction.ladders import CHALLENGES, Challenge, ladder_of, order
from calmlarder.store.documents import unpacked
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

DAY = date(2026, 3, 1)


def led(challenge: Challenge, outcomes: list[int], wash: int = 1, days: int = 60) -> tuple[list[str], Standing]:
    """Days from the first on: what each asked for; each dose scores the next of the outcomes, other days `wash`."""
    course, scores, asked = Course("me", challenge, DAY), dict[date, int](), list[str]()
    coming = list(outcomes)
    for number in range(days):
        today = DAY + timedelta(days=number)
        stands = standing(course, scores, today)
        asked.append(f"{stands.dose_g:g}" if stands.what == "dose" else stands.what)
        if stands.what == "finished" or (stands.what == "dose" and not coming):
            break
        scores[today] = wash
        if stands.what == "dose":
            assert stands.dose_g
            course = course._replace(eaten=(*course.eaten, Eaten(today, stands.dose_g)))
            scores[today] = coming.pop(0)
    return asked, stands


def test_three_days_of_wash_out_then_a_dose_a_day() -> None:
    asked, stands = led("sorbitol", [1, 1, 1])
    assert asked == ["wash-out"] * 3 + ["0.5", "1", "2", "finished"]
    assert (stands.ended, stands.reckoning.own_limit_g) == ("all doses eaten", 2.0)


def test_gos_comes_every_second_day() -> None:
    asked, _ = led("gos", [1, 1, 1])
    assert asked == ["wash-out"] * 3 + ["0.5", "wait", "1", "wait", "2", "wait", "finished"]


def test_a_first_reaction_is_repeated_after_a_wash_out() -> None:
    """GOS: calm at 0.5 and 1, a reaction at 2, then calm at 2: the worked number says 2 g."""
    asked, stands = led("gos", [1, 1, 3, 1])
    assert asked[7:] == ["2", "wait", "wash-out", "wash-out", "wash-out", "2", "wait", "finished"]
    assert stands.reckoning.own_limit_g == 2.0


def test_two_reactions_end_the_ladder() -> None:
    asked, stands = led("gos", [1, 1, 3, 3])
    assert asked[-1] == "finished"
    assert (stands.ended, stands.reckoning.own_limit_g) == ("two reactions", 0.5)


def test_a_strong_reaction_ends_it_at_once() -> None:
    for score in (5, 7, 10):
        asked, stands = led("mannitol", [score])
        assert asked == ["wash-out"] * 3 + ["0.5", "finished"]
        assert (stands.ended, stands.reckoning.own_limit_g) == ("strong reaction", 0.2)


def test_a_reaction_below_a_calm_dose_is_repeated_at_most_twice() -> None:
    asked, stands = led("sorbitol", [3, 1, 1, 1, 1, 1, 1])
    doses = [one.eaten.dose_g for one in stands.tried]
    assert doses == [0.5, 0.5, 1.0, 2.0, 0.5]
    assert asked[-1] == "finished"


def test_without_a_calm_gut_it_pauses_after_a_week() -> None:
    asked, _ = led("gos", [], wash=6, days=12)
    assert asked == ["wash-out"] * 7 + ["paused"] * 5


def test_days_that_say_nothing_are_left_out_and_the_dose_comes_again() -> None:
    scores = {DAY + timedelta(days=n): 1 for n in range(3)} | {DAY + timedelta(days=3): 9}
    eaten = (Eaten(DAY + timedelta(days=3), 0.5),)
    for why in ("illness", ""):
        course = Course("me", "sorbitol", DAY, eaten=eaten, left_out={DAY + timedelta(days=3): why} if why else {})
        known = scores if why else {day: score for day, score in scores.items() if score < 9}
        stands = standing(course, known, DAY + timedelta(days=4))
        # After a bad day the gut comes to rest first, whatever the day was left out for.
        assert (stands.what, stands.dose_g) == ("wash-out" if why else "dose", 0.5)
        assert stands.tried[0].left_out == (why or "no score")


@given(st.lists(st.integers(0, 10), min_size=8, max_size=8), st.sampled_from(CHALLENGES))
def test_no_day_asks_for_more_than_the_next_dose(outcomes: list[int], challenge: Challenge) -> None:
    """Never a dose above the next of the ladder, never one above a reaction; the limit was eaten calmly."""
    _, stands = led(challenge, outcomes)
    doses = ladder_of(challenge).doses_g
    calm = 0.0
    for one in stands.tried:
        assert one.eaten.dose_g <= min((dose for dose in doses if dose > calm * 1.001), default=doses[-1])
        if one.result == "calm":
            calm = max(calm, one.eaten.dose_g)
    assert stands.reckoning.own_limit_g <= max(calm, ladder_of(challenge).cutoff_g)


def test_order_and_what_is_never_challenged() -> None:
    assert order(eats_plants=False)[0] == "sorbitol"
    assert order(eats_plants=True)[:2] == ("gos", "sorbitol")
    assert "lactose" not in order(False, ("milk",))
    assert "wheat" not in order(False, is_coeliac=True)


def test_challenge_foods_hold_the_dose_and_little_else(tables: Tables) -> None:
    """Recomputed from the component rows; cut-offs for one food: Varney et al. 2017."""
    cut_off = {"core": {"fructans": 0.3, "gos": 0.3}, "fresh": {"fructans": 0.2, "gos": 0.2}}
    for challenge in CHALLENGES:
        found = foods_for(challenge, tables)
        assert found, challenge
        for one in found[:10]:
            parts = {name: float(row.g_per_100g) for name, row in tables.fermentables_of(one.food.id).items()}
            top = one.grams[-1]
            sums = {name: each * top / 100 for name, each in parts.items()}
            sums["excess_fructose"] = max(0.0, sums["fructose"] - sums["glucose"])
            own = "fructans" if challenge in {"wheat", "onion", "garlic"} else challenge
            top_dose = ladder_of(challenge).doses_g[-1]
            assert 0.9 * top_dose <= sums[own] <= top_dose + 1e-9  # as a scale shows it, never more
            most = {"lactose": 1.0, "sorbitol": 0.2, "mannitol": 0.2, "excess_fructose": 0.4}
            most |= cut_off.get(one.food.cutoff_class, cut_off["fresh"])
            assert all(sums[name] <= limit + 0.006 for name, limit in most.items() if name != own), one.food.id
    lentils = tables.food_by_id["lentils-red-dry"]
    assert challenge_food(lentils, "gos", tables) is None  # sorbitol besides
    assert grams_for(tables.food_by_id["milk"], "lactose", 5.05, tables) == 100.0


def test_the_clock_of_elimination() -> None:
    before = {DAY - timedelta(days=n): 6 for n in range(1, 8)}
    for weeks, now, says in ((1, 6, "going on"), (2, 6, "how is it going"), (4, 4, "reintroduction"),
                             (4, 5, "how is it going"), (6, 5, "end it"), (7, 3, "reintroduction")):  # fmt: skip
        today = DAY + timedelta(weeks=weeks)
        last = {today - timedelta(days=n): now for n in range(7)}
        assert clock(DAY, today, before | last).says == says


def test_entry_questions() -> None:
    assert not bars(())
    assert not bars(SCOFF[:1])
    assert bars(SCOFF[:2])[0].whom == "dietitian"  # two or more: Morgan, Reid & Lacey 1999
    for question in QUESTIONS:
        if question.whom:
            assert bars([question.key])[0].whom == question.whom


@settings(max_examples=60)
@given(
    st.dictionaries(st.sampled_from(OWN_COMPONENTS), st.sampled_from([0.1, 0.25, 0.5, 1.0, 2.0, 6.0]), min_size=1),
    st.booleans(),
    st.booleans(),
    st.sampled_from(["dinner", "snack"]),
)
def test_own_limits_are_those_of_the_check(
    tables: Tables, owns: Mapping[Any, float], they_add: bool, with_wheat: bool, sitting: Any
) -> None:
    limits = [OwnLimit(component=name, grams=grams, on=DAY, said_by="me") for name, grams in owns.items()]
    if with_wheat:
        limits = [one for one in limits if one.component != "fructans"]
        limits.append(OwnLimit(component="fructans", grams=1, on=DAY, said_by="c", source="wheat", classes=("core",)))
        limits.append(
            OwnLimit(component="fructans", grams=0.25, on=DAY, said_by="c", source="onion", classes=("fresh", "other"))
        )
    profile = own_profile(profile_named("elimination", tables), limits, they_add).at(sitting)
    ours: dict[tuple[str, str], tuple[Fraction, Fraction | None]] = {}
    for scope, caps in (("food", profile.food_caps), ("sitting", profile.sitting_caps)):
        for cap in caps:
            ours[scope, cap.key] = (Fraction(cap.typical_g), None if cap.at_most_g is None else Fraction(cap.at_most_g))
    again: dict[tuple[str, str], tuple[Fraction, Fraction | None]] = {}
    asked = {**own_profile(profile_named("elimination", tables), limits, they_add).plain}
    for one in limits_for([shipped("ingredient_tables")], asked, sitting):
        if one.scope != "day":
            typical, most = again.get((one.scope, one.key), (one.typical, one.most))
            assert one.most is not None
            assert most is not None
            again[one.scope, one.key] = (min(typical, one.typical), min(most, one.most))
    assert ours == again
    for one in limits:  # nobody's sitting brings more of a component than they tolerate
        cap = next(cap for cap in profile.sitting_caps if cap.group == one.component and not cap.applies_to)
        most_of_it = max(Decimal(str(own.grams)) for own in limits if own.component == one.component)
        assert cap.typical_g == cap.at_most_g == most_of_it


class Home:
    """A home on disk; each command says its day."""

    def __init__(self, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self._folder, self._capsys = folder, capsys

    def run(self, *words: str, day: date | None = None, status: int = 0) -> Any:
        today = ["--today", day.isoformat()] if day else []
        assert main(["--home", str(self._folder), *today, *words, "--json"]) == status
        return json.loads(self._capsys.readouterr().out)


@pytest.fixture
def home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Home:
    return Home(tmp_path / "home", capsys)


def test_a_challenge_from_its_start_to_a_limit(home: Home) -> None:
    found = home.run("challenge", "start", "gos", "--yes", "none", day=DAY)
    assert (found["started"], found["today"]["what"], found["today"]["food"]) == (True, "wash-out", "chickpeas-boiled")
    for number in range(9):
        day = DAY + timedelta(days=number)
        home.run("challenge", "score", "1", "0", "1", "0", day=day)
    end = home.run("challenge", "today", day=DAY + timedelta(days=9))
    assert (end["what"], end["own_limit_g"]) == ("finished", 2.0)
    status = home.run("challenge", "status", day=DAY + timedelta(days=9))
    (own,) = status["own_limits"]
    assert (own["component"], own["grams"], own["said_by"]) == ("gos", 2.0, "challenge")
    assert own["risk"] == pytest.approx(0.054, abs=0.001)  # the worked number
    assert status["today"]["what"] is None
    assert "gos" not in status["left"]
    (history,) = home.run("challenge", "history", day=DAY + timedelta(days=9))["challenges"]
    assert [one["dose_g"] for one in history["days"]] == [0.5, 1.0, 2.0]
    home.run("people", "set", "me", "--profile", "own")
    limit = home.run("limit", "boiled chickpeas")
    assert 100 < limit["grams_weighed"] < 170  # 2 g of GOS at 1.2 g in 100 g, less what its figure may be off


def all_calm(home: Home, days: int) -> None:
    home.run("challenge", "start", "gos", "--yes", "none", day=DAY)
    for number in range(days):
        home.run("challenge", "score", "1", "0", "1", "0", day=DAY + timedelta(days=number))


@pytest.mark.parametrize("command", [("challenge", "score"), ("feel",)])
@pytest.mark.parametrize(("worst", "limit"), [(9, 1.0), (3, 1.0), (1, 2.0)])
def test_a_day_that_is_scored_after_the_end_lowers_the_limit(
    home: Home, command: tuple[str, ...], worst: int, limit: float
) -> None:
    """The day after a dose of GOS counts with it; a limit is never above what was eaten calmly."""
    all_calm(home, 8)
    end = DAY + timedelta(days=9)
    assert home.run("challenge", "today", day=end)["own_limit_g"] == 2.0
    home.run("people", "set", "me", "--profile", "own", day=end)
    late = f"{end - timedelta(days=1)}T21:00"
    home.run(*command, str(worst), "0", "0", "0", "--when", late, day=end)
    status = home.run("challenge", "status", day=end)
    assert [one["grams"] for one in status["own_limits"]] == [limit]
    (course,) = home.run("challenge", "history", day=end)["challenges"]
    assert course["limit_g"] == limit
    home.run(*command, "0", "0", "0", "0", "--when", late, day=end)  # the worst of a day counts
    assert home.run("challenge", "status", day=end)["own_limits"] == status["own_limits"]


def test_a_late_score_while_another_challenge_goes_on_lowers_the_one_that_ended(home: Home) -> None:
    all_calm(home, 8)
    end = DAY + timedelta(days=9)
    home.run("challenge", "today", day=end)
    home.run("challenge", "start", "sorbitol", "--yes", "none", day=end)
    late = f"{end - timedelta(days=1)}T21:00"
    told = home.run("challenge", "score", "3", "0", "0", "0", "--when", late, day=end)
    assert told["lowered"] == [{"challenge": "gos", "limit_g": 1.0}]
    assert [one["grams"] for one in home.run("challenge", "status", day=end)["own_limits"]] == [1.0]
    assert home.run("challenge", "today", day=end)["challenge"] == "sorbitol"


@pytest.mark.parametrize(("said", "left"), [(0.5, [(0.5, "my dietitian")]), (5.0, [(2.0, "challenge")])])
def test_the_lower_of_what_was_set_and_what_was_found_counts(
    home: Home, capsys: pytest.CaptureFixture[str], said: float, left: list[tuple[float, str]]
) -> None:
    """Nobody's word is widened by arithmetic; what is found is never above what was eaten calmly."""
    words = ("people", "set", "me", "--limit", f"gos {said}", "--said-by", "my dietitian", "--profile", "own")
    home.run(*words, day=DAY)
    all_calm(home, 9)
    end = DAY + timedelta(days=9)
    home.run("challenge", "today", day=end)
    status = home.run("challenge", "status", day=end)
    assert [(one["grams"], one["said_by"]) for one in status["own_limits"]] == left
    assert "gos" not in home.run("challenge", "status", day=end + timedelta(days=200))["retest"]
    kind = "status" if said < 2 else "today"
    assert main(["--home", str(home._folder), "--today", end.isoformat(), "challenge", kind]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert ("set by my dietitian goes on" if said < 2 else "in place of 5 g, set by my dietitian") in told


def test_a_reaction_takes_the_place_of_a_higher_limit_that_was_set(home: Home) -> None:
    words = ("people", "set", "me", "--limit", "gos 2", "--said-by", "my dietitian", "--profile", "own")
    home.run(*words, day=DAY)
    all_calm(home, 3)
    home.run("challenge", "score", "9", "0", "0", "0", day=DAY + timedelta(days=3))
    status = home.run("challenge", "status", day=DAY + timedelta(days=4))
    assert (status["own_limits"], status["profile"]) == ([], "elimination")


def test_answers_that_bar_a_challenge_start_nothing(home: Home) -> None:
    found = home.run("challenge", "start", "gos", "--yes", "blood,pregnant", day=DAY, status=3)
    assert [bar["see"] for bar in found["bars"]] == ["doctor", "dietitian"]
    assert home.run("challenge", "today", day=DAY)["challenge"] is None


@pytest.mark.parametrize("command", [("challenge", "score", "1", "0", "1", "0"), ("feel", "1", "0", "1", "0")])
@pytest.mark.parametrize(
    ("note", "stops"),
    [("blood in my stool", True), ("no blood, all calm", False), ("woke at night with cramps", True), ("calm", False)],
)
def test_a_red_flag_stops_at_once_and_no_blood_never_does(
    home: Home, command: tuple[str, ...], note: str, stops: bool
) -> None:
    home.run("challenge", "start", "gos", "--yes", "none", day=DAY)
    home.run(*command, "--note", note, day=DAY)
    found = home.run("challenge", "today", day=DAY)
    assert (found["challenge"] is None) == stops


def test_limits_set_by_hand_need_somebody_who_says_so(home: Home, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--home", str(home._folder), "people", "set", "me", "--limit", "gos 2"]) == 2
    assert "--said-by" in capsys.readouterr().err
    found = home.run(
        "people", "set", "me", "--limit", "gos 2", "--said-by", "my dietitian", "--profile", "own", day=DAY
    )
    (own,) = found["people"][0]["own_limits"]
    assert (own["on"], own["said_by"]) == (DAY.isoformat(), "my dietitian")
    plate = ("plate", "100 g boiled chickpeas", "100 g carrot")
    assert home.run(*plate, day=DAY)["fits"] is True
    assert home.run(*plate, "--profile", "elimination", day=DAY, status=3)["fits"] is False


def test_the_rest_of_a_sum_stays_where_it_was(home: Home) -> None:
    """More GOS is tolerated; that buys no fructans."""
    home.run("people", "set", "me", "--limit", "gos 2", "--said-by", "my dietitian", "--profile", "own")
    assert home.run("plate", "60 g onion", status=3)["fits"] is False


def test_people_come_change_and_go_and_undo_brings_them_back(home: Home, capsys: pytest.CaptureFixture[str]) -> None:
    home.run("people", "add", "flatmate", "--diet", "vegan", "--avoid", "nuts", "--appetite", "1.3")
    assert [one["name"] for one in home.run("people", "list")["people"]] == ["me", "flatmate"]
    home.run("people", "set", "me", "--avoid", "milk")
    assert main(["--home", str(home._folder), "people", "add", "flatmate"]) == 2
    assert main(["--home", str(home._folder), "people", "set", "nobody-here", "--diet", "vegan"]) == 2
    capsys.readouterr()
    assert home.run("people", "list")["people"][0]["avoid"] == ["milk"]
    home.run("people", "remove", "flatmate")
    assert main(["--home", str(home._folder), "larder", "undo"]) == 0
    capsys.readouterr()
    assert len(home.run("people", "list")["people"]) == 2


def test_made_up_people_get_few_limits_that_are_too_high() -> None:
    """Two hundred people; a thousand and more by hand. Binomial: 10 % and three standard errors."""
    found = made_up_people.summary(200, 3, made_up_people.through_the_ladder)
    assert found.above_threshold < 0.10 + 3 * (0.1 * 0.9 / 200) ** 0.5
    assert found.not_ended == 0
    rng = random.Random(1)
    tolerant = made_up_people.MadeUp("gos", 1000.0, 0)
    limits = [made_up_people.through_the_ladder(tolerant, rng).limit_g for _ in range(60)]
    assert sum(limit == 2.0 for limit in limits) > 40  # who tolerates everything mostly finds that out


def test_what_was_eaten_before_counts_for_fructans_and_for_gos() -> None:
    """An entry of a version that kept their sum only: each may have been all of it."""
    kept = [{"group": "oligosaccharides", "likely_ug": 5}, {"group": "lactose"}]
    old = {"at": "2026-03-01T12:00", "loads": kept, "v": 1}
    text = json.dumps({**old, "crc": zlib.crc32(json.dumps(old, sort_keys=True).encode())})
    loads = unpacked("eaten", text)["loads"]
    assert [(load["group"], load.get("likely_ug")) for load in loads] == [
        ("oligosaccharides", 5), ("lactose", None), ("fructans", 5), ("gos", 5),
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("words", "statuses"),
    [
        (("swap", "onion"), {0, 3}), (("swap", "mushrooms"), {0, 3}),
        (("limit", "onion"), {0}), (("limit", "milk"), {0}),
        (("plate", "60 g onion", "200 ml milk", "100 g mushrooms", "80 g chickpeas"), {0, 3}),
        (("tonight", "--larder", "LARDER"), {0, 3}), (("why", "carrot", "--larder", "LARDER"), {0, 3}),
        (("plan", "--larder", "LARDER", "--days", "1", "--work", "0"), {0, 3}),
        (("adapt", "RECIPE", "--serves", "2"), {0, 3}),
    ],
)  # fmt: skip
def test_own_limits_count_everywhere_and_pass_each_check(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], words: tuple[str, ...], statuses: set[int]
) -> None:
    """Of each kind: a group, half of a sum, a single polyol. Status 70 would be a check that failed."""
    limits = [part for one in ("fructans 0.5", "lactose 6", "sorbitol 1") for part in ("--limit", one)]
    home = ("--home", str(tmp_path / "home"), "--today", DAY.isoformat())
    assert main([*home, "people", "set", "me", *limits, "--said-by", "my dietitian", "--profile", "own"]) == 0
    larder, recipe = tmp_path / "larder.txt", tmp_path / "recipe.txt"
    larder.write_text("rice 500g\n4 carrots\nfirm tofu 400g\nonions x3\nmushrooms 200g\nsoy sauce\nolive oil\n1 lime\n")
    recipe.write_text("Pasta\nServes 2\n200 g pasta\n1 onion\n200 ml milk\n100 g mushrooms\n\nBoil it.\n")
    named = [{"LARDER": str(larder), "RECIPE": str(recipe)}.get(word, word) for word in words]
    extra = ["--profile", "own"] if "LARDER" in words else []
    status = main([*home, *named, *extra])
    told = capsys.readouterr()
    assert status in statuses, told.err
    assert "at fault" not in told.err


@pytest.mark.parametrize("stop", [("challenge", "stop"), ("feel", "3", "--note", "blood in my stool")])
def test_a_challenge_that_was_stopped_leaves_elimination_as_old_as_it_was(home: Home, stop: tuple[str, ...]) -> None:
    began = DAY - timedelta(weeks=5)
    home.run("people", "set", "me", "--phase", "elimination", "--since", began.isoformat(), day=DAY)
    home.run("challenge", "start", "gos", "--yes", "none", day=DAY)
    home.run("challenge", "score", "1", "0", "1", "0", day=DAY)
    assert home.run("challenge", "status", day=DAY)["phase"] == "reintroduction"
    home.run(*stop, day=DAY + timedelta(days=1))
    found = home.run("challenge", "status", day=DAY + timedelta(days=1))
    assert (found["phase"], found["since"]) == ("elimination", began.isoformat())
    assert found["clock"]["weeks"] == 5
    if stop[0] == "challenge":
        home.run("larder", "undo")
        assert home.run("challenge", "status", day=DAY + timedelta(days=1))["phase"] == "reintroduction"


def test_a_challenge_stopped_after_one_that_told_something_is_no_elimination_again(home: Home) -> None:
    home.run("people", "set", "me", "--phase", "elimination", "--since", "2026-02-01", day=DAY)
    home.run("challenge", "start", "gos", "--yes", "none", day=DAY)
    for number in range(9):
        home.run("challenge", "score", "1", "0", "1", "0", day=DAY + timedelta(days=number))
    later = DAY + timedelta(days=12)
    home.run("challenge", "status", day=DAY + timedelta(days=9))
    home.run("challenge", "start", "lactose", "--yes", "none", day=later)
    home.run("challenge", "stop", day=later)
    found = home.run("challenge", "status", day=later)
    assert (found["phase"], found["since"]) == ("reintroduction", DAY.isoformat())
