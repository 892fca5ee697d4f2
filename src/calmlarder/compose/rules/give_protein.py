"""A little less protein, at a price."""

from calmlarder.compose.variables import DishVariables
from calmlarder.compose.weights import GIVES_AT_ALL, MOST_PROTEIN_SHORT, POINT, PROTEIN_SHORT


class ProteinGives:
    """Protein of the whole dish in mg may be short of the floor by a share of it; each gram costs."""

    def post(self, draft: DishVariables) -> None:
        """Bound protein and what it is short of from below."""
        wanted = draft.problem.wanted
        floor = round(wanted.protein_floor_g * 1000) * wanted.people
        short = draft.model.new_int_var(0, int(floor * MOST_PROTEIN_SHORT), "")
        protein = sum(option.protein_mg * draft.units[n] for n, option in enumerate(draft.problem.options))
        draft.model.add(protein + short >= floor)
        gives = draft.model.new_bool_var("")
        draft.model.add(short <= int(floor * MOST_PROTEIN_SHORT) * gives)
        draft.given.append((-GIVES_AT_ALL * POINT, gives))
        draft.given.append((-PROTEIN_SHORT * POINT // 1000, short))
