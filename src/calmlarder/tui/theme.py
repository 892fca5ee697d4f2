"""The program's own look, dark and light: one accent, three levels of text, one colour for bars.

Contrast of each level against its ground is measured in tests/test_theme.py (WCAG 2.2, success criterion 1.4.3).
"""

from types import MappingProxyType

from textual.theme import Theme

# Strong text is the foreground in bold; faint text and the pale part of a bar are variables of the style sheet.
_DARK_GROUND, _LIGHT_GROUND = "#15191c", "#f7f5f0"

DARK = Theme(
    name="calm-dark",
    dark=True,
    background=_DARK_GROUND,
    surface=_DARK_GROUND,
    panel="#20272b",
    foreground="#dde3e4",
    primary="#9dbce0",
    secondary="#9dbce0",
    accent="#9dbce0",
    warning="#dde3e4",
    error="#dde3e4",
    success="#dde3e4",
    variables={"faint": "#929da2", "bar-pale": "#46566b", "footer-key-foreground": "#9dbce0"},
)
LIGHT = Theme(
    name="calm-light",
    dark=False,
    background=_LIGHT_GROUND,
    surface=_LIGHT_GROUND,
    panel="#e9e6dd",
    foreground="#23292c",
    primary="#2c5485",
    secondary="#2c5485",
    accent="#2c5485",
    warning="#23292c",
    error="#23292c",
    success="#23292c",
    variables={"faint": "#5a6265", "bar-pale": "#a9bbd2", "footer-key-foreground": "#2c5485"},
)
THEMES = MappingProxyType({theme.name: theme for theme in (DARK, LIGHT)})
