"""Lines that become lots, and lots that change: kept, written anew, moved, ended. Each change is one action."""

from collections.abc import Sequence

from calmlarder.household.household import Household
from calmlarder.larder.lot import Lot
from calmlarder.larder.reading import Reading
from calmlarder.problems import CannotGoOn, Problem


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
