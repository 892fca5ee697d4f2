"""Whether most of a made food hold garlic or onion, by the note of its row."""

import re

from calmlarder.tables.rows import Food

_MOST_HOLD = re.compile(r"\bmost (?:\w+ )?hold ([^:;]*)|\bsome (?:\w+ )?hold no ([^:;]*)")
_ALLIUM = re.compile(r"\b(?:garlic|onion)")


def most_hold(food: Food) -> frozenset[str]:
    """Which of garlic and onion its note says that most of it hold, or only some hold none of.

    What its name denies (`taco seasoning without onion or garlic`) is another food than most.
    """
    denied = frozenset(_ALLIUM.findall(food.name.partition(" without ")[2]))
    noted = " ".join(one for found in _MOST_HOLD.findall(food.note or "") for one in found)
    return frozenset(_ALLIUM.findall(noted)) - denied
