"""Rows of a log as what they are; one that was kept in a way that this program cannot read is noted, and stays."""

from collections.abc import Iterable
from typing import TypeVar

from pydantic import BaseModel, ValidationError

from calmlarder.store import unread
from calmlarder.store.documents import Log
from calmlarder.store.store import Stored

_Entry = TypeVar("_Entry", bound=BaseModel)


def read_as(model: type[_Entry], log: Log, rows: Iterable[Stored]) -> list[tuple[int, _Entry]]:
    """The rows that can be read, with their numbers."""
    found = []
    for row in rows:
        try:
            found.append((row.id, model.model_validate(row.content)))
        except ValidationError:
            unread.note(log, row.id, "was kept in a way that this program cannot read")
    return found
