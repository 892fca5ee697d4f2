"""The slowest food sets the time, thawed before it is heated, and what goes through one pan in turn takes its turns."""

from collections.abc import Collection, Iterable

from calmlarder.compose.problem import SERVING_MINUTES, Option, PatternProblem
from calmlarder.compose.variables import DishVariables
from calmlarder.patterns.pattern import HEATED, Place

_BRIEF = frozenset({"aromatic", "spice", "topping"})  # they cook on with what follows


class SlowestFood:
    """The cooking time is at least that of every food used, and of the steps at one place one after the other."""

    def post(self, draft: DishVariables) -> None:
        """Bound the time from below; the wish to be quick pulls it down."""
        for number, option in enumerate(draft.problem.options):
            if option.minutes or option.before:
                draft.model.add(draft.time >= (option.before + option.minutes) * draft.used[number])
        for steps in turns(draft.problem):
            lasting = []
            for numbers in steps:
                longest = max(draft.problem.options[number].minutes for number in numbers)
                minutes = draft.model.new_int_var(0, longest, "")
                for number in numbers:
                    draft.model.add(minutes >= draft.problem.options[number].minutes * draft.used[number])
                lasting.append(minutes)
            draft.model.add(draft.time >= sum(lasting))
        if draft.problem.wanted.minutes is not None:
            draft.model.add(draft.time + SERVING_MINUTES <= draft.problem.wanted.minutes)


def least_minutes(problem: PatternProblem, used: Collection[Option]) -> int:
    """Minutes that the model knows a dinner of these options to take, without serving."""
    there = {number for number, option in enumerate(problem.options) if option in used}

    def longest(numbers: Iterable[int]) -> int:
        return max((problem.options[number].minutes for number in numbers if number in there), default=0)

    thawed = (problem.options[number].before + problem.options[number].minutes for number in there)
    return max([0, *thawed, *(sum(map(longest, steps)) for steps in turns(problem))])


def turns(problem: PatternProblem) -> list[list[list[int]]]:
    """For each place where several steps follow each other: the options that each step puts on the heat."""
    found: dict[Place, list[list[int]]] = {}
    hot: set[str] = set()
    for step in problem.pattern.steps:
        if step.place not in HEATED:
            continue
        slots = {n for n in step.slots if problem.pattern.slots[n].method != "raw"} - hot
        hot |= slots
        if step.place == "apart":
            continue
        slots = {n for n in slots if problem.pattern.slots[n].role not in _BRIEF}
        numbers = [number for number, option in enumerate(problem.options) if option.slot in slots and option.minutes]
        if numbers:
            found.setdefault("oven" if step.place == "dish" else step.place, []).append(numbers)
    return [steps for steps in found.values() if len(steps) > 1]
