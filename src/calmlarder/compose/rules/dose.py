"""The dose of a challenge in the dish is weighed."""

from calmlarder.compose.variables import DishVariables


class DoseWeighed:
    """Exactly its grams are set by the option; that it is in the dish is asked for as with `--use`."""

    def post(self, draft: DishVariables) -> None:
        """Weigh whatever holds a dose."""
        foods = {dose.food for dose in draft.problem.wanted.doses}
        for number, option in enumerate(draft.problem.options):
            weighed = draft.weighed[number]
            if option.offered.food.id in foods and weighed is not None:
                draft.model.add(weighed == draft.used[number])
