"""Protein, fibre, calcium and iron of what was eaten. A figure that is not known makes the sum an `at least`."""

from collections.abc import Iterable
from typing import Literal, get_args

from pydantic import BaseModel, ConfigDict

from calmlarder.tables.rows import Food

Nutrient = Literal["protein_g", "fibre_g", "calcium_mg", "iron_mg"]
NUTRIENTS: tuple[Nutrient, ...] = get_args(Nutrient)


class Nourished(BaseModel):
    """What one person had, g and mg; `at_least` names the sums in which a food's figure was not known."""

    model_config = ConfigDict(frozen=True)

    protein_g: float
    fibre_g: float
    calcium_mg: float
    iron_mg: float
    at_least: tuple[Nutrient, ...] = ()

    def times(self, share: float) -> "Nourished":
        """The same of another amount."""
        sums = {name: round(getattr(self, name) * share, 3) for name in NUTRIENTS}
        return Nourished(**sums, at_least=self.at_least)


def nourished_of(parts: Iterable[tuple[Food, float]]) -> Nourished:
    """Foods with one person's grams of each; figures are per 100 g as the tables give them."""
    sums, lacking = dict.fromkeys(NUTRIENTS, 0.0), dict.fromkeys(NUTRIENTS, False)
    for food, grams in parts:
        for name in NUTRIENTS:
            figure = getattr(food, name)
            if figure is None:
                lacking[name] = True
            else:
                sums[name] += float(figure) * grams / 100
    rounded = {name: round(value, 3) for name, value in sums.items()}
    return Nourished(**rounded, at_least=tuple(name for name in NUTRIENTS if lacking[name]))
