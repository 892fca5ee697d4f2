"""The program's own look, dark and light: one accent, three levels of text, one colour for bars.

Contrast of each level against its ground is measured in tests/test_theme.py (WCAG 2.2, success criterion 1.4.3).
"""

from types import MappingProxyType

from textual.theme import Theme

# Strong text is the foreground in bold; faint text and the pale part of a bar are variables of the style sheet.
_DARK_GROUND, _LIGHT_GROUND = "#15191c", "#f7f5f0"
_DARK_ACCENT, _LIGHT_ACCENT = "#9dbce0", "#2c5485"
_DARK_WORDS, _LIGHT_WORDS = "#dde3e4", "#23292c"

DARK = Theme(
    name="calm-dark",
    dark=True,
    background=_DARK_GROUND,
    surface=_DARK_GROUND,
    panel="#20272b",
    foreground=_DARK_WORDS,
    primary=_DARK_ACCENT,
    secondary=_DARK_ACCENT,
    accent=_DARK_ACCENT,
    warning=_DARK_WORDS,
    error=_DARK_WORDS,
    success=_DARK_WORDS,
    variables={"faint": "#929da2", "bar-pale": "#46566b", "footer-key-foreground": _DARK_ACCENT},
)
LIGHT = Theme(
    name="calm-light",
    dark=False,
    background=_LIGHT_GROUND,
    surface=_LIGHT_GROUND,
    panel="#e9e6dd",
    foreground=_LIGHT_WORDS,
    primary=_LIGHT_ACCENT,
    secondary=_LIGHT_ACCENT,
    accent=_LIGHT_ACCENT,
    warning=_LIGHT_WORDS,
    error=_LIGHT_WORDS,
    success=_LIGHT_WORDS,
    variables={"faint": "#5a6265", "bar-pale": "#a9bbd2", "footer-key-foreground": _LIGHT_ACCENT},
)
THEMES = MappingProxyType({theme.name: theme for theme in (DARK, LIGHT)})
