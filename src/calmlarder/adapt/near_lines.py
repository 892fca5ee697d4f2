"""Of several lines with the same food the one that a step means: that whose neighbours in the list it names, too."""

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import accumulate
from typing import NamedTuple

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.model import Change
from calmlarder.adapt.names import Names, spans_in

_NEAR = 3  # lines above and below, where no headings part the list: ours
_SEVERAL = 2


class Near(NamedTuple):
    """A line that changes, and the foods of the lines about it that stand nowhere else in the list."""

    change: Change
    beside: frozenset[str]


def lines_with_neighbours(parts: Sequence[Part], each: Mapping[str, Sequence[Change]]) -> dict[str, tuple[Near, ...]]:
    """By food its changed lines, where there are several."""
    under = list(accumulate(part.read.outcome == "heading" for part in parts))
    parted = any(under)
    groups: dict[str, set[int]] = {}
    for place, part in enumerate(parts):
        groups.setdefault(part.read.food or "", set()).add(under[place] if parted else part.line)
    alone = {food for food, lines in groups.items() if food and len(lines) == 1}
    return {
        food: tuple(Near(one, _beside(one.place or 0, parts, under if parted else None) & alone) for one in changes)
        for food, changes in each.items()
        if len(changes) >= _SEVERAL
    }


def _beside(place: int, parts: Sequence[Part], under: Sequence[int] | None) -> frozenset[str]:
    near = range(len(parts))
    if under is not None:
        own = under[place]
        near_by = (one for one in near if under[one] == own)
    else:
        line = parts[place].line
        near_by = (one for one in near if abs(parts[one].line - line) <= _NEAR)
    return frozenset(parts[one].read.food or "" for one in near_by if one != place)


def meant_lines(texts: Sequence[str], near: Mapping[str, Sequence[Near]], names: Names) -> dict[str, Change]:
    """By food the line that a sentence means, else its step: `texts` go from the nearest to the widest."""
    found: dict[str, Change] = {}
    for text in texts if near else ():
        named = {food for _, _, meant in spans_in(text, names) for food in meant}
        for food, lines in near.items():
            scores = Counter({number: len(one.beside & named) for number, one in enumerate(lines)})
            (best, most), (_, next_most) = scores.most_common(2)
            if food not in found and most > next_most:
                found[food] = lines[best].change
    return found
