"""A piece of a dinner's work, what it holds meanwhile, and what is known of the dish while its work is written."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import Final, NamedTuple

from calmlarder.kitchen.filling import Filling, one_of_each
from calmlarder.kitchen.granted_oil import granted_fats, oil_teaspoons, oil_teaspoons_in
from calmlarder.kitchen.heat import with_heat
from calmlarder.kitchen.late import browned_first, held_back
from calmlarder.kitchen.rearranged import rearranged
from calmlarder.kitchen.shared_pot import thawed_folded_in, with_shared_pot
from calmlarder.kitchen.shortest_schedule import Task
from calmlarder.kitchen.water import with_water
from calmlarder.kitchen.wording import Mention
from calmlarder.patterns.pattern import HEATED, TIMED_ROLES, Pattern, Place, Step
from calmlarder.tables.household import COAT, PINCH
from calmlarder.tables.vocabulary import Role

COOK, RING, OVEN, MICROWAVE, PAN = "cook", "ring", "oven", "microwave", "pan"
TOASTER: Final = "toaster"
WATER = "water "  # begins the name of the stage of a pot of water that comes to the boil
HOLDS: dict[Place, dict[str, int]] = {
    "apart": {RING: 1}, "pan": {RING: 1, PAN: 1}, "pot": {RING: 1}, "oven": {OVEN: 1}, "dish": {OVEN: 1},
    "microwave": {MICROWAVE: 1}, "blender": {COOK: 1}, "bowl": {COOK: 1}, TOASTER: {}, "plate": {COOK: 1},
}  # fmt: skip


class Work(NamedTuple):
    """A piece of work: its task, the stage of the dish it belongs to, how it is told, and what comes in with it.

    `vessel` is what it happens in on the heat, empty for work by hand; `alone` is the sentence for where nothing of its
    stage stands before it, if `said` would not do there.
    """

    task: Task
    stage: str
    said: str
    line: str
    adds: tuple[str, ...] = ()  # ids of foods
    vessel: str = ""
    alone: str = ""


class Told(NamedTuple):
    """The same as a sentence and as a line of the timeline."""

    said: str
    line: str


class Dish(NamedTuple):
    """A pattern as it is cooked tonight, what fills it, and what a cook knows of it before the first step."""

    pattern: Pattern
    fillings: tuple[Filling, ...]
    granted: tuple[str, ...]  # slots of fat for which oil is taken for granted
    oil: str
    people: int
    held: dict[int, tuple[Filling, ...]]  # what would burn, by the step whose last minutes it joins
    browned_at: int | None  # the step before which raw meat that will simmer is browned
    browned: frozenset[str]

    def role(self, one: Filling) -> Role:
        """What a filling is in the dish."""
        return self.pattern.slots[one.slot].role

    def is_timed(self, one: Filling) -> bool:
        """Whether its minutes are those of a main thing, and not of what cooks on with others."""
        return self.role(one) in TIMED_ROLES

    def named_by(self, step: Step) -> list[Filling]:
        """What a step names, in the order of the fillings."""
        return [one for one in self.fillings if one.slot in step.slots]

    def oil_in(self, step: Step) -> str:
        """What is said of oil that is taken for granted in a step."""
        return f"{oil_teaspoons_in(step, self.pattern, self.fillings, self.people)} tsp oil"

    def has_fat(self, step: Step) -> bool:
        """Whether fat is named by a step, of the larder or taken for granted."""
        names = [name for name in step.slots if self.pattern.slots[name].role == "fat"]
        return any(name in self.granted or any(one.slot == name for one in self.fillings) for name in names)


def dish_of(pattern: Pattern, fillings: Sequence[Filling], people: int) -> Dish:
    """The dish of a pattern with these fillings; two lots of one food in one slot are one thing."""
    there = one_of_each(fillings)
    pattern, shared_at, shared = _as_cooked(pattern, there, people)
    browned_at, browned = browned_first(pattern, there)
    oil = f"{oil_teaspoons(pattern, there, people)} tsp oil"
    held = dict(held_back(pattern, there))
    if shared_at is not None:
        held[shared_at] = shared
    late = {one.key for ones in held.values() for one in ones}
    pattern = with_heat(pattern, [one for one in there if one.key not in late])
    return Dish(pattern, there, granted_fats(pattern, there), oil, people, held, browned_at, browned)


def oil_taken(pattern: Pattern, fillings: Sequence[Filling], people: int) -> int:
    """Teaspoons of oil that are taken for granted, in the order of the dish: what fries last gives its fat too late."""
    there = one_of_each(fillings)
    cooked, _, _ = _as_cooked(pattern, there, people)
    granted = granted_fats(cooked, there)
    steps = [next(step for step in cooked.steps if name in step.slots) for name in granted]
    return sum(oil_teaspoons_in(step, cooked, there, people) for step in steps)


def _as_cooked(
    pattern: Pattern, there: tuple[Filling, ...], people: int
) -> tuple[Pattern, int | None, tuple[Filling, ...]]:
    """The pattern in the order of these fillings, with the step whose pot others share, and which."""
    return with_shared_pot(thawed_folded_in(rearranged(with_water(pattern, there, people), there), there), there)


@dataclass
class Progress:
    """How far the writing has come; it changes from step to step."""

    done: list[Work] = field(default_factory=list)
    came_in: dict[str, list[str]] = field(default_factory=dict)  # tasks after which a food is where it is wanted
    heated: set[str] = field(default_factory=set)
    last_at: dict[str, str] = field(default_factory=dict)  # the last task at each place
    waiting: set[str] = field(default_factory=set)  # what is held back for a later step
    coloured: set[str] = field(default_factory=set)  # what was browned and comes in a second time
    rest_of: str = ""  # the fat that is left for what fries after what was lifted out
    rest_melts: bool = False

    def new(self, dish: Dish, step: Step) -> list[Filling]:
        """What comes in with a step, the slowest first within a slot."""
        new = [one for one in dish.named_by(step) if one.key not in {*self.came_in, *self.waiting}]
        return sorted(new, key=lambda one: (step.slots.index(one.slot), -one.minutes))

    def cooked_at(self, dish: Dish, step: Step) -> list[Filling]:
        """What is put on the heat for the first time at a step."""
        if step.place not in HEATED:
            return []
        here = [one for one in dish.named_by(step) if one.key not in self.heated | self.waiting]
        return [one for one in here if dish.pattern.slots[one.slot].method != "raw"]

    def mention(self, new: Iterable[Filling]) -> Mention:
        """How a sentence names things: what is new with its amount, the rest as `the tofu`."""
        fresh = [one for one in new if one.key not in self.coloured]

        def tell(one: Filling) -> str:
            if one not in fresh:
                return f"the {one.short}"
            if one.household in {PINCH, COAT}:
                return f"{one.household} of {one.food.name}"
            if one.weighed:
                return f"the {one.short}"
            if one.counted:
                return one.counted
            return f"all {one.grams} g {one.food.name}" if one.whole else f"{one.grams} g {one.food.name}"

        return tell
