"""Contrast of the two themes: WCAG 2.2, success criterion 1.4.3 (text 4.5 to 1), 1.4.11 (parts of a picture 3 to 1)."""

import pytest
from textual.theme import Theme

from calmlarder.tui.theme import THEMES
from contrast import contrast


def test_the_measure_itself() -> None:
    """Black on white is 21 to 1, and #777777 on white just fails: worked examples of WCAG's own techniques."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.01)


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_text_can_be_read(theme: Theme) -> None:
    assert theme.foreground
    for ground in (theme.background, theme.panel):
        assert ground
        for ink in (theme.foreground, theme.accent, theme.variables["faint"]):
            assert ink
            assert contrast(ink, ground) >= 4.5, (ink, ground)


@pytest.mark.parametrize("theme", THEMES.values(), ids=THEMES)
def test_the_two_strengths_of_a_bar_differ(theme: Theme) -> None:
    assert theme.accent
    assert theme.background
    assert contrast(theme.accent, theme.variables["bar-pale"]) >= 2
    assert contrast(theme.accent, theme.background) >= 3
