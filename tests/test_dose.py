"""The dose of a challenge in tonight's dinner: weighed, exactly, and everything else in elimination.

Doses: ours, no source. What the dish brings besides is counted again by `random_larders`, from the cells.
"""

import json
from datetime import date, timedelta
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

from calmlarder.cli import main
from how_much import WHOLE
from random_larders import figure, held, leaves, parts

DAY = date(2026, 3, 1)
LINES = ("firm tofu 800g", "rice 1kg", "6 carrots", "frozen spinach 900g", "soy sauce", "frozen courgette 500g",
         "olive oil", "4 limes", "3 tins chickpeas", "potatoes 2kg", "brown onions x4", "1 cauliflower")  # fmt: skip


class Home:
    def __init__(self, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self._folder, self._capsys = folder, capsys

    def place(self, day: date) -> tuple[str, ...]:
        return "--home", str(self._folder), "--today", day.isoformat()

    def run(self, day: date, *words: str, status: int = 0) -> Any:
        done = main([*self.place(day), *words, "--json"])
        told = self._capsys.readouterr()
        assert done == status, told.err
        return json.loads(told.out)

    def until_the_dose(self, challenge: str, *food: str) -> date:
        """Three calm days after the start; the day of the first dose."""
        for line in LINES:
            main(["--home", str(self._folder), "--today", DAY.isoformat(), "larder", "add", line])
        self._capsys.readouterr()
        self.run(DAY, "challenge", "start", challenge, "--yes", "none", *food)
        for number in range(3):
            self.run(DAY + timedelta(days=number), "challenge", "score", "1", "0", "1", "0")
        return DAY + timedelta(days=3)


@pytest.fixture
def home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Home:
    return Home(tmp_path / "home", capsys)


def brought(dinner: dict[str, Any], but: str) -> dict[str, float]:
    """Likely g of each component of one person's dish without one food."""
    sums = dict.fromkeys(("fructans", "gos", "lactose", "sorbitol", "mannitol", "excess"), 0.0)
    for use in dinner["uses"]:
        for leaf, grams in leaves(use["food"], use["grams"]) if use["food"] != but else ():
            for component in sums:
                sums[component] += figure(leaf, component)[0] * grams / 100
    return sums


@pytest.mark.parametrize(
    ("challenge", "food", "component", "dose_g"),
    [("gos", "chickpeas-canned", "gos", 0.5), ("onion", "onion-brown", "fructans", 0.25),
     ("mannitol", "cauliflower", "mannitol", 0.5)],
)  # fmt: skip
def test_the_dish_holds_the_dose_and_is_otherwise_in_elimination(
    home: Home, challenge: str, food: str, component: str, dose_g: float
) -> None:
    day = home.until_the_dose(challenge, "--food", food)
    (dinner, *_) = home.run(day, "tonight")["dinners"]
    (dose,) = dinner["doses"]
    grams = dose["grams"]
    assert dose["food"] == food
    there = figure(food, component)[0] * grams / 100
    assert dose_g * 0.9 <= there <= dose_g + 0.0051  # never more than the day's dose
    uses = [use for use in dinner["uses"] if use["food"] == food]
    if dose["in_dish"]:
        assert [(use["grams"], use["how"]) for use in uses] == [(grams, "weigh")]
    else:
        assert not uses
    rest = brought(dinner, food)
    # Of elimination (Varney et al. 2017): one food of each class, 0.30 + 0.20 g; polyols 0.40 g.
    assert rest["fructans"] + rest["gos"] <= 0.505
    assert rest["sorbitol"] + rest["mannitol"] <= 0.405
    home.run(day, "cooked")
    (eaten,) = home.run(day, "challenge", "history")["challenges"][0]["days"]
    assert eaten["grams"] == grams
    assert home.run(day, "challenge", "today")["what"] == "wait" or challenge == "mannitol"
    total = sum(one["loads_g"]["oligosaccharides"] for one in home.run(day, "eaten")["eaten"])
    if component != "mannitol":
        assert total >= there  # the log keeps the dose, too: the hours after count it


def test_a_dose_of_a_food_that_is_a_sum_of_parts_stands_beside_the_dish(home: Home) -> None:
    """Wheat noodles count as the pasta that they are made of, and the check counts that pasta."""
    day = home.until_the_dose("wheat", "--food", "dry wheat noodles")
    home.run(day, "larder", "add", "dry wheat noodles 500g")
    assert "noodles-wheat-dry" in parts()
    (dinner, *_) = home.run(day, "tonight")["dinners"]
    (dose,) = dinner["doses"]
    assert (dose["food"], dose["in_dish"]) == ("noodles-wheat-dry", False)
    assert figure("pasta-dry", "fructans")[0] * dose["grams"] / 100 <= 0.25


def test_one_of_the_doses_lies_in_the_dish_itself(home: Home) -> None:
    day = home.until_the_dose("gos", "--food", "chickpeas-canned")
    (dinner, *_) = home.run(day, "tonight")["dinners"]
    assert dinner["doses"][0]["in_dish"]
    assert any("weigh" in str(line).lower() or "chickpeas" in line for line in dinner["weigh_first"])


def test_of_several_only_the_challenger_gets_the_dose(home: Home) -> None:
    day = home.until_the_dose("onion")
    home.run(day, "people", "add", "kit", "--profile", "elimination")
    (dinner, *_) = home.run(day, "tonight", "--for", "me,kit")["dinners"]
    (dose,) = dinner["doses"]
    assert (dose["who"], dose["in_dish"]) == ("me", False)
    assert all(use["food"] != dose["food"] for use in (*dinner["uses"], *dinner["apart"]))


@pytest.mark.parametrize(("avoid", "is_said"), [("milk", True), ("fish", False)])
def test_a_dose_that_holds_what_somebody_else_avoids_says_how_it_stays_apart(
    home: Home, capsys: pytest.CaptureFixture[str], avoid: str, is_said: bool
) -> None:
    day = home.until_the_dose("lactose")
    assert "milk" in held("milk")
    home.run(day, "people", "add", "kit", "--profile", "elimination", "--avoid", avoid)
    (dinner, *_) = home.run(day, "tonight", "--for", "me,kit")["dinners"]
    assert dinner["doses"][0]["avoided"] == ([avoid] if is_said else [])
    assert main([*home.place(day), "tonight", "--for", "me,kit"]) == 0
    words = " ".join(capsys.readouterr().out.split())
    assert "on your plate only" in words
    assert ("which somebody at this table avoids: keep it" in words) == is_said
    assert not [use for use in (*dinner["uses"], *dinner["apart"]) if avoid in held(use["food"])]


def test_other_days_hold_no_dose(home: Home) -> None:
    day = home.until_the_dose("onion")
    (dinner, *_) = home.run(day - timedelta(days=1), "tonight")["dinners"]
    assert "doses" not in dinner
    (dinner, *_) = home.run(day, "tonight", "--no-settings")["dinners"]
    assert "doses" not in dinner


def test_a_plan_keeps_the_days_of_the_protocol(home: Home) -> None:
    day = home.until_the_dose("onion")
    work = "3" if WHOLE else "0"  # what holds of every plan holds of the first
    told = home.run(day, "plan", "--days", "3", "--work", work, "--buy", "0")
    said = [line for line in told["from_settings"] if "brown onion" in line]
    assert [line[:10] for line in said] == [f"{on:%a %d %b}" for on in (day, day + timedelta(days=2))]
    for sitting in told["sittings"]:
        assert all(use["food"] != "onion-brown" for use in (sitting["dinner"] or {"uses": []})["uses"])


@pytest.mark.parametrize("ending", ["html", "md"])
def test_the_page_for_the_dietitian_says_what_was_eaten_scored_and_concluded(
    home: Home, tmp_path: Path, ending: str
) -> None:
    day = home.until_the_dose("sorbitol")
    for number in range(3):
        home.run(day + timedelta(days=number), "challenge", "score", "1", "0", "1", "0", "--note", "<calm> | day")
    file = tmp_path / f"page.{ending}"
    home.run(day + timedelta(days=3), "challenge", "page", "--out", str(file))
    text = file.read_text(encoding="utf-8")
    if ending == "html":
        root = ElementTree.fromstring(text.partition("-->")[2])
        bars = [one for one in root.iter() if one.tag.endswith("rect")]
        assert len(bars) == 6  # three days of wash-out and three of doses were scored
        assert "&lt;calm&gt;" in text
        assert "<script" not in text
    else:
        assert r"\<calm\> \| day" in text
    for said in ("0.5", "blackberries", "all doses eaten", "2 g", "challenge"):
        assert said in text
    home.run(day + timedelta(days=3), "challenge", "page", "--out", str(file))  # its own file may be written anew


def test_what_is_tolerated_comes_back_into_dinners(home: Home) -> None:
    """Chickpeas from a tin: a portion of 80 g is beyond what elimination holds of GOS for one food (Varney 2017)."""
    home.until_the_dose("sorbitol")
    home.run(DAY, "challenge", "stop")
    assert figure("chickpeas-boiled", "gos")[0] * 0.8 > 0.3
    home.run(DAY, "larder", "add", "boiled chickpeas 300g")
    home.run(DAY, "people", "set", "me", "--limit", "gos 2", "--said-by", "my dietitian", "--profile", "own")
    own = home.run(DAY, "tonight")["dinners"][0]
    assert any(use["food"] == "chickpeas-boiled" for use in own["uses"])


def test_each_step_of_a_challenge_is_one_action_to_undo(home: Home, capsys: pytest.CaptureFixture[str]) -> None:
    day = home.until_the_dose("onion")
    home.run(day, "tonight")
    grams = {one["food"]: one["grams"] for one in home.run(day, "larder", "list")["lots"]}
    home.run(day, "cooked")
    assert home.run(day, "challenge", "history")["challenges"][0]["days"]
    assert main(["--home", str(home._folder), "larder", "undo"]) == 0
    capsys.readouterr()
    assert not home.run(day, "challenge", "history")["challenges"][0]["days"]
    assert {one["food"]: one["grams"] for one in home.run(day, "larder", "list")["lots"]} == grams
    home.run(day, "challenge", "stop")
    home.run(day, "challenge", "start", "sorbitol", "--yes", "none")
    assert main(["--home", str(home._folder), "larder", "undo"]) == 0
    capsys.readouterr()
    assert home.run(day, "challenge", "today")["challenge"] is None


def test_the_scale_knows_the_dose(home: Home) -> None:
    """As planned nothing is too much; twice the dose is."""
    from calmlarder.compose.dinner import Dinner
    from calmlarder.compose.scale_readings import passed_caps
    from calmlarder.household.cooking import proposed
    from calmlarder.household.household import Household
    from calmlarder.household.table import limits_of_dinner
    from calmlarder.tables.load import load_tables
    from calmlarder.tables.places import shipped

    day = home.until_the_dose("gos", "--food", "chickpeas-canned")
    home.run(day, "tonight")
    with Household(home._folder, load_tables([shipped("ingredient_tables")]), day) as kitchen:
        dinner: Dinner = proposed(kitchen, 1)
        (dose,) = dinner.doses
        assert dose.in_dish
        (lot,) = [use.lot for use in dinner.uses if use.food == dose.food]
        limits = limits_of_dinner(kitchen, dinner)
        assert not passed_caps(dinner, {lot: dose.grams}, limits, kitchen.tables)
        over = passed_caps(dinner, {lot: 2 * dose.grams}, limits, kitchen.tables)
        assert over
        assert over[0].leave_out_food == dose.food
