"""Whether garlic is what a dish is made of (toum, garlic soup, cloves stewed in oil): no infused oil stands for it.

And whether a pulse is the soup that is named for it: a pea soup of quinoa is none.
"""

from collections.abc import Sequence
from decimal import Decimal

from calmlarder.adapt.counted import Counted
from calmlarder.adapt.told import Told

_GARLIC = "garlic"
_LEAST_G = 5  # a serving, two cloves: below it seasons whatever the title says; ours
_LEAST_PULSE_G = 25  # dry, a serving: less is something in a soup of other things; ours
_GIVES_NO_BODY = frozenset({"fat", "liquid", "acid", "spice"})


def is_made_of_garlic(lines: Sequence[Counted], serves: int, told: Told) -> bool:
    """Whether garlic outweighs all other solid things of a dish, or all those that its title names beside it."""
    grams: dict[str, Decimal] = {}
    for line in lines:
        serves_beside = line.read.text in told.to_serve and line.food.id != _GARLIC
        if line.amount is not None and line.food.roles[0] not in _GIVES_NO_BODY and not serves_beside:
            grams[line.food.id] = grams.get(line.food.id, Decimal(0)) + line.amount.grams
    garlic = grams.pop(_GARLIC, Decimal(0))
    if garlic < _LEAST_G * serves:
        return False
    named = [much for food, much in grams.items() if told.is_titled(food)]
    return garlic > max(named if told.is_titled(_GARLIC) else grams.values(), default=Decimal(0))


def is_the_soup(line: Counted, serves: int, told: Told) -> bool:
    """Whether a soup is named for a dry pulse that is boiled to its body."""
    boiled_down = line.food.kind == "pulse" and line.food.state == "dry" and line.amount is not None
    if not (boiled_down and told.soup and told.is_titled(line.food.id)) or line.amount is None:
        return False
    return line.amount.grams >= _LEAST_PULSE_G * serves
