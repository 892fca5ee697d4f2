"""The ledger: what became of each lot, and what it adds up to. Sums worked by hand; dates by the calendar of 2026."""

import json
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from calmlarder.cli import main
from calmlarder.history.advice import LEAST_DAYS, LEAST_LOTS, advise, purchases
from calmlarder.history.ended import Ended
from calmlarder.history.waste import waste
from calmlarder.render.style import Style
from calmlarder.render.waste_text import waste_text
from calmlarder.store.logs import ended
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables

DAY = "2026-03-11"  # a Wednesday
TODAY = date.fromisoformat(DAY)


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


@pytest.fixture
def run(home: Path, capsys: pytest.CaptureFixture[str]) -> Callable[..., Any]:
    def asked(*words: str, status: int = 0) -> Any:
        capsys.readouterr()
        assert main([*words, "--home", str(home), "--today", DAY, "--json"]) == status
        out = capsys.readouterr().out
        return json.loads(out) if out.startswith("{") else out

    return asked


def entry(food: str, of: float, grams: float, how: str, on: date = TODAY, why: str | None = None, **more: Any) -> Ended:
    return Ended.model_validate(
        {"on": on, "lot": 1, "food": food, "title": food, "portion_g": 100, "line": food, "of_grams": of,
         "grams": grams, "how": how, "why": why, **more}
    )  # fmt: skip


def test_a_lot_ends_in_parts_and_one_undo_takes_one_back(home: Path, run: Callable[..., Any]) -> None:
    run("larder", "add", "kale 200g")
    run("larder", "remove", "1", "--how", "thrown", "--why", "mouldy", "--grams", "80")
    run("larder", "remove", "1", "--how", "given", "--grams", "50")
    assert [lot["grams"] for lot in run("larder", "remove", "1", "--grams", "30")["lots"]] == [40]
    told = run("waste")
    assert (told["thrown_g"], told["given_g"], told["eaten_g"]) == (80, 50, 30)
    assert (told["foods"][0]["food"], told["foods"][0]["whys"]) == ("kale", {"mouldy": 1})
    assert main(["larder", "undo", "--home", str(home)]) == 0
    told = run("waste")
    assert (told["thrown_g"], told["given_g"], told["eaten_g"]) == (80, 50, 0)
    assert main(["larder", "redo", "--home", str(home)]) == 0
    # What is left under 5 g is nothing left.
    assert run("larder", "remove", "1", "--grams", "37")["lots"] == []
    with Store.at(home) as store:
        assert [(one.how, one.grams) for one in ended(store)] == [
            ("thrown", 80), ("given", 50), ("eaten", 30), ("eaten", 40)
        ]  # fmt: skip


def test_what_cannot_end_is_told_and_nothing_changes(run: Callable[..., Any]) -> None:
    run("larder", "add", "kale 200g")
    run("larder", "add", "2 carrots")
    for words in (
        ("1", "--grams", "300"), ("1", "--grams", "0"), ("1", "--grams=-5"), ("1", "--grams", "nan"),
        ("1", "2", "--grams", "5"), ("1", "--why", "mouldy"), ("9",), ("1", "9"),
    ):  # fmt: skip
        run("larder", "remove", *words, status=2)
    assert [lot["grams"] for lot in run("larder", "list")["lots"]] == [200, 140]
    assert run("waste")["eaten_g"] == 0
    run("waste", "--weeks", "0", status=2)


def test_weeks_begin_on_monday_and_sums_are_as_by_hand() -> None:
    entries = [
        entry("old", 100, 100, "thrown", date(2026, 2, 22)),  # the Sunday before the weeks shown
        entry("kale", 200, 50, "thrown", date(2026, 2, 23), "mouldy"),
        entry("kale", 150, 150, "eaten", date(2026, 3, 1), rescued=True),
        entry("milk", 900, 900, "thrown", date(2026, 3, 2)),
        entry("kale", 300, 25, "thrown", TODAY, "mouldy"),
        entry("rice", 400, 120, "given", TODAY),
    ]
    told = waste(entries, TODAY, 3)
    assert [week.monday for week in told.weeks] == [date(2026, 2, 23), date(2026, 3, 2), date(2026, 3, 9)]
    assert [week.thrown_g for week in told.weeks] == [50, 900, 25]
    assert [(food.food, food.grams, food.portions, food.times, food.whys) for food in told.foods] == [
        ("milk", 900, 9, 1, ()), ("kale", 75, 0.75, 2, (("mouldy", 2),))
    ]  # fmt: skip
    assert (told.thrown_g, told.eaten_g, told.given_g, told.rescued_g, told.rescued_portions) == (
        975,
        150,
        120,
        150,
        1.5,
    )
    for width in (40, 60, 80):
        lines = list(waste_text(told, advise(entries, TODAY, None), Style(False, False, width)))  # type: ignore[arg-type]
        assert max(map(len, lines)) <= width
    assert [line.count("#") for line in lines[1:4]] == [2, 34, 1]


def test_parts_of_one_lot_are_one_purchase_and_a_number_used_again_is_another() -> None:
    bought = purchases([
        entry("kale", 200, 60, "eaten"), entry("kale", 140, 140, "thrown", why="past its day"),
        entry("kale", 500, 500, "eaten"),
        entry("kale", 300, 100, "eaten"), entry("milk", 1000, 1000, "given"),
        entry("kale", 200, 100, "eaten", boxed=100),
    ])  # fmt: skip
    assert [(one.food, one.size_g, one.eaten_g, one.given_g, one.thrown_g, one.why) for one in bought] == [
        ("kale", 200, 60, 0, 140, "past its day"), ("kale", 500, 500, 0, 0, None),
        ("milk", 1000, 0, 1000, 0, None), ("kale", 200, 200, 0, 0, None),
    ]  # fmt: skip


def history(food: str, size: float, thrown: list[float], why: str | None = None) -> list[Ended]:
    found = []
    for number, bad in enumerate(thrown):
        on = TODAY - timedelta(days=7 * (len(thrown) - number))
        if size - bad:
            found.append(entry(food, size, size - bad, "eaten", on))
        if bad:
            found.append(entry(food, bad, bad, "thrown", on, why))
    return found


def test_advice_rests_on_the_persons_own_numbers(tables: Tables) -> None:
    plenty = history("carrot", 500, [0] * 10)
    keeps_in_freezer = tables.keeping_of(tables.food_by_id["spinach"], "freezer", "whole")
    assert keeps_in_freezer is not None
    assert tables.keeping_of(tables.food_by_id["lettuce"], "freezer", "whole") is None
    entries = [
        *plenty,
        *history("spinach", 400, [150, 0, 200, 100], "past its day"),
        *history("milk", 1000, [600, 500, 0, 400], "bought too much"),
        *history("lettuce", 300, [40, 60, 50], "past its day"),
    ]
    first, second = advise(entries, TODAY, tables).advice
    # Milk: 1500 g in three of four; eaten 400, 500, 1000 and 600, of which 550 is the middle.
    assert (first.food, first.what, first.lots, first.thrown_lots) == ("milk", "buy less", 4, 3)
    assert (first.thrown_g, first.size_g, first.eaten_g) == (1500, 1000, 550)
    assert (second.food, second.what, second.thrown_g) == ("spinach", "freeze", 450)
    assert second.freezer_weeks == keeps_in_freezer.days // 7
    only = [*plenty, *history("lettuce", 300, [40, 60, 50], "past its day")]
    assert [one.what for one in advise(only, TODAY, tables).advice] == ["eat first"]
    disliked = [*plenty, *history("kale", 200, [150, 180, 150], "did not like")]
    assert [one.what for one in advise(disliked, TODAY, tables).advice] == ["leave it"]


def test_nothing_is_advised_without_enough_history(tables: Tables) -> None:
    def missing(entries: list[Ended]) -> str:
        advised = advise(entries, TODAY, tables)
        assert advised.advice == ()
        assert advised.missing
        return advised.missing

    assert missing([]).startswith("no item was used up to its end yet")
    many = [entry("kale", 100, 100, "thrown", TODAY - timedelta(days=LEAST_DAYS - 1)) for _ in range(LEAST_LOTS)]
    assert f"{LEAST_DAYS - 1} days" in missing(many)
    few = [entry("kale", 100, 100, "thrown", TODAY - timedelta(days=90)) for _ in range(LEAST_LOTS - 1)]
    assert missing(few).startswith(f"{LEAST_LOTS - 1} items were used up to the end, and the log of them began 90 days")
    assert missing(many[:1]).startswith("1 item was used up")
    once = [*history("carrot", 500, [0] * LEAST_LOTS), *history("kale", 200, [200, 0, 0])]
    assert "no food" in missing(once)


def test_an_older_store_gets_its_ledger_and_keeps_its_undo(home: Path) -> None:
    import sqlite3

    from calmlarder.store.home import FILE_NAME
    from calmlarder.store.schema import STEPS

    home.mkdir()
    old = sqlite3.connect(home / FILE_NAME, isolation_level=None)
    old.executescript(f"BEGIN; {STEPS[0]} {STEPS[1]} PRAGMA user_version = 2; COMMIT;")
    old.executescript(
        """
        INSERT INTO eaten (content) VALUES ('{"at": "2026-03-11T12:00:00", "who": "me", "text": "t", "food": "", "title": "t", "grams": 1, "loads": []}');
        INSERT INTO actions VALUES (1, 'ate t', 0);
        INSERT INTO changes VALUES (1, 1, 'eaten', '1', NULL, '{"at": "2026-03-11T12:00:00", "who": "me", "text": "t", "food": "", "title": "t", "grams": 1, "loads": []}');
        """  # noqa: E501
    )
    old.close()
    with Store.at(home) as store:
        assert ended(store) == []
        assert len(store.eaten("")) == 1
        assert store.undo() == "ate t"
        assert store.eaten("") == []
