"""A plan begins with the next sitting: what the log of the day says was eaten is not planned again.

Usual times are those of plan/sittings.py (common practice, no source); nearness to them is checked by hand here.
"""

import json
from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot

from calmlarder.cli import main
from calmlarder.intake.eaten import EVERYONE, ME, Eaten
from calmlarder.plan.sittings import sittings_done
from calmlarder.plan.sittings_ahead import Usual, sittings_of_days
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Sitting
from calmlarder.tui.app import LarderApp
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.widgets.day_board import DayBoard
from programs import TODAY, run_program, settled

LARDER = "\n".join(
    [
        "firm tofu 560g, use by friday", "potatoes 1kg", "carrots 600g", "spinach 300g, use by tomorrow",
        "cooked rice 500g, made today", "rapeseed oil", "soy sauce", "eggs x6", "tempeh 400g", "kale 300g",
    ]
)  # fmt: skip


def dish(at: str, sitting: Sitting | None = None, who: str = ME, food: str = "") -> Eaten:
    return Eaten(
        at=datetime.fromisoformat(f"2026-03-{at}"), who=who, text="a dish", food=food, title="a dish", grams=300,
        loads=(), sitting=sitting,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("entry", "done"),
    [
        (dish("11T18:30", "dinner"), {"dinner"}),
        (dish("11T16:10", "dinner", EVERYONE), {"dinner"}),  # early, and it says what it was
        (dish("11T18:00", "shake"), {"shake"}),
        (dish("11T19:45"), {"dinner"}),  # 75 minutes from a dinner, nearer than any other
        (dish("11T13:00", food="boxed-rice-bowl-17"), {"packed"}),
        (dish("11T19:00", food="orange-juice"), set()),  # a food by itself
        (dish("11T19:00", "dinner", "robin"), set()),  # somebody else's alone
        (dish("12T00:20", "dinner"), {"dinner"}),  # tonight's, late
        (dish("11T00:20", "dinner"), set()),  # last night's, late: 6 hours after it, 18 before tonight's
        (dish("11T05:10", "dinner"), {"dinner"}),  # whoever cooks after the night has begun this day
        (dish("10T18:30", "dinner"), set()),
    ],
)
def test_which_sitting_of_today_lies_behind(entry: Eaten, done: set[str]) -> None:
    assert {key.sitting for key in sittings_done([entry], TODAY)} == done
    assert {key.day for key in sittings_done([entry], TODAY)} <= {TODAY}


def test_the_days_begin_with_the_next_sitting() -> None:
    done = sittings_done([dish("11T18:30", "dinner")], TODAY)

    def planned(days: int) -> list[tuple[date, str]]:
        return [(one.day, one.sitting) for one in sittings_of_days(days, TODAY, Usual(1), done)]

    assert planned(2) == [(date(2026, 3, 12), "packed"), (date(2026, 3, 12), "dinner")]
    assert planned(1) == planned(2)  # nothing is left of today: the next sitting is tomorrow's


@pytest.fixture
def run(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Callable[..., dict[str, Any]]:
    def call(*arguments: str) -> dict[str, Any]:
        capsys.readouterr()
        assert main([*arguments, "--home", str(tmp_path / "home"), "--today", "2026-03-11"]) == 0
        out = capsys.readouterr().out
        return json.loads(out) if out.startswith("{") else {}

    return call


@pytest.mark.usefixtures("quick_plans")
def test_the_command_starts_after_what_was_cooked_and_with_it_again_when_that_is_taken_back(
    run: Callable[..., dict[str, Any]], tmp_path: Path
) -> None:
    lines = tmp_path / "larder.txt"
    lines.write_text(LARDER, encoding="utf-8")
    run("larder", "import", str(lines))

    def days() -> list[str]:
        plan = run("plan", "--days", "2", "--buy", "0", "--json")
        return [f"{one['date'][-2:]} {one['sitting']}" for one in plan["sittings"]]

    assert days() == ["11 dinner", "12 packed", "12 dinner"]
    run("tonight")
    run("cooked")
    assert days() == ["12 packed", "12 dinner"]
    run("larder", "undo")
    assert days() == ["11 dinner", "12 packed", "12 dinner"]


@pytest.mark.long
@pytest.mark.usefixtures("quick_plans")
def test_the_screen_opened_again_starts_with_the_next_sitting(
    run: Callable[..., dict[str, Any]], tmp_path: Path, tables: Tables
) -> None:
    lines = tmp_path / "larder.txt"
    lines.write_text(LARDER, encoding="utf-8")
    run("larder", "import", str(lines))

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        async def planned() -> list[str]:
            await pilot.press("ctrl+n")
            await settled(app, pilot)
            found = [card.day for card in app.screen.query_one(DayBoard).cards]
            await pilot.press("escape")
            await pilot.pause()
            return found

        before = await planned()
        assert before[0] == "Wed 11 Mar"
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("enter", "c", "enter")
        await settled(app, pilot)
        assert isinstance(app.screen, LarderScreen)
        assert await planned() == before[1:]
        await pilot.press("ctrl+z")
        assert await planned() == before

    run_program(tmp_path / "home", tables, act)
