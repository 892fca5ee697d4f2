"""Dinners for people who are named: one dish under everybody's limits, with parts served apart where that pays."""

from collections.abc import Sequence

from calmlarder.compose.apart import plates_with, with_apart
from calmlarder.compose.compose import Composed, best_dinners, compose
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.compose.search import Progress
from calmlarder.compose.stop import Stop
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables


def compose_at_table(
    lots: Sequence[Lot],
    wanted: DinnerRequest,
    patterns: Sequence[Pattern],
    tables: Tables,
    progress: Progress | None = None,
    stop: Stop | None = None,
) -> Composed:
    """The best dinners; where one dish for all finds no protein that all may eat, that comes apart to each."""

    def protein_apart() -> tuple[Dinner, ...]:
        bare = wanted.model_copy(update={"protein_floor_g": 0.0, "lysine_mg": 0})
        _, plain = best_dinners(lots, bare, patterns, tables, progress, stop)
        fed = [with_apart(one, lots, wanted, tables) for one in plain]
        return tuple(dinner for dinner in fed if _is_enough(dinner, wanted, tables))

    composed = compose(lots, wanted, patterns, tables, progress, stop, protein_apart)
    dinners = tuple(one if one.apart else with_apart(one, lots, wanted, tables) for one in composed.dinners)
    return composed.model_copy(update={"dinners": dinners})


def _is_enough(dinner: Dinner, wanted: DinnerRequest, tables: Tables) -> bool:
    """Whether each plate has the least protein with what comes apart."""
    plates = plates_with(dinner, dinner.apart, wanted, tables)
    return all(float(plate.protein_g) >= plate.eater.protein_floor_g for plate in plates)
