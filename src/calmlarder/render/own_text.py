"""The person's own recipes whose foods are there tonight."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.render.style import Style

if TYPE_CHECKING:
    from calmlarder.household.own_recipes import Ready


def own_text(ready: Sequence["Ready"], style: Style, on_screen: bool = False) -> str:
    """Each on its lines; nothing where none is ready. On a screen a key shows it, else a command."""
    return "\n".join(_lines(ready, style, on_screen)) + "\n" if ready else ""


def own_in_short(ready: Sequence["Ready"]) -> str:
    """The first of them in a line, for a screen; nothing where none is ready."""
    if not ready:
        return ""
    first, more = ready[0], len(ready) - 1
    goes = f" ({first.goes_first}: {first.days_left} d left)" if first.days_left is not None else ""
    others = f" and {more} more" if more else ""
    return f"Or your own: {first.recipe.title}{goes}{others}; k shows it."


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
            told += f"; {one.goes_first}: {one.days_left} d left"
        if one.look_for:
            told += f"; look for {', '.join(one.look_for)}"
        yield from textwrap.wrap(
            f"{told}. {'k' if on_screen else f'`calmlarder adapt --kept {one.number}`'} shows it.", style.width,
            initial_indent="  ", subsequent_indent="    ",
        )  # fmt: skip
