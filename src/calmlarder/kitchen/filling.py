"""A food in a slot of a dish, and how it is called."""

import re
from collections.abc import Sequence
from typing import Literal, NamedTuple

from calmlarder.tables.rows import Food

_STATE_WORDS = re.compile(
    r"^(?:cooked|boiled|dry|canned|fresh|frozen|dried|ground|fried|firm|plain|raw|steamed|roast|baked|microwaved) "
)
ALREADY_COOKED = frozenset({"cooked", "boiled", "roasted"})


class Filling(NamedTuple):
    """A food in a slot; `grams` of the whole dish.

    `done` is the sign by which a cook sees that it is cooked through, empty where none is asked for; `whole` says
    that a pack whose weight is known goes in whole, so that nobody need weigh it.
    """

    slot: str
    food: Food
    grams: int
    how: Literal["weigh", "eye", "staple", "box"]
    household: str | None
    prep: str
    minutes: int
    done: str = ""
    whole: bool = False

    @property
    def key(self) -> str:
        """One piece of work: a food in its slot, from however many packs."""
        return f"{self.slot} {self.food.id}"

    @property
    def short(self) -> str:
        """Its name without its state, for where it was named before."""
        return short_name(self.food.name)

    @property
    def weighed(self) -> bool:
        """Whether it goes on the scale."""
        return self.how == "weigh" and not self.whole


def one_of_each(fillings: Sequence[Filling]) -> tuple[Filling, ...]:
    """Two lots of one food in one slot are one thing to the cook: cut, cooked and named once, grams added up."""
    found: dict[str, Filling] = {}
    for filling in fillings:
        other = found.get(filling.key)
        if other is None:
            found[filling.key] = filling
            continue
        found[filling.key] = filling._replace(
            grams=other.grams + filling.grams,
            household=None,
            how="weigh" if "weigh" in (filling.how, other.how) else filling.how,
            whole=other.whole and filling.whole,
        )
    return tuple(found.values())


def short_name(name: str) -> str:
    """The name of a food without its state: `cooked white rice` is `white rice`."""
    return _STATE_WORDS.sub("", name).removesuffix(" (boxed)")


def listed(names: Sequence[str]) -> str:
    """`a, b and c`."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} and {names[-1]}"
