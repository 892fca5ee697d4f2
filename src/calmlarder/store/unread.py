"""Rows that cannot be read: they stay where they are, and each is told once in a run of the program."""

from collections.abc import Iterable
from typing import TYPE_CHECKING, TypeVar

from pydantic import BaseModel, ValidationError

from calmlarder.store.documents import Log, Place

if TYPE_CHECKING:
    from calmlarder.store.store import Stored

_Entry = TypeVar("_Entry", bound=BaseModel)

_WORDS: dict[str, str] = {
    "lots": "item {}",
    "eaten": "entry {} of what was eaten (it does not count now, so there may be less room than is shown)",
    "ended": "entry {} of what became of items",
    "felt": "entry {} of how a gut felt",
    "challenges": "entry {} of the challenges (it does not count now: look before you go on with one)",
}
_noted: dict[tuple[Place, str], str] = {}
_told: set[tuple[Place, str]] = set()
_said_of_store: dict[str, bool] = {}  # and whether it was told


def note(place: Place, row_id: object, why: str) -> None:
    """Remember that a row cannot be read, and why in words."""
    _noted[(place, str(row_id))] = why


def read_as(model: type[_Entry], log: Log, rows: "Iterable[Stored]") -> list[tuple[int, _Entry]]:
    """The rows of a log that can be read as what they are, with their numbers; the others are noted, and stay."""
    found = []
    for row in rows:
        try:
            found.append((row.id, model.model_validate(row.content)))
        except ValidationError:
            note(log, row.id, "was kept in a way that this program cannot read")
    return found


def say(words: str) -> None:
    """Something about the store itself, to be told once."""
    if words not in _said_of_store:
        _said_of_store[words] = False


def told_here(place: Place, row_id: object) -> None:
    """The row is shown with its reason by whoever reads it, and need not be told again."""
    _noted.pop((place, str(row_id)), None)


def take() -> list[str]:
    """In words what was noted and not told before."""
    new = [key for key in _noted if key not in _told]
    _told.update(new)
    words = [f"{_WORDS[place].format(row_id)}: {_noted[(place, row_id)]}; it is kept as it is" for place, row_id in new]
    _noted.clear()
    of_store = [one for one, is_told in _said_of_store.items() if not is_told]
    _said_of_store.update(dict.fromkeys(of_store, True))
    return [*of_store, *words]
