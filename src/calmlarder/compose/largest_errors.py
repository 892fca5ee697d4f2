"""The largest errors of a plate as an expression of a model, and how large terms can be."""

from collections.abc import Iterable, Sequence
from typing import Any, NamedTuple

from calmlarder.intake.load import ERRORS_COUNTED


class LoadTerm(NamedTuple):
    """A whole factor, a variable, and the most that the variable can be."""

    factor: int
    variable: Any
    most: int


def largest_errors(model: Any, items: Sequence[tuple[Any, int]]) -> Any:
    """An expression no less than the sum of the ERRORS_COUNTED largest, each given with the most that it can be.

    So many times a threshold, and all that is above it (Bertsimas & Sim 2004); at its least it is exactly that sum.
    """
    if len(items) <= ERRORS_COUNTED:
        return sum(off for off, _ in items)
    threshold = model.new_int_var(0, sorted(most for _, most in items)[-ERRORS_COUNTED], "")
    above = []
    for off, most in items:
        more = model.new_int_var(0, most, "")
        model.add(more >= off - threshold)
        above.append(more)
    return ERRORS_COUNTED * threshold + sum(above)


def most_of(terms: Iterable[LoadTerm]) -> int:
    """The most that terms come to, those with a negative factor left out."""
    return sum(term.factor * term.most for term in terms if term.factor > 0)


def total(terms: Iterable[LoadTerm]) -> Any:
    """Terms as one expression."""
    return sum(term.factor * term.variable for term in terms)
