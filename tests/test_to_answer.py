"""A line that is not clear is kept in the larder, asked on top, and answered later: what was typed, what stands."""

import json
import re
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from textual.events import Paste
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from calmlarder.cli import main
from calmlarder.household.answering import answer, would_be
from calmlarder.household.booking import used_up
from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.larder_view import TO_ANSWER
from calmlarder.tui.widgets.item_list import ItemList
from programs import TODAY, Act

Run = Callable[..., Any]
UNCLEAR = "chocolate 200g"  # dark, milk or white: nobody but the cook knows
STRANGE = "zorblax 300g, use by friday"


@pytest.fixture
def run(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Run:
    """A command of the larder in one home on one day, or on another; its answer as plain values."""

    def ask(*words: str, today: date = TODAY, status: int = 0) -> Any:
        at = ["--home", str(tmp_path / "home"), "--today", today.isoformat()]
        assert main(["larder", *words, "--json", *at]) == status
        out = capsys.readouterr().out
        return json.loads(out) if out else None

    return ask


def household(home: Path, tables: Tables) -> Household:
    return Household(home, tables, TODAY)


def texts(found: Any) -> list[str]:
    return [one["text"] for one in found.get("to_answer", [])]


def test_a_line_that_is_not_clear_is_kept_with_its_number_and_choices(run: Run) -> None:
    asked = run("add", UNCLEAR)
    assert (asked["lots"], texts(asked)) == ([], [UNCLEAR])
    run("add", "kale 200g")
    listed = run("list")
    assert [one["text"] for one in listed["lots"]] == ["kale 200g"]
    (waiting,) = listed["to_answer"]
    assert waiting["id"] == asked["to_answer"][0]["id"]
    assert "dark chocolate" in waiting["choices"]


def test_what_nobody_here_eats_is_not_offered_beside_what_is_eaten(
    run: Run, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """A drumstick is a bird's leg or the pod of a tree: who eats plants alone is asked for the pod first."""
    assert run("add", "drumstick 2")["to_answer"][0]["choices"][0].startswith("chicken")
    assert main(["people", "set", "me", "--diet", "vegan", "--home", str(tmp_path / "home")]) == 0
    capsys.readouterr()
    choices = run("add", "drumstick 3")["to_answer"][0]["choices"]
    assert choices == ["drumstick pods"]


def test_answering_makes_the_lot_with_its_number_amount_and_day(run: Run) -> None:
    number = run("add", f"{UNCLEAR}, use by friday")["to_answer"][0]["id"]
    answered = run("answer", str(number), "dark chocolate")
    (lot,) = answered["lots"]
    assert (lot["id"], lot["food"], lot["grams"]) == (number, "chocolate-dark", 200)
    assert (lot["date"], lot["date_kind"]) == ("2026-03-13", "use-by")
    assert texts(run("list")) == []


def test_a_day_is_counted_from_when_it_was_typed_not_from_when_it_was_answered(run: Run) -> None:
    """`friday` typed on a Wednesday is the Friday of that week, whenever the question is answered."""
    number = run("add", f"{UNCLEAR}, use by friday")["to_answer"][0]["id"]
    answered = run("answer", str(number), "dark chocolate", today=TODAY + timedelta(days=6))
    assert answered["lots"][0]["date"] == "2026-03-13"
    assert answered["lots"][0]["days_left"] == -4


def test_an_answer_is_one_action_and_undo_takes_lot_and_word_back(run: Run) -> None:
    number = run("add", UNCLEAR)["to_answer"][0]["id"]
    run("answer", str(number), "1")
    assert list(run("words")["words"]) == ["chocolate"]
    assert run("undo")["undone"] == "answer chocolate"
    assert texts(run("list")) == [UNCLEAR]
    assert run("words")["words"] == {}
    run("redo")
    assert texts(run("list")) == []
    assert list(run("words")["words"]) == ["chocolate"]


def test_what_a_word_meant_is_not_asked_twice_and_is_shown(run: Run) -> None:
    number = run("add", UNCLEAR)["to_answer"][0]["id"]
    run("answer", str(number), "milk chocolate")
    (again,) = run("add", "chocolate 90g")["lots"]
    assert (again["food"], again["grams"], again["assumed"]) == ("chocolate-milk-bar", 90, ["as last time"])
    (other,) = run("add", "white chocolate 50g")["lots"]  # other words are no such word
    assert other["food"] != "chocolate-milk-bar"


@pytest.mark.parametrize("line", ["that thing in the blue tupper??", "blue box", "mystery tub"])
def test_of_a_thing_that_nobody_names_nothing_is_remembered(line: str, run: Run) -> None:
    """What was in the blue box is not what is in it next week: it might hold onion."""
    number = run("add", line)["to_answer"][0]["id"]
    run("answer", str(number), "1")
    assert run("words")["words"] == {}
    assert texts(run("add", line)) == [line]


def test_what_a_word_meant_can_be_forgotten_and_forgetting_undone(run: Run) -> None:
    number = run("add", UNCLEAR)["to_answer"][0]["id"]
    run("answer", str(number), "milk chocolate")
    assert run("forget", "chocolate")["meant"] == ["milk chocolate"]
    assert texts(run("add", "chocolate 90g")) == ["chocolate 90g"]
    run("undo")
    run("undo")
    assert run("add", "chocolate 90g")["lots"][0]["food"] == "chocolate-milk-bar"
    run("forget", "boots", status=2)


def test_a_food_that_nobody_knows_waits_and_is_named_later(run: Run) -> None:
    (waiting,) = run("add", STRANGE)["to_answer"]
    assert waiting["question"].startswith("not a food I know: leave it in the list, or describe it by its parts")
    run("answer", str(waiting["id"]), "zorblax", status=2)
    assert texts(run("list")) == [STRANGE]
    assert run("answer", str(waiting["id"]), "firm tofu")["lots"][0]["food"] == "tofu-firm"
    assert run("add", "zorblax 100g")["lots"][0]["food"] == "tofu-firm"


def test_the_clear_foods_of_a_line_stand_and_only_the_other_is_asked(run: Run) -> None:
    kept = run("add", "3 carrots, zorblax 300g, half a celeriac, use by friday")
    assert [lot["food"] for lot in kept["lots"]] == ["carrot", "celeriac"]
    (waiting,) = kept["to_answer"]
    assert "`zorblax` is not a food I know" in waiting["question"]
    (lot,) = run("answer", str(waiting["id"]), "firm tofu")["lots"]
    assert (lot["food"], lot["grams"], lot["date"]) == ("tofu-firm", 300, "2026-03-13")
    assert sorted(one["food"] for one in run("list")["lots"]) == ["carrot", "celeriac", "tofu-firm"]
    assert texts(run("list")) == []


def test_several_unclear_foods_of_a_line_are_asked_one_after_the_other(run: Run) -> None:
    kept = run("add", "zorblax 300g, 3 carrots, gribble 100g")
    (waiting,) = kept["to_answer"]
    number = str(waiting["id"])
    (second,) = run("answer", number, "firm tofu")["to_answer"]
    assert "`gribble`" in second["question"]
    run("answer", str(second["id"]), "kale")
    listed = run("list")
    assert sorted(one["food"] for one in listed["lots"]) == ["carrot", "kale", "tofu-firm"]
    assert texts(listed) == []


@pytest.mark.parametrize("line", ["fish fingers or hash browns", "chicken, marinated", "rice and beans"])
def test_what_may_be_said_of_the_same_food_leaves_the_whole_line_open(run: Run, line: str) -> None:
    kept = run("add", line)
    assert (kept["lots"], [one["text"] for one in kept["to_answer"]]) == ([], [line])


def test_an_amount_out_of_proportion_is_asked_and_may_stand_or_be_a_usual_one(run: Run) -> None:
    (waiting,) = run("add", "wheat tortillas 3000g")["to_answer"]
    right, usual = waiting["choices"]
    assert run("answer", str(waiting["id"]), right)["lots"][0]["grams"] == 3000
    run("undo")
    assert f"{run('answer', str(waiting['id']), usual)['lots'][0]['grams']:g} g" in usual
    assert run("words")["words"] == {}  # an amount says nothing of a word


def test_a_day_that_cannot_be_read_is_asked_and_the_food_behind_it_too(run: Run) -> None:
    (waiting,) = run("add", "chocolate use by xyzday")["to_answer"]
    assert "xyzday" in waiting["question"]
    run("answer", str(waiting["id"]), "dark chocolate", status=2)
    (again,) = run("answer", str(waiting["id"]), "without a day")["to_answer"]
    assert (again["id"], "dark chocolate" in again["choices"]) == (waiting["id"], True)
    assert run("answer", str(waiting["id"]), "dark chocolate")["lots"][0]["date"] is None


def test_several_answers_are_several_foods(run: Run) -> None:
    (waiting,) = run("add", "frumple")["to_answer"]
    lots = run("answer", str(waiting["id"]), "carrots", "parsnips")["lots"]
    assert [lot["food"] for lot in lots] == ["carrot", "parsnip"]


def test_a_waiting_line_can_be_written_anew_or_taken_out(run: Run) -> None:
    first, second = (run("add", line)["to_answer"][0]["id"] for line in (UNCLEAR, STRANGE))
    run("edit", str(first), "dark chocolate 100g")
    run("remove", str(second))
    listed = run("list")
    assert [(lot["id"], lot["food"]) for lot in listed["lots"]] == [(first, "chocolate-dark")]
    assert texts(listed) == []
    run("answer", str(first), "1", status=2)  # it waits for nothing any more


def test_a_lot_written_anew_with_an_unclear_line_waits_and_undo_brings_it_back(run: Run) -> None:
    number = run("add", "kale 200g")["lots"][0]["id"]
    run("edit", str(number), UNCLEAR)
    assert texts(run("list")) == [UNCLEAR]
    run("undo")
    assert [lot["text"] for lot in run("list")["lots"]] == ["kale 200g"]


def test_what_each_line_would_be_is_there_for_tonight(tmp_path: Path, tables: Tables) -> None:
    with household(tmp_path / "home", tables) as home:
        keep_lines(home, home.read_all([UNCLEAR, "kale 200g"], "test"))
        found = would_be(home)
        assert {one.text for one, _, _ in found} == {UNCLEAR}
        foods = {choice: [lot.food for lot in lots] for _, choice, lots in found}
        assert foods["dark chocolate"] == ["chocolate-dark"]
        assert [one.lot.food for one in home.lots()] == ["kale"]  # nothing of it is there


_WORDS = st.sampled_from([
    "kale", "tofu", "chocolate", "zorblax", "200g", "half", "3", "x2", "use by", "friday", "xyzday", "(dan's)", "tin",
    "carrots", "leftover", "#", ",", "-", "frozen",
])  # fmt: skip


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(lines=st.lists(st.lists(_WORDS, max_size=6).map(" ".join), min_size=1, max_size=6))
def test_nothing_typed_is_lost(lines: list[str], tables: Tables, tmp_path_factory: pytest.TempPathFactory) -> None:
    """Every line of a file is a lot, a question, a comment, or named with its reason."""
    with household(tmp_path_factory.mktemp("home") / "home", tables) as home:
        found = keep_lines(home, home.read_all(lines, "fridge.txt"))
        standing = {one.lot.line for one in home.lots()} | {one.text for one in home.to_answer()}
        named = {problem.where for problem in found.problems}
        for number, line in enumerate(lines, start=1):
            said = re.sub(r"(?:^|\s)#.*$", "", line).strip()
            stands = any(one == said or one.startswith(f"{said}, ") for one in standing)  # with what its heading says
            assert not said or stands or f"fridge.txt:{number}" in named


async def type_line(pilot: Pilot[None], text: str) -> None:
    line = pilot.app.screen.query_one(Input)
    line.value = text
    await pilot.press("enter")
    await pilot.pause()


def titles(app: LarderApp) -> list[str]:
    return [group.title for group in app.screen.query_one(ItemList).groups]


def test_typing_goes_on_where_a_line_must_be_asked(play: Callable[[Act], LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, UNCLEAR)
        assert isinstance(app.screen, LarderScreen)
        line = app.screen.query_one(Input)
        assert (line.value, line.has_focus) == ("", True)
        await pilot.press("enter", "enter")  # an empty line chooses nothing
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        await type_line(pilot, "kale 200g")
        items = app.screen.query_one(ItemList)
        assert titles(app)[0] == TO_ANSWER
        assert items.groups[0].items[0].name == UNCLEAR
        assert "dark chocolate" in items.groups[0].items[0].question

    play(act)


@pytest.mark.long
def test_enter_on_a_waiting_line_opens_its_choices(play: Callable[[Act], LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, UNCLEAR)
        await pilot.press("down", "enter")
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        await pilot.press("escape")
        await pilot.pause()
        assert titles(app) == [TO_ANSWER]
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen.query_one("#choice OptionList", OptionList).highlighted == 0  # as in every list
        await pilot.press("enter")  # nobody went to that food: nothing is answered by it
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        assert "Home marks the first answer" in str(app.screen.query_one("#ask-empty", Static).content)
        await pilot.press("home", "enter")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert TO_ANSWER not in titles(app)
        assert len(app._store.lots()) == 1
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert titles(app) == [TO_ANSWER]

    play(act)


def test_a_paste_keeps_every_line(play: Callable[[Act], LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.screen.query_one(Input).post_message(Paste(f"kale 200g\n{UNCLEAR}\n{STRANGE}"))
        await pilot.pause()
        await pilot.pause()
        assert [row.content["line"] for row in app._store.lots()] == ["kale 200g", UNCLEAR, STRANGE]
        assert len(app.screen.query_one(ItemList).groups[0].items) == 2
        await pilot.press("down", "delete")  # one that was typed by mistake
        await pilot.pause()
        assert [row.content["line"] for row in app._store.lots()] == ["kale 200g", STRANGE]

    play(act)


def test_an_answer_given_in_another_window_is_told(tmp_path: Path, tables: Tables) -> None:
    with household(tmp_path / "home", tables) as home:
        (asked,) = keep_lines(home, home.read_all([UNCLEAR], "test")).asked
        assert asked.id is not None
        done = answer(home, asked.id, ["dark chocolate"])
        assert (done.words, done.means, done.asked) == ("chocolate", ("chocolate-dark",), None)


def test_tonight_says_first_which_answer_would_make_a_dinner(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Without the eggs there is no protein in the house; with them there is a dinner."""
    at = ["--home", str(tmp_path / "home"), "--today", TODAY.isoformat()]
    for line in ("spinach 200g", "olive oil", "rice 500g", "zeeggs 6"):
        assert main(["larder", "add", line, *at]) == 0
    capsys.readouterr()
    assert main(["tonight", "--json", *at]) == 3
    shown = json.loads(capsys.readouterr().out)
    (helpful,) = shown["answers"]
    assert (helpful["line"], helpful["food"]) == ("zeeggs 6", "eggs")
    assert main([*helpful["write"].split()[1:], *at]) == 0
    assert main(["tonight", "--json", *at]) == 0


def test_what_is_always_there_stands_apart_and_is_never_cooked_away(run: Run, tmp_path: Path, tables: Tables) -> None:
    lots = run("add", "always have: olive oil, rice, soy sauce, salt")["lots"]
    assert [(lot["food"], lot["always"]) for lot in lots] == [
        ("oil-olive", True), ("rice-white-dry", True), ("soy-sauce", True), ("salt", True),
    ]  # fmt: skip
    assert all(lot["days_left"] is None for lot in lots)
    assert run("add", "always have: rice")["lots"] == []  # it is there already
    with household(tmp_path / "home", tables) as home:
        kept = home.lots()
        assert used_up(home, kept, {one.lot.id: round(one.lot.grams) for one in kept}) == {}
    run("add", "always have no soy sauce")  # it is taken back
    assert "soy-sauce" not in [lot["food"] for lot in run("list")["lots"]]


def test_who_does_not_know_leaves_the_line_out_and_stays_with_the_questions(play: Callable[[Act], LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "spinach 200g")
        await type_line(pilot, "the stuff in the green tub")
        await type_line(pilot, UNCLEAR)
        first, second = app.screen._asked
        await pilot.press("down", "home", "enter")
        await pilot.pause()
        await pilot.press("up", "enter")  # the last answer
        await pilot.pause()
        assert [one.id for one in app.screen._asked] == [second.id]
        assert app.screen.query_one(ItemList).chosen == str(second.id)
        assert len(app._store.lots()) == 2
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert {one.id for one in app.screen._asked} == {first.id, second.id}

    play(act)
