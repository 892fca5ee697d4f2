"""Every fermentable group stays under its cap, for each food and for the sitting."""

from calmlarder.compose.problem import load_rows
from calmlarder.compose.variables import DishVariables


class Caps:
    """`worst` caps hold for the worst case of amounts and figures, `plan` caps for the plan.

    Left and right are in ten-thousandths of a milligram for the whole dish.
    """

    def post(self, draft: DishVariables) -> None:
        """Bound every load that could reach its cap."""
        for cap, row, allowed in load_rows(draft.problem):
            terms_of = draft.worst_terms if cap.holds == "worst" else draft.planned_terms
            terms = [term for number, figure in row for term in terms_of(number, figure)]
            draft.model.add(sum(factor * variable for factor, variable in terms) <= allowed * 10_000 * draft.active)
