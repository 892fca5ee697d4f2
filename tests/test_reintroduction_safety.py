"""Who is held back, what is never eaten for a challenge, and what each answer reminds of.

Ours, after Tuck & Barrett 2017 and the AGA clinical practice update 2022 (recalled); SCOFF: Morgan,
Reid & Lacey 1999 (recalled). Figures of foods are read from the tables' own cells by `random_larders`.
"""

import json
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from calmlarder.cli import main
from calmlarder.reintroduction.course import standing
from calmlarder.reintroduction.entry_questions import bars
from calmlarder.reintroduction.events import Course, Eaten
from calmlarder.reintroduction.foods import challenge_food, foods_for
from calmlarder.reintroduction.ladders import CHALLENGES, group_of, ladder_of
from calmlarder.tables.book import Tables
from random_larders import figure, held

DAY = date(2026, 3, 1)
LARDER = "rice 500g\n4 carrots\nfirm tofu 400g\nsoy sauce\nolive oil\n1 lime\nspinach 200g\n"


class Home:
    def __init__(self, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self._folder, self._capsys = folder, capsys

    def told(self, day: date, *words: str, status: int | None = 0) -> str:
        found = main(["--home", str(self._folder), "--today", day.isoformat(), *words])
        assert status is None or found == status
        return " ".join("".join(self._capsys.readouterr()).split())

    def json(self, day: date, *words: str, status: int | None = 0) -> Any:
        found = main(["--home", str(self._folder), "--today", day.isoformat(), *words, "--json"])
        assert status is None or found == status
        return json.loads(self._capsys.readouterr().out)

    def until_the_dose(self, *words: str) -> date:
        self.json(DAY, "challenge", "start", *words, "--yes", "none")
        for number in range(3):
            self.json(DAY + timedelta(days=number), "challenge", "score", "1", "0", "1", "0")
        return DAY + timedelta(days=3)


@pytest.fixture
def home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Home:
    return Home(tmp_path / "home", capsys)


def test_whoever_lost_six_kilos_sees_a_doctor_whatever_else_they_answer() -> None:
    """3 kg that nobody meant to lose lead to a doctor, so 6 kg do; it is a SCOFF question, too."""
    (bar,) = bars(["one-stone"])
    assert bar.whom == "doctor"
    doctor, dietitian = bars(["one-stone", "food"])
    assert (doctor.keys, dietitian.keys) == (("one-stone",), ("one-stone", "food"))


def test_a_child_is_never_started(home: Home) -> None:
    home.json(DAY, "people", "add", "kit", "--age", "12")
    assert "only with a dietitian" not in home.told(DAY, "people", "list")
    assert "only with a dietitian" in home.told(DAY, "people", "set", "kit", "--profile", "elimination")
    (bar,) = home.json(DAY, "challenge", "start", "gos", "--who", "kit", "--yes", "none", status=3)["bars"]
    assert bar["see"] == "dietitian"


@pytest.mark.parametrize(
    ("challenge", "said", "why"),
    [
        ("lactose", ("--avoid", "milk"), "what you avoid now"),
        ("lactose", ("--diet", "vegan"), "what you avoid now"),
        ("wheat", ("--avoid", "gluten"), "what you avoid now"),
        ("gos", ("--never", "boiled chickpeas"), "what you avoid now"),
        ("gos", ("--age", "14"), "dietitian or doctor goes first"),
    ],
)
def test_what_is_said_of_somebody_meanwhile_stops_the_dose(
    home: Home, challenge: str, said: tuple[str, ...], why: str
) -> None:
    """Never an allergen of theirs, never a child: also where that is said after the start."""
    day = home.until_the_dose(challenge)
    for line in (*LARDER.splitlines(), "milk 1l", "pasta 500g", "boiled chickpeas 400g"):
        home.json(day, "larder", "add", line)
    home.json(day, "people", "set", "me", *said)
    assert not [one for one in home.json(day, "tonight")["dinners"] if one.get("doses")]
    assert home.json(day, "challenge", "today")["challenge"] is None
    assert why in home.told(day, "challenge", "today")
    assert why in home.told(day, "challenge", "status")


def test_another_allergen_stops_nothing(home: Home) -> None:
    day = home.until_the_dose("lactose")
    home.json(day, "people", "set", "me", "--avoid", "fish", "--age", "40")
    assert home.json(day, "challenge", "today")["what"] == "dose"


def test_a_note_of_blood_holds_back_until_a_doctor_was_seen(home: Home) -> None:
    home.json(DAY, "feel", "2", "--note", "some blood in my stool")
    found = home.json(DAY + timedelta(days=9), "challenge", "start", "gos", "--yes", "none", status=3)
    assert found["bars"][0]["see"] == "doctor"
    assert "blood in my stool" in found["bars"][0]["because"][0]
    assert home.json(DAY + timedelta(days=9), "challenge", "start", "gos", "--yes", "seen")["started"]


def test_a_note_that_denies_blood_holds_nobody_back(home: Home) -> None:
    home.json(DAY, "feel", "2", "--note", "no blood, no fever")
    assert home.json(DAY, "challenge", "start", "gos", "--yes", "none")["started"]


@pytest.mark.parametrize(("why", "stops"), [("woke at night with cramps", True), ("no blood, only tired", False)])
def test_a_reason_for_a_skipped_day_is_read_for_red_flags(home: Home, why: str, stops: bool) -> None:
    home.json(DAY, "challenge", "start", "gos", "--yes", "none")
    told = home.json(DAY, "challenge", "skip", "--why", why)
    assert bool(told["red_flags"]) == stops
    assert (home.json(DAY, "challenge", "today")["challenge"] is None) == stops


@pytest.mark.parametrize("command", [("challenge", "score"), ("feel",)])
def test_a_sign_of_a_day_before_the_start_stops_what_goes_on_now(home: Home, command: tuple[str, ...]) -> None:
    """Noted late: what counts is when somebody hears of it."""
    day = DAY + timedelta(days=5)
    home.json(day, "challenge", "start", "gos", "--yes", "none")
    home.json(day, *command, "4", "0", "0", "0", "--when", f"{DAY}T20:00", "--note", "blood in my stool")
    assert home.json(day, "challenge", "today")["challenge"] is None


def test_a_sign_among_what_was_eaten_stops_what_goes_on(home: Home) -> None:
    """The answer says that no challenge goes on: so none does."""
    home.json(DAY, "challenge", "start", "gos", "--yes", "none")
    assert "No challenge goes on" in home.told(DAY, "ate", "blood in my stool", status=2)
    assert home.json(DAY, "challenge", "today")["challenge"] is None
    home.json(DAY, "challenge", "start", "gos", "--yes", "seen")
    home.told(DAY, "ate", "no blood", status=2)
    home.json(DAY, "ate", "100 g blood orange")
    assert home.json(DAY, "challenge", "today")["challenge"] == "gos"


def test_a_reason_to_stop_is_read_for_red_flags(home: Home) -> None:
    home.json(DAY, "challenge", "start", "gos", "--yes", "none")
    assert "see a doctor" in home.told(DAY, "challenge", "stop", "--why", "fever since monday")


def test_weight_that_falls_stops_a_challenge_and_is_asked_for_once_a_month(home: Home) -> None:
    """3 kg or 5 % unmeant: a doctor first."""
    home.json(DAY, "people", "set", "me", "--weight", "64")
    assert home.json(DAY + timedelta(days=29), "challenge", "status")["weight_due"] is False
    assert home.json(DAY + timedelta(days=30), "challenge", "status")["weight_due"] is True
    home.json(DAY, "challenge", "start", "gos", "--yes", "none")
    assert "doctor" not in home.told(DAY + timedelta(days=31), "people", "set", "me", "--weight", "62")
    told = home.told(DAY + timedelta(days=40), "people", "set", "me", "--weight", "60.5")
    assert "If you did not mean to lose it, please see a doctor" in told
    assert home.json(DAY + timedelta(days=40), "challenge", "today")["challenge"] is None
    assert home.json(DAY + timedelta(days=40), "challenge", "start", "gos", "--yes", "none", status=3)["bars"]


@pytest.mark.parametrize("food", ["hijiki", "kombu"])
def test_seaweed_to_be_careful_with_is_no_challenge_food(home: Home, food: str, tables: Tables) -> None:
    assert challenge_food(tables.food_by_id[food], "mannitol", tables) is None
    assert "does not suit" in home.told(
        DAY, "challenge", "start", "mannitol", "--food", food, "--yes", "none", status=2
    )


def test_an_allergen_is_never_a_challenge_food(home: Home, tables: Tables) -> None:
    food = next(one.food for one in foods_for("gos", tables) if "soya" in held(one.food.id))
    home.json(DAY, "people", "set", "me", "--avoid", "soya")
    told = home.told(DAY, "challenge", "start", "gos", "--food", food.name, "--yes", "none", status=2)
    assert "what you avoid" in told
    assert not [one for one in foods_for("gos", tables, avoid=("soya",)) if "soya" in held(one.food.id)]


@pytest.mark.parametrize("challenge", CHALLENGES)
def test_weighed_grams_never_hold_more_than_the_dose(challenge: Any, tables: Tables) -> None:
    group = group_of(challenge)
    for one in foods_for(challenge, tables):
        of_it = figure(one.food.id, "excess" if group == "excess_fructose" else group)[0]
        for dose, grams in zip(ladder_of(challenge).doses_g, one.grams, strict=True):
            assert 0.7 * dose < of_it * grams / 100 <= dose + 1e-9, one.food.id
            assert grams < 10 or grams.is_integer()


def test_a_week_without_scores_is_not_called_a_gut_that_was_not_calm(home: Home) -> None:
    home.json(DAY, "challenge", "start", "gos", "--yes", "none")
    told = home.told(DAY + timedelta(days=8), "challenge", "today")
    assert "fewer than 3 days were scored" in told
    assert "not been calm" not in told


def test_a_bad_day_that_does_not_count_still_asks_for_a_calm_gut() -> None:
    scores = {DAY + timedelta(days=n): 1 for n in range(3)} | {DAY + timedelta(days=3): 6}
    eaten = (Eaten(DAY + timedelta(days=3), 0.5),)
    course = Course("me", "sorbitol", DAY, eaten=eaten, left_out={DAY + timedelta(days=3): "illness"})
    asked = []
    for number in range(4, 8):
        day = DAY + timedelta(days=number)
        stands = standing(course, scores, day)
        asked.append((stands.what, stands.dose_g))
        scores[day] = 1
    assert asked == [("wash-out", 0.5)] * 3 + [("dose", 0.5)]


def test_a_day_on_which_another_limit_was_passed_says_nothing_of_the_dose(home: Home) -> None:
    """40 g of onion: far beyond 0.5 g of fructans, the limit of a meal."""
    day = home.until_the_dose("sorbitol")
    assert figure("onion-brown", "fructans")[0] * 0.4 > 0.5
    home.json(day, "ate", "40 g brown onion")
    told = home.json(day, "challenge", "score", "1", "0", "1", "0")
    assert told["also_passed"] == ["oligosaccharides"]
    (one,) = home.json(day + timedelta(days=1), "challenge", "today")["days"]
    assert one["left_out"] == "another limit passed"
    assert home.json(day + timedelta(days=1), "challenge", "today")["dose_g"] == 0.5


def test_the_dose_itself_passes_no_other_limit(home: Home) -> None:
    day = home.until_the_dose("onion")
    for line in LARDER.splitlines():
        home.json(day, "larder", "add", line)
    home.json(day, "tonight")
    home.json(day, "cooked")
    assert home.json(day, "challenge", "score", "1", "0", "1", "0")["also_passed"] == []


def test_a_larder_from_a_file_holds_the_dose_too(home: Home, tmp_path: Path) -> None:
    day = home.until_the_dose("garlic")
    file = tmp_path / "larder.txt"
    file.write_text(LARDER)
    (dinner, *_) = home.json(day, "tonight", "--larder", str(file))["dinners"]
    (dose,) = dinner["doses"]
    assert figure("garlic", "fructans")[0] * dose["grams"] / 100 <= 0.125
    assert "doses" not in home.json(day, "tonight", "--larder", str(file), "--no-settings")["dinners"][0]


def test_during_a_challenge_the_limits_are_those_of_elimination_everywhere(home: Home) -> None:
    home.json(DAY, "people", "set", "me", "--limit", "gos 2", "--said-by", "my dietitian", "--profile", "own")
    plate = ("plate", "100 g boiled chickpeas", "100 g carrot")
    wide = home.json(DAY, "limit", "boiled chickpeas")["grams_weighed"]
    assert home.json(DAY, *plate)["fits"] is True
    home.json(DAY, "challenge", "start", "lactose", "--yes", "none")
    assert home.json(DAY, *plate, status=3)["fits"] is False
    assert home.json(DAY, "limit", "boiled chickpeas")["grams_weighed"] < wide / 2


def test_elimination_never_goes_on_in_silence(home: Home) -> None:
    for line in LARDER.splitlines():
        home.json(DAY, "larder", "add", line)
    home.json(DAY, "feel", "5")  # the first entry starts the clock where nobody said when
    assert "Elimination:" not in home.told(DAY + timedelta(days=9), "tonight", status=None)
    assert "How is it going?" in home.told(DAY + timedelta(days=15), "tonight", status=None)
    assert "time to end it, with a dietitian" in home.told(DAY + timedelta(days=43), "tonight", status=None)


def test_a_plan_reminds_to_eat_what_is_tolerated(home: Home) -> None:
    for line in LARDER.splitlines():
        home.json(DAY, "larder", "add", line)
    home.json(DAY, "people", "set", "me", "--limit", "gos 2", "--said-by", "my dietitian", "--profile", "own")
    told = home.told(DAY, "plan", "--days", "1", "--work", "0", "--buy", "0")
    assert "Tolerated by me: GOS up to 2 g at one meal" in told


def test_a_day_that_is_scored_later_gets_no_dose(home: Home) -> None:
    day = home.until_the_dose("sorbitol")
    yesterday = f"{day - timedelta(days=1)}T20:00"
    assert home.json(day, "challenge", "score", "1", "0", "0", "0", "--when", yesterday)["dose_counted"] is False
    assert home.json(day, "challenge", "today")["what"] == "dose"


def test_a_first_reaction_is_told_with_what_it_means(home: Home) -> None:
    day = home.until_the_dose("mannitol")
    told = home.told(day, "challenge", "score", "3", "0", "0", "0")
    assert "counts as a reaction. One may be chance" in told
    assert "see a doctor if it is severe" in told
    assert "counts as a reaction" in home.told(day + timedelta(days=1), "challenge", "today")
