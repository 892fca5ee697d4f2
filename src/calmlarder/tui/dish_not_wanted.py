"""Not this: a food of tonight's dinner is left out tonight, or its kind of dish for two weeks or for good."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from calmlarder.history.variety import Declined
from calmlarder.household.household import Household
from calmlarder.household.passed_over import pass_over, passed_over_words, take_back
from calmlarder.tui.asked_for_tonight import Asked, TonightOnly
from calmlarder.tui.choice import Choice
from calmlarder.tui.tonight_asking import NOT_HERE, AsksOfDinner

if TYPE_CHECKING:
    from calmlarder.compose.dinner import Dinner

_FOR_NOW, _FOR_GOOD = "no {} at all, for two weeks", "never again any {}"
_NOT_IN_IT = "no food of that name in this dish"
_READ_S = 15.0  # what holds for weeks is said so long


class PassesOverDishes(AsksOfDinner):
    """The part of Tonight that says no to a dish; a change of mind like the others, so Ctrl+Z takes it back."""

    def __init__(self, kitchen: Household, again: Callable[[], None], only: TonightOnly) -> None:
        super().__init__(kitchen, again, only)
        self._passed: list[tuple[Asked, Declined]] = []  # each with what was asked for then

    def action_without(self) -> None:
        """Choose a food of this dinner to leave out, or say that its kind of dish is not wanted."""
        dinner, dishes = self._dinner, dict[str, bool]()
        if dinner is not None and self._is_found:
            kind = Declined(pattern=dinner.pattern, on=self._kitchen.today).kind
            dishes = {_FOR_NOW.format(kind): False, _FOR_GOOD.format(kind): True}
        foods = self._to_choose_from()

        def picked(name: str | None) -> None:
            if name in dishes and dinner is not None:
                self._decline(dinner, for_good=dishes[name])
            elif name is not None:
                self.ask(self._asked.but(foods[name]))

        question = "Leave out which food tonight?" + (" Or the dish, for longer:" if dishes else "")
        none_such = _NOT_IN_IT if dishes else NOT_HERE
        self.app.push_screen(Choice(question, [*foods, *dishes], none_such=none_such), picked)

    def _decline(self, dinner: "Dinner", *, for_good: bool) -> None:
        one = pass_over(self._kitchen, dinner.pattern, self._kitchen.manner.title(dinner), for_good=for_good)
        self._passed.append((self._asked, one))
        self.refresh_bindings()
        self.notify(passed_over_words(one), timeout=_READ_S, markup=False)
        self._go_on_without(dinner.pattern)

    def _go_on_without(self, pattern: str) -> None:
        """The next dinner that is of another kind."""
        raise NotImplementedError

    def action_undo(self) -> None:
        """A dish that was not wanted may come again; else one change of mind back."""
        if not self._passed or self._passed[-1][0] != self._asked:
            super().action_undo()
            return
        _, one = self._passed.pop()
        take_back(self._kitchen, one)
        self.notify(f"{one.kind} may come again", markup=False)
        self.refresh_bindings()
        self._again()

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """There is a way back where a dish was said no to, too."""
        return bool(self._passed) if action == "undo" and not self._before else super().check_action(action, parameters)
