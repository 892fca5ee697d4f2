"""Raw nuts over a hot dinner are toasted in a dry pan first, pulses rinsed hot: common practice, no source."""

import re

from calmlarder.kitchen.filling import ALREADY_COOKED
from calmlarder.kitchen.made_ready import SHELLED, TOASTED
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import CANNED_STATES

_WORTH_A_PAN = frozenset({
    "almonds", "cashews", "hazelnuts", "pecans", "pine-nuts", "pumpkin-seeds", "sesame-black", "sesame-brown",
    "sesame-seeds", "sunflower-seeds", "walnuts",
})  # fmt: skip
_PULSES = frozenset({"pulse", "soya"})
_LEAST_G = 10  # of the whole dish: for less nobody heats a pan. Ours
_TOASTED_ALREADY = re.compile(r"\b(?:toasted|roast(?:ed)?|salted|smoked|candied|ground|flaked)\b", re.IGNORECASE)


_COOLED = re.compile(r"\b(?:cold|cool)\b")
_RINSED_HOT = "rinsed in a sieve with boiling water"


def rinsed_hot(prep: str, food: Food, slot: str, pattern: Pattern) -> str:
    """How pulses that were cooked before are made ready where they lie on what is hot: boiling water warms them."""
    place = pattern.slots[slot]
    base = [step for step in pattern.steps if step.place == "apart" and not _COOLED.search(step.words)]
    hot = "dinner" in pattern.sittings and not pattern.eaten_cold and bool(base)
    if not hot or place.method != "raw" or place.role != "protein" or food.kind not in _PULSES:
        return prep
    return _RINSED_HOT if food.state in {*ALREADY_COOKED, *CANNED_STATES} else prep


def toasted(prep: str, food: Food, slot: str, line: str, grams: int, pattern: Pattern) -> str:
    """How a topping is made ready: `prep`, and the dry pan before it where its line tells of no roasting."""
    hot = "hob" in pattern.equipment and "dinner" in pattern.sittings and not pattern.eaten_cold
    place = pattern.slots[slot]
    if not hot or place.role != "topping" or place.method != "raw" or TOASTED in prep:
        return prep
    if food.id not in _WORTH_A_PAN or grams < _LEAST_G or _TOASTED_ALREADY.search(line):
        return prep
    shelled = prep.startswith(SHELLED)
    rest = prep.removeprefix(SHELLED).removeprefix(", ") if shelled else prep
    return ", ".join(part for part in (SHELLED * shelled, TOASTED, rest) if part)
