"""Every fermentable group stays under its cap, for each food and for the sitting."""

from calmlarder.compose.draft import Draft
from calmlarder.compose.problem import load_rows


class Caps:
    """`worst` caps hold for the worst case of amounts and figures, `plan` caps for the plan.

    Left and right are in ten-thousandths of a milligram for the whole dish.
    """

    def post(self, draft: Draft) -> None:
        """Bound every load that could reach its cap."""
        for cap, row, allowed in load_rows(draft.problem):
            if cap.holds == "worst":
                terms = [term for number, figure in row for term in draft.worst_terms(number, figure)]
            else:
                options = draft.problem.options
                terms = [(100 * options[n].unit * figure, draft.units[n]) for n, figure in row]
            draft.model.add(sum(factor * variable for factor, variable in terms) <= allowed * 10_000 * draft.active)
