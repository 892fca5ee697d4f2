"""What a menu would call a dinner."""

import re
from collections.abc import Sequence

from calmlarder.and_list import and_list
from calmlarder.kitchen.filling import Filling, one_of_each, short_name
from calmlarder.patterns.pattern import REFERENCE, Pattern, slot_names

_NAMES = 2  # of one slot
_NAMES_IN_ALL = 3
_CRUMB = 0.4  # of a portion for one person, or of the largest thing in its slot: less is not named. Ours
_TRACE = 0.25  # of a portion: less is not named beside something else, though nothing else fills its slot. Ours
_QUALIFIERS = re.compile(
    r" without .*$| with (?:garlic|onion|shallot|wheat).*$| and other .*$| of tinned .*$| of soya protein$| \(.*\)$"
    r"| of beef alone$| in tomato sauce$| in juice$| in syrup$| flour$"
    r"| bulbs?$| and potato shapes$|(?<=tofu) pieces$"
)
_FIRST_WORDS = re.compile(
    r"^(?:young|white wheat|plain soya|unhulled|button|lactose-free|gluten-free|white(?= rice)|raw|rolled|processed"
    r"|hot(?= smoked)) "
)

# `Stir-fried eggs with`, where the dish has no base.
_LED_TO_NOTHING = re.compile(r" (?:with|and|of|on|over|in)\s*$")


def title_of(pattern: Pattern, fillings: Sequence[Filling], people: int = 1) -> str:
    """The dish with the names of its main things: at most two names a slot, the largest first, and no crumbs."""
    things = one_of_each(fillings)

    def names(found: re.Match[str]) -> str:
        chosen: dict[str, bool] = {}  # and whether it is a protein, which a title does not hide
        traces: set[str] = set()
        for name in slot_names(found):
            here = (one for one in things if one.slot == name and one.food.kind != "paste")
            inside = sorted(here, key=lambda one: -_portions(one))
            for one in inside[:_NAMES]:
                if one is inside[0] or not _crumb(one, inside[0], people):
                    chosen.setdefault(_menu_name(one), pattern.slots[name].role == "protein")
                    if _portions(one) < _TRACE * people:
                        traces.add(_menu_name(one))
        if traces < set(chosen):
            chosen = {name: protein for name, protein in chosen.items() if name not in traces}
        while len(chosen) > _NAMES_IN_ALL:
            last = [name for name, protein in chosen.items() if not protein] or list(chosen)
            del chosen[last[-1]]
        return and_list(list(chosen))

    here = {one.food.id for one in things}
    words = next((words for food, words in pattern.titles.items() if food in here), pattern.title)
    title = _LED_TO_NOTHING.sub("", REFERENCE.sub(names, words)).strip()
    return title[:1].upper() + title[1:]


def _portions(filling: Filling) -> float:
    return filling.grams / float(filling.food.portion_g)


def _crumb(filling: Filling, largest: Filling, people: int) -> bool:
    return _portions(filling) < _CRUMB * max(people, _portions(largest))


def _menu_name(filling: Filling) -> str:
    return _FIRST_WORDS.sub("", _QUALIFIERS.sub("", short_name(filling.food.name)))
