"""The person's own recipes whose foods are there tonight."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.larder.order import days_in_words
from calmlarder.render.style import Style
from calmlarder.render.wrapped import wrapped

if TYPE_CHECKING:
    from calmlarder.household.own_recipes import Ready


def own_text(ready: Sequence["Ready"], style: Style, on_screen: bool = False) -> str:
    """Each on its lines; nothing where none is ready."""
    return "\n".join(_lines(ready, style, on_screen)) + "\n" if ready else ""


def own_objects(ready: Sequence["Ready"]) -> list[dict[str, Any]]:
    """The same in plain values."""
    return [
        {
            "number": one.number,
            "title": one.recipe.title,
            "serves": one.recipe.serves,
            "look_for": list(one.look_for),
            "days_left": one.days_left,
            "goes_first": one.goes_first,
        }
        for one in ready
    ]


def _lines(ready: Sequence["Ready"], style: Style, on_screen: bool) -> Iterator[str]:
    yield style.strong("Your own recipes that the larder has the foods for")
    for one in ready:
        told = f"{one.recipe.title}, for {one.recipe.serves} as written"
        if one.days_left is not None:
            told += f"; {one.goes_first}: {days_in_words(one.days_left)}"
        if one.look_for:
            told += f"; look for {', '.join(one.look_for)}"
        told += "." if on_screen else f". `calmlarder adapt --kept {one.number}` shows it."
        yield from wrapped(told, style.width, "  ", "    ")
    if on_screen:
        yield from textwrap.wrap("They stand behind Ctrl+R, F6 in the larder.", style.width)
