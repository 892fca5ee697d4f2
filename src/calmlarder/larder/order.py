"""The larder in the order in which it is looked at: what is past its day, what goes first, what keeps, the freezer."""

from typing import Literal, get_args

from calmlarder.larder.lot import Lot

Group = Literal["past its day", "today", "in the next days", "keeps", "freezer", "always there"]
GROUPS: tuple[Group, ...] = get_args(Group)


def group_of(lot: Lot) -> Group:
    """Where a lot stands in the list."""
    if lot.always:
        return "always there"
    if lot.place == "freezer":
        return "freezer"
    if lot.to_bin or (lot.days_left is not None and lot.days_left < 0):
        return "past its day"
    if lot.days_left is None:
        return "keeps"
    return "today" if lot.days_left == 0 else "in the next days"


def goes_first(lot: Lot, number: int) -> tuple[bool, int, int]:
    """What to sort by, so that what goes first stands before what keeps; lots alike by their number in the store."""
    return (lot.days_left is None, lot.days_left or 0, number)


def days_words(lot: Lot) -> str:
    """Days left of a lot in words; nothing where nothing presses, as in the freezer, where no clock runs."""
    if lot.to_bin or lot.is_unsafe:
        return "bin it"
    if lot.days_left is not None and lot.days_left < 0:
        return "look, smell, decide"
    return "" if lot.place == "freezer" else days_in_words(lot.days_left)


def days_in_words(days_left: int | None) -> str:
    """Days from today on in words; nothing where nothing presses."""
    if days_left is None:
        return ""
    if days_left < 0:
        return "a day past its best" if days_left == -1 else f"{-days_left} days past its best"
    return {0: "last day", 1: "1 day"}.get(days_left, f"{days_left} days")
