"""What each person ate counts by their own hours and fade.

The numbers are worked out by hand: hours on a clock, and a straight line. The check that shares no code counts again.
"""

import json
from collections.abc import Callable
from datetime import datetime
from decimal import Decimal
from pathlib import Path
from typing import Any

import hypothesis.strategies as st
import pytest
from hypothesis import given
from textual.pilot import Pilot
from textual.widgets import Input, Static

import composed_once
from calmlarder.checks.limits import Limit
from calmlarder.checks.within_limits import pasts_of
from calmlarder.cli import main
from calmlarder.household.settings import settled
from calmlarder.intake.eaten import EVERYONE, Eaten, Load
from calmlarder.intake.own import Own, kept_owns, laid_over, own_of, owns_of
from calmlarder.intake.profile import profile_named
from calmlarder.intake.stacking import Stacking, held_by, held_ug, rooms, still_counted
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.widgets.field import Field
from calmlarder.tui.widgets.pick import Pick
from programs import run_program

DAY = "2026-03-11"
LINES = ("firm tofu 280g, use by tomorrow", "cooked rice 400g, made today", "spinach 200g, use by today", "3 carrots",
         "broccoli 300g, use by tomorrow", "eggs x4", "soy sauce", "rapeseed oil")  # fmt: skip
CORE = "oligosaccharides"
Ask = Callable[..., dict[str, Any]]


def at(clock: str) -> datetime:
    return datetime.fromisoformat(f"{DAY}T{clock}")


def eaten(clock: str, who: str, micrograms: int) -> Eaten:
    """An invented entry of GOS in grains or pulses; the worst case is the plan."""
    load = Load(cutoff_class="core", group="oligosaccharides", plan_ug=micrograms, worst_ug=micrograms)
    return Eaten(at=at(clock), who=who, text="t", food="", title="t", grams=1, loads=(load,))


def by_the_check(entries: list[Eaten], how: Stacking) -> Decimal:
    request = {"stacking": how.model_dump(mode="json"), "eaten": [one.model_dump(mode="json") for one in entries]}
    limit = Limit("sitting", "oligosaccharides", (), Decimal("0.5"), Decimal("0.8"))
    return max(past.likely for past in pasts_of(request, limit, None))


# ash ate 100 mg at 17:00, an hour before the dinner at 18:00; kit 240 mg at 14:00, four hours before it.
ASH, KIT, BOTH = eaten("17:00", "ash", 100_000), eaten("14:00", "kit", 240_000), eaten("15:00", EVERYONE, 60_000)
FIVE, SIX_FADES = Own(who="kit", window_hours=5), Own(who="kit", window_hours=6, fade=True)
NOTHING = Own(who="ash", window_hours=0.5)


@pytest.mark.parametrize(
    ("what", "entries", "own", "ash", "kit"),
    [
        ("the home's 3 h: kit's are over", [ASH, KIT], (), 100_000, 0),
        ("kit's 5 h are not", [ASH, KIT], (FIVE,), 100_000, 240_000),
        ("6 h that fade: 2 of 6 are left, a third of 240", [ASH, KIT], (SIX_FADES,), 100_000, 80_000),
        ("ash's half an hour is over", [ASH, KIT], (FIVE, NOTHING), 0, 240_000),
        ("a dish for both at 15:00 is out of 3 h at 18:00, and in 5 h for kit alone", [BOTH], (FIVE,), 0, 60_000),
        ("and of 6 h that fade half is left", [BOTH], (SIX_FADES,), 0, 30_000),
        ("kit's 80 and half of the 60 for both", [ASH, KIT, BOTH], (SIX_FADES,), 100_000, 110_000),
        ("the home fades for ash alone", [ASH, KIT], (Own(who="ash", fade=True),), 66_667, 0),
    ],
)
def test_two_people_by_hand(
    what: str, entries: list[Eaten], own: tuple[Own, ...], ash: int, kit: int, tables: Tables
) -> None:
    cap = next(one for one in profile_named("elimination", tables).at().sitting_caps if one.key == CORE)
    how = Stacking(at=at("18:00"), own=own, who=("ash", "kit"))
    counted = still_counted(entries, how)
    held = held_by(counted, cap)
    assert (held.get("ash", 0), held.get("kit", 0)) == (ash, kit), what
    assert held_ug(counted, cap) == max(ash, kit)
    # 0.50 g at a sitting, to 5 mg; what is left of it goes by the fuller one.
    assert min(room.likely for room in rooms(counted, cap)) == (505_000 - max(ash, kit)) // 10
    assert abs(by_the_check(entries, how) * 1_000_000 - max(ash, kit)) < 1
    # Where nobody was named they both may be at the table, and so may somebody who shared the dish.
    assert held_ug(still_counted(entries, how.model_copy(update={"who": ()})), cap) == max(ash, kit)


def test_until_when_goes_by_the_person(tables: Tables) -> None:
    how = Stacking(at=at("17:30"), own=(FIVE,), who=("ash", "kit"))
    told = {one.whose: f"{one.until:%H:%M}" for one in still_counted([BOTH], how)}
    assert told == {("ash",): "18:00", ("kit",): "20:00"}
    assert how.longest_hours == 5
    assert how.model_copy(update={"who": ("ash",)}).longest_hours == 3


_WHO = st.sampled_from(["ash", "kit", "me", EVERYONE])
_ENTRY = st.tuples(st.integers(0, 23), st.integers(0, 59), _WHO, st.integers(0, 300_000))
_OWN = st.builds(
    Own,
    who=st.sampled_from(["ash", "kit", "me"]),
    window_hours=st.none() | st.integers(0, 96).map(lambda quarters: quarters / 4),
    fade=st.none() | st.booleans(),
)


@given(
    st.lists(_ENTRY, max_size=6), st.lists(_OWN, max_size=3, unique_by=lambda own: own.who), st.booleans(),
    st.sampled_from([(), ("kit",), ("ash", "kit"), ("me",)]), st.integers(0, 23),
)  # fmt: skip
def test_the_check_counts_the_same(
    tables: Tables, told: list[tuple[int, int, str, int]], own: list[Own], fade: bool, who: tuple[str, ...], hour: int
) -> None:
    cap = next(one for one in profile_named("elimination", tables).at().sitting_caps if one.key == CORE)
    entries = [eaten(f"{h:02}:{m:02}", name, micrograms) for h, m, name, micrograms in told]
    how = Stacking(at=at(f"{hour:02}:00"), fade=fade, own=tuple(own), who=who)
    ours, check = held_ug(still_counted(entries, how), cap), by_the_check(entries, how) * 1_000_000
    assert check <= ours < check + len(entries) + 1  # each entry is rounded up to a microgram


def test_lines_of_own_hours() -> None:
    assert own_of(" Kit  5 ") == Own(who="kit", window_hours=5)
    assert (
        own_of("kit 2,5 h fades") == own_of("kit for 2.5 hours, fades") == Own(who="kit", window_hours=2.5, fade=True)
    )
    assert own_of("aunt may stays") == Own(who="aunt may", fade=False)
    assert [own_of(line) for line in ("kit", "5", "kit 25", "fades", "", "a;b 5", "k\x1b[31m 5")] == [None] * 7
    both = (Own(who="ash", window_hours=2), Own(who="kit", window_hours=5, fade=True))
    assert owns_of(kept_owns(both)) == both
    assert owns_of("kit 5; nonsense; kit 4") == (Own(who="kit", window_hours=4),)
    assert laid_over(both, (Own(who="kit", fade=False),))[1] == Own(who="kit", window_hours=5, fade=False)


@pytest.fixture
def home(tmp_path: Path) -> Path:
    lines, folder = tmp_path / "lines.txt", tmp_path / "home"
    lines.write_text("\n".join(LINES), encoding="utf-8")
    assert main(["larder", "import", str(lines), "--home", str(folder), "--today", DAY]) == 0
    return folder


@pytest.fixture
def ask(home: Path, capsys: pytest.CaptureFixture[str]) -> Ask:
    def asked(*words: str, status: int = 0) -> dict[str, Any]:
        capsys.readouterr()
        assert main([*words, "--home", str(home), "--today", DAY, "--json"]) == status
        return dict(json.loads(capsys.readouterr().out))

    return asked


def test_tonight_says_whose_past_counts_and_how_long(ask: Ask, home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    ask("ate", "90 g tinned chickpeas", "--when", "14:00", "--who", "kit")
    ask("ate", "5 g rye bread", "--when", "17:00")
    with Store.at(home) as store:
        store.set({"people": 2, "own": "kit 5"}, "settle")
    stacked = ask("tonight")["stacked"]
    by_name = {one["who"]: one for one in stacked["people"]}
    assert (by_name["kit"]["window_hours"], by_name["me"]["window_hours"]) == (5, 3)
    # Tinned chickpeas and rye bread from the rows of the tables: kit's share is the larger one, and it decides.
    assert by_name["kit"]["held_g"][CORE] == stacked["held_g"][CORE] > by_name["me"]["held_g"][CORE] > 0
    assert [(one["who"], one["until"][-5:]) for one in stacked["from"]] == [("kit", "19:00"), ("me", "20:00")]
    assert "hours of their own, kit: 5 hours" in ask("tonight")["from_settings"]
    assert main(["tonight", "--home", str(home), "--today", DAY]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "until 19:00 for kit, by hours of their own" in told
    assert "Whose past leaves the least room: that of kit, fructans + GOS" in told
    # An option for everybody takes the place of what was settled for one; one for one person is laid over it.
    assert [one["who"] for one in ask("tonight", "--window", "3")["stacked"]["from"]] == ["me"]
    assert [one["who"] for one in ask("tonight", "--own", "kit 4.5")["stacked"]["from"]] == ["kit", "me"]
    faded = ask("tonight", "--own", "kit fades")["stacked"]
    assert {one["who"]: one["share"] for one in faded["from"]} == {"kit": 0.2, "me": 1.0}  # 1 of 5 hours is left
    assert ask("tonight", "--people", "1")["stacked"]["from"][0]["who"] == "me"
    assert main(["tonight", "--own", "kit 30", "--home", str(home), "--today", DAY]) == 2
    assert "nobody's hours" in capsys.readouterr().err


@pytest.mark.long
@pytest.mark.usefixtures("quick_plans")
def test_a_plan_keeps_to_each_ones_hours(ask: Ask, monkeypatch: pytest.MonkeyPatch) -> None:
    """Lunch at 13:00 and dinner at 18:30: under the home's 3 h apart, under 24 h of one person together."""
    monkeypatch.setattr(composed_once, "MANY_LOTS", 100)  # each pattern is looked at
    for line in ("firm tofu 800g", "cooked quinoa 600g, made today", "oats 500g", "tempeh 250g", "6 carrots"):
        ask("larder", "add", line)
    asked = ("plan", "--sittings", "tonight, tomorrow lunch, tomorrow dinner", "--who", "kit")
    apart, near = ask(*asked), ask(*asked, "--own", "kit 24")

    def most(plan: dict[str, Any], one: int, other: int) -> float:
        first, second = (plan["sittings"][number]["dinner"] for number in (one, other))
        return sum(dinner["per_person"]["loads_g"][CORE] for dinner in (first, second) if dinner)

    assert all(one["dinner"] for one in apart["sittings"])
    assert max(most(apart, 0, 1), most(apart, 1, 2)) > 0.505
    assert most(near, 1, 2) <= 0.506
    assert most(near, 0, 1) <= 0.506


@pytest.mark.long
def test_people_and_limits_keep_them(tables: Tables, tmp_path: Path) -> None:
    home = tmp_path / "home"

    def owns() -> tuple[Own, ...]:
        with Store.at(home) as store:
            return settled(store.settings(), tables).own

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f2")
        await pilot.pause()
        line, list_of = app.screen.query_one("#own-line", Input), app.screen.query_one("#own", Pick)
        assert not list_of.query_ancestor(Field).display
        line.focus()
        for typed in ("kit 5 fades", "ash 2", "kit 6", "kit, whenever"):
            line.value = typed
            await pilot.press("enter")
            await pilot.pause()
        assert line.value == "kit, whenever"
        takes = line.query_ancestor(Field).query_one(".takes", Static)
        assert "such as kit 5" in str(takes.content)
        assert owns() == (Own(who="ash", window_hours=2), Own(who="kit", window_hours=6))
        list_of.choose(list_of.chosen[0])
        await pilot.pause()
        assert owns() == (Own(who="kit", window_hours=6),)
        await pilot.press("escape", "ctrl+z")
        await pilot.pause()
        assert len(owns()) == 2

    run_program(home, tables, act)
