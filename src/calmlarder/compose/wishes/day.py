"""A whole day's load stays near what a day should bring, as far as the day was logged."""

import math

from calmlarder.compose.problem import PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import DAY_OVER, POINT
from calmlarder.intake.amounts import PER_MG
from calmlarder.intake.load import load_under
from calmlarder.intake.stacking import day_so_far_ug

_UG = 1000 // PER_MG


class WithinDay:
    """What is likely to come over a day's limit costs; it is never refused."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One excess for each limit of the day, for whoever has had the most."""
        wanted, terms = draft.problem.wanted, list[Term]()
        for cap in draft.problem.limits.day_caps:
            before = -(-day_so_far_ug(wanted.eaten, wanted.stacking, cap) // _UG) if wanted.stacking else 0
            room = max(0, int(cap.typical_g * 1000 * PER_MG) - before) * wanted.people
            loads = [
                (math.ceil(load_under(option.offered.brings, cap, wanted.tolerance).likely * option.unit), units)
                for option, units in zip(draft.problem.options, draft.units, strict=True)
            ]
            most = sum(factor * option.most for (factor, _), option in zip(loads, draft.problem.options, strict=True))
            if most > room:
                over = draft.model.new_int_var(0, most, "")
                load = sum(factor * units for factor, units in loads)
                draft.model.add(over >= load - room * draft.active)
                terms.append((-DAY_OVER * POINT // (1000 * PER_MG), over))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """Nothing over costs nothing."""
        return 0
