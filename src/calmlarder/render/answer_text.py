"""Lines whose answer would make a dinner, as they are told: before anything else."""

from collections.abc import Sequence
from textwrap import wrap
from typing import TYPE_CHECKING

from calmlarder.render.style import Style

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner


def answer_text(answers: "Sequence[tuple[str, str, str, Dinner]]", style: Style, on_screen: bool = False) -> str:
    """For each a line as it stands, as it would be written, the food, and the dinner there is then.

    On the screen nothing is written: the line stands on top of the larder.
    """
    lines: list[str] = []
    for line, written, name, dinner in answers:
        said = f"Answer `{line}`: if it is {name}, there is {_within(dinner.title)} ({dinner.minutes} minutes). " + (
            "It stands on top of the larder." if on_screen else f"Write `{written}`."
        )
        lines += wrap(said, style.width)
    return "\n".join(lines)


def answer_objects(answers: "Sequence[tuple[str, str, str, Dinner]]") -> list[dict[str, object]]:
    """The same for a program."""
    return [
        {"line": line, "write": written, "food": name, "title": dinner.title, "minutes": dinner.minutes}
        for line, written, name, dinner in answers
    ]


def _within(title: str) -> str:
    return f"{title[:1].lower()}{title[1:]}"
