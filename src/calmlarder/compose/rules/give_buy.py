"""Few things bought, each at a price."""

from calmlarder.compose.request import ENERGY_TARGET_KCAL
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import BUY_ONE, POINT

_FILLS_PERCENT = 70  # of the energy that is aimed at, the oil taken for granted not counted: ours
LEAST_VEGETABLES_G = 60  # a person, tomato sauce among them: a small helping, common practice, no source


def _is_green(role: str, kind: str) -> bool:
    return role == "vegetable" or kind == "tomato"


class Buy:
    """So many foods at most are bought, each for one slot; more than one only for a whole plate.

    That has a base and a vegetable, and what fills everybody.
    """

    def __init__(self, most: int = 1) -> None:
        self._most = most

    def post(self, draft: DishVariables) -> None:
        """Allow so many."""
        bought = [draft.used[n] for n, option in enumerate(draft.problem.options) if option.offered.gives == "buy"]
        draft.model.add(sum(bought) <= self._most)
        if self._most > 1:
            slots = draft.problem.pattern.slots
            options = list(enumerate(draft.problem.options))
            bases = sum(draft.used[n] for n, option in options if slots[option.slot].role == "base")
            draft.model.add(bases >= draft.active)
            wanted = draft.problem.wanted
            greens = [(n, o.unit) for n, o in options if _is_green(slots[o.slot].role, o.offered.food.kind)]
            grams = sum(unit * draft.units[n] for n, unit in greens)
            draft.model.add(grams >= LEAST_VEGETABLES_G * wanted.people * draft.active)
            enough = ENERGY_TARGET_KCAL.get(wanted.sitting, 0) * _FILLS_PERCENT * wanted.people
            got = sum(option.energy * draft.units[n] for n, option in options)
            draft.model.add(got >= enough * draft.active)
        draft.given += [(-BUY_ONE * POINT, used) for used in bought]
