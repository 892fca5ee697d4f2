"""What is bought whole or with its bones: fish, birds, pieces of them. A lot's grams are what can be eaten of it."""

import re

from calmlarder.larder.whole_fish import SOLD_WHOLE, eatable_of_a_fish, whole_fish_g
from calmlarder.matching.amounts.amount_of_line import Amount
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS, Span
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.tables.rows import Food

# What can be eaten of what is weighed raw with its bones (US Department of Agriculture, Standard Reference, refuse:
# recalled).
_EATABLE = {
    "chicken-drumsticks": 0.67, "chicken-whole": 0.68, "chicken-wings": 0.54, "turkey-leg": 0.7, "turkey-wings": 0.6,
    "turkey-whole": 0.74, "duck-whole": 0.7, "goose": 0.75, "game-bird": 0.75, "game-bird-small": 0.75, "quail": 0.8,
    "poussin": 0.62,
}  # fmt: skip
WITH_BONES = frozenset(_EATABLE)
# What is eaten of one raw with its bone and skin, g: least, likely, most. A thigh weighs 150 to 200 g, a quarter of the
# leg 330 (common practice, no source), a fifth and a quarter of it bone (USDA SR 28, 05091 and 05075: recalled).
_EATABLE_OF_ONE = (
    (LatePattern(r"\bthighs?\b", re.IGNORECASE), (115.0, 135.0, 160.0)),
    (LatePattern(r"\b(?:marylands?|(?:leg )?quarters)\b", re.IGNORECASE), (200.0, 240.0, 300.0)),
)
_BY_THE_PIECE = "chicken-drumsticks"  # the row of all pieces of a chicken that have their bones
# Meat of mussels and clams in their shells (the same, recalled: about a quarter).
_EATABLE_IN_SHELL = 0.27
_NEAREST_G = 50  # to which its weight is told: ours
_SHELLED_FOODS = frozenset({"mussels"})
_IN_SHELL = LatePattern(
    r"\b(?:live|alive|shell[- ]?on|(?:in|with) (?:the(?:ir)? )?shells?|scrubbed|bearded)\b"
    r"|\d ?(?:kgs?|kilos?|lbs?|pounds?)\b",
    re.IGNORECASE,
)  # by the kilo or pound they are sold in their shells: common practice, no source
# How a fish that is counted is measured.
_BY_THE_FISH = frozenset({None, "piece", "small", "medium", "large"})
_BONELESS = LatePattern(
    r"\b(?:bone ?less|de-?boned|boned|skinless|off the bone|without (?:the )?bones?|no bones?)\b", re.IGNORECASE
)
_CUT_FISH = LatePattern(
    r"\b(?:fill?ets?|filets?|filetes?|filetti|steaks?|loins?|slices?|sliced|portions?|chunks?|darnes?|pav[eé]s?|halves|half"
    r"|side|tails?|belly|heads?|pieces|pcs|cut|cubes|mince|smoked|salted|dried|boned|de-?boned|boneless|packs?|pkts?)\b",
    re.IGNORECASE,
)
_SAID_WHOLE = LatePattern(
    r"\b(?:whole|ekor|gutted|scaled|descaled|cleaned|head[- ]on|big ones?|small ones?|enter[oa]s?|entiers?|ganz\w*)\b",
    re.IGNORECASE,
)
_COUNT = LatePattern(
    r"(?<![\d.,/:-])([1-9]|1[0-2])(?!\d|[.,/:]\d|%|\s?-|\s?(?:st|nd|rd|th|days?|kg|g|kilos?|lbs?|oz|ml|l"
    r"|cartons?|cases?|packs?|packets?|pkts?|pks?|bags?|box(?:es)?|trays?|tubs?)\b)"
)
# Days and weights beside a count: `2 bream 800g, ub 13/3`.
_NO_COUNT = LatePattern(
    r"(?<!\d)\d{1,2}[/.-]\d{1,2}(?:[/.-]\d{2,4})?(?![\d/])|(?<!\d)\d{1,2}(?:st|nd|rd|th)\b|\d{4}-\d\d-\d\d"
    r"|(?<!\d)\d{1,2} (?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\b"
    r"|\b(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.? \d{1,2}\b"
    r"|\d+(?:[.,]\d+)? ?(?:kgs?|g|gr|gm|grams?|kilos?|lbs?|oz|days?|weeks?|wks?)\b",
    re.IGNORECASE,
)

_IN_WORDS = LatePattern(r"(?<![\w-])(?:two|three|four|five|six|couple)(?![\w-])", re.IGNORECASE)


def is_whole_fish(food: Food, line: str) -> bool:
    """Whether a line tells of raw fish as it swims, and not of fillets, steaks or a part of one."""
    if food.kind != "fish" or food.state not in {"raw", "frozen"} or _CUT_FISH.search(line):
        return False
    counted = count_in(line) is not None and SOLD_WHOLE.search(line) is not None
    return counted or _SAID_WHOLE.search(line) is not None


def is_in_shell(food: Food, line: str) -> bool:
    """Whether a line tells of mussels or clams in their shells."""
    return food.id in _SHELLED_FOODS and _IN_SHELL.search(line) is not None


def shells_too(grams: int) -> int:
    """Grams in their shells of so many that can be eaten, to the nearest 50."""
    return round(grams / _EATABLE_IN_SHELL / _NEAREST_G) * _NEAREST_G


def bones_too(food: Food, line: str, grams: int) -> int | None:
    """Grams with their bones of so many that can be eaten, to the nearest 50; None where nothing has any."""
    share = eatable_share(food, line, weighed=True) if has_bones(food) else 1.0
    return round(grams / share / _NEAREST_G) * _NEAREST_G if share < 1 else None


def count_in(line: str) -> int | None:
    """How many a line counts, where it has one plain number, and that no weight and no date."""
    plain = _IN_WORDS.sub(lambda found: str(WHOLE_WORDS[found[0].lower()]), _NO_COUNT.sub(" ", line))
    found = _COUNT.findall(plain)
    return int(found[0]) if len(found) == 1 and len(re.findall(r"\d+", plain)) == 1 else None


def without_bones(food: Food, name: str) -> str:
    """How grams that can be eaten of it are written, so that they are not taken to weigh its bones as well."""
    return f"boneless {name}" if food.id in _EATABLE else name


def eatable_share(food: Food, line: str, weighed: bool) -> float:
    """How much of its weight can be eaten: 1 of what has no bones. `weighed` says that the line gives a weight.

    The usual weight of a piece with bones is kept without them.
    """
    if is_whole_fish(food, line):
        return eatable_of_a_fish(line)
    if weighed and is_in_shell(food, line):
        return _EATABLE_IN_SHELL
    return _EATABLE.get(food.id, 1.0) if weighed and not _BONELESS.search(line) else 1.0


def eatable_of_one(food: Food, line: str) -> tuple[float, float, float] | None:
    """G that are eaten of one piece of a chicken with its bone, where its line names a larger one than a drumstick."""
    if food.id != _BY_THE_PIECE:
        return None
    return next((grams for sort, grams in _EATABLE_OF_ONE if sort.search(line)), None)


def has_bones(food: Food) -> bool:
    """Whether its grams are those without its bones, while it is bought and cooked with them."""
    return food.id in WITH_BONES


def eatable_grams(span: Span, amount: Amount, food: Food, line: str) -> Span:
    """Grams that can be eaten of an amount; a fish that is counted whole weighs what such a fish does."""
    share = eatable_share(food, line, weighed=amount.grams is not None)
    if amount.grams is None and amount.measure in _BY_THE_FISH and is_whole_fish(food, line):
        span = amount.number.times(whole_fish_g(line))
    one = eatable_of_one(food, line)
    if one is not None and amount.grams is None and amount.measure in _BY_THE_FISH:
        span = amount.number.times(Span(*one))
    return span.times(Span(share, share, share))
