"""The same dinner is composed once a process: dozens of tests open the demo larder, and each would search it anew.

Kept is only what was asked of the shipped tables and
patterns, with the same lots, request and seconds, and came to its end; `progress` hears the same plans again. A test
that is about composing the same thing twice asks for the fixture `composed_anew`.
"""

from collections.abc import Sequence

from calmlarder.compose import compose as module
from calmlarder.compose.compose import Composed
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import Progress
from calmlarder.compose.solve import Plan
from calmlarder.compose.stop import Stop
from calmlarder.larder.lot import Lot
from calmlarder.patterns.load import shipped_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables
from read_once import SHIPPED, load_tables

_compose_anew = module.compose
_kept: dict[str, tuple[Composed, list[Plan]]] = {}
keeps = True


def install() -> None:
    """Whoever imports the function from now on has this one."""
    module.compose = compose


def compose(
    lots: Sequence[Lot],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
    progress: Progress | None = None,
    stop: Stop | None = None,
) -> Composed:
    """As the program's own, which is called where nothing is kept."""
    if not keeps or tables is not load_tables([SHIPPED]) or tuple(patterns) != shipped_patterns():
        return _compose_anew(lots, wanted, patterns, tables, progress, stop)
    asked = repr(([*lots], wanted, module._NEAREST_SECONDS))
    if asked not in _kept:
        plans: list[Plan] = []

        def heard(plan: Plan) -> None:
            plans.append(plan)
            if progress is not None:
                progress(plan)

        composed = _compose_anew(lots, wanted, patterns, tables, heard, stop)
        if stop is not None and stop.asked:
            return composed
        _kept[asked] = composed, plans
        return composed
    composed, plans = _kept[asked]
    for plan in plans if progress is not None else ():
        progress(plan)
    return composed
