"""Faults that people met on the screens, each tried again as they met it (Textual's pilot)."""

from collections.abc import Callable, Sequence
from datetime import timedelta
from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot
from textual.widgets import Input, Static, TextArea

from calmlarder.compose.dinner_cautions import look_first
from calmlarder.compose.portions import Apart
from calmlarder.household.household import Household
from calmlarder.household.larder import remove_mistakes
from calmlarder.kitchen.timeline import Moment
from calmlarder.larder.lot import Lot
from calmlarder.render.manner import PLAIN
from calmlarder.render.style import Style
from calmlarder.render.tonight_text import tonight_text
from calmlarder.tables.book import Tables
from calmlarder.tui.adapt_screen import AdaptScreen
from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Ask, Choice
from calmlarder.tui.cook_screen import CookScreen
from calmlarder.tui.dinner_view import DinnerView, amounts_of
from calmlarder.tui.first_start import FirstStart
from calmlarder.tui.larder_questions import WhyThrown
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.larder_view import meaning
from calmlarder.tui.tonight_screen import TonightScreen
from calmlarder.tui.widgets.amounts import Amount, AmountList
from calmlarder.tui.widgets.dish import AlsoStrip
from calmlarder.tui.widgets.drawn import Drawn
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.item_list import Item, ItemGroup, ItemList
from calmlarder.tui.widgets.limit_bar import NearLimits
from calmlarder.tui.widgets.said import Said
from calmlarder.tui.widgets.top_line import TopLine
from programs import TODAY, settled, shown, type_line
from test_adapt_command import RECIPE

SMALL = ("firm tofu 280g, use by today", "cooked rice 400g, made today", "spinach 200g", "carrots x4", "rapeseed oil",
         "soy sauce")  # fmt: skip


# Of which more than five dinners can be made.
MORE = (
    *SMALL,
    "potatoes 1kg",
    "eggs x6",
    "tempeh 200g",
    "kale 150g",
    "red pepper",
    "courgette",
    "canned tomatoes 400g",
)


def line(app: LarderApp) -> Input:
    return app.screen.query_one("#line", Input)


def names(app: LarderApp) -> list[str]:
    return [item.name for item in app.screen.query_one(ItemList).items]


def test_a_filter_and_then_edit_edits_the_row_that_is_shown(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in ("spinach 200g, use by today", "kale 150g", "2 carrots"):
            await type_line(pilot, text)
        line(app).value = "/carr"
        await pilot.pause()
        await pilot.press("f4")
        await pilot.pause()
        assert line(app).value == "2 carrots"
        line(app).value = "3 carrots"
        await pilot.press("enter")
        await pilot.pause()
        assert sorted(item.grams for item in app.screen.query_one(ItemList).items) == ["150", "200", "210"]

    play(act)


def test_after_thrown_away_what_is_typed_is_a_line(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in ("spinach 200g, use by today", "kale 150g"):
            await type_line(pilot, text)
        await pilot.press("down", "f6", "enter")
        await pilot.pause()
        await pilot.press(*"swede")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert line(app).value == "swede"

    play(act)


def test_an_unknown_line_is_put_to_answer_and_the_next_begins_empty(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press(*"zorbulous 200g", "enter")
        await pilot.pause()
        assert line(app).value == ""
        await pilot.press(*"kale 150g", "enter")
        await pilot.pause()
        assert names(app) == ["zorbulous 200g", "kale"]

    play(act)


def test_what_was_done_is_said_below_the_line_and_covers_nothing(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 150g")
        await pilot.press("down", "f6", "enter")
        await pilot.pause()
        assert shown(app, "#meaning") == "thrown away: kale (Ctrl+Z undoes it)"
        assert not app._notifications
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert shown(app, "#meaning").startswith("undone: ")

    play(act)


@pytest.mark.long
def test_another_dinner_says_which_and_start_over_resets_everything(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in MORE:
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        top = app.screen.query_one(TopLine)
        assert "1 of " in top.content
        await pilot.press("n")
        await settled(app, pilot)
        assert "2 of " in top.content
        first = shown(app, "#asked")
        await pilot.press("plus", "t", "enter", "d", "up", "enter", "s", "down", "enter")
        await settled(app, pilot)
        assert "tonight only" in shown(app, "#asked")
        await pilot.press("r")
        await settled(app, pilot)
        assert shown(app, "#asked") == first
        held = app._kitchen.settled()
        assert (held.people, held.minutes, held.diet) == (1, None, "omnivore")  # and nothing was settled by it

    play(act)


def test_a_recipe_begins_at_its_line_a_name_is_a_file_and_save_wants_a_name(
    play: Callable[..., LarderApp], tmp_path: Path
) -> None:
    file = tmp_path / "curry.txt"
    file.write_text(RECIPE, encoding="utf-8")

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+r")
        await pilot.pause()
        assert isinstance(app.screen, AdaptScreen)
        assert app.focused is app.screen.query_one("#file")
        app.screen.query_one(TextArea).text = str(file)
        await pilot.press("f5")
        await settled(app, pilot)
        assert "Swap: " in app.screen.query_one("#adapted", Hanging).content
        await pilot.press("f7")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Ask)
        assert shown(app, "#ask-empty") == "type an answer, or Esc to go back"

    play(act)


def test_notes_are_wrapped_once_whatever_was_resized_before(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in SMALL:
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        for size in ((120, 40), (70, 24), (80, 24)):
            await pilot.resize_terminal(*size)
            await pilot.pause()
            await pilot.pause()
            for notes in app.screen.query("#notes Static").results(Static):
                assert max(map(len, str(notes.content).splitlines())) <= notes.content_size.width
                assert notes.size.height <= len(str(notes.content).splitlines()) + 1

    play(act)


def test_at_200_columns_no_name_is_cut_and_grams_end_in_one_column(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in SMALL:
            await type_line(pilot, text)
        drawn = "\n".join(str(option.prompt) for option in app.screen.query_one(ItemList).options)
        assert "…" not in drawn
        await pilot.press("f3")
        await settled(app, pilot)
        amounts = app.screen.query_one(DinnerView).query_one(AmountList).draw(60).plain.splitlines()[1:]
        assert len({row.index(" g  ") for row in amounts}) == 1
        assert "…" not in "\n".join(amounts)

    play(act, (200, 50))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("chicken thighs 300g, use by yesterday", "past its day"),
        ("kale 150g, use by today", "its last day"),
        ("kale 150g, use by tomorrow", "1 day left"),
    ],
)
def test_no_days_are_told_below_none(text: str, words: str, play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        line(app).value = text
        await pilot.pause()
        assert f", {words} (" in shown(app, "#meaning")

    play(act)


def test_what_is_past_its_day_stands_on_top_below_what_is_to_be_answered(play: Callable[..., LarderApp]) -> None:
    """UK Food Standards Agency: past a use-by day nothing is eaten; a best-before day is none (recalled)."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in ("noodles", "rice 1kg", "kale 150g, use by tomorrow", "carrots 300g, best before yesterday",
                     "spinach 200g, use by today"):  # fmt: skip
            await type_line(pilot, text)
        listed = app.screen.query_one(ItemList)
        assert [one.name for one in listed.items][1:] == ["carrots", "spinach", "kale", "dry white rice"]
        assert listed.items[0].question

    play(act)


@pytest.mark.parametrize(
    ("condition", "words"),
    [
        ("to be used", "look it over first"), ("bendy", ""), ("mouldy corner", "mouldy corner: trim it first"),
        ("brown bits", "look it over first"), (None, ""),
    ],
)  # fmt: skip
def test_what_is_to_be_looked_at_says_so_in_a_few_words(
    condition: str | None, words: str, tables: Tables, lots_of: Callable[[Sequence[str]], list[Lot]]
) -> None:
    """Limp does no harm, what is bad is cut away, hard cheese is trimmed (UK Food Standards Agency, recalled)."""
    (lot,) = lots_of(["carrots 300g"])
    assert look_first(lot.model_copy(update={"condition": condition}), tables.food_by_id["carrot"]) == words


def test_berries_are_not_peeled_for_the_freezer(tables: Tables) -> None:
    """Common practice: berries are frozen whole (keeping.csv says what it is)."""
    how = tables.keeping_of(tables.food_by_id["strawberry"], "freezer", "whole")
    assert how is not None
    assert "peel" not in how.how_or_why


def drawn(app: LarderApp, row: int) -> str:
    """What stands in a row of the screen."""
    strips = app.screen._compositor.render_strips()
    return strips[row].text


def test_a_line_longer_than_the_screen_is_seen_while_it_is_typed(play: Callable[..., LarderApp]) -> None:
    """A bar to scroll by stood in place of the words."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press(*"half a tin of coconut milk opened on monday, kept cold in a box behind the kale")
        await pilot.pause()
        assert "behind the kale" in drawn(app, line(app).region.y)

    play(act)


def test_pepper_beside_salt_is_ground_pepper_on_the_first_page(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.push_screen(FirstStart(app._kitchen))
        await pilot.pause()
        app.screen.query_one("#always", Input).value = "rice, salt, pepper"
        await pilot.press("escape")
        await pilot.pause()
        assert names(app) == ["dry white rice", "salt", "black pepper"]

    play(act)


def test_what_is_asked_for_in_words_says_how_it_is_answered(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f2", "a")
        await pilot.pause()
        await pilot.pause()
        assert isinstance(app.screen, Ask)
        assert "Answer" in drawn(app, app.size.height - 1)

    play(act)


def test_a_long_name_takes_no_words_from_the_others(play: Callable[..., LarderApp]) -> None:
    long = "vegetable curry without onion or garlic"
    tofu = Item("2", "firm tofu", "140", "1 day", ("freeze or eat", "firm, assumed"))
    groups = [ItemGroup("Today", (Item("1", long, "350", "2 days"), tofu))]

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 150g")  # an empty list is not shown
        for width in (60, 80, 120):
            await pilot.resize_terminal(width, 24)
            await pilot.pause()
            app.screen.query_one(ItemList).fill(groups)
            await pilot.pause()
            told = " ".join(str(option.prompt) for option in app.screen.query_one(ItemList).options)
            assert "…" not in told
            assert set(long.split()) <= set(told.split()), width
            assert {"freeze", "eat,", "firm,", "assumed"} <= set(told.split()), width

    play(act)


def test_who_alone_gets_a_food_stands_beside_it_or_below(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        amounts = AmountList()
        await app.screen.mount(amounts)
        amounts.show("On the plates", [Amount(80, "courgette", False, (), only="for robin only"),
                                       Amount(30, "spring onion greens", True, ("weigh",))])  # fmt: skip
        assert "for robin only" in amounts.draw(60).plain.splitlines()[1]
        narrow = amounts.draw(40).plain.splitlines()
        assert narrow[2].strip() == "for robin only"
        assert max(map(len, narrow)) <= 40

    play(act)


def test_what_was_eaten_before_stands_in_the_bars(play: Callable[..., LarderApp]) -> None:
    """In the summed limits: likely of the dinner and of what was eaten before, as the check of a dinner adds them."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in (*SMALL, "ate 100 g courgette"):
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        assert screen._composed is not None
        assert screen._wanted is not None
        near = screen.query_one(NearLimits)
        dinner = screen._composed.dinners[0]
        before = sum(one.likely_ug(cap) * one.share for one in screen._wanted.counted
                     for cap in screen._wanted.limits.sitting_caps if cap.key == "total") / 1_000_000  # fmt: skip
        likely = dinner.per_person.loads_g["total"] + before
        assert before > 0.05
        assert "with what was eaten before" in " ".join(near.draw(80).plain.split())
        assert f"likely {likely:.2f} of" in near.draw(80).plain

    play(act)


def test_a_recipe_that_is_kept_is_said_above_the_keys(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("ctrl+r")
        await pilot.pause()
        app.screen.query_one(TextArea).text = RECIPE
        await pilot.press("f6")  # none is kept
        await pilot.pause()
        assert not app._notifications
        said = app.screen.query_one(Said)
        assert said.region.bottom == app.size.height - 1
        assert "no recipe is kept yet" in drawn(app, said.region.y)
        await pilot.press("f6")
        await pilot.pause()
        assert len(app.screen.query(Said)) == 1

    play(act)


@pytest.mark.long
def test_a_guest_without_milk_is_said_where_it_is_said_who_eats(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in (*SMALL, "feta 150g, use by today", "eggs x6"):
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        await pilot.press(
            "f", "tab", "1", "tab", "tab", "right", "right", "right", "right", "right", "right", "space", "ctrl+s"
        )
        await settled(app, pilot)
        await settled(app, pilot)
        asked = " ".join(shown(app, "#asked").split())
        holds = "omnivore · no milk · limits: elimination"
        assert asked == f"dinner for you and 1 guest · no hurry · {holds} · tonight only (r starts over)"
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        assert screen._composed is not None
        assert all(use.food != "cheese-feta" for dinner in screen._composed.dinners for use in dinner.uses)
        assert "holds or may hold milk" in shown(app, "#dinner")

    play(act)


@pytest.mark.long
def test_no_line_of_a_dinner_is_cut_below(play: Callable[..., LarderApp]) -> None:
    """Where its parts stand side by side the last step and the last limit were one row too low."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        await settled(app, pilot)
        for size in ((200, 50), (120, 40), (80, 24), (60, 20)):
            await pilot.resize_terminal(*size)
            await pilot.pause()
            await pilot.pause()
            for part in app.screen.query_one(DinnerView).query(Drawn):
                lines = part.draw(part.content_size.width).plain.splitlines()
                assert part.content_size.height >= len(lines), (size, type(part).__name__)

    play(act)


def test_keys_that_come_before_a_line_is_kept_are_for_the_next(play: Callable[..., LarderApp]) -> None:
    """On a slow machine a second Enter kept the line twice, and what was typed next was glued to it."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for key in (*"kale 150g", "enter", "enter", *"swede 90g", "enter"):
            name = {" ": "space"}.get(key, key)
            app.post_message(events.Key(name, "\r" if key == "enter" else key))
        await pilot.pause()
        await pilot.pause()
        assert [row.content["line"] for row in app._store.lots()] == ["kale 150g", "swede 90g"]
        assert line(app).value == ""
        assert shown(app, "#meaning").startswith("kept: ")

    play(act)


def test_enter_on_an_item_says_what_can_be_done_with_it(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "kale 150g")
        await pilot.press("down", "enter")
        await pilot.pause()
        assert shown(app, "#meaning").startswith("kale: F4 edit, F5 used")
        assert names(app) == ["kale"]

    play(act)


@pytest.mark.long
def test_the_next_dinner_is_the_one_that_was_promised_and_a_key_leads_back(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in MORE:
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        strip, top = screen.query_one(AlsoStrip), screen.query_one(TopLine)

        def title() -> str:
            assert screen._composed is not None
            return screen._composed.dinners[screen._place].title

        assert not screen.check_action("back", ())
        seen = [title()]
        for count in range(2, 6):  # beyond the three that are looked for together
            promised = strip.draw(200).plain.removeprefix("n  ")
            await pilot.press("n")
            await settled(app, pilot)
            assert f" {count} of " in top.content
            assert promised in {title(), "look for another dinner"}
            assert title() not in seen
            seen.append(title())
        for before in reversed(seen[:-1]):
            await pilot.press("N")
            await pilot.pause()
            assert title() == before
        await pilot.press("right", "left")
        await pilot.pause()
        assert title() == seen[0]
        assert " 1 of 5" in top.content

    play(act)


def test_a_part_apart_that_is_weighed_is_among_what_is_weighed(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in SMALL:
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        assert screen._composed is not None
        moment = Moment(start_min=0, minutes=0, what="Weigh it.", hands_on=True, equipment="")
        part = Apart(lot="9", line="red pepper", food="bell-pepper-red", name="red pepper", grams=50, how="weigh",
                     household=None, whose=("guest",), said="50 g red pepper for guest", moment=moment)  # fmt: skip
        dinner = screen._composed.dinners[0].model_copy(update={"apart": (part,), "weigh_first": ()})
        screen.query_one(DinnerView).show(dinner, "", "")
        assert shown(app, "#weigh").splitlines() == ["Weigh 1 thing", "  50 g red pepper, for guest only"]
        assert screen._wanted is not None
        composed = screen._composed.model_copy(update={"dinners": (dinner,)})
        assert "Weigh nothing" not in tonight_text(composed, screen._wanted, (), Style(False, True, 80))
        by_eye = dinner.model_copy(update={"apart": ()})
        screen.query_one(DinnerView).show(by_eye, "", "")
        assert "Weigh nothing" in shown(app, "#weigh")

    play(act)


def test_undo_while_it_is_asked_why_a_thing_is_thrown_leaves_it_there(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in ("kale 150g", "2 carrots"):
            await type_line(pilot, text)
        await pilot.press("f6")
        await pilot.pause()
        assert isinstance(app.screen, WhyThrown)
        await pilot.press("ctrl+z")
        await pilot.pause()
        assert isinstance(app.screen, LarderScreen)
        assert sorted(names(app)) == ["carrots", "kale"]
        assert "not thrown away" in shown(app, "#meaning")

    play(act)


@pytest.mark.long
def test_what_is_for_tonight_only_outlives_the_screen_and_not_the_day(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in SMALL:
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        usual = shown(app, "#asked")
        await pilot.press("f", "tab", "1", "ctrl+s")
        await settled(app, pilot)
        asked = shown(app, "#asked")
        assert "1 guest" in asked
        await pilot.press("escape", "f3")
        await settled(app, pilot)
        assert shown(app, "#asked") == asked
        await pilot.press("r")
        await settled(app, pilot)
        await pilot.press("escape", "f3")
        await settled(app, pilot)
        assert shown(app, "#asked") == usual
        await pilot.press("t", "enter")
        await settled(app, pilot)
        assert isinstance(app.screen, TonightScreen)
        minutes = f"up to {app.screen._asked.minutes} minutes"
        assert minutes in shown(app, "#asked")
        await pilot.press("escape")
        app._kitchen.set("diet", "vegan")  # what is settled meanwhile holds as well
        await pilot.press("f3")
        await settled(app, pilot)
        assert {minutes, "vegan"} <= set(" ".join(shown(app, "#asked").split()).split(" · "))
        await pilot.press("escape")
        app._kitchen.turn_to(app._kitchen.today + timedelta(days=1))
        await pilot.press("f3")
        await settled(app, pilot)
        assert "up to" not in shown(app, "#asked")

    play(act)


def test_what_is_past_its_best_is_said_in_words_and_not_praised(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in ("carrots 300g, best before yesterday", "firm tofu 280g", "cooked rice 400g, made today",
                     "rapeseed oil"):  # fmt: skip
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        screen.ask(
            screen._asked.with_food(next(one.lot.food for one in app._kitchen.lots() if one.lot.days_left == -1))
        )
        await settled(app, pilot)
        assert screen._composed is not None
        dinner = next(one for one in screen._composed.dinners if any(use.days_left == -1 for use in one.uses))
        amounts = amounts_of(dinner, PLAIN)
        assert [one.look for one in amounts if one.food == "carrots"] == ["past its day: look and smell first"]
        assert not any("-1" in note for one in amounts for note in one.notes)
        for width in (24, 31, 60, 90):  # beside the amount, or below it, and never cut
            drawn = screen.query_one(DinnerView).query_one(AmountList)
            drawn.show("On the plates", amounts)
            assert "past its day: look and smell first" in " ".join(drawn.draw(width).plain.split())
        in_time = sum(use.grams for use in dinner.uses if use.days_left is not None and 0 <= use.days_left <= 7)
        assert dinner.rescued.grams == in_time

    play(act)


def test_keys_while_another_dinner_is_looked_for(play: Callable[..., None]) -> None:
    """The last dinner is on the screen, and every key means it: once `x` found no dinner in that place."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for text in SMALL:
            await type_line(pilot, text)
        await pilot.press("f3")
        await settled(app, pilot)
        screen = app.screen
        assert isinstance(screen, TonightScreen)
        assert screen._composed is not None
        screen._place = len(screen._composed.dinners)  # as `n` sets it before the search ends
        for key in ("x", "c", "i"):
            await pilot.press(key)
            await pilot.pause()
            assert isinstance(app.screen, Choice), key
            await pilot.press("escape")
            await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, CookScreen)

    play(act)


def test_what_is_removed_of_a_line_of_two_is_named_alone(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await type_line(pilot, "450 g cheddar, 2 limes")
        await pilot.pause()
        await pilot.press("escape")
        await pilot.pause()
        (lime,) = [one for one in app._kitchen.lots() if one.lot.food == "lime"]
        remove_mistakes(app._kitchen, [lime])
        assert isinstance(app.screen, LarderScreen)
        assert app.screen._called(lime) == "lime"

    play(act)


def test_what_was_assumed_is_not_named_twice(tmp_path: Path, tables: Tables) -> None:
    """A name that was guessed from its letters stands there once; what was added to a name is told."""
    with Household(tmp_path / "home", tables, TODAY) as kitchen:
        lines = ("half tin cocount milk opened monday", "rice noodles 250g")
        milk, noodles = (meaning(kitchen.read_all([line], "this line")[0], kitchen) for line in lines)
    assert milk.count("coconut milk") == 1
    assert milk.endswith("(assumed)")
    assert "dry: assumed" in noodles
