"""Less protein, at a price. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.give_protein import ProteinGives
from calmlarder.compose.weights import GIVES_AT_ALL, PROTEIN_SHORT
from tiny import Tiny


def test_each_gram_costs(pan: Callable[..., Tiny]) -> None:
    """One gram short, and more than the share that may be short.

    firm tofu 280g
    """
    protein = pan().problem.options[0].protein_mg * 20 / 1000
    assert pan(protein_floor_g=protein).gives(ProteinGives(), {"tofu-firm": 100}) == 0
    short = pan(protein_floor_g=protein + 1).gives(ProteinGives(), {"tofu-firm": 100})
    assert short is not None
    assert abs(short + GIVES_AT_ALL + PROTEIN_SHORT) < 0.1
    assert pan(protein_floor_g=3 * protein).gives(ProteinGives(), {"tofu-firm": 100}) is None
