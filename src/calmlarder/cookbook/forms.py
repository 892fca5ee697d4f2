"""The form that one word of a line gives to several foods: ground cumin and coriander, onion and garlic powder.

So does the animal: chicken thighs and drumsticks.
"""

import re

from calmlarder.cookbook.line_amount import Found
from calmlarder.cookbook.names import IngredientNames, Part
from calmlarder.cookbook.wording import without_prep
from calmlarder.matching.names.foods import Match

_WHOLE = 100.0  # the score of a name in full
_FORM = re.compile(r"(?:ground|dried|chicken|turkey|duck|goose|lamb|pork|beef|veal) ")
_FORMED = frozenset({"spice", "herb", "poultry", "meat"})


def in_one_form(pieces: list[str], whole: list[Part], told: frozenset[str], names: IngredientNames) -> list[Part]:
    """`1 tsp each ground cumin and coriander`: the word in front is of all that are known so."""
    form = _FORM.match(pieces[0])
    if form is None:
        return whole
    parts = whole[:1]
    for piece, part in zip(pieces[1:], whole[1:], strict=True):
        formed = names.part(f"{form[0]}{piece}", told)
        known = formed.match.food is not None and formed.match.food.kind in _FORMED
        parts.append(formed if known and formed.match.score >= _WHOLE else part)
    return parts


def powders(
    pieces: list[str], whole: list[Part], found: Found, told: frozenset[str], names: IngredientNames
) -> list[Part]:
    """`onion and garlic powder`: spoons of two powders; in any other measure nobody but the cook can tell."""
    end = without_prep(pieces[-1]).split()[-1:]
    spooned = found.main is not None and found.main.unit in {"tsp", "tbsp", "pinch"}
    parts = []
    for piece, part in zip(pieces[:-1], whole[:-1], strict=True):
        joined = names.part(f"{without_prep(piece)} {' '.join(end)}", told)
        if part.match.food is None or part.match.food.kind != "allium" or joined.match.score < 100:
            parts.append(part)
        elif spooned and end == ["powder"]:
            parts.append(joined)
        else:
            both = (*part.match.candidates, *joined.match.candidates)
            parts.append(Part(Match("ask", None, None, 100.0, both), None))
    return [*parts, whole[-1]]
