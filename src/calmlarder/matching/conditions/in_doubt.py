"""What is said of a food that a vegetable may bear, and meat, fish, milk or a cooked dish may not: in doubt, out.

What needs the cold and stood out overnight is no food any more (Food Standards Agency, chilling: four hours at most;
USDA FSIS: two hours; both recalled). Which words doubt is common practice, no source.
"""

from collections.abc import Iterable

from calmlarder.matching.late_patterns import START, LatePattern
from calmlarder.tables.rows import Food

LEFT_OUT, PAST_DATE = "left out", "past its date"
DOUBTFUL = frozenset({
    "dodgy", "iffy", "suspect", "dead", "ropey", "ropy", "looking dodgy", "not so good", "not too good",
    "not looking good", "not looking great", "not great", LEFT_OUT, PAST_DATE,
})  # fmt: skip
# Of milk, cream and yoghurt these are said while they are good enough to cook with.
_PAST_IT = frozenset({"past it", "a bit past it", "on the turn", "about to turn", "going off"})
# `chicken left out overnight`, `milk sat on the side all day`; `left out of the fridge` tells no hours and is as bad.
STOOD_OUT = LatePattern(
    r"[,;(-]? ?\b(?:(?:it |was |were |been |has been |got )*(?:left|sat|stood|forgotten|stayed|sitting|standing)"
    r" (?:it |them )?(?:out|on the (?:side|counter|worktop|bench|table|stove|hob))(?: of the fridge)?"
    r"(?: (?:all (?:night|day|morning|afternoon)|overnight|over night|since (?:this )?(?:morning|yesterday|last night)"
    r"|since (?:breakfast|lunch)|for (?:hours|days|ages|a day)|too long|last night|yesterday))?"
    r"|(?:in (?:a|the) |there was a |after (?:a|the) )?power (?:cut|outage|went out|was out|off)"
    r"|(?:the )?fridge (?:was off|played up|playing up|acting up|conked out|failed|(?:was )?not working"
    r"|wasn'?t working|was warm|on the blink|broke\w*(?: down)?|died|packed up|was broken|stopped))\b\)?",
    needs=(" out", " on the ", "power ", "fridge "),
)
# `chicken, expired`: nobody says since when.
NO_DAY_TOLD = LatePattern(
    r"[,;(-]? ?(?<!not )\b(?:has |have |is |are |it'?s )?(?:(?:way |well |long |already |just )*"
    r"(?:expired|out of date|ood|past (?:its|their|the) (?:date|use[ -]?by|sell[ -]?by|expiry)))\b\)?",
    needs=("expired", "date", f"{START}ood", "past "),
)
_SOUR = LatePattern(r"\bsour(?:ed)?\b")
_FLESH = frozenset({"poultry", "meat", "fish", "shellfish"})
_LEAVES = frozenset({"salad-leaf", "leaf", "herb"})
_DAIRY = frozenset({"milk", "cream", "yoghurt"})
_COOKED = frozenset({"cooked", "boiled", "roasted"})


def nobody_eats(conditions: Iterable[str], foods: Iterable[Food], text: str, is_past: bool = False) -> bool:
    """Whether what is said of a thing takes it out of the kitchen, as it is what it is; `is_past` its date."""
    there = tuple(foods)
    if is_past and "wet" in conditions and any(food.kind in _LEAVES for food in there):
        return True  # cut leaves that stand in their water past their date: on the way to slime
    risky = any(food.kind in _FLESH or food.state in _COOKED for food in there)
    dairy = any(food.kind in _DAIRY for food in there)
    if any(food.kind == "milk" for food in there) and _SOUR.search(text):
        return True
    doubts = DOUBTFUL | _PAST_IT if risky else DOUBTFUL if dairy else frozenset[str]()
    return not doubts.isdisjoint(conditions)
