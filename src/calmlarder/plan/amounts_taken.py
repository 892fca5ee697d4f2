"""How much each dish of a model takes of what they share, as terms of that model."""

from collections.abc import Mapping, Sequence
from typing import Any

from calmlarder.compose.variables import DishVariables
from calmlarder.plan.dishes_for_sittings import Column
from calmlarder.plan.shares import Again, Opens, Share, Steps
from calmlarder.plan.shelf import StockItem

Prices = Mapping[Share, int]  # for one of each; ten-thousandths of a point


class AmountsTaken:
    """By the number of a column: `units` of each lot, and the variables of its proteins and bases by kind, `mains`.

    `kinds` tell whether it has one of the kind.
    """

    def __init__(self, model: Any, shelves: Sequence[StockItem]) -> None:
        self._model, self._shelves = model, shelves
        self.units: dict[int, dict[int, list[Any]]] = {}
        self.mains: dict[int, dict[str, list[Any]]] = {}
        self.kinds: dict[int, dict[str, Any]] = {}
        self._used: dict[int, dict[int, list[Any]]] = {}
        self._steps: dict[Steps, dict[int, Any]] = {}
        self._opens: dict[tuple[int, int], Any] = {}

    def add(self, column: Column, draft: DishVariables) -> None:
        """What a column may take."""
        units = self.units[column.number] = {}
        taking = self._used[column.number] = {}
        mains = self.mains[column.number] = {}
        for number, option in enumerate(column.problem.options):
            units.setdefault(option.offered.place, []).append(draft.units[number])
            taking.setdefault(option.offered.place, []).append(draft.used[number])
            if column.problem.pattern.slots[option.slot].role in {"protein", "base"}:
                mains.setdefault(str(option.offered.food.kind), []).append(draft.used[number])
        kinds = self.kinds[column.number] = {kind: self._model.new_bool_var("") for kind in mains}
        for kind, used in mains.items():
            for one in used:
                self._model.add_implication(one, kinds[kind])

    def paid(self, column: Column, prices: Prices) -> Any:
        """What a column pays for what it shares with others."""
        return sum(price * self._amount(column, share) for share, price in prices.items() if price)

    def keep_steps(self) -> None:
        """No more steps of a lot are taken than it holds, of those that were paid for."""
        for share, steps in self._steps.items():
            self._model.add(sum(steps.values()) <= self._shelves[share.place].units // share.step)

    def _amount(self, column: Column, share: Share) -> Any:
        if isinstance(share, Again):
            kinds = self.kinds[column.number]
            return kinds[share.kind] if share.kind in kinds and share.touches(column.covers) else 0
        units = self.units[column.number].get(share.place)
        if isinstance(share, Opens):
            return self._takes(column, share.place) if units and share.first == column.covers[0] else 0
        if units is None or share.step == 1:
            return sum(units or ())
        steps = self._steps.setdefault(share, {})
        if column.number not in steps:
            some = self._model.new_int_var(0, self._shelves[share.place].units // share.step, "")
            self._model.add(sum(units) <= share.step - 1 + share.step * some)
            steps[column.number] = some
        return steps[column.number]

    def _takes(self, column: Column, place: int) -> Any:
        """Whether a column takes of a lot; where that costs, it is 1 for nothing else."""
        used = self._used[column.number][place]
        if len(used) == 1:
            return used[0]
        if (column.number, place) not in self._opens:
            some = self._opens[column.number, place] = self._model.new_bool_var("")
            for one in used:
                self._model.add_implication(one, some)
        return self._opens[column.number, place]
