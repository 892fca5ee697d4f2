"""Somebody else's food, at a price for each lot to ask for."""

from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import ASK_OWNER, POINT


class AskOwners:
    """Each lot whose owner is to be asked costs."""

    def post(self, draft: DishVariables) -> None:
        """One price a lot."""
        draft.given += [
            (-ASK_OWNER * POINT, draft.used[number])
            for number, option in enumerate(draft.problem.options)
            if option.offered.gives == "ask"
        ]
