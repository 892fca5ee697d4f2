"""The dose of a challenge is weighed. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.dose import DoseWeighed
from calmlarder.intake.dose import Dose
from tiny import Tiny


def test_what_holds_a_dose_is_weighed(pan: Callable[..., Tiny]) -> None:
    """A made-up dose of 60 g of carrot.

    firm tofu 280g
    carrots 300g
    """
    dose = Dose(who="me", challenge="mannitol", group="mannitol", food="carrot", name="carrot", grams=60, dose_g=0.5,
                in_dish=True)  # fmt: skip
    taken = {"tofu-firm": 80, "carrot": 60}
    assert pan(doses=(dose,)).holds(DoseWeighed(), taken, weighed=["carrot"])
    assert not pan(doses=(dose,)).holds(DoseWeighed(), taken)
    assert pan().holds(DoseWeighed(), taken)
