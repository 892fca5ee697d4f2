"""One key anywhere tells where a figure comes from: a food of what is shown, one that is typed, or the limits."""

from collections.abc import Mapping
from typing import Any

from textual.screen import Screen

from calmlarder.household.figures import figures_of
from calmlarder.household.household import Household
from calmlarder.tui.choice import Choice, Told
from calmlarder.tui.page import Page

_LIMITS = "the limits, and what is recommended for a day"
_OTHER = "or type the name of another food"


def show_limit_sources(screen: Screen[Any], kitchen: Household) -> None:
    """Where the limits come from that hold here."""
    from calmlarder.render.limit_text import limit_sources

    screen.app.push_screen(Page(limit_sources(kitchen.profile(), kitchen.tables)))


def ask_sources(screen: Screen[Any], kitchen: Household, foods: Mapping[str, str]) -> None:
    """Choose a food (ids by what each is called), type another, or the limits; where nothing is shown, the limits."""

    def picked(name: str | None) -> None:
        if name == _LIMITS:
            show_limit_sources(screen, kitchen)
        elif name is not None:
            _show_named(screen, kitchen, name, foods)

    if not foods:
        picked(_LIMITS)
        return
    screen.app.push_screen(Choice("Where do its figures come from?", [*foods, _LIMITS], _OTHER), picked)


def show_typed_sources(screen: Screen[Any], kitchen: Household, typed: str) -> None:
    """Of the food that is named, and of no other: where several may be meant it is asked, where none is it is said."""
    _show_named(screen, kitchen, typed, {})


def _show_named(screen: Screen[Any], kitchen: Household, name: str, foods: Mapping[str, str]) -> None:
    """One of those that are shown by its name or a word of it, else whatever the name may mean."""
    low = name.casefold().strip()
    meant = {one: food for one, food in foods.items() if low in one.casefold().replace(",", "").split()}
    meant = {name: foods[name]} if name in foods else meant
    meant = meant or {kitchen.name_of(food): food for food in kitchen.foods_meant(name)}

    def picked(one: str | None) -> None:
        if one is not None:
            screen.app.push_screen(Page(figures_of(kitchen, meant[one])))

    if not meant:
        screen.app.push_screen(Told(f"The tables know no food called {name}. Another name may find it."))
    elif len(meant) == 1:
        picked(next(iter(meant)))
    else:
        screen.app.push_screen(Choice(f"Which {name}?", list(meant), unmarked=True), picked)
