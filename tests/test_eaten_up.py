"""Lots eaten outside a dinner: who ate them, what the log takes on, and that no gram counts twice.

Sums by hand. Firm tofu brings 0.1 g of GOS in 100 g (British table 13-570), spinach what its rows say.
"""

import json
from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path
from typing import Any

import hypothesis.strategies as st
import pytest
from hypothesis import given, settings
from textual.pilot import Pilot
from textual.widgets import OptionList

from calmlarder.cli import main
from calmlarder.history.eaten_up import Before, Eaters, eaten_up, not_ended
from calmlarder.history.ended import Ended
from calmlarder.history.log_entry import Meal, eaten_of
from calmlarder.intake.eaten import EVERYONE, Eaten
from calmlarder.larder.lot import Lot
from calmlarder.store.logs import ended
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from programs import run_program, type_line

DAY = "2026-03-11"
TODAY = date.fromisoformat(DAY)
SIX = datetime.fromisoformat(f"{DAY}T18:00")
Run = Callable[..., dict[str, Any]]


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


@pytest.fixture
def run(home: Path, capsys: pytest.CaptureFixture[str]) -> Run:
    def asked(*words: str, status: int = 0) -> dict[str, Any]:
        capsys.readouterr()
        assert main([*words, "--home", str(home), "--today", DAY, "--json"]) == status
        out = capsys.readouterr().out
        return dict(json.loads(out)) if out.startswith("{") else {}

    return asked


def told(entries: list[dict[str, Any]]) -> list[tuple[str, str, float]]:
    return [(one["who"], one["food"], one["grams"]) for one in entries]


def test_the_one_person_ate_it_with_the_loads_of_ate_and_one_undo(home: Path, run: Run) -> None:
    run("larder", "add", "firm tofu 280g, use by today")
    logged = run("larder", "remove", "1", "--grams", "100", "--when", "13:10")["eaten"]
    assert told(logged) == [("me", "tofu-firm", 100)]
    assert logged[0]["at"] == f"{DAY}T13:10"
    same = run("ate", "100 g firm tofu", "--when", "12:00", "--who", "another")["eaten"][0]
    assert (logged[0]["loads_g"], logged[0]["at_most_g"]) == (same["loads_g"], same["at_most_g"])
    assert logged[0]["loads_g"]["oligosaccharides"] == pytest.approx(0.1, abs=0.03)
    assert main(["larder", "undo", "--home", str(home)]) == main(["larder", "undo", "--home", str(home)]) == 0
    assert run("eaten")["eaten"] == []
    assert [lot["grams"] for lot in run("larder", "list")["lots"]] == [280]
    assert run("waste")["eaten_g"] == 0
    assert main(["larder", "redo", "--home", str(home)]) == 0
    assert told(run("eaten")["eaten"]) == [("me", "tofu-firm", 100)]
    assert (run("waste")["eaten_g"], run("tonight", status=3)["stacked"]) == (100, None)
    assert run("tonight", "--at", "15:00", status=3)["stacked"]["from"][0]["text"] == "firm tofu 280g, use by today"


def test_what_ate_logged_already_does_not_count_twice(run: Run) -> None:
    run("larder", "add", "spinach 200g, use by today")
    run("ate", "spinach", "--when", "12:00")  # a portion: 70 g of the bag
    assert told(run("larder", "remove", "1")["eaten"]) == [("me", "spinach", 130)]
    # The 70 g are paid for: the next bag is another one.
    run("larder", "add", "spinach 100g")
    assert told(run("larder", "remove", "2")["eaten"]) == [("me", "spinach", 100)]
    assert sum(one["grams"] for one in run("eaten")["eaten"]) == 300 == run("waste")["eaten_g"]


def test_a_box_counts_once(run: Run, home: Path, tables: Tables) -> None:
    for line in ("firm tofu 400g", "dry white rice 500g", "spinach 200g", "soy sauce", "rapeseed oil"):
        run("larder", "add", line)
    run("tonight", "--people", "3", "--protein", "10")
    run("cooked", "--boxes", "2")
    box = next(lot for lot in run("larder", "list")["lots"] if lot["food"].startswith("boxed-"))
    one = run("ate", box["name"])["eaten"][0]
    rest = run("larder", "remove", str(box["id"]))["eaten"]
    assert [(entry["food"], entry["grams"]) for entry in rest] == [(box["food"], one["grams"])]
    assert rest[0]["loads_g"] == pytest.approx(one["loads_g"], abs=2e-4)


def test_who_may_be_said_and_is_asked_of_several(run: Run, home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for _ in range(4):
        run("larder", "add", "spinach 200g")
    assert told(run("larder", "remove", "1", "--who", "Kit", "--who", "robin")["eaten"]) == [
        ("kit", "spinach", 100), ("robin", "spinach", 100)
    ]  # fmt: skip
    assert run("larder", "remove", "2", "--who", "nobody")["eaten"] == []
    with Store.at(home) as store:
        store.set({"people": 2}, "settle")
    run("larder", "remove", "3", status=2)
    assert len(run("larder", "list")["lots"]) == 2
    main(["larder", "remove", "3", "--home", str(home), "--today", DAY])
    assert "--who everyone" in capsys.readouterr().err
    assert told(run("larder", "remove", "3", "--who", "everyone")["eaten"]) == [("everyone", "spinach", 100)]
    run("larder", "remove", "4", "--who", "kit,everyone", status=2)
    run("larder", "remove", "4", "--how", "thrown", "--who", "kit", status=2)
    run("larder", "remove", "4", "--who", "kit", "--when", "2099-03-12T09:00", status=2)
    # What leaves the larder in another way is nobody's sitting.
    run("larder", "remove", "4", "--how", "thrown")
    assert told(run("eaten")["eaten"])[2:] == [("everyone", "spinach", 100)]


def test_the_end_of_a_bottle_is_no_sitting_unless_somebody_says_so(run: Run) -> None:
    for line in ("rapeseed oil 500ml", "dry white rice 900g", "spinach 100g"):
        run("larder", "add", line)
    assert told(run("larder", "remove", "1", "2", "3")["eaten"]) == [("me", "spinach", 100)]
    run("larder", "undo")
    assert told(run("larder", "remove", "2", "--who", "me")["eaten"]) == [("me", "rice-white-dry", 900)]


def test_a_food_whose_figures_are_not_known_is_logged_as_not_known(run: Run, tables: Tables) -> None:
    food = next(food for food in tables.foods if tables.unknown_of(food.id) and not food.is_staple)
    run("larder", "add", f"100 g {food.name}")
    (entry,) = run("larder", "remove", "1")["eaten"]
    assert (entry["unknown"], entry["loads_g"]) == ([food.name], {})


@pytest.mark.long
@given(st.lists(st.tuples(st.sampled_from(["ate", "end"]), st.sampled_from(["me", "kit", EVERYONE, "nobody"]),
                          st.integers(1, 300)), max_size=8))  # fmt: skip
@settings(deadline=None)
def test_whatever_is_logged_before_the_log_never_holds_more_than_was_eaten(
    tables: Tables, lots_of: Callable[..., list[Lot]], actions: list[tuple[str, str, int]]
) -> None:
    """Each lot that me alone ends after having logged it by itself: the log holds the larger of the two, never both.

    Against books of our own, in whole grams.
    """
    log: list[Eaten] = []
    ends: list[Ended] = []
    by_itself, ended_g = 0.0, 0.0
    for what, who, grams in actions:
        (lot,) = lots_of([f"{grams} g spinach"])
        if what == "ate":
            log.append(eaten_of(lot, Meal(SIX, "me"), TODAY, tables))
            by_itself += grams
            continue
        eaters = Eaters(who=() if who == "nobody" else ("me",), at=SIX)
        spare = not_ended("spinach", log, ends, TODAY).get("me", 0.0)
        found = eaten_up(lot, lot.grams, eaters, Before(TODAY, log, ends), tables)
        assert sum(one.grams for one in found.entries) == (0 if who == "nobody" else max(0, round(grams - spare, 1)))
        log += found.entries
        ends.append(
            Ended(on=TODAY, lot=1, food="spinach", title="spinach", portion_g=70, line=lot.line, of_grams=grams,
                  grams=grams, how="eaten", logged=found.logged)
        )  # fmt: skip
        ended_g += 0 if who == "nobody" else grams
    held = sum(one.grams for one in log)
    assert max(by_itself, ended_g) - 0.5 <= held <= by_itself + ended_g
    # What lots ended for is never more than the log holds.
    assert sum(one.grams for end in ends for one in end.logged) <= held + 0.5


def test_the_program_asks_in_one_key(home: Path, tables: Tables) -> None:
    seen: dict[str, list[str]] = {}

    def answers(app: LarderApp) -> list[str]:
        options = app.screen.query_one(OptionList)
        return [str(options.get_option_at_index(place).prompt) for place in range(options.option_count)]

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("spinach 200g, use by today", "ate spinach", "2 carrots", "soy sauce"):
            await type_line(pilot, line)
        await pilot.press("down", "home")  # the bar is on what was typed last
        for name, keys in (("spinach", ("enter",)), ("carrots", ("end", "enter")), ("sauce", ("enter",))):
            await pilot.press("f5")
            await pilot.pause()
            seen[name] = answers(app)
            await pilot.press(*keys)
            await pilot.pause()
        app._store.set({"people": 2, "own": "kit 5"}, "settle")
        await pilot.press("escape")
        await type_line(pilot, "kale 100g")
        await pilot.press("down", "f5")
        await pilot.pause()
        seen["kale"] = answers(app)
        await pilot.press("down", "enter")
        await pilot.pause()

    run_program(home, tables, act)
    nobody = "nobody here, or it is in the log already"
    assert seen["spinach"] == ["me: 130 g, as 70 g are in the log already", nobody]
    assert seen["carrots"] == ["me: 140 g", nobody]
    assert seen["sauce"][0] == nobody
    assert seen["kale"] == ["me: 100 g", "everyone, shared by 2: 50 g", "kit: 100 g", nobody]
    with Store.at(home) as store:
        log = [(row.content["who"], row.content["food"], row.content["grams"]) for row in store.eaten(DAY)]
        ends = ended(store)
        assert log == [("me", "spinach", 70), ("me", "spinach", 130), ("everyone", "kale", 50)]
        assert [(one.food, one.grams) for one in ends if one.logged] == [("spinach", 200), ("kale", 100)]
        assert store.undo() is not None
        assert len(store.eaten(DAY)) == 2
        assert len(ended(store)) == len(ends) - 1


def test_at_a_terminal_it_is_asked_and_no_answer_changes_nothing(
    home: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    run("larder", "add", "spinach 200g")
    with Store.at(home) as store:
        store.set({"people": 2}, "settle")
    for stream in ("stdin", "stdout"):
        monkeypatch.setattr(f"sys.{stream}.isatty", lambda: True, raising=False)
    asked = ["larder", "remove", "1", "--home", str(home), "--today", DAY]

    def no_answer(_: str) -> str:
        raise EOFError

    monkeypatch.setattr("builtins.input", no_answer)
    assert main(asked) == 130
    assert len(run("larder", "list")["lots"]) == 1
    monkeypatch.setattr("builtins.input", lambda _: "Kit, me")
    assert main(asked) == 0
    assert told(run("eaten")["eaten"]) == [("kit", "spinach", 100), ("me", "spinach", 100)]


def test_what_is_taken_out_as_eaten_says_what_it_passes(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Lactose: 1 g a food, the cut-off of Varney et al. 2017; `ate` says the same of the same milk."""
    for line in (["larder", "add", "cow milk 200 ml"], ["larder", "remove", "1", "--who", "me"]):
        assert main([*line, "--home", str(home)]) == 0
    assert "Over the limit: lactose, likely " in capsys.readouterr().out
