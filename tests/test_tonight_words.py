"""What the Tonight screen says while it looks, where it finds nothing, and of what the larder need not hold."""

import re
import threading
from collections.abc import Callable
from typing import Any

import pytest
from textual.pilot import Pilot
from textual.widgets import OptionList, Static

from calmlarder.compose.compose import compose
from calmlarder.compose.search import Reached, Watch
from calmlarder.compose.stop import Dropped, Stop
from calmlarder.intake.cap_words import in_words
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.manner import PLAIN
from calmlarder.tables.book import Tables
from calmlarder.tui import tonight_search
from calmlarder.tui.app import LarderApp
from calmlarder.tui.asked_for_tonight import as_settled, ways_out
from calmlarder.tui.choice import Choice, Told
from calmlarder.tui.dinner_view import DinnerView, amounts_of
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.widgets.dish import DishCard
from calmlarder.tui.widgets.top_line import TopLine
from programs import settled, type_line, until


async def solved(app: LarderApp, pilot: Pilot[None]) -> str:
    await settled(app, pilot)
    return str(app.screen.query_one(DinnerView).content)


def test_the_dinner_before_is_gone_while_one_for_other_eaters_is_looked_for(
    play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch
) -> None:
    """It may hold what a guest does not eat: nobody reads it, nor cooks it, under the new header."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        before = await solved(app, pilot)
        assert "In this order" in before
        monkeypatch.setattr(TonightScreen, "_look", lambda self, search: None)  # it takes for ever
        await pilot.press("d", *"vegan", "enter")
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


@pytest.mark.long
def test_a_dinner_for_the_same_eaters_stays_to_be_read_and_escape_goes_back_to_it(
    play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        await solved(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        asked, composed = screen._asked, screen._composed
        looks = TonightScreen._look
        monkeypatch.setattr(TonightScreen, "_look", lambda self, search: None)  # it takes for ever
        await pilot.press("t", "enter", "x")
        await pilot.pause()
        await pilot.press("enter")  # two changes of mind
        await pilot.pause()
        words = screen.query_one(DinnerView).content
        assert words.startswith("Still the dinner from before the change")
        assert "In this order" in words
        await pilot.press("enter")  # it is not cooked, as it is not what is asked for
        await pilot.pause()
        assert app.screen is screen
        await pilot.press("escape")
        await pilot.pause()
        assert app.screen is screen
        assert screen._asked == asked
        assert screen._composed is composed
        assert "Still the dinner" not in screen.query_one(DinnerView).content
        assert len(screen._undone) == 2
        monkeypatch.setattr(TonightScreen, "_look", looks)
        await pilot.press("ctrl+y")
        await solved(app, pilot)
        assert screen._asked.minutes is not None
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)

    play(act)


def test_a_change_while_another_dinner_is_looked_for_keeps_the_last_to_be_read(
    play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        await solved(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        assert screen._composed is not None
        last = screen._composed.dinners[-1]
        monkeypatch.setattr(TonightScreen, "_look", lambda self, search: None)  # it takes for ever
        await pilot.press(*["n"] * len(screen._composed.dinners), "t", "enter")
        await pilot.pause()
        words = screen.query_one(DinnerView).content
        assert words.startswith("Still the dinner from before the change")
        assert last.title.upper() in " ".join(words.split())
        await pilot.press("escape")
        await pilot.pause()
        assert screen._dinner == last

    play(act)


def test_a_long_search_tells_its_seconds_and_escape_leaves_the_best_so_far(
    play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch
) -> None:
    clock = [100.0]
    monkeypatch.setattr("calmlarder.tui.under_way.monotonic", lambda: clock[0])
    may_end = threading.Event()
    found_before = tonight_search.tonight

    def slow(evening: Any, better: Any = None, stop: Any = None, reached: Any = None) -> Any:
        if reached is not None:
            reached(Reached(7, 61))
            answer = found_before(evening, better, stop, reached)
            reached(Reached(12, 61))
            assert may_end.wait(60)
            return answer
        return found_before(evening, better, stop)

    monkeypatch.setattr(tonight_search, "tonight", slow)

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        assert screen.query_one(TopLine).content.endswith("…")  # no seconds yet
        await until(pilot, lambda: screen._search is not None and screen._search.has_best)
        await until(pilot, lambda: screen._search is not None and screen._search._reached == Reached(12, 61))
        clock[0] += 8
        screen._say_how_far()
        assert "looking for a better one, 8 s, Esc ends it" in screen.query_one(TopLine).content
        assert screen._search is not None
        assert re.search(r", 8 s, Esc ends it: \d+ of \d+ kinds of dish$", screen._search.words())
        await pilot.press("escape")
        await pilot.pause()
        assert screen._search.stop.asked
        may_end.set()
        await settled(app, pilot)
        assert app.screen is screen
        assert screen._dinner is not None
        assert "In this order" in screen.query_one(DinnerView).content

    play(act, size=(120, 40))


def test_how_far_a_search_is_goes_through_all_kinds_of_dish(
    lots_of: Callable[..., Any], wanting: Callable[..., Any], tables: Tables, patterns: tuple[Pattern, ...]
) -> None:
    heard: list[Reached] = []
    lots = lots_of(["dry rice 1 kg", "carrots 500g", "firm tofu 560g", "soy sauce"])
    assert compose(lots, wanting(), patterns, tables, Watch(reached=heard.append)).dinners
    assert heard
    assert {one.of for one in heard} == {heard[0].of}
    assert [one.looked_at for one in heard] == list(range(len(heard)))
    none = compose(lots_of(["carrots 500g"]), wanting(), patterns, tables, Watch(reached=heard.append))
    assert not none.dinners
    assert heard[-1].is_in_the_way


@pytest.mark.parametrize("key", ["x", "c"])
def test_a_name_typed_where_there_is_no_dinner_runs_as_no_keys(play: Callable[..., LarderApp], key: str) -> None:
    """`x` was hidden there, and the letters behind it asked for another meal, diet and limits."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "2 carrots")
        await pilot.press("f3")
        await solved(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        before, found = screen._asked, screen._composed
        await pilot.press(key, *"dried apricots m+-")
        await pilot.pause()
        assert isinstance(app.screen, Told)
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen is screen
        assert screen._asked == before
        assert screen._composed is found

    play(act)


def test_limits_diet_and_meal_are_chosen_by_their_words(play: Callable[..., LarderApp]) -> None:
    """One letter made looser limits of those that hold."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "2 carrots")
        await pilot.press("f3")
        await solved(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        before = screen._asked
        for key, word in (("p", "cut-offs"), ("d", "omnivore"), ("s", "dinner")):
            await pilot.press(key, "enter")
            await pilot.pause()
            assert isinstance(app.screen, Choice)  # Enter alone changes nothing
            names = app.screen.query_one(OptionList)
            words = [str(names.get_option_at_index(place).prompt) for place in range(names.option_count)]
            assert [one for one in words if one.endswith("(now)")] == [one for one in words if word in one]
            await pilot.press("escape")
            assert screen._asked == before
        await pilot.press("p", *"roomy", "enter")
        await solved(app, pilot)
        assert screen._asked == before._replace(profile="roomy")
        assert "tonight only" in str(screen.query_one("#asked", Static).content)
        await pilot.press("s", *"lunch", "enter")
        await solved(app, pilot)
        assert screen._asked.sitting == "packed"

    play(act)


def test_a_food_to_leave_out_is_asked_for_while_no_dinner_is_found_yet(
    play: Callable[..., LarderApp], monkeypatch: pytest.MonkeyPatch
) -> None:
    """`x` did nothing then, and the letters of the food's name ran as keys: `p` made other limits of one of them."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "carrots 500 g")
        await type_line(pilot, "red bell pepper 200 g")
        monkeypatch.setattr(TonightScreen, "_look", lambda self, search: None)  # it takes for ever
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
        assert "Keys that change it: t more time than 15 minutes; f who eats, and the diet of all; Ctrl+Z" in text
        assert not screen.query_one(DishCard).display  # no empty lines above it
        await pilot.press("t", "enter")
        await solved(app, pilot)
        assert screen._asked.minutes is None  # what a step up would find the next step down would lose again
        home = as_settled(app._kitchen)
        assert "more time" not in ways_out(home._replace(minutes=None), app._kitchen, False)

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


def test_a_search_for_which_nobody_waits_ends_without_an_answer_and_one_that_is_ended_with_its_best(
    lots_of: Callable[..., Any], wanting: Callable[..., Any], tables: Tables, patterns: tuple[Pattern, ...]
) -> None:
    """What is dropped takes no time from the screen that draws what was asked for since."""
    lots = lots_of(["dry rice 900 g", "carrots 450g", "firm tofu 540g", "soy sauce"])  # asked by no other test
    stop, heard = Stop(), list[Any]()

    def first(plan: Any) -> None:
        heard.append(plan)
        stop.drop()

    with pytest.raises(Dropped):
        compose(lots, wanting(), patterns, tables, Watch(first, Stop(whole=stop)))
    assert len(heard) == 1
    ended = Stop()
    assert compose(lots, wanting(), patterns, tables, Watch(lambda _: ended.ask(), ended)).dinners
