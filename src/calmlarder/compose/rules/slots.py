"""Every slot holds its number of lots and its portions."""

from calmlarder.compose.problem import PORTION
from calmlarder.compose.variables import DishVariables


class Slots:
    """Items and portions for one person lie in the pattern's range; an empty slot holds nothing."""

    def post(self, draft: DishVariables) -> None:
        """Bound each slot."""
        model, people = draft.model, draft.problem.wanted.people
        for name, slot in draft.problem.pattern.slots.items():
            numbers = [number for number, _ in draft.problem.in_slot(name)]
            used = sum(draft.used[number] for number in numbers)
            options = draft.problem.options
            portions = sum(options[number].portion_units * draft.units[number] for number in numbers)
            model.add(used <= slot.items[1] * draft.active)
            model.add(used >= slot.items[0] * draft.active)
            model.add(portions <= draft.problem.most_in(name) * draft.active)
            if slot.items[0]:
                model.add(portions >= round(slot.portions[0] * PORTION) * people * draft.active)
