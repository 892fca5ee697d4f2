"""What the cook asked for is in the dish."""

from calmlarder.compose.variables import DishVariables


class Asked:
    """At least one lot of each food given with `--use`."""

    def post(self, draft: DishVariables) -> None:
        """Require each food."""
        for food in draft.problem.wanted.use:
            uses = [
                draft.used[number]
                for number, option in enumerate(draft.problem.options)
                if option.offered.food.id == food
            ]
            draft.model.add(sum(uses) >= draft.active)
