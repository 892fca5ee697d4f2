"""What is bound in eggs or stewed in a sauce is no more than these hold."""

from typing import Any

from calmlarder.compose.variables import DishVariables

_PER = 100  # shares are hundredths


class Holding:
    """Grams of the slots that a pattern says are held, against those of the slot that holds them.

    Where that slot stays empty nothing is held by it.
    """

    def post(self, draft: DishVariables) -> None:
        """Bound each from above."""
        for held in draft.problem.pattern.holds:
            holds = draft.problem.in_slot(held.by)
            inside = [pair for name in held.slots for pair in draft.problem.in_slot(name)]
            if not holds or not inside:
                continue
            most = round(held.most * _PER) * _grams(draft, holds)
            if not draft.problem.pattern.slots[held.by].items[0]:
                empty = draft.model.new_bool_var("")
                for number, _ in holds:
                    draft.model.add(draft.used[number] + empty <= 1)
                most += _PER * sum(option.unit * option.most for _, option in inside) * empty
            draft.model.add(_PER * _grams(draft, inside) <= most)


def _grams(draft: DishVariables, options: Any) -> Any:
    return sum(option.unit * draft.units[number] for number, option in options)
