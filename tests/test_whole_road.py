"""The road from elimination to limits of one's own as somebody walks it, day by day, by commands.

What each step must do: ours, after Tuck & Barrett 2017 and Whelan et al. 2018 (recalled).
"""

from datetime import date, timedelta
from pathlib import Path

import pytest

from calmlarder.reintroduction.course import standing
from calmlarder.reintroduction.events import Course, Eaten
from test_reintroduction_safety import DAY, Home

LARDER = "rice 500g\n4 carrots\nfirm tofu 400g\nsoy sauce\nolive oil\n1 lime\nspinach 200g\nmushrooms 300g\n"


@pytest.fixture
def home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Home:
    return Home(tmp_path / "home", capsys)


def day(number: int) -> date:
    return DAY + timedelta(days=number)


def challenged(home: Home, group: str, first: int, worst: list[int]) -> int:
    """A challenge from a day on, doses scored as given, other days 1; the first day after it."""
    home.json(day(first), "challenge", "start", group, "--yes", "none")
    coming, number = list(worst), first
    while home.json(day(number), "challenge", "today")["what"]:
        is_dose = home.json(day(number), "challenge", "today")["what"] == "dose"
        home.json(day(number), "challenge", "score", str(coming.pop(0) if is_dose else 1), "0", "0", "0")
        number += 1
    return number


def test_nobody_is_in_elimination_without_its_limits(home: Home) -> None:
    """Mushrooms are over the cut-off of mannitol, 0.20 g for one food (Varney et al. 2017), in any usual portion."""
    (kit,) = home.json(DAY, "people", "add", "kit", "--phase", "elimination")["people"]
    assert kit["profile"] == "elimination"
    for name in ("lea", "mo"):
        home.json(DAY, "people", "add", name)
    (lea,) = home.json(DAY, "people", "set", "lea", "--phase", "elimination")["people"]
    assert lea["profile"] == "elimination"
    assert home.json(DAY, "challenge", "start", "gos", "--who", "mo", "--yes", "none")["started"]
    assert {one["profile"] for one in home.json(DAY, "people", "list")["people"]} == {"elimination"}
    (lea,) = home.json(DAY, "people", "set", "lea", "--profile", "none")["people"]
    assert lea["profile"] == "none"


def test_a_child_in_elimination_is_told_of_a_dietitian(home: Home) -> None:
    home.json(DAY, "people", "add", "kit", "--age", "12")
    assert "only with a dietitian" in home.told(DAY, "people", "set", "kit", "--phase", "elimination")


def test_a_retest_that_fails_takes_the_earlier_limit_away(home: Home) -> None:
    """Never above what was eaten calmly: the last try says so."""
    after = challenged(home, "sorbitol", 0, [1, 1, 1])
    home.json(day(after), "people", "set", "me", "--profile", "own")
    (own,) = home.json(day(after), "challenge", "status")["own_limits"]
    assert own["grams"] == 2.0
    home.json(day(after), "people", "set", "me", "--limit", "gos 1", "--said-by", "my dietitian")
    after = challenged(home, "sorbitol", after + 200, [3, 3])
    (own,) = home.json(day(after), "challenge", "status")["own_limits"]
    assert own["component"] == "gos"


def test_with_the_last_limit_gone_those_of_elimination_hold(home: Home) -> None:
    after = challenged(home, "sorbitol", 0, [1, 1, 1])
    home.json(day(after), "people", "set", "me", "--profile", "own")
    after = challenged(home, "sorbitol", after + 200, [3, 3])
    status = home.json(day(after), "challenge", "status")
    assert (status["own_limits"], status["profile"]) == ([], "elimination")


def test_a_lower_dose_comes_again_only_after_a_wash_out() -> None:
    """A reaction at 0.5 g, then calm up to 2 g: 0.5 g once more, from three calm days."""
    course, scores, asked, coming = Course("me", "sorbitol", DAY), dict[date, int](), list[str](), [3, 1, 1, 1, 1, 1]
    for number in range(40):
        stands = standing(course, scores, day(number))
        asked.append(f"{stands.dose_g:g}" if stands.what == "dose" else stands.what)
        if stands.what == "finished":
            break
        scores[day(number)] = coming.pop(0) if stands.what == "dose" else 1
        if stands.what == "dose" and stands.dose_g:
            course = course._replace(eaten=(*course.eaten, Eaten(day(number), stands.dose_g)))
    last = len(asked) - 1 - asked[::-1].index("2")
    assert asked[last + 1 : last + 5] == ["wash-out", "wash-out", "wash-out", "0.5"]


def test_a_comparison_day_may_be_asked_for_later_and_nothing_is_lost(home: Home) -> None:
    home.json(DAY, "challenge", "start", "gos", "--yes", "none")
    for number in range(2):
        home.json(day(number), "challenge", "score", "1", "0", "1", "0")
    assert "challenge control" in home.told(day(2), "challenge", "today")
    assert home.json(day(2), "challenge", "control")["wash_out_scores"] == [1, 1]
    home.json(day(2), "challenge", "score", "1", "0", "1", "0")
    assert home.json(day(3), "challenge", "today")["what"] == "control"
    home.json(day(3), "challenge", "score", "4", "0", "1", "0")
    told = home.told(day(4), "challenge", "today")
    assert "without any dose" in told
    assert "last dose counts as a reaction" not in told
    home.told(day(4), "challenge", "control", status=2)  # too late for another


def test_after_a_red_flag_each_look_says_to_see_a_doctor(home: Home) -> None:
    day_of_dose = home.until_the_dose("gos")
    home.json(day_of_dose, "challenge", "score", "1", "0", "1", "0", "--note", "blood on the paper")
    later = day_of_dose + timedelta(days=20)
    assert "a doctor should know of" in home.told(later, "challenge", "today")
    assert "a doctor should know of" in home.told(later, "challenge", "page")
    home.json(later, "challenge", "start", "sorbitol", "--yes", "seen")
    assert "a doctor should know of" not in home.told(later, "challenge", "today")


def test_after_a_strong_reaction_the_next_day_still_says_what_to_do(home: Home) -> None:
    day_of_dose = home.until_the_dose("sorbitol")
    home.json(day_of_dose, "challenge", "score", "8", "0", "1", "0")
    assert "until it settles" in home.told(day_of_dose + timedelta(days=1), "challenge", "today")
    assert "until it settles" not in home.told(day_of_dose + timedelta(days=9), "challenge", "today")


def test_what_a_limit_means_is_told_in_food(home: Home) -> None:
    after = challenged(home, "sorbitol", 0, [1, 1, 1])
    told = home.told(day(after), "challenge", "page")
    assert "2 g of sorbitol (50 g of blackberries)" in told.replace("\\", "")
    assert "estimated limit 2 g at one meal" in home.told(day(after), "challenge", "history")


def test_history_calls_a_limit_of_elimination_so(home: Home) -> None:
    after = challenged(home, "sorbitol", 0, [3, 3])
    assert "the limit of elimination stays, 0.2 g" in home.told(day(after), "challenge", "history")


def test_eating_as_in_elimination_with_nothing_tried_is_not_silent(home: Home, tmp_path: Path) -> None:
    """Never silently longer: the specification; two weeks are ours."""
    (tmp_path / "larder.txt").write_text(LARDER)
    home.told(DAY, "larder", "import", str(tmp_path / "larder.txt"))
    after = challenged(home, "sorbitol", 0, [3, 3])
    assert "No group has been tried" not in home.told(day(after + 2), "tonight", status=None)
    assert "No group has been tried" in home.told(day(after + 14), "tonight", status=None)


@pytest.mark.parametrize(("yes", "is_urgent"), [("blood", True), ("family-cancer", False), ("anaemia", False)])
def test_an_emergency_is_spoken_of_where_one_may_be_near(home: Home, yes: str, is_urgent: bool) -> None:
    told = home.told(DAY, "challenge", "start", "gos", "--yes", yes, status=3)
    assert ("emergency" in told) == is_urgent
    assert "need not be serious" in told


def test_a_reaction_below_what_elimination_holds_is_told(home: Home) -> None:
    """The lowest dose of garlic, 0.125 g of fructans, is below the cut-off of 0.20 g (Varney et al. 2017)."""
    home.json(DAY, "challenge", "start", "garlic", "--yes", "none")
    told, number = "", 0
    while "is over" not in told:
        is_dose = home.json(day(number), "challenge", "today")["what"] == "dose"
        told = home.told(day(number), "challenge", "score", "3" if is_dose else "1", "0", "0", "0")
        number += 1
    assert "leave garlic out until then" in told


def test_a_dose_that_was_not_eaten_is_taken_back_as_told(home: Home) -> None:
    day_of_dose = home.until_the_dose("sorbitol")
    assert "larder undo" in home.told(day_of_dose, "challenge", "score", "1", "0", "1", "0")
    home.told(day_of_dose, "larder", "undo")
    home.json(day_of_dose, "challenge", "score", "1", "0", "1", "0", "--not-eaten")
    assert home.json(day_of_dose + timedelta(days=1), "challenge", "today")["dose_g"] == 0.5


def test_a_day_that_does_not_count_is_said_to_come_again(home: Home) -> None:
    day_of_dose = home.until_the_dose("sorbitol")
    home.json(day_of_dose, "challenge", "score", "1", "0", "1", "0", "--also", "illness")
    assert "does not count (illness)" in home.told(day_of_dose + timedelta(days=1), "challenge", "today")


def test_arithmetic_tells_nobody_to_eat_on_after_two_reactions(home: Home) -> None:
    told = home.told(DAY, "challenge", "reckon", "gos", "--days", "2:reaction 2:reaction", status=None)
    assert "ends after 2 reactions" in told
    assert "eat the same dose again" not in told
