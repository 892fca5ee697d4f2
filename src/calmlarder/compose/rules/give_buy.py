"""One thing bought, at a price."""

from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import BUY_ONE, POINT


class BuyOne:
    """One food at most is bought, for one slot."""

    def post(self, draft: DishVariables) -> None:
        """Allow one."""
        bought = [draft.used[n] for n, option in enumerate(draft.problem.options) if option.offered.gives == "buy"]
        draft.model.add(sum(bought) <= 1)
        draft.given += [(-BUY_ONE * POINT, used) for used in bought]
