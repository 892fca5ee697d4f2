"""What a day behind says of a fresh thing: `green beans from monday` were bought then, and not cooked."""

import re
from collections.abc import Iterable
from datetime import date, timedelta

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.dates.date_words import Dated
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.part import Part
from calmlarder.tables.rows import Food

# Vegetables and fruit that are sold raw; potatoes are left out, for those of a day are left from a dinner.
_SOLD_RAW = frozenset({
    "leaf", "salad-leaf", "brassica", "root", "mushroom", "tomato", "pepper", "pod", "shoot", "stem", "allium",
    "fruit-vegetable", "sweetcorn", "squash", "herb", "fruit", "citrus", "tofu", "tempeh",
})  # fmt: skip
# What nobody cooks by itself, or cannot tell of when it was made; potatoes and eggs that are so many days old are raw.
_NEVER_LEFT_OVER = frozenset({
    "spice", "oil", "acid", "sweetener", "nut", "seed", "dried-fruit", "cheese", "milk", "cream", "yoghurt", "butter",
    "bread", "wrap", "pickle", "condiment", "juice", "nut-butter", "olive", "sea-vegetable", "soy-sauce", "plant-drink",
})  # fmt: skip
_LASTS = _NEVER_LEFT_OVER | {"potato", "egg"}
_OUT_OF_ITS_SHELL = frozenset({"egg-yolk", "egg-white"})  # they are left raw in a cup
# What a shop or a stall makes as well: the day on which it was made tells how old it is, and not that it was cooked.
_MADE_FRESH = frozenset({"tofu", "tempeh", "cheese", "bread", "wrap", "noodle"})
# What is sold in tubs and packs: since a day it stands open.
_SINCE = LatePattern(r"\b(?:since|bowl|katori|saucer|plate)\b")
_SOLD_PACKED = frozenset({"cheese", "yoghurt", "cream", "paste", "sauce", "plant-drink", "milk", "pickle"})
_RAW_MEAT = frozenset({"meat", "poultry", "fish", "shellfish"})
_OF_AN_EVENING = LatePattern(r"\b(?:last|yesterday'?s?|[a-z]+day'?s?) (?:night|evening)(?:'?s)?\b")  # a dinner's
_RAW_CUT = LatePattern(r"\b(?:fillets?|fil+ets?|minced?|raw)\b")
_SOON = 3  # days a cooked thing may still have: ours
_SAYS_COOKED = LatePattern(
    r"\b(?:left ?overs?|left|cooked|home[ -]?made|made|done|boiled|roast(?:ed)?|steamed|fried|baked|grilled|stewed"
    r"|dinner|lunch|tea|supper|box|mash(?:ed)?|batch|soup|curry|stew|goulash|gulasch|ragu|ragout|dish|takeaway)\b"
)


def bought_then(text: str, raw: Iterable[Part], lexicon: Lexicon) -> bool:
    """Whether a line, read without its day behind, names nothing but raw things, and no word says they were cooked."""
    parts = tuple(raw)
    foods = [lexicon.tables.food_by_id[food] for part in parts for food in part.named.foods]
    said = set(_SAYS_COOKED.findall(text))
    if said - {"made"} or (said and not all(food.kind in _MADE_FRESH for food in foods)):
        return False
    clear = all(part.named.outcome == "matched" for part in parts)
    also = _LASTS if re.search(r"\bold\b", text) else _NEVER_LEFT_OVER
    if re.search(r"\bsince\b", text) or not _OF_AN_EVENING.search(text) or _RAW_CUT.search(text):
        also = also | _RAW_MEAT  # raw meat that is taken for cooked could hurt; the other way round it is cooked again
    return clear and all(
        (food.kind in _SOLD_RAW | also or food.id in _OUT_OF_ITS_SHELL) and food.state not in FITS["cooked"]
        for food in foods
    )


def as_made(dates: Iterable[Dated], parts: Iterable[Part], today: date, lexicon: Lexicon) -> tuple[Dated, ...]:
    """The dates, with a weekday by itself behind what is cooked as the day it was made: `pulled pork 1 lb tues`.

    What has been eaten of has no label any more, however near the day lies: `half a rotisserie chicken, sat`.
    """
    parts = tuple(parts)
    begun = all(part.amount.how != "weighed" and part.amount.number.typical < 1 for part in parts)
    foods = [lexicon.tables.food_by_id[food] for part in parts for food in part.named.foods]
    if not foods or any(food.state not in FITS["cooked"] for food in foods):
        return tuple(dates)
    return tuple(
        Dated("made", dated.on - timedelta(days=7))
        if dated.bare and dated.kind == "use-by" and dated.on and (dated.on - today).days > (0 if begun else _SOON)
        else dated
        for dated in dates
    )


def as_bought(dates: Iterable[Dated], text: str, foods: Iterable[Food]) -> tuple[Dated, ...]:
    """The dates, with the day of making as the day of buying.

    What a stall made on a day lies open since then, and so does a packed thing since a day (`feta, since saturday`).
    """
    since = _SINCE.search(text) and all(food.kind in _SOLD_PACKED for food in foods)
    made_then = since or "made" in _SAYS_COOKED.findall(text) or all(food.id in _OUT_OF_ITS_SHELL for food in foods)
    return tuple(
        dated._replace(kind="opened" if made_then else "bought") if dated.kind == "made" else dated for dated in dates
    )
