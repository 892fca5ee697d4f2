"""How long a step takes with what is put on the heat there. Minutes are common practice, no source."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import Filling
from calmlarder.kitchen.joining import EGG_MINUTES, before_eggs, loose_egg, minutes_in
from calmlarder.kitchen.late import softens
from calmlarder.kitchen.piece import Dish
from calmlarder.kitchen.two_pans import is_for_a_pot, minutes_of_batches
from calmlarder.patterns.pattern import Step

_BY_HAND = 1  # minutes of a step in bowl, blender or on the plate that says no others
_FOR_A_MINUTE = "bubble for a minute"
_BROWNS = re.compile(r"\b[Bb]rown \{|, and brown \{|\band fry (?:\{protein\} )?until (?:crumbly and )?browned\b")


def minutes_of_step(dish: Dish, step: Step, cooked: Sequence[Filling]) -> int:
    """Whole minutes of what is put on the heat with a step, or of its work by hand."""
    quick = {"aromatic", "spice", "topping"}  # they cook on with what follows
    eggs = [min(one.minutes, EGG_MINUTES) for one in cooked if loose_egg(dish, one)]
    slow = [minutes_in(dish, one) for one in cooked if dish.role(one) not in quick and not loose_egg(dish, one)]
    longest = max([*slow, *(one + before_eggs(dish, step, slow) for one in eggs)], default=0)
    sweats = "smells good" in step.words and not any(dish.role(one) == "spice" for one in cooked)
    fries = step.place == "pan" or "half a minute" in step.words or sweats
    if fries and not any(slow) and not eggs:  # leek greens fry until soft, not for a moment
        longest = max([longest, *(one.minutes for one in cooked if softens(one, dish.pattern))])
    in_a_pot = step.place == "pot" or (step.place == "pan" and is_for_a_pot(dish.pattern, dish.fillings))
    if in_a_pot and _BROWNS.search(step.words):
        longest = minutes_of_batches(longest, cooked)
    return max(longest, step.minutes if step.minutes is not None else _BY_HAND)


def as_long_as_it_takes(words: str, minutes: int) -> str:
    """`bubble for 8 minutes`, where what is stirred in wants more than the minute of its sentence."""
    return words.replace(_FOR_A_MINUTE, f"bubble for {minutes} minutes") if minutes > _BY_HAND else words
