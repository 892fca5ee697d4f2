"""A leek is two things: its green leaves hold hardly any fructans, its white part does (`fermentables.csv`).

As with spring onions both come in by themselves. Who says whole, or names small ones, means all of it.
"""

from collections.abc import Sequence
from typing import Final

from calmlarder.matching.part import Part

_WHOLE: Final = "leek-whole"
_PARTS: Final = ("leek-green", "leek-white")
_TAKEN_AS: Final = "whole: greens and whites"


def in_greens_and_whites(parts: Sequence[Part]) -> tuple[Part, ...]:
    """The parts of a line, a leek of which nobody says which part it is as its greens and its whites."""
    return tuple(_two_of(part) if part.named.foods == (_WHOLE,) and part.named.assumed else part for part in parts)


def _two_of(part: Part) -> Part:
    return part._replace(named=part.named._replace(foods=_PARTS, assumed=(_TAKEN_AS,)))
