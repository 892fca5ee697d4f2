"""Allergens to tick, as many as hold."""

from collections.abc import Iterable

from calmlarder.tables.vocabulary import ALLERGENS, Allergen, allergen_words
from calmlarder.tui.widgets.pick import Pick

TREE_NUTS = "tree nuts: almonds, walnuts and others; not peanuts"
TAKES = f"arrows move, Space or Enter ticks, Tab goes on; {TREE_NUTS}"


class AllergenPick(Pick):
    """The words that are shown are those of `allergen_words`, what is kept are the allergens."""

    def __init__(self, avoid: Iterable[Allergen], id: str) -> None:
        super().__init__(tuple(map(allergen_words, ALLERGENS)), tuple(map(allergen_words, avoid)), several=True, id=id)

    @property
    def avoided(self) -> tuple[Allergen, ...]:
        """What is ticked, in the order of the law's list."""
        return tuple(one for one in ALLERGENS if allergen_words(one) in self.chosen)
