"""People and challenges on the screens, driven by keys (Textual's pilot)."""

import re
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual._xterm_parser import XTermParser
from textual.binding import Binding
from textual.events import Key
from textual.pilot import Pilot
from textual.widgets import Input, OptionList, Static

from calmlarder.history.felt import Scores
from calmlarder.household.challenge_start import Start, begin
from calmlarder.household.challenge_status import status
from calmlarder.household.going_on import courses
from calmlarder.household.household import Household
from calmlarder.household.people import add, change, people, person_of
from calmlarder.intake.eaten import ME
from calmlarder.reintroduction.entry_questions import QUESTIONS
from calmlarder.render.course_text import status_text
from calmlarder.render.portions_text import steps_of
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.challenge_screen import ChallengeScreen, EntryForm
from calmlarder.tui.choice import Ask, Choice
from calmlarder.tui.dinner_view import DinnerView
from calmlarder.tui.larder_log import four_of
from calmlarder.tui.larder_screen import LarderScreen
from calmlarder.tui.page import Page
from calmlarder.tui.people_screen import PeopleScreen
from calmlarder.tui.person_form import PersonForm
from calmlarder.tui.score_form import ScoreForm
from calmlarder.tui.widgets.field import Field
from calmlarder.tui.widgets.hanging import Hanging
from calmlarder.tui.widgets.keys_line import KeysLine
from calmlarder.tui.widgets.pick import Pick
from calmlarder.tui.widgets.said import Said
from calmlarder.tui.widgets.tick_rows import TickRows
from calmlarder.tui.widgets.top_line import TopLine
from how_much import some
from programs import SIZES, TODAY, settled, shown, type_line


@pytest.fixture
def home(tmp_path: Path) -> Path:
    return tmp_path / "home"


def keys_told(app: LarderApp) -> list[str]:
    """What the line of keys names."""
    return [key.word for key in app.screen.query_one(KeysLine).keys]


async def go_on(app: LarderApp, pilot: Pilot[None]) -> None:
    """Past the questions before a challenge; where some were out of sight those come first."""
    for _ in QUESTIONS:
        if isinstance(app.screen, EntryForm):
            await pilot.press("ctrl+s")
            await pilot.pause()
    assert not isinstance(app.screen, EntryForm)


@pytest.mark.parametrize("size", some(SIZES, 2))
def test_somebody_comes_changes_and_leaves(
    play: Callable[..., None], home: Path, tables: Tables, size: tuple[int, int]
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f2")
        await pilot.pause()
        assert isinstance(app.screen, PeopleScreen)
        await pilot.press("a")
        await pilot.pause()
        await pilot.press(*"kit", "enter")
        await pilot.pause()
        assert isinstance(app.screen, PersonForm)
        app.screen.query_one("#appetite", Input).value = "130"
        app.screen.query_one("#limit", Input).value = "gos 1"
        await pilot.pause()
        app.screen.keep()  # nobody says so yet: it stays
        await pilot.pause()
        assert isinstance(app.screen, PersonForm)
        app.screen.query_one("#said-by", Input).value = "a dietitian"
        app.screen.query_one("#limit", Input).value = "lactose 40"
        app.screen.keep()
        await pilot.pause()
        assert isinstance(app.screen, Choice)  # 1 g is the cut-off of Varney et al. 2017
        await pilot.press("enter")  # written again
        await pilot.pause()
        assert isinstance(app.screen, PersonForm)
        app.screen.query_one("#limit", Input).value = "gos 1"
        app.screen.keep()
        await pilot.pause()
        await pilot.press("down", "enter")  # more than three times the 0.3 g, and meant
        await pilot.pause()
        assert isinstance(app.screen, PeopleScreen)
        assert app.screen.query_one(OptionList).option_count == 2

    play(act, size)
    with Household(home, tables, TODAY) as kitchen:
        (_, kit) = people(kitchen)
        assert (kit.name, kit.appetite, kit.own_limits[0].grams) == ("kit", 1.3, 1.0)

    async def leave(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f2", "down", "delete")
        await pilot.pause()
        assert app.screen.query_one(OptionList).option_count == 1

    play(leave, size)


def test_a_phase_has_its_first_day_and_a_weight_that_falls_sends_to_a_doctor(
    play: Callable[..., None], home: Path, tables: Tables
) -> None:
    """Unmeant loss of weight is a red flag: AGA clinical practice update 2022, recalled."""
    with Household(home, tables, TODAY - timedelta(days=35)) as kitchen:
        change(kitchen, "me", {"phase": "elimination", "weight_kg": 70.0})

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f2", "enter")
        await pilot.pause()
        form = app.screen
        assert isinstance(form, PersonForm)
        for field, value in (("#since", "2031-01-01"), ("#since", "soon"), ("#weight", "much")):
            form.query_one(field, Input).value = value
            form.keep()
            await pilot.pause()
            assert app.screen is form, field
            form.query_one(field, Input).value = "2026-02-20" if field == "#since" else ""
        form.query_one("#weight", Input).value = "64,5"
        form.keep()
        await pilot.pause()
        assert isinstance(app.screen, Page)
        assert "see a doctor" in app.screen._text

    play(act)
    with Household(home, tables, TODAY) as kitchen:
        (me,) = people(kitchen)
        assert (me.since, me.weight_kg) == (date(2026, 2, 20), 64.5)


def test_the_challenge_screen_names_keys_and_no_commands(play: Callable[..., None], home: Path, tables: Tables) -> None:
    with Household(home, tables, TODAY) as kitchen:
        change(kitchen, "me", {"phase": "elimination", "weight_kg": 70.0})
        told = status_text(status(kitchen, "me"), on_screen=True)
        assert "calmlarder" not in told


def test_esc_does_not_lose_an_allergen_unasked(play: Callable[..., None], home: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for keys in (("a", *"kit", "enter", "tab", "space"), ("a", *"lou", "enter", "tab", "space")):
            await pilot.press(*(("shift+f2",) if isinstance(app.screen, LarderScreen) else ()), *keys)
            await pilot.pause()
            await pilot.press("escape")
            await pilot.pause()
            assert isinstance(app.screen, PersonForm)
            assert any("Ctrl+S keeps it" in note.message for note in app._notifications)
            await pilot.press("ctrl+s" if "k" in keys else "escape")
            await pilot.pause()
            assert isinstance(app.screen, PeopleScreen)
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("escape")  # nothing was said: back at once
        await pilot.pause()
        assert isinstance(app.screen, PeopleScreen)

    play(act)
    with Household(home, tables, TODAY) as kitchen:
        assert [(one.name, bool(one.avoid)) for one in people(kitchen)] == [
            ("me", False),
            ("kit", True),
            ("lou", False),
        ]


def test_keys_with_shift_get_here_as_a_terminal_sends_them() -> None:
    """By xterm's control sequences: `CSI 1 ; 2 P` to `S` for Shift and F1 to F4, `CSI n ; 2 ~` for those above.

    Of these `CSI 1 ; 2 R`, Shift+F3, is also how a terminal tells where its cursor is.
    """
    sent = {f"shift+f{n}": f"\x1b[1;2{letter}" for n, letter in enumerate("PQRS", 1)}
    sent |= {f"shift+f{n}": f"\x1b[{code};2~" for n, code in enumerate((15, 17, 18, 19, 20, 21, 23, 24), 5)}
    bound = [key for one in LarderScreen.BINDINGS if isinstance(one, Binding) for key in one.key.split(",")]
    shifted = [key for key in bound if key.startswith("shift+f")]
    assert len(shifted) >= 3
    for key in shifted:
        assert [got.key for got in XTermParser().feed(sent[key]) if isinstance(got, Key)] == [key]


@pytest.mark.parametrize("size", some(SIZES, 2))
def test_a_challenge_is_started_scored_and_stopped_by_a_red_flag(
    play: Callable[..., None], home: Path, tables: Tables, size: tuple[int, int]
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f4")
        await pilot.pause()
        assert isinstance(app.screen, ChallengeScreen)
        await pilot.press("n")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, EntryForm)
        await go_on(app, pilot)
        await pilot.pause()
        assert isinstance(app.screen, Choice)  # whether it begins before elimination has had its weeks
        asked = str(app.screen.query_one("#choice Static", Static).content)
        assert "No elimination is noted here" in asked  # before anything has begun
        assert "this one can wait. Nothing has begun yet." in asked
        await pilot.press("enter")  # Enter alone begins nothing
        await pilot.pause()
        assert isinstance(app.screen, ChallengeScreen)
        assert not courses(app._kitchen, ME)
        await pilot.press("n", "enter")
        await pilot.pause()
        await go_on(app, pilot)
        await pilot.press("down", "enter")  # in words: all the same
        await pilot.pause()
        assert isinstance(app.screen, Choice)  # whether a day to compare comes first
        assert not courses(app._kitchen, ME)
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, Page)
        assert "No elimination is noted here" in app.screen._text
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, ChallengeScreen)
        assert "A dose comes after 3 days" in " ".join(shown(app, "#challenge").split())
        # Three days of wash-out, then the lowest dose of the ladder (Tuck & Barrett 2017, recalled).
        ahead = " ".join(shown(app, "#challenge").split())
        assert "Doses to come, if each day is calm" in ahead
        assert re.search(r"Sat 14 Mar: \d+(\.\d)? g of [a-z ]+ \(0\.5 g of sorbitol\)", ahead)
        await pilot.press("c")
        await pilot.pause()
        assert "A day to compare comes before the first dose" in str(app.screen.query_one(Said).content)
        await pilot.press("s")
        await pilot.pause()
        assert isinstance(app.screen, ScoreForm)
        app.screen.query_one("#note", Input).value = "blood in my stool"
        app.screen.keep()
        await pilot.pause()
        assert isinstance(app.screen, Page)
        await pilot.press("escape")
        await pilot.pause()
        assert app.screen.check_action("start", ())  # none goes on any more

    play(act, size)
    with Household(home, tables, TODAY) as kitchen:
        (course,) = courses(kitchen, ME)
        assert (course.is_open, course.why_stopped) == (
            False,
            "you noted a sign that a doctor should know of; please see one before you begin again",
        )


def test_a_challenge_of_another_person_is_chosen_by_a_key(
    play: Callable[..., None], home: Path, tables: Tables
) -> None:
    with Household(home, tables, TODAY) as kitchen:
        add(kitchen, "kit", {"age": 30})

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f4")
        await pilot.pause()
        assert "Whose" in keys_told(app)
        await pilot.press("p", *"kit", "enter")
        await pilot.pause()
        assert "of kit" in str(app.screen.query_one(TopLine).content)
        assert shown(app, "#challenge").startswith("What follows speaks to Kit: you is Kit.\n\nkit: ")
        await pilot.press("n", "enter")
        await pilot.pause()
        assert "of Kit, who is asked" in str(app.screen.query(".heading").first(Static).content)
        await go_on(app, pilot)
        await pilot.press("down", "enter")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("escape", "s")
        await pilot.pause()
        assert isinstance(app.screen, ScoreForm)
        app.screen.keep()
        await pilot.pause()

    play(act)
    with Household(home, tables, TODAY) as kitchen:
        assert [one.is_open for one in courses(kitchen, "kit")] == [True]
        assert not courses(kitchen, ME)


def test_tonight_says_a_word_of_the_challenge_that_goes_on(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("firm tofu 280g", "cooked rice 400g, made today", "spinach 200g", "carrots x4", "rapeseed oil"):
            await type_line(pilot, line)
        begin(app._kitchen, ME, "sorbitol", (), Start(app._kitchen.now()))
        await pilot.press("f3")
        await settled(app, pilot)
        told = " ".join(shown(app, "#dinner").split())
        assert "Challenge of sorbitol: no dose today, so eat as in elimination and score the day tonight." in told

    play(act)


def test_alone_nobody_is_chosen(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f4")
        await pilot.pause()
        assert "Whose" not in keys_told(app)

    play(act)


def test_the_page_of_challenges_asks_when_elimination_began(play: Callable[..., None]) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f4", "b")
        await pilot.pause()
        for words, there in (("some day", Ask), ("tomorrow", Ask), ("3 weeks ago", ChallengeScreen)):
            app.screen.query_one(Input).value = words
            await pilot.press("enter")
            await pilot.pause()
            assert isinstance(app.screen, there)
        assert person_of(app._kitchen, ME).since == TODAY - timedelta(weeks=3)
        assert "When did it begin" not in shown(app, "#challenge")
        await pilot.press("b")  # it is said, and asked no more
        await pilot.pause()
        assert isinstance(app.screen, ChallengeScreen)

    play(act)


def test_every_question_is_ticked_by_arrows_and_space(play: Callable[..., None]) -> None:
    """Down goes on from one list to the next, and a long question is whole on a narrow screen."""
    said: list[tuple[str, ...] | None] = []

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.push_screen(EntryForm(), said.append)
        await pilot.pause()
        rows = list(app.screen.query(TickRows))
        drawn = " ".join(" ".join(line.split()) for one in rows for line in one.draw(30).plain.splitlines())
        assert all(one.words in drawn for one in QUESTIONS)
        assert all(len(line) <= 30 for one in rows for line in one.draw(30).plain.splitlines())
        await pilot.press(*["space", "down"] * len(QUESTIONS))
        await pilot.press("ctrl+s")
        await pilot.pause()

    play(act)
    assert said == [tuple(one.key for one in QUESTIONS)]


def on_screen(app: LarderApp) -> set[str]:
    """The questions of which every line is drawn on the screen now."""
    drawn = " ".join(
        " ".join(strip.text.strip("│▁▂▃▄▅▆▇█ ") for strip in app.screen._compositor.render_strips()).split()
    )
    return {one.words for one in QUESTIONS if one.words in drawn}


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("first", [(), ("tab",), ("tab", "tab"), ("tab", "tab", "tab", "enter"), ("space",)])
def test_no_question_before_a_challenge_is_passed_unseen(
    play: Callable[..., None], size: tuple[int, int], first: tuple[str, ...]
) -> None:
    """Whatever the way down the page: an answer is taken as no only of what stood there whole, with nothing over it."""
    seen: set[str] = set()
    said: list[tuple[str, ...] | None] = []

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        app.push_screen(EntryForm(), said.append)
        await pilot.pause()
        seen.update(on_screen(app))
        for key in (*first, *["ctrl+s"] * len(QUESTIONS)):
            await pilot.press(key)
            await pilot.pause()
            assert not app._notifications  # it would lie over a question
            if said:
                break
            seen.update(on_screen(app))

    play(act, size)
    assert said == [(QUESTIONS[0].key,) if "space" in first else ()]
    assert seen == {one.words for one in QUESTIONS}


def test_a_yes_bars_a_challenge_with_whom_to_see(play: Callable[..., None], home: Path, tables: Tables) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f4", "n")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        await pilot.press("space")  # the first question
        await pilot.pause()
        assert isinstance(app.screen, EntryForm)
        await go_on(app, pilot)
        await pilot.pause()
        assert isinstance(app.screen, Page)
        assert "Please see a doctor soon" in app.screen.query_one(Hanging).content

    play(act)
    with Household(home, tables, TODAY) as kitchen:
        assert not courses(kitchen, ME)


def test_four_numbers_in_the_line_are_four_scores(play: Callable[..., None], home: Path, tables: Tables) -> None:
    assert four_of("1 0 2 3 a bit tight") == (Scores(pain=1, bloating=0, wind=2, urgency=3), "a bit tight")
    assert four_of("1 0 2") is None
    assert four_of("1 0 2 11") is None

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f4", "n")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, EntryForm)
        await go_on(app, pilot)
        await pilot.pause()
        await pilot.press("down", "enter")  # though no elimination is noted
        await pilot.pause()
        await pilot.press("enter")  # no day to compare
        await pilot.pause()
        await pilot.press("escape")  # that no elimination is noted
        await pilot.pause()
        await pilot.press("escape")
        await pilot.pause()
        await type_line(pilot, "feel 1 0 2 3 woke at night with cramps")

    play(act)
    with Household(home, tables, TODAY) as kitchen:
        assert not courses(kitchen, ME)[0].is_open  # a red flag in the line stops it, too


def test_a_day_is_put_off_and_a_page_written(
    play: Callable[..., None], home: Path, tables: Tables, tmp_path: Path
) -> None:
    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("shift+f4", "n")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert isinstance(app.screen, EntryForm)
        await go_on(app, pilot)
        await pilot.pause()
        await pilot.press("down", "enter")  # though no elimination is noted
        await pilot.pause()
        await pilot.press("enter")  # no day to compare
        await pilot.pause()
        await pilot.press("escape")  # that no elimination is noted
        await pilot.pause()
        await pilot.press("k")
        await pilot.pause()
        await pilot.press(*"ill", "enter")
        await pilot.pause()
        await pilot.press("w")
        await pilot.pause()
        app.screen.query_one(Input).value = str(tmp_path / "page.html")
        await pilot.press("enter")
        await pilot.pause()

    play(act)
    assert (tmp_path / "page.html").read_text(encoding="utf-8").endswith("</html>\n")
    with Household(home, tables, TODAY) as kitchen:
        assert courses(kitchen, ME)[0].skipped == {TODAY: "ill"}


def test_own_limits_can_be_chosen_where_there_are_any(play: Callable[..., None], home: Path, tables: Tables) -> None:
    with Household(home, tables, TODAY) as kitchen:
        assert "own" not in kitchen.profiles
        from calmlarder.household.people import change
        from calmlarder.intake.own_limit import own_limit_of

        own = own_limit_of("gos 2", "a dietitian", TODAY)
        assert own is not None
        change(kitchen, ME, {"own_limits": [own.model_dump()], "profile": "own"})
        assert "own" in kitchen.profiles

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f2")  # a form whose words hold what is chosen
        await pilot.pause()
        await pilot.press("escape")
        await pilot.pause()

    play(act)


def test_a_dose_beside_the_dish_is_shown_before_it_is_cooked(
    play: Callable[..., None], home: Path, tables: Tables
) -> None:
    """What counts as eaten once the dinner is cooked stands on the card and among the steps."""
    from calmlarder.history.felt import Felt
    from calmlarder.household.challenge_start import Start, begin
    from calmlarder.household.challenges import score

    calm = Scores(pain=1, bloating=0, wind=1, urgency=0)
    for number in range(3, 0, -1):
        day = TODAY - timedelta(days=number)
        with Household(home, tables, day) as kitchen:
            if number == 3:
                begin(kitchen, ME, "lactose", (), Start(kitchen.now()))
            score(kitchen, Felt(at=kitchen.now(), who=ME, score=1, scores=calm))

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        for line in ("rice 500g", "4 carrots", "firm tofu 400g", "soy sauce", "olive oil", "1 lime", "spinach 200g"):
            await type_line(pilot, line)
        await pilot.press("f3")
        await settled(app, pilot)
        view = app.screen.query_one(DinnerView).content.replace("\n", " ")
        assert "Today's challenge: 59 g cow milk, weighed, beside the dish" in view
        await pilot.press("enter")
        await pilot.pause()
        assert any("Weigh 59 g cow milk" in step for step in steps_of(app.screen._dinner))  # type: ignore[attr-defined]

    play(act, (120, 40))


def test_limits_and_phase_say_what_each_does(play: Callable[..., LarderApp]) -> None:
    """Somebody new has no limits, and that is said before the question has the focus."""

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        add(app._kitchen, "kit", {})
        for keys, own, others in ((("enter",), "your own", "their"), (("down", "enter"), "their own", "your")):
            await pilot.press("shift+f2", *keys)
            await pilot.pause()
            read = " ".join(str(one.content) for one in app.screen.query(Static))
            assert f"Limits of {own} are set" in read
            assert f"Limit of {own}" in read
            assert f"of {others} own" not in read
            await pilot.press("escape", "escape")
        await pilot.press("shift+f2", "down", "enter")
        await pilot.pause()
        for name, words in (("profile", "somebody new has none"), ("phase", "alone it limits nothing")):
            takes = app.screen.query_one(f"#{name}").query_ancestor(Field).query_one(".takes", Static)
            assert words in str(takes.content)
            assert takes.size.height
        assert app.screen.query_one("#profile", Pick).chosen == ("none",)

    play(act, (80, 40))
