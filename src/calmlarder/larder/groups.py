"""The larder in the order in which it is looked at: what goes first, what keeps, what is past its day, the freezer."""

from typing import Literal, get_args

from calmlarder.larder.lot import Lot

Group = Literal["today", "in the next days", "keeps", "past its day", "freezer"]
GROUPS: tuple[Group, ...] = get_args(Group)


def group_of(lot: Lot) -> Group:
    """Where a lot stands in the list."""
    if lot.place == "freezer":
        return "freezer"
    if lot.to_bin or (lot.days_left is not None and lot.days_left < 0):
        return "past its day"
    if lot.days_left is None:
        return "keeps"
    return "today" if lot.days_left == 0 else "in the next days"


def days_words(lot: Lot) -> str:
    """Days left in words; nothing where nothing presses."""
    if lot.to_bin:
        return "bin it"
    if lot.days_left is None:
        return ""
    if lot.days_left < 0:
        return "bin it" if lot.is_unsafe else "look, smell, decide"
    about = "about " if lot.days_estimated else ""
    return about + {0: "last day", 1: "1 day"}.get(lot.days_left, f"{lot.days_left} days")
