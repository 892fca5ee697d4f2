"""The log of what was eaten, and how it counts at the next sitting.

Outside checks: the cut-offs of Varney et al. 2017 (J Gastroenterol Hepatol 32 Suppl 1:53-61), for one sitting,
against loads added up here from the CSV rows; and a straight line worked out by hand.
"""

import asyncio
import csv
import json
import signal
import sqlite3
import subprocess
import sys
from collections.abc import Callable
from datetime import date, datetime, timedelta
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot

from calmlarder.checks.dinner import verify
from calmlarder.cli import main
from calmlarder.compose.compose import compose
from calmlarder.compose.cooked import share_eaten
from calmlarder.compose.scale_readings import passed_caps
from calmlarder.intake.eaten import EVERYONE, Eaten, Load
from calmlarder.intake.profile import profile_named
from calmlarder.intake.stacking import Stacking, held_ug, rooms, still_counted
from calmlarder.render.dinner_json import dinner_object
from calmlarder.store.home import COPY_NAME, FILE_NAME
from calmlarder.store.schema import STEPS
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.first_start import FirstStart
from calmlarder.tui.larder_screen import LarderScreen
from programs import settled

DAY = "2026-03-11"
LINES = (
    "firm tofu 280g, use by tomorrow", "cooked rice 400g, made today", "spinach 200g, use by today", "3 carrots",
    "tin of chickpeas", "broccoli 300g, use by tomorrow", "eggs x4", "soy sauce", "rapeseed oil",
)  # fmt: skip
# Varney et al. 2017: g of oligosaccharides in one food at one sitting, in grains, pulses and the like, and in others.
CUT_OFF = {"chickpeas-canned": Decimal("0.30"), "spinach": Decimal("0.20")}
SITTING = Decimal("0.50")  # one of each
EXACT = Decimal("0.005")  # figures carry no more


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


@pytest.fixture
def full(home: Path) -> Path:
    for line in LINES:
        assert main(["larder", "add", line, "--home", str(home), "--today", DAY]) == 0
    return home


Ask = Callable[..., dict[str, Any]]


@pytest.fixture
def ask(capsys: pytest.CaptureFixture[str]) -> Ask:
    def asked(home: Path, *words: str, status: int = 0) -> dict[str, Any]:
        capsys.readouterr()
        assert main([*words, "--home", str(home), "--today", DAY, "--json"]) == status
        return dict(json.loads(capsys.readouterr().out))

    return asked


@cache
def rows(name: str) -> list[dict[str, str]]:
    with (shipped("ingredient_tables") / name).open(encoding="utf-8-sig", newline="") as file:
        return list(csv.DictReader(file))


@cache
def all_figures() -> dict[tuple[str, str], Decimal]:
    return {(row["food"], row["component"]): Decimal(row["g_per_100g"]) for row in rows("fermentables.csv")}


def oligosaccharides(amounts: list[tuple[str, int]]) -> Decimal:
    """G of fructans and GOS in foods, from the rows as they stand."""
    figures = all_figures()
    loads = ((figures[food, "fructans"] + figures[food, "gos"]) * grams / 100 for food, grams in amounts)
    return sum(loads, Decimal(0))


def fits_on_top(dinner: dict[str, Any], food: str, grams: int) -> bool:
    """Whether the published cut-offs hold for a dinner and what was eaten of a food before it."""
    plate = [(use["food"], use["grams"]) for use in dinner["uses"]]
    of_it = [(food, grams), *(one for one in plate if one[0] == food)]
    alone, together = oligosaccharides(of_it), oligosaccharides([(food, grams), *plate])
    return alone <= CUT_OFF[food] + EXACT and together <= SITTING + EXACT


@pytest.mark.parametrize(
    ("line", "food", "grams"), [("45 g tinned chickpeas", "chickpeas-canned", 45), ("150 g spinach", "spinach", 150)]
)
def test_with_what_was_eaten_the_sitting_stays_under_the_published_cutoffs(
    full: Path, ask: Ask, line: str, food: str, grams: int
) -> None:
    before = ask(full, "tonight", "--count", "4", "--at", "18:00")
    assert before["stacked"] is None
    ask(full, "ate", line, "--when", "17:00")
    assert oligosaccharides([(food, grams)]) > 0
    at_six = ask(full, "tonight", "--count", "4", "--at", "18:00")
    assert at_six["dinners"]
    assert all(fits_on_top(dinner, food, grams) for dinner in at_six["dinners"])
    assert [one["until"] for one in at_six["stacked"]["from"]] == [f"{DAY}T20:00"]
    # It is the log that does it: without it one of the dinners would have passed a cut-off.
    assert not all(fits_on_top(dinner, food, grams) for dinner in before["dinners"])
    for at in ("20:00", "21:00"):
        later = ask(full, "tonight", "--count", "4", "--at", at)
        assert later["stacked"] is None
        # The day's total is a wish still, so that amounts and later choices may differ; the dinner is the same.
        assert later["dinners"][0]["title"] == before["dinners"][0]["title"]
    longer = ask(full, "tonight", "--at", "21:00", "--window", "5")
    assert longer["stacked"]["from"][0]["until"] == f"{DAY}T22:00"


def test_somebody_elses_log_does_not_count_for_me_but_a_shared_dish_does(full: Path, ask: Ask) -> None:
    ask(full, "ate", "90 g tinned chickpeas", "--when", "17:00", "--who", "Robin")
    assert ask(full, "tonight")["stacked"] is None
    assert ask(full, "tonight", "--who", "robin")["stacked"]["held_g"]["oligosaccharides"] > 0
    assert ask(full, "tonight", "--people", "2")["stacked"]["held_g"]["oligosaccharides"] > 0
    ask(full, "ate", "30 g rye bread", "--when", "17:30", "--who", "everyone")
    assert [one["text"] for one in ask(full, "tonight")["stacked"]["from"]] == ["30 g rye bread"]


def test_a_used_up_cap_says_when_more_would_fit(full: Path, ask: Ask, capsys: pytest.CaptureFixture[str]) -> None:
    # 60 g of rye bread with 1.1 g of fructans in 100 g takes the whole of the target for one sitting, 0.5 g.
    ask(full, "ate", "60 g rye bread", "--when", "17:10")
    none = ask(full, "tonight", "--at", "18:00", status=3)
    assert none["stacked"]["more_after"] == f"{DAY}T20:10"
    assert main(["tonight", "--home", str(full), "--today", DAY]) == 3
    told = " ".join(capsys.readouterr().out.split())
    assert "after 20:10 more would fit" in told
    assert "17:10 rye bread, 60 g" in told
    assert ask(full, "tonight", "--at", "20:10")["dinners"]


def test_a_limit_filled_before_is_told(full: Path, ask: Ask, capsys: pytest.CaptureFixture[str]) -> None:
    """Over 0.50 g, the oligosaccharides of one food of each class at its cut-off (Varney et al. 2017)."""
    ask(full, "ate", "200 g courgette; 60 g peanut butter; 100 g spinach", "--when", "17:30")
    held = ask(full, "tonight", "--at", "18:00")["stacked"]["held_g"]["oligosaccharides"]
    assert held > 0.5
    main(["tonight", "--home", str(full), "--today", DAY, "--at", "18:00"])
    told = " ".join(capsys.readouterr().out.split())
    assert "What was eaten at 17:30 already fills what one meal may bring of fructans + GOS" in told
    assert "After 20:30 there is more to choose from" in told
    assert f"{held:.2f} g of it from before" in told


def test_a_binding_cap_says_so(full: Path, ask: Ask, capsys: pytest.CaptureFixture[str]) -> None:
    ask(full, "ate", "90 g tinned chickpeas", "--when", "17:00")
    stacked = ask(full, "tonight", "--at", "18:00")["stacked"]
    assert stacked["binding"]
    assert stacked["more_after"] == f"{DAY}T20:00"
    assert main(["tonight", "--home", str(full), "--today", DAY, "--at", "18:00"]) == 0
    assert "after 20:00 more would fit" in " ".join(capsys.readouterr().out.split())


def test_a_file_of_lines_is_cooked_without_the_log_unless_a_home_is_named(
    full: Path, ask: Ask, tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    ask(full, "ate", "90 g tinned chickpeas", "--when", "17:00")
    lines = tmp_path / "lines.txt"
    lines.write_text("\n".join(LINES), encoding="utf-8")
    monkeypatch.setenv("CALMLARDER_HOME", str(full))
    assert main(["tonight", "--larder", str(lines), "--today", DAY, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["stacked"] is None
    assert ask(full, "tonight", "--larder", str(lines))["stacked"] is not None


def eaten_at(clock: str, *loads: tuple[str, str, int], who: str = "me") -> Eaten:
    """An invented entry: cut-off class, group, micrograms that are likely; as many may come more."""
    told = tuple(Load(cutoff_class=c, group=g, plan_ug=ug, worst_ug=2 * ug) for c, g, ug in loads)  # type: ignore[arg-type]
    at = datetime.fromisoformat(f"{DAY}T{clock}")
    return Eaten(at=at, who=who, text="invented", food="", title="invented", grams=1, loads=told)


def test_all_or_nothing_and_a_straight_line(tables) -> None:  # type: ignore[no-untyped-def]
    caps = {cap.key: cap for cap in profile_named("elimination", tables).at().sitting_caps}
    entry = eaten_at("17:00", ("core", "oligosaccharides", 60_000), ("other", "total", 90_000))
    core, total = caps["oligosaccharides"], caps["total"]

    def held(clock: str, fade: bool) -> tuple[int, int]:
        how = Stacking(at=datetime.fromisoformat(f"{DAY}T{clock}"), fade=fade)
        counted = still_counted([entry], how)
        return held_ug(counted, core), held_ug(counted, total)

    assert [held(clock, False) for clock in ("16:59", "17:00", "19:59", "20:00")] == [
        (0, 0), (60_000, 90_000), (60_000, 90_000), (0, 0),
    ]  # fmt: skip
    # By hand: half past six is half of three hours, so half is left; at eight nothing.
    assert [held(clock, True) for clock in ("17:00", "18:30", "19:00", "20:00")] == [
        (60_000, 90_000), (30_000, 45_000), (20_000, 30_000), (0, 0),
    ]  # fmt: skip


def test_of_several_people_whoever_has_most_counts_once(tables) -> None:  # type: ignore[no-untyped-def]
    cap = next(c for c in profile_named("elimination", tables).at().sitting_caps if c.key == "total")
    entries = [
        eaten_at("17:00", ("core", "total", 100_000), who="ash"),
        eaten_at("17:10", ("core", "total", 50_000), who="ash"),
        eaten_at("17:20", ("core", "total", 120_000), who="kit"),
        eaten_at("17:30", ("core", "total", 10_000), who=EVERYONE),
    ]
    at = datetime.fromisoformat(f"{DAY}T18:00")
    assert held_ug(still_counted(entries, Stacking(at=at, who=())), cap) == 160_000
    assert held_ug(still_counted(entries, Stacking(at=at, who=("kit",))), cap) == 130_000
    left = rooms(still_counted(entries, Stacking(at=at, who=())), cap)
    assert min(room.likely for room in left) == 75_500 - 16_000  # hundredths of a mg
    much = still_counted([eaten_at("17:00", ("core", "total", 900_000))], Stacking(at=at))
    assert [(room.likely, room.used_up) for room in rooms(much, cap)] == [(500, True)]


def test_it_is_the_same_as_lower_caps(tables, patterns, lots_of, wanting) -> None:  # type: ignore[no-untyped-def]
    """0.1 g of fructans that are certain and a limit that is as much lower give the same dinner."""
    lots = lots_of(LINES)
    load = Load(cutoff_class="core", group="oligosaccharides", likely_ug=300_000, off_ug=0)
    entry = eaten_at("17:00").model_copy(update={"loads": (load,)})
    stacked = wanting(eaten=(entry,), stacking=Stacking(at=datetime.fromisoformat(f"{DAY}T18:00")))
    plain = wanting()
    lower = tuple(
        cap.model_copy(
            update={"typical_g": cap.typical_g - Decimal("0.3"), "at_most_g": (cap.at_most_g or 0) - Decimal("0.3")}
        )
        if cap.key == "oligosaccharides"
        else cap
        for cap in plain.profile.sitting_caps
    )
    by_cap = plain.model_copy(update={"profile": plain.profile.model_copy(update={"sitting_caps": lower})})

    def uses(wanted: Any) -> list[tuple[str, int, str]]:
        return [(u.food, u.grams, u.how) for u in compose(lots, wanted, patterns, tables).dinners[0].uses]

    assert uses(stacked) == uses(by_cap) != uses(plain)


@pytest.mark.parametrize("fade", [False, True])
def test_the_check_refuses_a_dinner_that_fits_alone_but_not_on_top(  # type: ignore[no-untyped-def]
    tables, patterns, lots_of, wanting, fade: bool
) -> None:
    lots = lots_of(LINES)
    wanted = wanting()
    dinner = compose(lots, wanted, patterns, tables).dinners[0]
    assert dinner.per_person.loads_g["oligosaccharides"] > 0.1

    def faults(clock: str, who: str = "me") -> tuple[str, ...]:
        entry = eaten_at("17:00", ("core", "oligosaccharides", 460_000), who=who)
        at = datetime.fromisoformat(f"{DAY}T{clock}")
        asked = wanted.model_copy(update={"eaten": (entry,), "stacking": Stacking(at=at, fade=fade)})
        request = {**asked.model_dump(mode="json"), "profile": "elimination"}
        folders, recipes = [shipped("ingredient_tables")], shipped("recipes")
        return verify(dinner_object(dinner), request, [lot.model_dump(mode="json") for lot in lots], folders, recipes)

    assert any("oligosaccharides a person" in fault for fault in faults("17:00"))
    assert any("oligosaccharides a person" in fault for fault in faults("17:00", EVERYONE))
    assert faults("20:00") == faults("17:00", "robin") == ()
    # Near the end of the window hardly anything is left in a straight line, and all of it otherwise.
    assert bool(faults("19:59")) is not fade


def test_the_scale_counts_what_was_eaten_before(tables, patterns, lots_of, wanting) -> None:  # type: ignore[no-untyped-def]
    wanted = wanting()
    dinner = compose(
        lots_of(["firm tofu 250g", "cooked rice 350g, made today", "broccoli 300g, use by today", "soy sauce"]),
        wanted, patterns, tables,
    ).dinners[0]  # fmt: skip
    broccoli = next(use for use in dinner.uses if use.food == "broccoli").model_copy(update={"how": "weigh"})
    uses = tuple(broccoli if use.food == "broccoli" else use for use in dinner.uses)
    dinner = dinner.model_copy(update={"uses": uses})
    at = datetime.fromisoformat(f"{DAY}T18:00")
    counted = still_counted([eaten_at("17:00", ("fresh", "oligosaccharides", 450_000))], Stacking(at=at))
    weighed = {broccoli.lot: broccoli.grams}
    assert passed_caps(dinner, weighed, wanted.profile, tables) == ()
    over = passed_caps(dinner, weighed, wanted.profile, tables, counted)
    assert "oligosaccharides" in {one.cap.key for one in over}


def test_a_cooked_share_is_the_dinner_a_person_had(tables, patterns, lots_of, wanting) -> None:  # type: ignore[no-untyped-def]
    wanted = wanting(people=2)
    dinner = compose(lots_of((*LINES, "firm tofu 400g", "cooked rice 500g")), wanted, patterns, tables).dinners[0]
    entry = share_eaten(dinner, {}, datetime.fromisoformat(f"{DAY}T18:30"), tables)
    assert entry.who == EVERYONE
    counted = still_counted([entry], Stacking(at=entry.at))
    for cap in wanted.limits.sitting_caps:
        assert held_ug(counted, cap) / 1e6 == pytest.approx(dinner.per_person.loads_g[cap.key], abs=2e-4)
    more = {use.lot: use.grams + 100 for use in dinner.uses if use.food == "tofu-firm"}
    # Firm tofu holds 0.1 g of GOS in 100 g (British table 13-570); half of 100 g more is 0.05 g each.
    assert more
    heavier = share_eaten(dinner, more, entry.at, tables)
    core = next(cap for cap in wanted.limits.sitting_caps if cap.key == "oligosaccharides")
    assert held_ug(still_counted([heavier], Stacking(at=entry.at)), core) >= held_ug(counted, core) + 50_000


def test_ate_asks_when_it_is_not_clear(home: Path, ask: Ask, capsys: pytest.CaptureFixture[str]) -> None:
    def refused(*words: str) -> str:
        capsys.readouterr()
        assert main(["ate", *words, "--home", str(home), "--today", DAY]) == 2
        told = capsys.readouterr().err
        assert "Traceback" not in told
        return told

    assert "rice noodles`" in refused("100 g noodles")
    assert "no food" in refused("old boots")
    assert "--when" in refused("100 g spinach", "--when", "25:00")
    assert "--when" in refused("100 g spinach", "--when", "2026-03-11")
    assert "--who" in refused("100 g spinach", "--who", "a\x1b[31m")
    assert ask(home, "eaten")["eaten"] == []


def test_unknown_is_told_and_is_not_zero(
    full: Path, ask: Ask, tables: Tables, capsys: pytest.CaptureFixture[str]
) -> None:
    food = next(food for food in tables.foods if tables.unknown_of(food.id))
    entry = ask(full, "ate", f"50 g {food.name}", "--when", "17:00")["eaten"][0]
    assert (entry["unknown"], entry["loads_g"]) == ([food.name], {})
    assert set(ask(full, "ate", "2 eggs", "--when", "10:00")["eaten"][0]["loads_g"].values()) == {0}
    assert main(["tonight", "--home", str(full), "--today", DAY]) == 0
    assert f"not known, so not counted: {food.name}" in " ".join(capsys.readouterr().out.split())


def test_the_log_is_listed_and_undone(home: Path, ask: Ask) -> None:
    ask(home, "ate", "two squares dark chocolate", "--when", "2026-03-10T21:30", "--who", "Robin")
    ask(home, "ate", "200 ml orange juice", "--when", "08:10")
    ask(home, "ate", "spinach")  # one portion, and not the bag; 18:00, as the day was given
    log = ask(home, "eaten")["eaten"]
    assert [(one["at"], one["who"], one["food"], one["grams"]) for one in log] == [
        (f"{DAY[:-2]}10T21:30", "robin", "chocolate-dark", 10),
        (f"{DAY}T08:10", "me", "orange-juice", 200),
        (f"{DAY}T18:00", "me", "spinach", 70),
    ]
    assert [one["at"][:10] for one in ask(home, "eaten", "--days", "1")["eaten"]] == [DAY, DAY]
    command = ["--home", str(home), "--today", DAY]
    assert main(["larder", "undo", *command]) == main(["larder", "undo", *command]) == 0
    assert [one["food"] for one in ask(home, "eaten")["eaten"]] == ["chocolate-dark"]
    assert main(["larder", "redo", *command]) == main(["larder", "redo", *command]) == 0
    assert ask(home, "eaten")["eaten"] == log


def test_an_older_store_is_brought_up_to_date_with_its_undo(home: Path) -> None:
    home.mkdir()
    old = sqlite3.connect(home / FILE_NAME, isolation_level=None)
    old.executescript(f"BEGIN; {STEPS[0]} PRAGMA user_version = 1; COMMIT;")
    old.executescript(
        """
        INSERT INTO lots VALUES (1, '{"food": "kale"}');
        INSERT INTO actions VALUES (1, 'add kale', 0);
        INSERT INTO changes VALUES (1, 1, 'lots', '1', NULL, '{"food": "kale"}');
        """
    )
    old.close()
    store = Store.at(home)
    copy = sqlite3.connect(home / COPY_NAME)
    assert copy.execute("SELECT count(*) FROM lots").fetchone() == (1,)
    assert copy.execute("PRAGMA user_version").fetchone() == (1,)
    copy.close()
    with store:
        assert [stored.content["food"] for stored in store.lots()] == ["kale"]
        assert store.undo() == "add kale"
        assert store.lots() == []
        assert store.redo() == "add kale"


_LOGGING = """
import sys
from datetime import datetime, timedelta
from pathlib import Path
from calmlarder.intake.eaten import Eaten
from calmlarder.store.logs import log
from calmlarder.store.store import Store
store = Store.at(Path(sys.argv[1]))
start = datetime.fromisoformat(sys.argv[2])
for number in range(100_000):
    at = start + timedelta(minutes=number)
    log(store, Eaten(at=at, who="me", text=str(number), food="", title="", grams=1, loads=()))
    print(number, flush=True)
"""


def test_killed_while_logging_nothing_confirmed_is_lost(home: Path) -> None:
    start = f"{DAY}T00:00:00"
    process = subprocess.Popen([sys.executable, "-c", _LOGGING, str(home), start], stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    confirmed = [process.stdout.readline() for _ in range(25)]
    process.send_signal(signal.SIGKILL)
    confirmed += process.stdout.readlines()
    process.wait()
    with Store.at(home) as store:
        kept = [row.content["text"] for row in store.eaten(start)]
    whole = [line.strip() for line in confirmed if line.endswith("\n")]
    assert kept[: len(whole)] == whole
    assert len(kept) <= len(whole) + 1


@pytest.mark.long
def test_cooked_writes_the_log_and_one_undo_takes_both_back(home: Path, tables) -> None:  # type: ignore[no-untyped-def]
    seen: dict[str, Any] = {}

    def state() -> tuple[dict[str, float], list[dict[str, Any]]]:
        with Store.at(home) as store:
            lots = {row.content["food"]: row.content["grams"] for row in store.lots()}
            return lots, [row.content for row in store.eaten(DAY)]

    async def scene() -> None:
        app = LarderApp(home, tables, date.fromisoformat(DAY))
        async with app.run_test(size=(100, 40)) as pilot:
            await pilot.pause()
            if isinstance(app.screen, FirstStart):
                await pilot.press("escape")
                await pilot.pause()
            await cook(app, pilot)

    async def dinner(app: LarderApp, pilot: Pilot[None]) -> str:
        await pilot.press("f3")
        await settled(app, pilot)
        return str(app.screen.query_one(DinnerView).content)

    async def cook(app: LarderApp, pilot: Pilot[None]) -> None:
        first = await dinner(app, pilot)
        assert "Still counted" not in first
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, CookScreen)
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("enter")  # nothing goes into boxes
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        seen["cooked"] = state()
        assert "Still counted at 18:00" in await dinner(app, pilot)
        await pilot.press("escape")
        await pilot.pause()
        await pilot.press("ctrl+z")
        await pilot.pause()
        seen["undone"] = state()
        assert await dinner(app, pilot) != ""

    for line in LINES:
        assert main(["larder", "add", line, "--home", str(home), "--today", DAY]) == 0
    before = state()
    asyncio.run(scene())
    lots, log = seen["cooked"]
    assert lots != before[0]
    assert [(entry["at"], entry["who"]) for entry in log] == [(f"{DAY}T18:00:00", "me")]
    assert {load["group"] for load in log[0]["loads"]} >= {"oligosaccharides", "total"}
    assert seen["undone"] == before == (before[0], [])


def test_what_is_still_to_come_is_not_logged(
    home: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    now = datetime.now().replace(hour=18, minute=0, second=0, microsecond=0)
    monkeypatch.setattr("calmlarder.commands.moment.this_minute", lambda: now)
    where = ["--home", str(home)]
    for line in LINES:
        assert main(["larder", "add", line, *where]) == 0
    assert main(["tonight", *where]) == 0

    def told(*words: str, status: int) -> str:
        capsys.readouterr()
        assert main([*words, *where]) == status
        return capsys.readouterr().err

    # Half an hour ahead is a plate on the table; a feeling has no such excuse, and clocks are near each other.
    for words, soon, late in ((("ate", "2 eggs"), "18:30", "18:31"), (("cooked",), "18:30", "18:31"),
                              (("feel", "3"), "18:05", "18:06")):  # fmt: skip
        told(*words, "--when", soon, status=0)
        refused = told(*words, "--when", late, status=2)
        assert f"{late} of {now:%Y-%m-%d} is still to come" in refused
        assert f"({now - timedelta(days=1):%Y-%m-%d}T{late})" in refused
        told(*words, "--when", f"{now + timedelta(days=1):%Y-%m-%d}T08:00", status=2)
    told("ate", "2 eggs", "--when", f"{now - timedelta(days=1):%Y-%m-%d}T23:50", status=0)
    # Another day that was given is told by its own end, and today's default is now, though it was named.
    told("feel", "3", "--today", DAY, "--when", "23:00", status=0)
    told("feel", "3", "--today", f"{now + timedelta(days=9):%Y-%m-%d}", "--when", "2099-01-01T10:00", status=2)
    now = now.replace(hour=9)
    told("feel", "4", "--today", f"{now:%Y-%m-%d}", status=0)
    with Store.at(home) as store:
        assert now.isoformat() in [row.content["at"] for row in store.logged("felt")]


def test_the_line_says_when_unless_an_option_does(home: Path, ask: Ask) -> None:
    """`--when` wins; a day of the food is none of the meal."""
    for line, at in (("2 eggs, at half past one", "13:30"), ("2 eggs this morning", "08:00")):
        assert ask(home, "ate", line)["eaten"][0]["at"] == f"{DAY}T{at}"
    assert ask(home, "ate", "--when", "09:00", "2 eggs at noon")["eaten"][0]["at"] == f"{DAY}T09:00"
    assert ask(home, "feel", "1", "0", "1", "0", "--note", "yesterday, a bit tight")["felt"][0] | {"id": 1} == {
        **ask(home, "feel", "1", "0", "1", "0", "--note", "a bit tight", "--when", "2026-03-10T18:00")["felt"][0],
        "id": 1,
    }
    assert main(["ate", "2 eggs at 8 and rice at 9", "--home", str(home), "--today", DAY]) == 2
