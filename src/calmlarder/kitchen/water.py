"""How much water goes in: a pattern says it for one person, a cook reads what all of them need."""

import re

from calmlarder.patterns.pattern import Pattern

_EACH = re.compile(r"\b(\d+) (ml|tbsp) of ((?:boiling |hot )?water) a person\b")
_MOST_SPOONS = 6  # of more than so many nobody keeps count
_ML_OF_A_SPOON = 15  # metric tablespoon
_ML_OF_A_LITRE = 1000


def with_water(pattern: Pattern, people: int) -> Pattern:
    """The pattern with its water for everybody."""

    def for_all(found: re.Match[str]) -> str:
        amount = int(found[1]) * people
        if found[2] == "tbsp" and amount > _MOST_SPOONS:
            return f"{amount * _ML_OF_A_SPOON} ml of {found[3]}"
        if amount >= _ML_OF_A_LITRE:
            return f"{amount / _ML_OF_A_LITRE:g} litres of {found[3]}"
        return f"{amount} {found[2]} of {found[3]}"

    steps = tuple(step.model_copy(update={"words": _EACH.sub(for_all, step.words)}) for step in pattern.steps)
    return pattern.model_copy(update={"steps": steps})
