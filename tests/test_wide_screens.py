"""What a wide screen does with its room: questions beside what they are about, figures and forms in two columns."""

from collections.abc import Callable

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList

from calmlarder.household import people
from calmlarder.household.diary import log_of_days
from calmlarder.tui.app import LarderApp
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.limits_screen import LimitsScreen
from calmlarder.tui.log_screen import LogScreen
from calmlarder.tui.people_screen import PeopleScreen
from calmlarder.tui.person_form import PersonForm
from calmlarder.tui.widgets.beside import Beside
from calmlarder.tui.widgets.drawn import READABLE
from calmlarder.tui.widgets.field import Field
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.marked_list import MARK, WAITS
from calmlarder.tui.widgets.modal import Modal
from programs import type_line

WIDE = (200, 50)


def drawn(app: LarderApp) -> str:
    """All letters of the picture on the screen now."""
    return app.export_screenshot().replace("&#160;", " ")


def test_a_question_stands_beside_what_it_is_about(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "spinach 200g, use by today")
        await pilot.press("down", "f6")
        await pilot.pause()
        assert isinstance(app.screen, Modal)
        larder = app.screen_stack[-2]
        assert "Thrown away: spinach. Why?" in drawn(app)
        assert "use by today" not in drawn(app)  # what stood beside the list is covered whole, not cut
        question = app.screen.query_one("#choice").region
        assert question.x <= larder.query_one(Beside).region.x
        listed = larder.query_one("#items", OptionList)
        assert question.x >= READABLE
        assert "200 g" in drawn(app)
        marks = "".join(listed.render_line(y).text[:1] for y in range(listed.size.height))
        assert WAITS in marks  # only one place looks as if it had the keys
        assert MARK not in marks
        await pilot.resize_terminal(120, 40)
        await pilot.pause()
        assert "200 g" not in drawn(app)
        await pilot.resize_terminal(*WIDE)
        await pilot.pause()
        assert larder.has_class("-below")
        await pilot.press("escape")
        await pilot.pause()
        assert app.screen is larder
        assert isinstance(larder, LarderScreen)
        assert not larder.has_class("-below")
        assert MARK in "".join(listed.render_line(y).text[:1] for y in range(listed.size.height))

    play(act, size=WIDE)


def test_of_two_questions_in_a_row_the_screen_below_stays_quiet_to_the_last(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f2")
        await pilot.pause()
        listed = app.screen
        await pilot.press("a")
        await pilot.pause()
        await pilot.press(*"kit", "enter")
        await pilot.pause()
        assert isinstance(app.screen, PersonForm)
        assert app.screen.has_class("-beside")
        assert listed.has_class("-below")
        await pilot.press("escape")
        await pilot.pause()
        assert app.screen is listed
        assert not listed.has_class("-below")

    play(act, size=WIDE)


def test_wide_people_tell_the_limits_of_the_one_under_the_bar(play: Callable[..., LarderApp]) -> None:
    """0.50 g of fructans + GOS a meal: the cut-offs for one food of each class (Varney J et al 2017) over a meal."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        people.add(app._kitchen, "kit", {"diet": "vegan"})
        await pilot.press("shift+f2")
        await pilot.pause()
        assert isinstance(app.screen, PeopleScreen)
        words = app.screen.query_one(Beside).query_one(Hanging)
        assert "Your limits: elimination" in words.content
        assert "0.50 g, at most 0.80 g  fructans + GOS" in words.content
        await pilot.press("down")
        await pilot.pause()
        assert words.content.startswith("The limits of kit")
        assert " g, at most" not in words.content
        await pilot.resize_terminal(80, 24)
        await pilot.pause()
        assert not app.screen.query_one(Beside).display

    play(act, size=WIDE)


@pytest.mark.parametrize(("size", "columns"), [((80, 24), 1), (WIDE, 2)])
def test_limits_stand_in_as_many_columns_as_there_is_room_for(
    play: Callable[..., LarderApp], size: tuple[int, int], columns: int
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f2")
        await pilot.pause()
        assert isinstance(app.screen, LimitsScreen)
        fields = list(app.screen.query(Field))
        assert len({one.region.x for one in fields if one.display}) == columns
        assert max(one.size.width for one in fields) <= READABLE + 5
        await pilot.press("shift+tab", "tab", *["tab"] * 8)  # from side to side in the order of the page
        await pilot.pause()
        assert app.screen.focused is not None

    play(act, size=size)


def test_no_key_of_the_help_is_cut(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for width in (100, 130, 170, 200):
            await pilot.resize_terminal(width, 50)
            await pilot.press("f1")
            await pilot.pause()
            assert "…" not in drawn(app)
            await pilot.press("escape")
            await pilot.pause()

    play(act, size=WIDE)


def test_a_wide_log_tells_all_that_an_entry_brought(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "ate 200 ml orange juice")
        await type_line(pilot, "feel 1 0 2 0")
        await pilot.press("ctrl+l", "e")
        await pilot.pause()
        assert isinstance(app.screen, LogScreen)
        words = app.screen.query_one(Beside).query_one(Hanging)
        read = words.content
        await pilot.press("down")
        await pilot.pause()
        read += words.content
        (eaten,) = [one.eaten for one in log_of_days(app._kitchen, 1) if one.eaten is not None]
        grams = sum(load.likely_ug for load in eaten.loads if load.group == "total") / 1_000_000
        assert f"{grams:.2f} g  total without lactose" in read
        assert "protein" in read
        assert " 2  wind" in read
        assert "0.00 g" not in read
        await pilot.resize_terminal(80, 24)
        await pilot.pause()
        assert not app.screen.query_one(Beside).display

    play(act, size=WIDE)
