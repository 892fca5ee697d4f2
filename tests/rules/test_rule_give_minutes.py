"""More minutes, at a price. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.give_minutes import MinutesGive
from calmlarder.compose.rules.minutes import SlowestFood
from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import GIVES_AT_ALL, MINUTE_LATE
from tiny import Tiny


class _Late:
    """The time that the slowest food takes, and minutes that may give."""

    def __init__(self, minutes: int) -> None:
        self.rules = (SlowestFood(), MinutesGive(minutes))

    def post(self, draft: DishVariables) -> None:
        for rule in self.rules:
            rule.post(draft)


def test_each_minute_costs(pan: Callable[..., Tiny]) -> None:
    """Tofu takes its minutes, and 2 go for serving.

    firm tofu 280g
    """
    whole = pan().problem.options[0].minutes + 2
    assert pan().gives(_Late(whole), {"tofu-firm": 80}) == 0
    assert pan().gives(_Late(whole - 3), {"tofu-firm": 80}) == -GIVES_AT_ALL - 3 * MINUTE_LATE
