"""The slowest food sets the time."""

from calmlarder.compose.variables import DishVariables


class SlowestFood:
    """The cooking time is at least that of every food used."""

    def post(self, draft: DishVariables) -> None:
        """Bound the time from below; the wish to be quick pulls it down."""
        for number, option in enumerate(draft.problem.options):
            if option.minutes:
                draft.model.add(draft.time >= option.minutes * draft.used[number])
