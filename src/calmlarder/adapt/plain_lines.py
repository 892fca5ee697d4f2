"""Ingredient lines read as larder lines are, as long as there is no reader of their own."""

from datetime import date

from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.larder.reading import LarderReader
from calmlarder.matching.amounts import take_amount
from calmlarder.matching.words import plain
from calmlarder.tables.book import Tables

_ANY_DAY = date(2000, 1, 1)  # a recipe's line has no dates


class PlainLineReader:
    """Reads what stands in front of the first comma; what it does not understand stays unknown."""

    def __init__(self, tables: Tables) -> None:
        self._reader = LarderReader(tables, _ANY_DAY)

    def read(self, text: str) -> IngredientRead:
        """One line; never raises."""
        said = text.partition(",")[0]
        reading = self._reader.read(said, "the recipe")
        if reading is None or reading.problem is not None:
            return IngredientRead(text=text, outcome="unknown")
        if reading.lot is None:
            ask = reading.match.outcome == "ask"
            names = tuple(one.name for one in reading.candidates) if ask else ()
            return IngredientRead(text=text, outcome="ask" if ask else "unknown", choices=names)
        lot = reading.lot
        return IngredientRead(
            text=text, outcome="read", food=lot.food, grams_low=lot.grams_low, grams=lot.grams,
            grams_high=lot.grams_high, weighed=take_amount(plain(said))[0].how == "weighed",
            optional="optional" in text.casefold(),
        )  # fmt: skip
