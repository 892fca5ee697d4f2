"""What of a dinner comes from the freezer and is thawed before the work begins."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner

_THAWS = ": thaw before you start"  # as the cautions of a dinner say it


def thaw_first(dinner: "Dinner") -> str:
    """The first thing to do; nothing where nothing is thawed."""
    names = [name for name, found, _ in (caution.partition(_THAWS) for caution in dinner.cautions) if found]
    said = ", ".join(name[:1].lower() + name[1:] for name in names)
    return f"Thaw first: {said}, in the fridge, or in the microwave if in haste." if names else ""
