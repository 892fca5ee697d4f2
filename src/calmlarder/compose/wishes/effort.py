"""Spare the cook: few things on the scale, no new tin, no rest in a pack, little time."""

import math

from calmlarder.compose.presses import A_PIECE_G, CURED, PACK_KINDS
from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.request import USUAL_MINUTES
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import LATE_MINUTE, MINUTE, OPENING, POINT, REST_IN_A_PACK, THAWING, WEIGHING

# Of a portion, for one person or two: less is no meal of a home. Common practice, no source.
_A_MEAL, _SHARES_A_REST = 0.75, 2


class FewWeighings:
    """Each thing on the scale costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a weighing."""
        return [(-WEIGHING * POINT, weighed) for weighed in draft.weighed if weighed is not None]

    def bound(self, problem: PatternProblem) -> int:
        """Nothing weighed costs nothing."""
        return 0


class FewOpenings:
    """Each sealed tin that is opened costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a tin."""
        return [
            (-OPENING * POINT, draft.used[number])
            for number, option in enumerate(draft.problem.options)
            if option.sealed
        ]

    def bound(self, problem: PatternProblem) -> int:
        """Nothing opened costs nothing."""
        return 0


class WholePacks:
    """A spoonful left in a tin costs, or less than a portion of a pack, where the dish could take all of it."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a pack: it is emptied, or a portion of it stays."""
        terms: list[Term] = []
        for number, option in enumerate(draft.problem.options):
            stays = _least_rest(draft.problem, option)
            if not 0 < stays <= option.most:
                continue
            emptied, rest = draft.model.new_bool_var(""), draft.model.new_bool_var("")
            draft.model.add(draft.units[number] >= option.most * emptied)
            draft.model.add(draft.units[number] <= option.most - stays + stays * (emptied + rest))
            terms.append((-REST_IN_A_PACK * POINT, rest))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """An empty pack costs nothing."""
        return 0


def _least_rest(problem: PatternProblem, option: Option) -> int:
    """Units of which a rest may be; of a tin all. 0 where the dish cannot empty the pack, or it is none."""
    slot, food = problem.pattern.slots[option.slot], option.offered.food
    if slot.role != "protein" or not option.whole or food.id in CURED:
        return 0
    if option.sealed:
        return option.most
    piece = option.offered.unit_grams >= A_PIECE_G
    packed = food.kind in PACK_KINDS and not piece and not option.thaws and problem.wanted.sitting == "dinner"
    people = min(problem.wanted.people, _SHARES_A_REST)
    return math.ceil(_A_MEAL * float(food.portion_g) * people / option.unit) if packed else 0


class FewThawed:
    """Each fish, meat or tofu that has to thaw first costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a thing."""
        options = enumerate(draft.problem.options)
        return [(-THAWING * POINT, draft.used[number]) for number, option in options if option.thaws]

    def bound(self, problem: PatternProblem) -> int:
        """Nothing thawed costs nothing."""
        return 0


class LittleTime:
    """Each minute costs, and more beyond what a usual day has for it."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """The cooking time; the pattern's own minutes stand in `constant`."""
        problem = draft.problem
        late = draft.model.new_int_var(0, 600, "")
        over = problem.pattern.minutes - USUAL_MINUTES[problem.wanted.sitting]
        draft.model.add(late >= draft.time + over * draft.active)
        return [(-round(MINUTE * POINT), draft.time), (-round(LATE_MINUTE * POINT), late)]

    def bound(self, problem: PatternProblem) -> int:
        """Cooking takes no time at best."""
        return 0
