"""What a cook says in a box of a screen: minutes, a gut score put right; and what is named by its food alone."""

from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from calmlarder.household import people
from calmlarder.household.diary import log_of_days
from calmlarder.household.household import Household
from calmlarder.household.larder import keep_lines
from calmlarder.intake.eaten import ME
from calmlarder.larder.to_answer import ToAnswer
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.challenge_screen import ChallengeScreen, EntryForm
from calmlarder.tui.choice import Choice
from calmlarder.tui.cooking_time import likeliest, minutes_of, minutes_offered
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.larder_list import LarderList
from calmlarder.tui.log_screen import LogScreen
from calmlarder.tui.page import Page
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.widgets.item_list import ItemList
from programs import TODAY, settled, shown, type_line

STAPLES = "always have: oil, rice, soy sauce, garlic, honey, noodles"


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    return ()


@pytest.mark.long
def test_minutes_are_a_number_of_the_cooks_own(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        await pilot.press("t", *"25", "enter")
        await settled(app, pilot)
        assert screen._asked.minutes == 25
        assert "up to 25 minutes" in shown(app, "#asked")
        assert screen._dinner is None or screen._dinner.minutes <= 25
        await pilot.press("t", *"9999", "enter")  # none that can be: asked again
        await pilot.pause()
        assert isinstance(app.screen, Choice)
        assert "from 5 to 600" in str(app.screen.query_one("#choice Static", Static).content)
        await pilot.press(*"37", "enter")
        await settled(app, pilot)
        assert screen._asked.minutes == 37
        await pilot.press("ctrl+z")
        await settled(app, pilot)
        assert screen._asked.minutes == 25

    play(act)


@pytest.mark.parametrize(
    ("typed", "minutes"), [("25", 25), ("25 min", 25), ("40 minutes", 40), ("4", 0), ("601", 0), ("soon", 0), ("", 0)]
)
def test_what_is_typed_for_minutes(typed: str, minutes: int) -> None:
    assert minutes_of(typed) == minutes


def test_the_first_time_offered_is_less_than_what_the_dinner_takes() -> None:
    assert likeliest(None, 35, is_none=False) == "30 minutes"
    assert likeliest(20, 35, is_none=False) == "15 minutes"
    assert minutes_offered(15)[likeliest(15, None, is_none=True)] is None
    assert list(minutes_offered(45).values()) == [15, 20, 30, 45, 60, None]  # in their order, however likely
    assert "45 minutes (now)" in minutes_offered(45)
    for asked in (None, 15, 20, 60):
        for takes in (None, 3, 15, 16, 90):
            for is_none in (False, True):
                assert likeliest(asked, takes, is_none=is_none) in minutes_offered(asked)


def felt(app: LarderApp) -> list[tuple[int, str]]:
    return [(one.felt.score, one.felt.note) for one in log_of_days(app._kitchen, 7) if one.felt is not None]


def test_a_gut_score_is_put_right_and_that_is_undone(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "feel 7 tight")
        before = log_of_days(app._kitchen, 7)[0].at
        await pilot.press("ctrl+l", "e", "enter")
        await pilot.pause()
        line = app.screen.query_one("#answer", Input)
        assert line.value == "7 tight"
        line.value = "17"
        await pilot.press("enter")
        await pilot.pause()
        assert "a number from 0" in str(app.screen.query_one("#ask-empty", Static).content)
        line.value = "2 a bit tight"
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, LogScreen)
        assert felt(app) == [(2, "a bit tight")]
        assert log_of_days(app._kitchen, 7)[0].at == before  # of the moment that it was said of
        assert "gut 2 of 10" in [item.name for item in app.screen.query_one(ItemList).items]
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert felt(app) == [(7, "tight")]
        await pilot.press("ctrl+y")
        await pilot.pause()
        assert felt(app) == [(2, "a bit tight")]

    play(act)


def test_four_scores_stay_four_and_a_warning_sign_is_answered(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "feel 2 0 1 0 calm")
        await pilot.press("ctrl+l", "e", "enter")
        await pilot.pause()
        line = app.screen.query_one("#answer", Input)
        assert line.value == "2 0 1 0 calm"
        line.value = "5 0 1 0 blood in my stool"
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Page)  # who to see
        (one,) = [one.felt for one in log_of_days(app._kitchen, 7) if one.felt is not None]
        assert one.scores is not None
        assert (one.score, one.scores.pain, one.scores.wind) == (5, 5, 1)

    play(act)


@pytest.mark.parametrize(
    ("days", "said"), [(11, "before elimination has had its 4 weeks"), (30, "")], ids=["day 11", "day 30"]
)
def test_a_challenge_begins_early_only_in_words(
    play: Callable[..., LarderApp], tmp_path: Path, tables: Tables, days: int, said: str
) -> None:
    """Two to six weeks of elimination: AGA clinical practice update 2022 (recalled); four here."""
    with Household(tmp_path / "home", tables, TODAY) as kitchen:
        people.change(kitchen, ME, {"phase": "elimination", "since": TODAY - timedelta(days=days)})

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        async def asked() -> list[str]:
            await pilot.press("n", "enter")
            await pilot.pause()
            assert isinstance(app.screen, EntryForm)
            app.screen.give()
            await pilot.pause()
            names = app.screen.query_one(OptionList)
            return [str(names.get_option_at_index(n).prompt) for n in range(names.option_count)]

        await pilot.press("shift+f4")
        first = await asked()
        if said:
            assert first[0].startswith("Not yet: nothing begins")
            assert said in first[1]
            await pilot.press("enter")
            await pilot.pause()
            assert isinstance(app.screen, ChallengeScreen)
            assert app.screen.check_action("start", ())  # none goes on
            assert await asked() == first
            await pilot.press("down", "enter")
            await pilot.pause()
        await pilot.press("enter")  # without a day to compare
        await pilot.pause()
        await pilot.press("escape") if isinstance(app.screen, Page) else None
        await pilot.pause()
        assert isinstance(app.screen, ChallengeScreen)
        assert not app.screen.check_action("start", ())

    play(act)


def test_of_what_is_always_there_only_the_food_is_named(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, STAPLES)
        for line in ("firm tofu 280g", "carrots 300g", "spinach 200g"):
            await type_line(pilot, line)
        items = app.screen.query_one(ItemList)
        assert items.items[0].name == "noodles"
        assert isinstance(app.screen, LarderList)
        items.choose_first()
        app.screen.open_choices()
        await pilot.pause()
        assert str(app.screen.query_one("#choice Static", Static).content).startswith("noodles: ")
        app._kitchen.set("avoid", "soya")
        await pilot.press("escape", "f3")
        await settled(app, pilot)
        left_out = app.screen.query_one(DinnerView).content.split("Left out")[1]
        assert "always have" not in left_out
        assert "soy sauce: " in left_out

    play(act)


def test_the_words_of_a_line_of_staples_are_kept_for_editing(tmp_path: Path, tables: Tables) -> None:
    with Household(tmp_path / "home", tables, TODAY) as kitchen:
        (asked,) = keep_lines(kitchen, kitchen.read_all([STAPLES], "this line")).asked
        assert (asked.text, asked.called) == (STAPLES, "noodles")
    other = ToAnswer(where="1", text="noodles, half a packet", question="which?", choices=(), said="noodle")
    assert other.called == other.text
