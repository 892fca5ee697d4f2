"""Raw fish and meat that thawed and was frozen again."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.tables.rows import Food

REFROZEN = "thawed and frozen again"
_FLESH = frozenset({"fish", "shellfish", "poultry", "meat"})
_THAWED = r"(?:thaw(?:ed|ing)?|defrost(?:ed|ing)?|melt(?:ed)?)"
_AGAIN = r"(?:fr(?:oze|eeze|ozen)d?(?: (?:it|them))? (?:again|back)|back in(?:to)? (?:the )?freezer)"
_REFROZEN = LatePattern(rf"\bre-?fr(?:oze|ozen|eeze|eezed)\b|\b{_THAWED}\b.*\b{_AGAIN}\b", needs=("fr",))


def is_refrozen(food: Food, line: str) -> bool:
    """Whether it is thrown away: nobody knows how warm it was (Food Standards Agency on freezing: recalled)."""
    return food.kind in _FLESH and food.state in {"raw", "frozen"} and _REFROZEN.search(line.lower()) is not None
