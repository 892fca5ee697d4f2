"""What is asked for of this evening only, as a note in the home: it outlives the program, not its day."""

from typing import Any

from calmlarder.household.household import Household
from calmlarder.store.documents import ASKED


def found(household: Household) -> dict[str, Any]:
    """The note of today; empty where there is none."""
    note: Any = household.noted(ASKED)
    return note if isinstance(note, dict) and note.get("day") == household.today.isoformat() else {}


def keep(household: Household, note: dict[str, Any]) -> bool:
    """Keep it as the note of today; whether it could be."""
    note = {"day": household.today.isoformat(), **note}
    return note == household.noted(ASKED) or household.note(ASKED, note)
