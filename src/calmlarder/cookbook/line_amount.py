"""The amount at the front of an ingredient line, and sizes in brackets, as recipes write them."""

import re
from typing import NamedTuple

from calmlarder.matching.amounts.measures import CONTAINERS, MEASURE_WORDS, UNIT_GRAMS
from calmlarder.matching.amounts.numbers_and_fractions import NUMBER, Span, number

# Millilitres, least and most that the word means. US measures: NIST Handbook 44 (2023), Appendix C; the cup and
# spoons to their metric sizes (250, 15, 5 ml); the pint to the imperial one (568.26 ml), gill, quart and
# gallon likewise; the teacup: common practice, no source.
VOLUMES = {
    "ml": (1.0, 1.0), "l": (1000.0, 1000.0), "dl": (100.0, 100.0), "cl": (10.0, 10.0),
    "fl oz": (28.41, 29.57), "gill": (118.3, 142.1), "teacup": (142.0, 190.0),
    "pint": (473.2, 568.3), "quart": (946.4, 1136.5), "gallon": (3785.4, 4546.1),
}  # fmt: skip
_VOLUME_WORDS = {
    "millilitre": "ml", "millilitres": "ml", "milliliter": "ml", "milliliters": "ml", "mls": "ml", "ml": "ml",
    "litre": "l", "litres": "l", "liter": "l", "liters": "l", "l": "l", "dl": "dl", "cl": "cl",
    "fl oz": "fl oz", "fl. oz": "fl oz", "fl ounce": "fl oz", "fl ounces": "fl oz", "floz": "fl oz",
    "fluid ounce": "fl oz", "fluid ounces": "fl oz", "pint": "pint", "pints": "pint", "pt": "pint",
    "gill": "gill", "gills": "gill", "teacup": "teacup", "teacups": "teacup", "teacupful": "teacup",
    "quart": "quart", "quarts": "quart", "qt": "quart", "qts": "quart", "gallon": "gallon", "gallons": "gallon",
}  # fmt: skip
_WEIGHT_WORDS = {word: grams for word, grams in UNIT_GRAMS.items() if word not in _VOLUME_WORDS}
_MORE_MEASURES = {
    "c": "cup", "drop": "drop", "drops": "drop", "rib": "stalk", "ribs": "stalk",
    "envelope": "packet", "envelopes": "packet",
    "medium-sized": "medium", "medium-size": "medium", "dessertspoon": "dessertspoon",
    "dessertspoons": "dessertspoon", "dsp": "dessertspoon",
}  # fmt: skip
_MEASURES = {**MEASURE_WORDS, **_MORE_MEASURES}


def _any(words: object) -> str:
    return "|".join(re.escape(word) for word in sorted(words, key=len, reverse=True))  # type: ignore[call-overload]


_UNIT = rf"{_any({**_VOLUME_WORDS, **_WEIGHT_WORDS})}"
_ABOUT = (
    r"(?:(?:about|approximately|approx\.?|roughly|around|a|an|generous|scant|heaping|heaped|rounded|level|good|"
    r"thick|thin|fat|plump|up to|at least|another|additional|extra|each|other|full|well|ca\.?|circa|small|large|big|"
    r"or)\s+|~\s*)"
)
_QUANTITY = rf"(?:({NUMBER})\s?(?:-?\s?to\s|-|or\s)\s?)?({NUMBER})(?![\d/%])"
_COUNT = re.compile(_QUANTITY)
_SIZED = re.compile(rf"{_QUANTITY}\s?-?\s?({_UNIT})\b\.?")
_MEASURE = re.compile(rf"({_any(_MEASURES)})\b\.?(?!')")
_LENGTH = re.compile(rf"{_QUANTITY}\s?-?(?:inch(?:es)?|in\.?|cm|mm|centimet(?:re|er)s?)\b(?:[- ](?:long|thick|wide))?")
_LEAD = re.compile(rf"{_ABOUT}+")
_JOIN = re.compile(r"\s*(?:plus|\+|and)\s+(?=\d|an?\s|one\s|two\s)")
_ALSO = re.compile(r"\s*(?:/|,|\bor\b|=)\s*|\s+")


class Quantity(NamedTuple):
    """So many of `unit`: a weight's `g`, a volume, a kitchen measure, or None for pieces."""

    number: Span
    unit: str | None


class Found(NamedTuple):
    """What a text says of amounts: `main` first, `sizes` that say the same again or how large each is."""

    main: Quantity | None
    sizes: tuple[Quantity, ...]
    each: bool
    rest: str


def take_quantity(text: str) -> Found:
    """The amount a plain text starts with, and what is left. Raises ValueError for a fraction over nothing."""
    rest = _lead(text)
    length = _LENGTH.match(rest)
    if length:
        rest = _lead(rest[length.end() :].lstrip(" -"))
    sized = _sized(rest)
    if sized is not None:
        return _of_container(_more(*sized))
    counted = _COUNT.match(rest)
    if counted is None:
        return _measure_only(rest, text[: len(text) - len(rest)])
    times = _span(counted)
    dozen = re.match(r"\s*dozen\b", rest[counted.end() :])
    if dozen:
        times, rest = times.times(Span(12, 12, 12)), rest[: counted.end()] + rest[counted.end() + dozen.end() :]
    rest = re.sub(r"^\s?(?:x|×)\s|^\s?x(?=\d)", " ", rest[counted.end() :]).lstrip(" -")
    rest = _LENGTH.sub(" ", rest, count=1).lstrip(" -") if _LENGTH.match(rest) else rest
    inner = _sized(_lead(rest))
    if inner is not None:
        size, rest = inner
        more = _more(size, rest)
        measure = _MEASURE.match(more.rest)
        unit = _MEASURES[measure[1]] if measure and _MEASURES[measure[1]] in CONTAINERS else None
        rest = more.rest[measure.end() :] if measure and unit else more.rest
        return Found(Quantity(times, unit), (size, *more.sizes), True, _tidy(rest))
    measure = _MEASURE.match(_lead(rest))
    if measure is None:
        return Found(Quantity(times, None), (), False, _tidy(rest))
    return _more(Quantity(times, _MEASURES[measure[1]]), _lead(rest)[measure.end() :])


def _of_container(found: Found) -> Found:
    """`400 g tin of beans` is one tin of that size."""
    measure = _MEASURE.match(found.rest)
    if found.main is None or measure is None or _MEASURES[measure[1]] not in CONTAINERS:
        return found
    one = Quantity(Span(1, 1, 1), _MEASURES[measure[1]])
    return Found(one, (found.main, *found.sizes), True, _tidy(found.rest[measure.end() :]))


def measure_word(word: str) -> str | None:
    """The measure a word names, if it names one."""
    return _MEASURES.get(word)


def size_in(text: str) -> tuple[tuple[Quantity, ...], bool]:
    """The sizes a bracket gives (`about 2 1/2 pounds`, `400g/14oz`, `8 tablespoons`), and whether of each."""
    rest = _lead(text)
    sized = _sized(rest)
    if sized is None:
        counted = _COUNT.match(rest)
        measure = _MEASURE.match(rest[counted.end() :].lstrip(" -")) if counted else None
        if counted is None or measure is None:
            return (), False
        sized = Quantity(_span(counted), _MEASURES[measure[1]]), rest[counted.end() :].lstrip(" -")[measure.end() :]
    found = _more(*sized)
    return ((found.main, *found.sizes) if found.main else ()), "each" in text.split()


def _lead(text: str) -> str:
    found = _LEAD.match(text)
    # `a` may be the number itself, `a couple`, and `large` the size of pieces.
    return text[found.end() :] if found and (_COUNT.match(text[found.end() :]) or _starts(text, found)) else text


def _starts(text: str, found: re.Match[str]) -> bool:
    return bool(_MEASURE.match(text[found.end() :]))


def _sized(text: str) -> tuple[Quantity, str] | None:
    found = _SIZED.match(text)
    if found is None:
        return None
    unit = found[3]
    if unit in _VOLUME_WORDS:
        return Quantity(_span(found), _VOLUME_WORDS[unit]), text[found.end() :]
    grams = _WEIGHT_WORDS[unit]
    return Quantity(_span(found).times(Span(grams, grams, grams)), "g"), text[found.end() :]


def _more(main: Quantity, rest: str) -> Found:
    """Further amounts behind the first: `1 lb 2 oz` adds up, `1 cup / 240 ml` says it again."""
    sizes: list[Quantity] = []
    for _ in range(4):
        joined = _JOIN.match(rest)
        gap = joined or _ALSO.match(rest)
        if gap is None:
            break
        behind = _lead(rest[gap.end() :])
        sized = _sized(behind)
        if sized is None and joined:
            counted = _COUNT.match(behind)
            measure = _MEASURE.match(behind[counted.end() :].lstrip()) if counted else None
            if counted and measure:
                sized = (
                    Quantity(_span(counted), _MEASURES[measure[1]]),
                    behind[counted.end() :].lstrip()[measure.end() :],
                )
        if sized is None:
            break
        other, rest = sized
        last = sizes[-1] if sizes and not joined else main  # in `500 g/1 lb 2 oz` the ounces are the pound's
        adds = joined or (
            last.unit == other.unit == "g" and gap[0].isspace() and 3 * other.number.high < last.number.low
        )
        total = added(last, other) if adds else None
        if total is not None and last is not main:
            sizes[-1] = total
        elif total is not None:
            main = total
        elif not joined:
            sizes.append(other)
        else:
            sizes.append(main)
            main = other if main.unit is None else main
    return Found(main, tuple(sizes), False, _tidy(rest))


# Tablespoons and teaspoons in a cup: NIST Handbook 44, Appendix C.
_SPOONS = {"cup": 48.0, "tbsp": 3.0, "tsp": 1.0}


def added(main: Quantity, other: Quantity) -> Quantity | None:
    """Both together; None where their units do not add up."""
    if main.unit == other.unit:
        factor = 1.0
    elif main.unit in _SPOONS and other.unit in _SPOONS:
        factor = _SPOONS[other.unit] / _SPOONS[main.unit]
    else:
        return None
    low, typical, high = (one + factor * two for one, two in zip(main.number, other.number, strict=True))
    return Quantity(Span(low, typical, high), main.unit)


# `handful blueberries`, `pinch salt`: so small a measure is one of it, with no word before or behind.
_SMALL = frozenset({"handful", "pinch", "splash", "knob", "glug"})


def _measure_only(text: str, led: str) -> Found:
    lead = re.match(r"(?:an? )?(?:(?:good|generous|small|large|big|heaped) )?", text)
    rest = text[lead.end() :] if lead else text
    measure = _MEASURE.match(rest)
    small = measure is not None and measure[1] in _SMALL and re.match(r"\s+[a-z]{3,}", rest[measure.end() :])
    if measure is None or (
        not small and not led and not (lead and lead[0]) and not re.match(r"\s+of\b", rest[measure.end() :])
    ):
        if lead and re.match(r"an? \w", text):
            return Found(Quantity(Span(1, 1, 1), None), (), False, _tidy(rest))
        return Found(None, (), False, _tidy(text))
    before = f"{led}{lead[0] if lead else ''}"
    if not re.search(r"\b(?:an?|another|each)\b", before) and measure[1].endswith("s") and measure[1] != "glass":
        return Found(None, (), False, _tidy(rest[measure.end() :]))  # `slices of bread`: how many is not said
    return _more(Quantity(Span(1, 1, 1), _MEASURES[measure[1]]), rest[measure.end() :])


def _tidy(text: str) -> str:
    return re.sub(r"^(?:\s|-\s|of\b|the\b|each\b|[.,:;/])+", "", text.strip()).strip()


def _span(found: re.Match[str]) -> Span:
    high = number(found[2])
    low = number(found[1]) if found[1] else high
    low, high = min(low, high), max(low, high)
    if not 0 < high <= 100_000:
        raise ValueError("no kitchen amount")
    return Span(low, (low + high) / 2, high)
