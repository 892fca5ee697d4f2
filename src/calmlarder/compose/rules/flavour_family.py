"""A dish is cooked in one flavour family, and everything in it is at home there."""

from calmlarder.compose.variables import DishVariables


class OneFamily:
    """Exactly one family of the pattern, which every used food fits."""

    def post(self, draft: DishVariables) -> None:
        """Choose a family."""
        draft.model.add(sum(draft.family.values()) == draft.active)
        for number, option in enumerate(draft.problem.options):
            fitting = [chosen for name, chosen in draft.family.items() if option.offered.food.fit(name)]
            if len(fitting) < len(draft.family):
                draft.model.add(draft.used[number] <= sum(fitting))
