"""What no cook leaves out, and what no cook puts together."""

from calmlarder.compose.eats import protein_thing
from calmlarder.compose.taste import SEASONED_SITTINGS, SOUR_KINDS
from calmlarder.compose.variables import DishVariables

MOST_PROTEINS = 2  # on one plate: common practice, no source


class SourWithNuts:
    """A dressing of nut butter or tahini has something sour in it, where the dish has a place for it."""

    def post(self, draft: DishVariables) -> None:
        """No nut butter without an acid."""
        problem = draft.problem
        slots = problem.pattern.slots
        if problem.wanted.sitting not in SEASONED_SITTINGS or all(slot.role != "acid" for slot in slots.values()):
            return
        options = list(enumerate(problem.options))
        sour = sum(draft.used[number] for number, option in options if option.offered.food.kind in SOUR_KINDS)
        for number, option in options:
            slot = slots[option.slot]
            if option.offered.food.kind == "nut-butter" and slot.role == "sauce" and slot.method == "raw":
                draft.model.add(draft.used[number] <= sour)


class FewProteins:
    """At most two protein things on a plate at dinner, or as many as the dish is made of."""

    def post(self, draft: DishVariables) -> None:
        """Count the things, not the packs."""
        problem = draft.problem
        if problem.wanted.sitting != "dinner":
            return
        slots = [(name, slot) for name, slot in problem.pattern.slots.items() if slot.role == "protein"]
        names = {name for name, _ in slots}
        things: dict[str, list[int]] = {}
        for number, option in enumerate(problem.options):
            if option.slot in names:
                things.setdefault(protein_thing(option.offered.food), []).append(number)
        most = max(MOST_PROTEINS, sum(slot.items[0] for _, slot in slots))
        if len(things) <= most:
            return
        there = []
        for numbers in things.values():
            eaten = draft.model.new_bool_var("")
            for number in numbers:
                draft.model.add(draft.used[number] <= eaten)
            there.append(eaten)
        draft.model.add(sum(there) <= most)
