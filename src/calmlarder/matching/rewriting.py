"""Rules that write a phrase another way, one behind the other, as this room's modules list them."""

from collections.abc import Iterable
from dataclasses import dataclass

from calmlarder.matching.late_patterns import LatePattern, Replacement


@dataclass(frozen=True, slots=True)
class Rewrite:
    """What fits an expression and how it is put instead: only in a text `where` one fits, and `unless` one does."""

    fits: LatePattern
    put: Replacement
    where: LatePattern | None = None
    unless: LatePattern | None = None

    def holds_in(self, text: str) -> bool:
        """Whether the rule may change a text."""
        return (self.where is None or self.where.search(text) is not None) and (
            self.unless is None or self.unless.search(text) is None
        )


def rewritten(text: str, rules: Iterable[Rewrite]) -> str:
    """A plain text after each of the rules, in their order."""
    for rule in rules:
        if rule.fits.may_fit(text) and rule.holds_in(text):
            text = rule.fits.sub(rule.put, text)
    return text


def put_in_turn(text: str, pairs: Iterable[tuple[LatePattern, Replacement]]) -> str:
    """A plain text after each pair of an expression and what is put for it, in their order."""
    for fits, put in pairs:
        text = fits.sub(put, text)
    return text
