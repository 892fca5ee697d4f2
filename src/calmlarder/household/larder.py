"""Lines that become lots, and lots that change: kept, written anew, moved, ended. Each change is one action."""

from collections.abc import Callable, Sequence
from typing import Literal

from calmlarder.household.booking import move
from calmlarder.household.household import Household
from calmlarder.larder.freezer import frozen, thawed, why_not_frozen, why_not_thawed
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import Reading
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.store.larder import KeptLot, add, kept, still_as_seen

Place = Literal["freezer", "fridge"]


def lots_to_cook(household: Household) -> list[Lot]:
    """The kept lots as they stand today. Raises CannotGoOn when there are none."""
    lots = [one.lot for one in household.lots()]
    if not lots:
        remedy = '`calmlarder larder add "firm tofu 280g, use by friday"`, or give a list with --larder FILE'
        raise CannotGoOn([Problem(where="the larder", what="is empty", remedy=remedy)])
    return lots


def clear(readings: Sequence[Reading], source: str) -> tuple[list[Lot], list[Problem]]:
    """Lots of the lines that are clear, and for each other line what to write."""
    lots: list[Lot] = []
    problems: list[Problem] = []
    for reading in readings:
        if reading.lots:
            lots += reading.lots
        elif reading.problem is not None:
            problems.append(reading.problem)
        else:
            names = " or ".join(f"`{candidate.name}`" for candidate in reading.candidates)
            asked = reading.question or ("may be several foods" if names else "is no food of the tables")
            what = f"`{reading.text}` {asked}"
            remedy = f"write {names}" if names else "use another name"
            problems.append(Problem(where=source, what=what, remedy=remedy))
    return lots, problems


def keep(household: Household, lots: Sequence[Lot]) -> list[KeptLot]:
    """New lots, with their numbers."""
    if not lots:
        return []
    ids = add(household.store, lots, f"add {lots[0].line}" if len(lots) == 1 else f"add {_many(lots)}")
    by_id = {one.id: one for one in household.lots()}
    return [by_id[lot_id] for lot_id in ids if lot_id in by_id]


def write_anew(household: Household, lot_id: int, lots: Sequence[Lot]) -> None:
    """A lot becomes the first of these; others that the line says join the larder.

    Raises CannotGoOn for a lot that is not there.
    """
    first, *others = lots
    household.store.change_lots({lot_id: kept(first)}, f"edit {first.line}", new=[kept(one) for one in others])


def remove_mistakes(household: Household, ones: Sequence[KeptLot]) -> None:
    """Lots that were typed by mistake: nothing was eaten or thrown."""
    words = ones[0].lot.line if len(ones) == 1 else _many(ones)
    household.store.change_lots(dict.fromkeys((one.id for one in ones), None), f"remove {words}, typed by mistake")


def numbered(household: Household, ids: Sequence[int]) -> tuple[list[KeptLot], list[int]]:
    """The lots of these numbers, and the numbers of which no lot can be read, each once."""
    by_id = {one.id: one for one in household.lots()}
    ids = list(dict.fromkeys(ids))
    return [by_id[lot_id] for lot_id in ids if lot_id in by_id], [lot_id for lot_id in ids if lot_id not in by_id]


def move_to(household: Household, place: Place, ones: Sequence[KeptLot], grams: float | None = None) -> None:
    """Lots into the freezer or out of it, or `grams` of the one.

    Raises CannotGoOn for a lot that is there already, must stay as it is or changed since it was read; then none is
    changed.
    """
    moved, why_not, words = _ways(household, place)
    problems = [
        Problem(where=f"lot {one.id}", what=why, remedy="`calmlarder larder list` shows the numbers")
        for one in ones
        if (why := why_not(one.lot)) is not None
    ]
    if problems:
        raise CannotGoOn(problems)
    if len(ones) == 1:
        move(household, ones[0], moved, words, grams)
        return
    with household.store.transaction():
        still_as_seen(household.store, ones)
        household.store.change_lots({one.id: kept(moved(one.lot)) for one in ones}, f"{words} {_many(ones)}")


def _ways(household: Household, place: Place) -> tuple[Callable[[Lot], Lot], Callable[[Lot], str | None], str]:
    """How a lot comes there, why it cannot, and the word for it."""
    if place == "freezer":
        return lambda lot: frozen(lot, household.today), why_not_frozen, "freeze"
    return (
        lambda lot: thawed(lot, household.today),
        lambda lot: why_not_thawed(lot) if lot.place == "freezer" else "it is not in the freezer",
        "thaw",
    )


def remove_unread(household: Household, ids: Sequence[int]) -> None:
    """Lots whose food the tables no longer know go out without an entry. Raises CannotGoOn for one that never was."""
    household.store.change_lots(dict.fromkeys(ids), f"remove {_many(ids)}")


def _many(lots: Sequence[object]) -> str:
    return f"{len(lots)} lot{'' if len(lots) == 1 else 's'}"
