"""What is settled at home: how it reads, and how `tonight` takes it where no option says otherwise."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

import by_hand
from calmlarder.cli import main
from calmlarder.household.settings import settled
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables

DAY = "2026-03-11"
LINES = ("firm tofu 280g, use by today", "eggs x6", "cooked rice 600g, made today", "potatoes 1kg", "spinach 200g",
         "carrots 400g", "rapeseed oil", "soy sauce")  # fmt: skip
Ask = Callable[..., dict[str, Any]]


@pytest.fixture
def home(tmp_path: Path) -> Path:
    lines = tmp_path / "lines.txt"
    lines.write_text("\n".join(LINES), encoding="utf-8")
    folder = tmp_path / "home"
    assert main(["larder", "import", str(lines), "--home", str(folder), "--today", DAY]) == 0
    return folder


@pytest.fixture
def ask(home: Path, capsys: pytest.CaptureFixture[str]) -> Ask:
    def run(*options: str, **settings: int | str) -> dict[str, Any]:
        if settings:
            with Store.at(home) as store:
                store.set(settings, "settle")
        capsys.readouterr()
        assert main(["tonight", "--home", str(home), "--today", DAY, "--json", *options]) == 0
        found: dict[str, Any] = json.loads(capsys.readouterr().out)
        return found

    return run


def foods(answer: dict[str, Any]) -> set[str]:
    return {use["food"] for use in answer["dinners"][0]["uses"]}


def test_what_was_never_possible_counts_as_not_set(tables: Tables) -> None:
    usual = settled({}, tables)
    assert (usual.people, usual.minutes, usual.diet, usual.window_hours, usual.fade) == (
        1,
        None,
        "omnivore",
        3.0,
        False,
    )
    assert usual.given == frozenset()
    odd = {"people": 99, "eye": 5, "rings": "two", "diet": "stones", "avoid": "moon,soya", "minutes": 2, "missing": "x"}
    held = settled(odd, tables)
    assert held.model_copy(update={"given": frozenset(), "avoid": ()}) == usual
    assert held.avoid == ("soya",)


def test_nothing_settled_is_as_usual(ask: Ask) -> None:
    answer = ask()
    assert answer["from_settings"] == []
    assert answer["people"] == 1


def test_settings_hold_unless_an_option_says_otherwise(ask: Ask) -> None:
    answer = ask(people=2, diet="vegan", minutes=30, rings=1, eye=40, protein_g=12)
    assert answer["people"] == 2
    assert answer["dinners"][0]["minutes"] <= 30
    assert "egg" not in foods(answer)
    said = answer["from_settings"]
    words = {"for 2", "vegan", "30 minutes at most", "hob rings: 1", "a guess 40 % off", "12 g protein to aim at"}
    assert words <= set(said)
    answer = ask("--people", "1", "--diet", "omnivore")
    assert answer["people"] == 1
    assert not {"for 2", "vegan"} & set(answer["from_settings"])
    assert ask("--no-settings")["from_settings"] == []


def test_what_protects_the_cook_is_never_taken_away(ask: Ask) -> None:
    answer = ask("--avoid", "sesame", avoid="soya")
    assert "tofu-firm" not in foods(answer)
    assert "nothing with soya" in answer["from_settings"]
    assert "egg" not in foods(ask("--without", "spinach", avoid="", never="egg"))
    assert "egg" in foods(ask("--use", "eggs"))


def test_allergens_hold_whatever_is_left_out(ask: Ask, home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """--no-settings once gave a dish with what is kept as an allergen, without a word."""
    assert "egg" in foods(ask("--use", "eggs", "--no-settings"))
    answer = ask("--no-settings", avoid="soya")
    assert not {"tofu-firm", "soy-sauce"} & foods(answer)
    assert ask("--no-settings", people=3)["people"] == 1
    assert main(["tonight", "--home", str(home), "--today", DAY, "--no-settings"]) == 0
    assert "nothing with soya" in " ".join(capsys.readouterr().out.split())
    assert main(["tonight", "--home", str(home), "--today", DAY]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "nothing with soya" in told
    assert "--no-settings" not in told


def test_allergens_hold_for_another_larder(ask: Ask, tmp_path: Path) -> None:
    answer = ask("--larder", str(tmp_path / "lines.txt"), avoid="soya")
    assert not {"tofu-firm", "soy-sauce"} & foods(answer)


def test_disliked_and_what_is_missing_come_along(ask: Ask) -> None:
    answer = ask(dislike="tofu-firm", missing="oven,wide pan")
    assert "tofu-firm" not in foods(answer)
    assert "a kitchen with no oven, wide pan" in answer["from_settings"]
    assert "rather no firm tofu" in answer["from_settings"]


def test_another_larder_knows_no_settings(ask: Ask, home: Path, tmp_path: Path) -> None:
    assert ask(people=3, protein_g=5)["people"] == 3
    assert ask("--larder", str(tmp_path / "lines.txt"))["people"] == 1


def test_in_words_the_answer_says_what_came_from_home(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with Store.at(home) as store:
        store.set({"people": 2, "protein_g": 12}, "settle")
    assert main(["tonight", "--home", str(home), "--today", DAY]) == 0
    told = capsys.readouterr().out
    assert told.startswith("From what holds at home: for 2; 12 g protein to aim at.")


def test_window_and_fade_are_those_of_the_home(ask: Ask, home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    where = ("--home", str(home), "--today", DAY)
    assert main(["ate", "30 g rye bread", "--when", "15:30", *where]) == 0
    key = "oligosaccharides"
    usual = ask("--at", "18:00")["stacked"]["held_g"][key]
    assert ask("--at", "20:00")["stacked"] is None
    longer = ask("--at", "20:00", window=5)["stacked"]["held_g"][key]
    assert longer == usual
    # Half an hour of five is left: a tenth.
    assert ask("--at", "20:00", fade="yes")["stacked"]["held_g"][key] == pytest.approx(usual * 0.1, abs=0.001)
    assert ask("--at", "20:00", "--no-fade")["stacked"]["held_g"][key] == usual
    assert ask("--at", "20:00", "--window", "3")["stacked"] is None


def test_what_was_eaten_is_logged_with_the_homes_own_eye(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    def logged(eye: float) -> float:
        """What may come at most, as recounted by hand for a cook who is so far off by eye."""
        capsys.readouterr()
        assert main(["ate", "rye bread", "--home", str(home), "--today", DAY, "--json"]) == 0
        entry = json.loads(capsys.readouterr().out)["eaten"][0]
        eaten, group = (entry["food"], entry["grams"]), "oligosaccharides"
        most = by_hand.likely(*eaten)[group] + by_hand.off(*eaten, group, eye)
        assert entry["at_most_g"][group] == pytest.approx(most, rel=0.01)
        return most

    usual = logged(0.3)
    with Store.at(home) as store:
        store.set({"eye": 60}, "settle")
    assert logged(0.6) > 1.05 * usual
