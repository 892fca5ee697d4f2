"""How much is tried: a sample in the run that the README names, all of it with `CALMLARDER_TESTS=whole` (by hand)."""

import os
from collections.abc import Iterable, Sequence
from itertools import product
from typing import TypeVar

WHOLE = os.environ.get("CALMLARDER_TESTS") == "whole"

_One = TypeVar("_One")
_Other = TypeVar("_Other")


def some(values: Iterable[_One], every: int) -> list[_One]:
    """One value in so many, the first among them."""
    return [*values] if WHOLE else [*values][::every]


def paired(ones: Sequence[_One], others: Sequence[_Other]) -> list[tuple[_One, _Other]]:
    """Each of the ones with one of the others and each of the others with one of the ones; all pairs of the whole."""
    if WHOLE:
        return [*product(ones, others)]
    many = max(len(ones), len(others))
    return [(ones[number % len(ones)], others[number % len(others)]) for number in range(many)]
