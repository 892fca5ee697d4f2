"""Words fitted to a column."""

from collections.abc import Sequence


def cut(words: str, room: int) -> str:
    """Words that end in an ellipsis where they are too long."""
    return words if len(words) <= room else words[: max(0, room - 1)] + "…"


def fitting(notes: Sequence[str], room: int) -> str:
    """The notes that fit whole, first things first."""
    said = ""
    for note in notes:
        longer = f"{said}, {note}" if said else note
        if len(longer) > room:
            continue
        said = longer
    return said
