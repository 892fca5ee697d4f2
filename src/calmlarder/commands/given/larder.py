"""What was typed of the kept larder and of the freezer."""

from dataclasses import dataclass

from calmlarder.commands.given.common import Past, Shown
from calmlarder.tables.vocabulary import How, Why


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Larder(Past):
    """`larder`: all that one of its commands takes; grams of one item."""

    larder_command: str
    id: int = 0
    ids: tuple[int, ...] = ()
    text: tuple[str, ...] = ()
    choice: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    file: str = ""
    ics: str | None = None
    how: How = "eaten"
    why: Why | None = None
    grams: float | None = None
    who: tuple[str, ...] | None = None
    yes: bool = False


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Freeze(Shown):
    """`freeze`; days left."""

    larder: str | None
    within: int
