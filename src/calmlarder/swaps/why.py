"""Why a food is swapped: which group it passes and by how much, or that it fits."""

from collections.abc import Mapping
from types import MappingProxyType

from calmlarder.intake.plate import Row, Serving, exact_grams
from calmlarder.swaps.model import Asked, told_grams
from calmlarder.swaps.plate import rows_for
from calmlarder.tables.book import Tables
from calmlarder.tables.vocabulary import Group

GROUP_WORDS: Mapping[Group, str] = MappingProxyType(
    {
        "oligosaccharides": "fructans + GOS",
        "lactose": "lactose",
        "excess_fructose": "excess fructose",
        "sorbitol": "sorbitol",
        "mannitol": "mannitol",
        "polyols": "sorbitol + mannitol",
        "total": "total without lactose",
        "fructans": "fructans",
        "gos": "GOS",
    }
)


def why(asked: Asked, tables: Tables) -> str:
    """One sentence on the original at the amount asked for."""
    said = f"{told_grams(asked.grams)} of {asked.food.name}"
    unknown = tables.unknown_of(asked.food.id)
    if unknown:
        missing = " and ".join("GOS" if component == "gos" else component for component in unknown)
        return f"No figure is known for the {missing} of {asked.food.name}, so {said} cannot be counted"
    passed = passed_by(asked, tables)
    if not passed:
        return f"{said} fits under every limit of {asked.profile.name}"
    told = "; ".join(dict.fromkeys(_passes(row) for row in passed))
    return f"{said}, judged by eye, brings {told} (profile {asked.profile.name})"


def _passes(row: Row) -> str:
    words, cap = GROUP_WORDS[row.cap.group], row.cap
    likely, most = exact_grams(row.sum.likely), exact_grams(row.sum.at_most)
    if likely > cap.typical_g:
        return (
            f"likely {likely:.2f} g of {words}, {likely - cap.typical_g:.2f} g over the limit of {cap.typical_g:.2f} g"
        )
    if cap.at_most_g is not None and most > cap.at_most_g:
        over = most - cap.at_most_g
        return f"at most {most:.2f} g of {words}, {over:.2f} g over the {cap.at_most_g:.2f} g that may come at most"
    return f"likely {likely:.2f} g of {words}; misjudged it would pass the limit of {cap.typical_g:.2f} g"


def passed_by(asked: Asked, tables: Tables) -> list[Row]:
    """The limits that the original does not keep by eye, most of all first; none where its figures are unknown."""
    if tables.unknown_of(asked.food.id):
        return []
    rows = rows_for([Serving(asked.food, asked.grams)], asked.limits, tables, asked.sure)
    passing = [row for row in rows if not row.holds()]
    return sorted(passing, key=lambda row: -exact_grams(row.sum.likely) / row.cap.typical_g)
