"""Contrast of the two themes: WCAG 2.2, success criterion 1.4.3 (text 4.5 to 1), 1.4.11 (parts of a picture 3 to 1)."""

import pytest
from textual.color import Color
from textual.theme import Theme

from calmlarder.tui.theme import THEMES


def _luminance(colour: Color) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = (part / 255 for part in (colour.r, colour.g, colour.b))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _contrast(one: str, other: str) -> float:
    high, low = sorted((_luminance(Color.parse(colour)) for colour in (one, other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_the_measure_itself() -> None:
    """Black on white is 21 to 1, and #777777 on white just fails: worked examples of WCAG's own techniques."""
    assert _contrast("#000000", "#ffffff") == pytest.approx(21)
    assert _contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_text_can_be_read(theme: Theme) -> None:
    assert theme.foreground
    for ground in (theme.background, theme.panel):
        assert ground
        for ink in (theme.foreground, theme.accent, theme.variables["faint"]):
            assert ink
            assert _contrast(ink, ground) >= 4.5, (ink, ground)


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_the_two_strengths_of_a_bar_differ(theme: Theme) -> None:
    assert theme.accent
    assert theme.background
    assert _contrast(theme.accent, theme.variables["bar-pale"]) >= 2
    assert _contrast(theme.accent, theme.background) >= 3
