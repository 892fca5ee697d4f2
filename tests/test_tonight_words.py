"""What the Tonight screen says while it looks, where it finds nothing, and of what the larder need not hold."""

from collections.abc import Callable
from typing import Any

import pytest
from textual.pilot import Pilot

from calmlarder.intake.cap_words import in_words
from calmlarder.render.manner import PLAIN
from calmlarder.tui.app import LarderApp
from calmlarder.tui.asked_for_tonight import as_settled, ways_out
from calmlarder.tui.choice import Choice
from calmlarder.tui.dinner_view import DinnerView, amounts_of
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.widgets.dish import DishCard
from programs import settled, type_line


async def solved(app: LarderApp, pilot: Pilot[None]) -> str:
    await settled(app, pilot)
    return str(app.screen.query_one(DinnerView).content)


def test_the_dinner_before_is_gone_while_another_is_looked_for(
    play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch
) -> None:
    """It may hold what a guest does not eat: nobody reads it, nor cooks it, under the new header."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        before = await solved(app, pilot)
        assert "In this order" in before
        monkeypatch.setattr(TonightScreen, "_look", lambda self, stop: None)  # it takes for ever
        await pilot.press("t")
        await pilot.resize_terminal(90, 30)  # as drawing it again does
        await pilot.press("enter")
        await pilot.pause()
        words = app.screen.query_one(DinnerView).content
        assert isinstance(app.screen, TonightScreen)
        assert "Looking again" in words
        assert "was for what was asked before" in words
        assert "In this order" not in words
        assert "On the plates" not in words

    play(act)


def test_a_food_to_leave_out_is_asked_for_while_no_dinner_is_found_yet(
    play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch
) -> None:
    """`x` did nothing then, and the letters of the food's name ran as keys: `p` made other limits of one of them."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "carrots 500 g")
        await type_line(pilot, "red bell pepper 200 g")
        monkeypatch.setattr(TonightScreen, "_look", lambda self, stop: None)  # it takes for ever
        await pilot.press("f3")
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        before = screen._asked
        for key in "xvc":
            await pilot.press(key, *"pep")
            await pilot.pause()
            assert isinstance(app.screen, Choice)
            assert screen._asked == before
            if key != "x":
                await pilot.press("escape")
            else:
                await pilot.press("enter")
                await pilot.pause()
                assert screen._asked.without == ("pepper-red",)
                before = screen._asked

    play(act)


def test_where_no_dinner_is_found_the_keys_that_change_it_are_named(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "2 carrots")
        await pilot.press("f3")
        await solved(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        screen.ask(screen._asked._replace(minutes=15))
        text = " ".join((await solved(app, pilot)).split())
        assert (
            "Keys that change it: t as long as it takes, not 15 minutes; f who eats, and the diet of all; Ctrl+Z"
            in text
        )
        assert not screen.query_one(DishCard).display  # no empty lines above it
        await pilot.press("t")
        await solved(app, pilot)
        assert screen._asked.minutes is None  # what a step up would find the next step down would lose again
        home = as_settled(app._kitchen)
        assert "as long as it takes" not in ways_out(home._replace(minutes=None), app._kitchen, False)

    play(act)


def test_oil_that_the_steps_use_stands_among_the_amounts(cook: Any) -> None:
    dinner = cook(["tofu 280 g", "rice 500 g", "carrots 300 g", "spinach 150 g"], "skillet")
    assert dinner.taken_for_granted
    oil = [one for one in amounts_of(dinner, PLAIN) if one.food == "oil"]
    assert [f"{one.figure} {one.food}" for one in oil] == list(dinner.taken_for_granted)
    assert oil[0].notes == ("taken for granted",)


def test_days_beside_an_amount_are_told_as_days_that_are_left(cook: Any) -> None:
    """`1 day` stood among `about 3`, and that was read as days."""
    lines = ["tofu 280 g, 1 day left", "rice 500 g", "carrots 300 g", "spinach 150 g"]
    notes = [note for one in amounts_of(cook(lines, "skillet"), PLAIN) for note in one.notes]
    assert "1 day left" in notes
    assert not any(note.endswith((" day", " days")) and note != "last day" for note in notes)


def test_a_limit_is_put_into_words_once() -> None:
    """It was told as "total without lactose without lactose"."""
    assert in_words("the limit on total") == "the limit on total without lactose"
    assert in_words("the limit on total without lactose") == "the limit on total without lactose"


def test_a_food_is_found_by_the_name_on_the_screen_and_by_the_tables(play: Callable[..., LarderApp], cook: Any) -> None:
    """A dinner of methi was asked about in vain: the list had fenugreek leaves alone, and `meth` found nothing."""
    dinner = cook(["tofu 280 g", "rice 500 g", "carrots 300 g", "spinach 150 g"], "skillet")
    use = next(one for one in dinner.uses if one.food == "carrot")
    renamed = use.model_copy(update={"name": "wortel"})
    told = dinner.model_copy(update={"uses": tuple(renamed if one is use else one for one in dinner.uses)})

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "carrots 300 g")
        screen = TonightScreen(app._kitchen, app._tonight_only)
        assert screen._called("carrot") == "carrots"
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(TonightScreen, "_dinner", told)
            assert screen._called("carrot") == "wortel, carrots"
            assert screen._called("tofu-firm") == "firm tofu"

    play(act)
