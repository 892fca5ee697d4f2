"""Everybody gets enough lysine, where that is asked for."""

from calmlarder.compose.variables import DishVariables


class LysineFloor:
    """Lysine of the whole dish in hundredths of a mg, rounded down; unknown lysine counts as none."""

    def post(self, draft: DishVariables) -> None:
        """Bound lysine from below."""
        wanted = draft.problem.wanted
        if not wanted.lysine_mg:
            return
        options = draft.problem.options
        floor = wanted.lysine_mg * 100 * wanted.people
        draft.model.add(sum(option.lysine * draft.units[n] for n, option in enumerate(options)) >= floor)
