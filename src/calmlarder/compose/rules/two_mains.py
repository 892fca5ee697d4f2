"""Of two main things on a plate there is less of each: nobody fries two packs because both go off."""

from calmlarder.compose.presses import CURED, PACK_KINDS
from calmlarder.compose.problem import PORTION
from calmlarder.compose.variables import DishVariables

_MOST_OF_BOTH = 1.8  # portions a person: common practice, no source


class TwoMains:
    """Fish, meat and tofu of several places of a dish are together no more than one of them may be, or 1.8 portions."""

    def post(self, draft: DishVariables) -> None:
        """Bound what all of them hold."""
        problem = draft.problem
        slots = problem.pattern.slots
        if problem.wanted.sitting != "dinner":
            return
        numbers = [
            number
            for number, option in enumerate(problem.options)
            if slots[option.slot].role == "protein"
            if option.offered.food.kind in PACK_KINDS and option.offered.food.id not in CURED
        ]
        names = {problem.options[number].slot for number in numbers}
        if len(names) > 1:
            most = max(round(_MOST_OF_BOTH * PORTION) * problem.wanted.people, *map(problem.most_in, names))
            portions = sum(problem.options[number].portion_units * draft.units[number] for number in numbers)
            draft.model.add(portions <= most * draft.active)
