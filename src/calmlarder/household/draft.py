"""The line that was half typed when the terminal was closed: it is in the larder's line again at the next start."""

from typing import Any, NamedTuple

from calmlarder.household.household import Household
from calmlarder.store.documents import DRAFT


class Draft(NamedTuple):
    """What was typed, and the number of the lot or question whose line it was to be; None for a new one."""

    text: str
    item: int | None = None


def keep(household: Household, draft: Draft) -> None:
    """Keep it, where the home can be written."""
    household.note(DRAFT, {"text": draft.text, "item": draft.item})


def take(household: Household) -> Draft | None:
    """What was kept, once."""
    note: Any = household.noted(DRAFT)
    if note is None:
        return None
    household.note(DRAFT, None)
    if not isinstance(note, dict) or not isinstance(note.get("text"), str):
        return None
    item = note.get("item")
    return Draft(note["text"], item if isinstance(item, int) else None)
