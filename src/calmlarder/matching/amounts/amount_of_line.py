"""Find the amount in a line: how many, of which measure, and how sure."""

import re
from typing import Literal, NamedTuple

from calmlarder.matching.amounts.amount_phrases import (
    BARE_GRAMS,
    GONE,
    LEFT,
    MAY_BE_GRAMS,
    NEARLY_GONE,
    PLAINLY,
    SHARES,
)
from calmlarder.matching.amounts.measures import CONTAINERS, MEASURE, MEASURE_WORDS, UNIT, UNIT_GRAMS
from calmlarder.matching.amounts.numbers_and_fractions import (
    MAY_BE_RANGE,
    NUMBER,
    NUMBER_ALONE,
    ONE,
    RANGE,
    Span,
    number,
)
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_TIMES = LatePattern(r"(?<!\w)x\s?(\d{1,3})(?!\w)|(?<![\w/.])(\d{1,3})\s?x(?:(?!\w)|(?=\d))")
_NUMBER_LEFT = LatePattern(r"(?<![\w/.,])(\d{1,3}) (?:still )?(?:left|remaining)\b")
_METRIC = LatePattern(rf"(?<![\w.,/-])(?:({NUMBER})\s?(?:-|to)\s?)?({NUMBER})\s?-?({UNIT})\b\.?")
_SIZED_PACK = LatePattern(rf"(?<![\w.,/-])(?:{NUMBER})\s?-?(?:{UNIT})\b\.?(?: (?:{'|'.join(CONTAINERS)}|sack)s?\b)?")
_ONE_PACK = LatePattern(rf"^\s*(?:an? )?(?:{'|'.join(CONTAINERS)}|pack|pkt|net|sack)\b")
_KITCHEN = LatePattern(rf"(?<!\w)(?:an? )?({MEASURE})\b(?: of)?(?: the\b| an?\b)?(?!')")
# How much another size of a glass or a bowl holds: ours, common practice, no source.
_SIZES = {
    **dict.fromkeys(("small", "little", "tiny", "wee", "mini"), Span(0.6, 0.75, 0.9)),
    **dict.fromkeys(("large", "big", "huge", "massive", "giant"), Span(1.1, 1.4, 1.9)),
}
_PACK_SIZES = {
    **dict.fromkeys(("small", "little", "tiny", "wee", "mini"), Span(0.4, 0.55, 0.8)),
    **dict.fromkeys(("large", "big", "huge", "massive", "giant"), Span(1.2, 1.8, 3)),
}
# A small head, beside the usual one.
_GROWN_SIZES = {
    **dict.fromkeys(("small", "little", "tiny", "wee", "mini"), Span(0.4, 0.6, 0.85)),
    **dict.fromkeys(("large", "big", "huge", "massive", "giant"), Span(1.1, 1.4, 2)),
}
_SIZED = LatePattern(
    rf"(?<!\w)({'|'.join(_SIZES)}) (?=({'|'.join(CONTAINERS)}|glass|mug|cup|bowl|plate|handful|slice|wedge|piece"
    r"|portion|container|pack|bunch|end|heel|head|bulb|crown|fillet)\w*\b)"
)
_NO_PLURALS = frozenset({"glass", "enormous", "ginormous", "humongous"})
_SERVED = frozenset({
    "glass", "mug", "cup", "bowl", "plate", "handful", "slice", "wedge", "piece", "portion", "bunch", "end", "heel",
    "fillet",
})  # fmt: skip
_GROWN = frozenset({"head", "bulb", "crown"})
# `eggs 6/12`: so many of a box.
_OF_A_BOX = LatePattern(r"(?<![\w./])(\d{1,2})/(?:6|10|12|15|18|20|24|30)(?![\w/])")
# `bag of carrots, big`: the size of the pack, behind it.
_SIZE_BEHIND = LatePattern(
    r"^(.*?)(?:,| -) ?(?:a |an )?(small|little|tiny|wee|large|big|huge|massive|giant)(?: one)?\s*$"
)
_ONE = LatePattern(r"^an?(?= [a-z]|$)")
MINIATURES = frozenset({"baby", "mini", "tiny", "little", "wee"})
_MINIATURE = LatePattern(rf"\b(?:{'|'.join(sorted(MINIATURES))})\b")
_COUNT_OF = LatePattern(rf"(?<![\w/.,-])(?:{NUMBER}) ?(?:{MEASURE})\b(?! (?:{MEASURE})\b)")
_NEGATIVE = LatePattern(r"(?<![\w)])-\s?\d")
# How far a counted or guessed amount may be off: common practice, no source.
_GUESS = Span(0.8, 1, 1.2)
_VAGUE = Span(0.7, 1, 1.4)
MOST_GRAMS = 50_000


class Amount(NamedTuple):
    """`number` of `measure` (None: none was given), or grams where `grams` is given (of one, times `number`)."""

    number: Span
    measure: str | None
    grams: Span | None
    how: Literal["weighed", "counted", "guessed", "none"]
    plural: bool = False  # several, but not how many (`limes`)
    small_pack: bool = False  # less than a usual one by its size alone, and whole
    share: bool = False  # of what there usually is (`a bit of cheese`)


def take_amount(text: str, is_counted: bool = False) -> tuple[Amount, str]:
    """The amount in a plain text and the text without it. What is counted is told in no bare grams (`120 eggs`).

    Raises ValueError, in words for a cook, for an amount that cannot be.
    """
    if is_counted:
        text = _OF_A_BOX.sub(r"\1", text)
    text = put_in_turn(text, (*PLAINLY, *BARE_GRAMS) if not is_counted and MAY_BE_GRAMS.search(text) else PLAINLY)
    if _NEGATIVE.search(text):
        raise ValueError("an amount cannot be below nothing")
    nearly_gone = NEARLY_GONE.search(text) is not None
    fraction, shared, text = _take_share(_still_there(text))
    times = ONE
    found = _TIMES.search(text)
    if found:
        count = int(found[1] or found[2])
        times, text = Span(count, count, count), _cut(text, found)
    grams, text = _take_metric(text)
    if grams is not None and shared and not nearly_gone:
        fraction, shared = ONE, False  # `lump 150g`: the grams say it all
    behind = _SIZE_BEHIND.match(text)
    if behind and (pack := _KITCHEN.search(behind[1])) and MEASURE_WORDS[pack[1]] in CONTAINERS:
        text = f"{behind[2]} {' '.join(behind[1].split())}"
    sized = _SIZED.search(text)
    unsized = fraction
    if sized:
        text = _cut(text, sized)
        # Where grams are told, they say it all.
        sizes = _SIZES if sized[2] in _SERVED else _GROWN_SIZES if sized[2] in _GROWN else _PACK_SIZES
        fraction = fraction.times(sizes[sized[1]]) if grams is None else fraction
    measure, several = None, False
    if len(_KITCHEN.findall(text)) > 1 and (together := _COUNT_OF.search(text)):
        # `bunch of asparagus, maybe 8 spears`: the number belongs to the measure behind it.
        text = f"{together[0]} {NUMBER_ALONE.sub(' ', _KITCHEN.sub(' ', _cut(text, together)))}"
    counted, text, number_given = _take_number(text)
    found_measure = _measure_in(text)
    if found_measure:
        measure = MEASURE_WORDS[found_measure[1]]
        several = (
            not number_given
            and found is None
            and found_measure[1] not in _NO_PLURALS
            and found_measure[1].endswith("s")
            and grams is None
        )
        text = _cut(text, found_measure)
    elif not number_given and _ONE.match(text):
        number_given, text = True, _ONE.sub("", text)
    if measure is None and number_given and _MINIATURE.search(text):
        measure = "small"
    if grams is not None and measure not in CONTAINERS and measure != "sack":
        counted = ONE  # `2 cups / 280 g`: the grams say it all
    count_span = fraction.times(times).times(counted)
    if count_span.typical <= 0:
        raise ValueError("an amount of nothing is no lot")
    amount = Amount(
        count_span,
        measure,
        grams,
        _certainty(grams, measure, number_given or found is not None),
        plural=several,
        share=shared,
        small_pack=sized is not None and unsized.times(times).times(counted).typical >= 1,
    )
    if grams is not None and grams.times(count_span).high > MOST_GRAMS:
        raise ValueError("more than 50 kg is no kitchen amount")
    return amount, " ".join(text.split())


def _still_there(text: str) -> str:
    """The text with no number but that of what is left: `box of 12, 7 left`."""
    still = _NUMBER_LEFT.search(text)
    if not still:
        return text
    whole = _cut(text, still)
    rest = _SIZED_PACK.sub(" ", whole)  # `5 lb bag, 8 left`: eight of them, not eight bags
    rest = rest if rest == whole else _ONE_PACK.sub(" ", rest)
    return f"{still[1]} {NUMBER_ALONE.sub(' ', rest)}"


def _measure_in(text: str) -> re.Match[str] | None:
    """The measure of a text: of several the container, else the first."""
    found = list(_KITCHEN.finditer(text))
    return next((one for one in found if MEASURE_WORDS[one[1]] in CONTAINERS), found[0] if found else None)


def _take_share(text: str) -> tuple[Span, bool, str]:
    """How much of a usual amount is told (`a bit of`, `half left`), and the text without it."""
    found = LEFT.search(text)
    if found:
        part = _part(found[1])
        part = 1 - part if found[2] in GONE else part
        if part > 0:
            return Span(0.8 * part, part, 1.2 * part), False, _cut(text, found)
    for shape, share in SHARES:
        found = shape.search(text)
        if found:
            return share, True, _cut(text, found)
    return ONE, False, text


def _part(text: str) -> float:
    if text.endswith("%"):
        return min(1.0, int(text[:-1]) / 100)
    return {"three quarters": 0.75, "two thirds": 2 / 3}.get(text) or number(text)


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
    found = RANGE.search(text) if MAY_BE_RANGE.search(text) else None
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
