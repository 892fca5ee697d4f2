"""Use first what goes off first."""

from calmlarder.compose.problem import PORTION, Option, PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import POINT


class Rescue:
    """Points for each urgent portion used, and some more for using a lot up."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """Portions times urgency, and the finish."""
        terms: list[Term] = []
        for number, option in enumerate(draft.problem.options):
            if option.points:
                terms.append((_unit_points(option), draft.units[number]))
            finished = draft.finished[number]
            if finished is not None:
                terms.append((finish_points(option), finished))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """The lesser of two: every slot filled with its most urgent lots, and every lot used to its most."""
        by_slot = sum(_most_in_slot(problem, name) for name in problem.pattern.slots)
        best: dict[tuple[int, int], int] = {}
        for option in problem.options:
            worth = _unit_points(option) * option.most + (finish_points(option) if option.whole else 0)
            best[option.key] = max(best.get(option.key, 0), worth)
        return min(by_slot, sum(best.values()))


def _most_in_slot(problem: PatternProblem, name: str) -> int:
    """Points of a slot filled greedily by urgency, as if its lots were free for it."""
    slot = problem.pattern.slots[name]
    options = sorted((option for _, option in problem.in_slot(name) if option.points), key=lambda o: -o.points)
    room = problem.most_in(name)
    total = 0
    for option in options:
        use = min(room, option.most * option.portion_units)
        total += _unit_points(option) * -(-use // option.portion_units)
        room -= use
    finishes = sorted((finish_points(option) for option in options if option.whole), reverse=True)
    return total + sum(finishes[: slot.items[1]])


def _unit_points(option: Option) -> int:
    return option.points * option.portion_units * (POINT // PORTION)


def finish_points(option: Option) -> int:
    """For using the lot up."""
    return option.finish * POINT
