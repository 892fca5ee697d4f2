"""Who is held back before a challenge, what a clear answer is, and what is said to somebody who begins early.

Ours, after the AGA clinical practice update 2022 (two to six weeks of elimination) and Tuck & Barrett 2017 (recalled).
"""

import sys
from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.reintroduction.entry_questions import QUESTIONS, said_yes
from test_reintroduction_safety import DAY, Home


@pytest.fixture
def home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Home:
    return Home(tmp_path / "home", capsys)


@pytest.mark.parametrize("text", ["y", "yes", "Yes please", "yes, once", "Y."])
def test_a_clear_yes(text: str) -> None:
    assert said_yes(text) is True


@pytest.mark.parametrize("text", ["n", "no", "No.", "nope", "no thanks"])
def test_a_clear_no(text: str) -> None:
    assert said_yes(text) is False


@pytest.mark.parametrize("text", ["", "maybe", "I think so", "no idea", "not sure", "none of your business", "ja"])
def test_anything_else_is_asked_again(text: str) -> None:
    assert said_yes(text) is None


def asked(monkeypatch: pytest.MonkeyPatch, blood: list[str]) -> Iterator[str]:
    """A terminal at which the first question is answered with these words, and the rest with no."""
    answers = iter([*blood, *["n"] * len(QUESTIONS)])
    monkeypatch.setattr(sys.stdin, "isatty", lambda: True, raising=False)
    monkeypatch.setattr(sys.stdout, "isatty", lambda: True, raising=False)
    monkeypatch.setattr("builtins.input", lambda words: (print(words), next(answers))[1])
    return answers


@pytest.mark.parametrize("words", [["yes please"], ["I think so", "y"], ["maybe", "", "yes"]])
def test_an_unclear_answer_at_a_terminal_is_never_read_as_no(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, words: list[str]
) -> None:
    asked(monkeypatch, words)
    assert main(["--home", str(tmp_path), "challenge", "start", "gos"]) == 3
    told = " ".join(capsys.readouterr().out.split())
    assert "Please see a doctor soon" in told
    assert told.count("Please answer y for yes") == len(words) - 1


def test_blood_in_the_answers_stops_the_challenge_that_goes_on(home: Home) -> None:
    home.json(DAY, "challenge", "start", "sorbitol", "--yes", "none")
    told = home.told(DAY, "challenge", "start", "gos", "--yes", "blood", status=3)
    assert told.startswith("Your challenge of sorbitol is stopped, and no other begins.")
    assert home.json(DAY, "challenge", "today")["challenge"] is None
    assert "a doctor should know of" in home.told(DAY, "challenge", "status")


@pytest.mark.parametrize("yes", ["pregnant", "sick,control"])
def test_any_bar_in_the_answers_stops_the_challenge_that_goes_on(home: Home, yes: str) -> None:
    home.json(DAY, "challenge", "start", "sorbitol", "--yes", "none")
    home.told(DAY, "challenge", "start", "gos", "--yes", yes, status=3)
    assert home.json(DAY, "challenge", "today")["challenge"] is None


def test_an_old_note_that_a_doctor_saw_stops_nothing(home: Home) -> None:
    home.json(DAY, "feel", "2", "--note", "some blood in my stool")
    home.json(DAY + timedelta(days=9), "challenge", "start", "sorbitol", "--yes", "seen")
    home.told(DAY + timedelta(days=9), "challenge", "start", "gos", "--yes", "none", status=3)
    assert home.json(DAY + timedelta(days=9), "challenge", "today")["challenge"] == "sorbitol"


@pytest.mark.parametrize("yes", ["family-coeliac", "family-cancer", "new-after-50", "anaemia"])
def test_what_does_not_change_bars_only_until_a_doctor_has_seen_them(home: Home, yes: str) -> None:
    assert "answer `seen` as well" in home.told(DAY, "challenge", "start", "gos", "--yes", yes, status=3)
    assert home.json(DAY, "challenge", "start", "gos", "--yes", f"{yes},seen")["started"]


@pytest.mark.parametrize("yes", ["blood", "night", "fever", "weight-loss"])
def test_what_is_there_now_bars_whoever_has_been_seen(home: Home, yes: str) -> None:
    home.told(DAY, "challenge", "start", "gos", "--yes", f"{yes},seen", status=3)


def test_lack_of_iron_is_told_of_the_coeliac_test(home: Home) -> None:
    assert "Do not cut out wheat" in home.told(DAY, "challenge", "start", "gos", "--yes", "anaemia", status=3)


def test_an_age_is_no_answer_that_was_given(home: Home) -> None:
    home.json(DAY, "people", "add", "kit", "--age", "12")
    told = home.told(DAY, "challenge", "start", "gos", "--who", "kit", "--yes", "none", status=3)
    assert "You said yes" not in told
    assert "kit is 12" in told
    status = home.told(DAY, "challenge", "status", "--who", "kit")
    assert "Still to try" not in status
    assert "dietitian" in status


def test_one_worry_about_eating_gets_a_sentence(home: Home) -> None:
    told = home.told(DAY, "challenge", "start", "gos", "--yes", "sick")
    assert "one question about worries around eating" in told


def test_six_kilos_in_three_months_are_a_loss_of_weight(home: Home) -> None:
    told = home.told(DAY, "challenge", "start", "gos", "--yes", "one-stone", status=3)
    assert "Please see a doctor soon" in told
    assert "worries about food" not in told


@pytest.mark.parametrize(
    ("weeks", "scores", "said"),
    [
        (None, (6, 6), "No elimination is noted"),
        (0.6, (6, 3), "4 days into elimination"),
        (8, (6, 6), "did not clearly help"),
        (5, (6, 3), ""),
    ],
)
def test_whoever_begins_early_or_without_help_is_told_so(
    home: Home, weeks: float | None, scores: tuple[int, int], said: str
) -> None:
    """Offered at week 4 with a score down by 30 %; without help elimination ends (the specification)."""
    today = DAY
    if weeks is None:
        home.json(DAY, "people", "set", "me", "--profile", "none")
    else:
        since = DAY - timedelta(days=round(7 * weeks))
        home.json(since, "people", "set", "me", "--phase", "elimination", "--since", since.isoformat())
        for number in range(1, 8):
            home.json(since, "feel", str(scores[0]), "--when", f"{since - timedelta(days=number)}T20:00")
        for number in range(7):
            if DAY - timedelta(days=number) >= since:
                home.json(DAY, "feel", str(scores[1]), "--when", f"{DAY - timedelta(days=number)}T00:01")
    told = home.told(today, "challenge", "start", "gos", "--yes", "none")
    assert said in told
    assert ("can wait" in told or "cannot tell" in told) == bool(said) or not said


def test_a_group_that_failed_lately_is_told_to_wait(home: Home) -> None:
    day = home.until_the_dose("sorbitol")
    home.json(day, "challenge", "score", "9", "0", "0", "0")
    told = home.told(day + timedelta(days=16), "challenge", "start", "sorbitol", "--yes", "none")
    assert "best from June on" in told
    assert "Sorbitol: the limit of elimination stays; worth another try from June on" in home.told(
        day + timedelta(days=2), "challenge", "status"
    )


def test_an_emergency_that_was_noted_is_not_called_harmless(home: Home) -> None:
    home.json(DAY, "feel", "4", "--note", "black stool")
    told = home.told(DAY, "challenge", "start", "gos", "--yes", "none", status=3)
    assert "need not be serious" not in told
    assert "If that is still so, get emergency help now" in told
    assert "If that is still so, get emergency help now" in home.told(DAY, "challenge", "status")
