"""A logged meal is corrected or taken out on its screen, and undone (Textual's pilot)."""

from collections.abc import Callable
from datetime import date, datetime

import pytest
from textual.pilot import Pilot
from textual.widgets import Input

from calmlarder.history.nourishment import week_of
from calmlarder.household.diary import eaten_amount, log_of_days
from calmlarder.intake.eaten import Eaten, Load
from calmlarder.intake.nourished import nourished_of
from calmlarder.store.logs import log
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Ask
from calmlarder.tui.log_screen import LogScreen
from calmlarder.tui.widgets.item_list import ItemList
from programs import shown, type_line

DISH = Eaten(
    at=datetime(2026, 3, 10, 18), who="me", text="stew", food="", title="stew", grams=400,
    loads=(Load(cutoff_class="other", group="total", likely_ug=300_001, off_ug=90_000),),
)  # fmt: skip


def logged(app: LarderApp) -> list[tuple[str, float]]:
    return [(one.title, one.grams) for one in app._kitchen.eaten_since(datetime(2026, 3, 1))]


async def answer(app: LarderApp, pilot: Pilot[None], text: str) -> None:
    await pilot.press("enter")
    await pilot.pause()
    app.screen.query_one("#answer", Input).value = text
    await pilot.press("enter")
    await pilot.pause()


def test_corrected_taken_out_and_undone(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "ate 200 ml orange juice")
        log(app._store, DISH)
        await pilot.press("ctrl+l", "e")
        await pilot.pause()
        assert isinstance(app.screen, LogScreen)
        assert [item.name for item in app.screen.query_one(ItemList).items] == ["orange juice", "stew"]
        await answer(app, pilot, "100 ml orange juice")
        assert ("orange juice", 100) in logged(app)
        await answer(app, pilot, "zorbulous")
        assert isinstance(app.screen, Ask)
        assert shown(app, "#ask-empty")
        await pilot.press("escape", "down")
        await pilot.pause()
        await answer(app, pilot, "some")
        assert ("stew", 400) in logged(app)  # no amount: said, nothing is changed, and it can be mended
        assert isinstance(app.screen, Ask)
        assert "`some`: say it like 100 g, half" in shown(app, "#ask-empty")
        app.screen.query_one(Input).value = "half of it"
        await pilot.press("enter")
        await pilot.pause()
        assert ("stew", 200) in logged(app)
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert shown(app, "#log-words") == "undone: log 200 g stew in place of 400 g"  # and not of "stew"
        await pilot.press("ctrl+y")
        await pilot.pause()
        await pilot.press("delete")
        await pilot.pause()
        assert len(logged(app)) == 1
        for _ in range(3):
            await pilot.press("ctrl+z")
            await pilot.pause()
        assert set(logged(app)) == {("orange juice", 200), ("stew", 400)}

    play(act)


def test_a_line_and_a_correction_say_when_it_was(play: Callable[..., None]) -> None:
    """Six in the evening, as on any day that is not today. One entry is corrected to several foods and undone."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        def meals() -> list[tuple[str, str]]:
            since = datetime(2026, 3, 1)
            return [(one.title, f"{one.at:%d %H:%M}") for one in app._kitchen.eaten_since(since)]

        await type_line(pilot, "ate 200 ml orange juice, at one o'clock")
        assert "it stands at Wed 11 Mar, 13:00" in shown(app, "#meaning")
        assert meals() == [("orange juice", "11 13:00")]
        await type_line(pilot, "ate 2 squares of chocolate yesterday evening")
        await pilot.pause()
        await pilot.press("enter")  # which chocolate
        await pilot.pause()
        assert ("dark chocolate", "10 18:00") in meals()
        await pilot.press("ctrl+z")
        await type_line(pilot, "ate 2 eggs at 8, rice at 1 pm")
        assert "two times are named" in shown(app, "#meaning")
        await type_line(pilot, "feel 1 0 1 0 yesterday")
        assert "it stands at Tue 10 Mar" in shown(app, "#meaning")
        (felt,) = (one.felt for one in log_of_days(app._kitchen, 2) if one.felt is not None)
        assert (felt.at, felt.note, felt.score) == (datetime(2026, 3, 10, 18), "", 1)
        await type_line(pilot, "feel 3 ate too much yesterday")
        assert "it stands under today" in shown(app, "#meaning")
        await pilot.press("ctrl+z", "ctrl+l", "e")
        await pilot.pause()
        await answer(app, pilot, "100 ml orange juice, 2 eggs and 150 g cooked rice yesterday at noon")
        assert sorted(meals()) == [
            ("cooked white rice", "10 12:00"),
            ("eggs", "10 12:00"),
            ("orange juice", "10 12:00"),
        ]
        grams = {one.title: one.grams for one in app._kitchen.eaten_since(datetime(2026, 3, 1))}
        assert (grams["orange juice"], grams["cooked white rice"]) == (100, 150)
        assert 90 <= grams["eggs"] <= 130  # two of 55 g, and of the others not twice as much
        await answer(app, pilot, "half of it")
        assert len(meals()) == 3
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen.query_one("#answer", Input).value in {
            "50 g orange juice",
            "75 g cooked white rice",
            "55 g eggs",
        }
        await pilot.press("escape", "ctrl+z", "ctrl+z")
        await pilot.pause()
        assert meals() == [("orange juice", "11 13:00")]
        await pilot.press("escape", "escape")
        await pilot.pause()
        assert shown(app, "#meaning").startswith("undone: log ")

    play(act)


def test_loads_change_with_the_amount_and_never_down() -> None:
    half = eaten_amount(DISH, 200)
    assert half.loads[0].likely_ug == 150_001  # rounded up, as every load is
    assert half.loads[0].off_ug == 45_000
    with pytest.raises(ValueError, match="grams"):
        eaten_amount(DISH, 0)


def test_a_week_of_nourishment_says_at_least_where_a_figure_lacks(tables: Tables) -> None:
    """Against the table's own rows: 100 g of firm tofu and 200 g of broccoli."""
    tofu, broccoli = tables.food_by_id["tofu-firm"], tables.food_by_id["broccoli"]
    had = nourished_of([(tofu, 100.0), (broccoli, 200.0)])
    assert had.protein_g == pytest.approx(float(tofu.protein_g or 0) + 2 * float(broccoli.protein_g or 0))
    assert had.iron_mg == pytest.approx(float(tofu.iron_mg or 0) + 2 * float(broccoli.iron_mg or 0))
    whole = DISH.model_copy(update={"nourished": had})
    week = week_of([whole], "me", date(2026, 3, 11))
    assert week.days == 1
    assert [one.is_least for one in week.means] == [False] * 4
    with_older = week_of([whole, DISH.model_copy(update={"at": datetime(2026, 3, 11, 8)})], "me", date(2026, 3, 11))
    assert with_older.days == 2
    assert [one.is_least for one in with_older.means] == [True] * 4
    assert with_older.means[0].mean == pytest.approx(had.protein_g / 2)
    lacking = nourished_of([(tofu.model_copy(update={"iron_mg": None}), 100.0)])
    assert lacking.at_least == ("iron_mg",)


def test_what_passes_a_limit_is_logged_with_a_word(play: Callable[..., None]) -> None:
    """Lactose: 1 g a food, the cut-off of Varney et al. 2017; 250 g of milky coffee are several times as much."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "ate latte")
        words = shown(app, "#meaning")
        assert "logged: eaten: 250 g milky coffee" in words
        assert "Over the limit: lactose, likely 6.00 of 1.00 g" in words
        assert "No harm is done" in words
        await type_line(pilot, "ate 100 g carrots")
        assert "Over" not in shown(app, "#meaning")

    play(act)


def test_using_something_up_says_what_it_passes_as_ate_does(play: Callable[..., None]) -> None:
    """Lactose: 1 g a food, the cut-off of Varney et al. 2017. F5 once logged a glass of milk without a word."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "ate 200 ml cow milk")
        _, _, asked = shown(app, "#meaning").partition("Over the limit: ")
        assert asked.startswith("lactose, likely ")
        await pilot.press("ctrl+z")
        await type_line(pilot, "cow milk 200 ml")
        await pilot.press("shift+tab", "f5")
        await pilot.pause()
        await pilot.press("down", "up", "enter")
        await pilot.pause()
        words = shown(app, "#meaning")
        assert words.startswith("used up: cow milk; 200 g logged for me")
        assert words.endswith(f"Over the limit: {asked}")

    play(act)
