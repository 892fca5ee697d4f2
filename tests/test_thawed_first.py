"""What comes from the freezer is thawed before anything else: the first thing said wherever work is told in order."""

from collections.abc import Callable

from textual.pilot import Pilot
from textual.widgets import Static

from calmlarder.render.sheet import dinner_sheet
from calmlarder.tui.app import LarderApp
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.tonight_screen import TonightScreen
from programs import settled, shown, type_line

LINES = ("salmon fillet 300g, in the freezer", "potatoes 800g", "carrots 400g", "spinach 200g", "rapeseed oil")


def test_thawing_is_the_first_thing_said(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in LINES:
            await type_line(pilot, line)
        await pilot.press("f3")
        await pilot.pause()
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        dinner = screen._dinner
        assert dinner is not None
        assert any("thaw before you start" in caution for caution in dinner.cautions)
        after = screen.query_one(DinnerView).content.split("In this order\n")[1]
        assert after.splitlines()[0].strip().startswith("Thaw first: salmon")
        assert next(one for one in dinner_sheet(dinner).parts if one.kind == "steps").lines[0].startswith("Thaw first")
        await pilot.press("enter")
        await pilot.pause()
        assert "Thaw first: salmon" in str(app.screen.query_one("#step", Static).content)

    play(act)


def test_nothing_is_thawed_where_nothing_is_frozen(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in (LINES[0].split(",")[0], *LINES[1:]):
            await type_line(pilot, line)
        await pilot.press("f3")
        await pilot.pause()
        await settled(app, pilot)
        assert "Thaw first" not in shown(app, "#dinner")

    play(act)
