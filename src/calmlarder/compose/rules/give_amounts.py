"""Less in a slot than the pattern's least, at a price."""

from calmlarder.compose.problem import PORTION
from calmlarder.compose.rules.slots import more_in
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import GIVES_AT_ALL, MOST_PORTION_SHORT, POINT, PORTION_SHORT


class AmountsGive:
    """Slots as ever, but a slot that must be filled may hold less by a share of its least; each portion costs."""

    def post(self, draft: DishVariables) -> None:
        """Bound each slot."""
        model, options = draft.model, draft.problem.options
        for name, slot in draft.problem.pattern.slots.items():
            numbers = [number for number, _ in draft.problem.in_slot(name)]
            used = sum(draft.used[number] for number in numbers)
            portions = sum(options[number].portion_units * draft.units[number] for number in numbers)
            model.add(used <= slot.items[1])
            model.add(used >= slot.items[0])
            model.add(portions <= draft.problem.most_in(name))
            more = more_in(draft, name)
            if more:
                model.add(portions <= draft.problem.most_by_pattern(name) + sum(more))
            least = draft.problem.least_in(name)
            if slot.items[0] and least:
                short = model.new_int_var(0, int(least * MOST_PORTION_SHORT), "")
                model.add(portions + short >= least)
                gives = model.new_bool_var("")
                model.add(short <= int(least * MOST_PORTION_SHORT) * gives)
                draft.given.append((-GIVES_AT_ALL * POINT, gives))
                draft.given.append((-PORTION_SHORT * (POINT // PORTION), short))
