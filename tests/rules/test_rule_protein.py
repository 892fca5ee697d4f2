"""Enough protein. A tiny problem where it binds, and where it does not."""

from collections.abc import Callable

from calmlarder.compose.rules.protein import ProteinFloor
from tiny import Tiny


def test_the_floor(pan: Callable[..., Tiny]) -> None:
    """By the row of the tables in the test's larder: each gram of tofu brings the same.

    firm tofu 280g
    """
    each = pan().problem.options[0].protein_mg  # of 5 g
    floor = 20 * each / 1000
    assert pan(protein_floor_g=floor).holds(ProteinFloor(), {"tofu-firm": 100})
    assert not pan(protein_floor_g=floor).holds(ProteinFloor(), {"tofu-firm": 95})
    assert not pan(protein_floor_g=floor, people=2).holds(ProteinFloor(), {"tofu-firm": 100})
