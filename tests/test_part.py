"""A part of a lot is used, thrown, given or frozen on the screen, and one undo brings it back.

Fractions are checked against Python's own `fractions`; what comes in is in a lot or in the ledger, gram by gram.
"""

from collections.abc import Callable
from fractions import Fraction

import pytest
from textual.pilot import Pilot
from textual.widgets import Input, OptionList

from calmlarder.household.larder import move_to
from calmlarder.larder.box import Box
from calmlarder.larder.lot import Lot
from calmlarder.larder.part import part_grams
from calmlarder.store.logs import ended
from calmlarder.tables.mixture import Mixture, MixturePart
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_questions import PartialUse, WhyThrown
from calmlarder.tui.larder_screen import LarderScreen
from how_much import paired
from programs import SIZES, shown, type_line

WHOLE_G = 280
ORDER = ["eaten", "thrown", "given", "moved"]


@pytest.fixture
def tofu(lots_of: Callable[[list[str]], list[Lot]]) -> Lot:
    return lots_of([f"firm tofu {WHOLE_G}g, use by friday"])[0]


@pytest.mark.parametrize(
    ("words", "grams"),
    [
        ("half", WHOLE_G * Fraction(1, 2)), ("a third", WHOLE_G * Fraction(1, 3)), ("3/4", WHOLE_G * Fraction(3, 4)),
        ("two thirds of it", WHOLE_G * Fraction(2, 3)), ("0.5", WHOLE_G * Fraction(1, 2)), ("100", 100),
        ("100 g", 100), ("0,1 kg", 100), ("40 %", WHOLE_G * Fraction(2, 5)), ("All", WHOLE_G),
    ],
)  # fmt: skip
def test_a_part_in_a_cooks_words(words: str, grams: Fraction, tofu: Lot) -> None:
    assert part_grams(words, tofu) == pytest.approx(float(grams), abs=0.05)


@pytest.mark.parametrize(
    ("words", "why"),
    [("300 g", "there are 280 g"), ("0", "there are 280 g"), ("120 %", "there are 280 g"), ("some", "say it like"),
     ("", "say it like"), ("1/0", "divides by nothing"), ("-5", "say it like"), ("2 boxes", "not in boxes"),
     ("9" * 400, "say it like"), ("\x1b[31m", "say it like")],
)  # fmt: skip
def test_what_is_no_part_of_it_says_so(words: str, why: str, tofu: Lot) -> None:
    with pytest.raises(ValueError, match=why) as told:
        part_grams(words, tofu)
    assert "\x1b" not in str(told.value)


def test_boxes_stay_whole(tofu: Lot) -> None:
    mixture = Mixture(shares=2, share_grams=150, parts=(MixturePart(food="tofu-firm", grams=300, most_hundredths=1),))
    box = Box(title="a dish", mixture=mixture, keeps_days=1, keeps_why="", freezes=True, heated=False, cold=True)
    boxes = tofu.model_copy(update={"box": box, "grams": 450.0})
    assert [part_grams(words, boxes) for words in ("1", "2 boxes", "a third", "300 g")] == [150, 300, 150, 300]
    for words in ("half", "100 g", "4"):
        with pytest.raises(ValueError, match=r"boxes stay whole|there are 450 g"):
            part_grams(words, boxes)


def grams_of(app: LarderApp) -> list[tuple[str, float]]:
    return [(row.content["place"], row.content["grams"]) for row in app._store.lots()]


@pytest.mark.parametrize(("becomes", "size"), paired(ORDER, SIZES))
def test_a_part_goes_and_comes_back(becomes: str, size: tuple[int, int], play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, f"firm tofu {WHOLE_G}g, use by friday")
        await pilot.press("down", "f10")
        await pilot.pause()
        assert isinstance(app.screen, PartialUse)
        assert "140 g of 280 g" in shown(app, "#part-means")
        app.screen.query_one(Input).value = "100 g"
        await pilot.pause()
        assert "180 g stay" in shown(app, "#part-means")
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press(*["down"] * ORDER.index(becomes), "enter")
        await pilot.pause()
        if becomes == "thrown":
            assert isinstance(app.screen, WhyThrown)
            await pilot.press("o")
            await pilot.pause()
        if becomes == "eaten":
            assert isinstance(app.screen, Choice)  # who ate it
            await pilot.press("enter")
            await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert [entry.grams for entry in app._kitchen.eaten(app._kitchen.now(), 3)] == (
            [100] if becomes == "eaten" else []
        )
        gone = [(entry.how, entry.grams, entry.why) for entry in ended(app._store)]
        if becomes == "moved":
            assert grams_of(app) == [("fridge", 180), ("freezer", 100)]
            assert gone == []
        else:
            assert grams_of(app) == [("fridge", 180)]
            assert gone == [(becomes, 100, "other" if becomes == "thrown" else None)]
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert grams_of(app) == [("fridge", WHOLE_G)]
        assert ended(app._store) == []
        await pilot.press("ctrl+y")
        await pilot.pause()
        assert sum(grams for _, grams in grams_of(app)) == WHOLE_G - (0 if becomes == "moved" else 100)

    play(act, size)


def test_what_is_frozen_of_it_reads_back_as_itself_and_thaws(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, f"firm tofu {WHOLE_G}g, use by friday")
        await pilot.press("down", "f10", "enter", "end", "enter")
        await pilot.pause()
        part = next(one for one in app._kitchen.lots() if one.lot.place == "freezer")
        again = app._kitchen.read(part.lot.line)
        assert again is not None
        assert again.lot is not None
        assert (again.lot.grams, again.lot.place, again.lot.food) == (140, "freezer", "tofu-firm")
        move_to(app._kitchen, "fridge", [part], 40)
        assert sorted(grams_of(app)) == [("freezer", 100), ("fridge", 40), ("fridge", 140)]

    play(act)


def test_nothing_goes_where_the_amount_cannot_be(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, f"firm tofu {WHOLE_G}g, use by friday")
        await pilot.press("down", "f10")
        await pilot.pause()
        app.screen.query_one(Input).value = "900 g"
        await pilot.press("enter")
        await pilot.pause()
        await pilot.click(OptionList, offset=(3, 1))
        await pilot.pause()
        assert isinstance(app.screen, PartialUse)
        assert "there are 280 g" in shown(app, "#part-means")
        await pilot.press("escape")
        await pilot.pause()
        assert grams_of(app) == [("fridge", WHOLE_G)]

    play(act)
