"""Whether garlic is what a dish is made of (toum, garlic soup, cloves stewed in oil): no infused oil stands for it.

Whether onions are (onion soup, onion marmalade): so many leek greens are another dish. And whether a pulse is the soup
that is named for it: a pea soup of quinoa is none.
"""

from collections.abc import Sequence
from decimal import Decimal

from calmlarder.adapt.counted import Counted
from calmlarder.adapt.told import Told

_GARLIC = "garlic"
_LEAST_G = 5  # a serving, two cloves: below it seasons whatever the title says; ours
_DISHES = ("hummus", "mash", "pizza", "lasagne", "risotto", "meatballs", "curry-", "stew-", "pasta-in")  # of their own
_ONIONS = ("onion-", "shallot")  # how the ids of raw bulbs begin
_LEAST_ONION_G = 40  # a serving, half an onion: below it seasons whatever the title says; ours
_LEAST_PULSE_G = 25  # dry, a serving: less is something in a soup of other things; ours
_GIVES_NO_BODY = frozenset({"fat", "liquid", "acid", "spice"})


def bulbs_made_of(lines: Sequence[Counted], serves: int, told: Told) -> frozenset[str]:
    """The garlic or the onions that a dish is made of, by their ids; of most dishes none."""
    grams: dict[str, Decimal] = {}
    for line in lines:
        serves_beside = line.read.text in told.to_serve and line.food.id != _GARLIC
        if line.amount is not None and line.food.roles[0] not in _GIVES_NO_BODY and not serves_beside:
            grams[line.food.id] = grams.get(line.food.id, Decimal(0)) + line.amount.grams
    onions = frozenset(food for food in grams if food.startswith(_ONIONS))
    if any(told.is_titled(food) for food in onions):
        much = sum((grams[food] for food in onions), Decimal(0))
        if much >= _LEAST_ONION_G * serves and 2 * much > sum(grams.values(), Decimal(0)):
            return onions
    return frozenset({_GARLIC}) if _is_of_garlic(grams, serves, told) else frozenset()


def _is_of_garlic(grams: dict[str, Decimal], serves: int, told: Told) -> bool:
    """Whether garlic outweighs all other solid things of a dish, or all those that its title names beside it."""
    rest = {food: much for food, much in grams.items() if food != _GARLIC}
    garlic = grams.get(_GARLIC, Decimal(0))
    if garlic < _LEAST_G * serves:
        return False
    named = [much for food, much in rest.items() if told.is_titled(food)]
    is_a_dish = any(food not in grams and food.startswith(_DISHES) for food in told.titled)  # hummus with garlic
    alone = told.is_titled(_GARLIC) and not is_a_dish
    return garlic > max(named if alone else rest.values(), default=Decimal(0))


def is_the_soup(line: Counted, serves: int, told: Told) -> bool:
    """Whether a soup is named for a dry pulse that is boiled to its body."""
    boiled_down = line.food.kind == "pulse" and line.food.state == "dry" and line.amount is not None
    if not (boiled_down and told.soup and told.is_titled(line.food.id)) or line.amount is None:
        return False
    return line.amount.grams >= _LEAST_PULSE_G * serves
