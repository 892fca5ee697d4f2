"""What makes a dish taste, and food that is at home in its flavour family."""

from collections.abc import Sequence

from calmlarder.compose.problem import Option, PatternProblem
from calmlarder.compose.variables import DishVariables, Term
from calmlarder.compose.weights import FIT, FLAVOUR_MISSING, POINT
from calmlarder.tables.vocabulary import Family


class AtHome:
    """Points for each food that is typical of the chosen family."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One variable for each food and family that give points together."""
        terms: list[Term] = []
        model = draft.model
        for number, option in enumerate(draft.problem.options):
            points = {name: _points(option, name) for name in draft.family}
            if len(set(points.values())) == 1:
                worth = next(iter(points.values()))
                if worth:
                    terms.append((worth, draft.used[number]))
                continue
            gained = model.new_int_var(0, max(points.values()), "")
            model.add(gained <= max(points.values()) * draft.used[number])
            model.add(gained <= sum(worth * draft.family[name] for name, worth in points.items()))
            terms.append((1, gained))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """The most typical foods of each slot in the best family."""
        best = 0
        for family in problem.pattern.flavours:
            total = 0
            for name, slot in problem.pattern.slots.items():
                points = sorted((_points(option, family) for _, option in problem.in_slot(name)), reverse=True)
                total += sum(points[: slot.items[1]])
            best = max(best, total)
        return best


class Tastes:
    """Each group of what makes the dish taste (sauce, acid, aromatics, infused oil) that has nothing in it costs."""

    def terms(self, draft: DishVariables) -> list[Term]:
        """One cost a group that is left out."""
        terms: list[Term] = []
        for names in draft.problem.pattern.flavour:
            missing = draft.model.new_bool_var("")
            there = sum(draft.used[number] for number in tasting(draft.problem, names))
            draft.model.add(missing + there >= draft.active)
            terms.append((-FLAVOUR_MISSING * POINT, missing))
        return terms

    def bound(self, problem: PatternProblem) -> int:
        """What the larder has nothing for is missing for certain."""
        return -FLAVOUR_MISSING * POINT * sum(not tasting(problem, names) for names in problem.pattern.flavour)


def tasting(problem: PatternProblem, names: Sequence[str]) -> list[int]:
    """Numbers of the options in one of these slots, or of one of these foods."""
    return [
        number
        for number, option in enumerate(problem.options)
        if option.slot in names or option.offered.food.id in names
    ]


def _points(option: Option, family: Family) -> int:
    return FIT.get(option.offered.food.fit(family), 0) * POINT
