"""Find the amount in a line: how many, of which measure, and how sure."""

import re
from typing import Literal, NamedTuple

from calmlarder.matching.numbers import NUMBER, NUMBER_ALONE, ONE, PART_WORDS, RANGE, WHOLE_WORDS, Span, number

# Metric and imperial units in grams or millilitres; a millilitre counts as a gram (common practice, no source).
UNIT_GRAMS = {
    "kg": 1000, "kilo": 1000, "kilos": 1000, "kilogram": 1000, "kilograms": 1000, "mg": 0.001,
    "g": 1, "gr": 1, "gm": 1, "gms": 1, "grm": 1, "grms": 1, "gram": 1, "grams": 1, "gramme": 1, "grammes": 1,
    "l": 1000, "litre": 1000, "litres": 1000, "liter": 1000, "liters": 1000, "dl": 100, "cl": 10,
    "ml": 1, "millilitre": 1, "millilitres": 1,
    "oz": 28.35, "ounce": 28.35, "ounces": 28.35, "lb": 453.6, "lbs": 453.6, "pound": 453.6, "pounds": 453.6,
    "kgs": 1000, "mls": 1, "ltr": 1000, "ltrs": 1000, "lt": 1000, "litr": 1000, "floz": 29.57, "fl oz": 29.57,
    "quart": 946, "quarts": 946, "qt": 946, "qts": 946, "gallon": 3785, "gallons": 3785, "gal": 3785, "gals": 3785,
    "stone": 6350,
}  # fmt: skip
CONTAINERS = (
    "tin", "can", "jar", "bag", "punnet", "block", "tub", "pot", "carton", "packet", "pouch", "bottle",
    "box", "loaf", "ball", "tube",
)  # fmt: skip
MEASURES = (
    *CONTAINERS, "tbsp", "tsp", "cup", "glass", "mug", "handful", "pinch", "dash", "splash", "drizzle", "glug",
    "knob", "bunch", "head", "bulb", "bowl", "plate", "portion", "slice", "wedge", "squeeze", "clove", "stalk",
    "stick", "spear", "leaf", "floret", "sprig", "cube", "piece", "fillet", "rasher", "nest", "bundle", "sheet",
    "cob", "roll", "heel", "thumb", "small", "medium", "large", "bar", "scoop", "pat", "pint", "sack", "log", "crown",
    "hand", "baguette", "matchbox",
)  # fmt: skip
_ALIASES = {
    "tablespoon": "tbsp", "tablespoons": "tbsp", "tbs": "tbsp", "tbsps": "tbsp", "teaspoon": "tsp",
    "teaspoons": "tsp", "tsps": "tsp", "leaves": "leaf", "loaves": "loaf", "bunches": "bunch",
    "boxes": "box", "pinches": "pinch", "dashes": "dash", "splashes": "splash", "glasses": "glass",
    "pack": "packet", "packs": "packet", "pkt": "packet", "pieces": "piece", "chunks": "piece", "sticks": "stick",
    "square": "piece", "squares": "piece",
    "pots": "pot", "end": "heel", "handfull": "handful", "big": "large", "tray": "punnet",
    "spoon": "tbsp", "spoonful": "tbsp", "spoonfuls": "tbsp", "tablespoonful": "tbsp", "teaspoonful": "tsp",
    "mugful": "mug", "cupful": "cup", "bowlful": "bowl", "glassful": "glass", "tumbler": "glass",
    "container": "box", "containers": "box", "tupperwares": "box", "tupper": "box", "pouches": "pouch",
    "tupperware": "box", "sachet": "packet", "wedges": "wedge", "squeezes": "squeeze",
    "brick": "block", "slab": "block", "bundle": "bunch", "mess": "bunch", "crate": "sack",
    "case": "packet", "pkts": "packet", "pk": "packet", "pks": "packet",
    "tetrapak": "carton", "net": "bag", "baggie": "bag", "bagful": "bag",
    "jarful": "jar", "hand": "hand", "ear": "cob", "ears": "cob",
    "pcs": "piece", "pc": "piece", "nos": "piece", "stems": "stalk",
    "stem": "stalk", "crust": "heel", "crusts": "heel",
    "pt": "pint", "pts": "pint", "hunk": "heel", "multipack": "packet", "4pack": "packet", "sachets": "packet",
}  # fmt: skip
# What packs, bunches and bowls are called in other kitchens.
_ELSEWHERE = {
    "bori": "sack", "ikat": "bunch", "tali": "bunch", "judi": "bunch", "maco": "bunch", "manojo": "bunch",
    "mazzo": "bunch", "bund": "bunch", "btl": "bottle", "bnch": "bunch", "bch": "bunch", "papan": "block",
    "katori": "bowl", "lata": "tin", "bote": "jar", "frasco": "jar", "flasche": "bottle", "paquet": "packet",
    "paquete": "packet", "boite": "tin", "paczka": "packet", "sloik": "jar", "puszka": "tin", "dabba": "box",
    "pkg": "packet", "lg": "large", "lge": "large", "lrg": "large", "med": "medium", "sm": "small", "sml": "small",
     "bx": "box", "ctn": "carton", "pnt": "punnet", "hdful": "handful", "hndfl": "handful",
}  # fmt: skip
_NAMED = {**{name: name for name in MEASURES}, **_ALIASES, **_ELSEWHERE}
MEASURE_WORDS = {**{f"{word}s": name for word, name in _NAMED.items() if len(word) > 2}, **_NAMED}
_UNIT = "|".join(sorted(UNIT_GRAMS, key=len, reverse=True))
_MEASURE = "|".join(sorted(MEASURE_WORDS, key=len, reverse=True))
# Words for a part of what there usually is, and how much of it: common practice, no source.
_SHARES = (
    (re.compile(r"\b(?:nearly|almost|mostly|about to be|pretty much) (?:empty|gone|finished|done|out)\b"
        r"|\b(?:dregs|last|scraps?) of(?: the)?\b"
                r"|\b(?:end|dregs|remains) of the\b|\brunning (?:low|out)\b|\blow on\b"), Span(0.05, 0.12, 0.25)),
    (re.compile(r"\b(?:scrapes?|smears?|scrapings?|smidge[n]?|dregs) of(?: the)?\b|\b(?:scrape|smear|scraping"
        r"|dregs)\b"),
     Span(0.02, 0.06, 0.12)),
    (re.compile(r"\b(?:(?:wee|tiny|little) (?:drops?|bits?|pieces?|lumps?)|drops?|dribbles?|splodges?|trickle"
        r"|thimbles?)(?: of)?\b(?! )?"),
     Span(0.05, 0.1, 0.2)),
    (re.compile(r"\b(?:end |odd |last |small )?(?:bits?|scraps?|nubs?|stubs?|stumps?|lumps?|hunks?|remnants?"
        r"|chunks?)(?: (?:of|left)\b)?"), Span(0.1, 0.25, 0.45)),
    (re.compile(r"\b(?:loads?|lots|tons|plenty|heaps|masses|oodles|piles|too (?:many|much)|glut)\b(?: (?:and \w+"
        r"|of)\b)?"), Span(1.5, 2.5, 4)),
    (re.compile(r"\b(?:nearly|almost|mostly) full\b"), Span(0.75, 0.85, 1)),
    (re.compile(r"\ba little(?: bit)?(?: of)?\b"), Span(0.1, 0.25, 0.45)),
    (re.compile(r"\b(?:(?:about |an |one )?inch left|inch in the bottom)\b"), Span(0.05, 0.12, 0.2)),
)  # fmt: skip
_LEFT = re.compile(
    rf"(?<![\w/])(?:about |only |just |approx )?({'|'.join(PART_WORDS)}|three quarters|two thirds|\d/\d"
    rf"|\d{{1,2}}%)(?: (?:of it|a|of|the|an?))?"
    r"(?: (?:pack|bag|jar|tub|tin|bottle|block|carton|box))? (left|full|remaining|gone|used|eaten|empty)\b"
)
_GONE = frozenset({"gone", "used", "eaten", "empty"})
_GRAMS_ONLY = (
    r"([5-9]\d|[1-9]\d\d|[1-4]\d00)(?![\w/.,%-])"
    rf"(?! ?(?:x|{_UNIT}|{_MEASURE}|percent|of|to)\b)"
)
# Other ways to write an amount, and the plain one.
_PLAINLY = (
    (re.compile(r"(?<=\d) ?(?:n|&|\+) (?=a half|a quarter|half|½|1/2)"), " and "),
    (re.compile(r"(?<=\d) and (?=half\b)"), " and a "),
    (re.compile(r"\b(?:half|1/2) (?:a )?doz(?:en)?\b\.?"), "half a dozen"),
    (re.compile(r"\b(?<!half )(?:1|one|an?) doz(?:en)?\b\.?(?: or so)?"), "12"),
    (re.compile(r"\b(?:2|two) doz(?:en)?s?\b\.?"), "24"),
    (re.compile(r"(?<=\d) (?:and|n|&) (?=\d/\d)"), " "),
    (re.compile(r"\b(?:enough|just enough) (?:left )?(?:for|4) (?:about )?(?=\d|one|two|three|four)"), " portions "),
    (
        re.compile(r"\bportions (\d+|one|two|three|four)\b(?: (?:people|person|of us|portions?|meals?))?"),
        r"\1 portions",
    ),
    (
        re.compile(
            r"(?:(?<=^)|(?<=, )|(?<=[a-z] ))(?<!half )(?<!quarter )(?<!half a )(?<!and )(?<!third )(?<!couple )"
            r"(?:a |about a )?(?=(?:kilo|kg|litre|liter|gallon|gal|quart|pound|lb)\b)"
        ),
        "1 ",
    ),
    (re.compile(rf"(?<!\d )\b({_MEASURE}) and a half\b"), r"1.5 \1"),
    (re.compile(r"\bdoz\b\.?"), "dozen"),
    (re.compile(r"(?<=\d) ?(?:nos?|pcs?)\b\.?"), " "),
    (
        re.compile(
            rf"\b(?:packs?|packets?|pkts?|box(?:es)?|bags?|trays?|cartons?|cases?|nets?|sets?"
            rf"|bunch(?:es)?) of ({'|'.join(WHOLE_WORDS)}|\d{{1,3}})\b(?! ?(?:k?g|ml|l|oz|lbs?)\b)"
        ),
        r" \1 ",
    ),
    (
        re.compile(
            rf"(?<![\w/.x])(?!(?:1|one)\b)(\d{{1,2}}|{'|'.join(WHOLE_WORDS)})[ -]?(?:pack|pk"
            rf"|pck)\b(?! of)"
        ),
        r" \1 ",
    ),
    (
        re.compile(
            r"(?<=\d)(?=(?:tins?|cans?|jars?|packs?|packets?|bags?|tubs?|blocks?|punnets?|cartons?|bottles?"
            r"|bunch(?:es)?|heads?|slices?|cloves?)\b)"
        ),
        " ",
    ),
    (re.compile(r"\b(?:a )?couple(?: of)?\b"), "2"),
)
# A number too large to be counted is grams: `spinach 400`, `tofu 2 x 350`. Ours, common practice.
_BARE_GRAMS = (
    (re.compile(rf"(?<![\w/.,:-])(\d{{1,2}}) ?x ?{_GRAMS_ONLY}"), r"\1 x \2g"),
    (re.compile(rf"(?<![\w/.,:-])(?<!\dx )(?<!x ){_GRAMS_ONLY}"), r"\1g"),
)  # fmt: skip
_TIMES = re.compile(r"(?<!\w)x\s?(\d{1,3})(?!\w)|(?<![\w/.])(\d{1,3})\s?x(?:(?!\w)|(?=\d))")
_NUMBER_LEFT = re.compile(r"(?<![\w/.,])(\d{1,3}) (?:still )?(?:left|remaining)\b")
_METRIC = re.compile(rf"(?<![\w.,/-])(?:({NUMBER})\s?(?:-|to)\s?)?({NUMBER})\s?-?({_UNIT})\b\.?")
_KITCHEN = re.compile(rf"(?<!\w)(?:an? )?({_MEASURE})\b(?: of)?(?: the\b| an?\b)?(?!')")
# How much another size of a glass or a bowl holds: ours, common practice, no source.
_SIZES = {
    **dict.fromkeys(("small", "little", "tiny", "wee"), Span(0.6, 0.75, 0.9)),
    **dict.fromkeys(("large", "big", "huge", "massive", "giant"), Span(1.1, 1.4, 1.9)),
}
_PACK_SIZES = {
    **dict.fromkeys(("small", "little", "tiny", "wee"), Span(0.4, 0.55, 0.8)),
    **dict.fromkeys(("large", "big", "huge", "massive", "giant"), Span(1.2, 1.8, 3)),
}
_SIZED = re.compile(
    rf"(?<!\w)({'|'.join(_SIZES)}) (?=({'|'.join(CONTAINERS)}|glass|mug|cup|bowl|plate|handful|slice|wedge|piece"
    r"|portion|container|pack|bunch)\w*\b)"
)
_SERVED = frozenset({"glass", "mug", "cup", "bowl", "plate", "handful", "slice", "wedge", "piece", "portion", "bunch"})
_ONE = re.compile(r"^an?(?= [a-z]|$)")
_MINIATURE = re.compile(r"\b(?:baby|mini|tiny|little|wee)\b")
_COUNT_OF = re.compile(rf"(?<![\w/.,-])(?:{NUMBER}) ?(?:{_MEASURE})\b(?! (?:{_MEASURE})\b)")
_NEGATIVE = re.compile(r"(?<![\w)])-\s?\d")
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
    share: bool = False  # of what there usually is (`a bit of cheese`)


def take_amount(text: str, is_counted: bool = False) -> tuple[Amount, str]:
    """The amount in a plain text and the text without it. What is counted is told in no bare grams (`120 eggs`).

    Raises ValueError, in words for a cook, for an amount that cannot be.
    """
    if _NEGATIVE.search(text):
        raise ValueError("an amount cannot be below nothing")
    for shape, plainly in _PLAINLY if is_counted else (*_PLAINLY, *_BARE_GRAMS):
        text = shape.sub(plainly, text)
    still = _NUMBER_LEFT.search(text)
    if still:  # `box of 12, 7 left`
        text = f"{still[1]} {NUMBER_ALONE.sub(' ', _cut(text, still))}"
    fraction, shared, text = _take_share(text)
    times = ONE
    found = _TIMES.search(text)
    if found:
        count = int(found[1] or found[2])
        times, text = Span(count, count, count), _cut(text, found)
    grams, text = _take_metric(text)
    if grams is not None and shared:
        fraction, shared = ONE, False  # `lump 150g`: the grams say it all
    sized = _SIZED.search(text)
    if sized:
        text = _cut(text, sized)
        # Where grams are told, they say it all.
        sizes = _SIZES if sized[2] in _SERVED else _PACK_SIZES
        fraction = fraction.times(sizes[sized[1]]) if grams is None else fraction
    measure, several = None, False
    together = _COUNT_OF.search(text)
    if together and len(_KITCHEN.findall(text)) > 1:
        # `bunch of asparagus, maybe 8 spears`: the number belongs to the measure behind it.
        text = f"{together[0]} {NUMBER_ALONE.sub(' ', _KITCHEN.sub(' ', _cut(text, together)))}"
    counted, text, number_given = _take_number(text)
    found_measure = _measure_in(text)
    if found_measure:
        measure = MEASURE_WORDS[found_measure[1]]
        several = (
            not number_given
            and found is None
            and found_measure[1] != "glass"
            and found_measure[1].endswith("s")
            and grams is None
        )
        text = _cut(text, found_measure)
    elif not number_given and _ONE.match(text):
        number_given, text = True, _ONE.sub("", text)
    if measure is None and number_given and _MINIATURE.search(text):
        measure = "small"
    if grams is not None and measure not in CONTAINERS:
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
    )
    if grams is not None and grams.times(count_span).high > MOST_GRAMS:
        raise ValueError("more than 50 kg is no kitchen amount")
    return amount, " ".join(text.split())


def _measure_in(text: str) -> re.Match[str] | None:
    """The measure of a text: of several the container, else the first."""
    found = list(_KITCHEN.finditer(text))
    return next((one for one in found if MEASURE_WORDS[one[1]] in CONTAINERS), found[0] if found else None)


def _take_share(text: str) -> tuple[Span, bool, str]:
    """How much of a usual amount is told (`a bit of`, `half left`), and the text without it."""
    found = _LEFT.search(text)
    if found:
        part = _part(found[1])
        part = 1 - part if found[2] in _GONE else part
        if part > 0:
            return Span(0.8 * part, part, 1.2 * part), False, _cut(text, found)
    for shape, share in _SHARES:
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
