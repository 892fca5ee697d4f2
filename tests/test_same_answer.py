"""A command and its screen are two faces of one use case: the same home gives the same answer, whoever asks.

Two homes are filled alike; a command works on one, keys on the other, and what both hold afterwards is compared.
Expected amounts are stated by hand beside each check.
"""

import json
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot

from calmlarder.cli import main
from calmlarder.household.choices import Choices
from calmlarder.household.household import Household
from calmlarder.household.planning import Which, plan_asked
from calmlarder.household.request import evening
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.widgets.item_list import ItemList
from programs import TODAY, Act, run_program, settled, type_line

LINES = [
    "firm tofu 280g, use by friday",
    "cooked rice 400g, made yesterday",
    "spinach 200g",
    "2 carrots, bendy",
    "red pepper",
    "soy sauce",
    "olive oil 250 ml",
]
SETTINGS = {"diet": "vegan", "avoid": "sesame", "protein_g": 15, "minutes": 30, "never": "pepper-red", "rings": 1}


class Homes:
    """One home for commands, one for keys."""

    def __init__(self, folder: Path, tables: Tables, capsys: pytest.CaptureFixture[str]) -> None:
        self.by_command, self.by_keys = folder / "command", folder / "keys"
        self._tables, self._capsys = tables, capsys
        for home in (self.by_command, self.by_keys):
            for line in LINES:
                assert main(["--home", str(home), "--today", TODAY.isoformat(), "larder", "add", line]) == 0
            with Store.at(home) as store:
                store.set(SETTINGS, "set")

    def command(self, *words: str) -> str:
        """Run one on its home; what it says."""
        self._capsys.readouterr()
        assert main(["--home", str(self.by_command), "--today", TODAY.isoformat(), *words]) == 0
        return self._capsys.readouterr().out

    def keys(self, act: Act) -> None:
        """Play on the other."""
        run_program(self.by_keys, self._tables, act)

    def held(self) -> list[dict[str, Any]]:
        """What each home holds: lots, log and ledger, but for the clock of the run."""
        found = []
        for home in (self.by_command, self.by_keys):
            with Store.at(home) as store:
                found.append(
                    {
                        "lots": [row.content for row in store.lots()],
                        "eaten": [row.content for row in store.logged("eaten")],
                        "ended": [row.content for row in store.logged("ended")],
                    }
                )
        return found

    def lot(self, food: str) -> str:
        """The number of a food's lot, which is the same in both."""
        with Store.at(self.by_command) as store:
            return next(str(row.id) for row in store.lots() if row.content["food"] == food)


@pytest.fixture
def homes(tmp_path: Path, tables: Tables, capsys: pytest.CaptureFixture[str]) -> Homes:
    return Homes(tmp_path, tables, capsys)


async def choose(app: LarderApp, pilot: Pilot[None], food: str, does: str) -> None:
    """Mark the one lot of a food in the list, and do with it what its key does, whichever key that is."""
    items = app.screen.query_one(ItemList)
    items.choose(next(item.id for item in items.items if food in item.name))
    await pilot.pause()
    await app.screen.run_action(does)
    await pilot.pause()


async def tonight_of(app: LarderApp, pilot: Pilot[None]) -> TonightScreen:
    await app.run_action("tonight")
    await pilot.pause()
    await settled(app, pilot)
    assert isinstance(app.screen, TonightScreen)
    return app.screen


def same(homes: Homes) -> dict[str, Any]:
    by_command, by_keys = homes.held()
    assert by_command == by_keys
    return by_command


def test_tonight_is_the_same_dinner_under_the_same_settings(homes: Homes) -> None:
    shown: dict[str, Any] = {}

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        composed = (await tonight_of(app, pilot))._composed
        assert composed is not None
        shown["dinner"] = composed.dinners[0]

    homes.keys(act)
    answer = json.loads(homes.command("tonight", "--json"))
    dinner = shown["dinner"]
    assert answer["dinners"][0]["title"] == dinner.title
    assert [(use["lot"], use["grams"]) for use in answer["dinners"][0]["uses"]] == [
        (use.lot, use.grams) for use in dinner.uses
    ]
    assert "pepper-red" not in {use.food for use in dinner.uses}


def test_the_request_of_the_command_is_that_of_the_screen(
    homes: Homes, tables: Tables, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every field, as one builder makes both; --no-settings alone leaves the settings out, but never allergens."""
    seen = []

    def caught(household: Household, choices: Choices, lots: Any = None) -> Any:
        seen.append(evening(household, choices, lots))
        return seen[-1]

    monkeypatch.setattr("calmlarder.household.request.evening", caught)
    homes.command("tonight")
    homes.command("tonight", "--no-settings")
    with Household(homes.by_keys, tables, TODAY) as household:
        screen = evening(household, Choices())
    settled_request, without = seen[0].request, seen[1].request
    assert settled_request == screen.request
    assert seen[0].from_home == screen.from_home
    assert (without.diet, without.avoid, without.protein_g) == ("omnivore", screen.request.avoid, 20.0)
    assert without.without == ()
    assert (screen.request.diet, screen.request.protein_g, screen.request.minutes) == ("vegan", 15.0, 30)


def test_a_plan_is_asked_for_the_same_sittings(homes: Homes, tables: Tables) -> None:
    """The protein that is settled is aimed at by dinners; packed lunches keep the usual 20 g on both faces."""
    plan = json.loads(homes.command("plan", "--json", "--days", "2", "--work", "0", "--buy", "0"))
    with Household(homes.by_keys, tables, TODAY) as household:
        asked = plan_asked(household, Choices(), Which(days=2))
    assert [one["at"] for one in plan["sittings"]] == [f"{one.at:%Y-%m-%dT%H:%M}" for one in asked.sittings]
    assert {(one.sitting, one.protein_g) for one in asked.sittings} == {("dinner", 15.0), ("packed", 20.0)}


def test_cooked_takes_the_same_lots_and_logs_the_same_share(homes: Homes) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await (await tonight_of(app, pilot)).run_action("cook")
        await pilot.pause()
        await app.screen.run_action("cooked")
        await pilot.pause()
        await pilot.press("enter")  # nothing goes into boxes
        await settled(app, pilot)

    homes.keys(act)
    homes.command("tonight")
    homes.command("cooked")
    held = same(homes)
    assert len(held["eaten"]) == 1
    assert held["eaten"][0]["at"] == datetime(2026, 3, 11, 18).isoformat()


def test_a_line_added_or_written_anew_is_the_same_lot(homes: Homes) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "courgette 300g")
        await choose(app, pilot, "spinach", "edit")
        await type_line(pilot, "spinach 120g, use by friday")

    homes.keys(act)
    homes.command("larder", "add", "courgette 300g")
    homes.command("larder", "edit", homes.lot("spinach"), "spinach 120g, use by friday")
    grams = {lot["food"]: lot["grams"] for lot in same(homes)["lots"]}
    assert (grams["courgette"], grams["spinach"]) == (300, 120)


def test_eating_a_food_logs_the_same_entries(homes: Homes) -> None:
    """Two foods of a line are two entries on both faces: what is not logged would leave too much room."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "ate 200 ml orange juice, 2 eggs")

    homes.keys(act)
    homes.command("ate", "200 ml orange juice, 2 eggs")
    assert len(same(homes)["eaten"]) == 2


@pytest.mark.parametrize("face", [("larder", "freeze"), ("larder", "remove", "--how", "thrown", "--why", "mouldy")])
def test_a_lot_frozen_or_thrown_is_the_same(homes: Homes, face: tuple[str, ...]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "tofu", "freeze" if face[1] == "freeze" else "thrown")
        if face[1] != "freeze":
            await pilot.press("m")  # mouldy
            await pilot.pause()

    homes.keys(act)
    homes.command(*face[:2], homes.lot("tofu-firm"), *face[2:])
    held = same(homes)
    if face[1] == "freeze":
        assert [lot["food"] for lot in held["lots"] if lot["place"] == "freezer"] == ["tofu-firm"]
    else:
        assert [(end["how"], end["grams"], end["why"]) for end in held["ended"]] == [("thrown", 280, "mouldy")]


def test_a_lot_eaten_up_is_the_same_in_log_and_ledger(homes: Homes) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "rice", "used")
        await pilot.press("enter")
        await pilot.pause()

    homes.keys(act)
    homes.command("larder", "remove", homes.lot("rice-white-cooked"), "--who", "me")
    held = same(homes)
    assert [(end["how"], end["grams"]) for end in held["ended"]] == [("eaten", 400)]


def test_undo_on_either_face_brings_everything_back(homes: Homes) -> None:
    before = homes.held()

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await choose(app, pilot, "tofu", "freeze")
        await app.screen.run_action("undo")

    homes.keys(act)
    homes.command("larder", "freeze", homes.lot("tofu-firm"))
    homes.command("larder", "undo")
    assert homes.held() == before
    assert before[0]["lots"]
