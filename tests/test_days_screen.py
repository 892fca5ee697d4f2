"""The ledger and the logs on the screens, driven by keys (Textual's pilot)."""

from collections.abc import Callable
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, Static

from calmlarder.store.logs import ended, may_count
from calmlarder.store.store import Store
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Ask, Choice
from calmlarder.tui.days_screen import DaysScreen
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.larder_log import gut_of, log_line
from calmlarder.tui.larder_questions import WhyThrown
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.page import Page
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.keys_line import KeysLine
from programs import SIZES, TODAY, settled, type_line


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


def lots(app: LarderApp) -> int:
    return len(app.screen.query_one(ItemList).items)


def told(home: Path) -> list[tuple[str, str | None]]:
    with Store.at(home) as store:
        return [(one.how, one.why) for one in ended(store)]


@pytest.mark.parametrize(
    ("key", "how", "why"),
    [
        ("p", "thrown", "past its day"), ("m", "thrown", "mouldy"), ("b", "thrown", "bought too much"),
        ("d", "thrown", "did not like"), ("o", "thrown", "other"), ("enter", "thrown", None), ("g", "given", None),
    ],
)  # fmt: skip
def test_one_key_says_why_it_was_thrown(
    play: Callable[..., None], home: Path, key: str, how: str, why: str | None
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 200g")
        await pilot.press("down", "f6")
        await pilot.pause()
        assert isinstance(app.screen, WhyThrown)
        await pilot.press(key)
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert lots(app) == 0

    play(act)
    assert told(home) == [(how, why)]


def test_used_up_is_eaten_escape_keeps_it_and_undo_takes_it_back(play: Callable[..., None], home: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 200g, use by tomorrow")
        await type_line(pilot, "2 carrots")
        await pilot.press("down", "f6", "escape")
        await pilot.pause()
        assert lots(app) == 2
        await pilot.press("f5", "escape")
        await pilot.pause()
        assert lots(app) == 2
        await pilot.press("f5", "enter", "f5", "enter")
        await pilot.pause()
        assert lots(app) == 0
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert lots(app) == 1

    play(act)
    assert told(home) == [("eaten", None)]


def test_ate_is_logged_and_not_kept(play: Callable[..., None], home: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+t")
        await pilot.pause()
        assert app.screen.query_one(Input).value == "ate "
        await pilot.press(*"200")
        app.screen.query_one(Input).value = "ate 200 ml orange juice"
        await pilot.pause()
        meaning = str(app.screen.query_one("#meaning", Static).content)
        assert meaning.startswith("eaten: 200 g orange juice; 0.")
        await pilot.press("enter")
        await pilot.pause()
        assert lots(app) == 0
        await type_line(pilot, "ate 100g noodles")
        assert isinstance(app.screen, Choice)
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen.query_one(Input).value == ""
        await type_line(pilot, "ate old boots")
        assert lots(app) == 0

    play(act)
    with Store.at(home) as store:
        from datetime import datetime

        found = may_count(store, datetime(2026, 3, 11, 18), 3)
    assert [(one.grams, one.who) for one in found] == [(200, "me"), (100, "me")]
    assert found[0].food == "orange-juice"
    assert "noodles" in found[1].food


def test_how_the_gut_feels_and_the_days(play: Callable[..., None], home: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+g")
        await pilot.press("3", "space", *"tight", "enter")
        await pilot.pause()
        assert app.screen.query_one(Input).value == ""
        await type_line(pilot, "feel eleven")
        assert app.screen.query_one(Input).value == ""
        await pilot.press("up")
        assert app.screen.query_one(Input).value == "feel eleven"
        await pilot.press(*["backspace"] * 11)
        await type_line(pilot, "ate 200 ml orange juice")
        await pilot.press("ctrl+l")
        await pilot.pause()
        assert isinstance(app.screen, DaysScreen)
        assert isinstance(app.screen, DaysScreen)
        text = app.screen.content
        assert "gut 3" in text
        assert "tight" in text
        assert "Total without lactose, g a day, likely, the limit of a day at 3 g" in text
        assert "does not diagnose" in text
        assert "protein" in text
        assert "EFSA Panel on Dietetic Products" in text
        await pilot.press("right")
        await pilot.pause()
        assert "Fructans + GOS, g a day, likely" in app.screen.content
        await pilot.press("left", "plus", "f1", "escape", "escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert lots(app) == 0

    play(act)


@pytest.mark.parametrize("size", SIZES)
def test_days_fit_every_size(play: Callable[..., None], size: tuple[int, int]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+l")
        await pilot.pause()
        assert isinstance(app.screen, DaysScreen)
        assert max(map(len, app.screen.content.splitlines())) <= size[0] - 4
        assert "Nothing is logged yet" in app.screen.content

    play(act, size)


def test_what_cooking_took_is_in_the_ledger(play: Callable[..., None], home: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("firm tofu 280g, use by today", "cooked rice 400g, made today", "spinach 200g", "soy sauce",
                     "rapeseed oil"):  # fmt: skip
            await type_line(pilot, line)
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press("enter", "c")
        await pilot.pause()
        if isinstance(app.screen, Choice):  # what goes into boxes: none
            await pilot.press("enter")
            await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act)
    with Store.at(home) as store:
        left = {row.content["food"]: row.content["grams"] for row in store.lots()}
        found = {one.food: one for one in ended(store)}
    tofu = found["tofu-firm"]
    assert (tofu.how, tofu.rescued) == ("eaten", True)
    assert tofu.grams == pytest.approx(280 - left.get("tofu-firm", 0), abs=0.01)


@pytest.mark.parametrize(
    ("text", "word", "rest"),
    [
        ("ate 2 eggs", "ate", "2 eggs"),
        ("Feel 3, tight", "feel", "3, tight"),
        ("feel ", "feel", ""),
        ("feelgood bar", None, ""),
    ],
)
def test_lines_for_a_log_begin_with_their_word(text: str, word: str | None, rest: str) -> None:
    found = log_line(text)
    assert found == (None if word is None else (word, rest))


@pytest.mark.parametrize(
    ("rest", "felt"),
    [
        ("3", (3, "")),
        ("10 very  bad", (10, "very bad")),
        ("0, fine", (0, "fine")),
        ("11", None),
        ("", None),
        ("3x", None),
    ],
)
def test_the_gut_in_a_line(rest: str, felt: tuple[int, str] | None) -> None:
    assert gut_of(rest) == felt


@pytest.mark.long
def test_cook_with_boxes_is_remembered_and_a_box_is_eaten(play: Callable[..., None], home: Path) -> None:
    """A dinner for two, one box of it: then tonight knows the box and the meal, and `ate boxed …` eats the box."""
    proposed = {"day": TODAY.isoformat(), "dinners": []}

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("firm tofu 280g, use by today", "cooked rice 700g, made today", "spinach 300g", "soy sauce",
                     "rapeseed oil", "3 carrots"):  # fmt: skip
            await type_line(pilot, line)
        app._store.remember("proposed", proposed)
        await pilot.press("f3")
        await pilot.pause()
        await pilot.press("plus")
        await settled(app, pilot)
        await pilot.press("enter", "c")
        await pilot.pause()
        await pilot.press("down", "enter")  # one of two portions
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert app._store.settings().get("proposed") is None
        boxes = [row for row in app._store.lots() if row.content["box"]]
        assert len(boxes) == 1
        grams = boxes[0].content["grams"]

        await pilot.press("f3")
        await settled(app, pilot)
        text = " ".join(str(app.screen.query_one(DinnerView).content).split())
        assert "did not pass its own check" not in text
        assert f"18:00 {boxes[0].content['box']['title']}" in text  # the meal still counts
        await pilot.press("escape")
        await pilot.pause()

        line = app.screen.query_one(Input)
        line.value = "ate boxed tofu"
        await pilot.pause()
        meaning = str(app.screen.query_one("#meaning", Static).content)
        assert meaning.startswith(f"eaten: {grams:g} g ")
        assert "(boxed)" in meaning
        await pilot.press("enter")
        await pilot.pause()
        assert line.value == ""
        assert not [row for row in app._store.lots() if row.content["box"]]
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert [row for row in app._store.lots() if row.content["box"]]
        await pilot.press("ctrl+y")
        await pilot.pause()

    play(act)
    with Store.at(home) as store:
        from datetime import datetime

        found = may_count(store, datetime(2026, 3, 11, 18), 3)
    assert sorted(one.who for one in found) == ["me", "me"]
    assert found[0].grams == pytest.approx(found[1].grams, abs=1)  # a box is the share that was eaten, whole grams


def test_waste_is_found_among_all_keys_and_opens_days_there(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 200g")
        await pilot.press("down", "f6", "p")
        await pilot.pause()
        found = [one for one in app.get_system_commands(app.screen) if "Waste" in one.title]
        assert len(found) == 1
        found[0].callback()
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, DaysScreen)
        scroll = app.screen.query_one("#days-scroll")
        assert app.screen.query_one("#thrown").region.overlaps(scroll.region)

    play(act, (60, 20))


@pytest.mark.parametrize(
    ("text", "rest"),
    [
        ("gut 3", "3"), ("Gut: 4 cramps", "4 cramps"), ("my gut is 2 0 1 0", "2 0 1 0"), ("gut 10, bad", "10, bad"),
        ("gutted mackerel", None), ("2 gutted trout", None),
    ],
)  # fmt: skip
def test_the_gut_by_its_own_name(text: str, rest: str | None) -> None:
    found = log_line(text)
    assert (found and (found.word, found.rest)) == (rest and ("feel", rest))


def test_days_has_a_key_for_the_gut(play: Callable[..., None], home: Path) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "gut 2 all calm")
        assert "logged: gut 2 of 10, all calm" in str(app.screen.query_one("#meaning", Static).content)
        await pilot.press("ctrl+l")
        await pilot.pause()
        days = app.screen
        assert isinstance(days, DaysScreen)
        assert "Gut today" in [key.word for key in days.query_one(KeysLine).keys]
        await pilot.press("g", *"12", "enter")  # no number of the scale
        await pilot.pause()
        assert isinstance(app.screen, Ask)
        await pilot.press("backspace", "backspace", *"7", "space", *"cramps", "enter")
        await pilot.pause()
        assert app.screen is days
        assert "gut 7" in days.content
        assert "cramps" in days.content
        await pilot.press("g", *"5", "space", *"blood", "space", *"in", "space", *"stool", "enter")
        await pilot.pause()
        assert isinstance(app.screen, Page)  # a warning sign is answered here, too

    play(act)
    with Store.at(home) as store:
        assert [one.content["score"] for one in store.logged("felt")] == [2, 7, 5]
