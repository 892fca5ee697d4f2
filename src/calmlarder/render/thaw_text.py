"""What of a dinner comes from the freezer and is thawed before the work begins."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner

_THAWS = ": thaw before you start"  # as the cautions of a dinner say it


def thaw_first(dinner: "Dinner") -> str:
    """The first thing to do; nothing where nothing is thawed."""
    found = [(name, how) for name, there, how in (one.partition(_THAWS) for one in dinner.cautions) if there]
    names = ", ".join(name[:1].lower() + name[1:] for name, _ in found)
    return f"Thaw first: {names}{found[0][1]}" if found else ""
