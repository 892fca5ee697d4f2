"""Everybody gets enough protein."""

from calmlarder.compose.variables import DishVariables


class ProteinFloor:
    """Protein of the whole dish in mg, each food rounded down; unknown protein counts as none."""

    def post(self, draft: DishVariables) -> None:
        """Bound protein from below."""
        wanted = draft.problem.wanted
        floor = round(wanted.protein_floor_g * 1000) * wanted.people
        options = draft.problem.options
        protein = sum(option.protein_mg * draft.units[n] for n, option in enumerate(options))
        draft.model.add(protein >= floor * draft.active)
