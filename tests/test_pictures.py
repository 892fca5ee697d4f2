"""What holds for the picture of every screen at every size, dark, light and without colour, read from the picture.

One colour and no traffic lights: no fill has the hue of red, amber or green. Nothing lies beyond the screen.
Readable: text has the contrast of WCAG 2.2, success criterion 1.4.3 (test_theme.py measures the theme itself), and a
line of reading ends where the eye still finds the next one.
"""

import asyncio
import colorsys
import re
from pathlib import Path

import pytest
from textual.pilot import Pilot
from textual.widgets import Static

from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.widgets.day_board import Card, DayBoard
from calmlarder.tui.widgets.drawn import READABLE, Drawn
from calmlarder.tui.widgets.top_line import TopLine
from contrast import hard_to_read
from how_much import some
from programs import TODAY, run_program
from take_pictures import FOLDER, past_weeks

WAY = (
    ("the first start", ()),
    ("the larder", ("escape", "f8")),
    ("thrown away", ("down", "down", "f6")),
    ("a part of it", ("escape", "f10")),
    ("days", ("escape", "ctrl+l")),
    ("waste", ("end",)),
    ("the log", ("e",)),
    ("sources", ("f9",)),
    ("a recipe", ("escape", "escape", "escape", "ctrl+r")),
    ("help", ("escape", "f1")),
)
_OVER = 5  # columns that a sentence may be longer, where it is not wrapped by us
_COLOURED = 0.35  # saturation from which a colour is seen as one


def fills(svg: str) -> set[str]:
    """Colours of letters and grounds, without the frame that Textual draws around a picture."""
    inner = svg[svg.index("terminal-matrix") if "terminal-matrix" in svg else 0 :]
    styles = set(re.findall(r"r\d+ \{ fill: (#[0-9a-fA-F]{6})", svg))
    return {one.lower() for one in styles | set(re.findall(r'<rect fill="(#[0-9a-fA-F]{6})"', inner))}


def is_traffic_colour(colour: str) -> bool:
    red, green, blue = (int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5))
    hue, light, saturation = colorsys.rgb_to_hls(red, green, blue)
    return saturation > _COLOURED and 0.1 < light < 0.9 and not 0.45 < hue < 0.75


def faults_of(app: LarderApp, mode: str) -> list[str]:
    """What is wrong with the picture on the screen now."""
    svg = app.export_screenshot()
    found, colours = list(hard_to_read(svg)), fills(svg)
    if mode != "plain":
        found += [f"{colour} is a traffic colour" for colour in colours if is_traffic_colour(colour)]
    found += [f"{type(one).__name__} draws past its width" for one in app.screen.query(Drawn)
              if one.content_size.width > 20 and one.size.height
              and max((len(line) for line in one.draw(one.content_size.width).plain.splitlines()), default=0)
              > one.content_size.width]  # fmt: skip
    found += [f"{one} lies beyond the screen" for one in app.screen.query(Static)
              if one.region.height and one.is_on_screen and one.region.right > app.size.width]  # fmt: skip
    found += [f"{one} has a line of {long}" for one in app.screen.query(Static) if one.is_on_screen
              and (long := min(one.content_size.width, max(map(len, str(one.content).splitlines()), default=0)))
              > READABLE + _OVER]  # fmt: skip
    for top in app.screen.query(TopLine):
        found += [] if top.content.split() else ["the first line does not say where one is"]
    return found


def test_a_traffic_colour_is_found() -> None:
    """Else the test below would say nothing."""
    assert [is_traffic_colour(one) for one in ("#d0403a", "#e0a020", "#3aa04a", "#9dbce0", "#2c5485", "#dde3e4")] == [
        True, True, True, False, False, False
    ]  # fmt: skip


@pytest.mark.parametrize("kept", sorted(FOLDER.glob("*.svg")), ids=lambda path: path.stem)
def test_every_word_of_a_kept_picture_stands_out(kept: Path) -> None:
    svg = kept.read_text(encoding="utf-8")
    assert len(re.findall("<text ", svg)) > 5
    assert list(hard_to_read(svg)) == []


def test_words_that_stand_out_too_little_are_found() -> None:
    """#777777 on white just fails, #767676 just passes: worked examples of WCAG's own techniques (G18)."""
    picture = (
        "<style>.t-r1 {{ fill: {ink} }}</style>"
        '<rect fill="#ffffff" x="0" y="0" width="99" height="25"/><text class="t-r1" x="0" y="20">spinach</text>'
    )
    assert list(hard_to_read(picture.format(ink="#777777"))) == ["spinach: 4.48 to 1, #777777 on #ffffff"]
    assert list(hard_to_read(picture.format(ink="#767676"))) == []


@pytest.mark.long
@pytest.mark.parametrize(
    ("size", "mode"),
    some([((60, 20), "dark"), ((80, 24), "dark"), ((120, 40), "light"), ((60, 20), "light"), ((80, 24), "plain"),
          ((120, 40), "dark"), ((200, 50), "dark"), ((200, 50), "plain")], 2),
)  # fmt: skip
def test_every_screen_is_whole_and_in_one_colour(
    size: tuple[int, int], mode: str, tmp_path: Path, tables: Tables, monkeypatch: pytest.MonkeyPatch
) -> None:
    if mode == "plain":
        monkeypatch.setenv("NO_COLOR", "1")
    else:
        monkeypatch.delenv("NO_COLOR", raising=False)
    app = LarderApp(tmp_path / "home", tables, TODAY)
    found: dict[str, list[str]] = {}

    async def walk(pilot: Pilot[None]) -> None:
        for name, keys in WAY:
            if name == "days":
                past_weeks(app)
            for key in keys:
                await pilot.press(key)
                await pilot.pause()
            await pilot.pause()
            if faults := faults_of(app, mode):
                found[name] = faults

    async def scene() -> None:
        async with app.run_test(size=size) as pilot:
            await pilot.pause()
            if mode == "light":
                app._turn_light()
            await walk(pilot)

    asyncio.run(scene())
    assert not app.faults
    assert found == {}


def test_a_board_of_days_is_whole_at_every_width(tmp_path: Path, tables: Tables) -> None:
    """Each title can be read off in its order, and no line is wider than the screen."""
    cards = [Card(f"day {n // 2}", ("packed lunch", "dinner")[n % 2], "20 min", f"dish number {n} with a long name",
                  ("from the box of yesterday's dinner, cold",) if n == 3 else ()) for n in range(9)]  # fmt: skip
    drawn: dict[int, str] = {}

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        board = DayBoard(id="b")
        await app.screen.mount(board)
        await pilot.pause()
        board.show(cards)
        drawn.update({width: board.draw(width).plain for width in (24, 52, 56, 76, 116, 196)})

    run_program(tmp_path / "home", tables, act)
    assert len(drawn) == 6
    for width, text in drawn.items():
        assert max(map(len, text.splitlines())) <= width
        assert all(f"number {n}" in " ".join(text.split()) or str(n) in text for n in range(9)), width
        assert text.count("▌") >= 2
