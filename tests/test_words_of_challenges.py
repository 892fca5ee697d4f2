"""What a day of a challenge, its end and the clock say: nothing false, nothing that frightens, nothing left unsaid.

Read by fresh eyes as a frightened newcomer and as a dietitian; what must be said: the specification after Tuck &
Barrett 2017 and the AGA clinical practice update 2022 (recalled).
"""

from datetime import date, timedelta
from pathlib import Path

import pytest

from calmlarder.intake.own_limit import own_limit_of
from calmlarder.intake.own_profile import asked_before_kept
from calmlarder.reintroduction.course import standing
from calmlarder.reintroduction.events import Course, Eaten
from calmlarder.reintroduction.foods import foods_for
from calmlarder.tables.book import Tables
from conftest import TODAY
from test_reintroduction_safety import DAY, Home


@pytest.fixture
def home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Home:
    return Home(tmp_path / "home", capsys)


def test_after_weeks_without_a_score_no_dose_comes_before_calm_days() -> None:
    """Seven days without: pause and say so (the specification)."""
    scores = {DAY + timedelta(days=number): 1 for number in range(4)}
    course = Course("me", "sorbitol", DAY, eaten=(Eaten(DAY + timedelta(days=3), 0.5),))
    asked = {}
    for number in (4, 10, 11, 70):
        stands = standing(course, scores, DAY + timedelta(days=number))
        asked[number] = stands.what
    assert asked == {4: "dose", 10: "dose", 11: "paused", 70: "paused"}
    assert standing(course, scores, DAY + timedelta(days=70)).silent_since == DAY + timedelta(days=3)
    later = scores | {DAY + timedelta(days=70 + number): 1 for number in range(3)}
    found = [standing(course, later, DAY + timedelta(days=70 + number)).what for number in range(4)]
    assert found == ["wash-out", "wash-out", "wash-out", "dose"]


def test_a_wash_out_that_was_calm_long_ago_is_none() -> None:
    scores = {DAY + timedelta(days=number): 1 for number in range(3)}
    course = Course("me", "gos", DAY)
    assert standing(course, scores, DAY + timedelta(days=3)).what == "dose"
    assert standing(course, scores, DAY + timedelta(days=73)).what == "paused"


def test_ten_weeks_of_silence_are_told(home: Home) -> None:
    day = home.until_the_dose("sorbitol")
    home.json(day, "challenge", "score", "1", "0", "0", "0")
    told = home.told(day + timedelta(days=70), "challenge", "today")
    assert "10 weeks since the last day you scored" in told
    assert "Today the next dose" not in told


def test_three_days_with_a_bad_one_are_not_called_calm(home: Home) -> None:
    home.json(DAY, "challenge", "start", "sorbitol", "--yes", "none")
    for number, worst in enumerate((6, 1, 1)):
        told = home.told(DAY + timedelta(days=number), "challenge", "score", str(worst), "0", "0", "0")
    assert "calm days are scored" not in told
    assert "the first dose may come tomorrow" in told


def test_a_calm_dose_is_told_to_be_calm(home: Home) -> None:
    day = home.until_the_dose("sorbitol")
    told = home.told(day, "challenge", "score", "1", "0", "0", "0")
    assert "calm so far" in told
    assert "no further dose" not in told


def test_a_full_dose_after_a_strong_day_that_does_not_count_is_no_silent_one(home: Home) -> None:
    day = home.until_the_dose("sorbitol")
    home.json(day, "challenge", "score", "6", "0", "0", "0", "--also", "period")
    for number in range(1, 4):
        told = home.told(day + timedelta(days=number), "challenge", "score", "1", "0", "0", "0")
        assert "does not count (period), though you felt bad on it; you did nothing wrong" in told
    told = home.told(day + timedelta(days=4), "challenge", "today")
    assert "you felt bad" in told
    assert "stop here" in told


@pytest.mark.parametrize("challenge", ["sorbitol", "gos"])
def test_no_sweetener_and_no_dry_pulse_is_a_challenge_food(challenge: str, tables: Tables) -> None:
    """Xylitol and maltitol are other polyols; gum and sweets vary; a dry pulse is weighed boiled."""
    found = {one.food.id for one in foods_for(challenge, tables)}  # type: ignore[arg-type]
    assert found
    assert not [food for food in found if any(word in food for word in ("xylitol", "maltitol", "sugar-free", "sweet"))]
    assert not [food for food in found if "bean" in food and food.endswith("-dry")]


def test_the_largest_dose_eaten_calmly_is_no_ceiling(home: Home) -> None:
    day = home.until_the_dose("sorbitol")
    for number in range(3):
        told = home.told(day + timedelta(days=number), "challenge", "score", "1", "0", "0", "0")
    told = home.told(day + timedelta(days=3), "challenge", "today")
    assert "at least 2 g of sorbitol" in told
    assert "more was not tried" in told


def test_what_stays_after_a_reaction_is_told_in_food(home: Home) -> None:
    day = home.until_the_dose("gos")
    told = home.told(day, "challenge", "score", "9", "0", "0", "0")
    assert "0.3 g of GOS at one meal, such as about 2" in told


@pytest.mark.parametrize(("kind", "words"), [("stop", "Nothing is concluded"), ("skip", "nothing to skip")])
def test_a_warning_sign_in_a_reason_is_answered_first(home: Home, kind: str, words: str) -> None:
    told = home.told(DAY, "challenge", kind, "--why", "blood in my stool", status=None)
    assert told.startswith("You wrote “blood in my stool”. Please see a doctor")
    assert "start GROUP" not in told
    home.json(DAY, "challenge", "start", "gos", "--yes", "none")
    told = home.told(DAY, "challenge", "stop", "--why", "blood in my stool")
    assert "you may begin again" not in told


def test_a_warning_sign_in_what_was_eaten_is_answered(home: Home) -> None:
    told = home.told(DAY, "ate", "blood in my stool", status=2)
    assert "see a doctor" in told
    assert "black pudding" not in told


@pytest.mark.parametrize(
    ("weeks", "worst", "said", "unsaid"),
    [
        (0, 6, "When did it begin?", "0 weeks so far"),
        (2, 5, "before elimination", "week before and"),
        (4, 5, "Not clearly better yet", "How is it going"),
        (21, 5, "21 weeks, far longer than meant", "Still to try"),
    ],
)
def test_the_clock_says_what_its_week_asks_for(home: Home, weeks: int, worst: int, said: str, unsaid: str) -> None:
    since = DAY - timedelta(weeks=weeks)
    if weeks:
        home.json(since, "people", "set", "me", "--phase", "elimination", "--since", since.isoformat())
        for number in range(1, 8):
            home.json(since, "feel", "6", "--when", f"{since - timedelta(days=number)}T20:00")
    for number in range(7 if weeks else 1):
        home.json(DAY, "feel", str(worst), "--when", f"{DAY - timedelta(days=number)}T00:01")
    told = home.told(DAY, "challenge", "status")
    assert said in told
    assert unsaid not in told


def test_a_phase_cannot_begin_in_days_to_come(home: Home) -> None:
    told = home.told(DAY, "people", "set", "me", "--since", "2027-01-01", status=2)
    assert "still to come" in told


def test_a_limit_far_beyond_what_is_tried_is_a_slip(home: Home) -> None:
    told = home.told(DAY, "people", "set", "me", "--limit", "gos 50", "--said-by", "my dietitian", status=2)
    assert "Check the number with your dietitian" in told
    home.json(DAY, "people", "set", "me", "--limit", "gos 5", "--said-by", "my dietitian")


@pytest.mark.parametrize(
    ("said", "found_g", "words"),
    [
        ("lactose 40", None, "40 times the published 1 g"), ("lactose 3", None, ""), ("lactose 3.1", None, "3 times"),
        ("gos 0.9", None, ""), ("gos 0.8", 0.5, "more than the 0.5 g that your challenge found"), ("gos 0.5", 0.5, ""),
    ],
)  # fmt: skip
def test_a_limit_far_from_what_is_known_is_asked_about(said: str, found_g: float | None, words: str) -> None:
    """The cut-offs of Varney et al. 2017; three times of them is ours."""
    own = own_limit_of(said, "my dietitian", TODAY)
    assert own is not None
    asked = asked_before_kept(own, found_g)
    assert words in asked
    assert bool(words) == bool(asked)


def test_so_light_an_adult_is_asked(home: Home) -> None:
    """38 kg at a BMI of 18.5, the border of underweight (WHO), would be somebody of 1.43 m."""
    assert pytest.approx(1.43**2, abs=0.02) == 38 / 18.5
    told = home.told(DAY, "people", "add", "bob", "--weight", "38", "--age", "30")
    assert "see a doctor or dietitian before" in told
    assert "38 kg is little" in home.told(DAY, "challenge", "start", "gos", "--who", "bob", "--yes", "none")
    assert "is little" not in home.told(DAY, "people", "add", "kit", "--weight", "38", "--age", "12")


def test_a_loss_of_weight_is_told_by_how_much_it_is(home: Home) -> None:
    home.json(DAY, "people", "set", "me", "--weight", "70")
    later = date(2026, 4, 30)
    assert "see a doctor today" not in home.told(later, "people", "set", "me", "--weight", "66")
    told = home.told(later + timedelta(days=1), "people", "set", "me", "--weight", "66.5")
    assert "up again from 66 kg" in told
    told = home.told(later + timedelta(days=2), "people", "set", "me", "--weight", "40")
    assert "see a doctor today" in told
    assert "If it is a slip" in told


def test_scores_that_do_not_settle_after_a_reaction_send_to_a_doctor(home: Home) -> None:
    day = home.until_the_dose("sorbitol")
    home.json(day, "challenge", "score", "9", "0", "0", "0")
    assert "until it settles" in home.told(day + timedelta(days=1), "challenge", "today")
    for number in range(1, 5):
        home.json(day + timedelta(days=number), "feel", "5")
    told = home.told(day + timedelta(days=4), "challenge", "today")
    assert "still 5: please see your doctor or dietitian now" in told
