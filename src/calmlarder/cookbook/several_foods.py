"""A line of a recipe that names several foods, all of which are meant, with one amount or one each."""

import re
from collections.abc import Callable

from calmlarder.cookbook.either import OR
from calmlarder.cookbook.forms import in_one_form, powders
from calmlarder.cookbook.line_amount import Found
from calmlarder.cookbook.names import IngredientNames, Part
from calmlarder.cookbook.recipe import IngredientRead, shared_out, together
from calmlarder.cookbook.wording import names_nothing, without_prep, without_tail
from calmlarder.matching.names.foods import UNKNOWN
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_AND = re.compile(r"\s*,?\s+(?:and|&|\+)\s+|\s*,\s*and\s+")
_SPOONS = frozenset({"tsp", "tbsp", "pinch", "dash", "splash", "drizzle", "squeeze", "knob", "ml"})
_NEVER_SPOONED = frozenset({"bread", "wrap", "pasta", "noodle", "rice", "potato", "meat", "poultry", "fish"})
_BY_PIECES = frozenset({"bread", "wrap"})
_NO_AMOUNT = {"grams_low": None, "grams": None, "grams_high": None, "weighed": False}

# How a part of a line is told with its amount: what the line shows, its amount, the part, what else would do, optional.
Tell = Callable[[str, Found, Part, tuple[str, ...], bool], IngredientRead]


class SeveralFoods:
    """Reads a line as several foods, where it is one."""

    def __init__(self, names: IngredientNames, tables: Tables, tell: Tell) -> None:
        self._names = names
        self._tables = tables
        self._told = tell

    def read(self, shown: str, found: Found, rest: str, told: frozenset[str], optional: bool) -> IngredientRead | None:
        """A line that names several foods, all meant (`salt and pepper`)."""
        head = without_tail(rest)
        pieces = [piece for piece in re.split(r"\s*,\s*(?:and\s+)?|" + _AND.pattern, head) if piece]
        first = _AND.split(head)
        listed = None if OR.search(head) else self._listed(shown, found, pieces, told, optional)
        if listed is not None:
            return listed
        if len(first) < 2 or OR.search(head) or self._names.match(head, told).outcome == "matched":
            return None
        whole = [self._names.part(piece, told) for piece in pieces]
        if any(part.match is UNKNOWN or not part.match.candidates for part in whole):
            pieces = first
            whole = [self._names.part(piece, told) for piece in pieces]
        if not all(part.match.candidates for part in whole):
            # `chopped and seeded tomatoes` is one food; two foods of which one is not known are not read.
            named = [part for part in whole if part.match.candidates]
            if "," in head.split(first[0])[0] + first[0] and named == [self._names.part(head.split(",")[0], told)]:
                return None  # what stands behind the comma is what is done to it
            doing = all(not without_prep(piece) for piece, part in zip(pieces, whole, strict=True) if part not in named)
            if named and not doing:
                return IngredientRead(text=shown, outcome="unknown", optional=optional)
            return None
        whole = in_one_form(pieces, whole, told, self._names)
        whole = powders(pieces, whole, found, told, self._names)
        reads = [self._told(shown, found, part, (), optional) for part in whole]
        if "each" not in told and found.main is not None:
            reads = self._of_one_amount(found, reads)
        worst = next((read for read in reads if read.outcome != "read"), None)
        return worst or together(reads)

    def _of_one_amount(self, found: Found, reads: list[IngredientRead]) -> list[IngredientRead]:
        """One amount over several foods; a spoon is of what is spooned (`4 tbsp cream and crusty bread`)."""
        whole = [food is not None and food.kind in _NEVER_SPOONED for food in map(self._food_of, reads)]
        kinds = [food.kind if food is not None else "" for food in map(self._food_of, reads)]
        if found.main is not None and found.main.unit is None and kinds[0] in _BY_PIECES and kinds.count(kinds[0]) == 1:
            bare_ones = [read.model_copy(update=_NO_AMOUNT) for read in reads[1:]]
            return [reads[0], *bare_ones]  # `4 pittas and raita`: nobody counts raita
        spoon = found.main is not None and found.main.unit in _SPOONS and not all(whole)
        shared = len(reads) - sum(whole) if spoon else len(reads)
        return [
            read.model_copy(update=_NO_AMOUNT)
            if spoon and is_whole
            else shared_out(read, shared)
            if shared > 1
            else read
            for read, is_whole in zip(reads, whole, strict=True)
        ]

    def _food_of(self, read: IngredientRead) -> Food | None:
        return self._tables.food_by_id.get(read.food or "")

    def _listed(
        self, shown: str, found: Found, pieces: list[str], told: frozenset[str], optional: bool
    ) -> IngredientRead | None:
        """A list with commas (`1 tsp each salt, cumin`, `salt, pepper, oil`): each piece is a food, all are meant.

        One amount without `each` is not shared out: then the line is not of this kind.
        """
        pieces = [piece for piece in pieces if without_prep(piece) and not names_nothing(piece)]
        if len(pieces) < 2 or (found.main is not None and "each" not in told):
            return None
        parts = in_one_form(pieces, [self._names.part(piece, told) for piece in pieces], told, self._names)
        if not all(part.match.score >= 100 for part in parts):
            return None
        foods = [part.match.food.id for part in parts if part.match.food is not None]
        if len(set(foods)) < len(foods):
            return None
        reads = [self._told(shown, found, part, (), optional) for part in parts]
        worst = next((read for read in reads if read.outcome != "read"), None)
        return worst or together(reads)
