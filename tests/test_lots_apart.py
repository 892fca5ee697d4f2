"""Two lots of one food and one text are two things: planned, weighed, cooked, undone and shown each by itself."""

import copy
import json
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from calmlarder.checks.dinner import verify
from calmlarder.cli import main
from calmlarder.compose.compose import compose
from calmlarder.compose.cooked import share_eaten
from calmlarder.compose.dinner import Dinner, PlateUse, weigh_list
from calmlarder.compose.scale_readings import passed_caps
from calmlarder.household.cooking_session import AtStove
from calmlarder.render.dinner_json import dinner_object
from calmlarder.store.documents import PROPOSED
from calmlarder.store.store import Store
from calmlarder.tables.places import shipped
from calmlarder.tui.app import LarderApp
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.stove import Weights

LAST_WEEK, TODAY = "2026-03-04", "2026-03-11"  # Wednesdays: "friday" is the 6th, then the 13th
LINE = "spinach 200g, use by friday"
OTHERS = ("firm tofu 300g, use by tomorrow", "cooked rice 300g, made today", "soy sauce", "rapeseed oil")

Run = Callable[..., Any]


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


@pytest.fixture
def run(home: Path, capsys: pytest.CaptureFixture[str]) -> Run:
    """The JSON of a command, or what it complains of where it ends with another status than 0."""

    def asked(*words: str, today: str = TODAY, status: int = 0) -> Any:
        capsys.readouterr()
        assert main([*words, "--home", str(home), "--today", today, "--json"]) == status
        told = capsys.readouterr()
        assert "Traceback" not in told.err
        return told.err if status else json.loads(told.out)

    return asked


@pytest.fixture
def two_weeks(run: Run) -> tuple[int, int]:
    """One text typed in two weeks: ids of the lot that has gone off, and of the fresh one."""
    old, fresh = (run("larder", "add", LINE, today=day)["lots"][0]["id"] for day in (LAST_WEEK, TODAY))
    for line in OTHERS:
        run("larder", "add", line)
    return old, fresh


def grams(run: Run) -> dict[int, float]:
    return {lot["id"]: lot["grams"] for lot in run("larder", "list")["lots"]}


def twice(dinner: Dinner, food: str, how: str = "weigh") -> tuple[Dinner, list[PlateUse]]:
    """A dinner with a food of it out of two lots of one text, for the scale."""
    use = next(use for use in dinner.uses if use.food == food)
    both = [use.model_copy(update={"lot": lot, "grams": 60, "how": how}) for lot in ("7.1", "8.1")]
    uses = tuple(other for other in dinner.uses if other is not use)
    return dinner.model_copy(update={"uses": (*both, *uses)}), both


def test_the_lot_that_was_proposed_is_the_one_that_is_taken(run: Run, home: Path, two_weeks: tuple[int, int]) -> None:
    old, fresh = two_weeks
    before = grams(run)
    spinach = next(use for use in run("tonight")["dinners"][0]["uses"] if use["food"] == "spinach")
    assert (spinach["lot"], spinach["line"]) == (str(fresh), LINE)
    run("cooked")
    after = grams(run)
    assert after[old] == before[old]
    assert after.get(fresh, 0) == pytest.approx(before[fresh] - spinach["grams"], abs=5)
    assert main(["larder", "undo", "--home", str(home)]) == 0
    assert grams(run) == before  # under the same numbers


def test_what_is_gone_is_not_taken_from_another_lot_of_the_same_words(run: Run, two_weeks: tuple[int, int]) -> None:
    run("tonight")
    run("larder", "remove", str(two_weeks[1]), "--how", "given")
    assert "is gone" in run("cooked", status=2)


@pytest.fixture
def proposed_twice(run: Run, home: Path, two_weeks: tuple[int, int]) -> tuple[int, int]:
    """A proposal that takes 60 g of each of two lots of spinach, both still good."""
    old = run("larder", "edit", str(two_weeks[0]), LINE)
    assert old
    run("tonight")
    with Store.at(home) as store:
        note = store.noted(PROPOSED)
        dinner = note["dinners"][0]
        use = next(use for use in dinner["uses"] if use["food"] == "spinach")
        both = [{**use, "lot": str(lot), "grams": 60, "how": "weigh"} for lot in two_weeks]
        dinner["uses"] = [*(other for other in dinner["uses"] if other["food"] != "spinach"), *both]
        store.remember(PROPOSED, note)
    return two_weeks


def test_weighed_grams_belong_to_a_lot(run: Run, proposed_twice: tuple[int, int]) -> None:
    first, second = proposed_twice
    before = grams(run)
    run("cooked", "--weighed", f"{first}=75", "--weighed", f"{second}=50")
    after = grams(run)
    assert (before[first] - after[first], before[second] - after[second]) == (75, 50)


def test_a_food_of_two_lots_is_not_weighed_twice(run: Run, proposed_twice: tuple[int, int]) -> None:
    before = grams(run)
    said = run("cooked", "--weighed", "spinach=145", status=2)
    assert "2 items of spinach" in said
    assert all(f"`{lot}=60`" in said for lot in proposed_twice)
    assert grams(run) == before
    assert run("eaten")["eaten"] == []
    eaten = run("cooked", "--weighed", "firm tofu=150")["eaten"]  # of one lot the name will do
    assert len(eaten) == 1


def test_a_proposal_of_an_earlier_form_is_asked_for_again(run: Run, home: Path, two_weeks: tuple[int, int]) -> None:
    run("tonight")
    with Store.at(home) as store:
        note = store.noted(PROPOSED)
        for use in note["dinners"][0]["uses"]:
            del use["lot"]
        store.remember(PROPOSED, note)
    assert "Ask `calmlarder tonight` again" in run("cooked", status=2)


def test_a_share_counts_each_lot_once(lots_of, wanting, patterns, tables) -> None:  # type: ignore[no-untyped-def]
    dinner, (one, other) = twice(composed([LINE, *OTHERS], lots_of, wanting, patterns, tables), "spinach")
    rest = sum(use.grams for use in dinner.uses) - 120
    entry = share_eaten(dinner, {one.lot: 70, other.lot: 50}, datetime(2026, 3, 11, 18), tables)
    assert entry.grams == rest + 120
    over = passed_caps(dinner, {one.lot: 400, other.lot: 400}, wanting().profile, tables)
    # Varney 2017: 0.20 g of fructans and GOS in one fresh food; spinach has 0.1 g in 100 g: of both lots, 800 g,
    # 205 g may stay (figures carry 0.005 g).
    (alone,) = (one for one in over if (one.cap.scope, one.cap.group) == ("food", "oligosaccharides"))
    assert (alone.leave_out_food, alone.leave_out_grams) == ("spinach", 595)


def test_the_weigh_list_names_a_food_once(lots_of, wanting, patterns, tables) -> None:  # type: ignore[no-untyped-def]
    dinner, both = twice(composed([LINE, *OTHERS], lots_of, wanting, patterns, tables), "spinach")
    (line,) = [line for line in weigh_list(dinner.uses) if "spinach" in line]
    assert line == f"120 g spinach (60 g of `{both[0].line}`; 60 g of `{both[1].line}`)"


def composed(lines, lots_of, wanting, patterns, tables) -> Dinner:  # type: ignore[no-untyped-def]
    found: Dinner = compose(lots_of(lines), wanting(), patterns, tables).dinners[0]
    assert any(use.food == "spinach" for use in found.uses)
    return found


def test_two_lots_to_weigh_have_a_field_each(
    play: Callable[..., LarderApp], lots_of, wanting, patterns, tables
) -> None:  # type: ignore[no-untyped-def]
    """At the stove `w` opened two fields of one name, and the program ended."""
    dinner, _ = twice(composed([LINE, *OTHERS], lots_of, wanting, patterns, tables), "spinach")

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.push_screen(CookScreen(app._kitchen, AtStove(dinner, ())))
        await pilot.pause()
        await pilot.press("w")
        await pilot.pause()
        assert isinstance(app.screen, Weights)
        fields = [field for field in app.screen.query(Input) if field.value == "60 g"]
        assert len(fields) == 2
        fields[0].value, fields[1].value = "70", "50"
        await pilot.press("enter")
        await pilot.pause()
        cook = app.screen
        assert isinstance(cook, CookScreen)
        assert {lot: cook._weighed[lot] for lot in ("7.1", "8.1")} == {"7.1": 70, "8.1": 50}

    play(act)


def test_lines_of_a_file_have_their_number(lots_of) -> None:  # type: ignore[no-untyped-def]
    assert [lot.id for lot in lots_of(["# mine", LINE, "", "soy sauce", LINE])] == ["2.1", "4.1", "5.1"]


def test_the_check_tells_lots_of_one_text_apart(lots_of, wanting, patterns, tables) -> None:  # type: ignore[no-untyped-def]
    wanted = wanting()
    lots = lots_of([LINE, *OTHERS, LINE])
    dinner = dinner_object(compose(lots, wanted, patterns, tables).dinners[0])
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    plain = [lot.model_dump(mode="json") for lot in lots]
    where = ([shipped("ingredient_tables")], shipped("recipes"))
    assert verify(dinner, request, plain, *where) == ()
    use = next(use for use in dinner["uses"] if use["food"] == "spinach")
    spoilt = copy.deepcopy(plain)
    next(lot for lot in spoilt if lot["id"] == use["lot"])["dates"].append({"kind": "use-by", "on": "2026-03-10"})
    assert any("not safe" in fault for fault in verify(dinner, request, spoilt, *where))
    assert verify({**dinner, "uses": [*dinner["uses"], {**use, "grams": 5}]}, request, plain, *where)
    wrong = [{**one, "lot": "99.1"} if one is use else one for one in dinner["uses"]]
    assert any("not in the larder" in fault for fault in verify({**dinner, "uses": wrong}, request, plain, *where))
    same_id = [{**lot, "id": "1.1"} for lot in plain]
    assert any("share an id" in fault for fault in verify(dinner, request, same_id, *where))
