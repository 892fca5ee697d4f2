"""Find the amount in a line: how many, of which measure, and how sure."""

import re
from typing import Literal, NamedTuple

from calmlarder.matching.numbers import NUMBER, NUMBER_ALONE, ONE, RANGE, Span, number

# Metric and imperial units in grams or millilitres; a millilitre counts as a gram (common practice, no source).
UNIT_GRAMS = {
    "kg": 1000, "kilo": 1000, "kilos": 1000, "kilogram": 1000, "kilograms": 1000, "mg": 0.001,
    "g": 1, "gr": 1, "gm": 1, "gms": 1, "grm": 1, "grms": 1, "gram": 1, "grams": 1, "gramme": 1, "grammes": 1,
    "l": 1000, "litre": 1000, "litres": 1000, "liter": 1000, "liters": 1000, "dl": 100, "cl": 10,
    "ml": 1, "millilitre": 1, "millilitres": 1,
    "oz": 28.35, "ounce": 28.35, "ounces": 28.35, "lb": 453.6, "lbs": 453.6, "pound": 453.6, "pounds": 453.6,
}  # fmt: skip
CONTAINERS = (
    "tin", "can", "jar", "bag", "punnet", "block", "tub", "pot", "carton", "packet", "pouch", "bottle",
    "box", "loaf", "ball", "tube",
)  # fmt: skip
MEASURES = (
    *CONTAINERS, "tbsp", "tsp", "cup", "glass", "mug", "handful", "pinch", "dash", "splash", "drizzle", "glug",
    "knob", "bunch", "head", "bulb", "bowl", "plate", "portion", "slice", "wedge", "squeeze", "clove", "stalk",
    "stick", "spear", "leaf", "floret", "sprig", "cube", "piece", "fillet", "rasher", "nest", "bundle", "sheet",
    "cob", "roll", "heel", "thumb", "small", "medium", "large", "bar", "scoop", "pat", "pint",
)  # fmt: skip
_ALIASES = {
    "tablespoon": "tbsp", "tablespoons": "tbsp", "tbs": "tbsp", "tbsps": "tbsp", "teaspoon": "tsp",
    "teaspoons": "tsp", "tsps": "tsp", "leaves": "leaf", "loaves": "loaf", "bunches": "bunch",
    "boxes": "box", "pinches": "pinch", "dashes": "dash", "splashes": "splash", "glasses": "glass",
    "pack": "packet", "packs": "packet", "pkt": "packet", "pieces": "piece", "chunks": "piece", "sticks": "stick",
    "square": "piece", "squares": "piece",
    "pots": "pot", "end": "heel", "handfull": "handful", "big": "large", "whole": "piece", "tray": "punnet",
    "spoon": "tbsp", "spoonful": "tbsp", "spoonfuls": "tbsp", "tablespoonful": "tbsp", "teaspoonful": "tsp",
    "mugful": "mug", "cupful": "cup", "bowlful": "bowl", "glassful": "glass", "tumbler": "glass",
    "container": "box", "tupperware": "box", "sachet": "packet", "wedges": "wedge", "squeezes": "squeeze",
}  # fmt: skip
MEASURE_WORDS = {**{name: name for name in MEASURES}, **{f"{name}s": name for name in MEASURES}, **_ALIASES}
_UNIT = "|".join(sorted(UNIT_GRAMS, key=len, reverse=True))
_MEASURE = "|".join(sorted(MEASURE_WORDS, key=len, reverse=True))
_EMPTY = re.compile(r"\b(?:nearly|almost|mostly|about to be) (?:empty|gone|finished)\b|\b(?:dregs|last|scraps?) of\b")
_TIMES = re.compile(r"(?<!\w)x\s?(\d{1,3})(?!\w)|(?<![\w/.])(\d{1,3})\s?x(?!\w)")
_METRIC = re.compile(rf"(?<![\w.,/-])(?:({NUMBER})\s?(?:-|to)\s?)?({NUMBER})\s?-?({_UNIT})\b\.?")
_KITCHEN = re.compile(rf"(?<!\w)(?:an? )?({_MEASURE})\b(?: of)?(?: the\b| an?\b)?(?!')")
# How much another size of a glass or a bowl holds: ours, common practice, no source.
_SIZES = {"small": (0.6, 0.75, 0.9), "large": (1.1, 1.4, 1.9), "big": (1.1, 1.4, 1.9)}
_SIZED = re.compile(r"(?<!\w)(small|large|big) (?=(?:glass|mug|cup|bowl|plate|handful|slice|wedge|piece|portion)\w*\b)")
_ONE = re.compile(r"^(?:an?) (?=[a-z])")
_NEGATIVE = re.compile(r"(?<![\w)])-\s?\d")
# How far a counted or guessed amount may be off: common practice, no source.
_GUESS = Span(0.8, 1, 1.2)
_NEARLY_EMPTY = Span(0.05, 0.12, 0.25)
_VAGUE = Span(0.7, 1, 1.4)
MOST_GRAMS = 50_000


class Amount(NamedTuple):
    """`number` of `measure` (None: none was given), or grams where `grams` is given (of one, times `number`)."""

    number: Span
    measure: str | None
    grams: Span | None
    how: Literal["weighed", "counted", "guessed", "none"]
    measured_words: str | None  # the words with the measure left in, should it belong to the name


def take_amount(text: str) -> tuple[Amount, str]:
    """The amount in a plain text and the text without it.

    Raises ValueError, in words for a cook, for an amount that cannot be.
    """
    if _NEGATIVE.search(text):
        raise ValueError("an amount cannot be below nothing")
    fraction = ONE
    if _EMPTY.search(text):
        text, fraction = _EMPTY.sub(" ", text), _NEARLY_EMPTY
    times = ONE
    found = _TIMES.search(text)
    if found:
        count = int(found[1] or found[2])
        times, text = Span(count, count, count), _cut(text, found)
    grams, text = _take_metric(text)
    sized = _SIZED.search(text)
    if sized:
        text = _cut(text, sized)
        # Where grams are told, they say it all.
        fraction = fraction.times(Span(*_SIZES[sized[1]])) if grams is None else fraction
    measure = measured_words = None
    counted, text, number_given = _take_number(text)
    found_measure = _KITCHEN.search(text)
    if found_measure:
        measure, measured_words = MEASURE_WORDS[found_measure[1]], " ".join(text.split())
        text = _cut(text, found_measure)
    elif not number_given and _ONE.match(text):
        number_given, text = True, _ONE.sub("", text)
    if grams is not None and measure not in CONTAINERS:
        counted = ONE  # `2 cups / 280 g`: the grams say it all
    count_span = fraction.times(times).times(counted)
    if count_span.typical <= 0:
        raise ValueError("an amount of nothing is no lot")
    amount = Amount(
        count_span, measure, grams, _certainty(grams, measure, number_given or found is not None), measured_words
    )
    if grams is not None and grams.times(count_span).high > MOST_GRAMS:
        raise ValueError("more than 50 kg is no kitchen amount")
    return amount, " ".join(text.split())


def spread(amount: Amount) -> Span:
    """How far the count may be off for the way it was given."""
    if amount.how == "weighed":
        return ONE
    if amount.how == "none":
        return _VAGUE
    return ONE if amount.how == "counted" and amount.measure is None else _GUESS


def _certainty(
    grams: Span | None, measure: str | None, number_given: bool
) -> Literal["weighed", "counted", "guessed", "none"]:
    if grams is not None:
        return "weighed"
    if number_given:
        return "counted"
    return "guessed" if measure else "none"


def _take_metric(text: str) -> tuple[Span | None, str]:
    found = _METRIC.search(text)
    if not found:
        return None, text
    unit = UNIT_GRAMS[found[3]]
    high = number(found[2]) * unit
    low = number(found[1]) * unit if found[1] else high
    low, high = min(low, high), max(low, high)
    if high <= 0:
        raise ValueError("an amount of nothing is no lot")
    if high > MOST_GRAMS:
        raise ValueError("more than 50 kg is no kitchen amount")
    return Span(low, (low + high) / 2, high), _cut(text, found)


def _take_number(text: str) -> tuple[Span, str, bool]:
    found = RANGE.search(text)
    if found:
        ends = sorted((number(found[1]), number(found[2])))
        return Span(ends[0], sum(ends) / 2, ends[1]), _cut(text, found), True
    for found in NUMBER_ALONE.finditer(text):
        value = number(found[0])
        if value > 1000:
            raise ValueError(f"{found[0]} is too many")
        return Span(value, value, value), _cut(text, found), True
    return ONE, text, False


def _cut(text: str, found: re.Match[str]) -> str:
    return f"{text[: found.start()]} {text[found.end() :]}"
