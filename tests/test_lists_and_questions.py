"""Lists stay where one walks them, show their row without colour, and a question is no dead end (Textual's pilot)."""

from collections.abc import Callable

import pytest
from textual.command import CommandPalette
from textual.pilot import Pilot
from textual.widgets import Input, OptionList

from calmlarder.tui.app import LarderApp
from calmlarder.tui.choice import Choice
from calmlarder.tui.larder_questions import WhyThrown
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.limits_screen import LimitsScreen
from calmlarder.tui.person_form import PersonForm
from calmlarder.tui.plan_screen import PlanScreen
from calmlarder.tui.widgets.allergen_pick import AllergenPick
from calmlarder.tui.widgets.field import Field
from calmlarder.tui.widgets.item_list import ItemList
from calmlarder.tui.widgets.marked_list import MARK, WAITS
from calmlarder.tui.widgets.pick import Pick
from programs import type_line, until


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """The demo larder."""
    return ("f8",)


def rows(shown: OptionList) -> list[str]:
    """What is painted of a list."""
    return [shown.render_line(y).text for y in range(shown.scrollable_content_region.height)]


async def far_down(app: LarderApp, pilot: Pilot[None]) -> ItemList:
    """The list walked to where it has scrolled."""
    items = app.screen.query_one(ItemList)
    await pilot.press("down", *["down"] * 18)
    await pilot.pause()
    assert items.scroll_offset.y > 0
    return items


def test_what_is_frozen_or_taken_out_leaves_the_bar_on_its_neighbour_and_the_list_where_it_is(
    play: Callable[..., LarderApp],
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        items = await far_down(app, pilot)
        for key in ("f7", "delete"):
            top, beside = items.scroll_offset.y, items.beside
            await pilot.press(key)
            await pilot.pause()
            assert isinstance(app.screen, LarderScreen)
            assert (items.chosen, items.scroll_offset.y) == (beside, top)
        top, chosen = items.scroll_offset.y, items.chosen
        await pilot.press("f6", "escape")  # a question is asked and put away
        await pilot.pause()
        assert (items.chosen, items.scroll_offset.y) == (chosen, top)

    play(act)


def test_behind_a_question_the_bar_stays_though_the_line_is_typed_into(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        items = await far_down(app, pilot)
        await pilot.press("escape")  # to the line
        top, chosen = items.scroll_offset.y, items.chosen
        await pilot.press("f6", "escape")
        await pilot.pause()
        assert (items.chosen, items.scroll_offset.y) == (chosen, top)
        await type_line(pilot, "ate 200 ml orange juice")  # nothing of the list is another
        assert (items.chosen, items.scroll_offset.y) == (chosen, top)

    play(act)


def test_what_is_typed_is_in_sight_and_the_list_moves_no_further_than_that(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        items = await far_down(app, pilot)
        there = items.chosen
        await pilot.press("escape")
        name = next(item.name for item in items.items if item.id == there)
        top = items.scroll_offset.y
        await type_line(pilot, f"{name} 100 g")
        new = next(item for item in items.items if item.id == items.chosen)
        line = next((y for y, row in enumerate(rows(items)) if row.startswith(WAITS)), None)
        assert line is not None, "the new item is in sight"
        assert new.name == name
        assert abs(items.scroll_offset.y - top) <= items.scrollable_content_region.height

    play(act)


def test_the_chosen_row_has_a_sign_in_every_list(play: Callable[..., LarderApp]) -> None:
    """Without colour a bar is seen by it. Exactly one row has one, and it goes along."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        def chosen(shown: OptionList) -> str:
            (row,) = [row for row in rows(shown) if row.startswith((MARK, WAITS))]
            assert row.startswith(MARK if shown.has_focus else WAITS)
            return row[1:].strip()

        items = app.screen.query_one(ItemList)
        assert chosen(items).startswith(items.items[0].name[:10])
        await pilot.press("down", "down", "down", "down")
        await pilot.pause()
        under = next(item for item in items.items if item.id == items.chosen)
        assert chosen(items).startswith(under.name[:10])
        await pilot.press("f6")
        await pilot.pause()
        why = app.screen.query_one(OptionList)
        before = chosen(why)
        await pilot.press("down")
        await pilot.pause()
        assert chosen(why) != before
        await pilot.press("escape", "shift+f2")
        await pilot.pause()
        assert "you" in chosen(app.screen.query_one("#people-list", OptionList)).lower()

    play(act)


@pytest.mark.long
def test_over_a_question_commands_are_found_and_leave_it(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        async def find(words: str, title: str) -> None:
            await pilot.press("ctrl+p")
            await pilot.pause()
            assert isinstance(app.screen, CommandPalette)
            app.screen.query_one(Input).value = words
            listed = app.screen.query_one(OptionList)
            await until(pilot, lambda: listed.option_count and listed.display)
            titles = [one.hit.text for one in listed.options]  # type: ignore[attr-defined]
            assert title in titles
            assert app.screen.query_one(OptionList).option_count <= len(titles)
            await pilot.press("enter")
            await pilot.pause()
            await pilot.pause()

        before = len(app._kitchen.lots())
        await pilot.press("down", "down", "down", "f6")
        await pilot.pause()
        assert isinstance(app.screen, WhyThrown)
        await find("what holds at home", "Limits, and what holds at home (leaves this question)")
        assert isinstance(app.screen, LimitsScreen)
        await pilot.press("escape", "down", "down", "down", "f6")
        await find("plan", "Plan the next meals, and what to buy (leaves this question)")
        assert isinstance(app.screen, PlanScreen)
        assert len(app._kitchen.lots()) == before  # the question was left unanswered
        await pilot.press("escape")
        await pilot.pause()

    play(act)


def test_a_form_with_answers_is_not_lost_to_a_command(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f2", "enter")
        await pilot.pause()
        form = app.screen
        assert isinstance(form, PersonForm)
        await pilot.press("left", "ctrl+p")
        await pilot.pause()
        app.screen.query_one(Input).value = "somebody"
        listed = app.screen.query_one(OptionList)
        await until(pilot, lambda: listed.option_count and listed.display)
        await pilot.press("enter")
        await pilot.pause()
        assert app.screen is form  # it asks first
        await pilot.press("escape")
        await pilot.pause()
        assert app.screen is not form

    play(act)


def test_single_choices_name_the_keys_that_choose(play: Callable[..., LarderApp]) -> None:
    """Up and Down go on to other questions; only Left and Right choose."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for keys in (("f2",), ("escape", "shift+f2", "enter")):
            await pilot.press(*keys)
            await pilot.pause()
            words = app.screen.query_one("#diet").query_ancestor(Field)._takes
            assert "left and right" in words
            assert "arrows" not in words
            for pick in app.screen.query(Pick):
                takes = pick.query_ancestor(Field)._takes
                assert "arrows" not in takes or pick._several

    play(act)


def test_tree_nuts_and_peanuts_are_told_apart(play: Callable[..., LarderApp]) -> None:
    """Regulation (EU) No 1169/2011, Annex II: peanuts are its fifth entry, nuts (of trees) its eighth."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f2")
        await pilot.pause()
        pick = app.screen.query_one(AllergenPick)
        assert "tree nuts" in pick.draw(70).plain
        assert "not peanuts" in pick.query_ancestor(Field)._takes
        pick.choose("tree nuts")
        await pilot.pause()
        assert app._kitchen.settled().avoid == ("nuts",)
        await pilot.press("escape", "shift+f2", "enter")
        await pilot.pause()
        assert isinstance(app.screen, PersonForm)
        assert app.screen.query_one(AllergenPick).avoided == ("nuts",)
        await pilot.press("escape", "escape", "f3")
        await pilot.pause()
        assert "no tree nuts" in str(app.screen.query_one("#asked").render())

    play(act)


def test_choice_is_a_marked_list(play: Callable[..., LarderApp]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await app.push_screen(Choice("Which?", ["one", "two words"]))
        await pilot.press("down")
        await pilot.pause()
        painted = rows(app.screen.query_one(OptionList))
        assert painted[0].startswith("  one")
        assert painted[1].startswith(f"{MARK} two words")

    play(act)
