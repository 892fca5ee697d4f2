"""Whether a lot may be eaten at all: not mouldy, not past its use-by, not kept for later, not somebody else's."""

from calmlarder.larder.lot import Lot


def why_unfit(lot: Lot, use_shared: bool = False) -> str | None:
    """Why nobody may cook with this lot, or None; `use_shared` lets others' things pass."""
    if lot.to_bin:
        return f"{lot.condition}: put it in the bin, do not taste it"
    if lot.is_unsafe:
        return f"past the day it is safe to eat ({lot.safety_from}): do not eat, cook or freeze it"
    if lot.owner and not (lot.owner_agrees or use_shared):
        return f"it belongs to {lot.owner}: ask first, then write ({lot.owner}'s, ok) behind it"
    if lot.kept_for:
        return f"it is kept for {lot.kept_for}: write the line without that to use it now"
    return None
