"""Dinners that are about to be shown, put through the check that shares nothing with what found them."""

from collections.abc import Sequence
from pathlib import Path

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.gives import Give
from calmlarder.compose.verify import verify
from calmlarder.compose.wanted import Wanted
from calmlarder.export.json import dinner_object
from calmlarder.larder.lot import Lot
from calmlarder.tables.places import shipped

Shown = tuple[Dinner, tuple[Give, ...]]


def faults_of(shown: Sequence[Shown], wanted: Wanted, lots: Sequence[Lot], folders: Sequence[Path]) -> list[str]:
    """What is wrong with each dinner, by the rows of the tables' own files; nothing when all hold."""
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    plain_lots = [lot.model_dump(mode="json") for lot in lots]
    faults: list[str] = []
    for dinner, gives in shown:
        plain_gives = [give.model_dump(mode="json") for give in gives]
        faults += verify(dinner_object(dinner), request, plain_lots, folders, shipped("recipes"), plain_gives)
    return faults
