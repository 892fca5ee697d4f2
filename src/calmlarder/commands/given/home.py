"""What was typed of a household as a whole: shared, kept in a file, seen in a browser, typed in a shell."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from calmlarder.commands.given.common import Place, Shown

if TYPE_CHECKING:
    from calmlarder.household.sharing import Format, What


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Share(Place):
    """`share`."""

    what: "What"
    format: "Format"
    number: int
    out: str | None


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Backup(Shown):
    """`backup` and `restore`."""

    file: str
    yes: bool = False


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Browser(Place):
    """`browser`."""

    port: int
    address: str
    open_to_network: bool


@dataclass(frozen=True, kw_only=True, eq=False, repr=False)
class Completion:
    """`completion`."""

    shell: str
