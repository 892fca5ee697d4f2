"""Sittings of the plan that follow each other so closely that one still counts at the next."""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any

from calmlarder.compose.variables import DishVariables, Term
from calmlarder.intake.profile import cap_milligrams
from calmlarder.intake.stacking import held_by, still_counted
from calmlarder.plan.columns import Column, PlanInstance
from calmlarder.tables.rows import Cap

_ROUNDING_MG = 1  # the log rounds each load up to a microgram: so much room is left for it


def post_stacking(model: Any, house: PlanInstance, posted: Sequence[tuple[Column, DishVariables]]) -> None:
    """Each person's share of both, under each sitting cap, beside what the log still holds of them."""
    for later, one in enumerate(house.sittings):
        how = house.stacking.model_copy(update={"at": one.at})
        counted = still_counted(house.wanted.eaten, how)
        before = {who: tuple(earlier_shares(house, later, who)) for who in how.people(house.wanted.eaten)}
        for cap in house.wanted.profile.sitting_caps:
            held = held_by(counted, cap)
            # People with the same past under the same hours need one row.
            rows = {(shares, math.ceil(held.get(who, 0) / 1000)) for who, shares in before.items() if shares}
            for shares, log_mg in sorted(rows):
                room = max(0, cap_milligrams(cap) - log_mg - _ROUNDING_MG)
                _post(model, cap, room, [(Fraction(1), later), *((share, number) for number, share in shares)], posted)


def earlier_shares(house: PlanInstance, later: int, who: str) -> Iterator[tuple[int, Fraction]]:
    """Earlier sittings that still count at a later one for a person, and how much of them."""
    window = house.stacking.window_of(who)
    for number, one in enumerate(house.sittings[:later]):
        age = house.sittings[later].at - one.at
        if age < window:
            fading = Fraction(int((window - age).total_seconds()), int(window.total_seconds()))
            yield number, fading if house.stacking.fades_for(who) else Fraction(1)


def _post(
    model: Any,
    cap: Cap,
    room: int,
    shares: Sequence[tuple[Fraction, int]],
    posted: Sequence[tuple[Column, DishVariables]],
) -> None:
    parts: list[tuple[Fraction, list[Term]]] = []
    for share, sitting in shares:
        parts += [
            (share / draft.problem.wanted.people, load_terms(draft, cap))
            for column, draft in posted
            if sitting in column.covers
        ]
    scale = math.lcm(*(part.denominator for part, _ in parts)) if parts else 1
    load = sum(int(part * scale) * factor * variable for part, terms in parts for factor, variable in terms)
    if parts and not isinstance(load, int):
        model.add(load <= room * 10_000 * scale)


def load_terms(draft: DishVariables, cap: Cap) -> list[Term]:
    """What a whole dish brings under a cap, in ten-thousandths of a milligram."""
    terms: list[Term] = []
    for number, option in enumerate(draft.problem.options):
        figure = option.offered.brings.held(cap)
        if figure:
            terms += draft.worst_terms(number, figure) if cap.holds == "worst" else draft.planned_terms(number, figure)
    return terms
