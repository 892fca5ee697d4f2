"""Why a food is swapped: which group it passes and by how much, or that it fits."""

from collections.abc import Mapping
from types import MappingProxyType

from calmlarder.intake.load import Held, Serving, held_by
from calmlarder.swaps.model import Asked, told_grams
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
        "total": "all but lactose",
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
        return f"{said} fits under every cap of the profile {asked.profile.name}"
    told = "; ".join(dict.fromkeys(_passes(held) for held in passed))
    return f"{said}, judged by eye, brings {told} (profile {asked.profile.name})"


def _passes(held: Held) -> str:
    case = "in the worst case" if held.cap.holds == "worst" else "as planned"
    words = GROUP_WORDS[held.cap.group]
    return f"{held.load:.2f} g of {words} {case}, {-held.room:.2f} g over the cap of {held.cap.grams:.2f} g"


def passed_by(asked: Asked, tables: Tables) -> list[Held]:
    """The caps that the original passes, most of all first; none where its figures are unknown."""
    if tables.unknown_of(asked.food.id):
        return []
    held = held_by([Serving(asked.food, asked.grams)], asked.profile, tables, asked.sure)
    return sorted((one for one in held if one.room < 0), key=lambda one: one.room / one.cap.grams)
