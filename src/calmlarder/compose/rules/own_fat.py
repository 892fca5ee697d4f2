"""Bacon, sausages and mince give off fat of their own: little goes into their pan. Common practice, no source."""

import math

from calmlarder.compose.variables import DishVariables
from calmlarder.kitchen.filling import OWN_FAT

_LITTLE_EACH_G = 3  # more than half a teaspoon: common practice, no source
_MINCE = "-mince"  # lean ones too: a spoon starts them


class OwnFat:
    """Fat to fry in, in grams, where such a thing fries; never less than the least of a fat or of its place."""

    def post(self, draft: DishVariables) -> None:
        """Bound the fat of each place."""
        problem = draft.problem
        slots, people = problem.pattern.slots, problem.wanted.people
        starts = [
            number
            for number, option in enumerate(problem.options)
            if slots[option.slot].role == "protein" and slots[option.slot].method == "stir-fry"
            if option.offered.food.id in OWN_FAT or option.offered.food.id.endswith(_MINCE)
        ]
        for name, slot in slots.items():
            fats = problem.in_slot(name) if slot.role == "fat" and slot.method == "stir-fry" else ()
            most = sum(option.unit * option.most for _, option in fats)
            if not fats or not starts:
                continue
            portion_g = max(float(option.offered.food.portion_g) for _, option in fats)
            place_g = math.ceil(slot.portions[0] * portion_g * people)
            little = max(_LITTLE_EACH_G * people, place_g, *(option.unit * option.least for _, option in fats))
            grams = sum(option.unit * draft.units[number] for number, option in fats)
            for number in starts:
                draft.model.add(grams + max(0, most - little) * draft.used[number] <= max(most, little))
