"""Use first what goes off first."""

from calmlarder.compose.draft import Draft, Term
from calmlarder.compose.problem import PORTION, Option, PatternProblem
from calmlarder.compose.weights import FINISH_SHARE, POINT


class Rescue:
    """Points for each urgent portion used, and some more for using a lot up."""

    def terms(self, draft: Draft) -> list[Term]:
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
        """Fill each slot greedily with the most urgent lots; a lot counts in its best slot only."""
        people = problem.wanted.people
        taken: set[tuple[int, int]] = set()
        total = 0
        slots = sorted(problem.pattern.slots.items(), key=lambda pair: -pair[1].portions[2])
        for name, slot in slots:
            options = sorted((o for _, o in problem.in_slot(name) if o.points), key=lambda o: -o.points)
            room = round(slot.portions[2] * PORTION) * people
            fresh = [option for option in options if option.key not in taken]
            for option in fresh:
                use = min(room, option.most * option.portion_units)
                total += _unit_points(option) * -(-use // option.portion_units)
                room -= use
                taken.add(option.key)
            finishes = sorted((finish_points(o) for o in fresh if o.whole), reverse=True)
            total += sum(finishes[: slot.items[1]])
        return total


def _unit_points(option: Option) -> int:
    return option.points * option.portion_units * (POINT // PORTION)


def finish_points(option: Option) -> int:
    """For using the lot up."""
    return round(option.points * FINISH_SHARE * POINT)
