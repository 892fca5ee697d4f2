"""What is said of a food that a vegetable may bear, and meat, fish, milk or a cooked dish may not: in doubt, out.

What needs the cold and stood out overnight is no food any more (Food Standards Agency, chilling: four hours at most;
USDA FSIS: two hours). Which words doubt is common practice, no source.
"""

from collections.abc import Iterable

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.tables.rows import Food

LEFT_OUT, PAST_DATE = "left out", "past its date"
DOUBTFUL = frozenset({
    "dodgy", "iffy", "suspect", "past it", "a bit past it", "dead", "ropey", "ropy", "looking dodgy", "on the turn",
    "about to turn", "going off", "past its best",
    LEFT_OUT, PAST_DATE,
})  # fmt: skip
# `chicken left out overnight`, `milk sat on the side all day`; `left out of the fridge` tells no hours and is as bad.
STOOD_OUT = LatePattern(
    r"[,;(-]? ?\b(?:(?:it |was |were |been |has been |got )*(?:left|sat|stood|forgotten|stayed|sitting|standing)"
    r" (?:it |them )?(?:out|on the (?:side|counter|worktop|bench|table|stove|hob))(?: of the fridge)?"
    r"(?: (?:all (?:night|day|morning|afternoon)|overnight|over night|since (?:this )?(?:morning|yesterday|last night)"
    r"|since (?:breakfast|lunch)|for (?:hours|days|ages|a day)|too long|last night|yesterday))?"
    r"|(?:in (?:a|the) |there was a |after (?:a|the) )?power (?:cut|outage|went out|was out|off)"
    r"|(?:the )?fridge (?:was off|broke\w*(?: down)?|died|packed up|was broken|stopped))\b\)?",
    needs=("out", " on the ", "power", "fridge"),
)
# `chicken, expired`: nobody says since when.
NO_DAY_TOLD = LatePattern(
    r"[,;(-]? ?(?<!not )\b(?:has |have |is |are |it'?s )?(?:(?:way |well |long |already |just )*"
    r"(?:expired|out of date|ood|past (?:its|their|the) (?:date|use[ -]?by|sell[ -]?by|expiry)))\b\)?",
    needs=("expired", "date", "ood", "past "),
)
_SOUR = LatePattern(r"\bsour(?:ed)?\b")
_NEEDS_THE_COLD = frozenset({"poultry", "meat", "fish", "shellfish", "milk", "cream", "yoghurt"})
_COOKED = frozenset({"cooked", "boiled", "roasted"})


def nobody_eats(conditions: Iterable[str], foods: Iterable[Food], text: str) -> bool:
    """Whether what is said of a thing takes it out of the kitchen, as it is what it is."""
    perishable = [food for food in foods if food.kind in _NEEDS_THE_COLD or food.state in _COOKED]
    if any(food.kind == "milk" for food in perishable) and _SOUR.search(text):
        return True
    return bool(perishable) and not DOUBTFUL.isdisjoint(conditions)
