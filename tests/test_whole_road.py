"""The road from elimination to limits of one's own as somebody walks it, day by day, by commands.

What each step must do: the agreed specification, after Tuck & Barrett 2017 and Whelan et al. 2018 (recalled).
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
