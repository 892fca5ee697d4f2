"""What a bracket says to be in a made thing beyond what the tables count in it: `quiche (salmon)`, `sandwich (egg)`."""

import re

from calmlarder.tables.allergens import said
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import ALLERGENS, Allergen

_IN_BRACKETS = re.compile(r"\(([^()]{2,80})\)")
# Words of milk and wheat mean something else too often (coconut milk, peanut butter, rice flour), and what is made
# holds them by the tables anyway.
_CLEAR = frozenset(ALLERGENS) - {"milk", "gluten"}


def said_to_hold(line: str, food: Food) -> tuple[Allergen, ...]:
    """Allergens that a line's brackets name and the food itself does not hold; of plain foods none."""
    if "(" not in line or food.kind not in {"sauce", "bread", "boxed"} or food.state == "raw":
        return ()
    named = {one for words in _IN_BRACKETS.findall(line) for one in said(words, {})}
    return tuple(one for one in ALLERGENS if one in named & _CLEAR and one not in food.allergens)
