"""Every slot holds its number of lots and its portions."""

from typing import Any

from calmlarder.compose.variables import DishVariables


class Slots:
    """Items and portions for one person lie in the pattern's range; an empty slot holds nothing."""

    def post(self, draft: DishVariables) -> None:
        """Bound each slot."""
        model = draft.model
        for name, slot in draft.problem.pattern.slots.items():
            numbers = [number for number, _ in draft.problem.in_slot(name)]
            used = sum(draft.used[number] for number in numbers)
            options = draft.problem.options
            portions = sum(options[number].portion_units * draft.units[number] for number in numbers)
            model.add(used <= slot.items[1] * draft.active)
            model.add(used >= slot.items[0] * draft.active)
            model.add(portions <= draft.problem.most_in(name) * draft.active)
            more = more_in(draft, name)
            if more:
                model.add(portions <= draft.problem.most_by_pattern(name) * draft.active + sum(more))
            if slot.items[0]:
                model.add(portions >= draft.problem.least_in(name) * draft.active)


def more_in(draft: DishVariables, slot: str) -> list[Any]:
    """What a slot may hold beyond its pattern: only with the pack of the last days that is why."""
    return [more * draft.used[number] for number, more in draft.problem.more_with(slot).items()]
