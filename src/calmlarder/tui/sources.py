"""One key anywhere tells where a figure comes from: a food of what is shown, or the limits."""

from collections.abc import Mapping
from typing import Any

from textual.screen import Screen

from calmlarder.household.household import Household
from calmlarder.tui.choice import Choice
from calmlarder.tui.page import Page

_LIMITS = "the limits, and what is recommended for a day"


def show_limit_sources(screen: Screen[Any], kitchen: Household) -> None:
    """Where the limits come from that hold here."""
    from calmlarder.render.limit_text import limit_sources

    screen.app.push_screen(Page(limit_sources(kitchen.settled().profile, kitchen.tables)))


def ask_sources(screen: Screen[Any], kitchen: Household, foods: Mapping[str, str]) -> None:
    """Choose a food (ids by what each is called), or the limits."""

    def picked(name: str | None) -> None:
        if name == _LIMITS:
            show_limit_sources(screen, kitchen)
        elif name is not None:
            screen.app.push_screen(Page(kitchen.figures_of(foods[name])))

    if not foods:
        picked(_LIMITS)
        return
    screen.app.push_screen(Choice("Where do its figures come from?", [*foods, _LIMITS]), picked)
