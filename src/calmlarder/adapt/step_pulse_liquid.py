"""The liquid of tinned pulses, which steps pour in with them: water takes its place.

The list counts pulses drained and rinsed; what limits them goes over into their liquid (Tuck et al. 2018, J Hum Nutr
Diet 31:436).
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.model import Adapted
from calmlarder.tables.book import Tables

_PULSES = r"(?:beans|chickpeas|lentils|peas|pulses)"
_LIQUID = r"(?:liquid|liquor|juices?|brine)"
_WITH_IT = re.compile(
    rf"(?P<pulses>\b{_PULSES}(?: \[[^\]]*\]| and [a-z]+)?)(?P<and>,? (?:and|with|in|plus|along with)) "
    rf"(?:(?:all|half|most|some|a little|a splash|[\d½¼¾⅓⅔][\d½¼¾⅓⅔ ./]*(?:cups?|ml|tbsp|tablespoons?|ladles?)) )?"
    rf"(?:of )?(?:(?:their|its|the) "
    rf"(?:(?:can|tin|canning|own|reserved|bean) )*{_LIQUID}\b"
    rf"|the (?:water|{_LIQUID}) (?:from|in|of) (?:(?:one|both|all|half) (?:of )?)?(?:the|their) (?:tins?|cans?))",
    re.IGNORECASE,
)
_KEPT = re.compile(
    rf"(?P<pulses>\b{_PULSES}(?: \[[^\]]*\])?[^.;]{{0,30}}?),? (?:but |and )?(?:reserv|sav|keep|retain)(?:ing|e|p)?"
    rf"(?: back)? (?:\w+ ){{0,4}}{_LIQUID}\b(?: from the (?:can|tin)s?)?",
    re.IGNORECASE,
)
_OF_A_TIN = re.compile(
    r"\b(?:the )?(?:liquid|liquor|brine) (?:from|of|in) "
    r"(?:(?:one|both|all|half)(?: of)?(?: the| their)?|the|their|an?|each) "
    r"(?:bean |chickpea )?(?:tins?|cans?|jars?)\b(?! of (?:tomato|coconut))",
    re.IGNORECASE,
)
# `all the beans, including the liquid from the black beans`
_INCLUDING = re.compile(
    rf",? (?:including|along with|together with|with|and|plus) (?:(?:all|half|some) (?:of )?)?(?:the )?{_LIQUID} "
    rf"(?:from|of|in) (?:the )?(?:[a-z]+ ){{0,2}}{_PULSES}(?: and \d+ \w+ of the [\w ]+?)?(?=,| and\b| plus\b|[.;]|$)",
    re.IGNORECASE,
)
_OF_IT = re.compile(
    rf"\b(?:(?:some|a little) (?:of )?)?(?:(?:the|their) )?(?:reserved )?"
    rf"(?:bean|chickpea|lentil|canning|can|tin) (?:{_LIQUID}|water)\b",
    re.IGNORECASE,
)
# `2 cans black beans, drained, 1/4 cup of the liquid reserved`
_AMOUNT = r"(?P<much>[\d½¼¾⅓⅔][\d½¼¾⅓⅔ ./]*(?:cups?|ml|tbsp|tablespoons?|tsp|teaspoons?))"
_TINNED = rf"(?:of )?(?:(?:the|their|its) )?(?:(?:can|tin|canning|bean) )*{_LIQUID}"
_SO_MUCH_KEPT = re.compile(
    rf"{_AMOUNT} {_TINNED} (?:reserved|kept|saved)|(?:reserv|keep|sav)\w* {_AMOUNT.replace('much', 'kept')} {_TINNED}",
    re.IGNORECASE,
)
_THE_RESERVED = re.compile(rf"\bthe reserved (?:(?:bean|chickpea|lentil|canning|can|tin) )?{_LIQUID}\b", re.IGNORECASE)
_NOTE = "Tinned pulses go in drained and rinsed: what limits them goes over into their liquid, so take water."


def water_for_their_liquid(
    marked: Sequence[str], parts: Sequence[Part], adapted: Adapted, tables: Tables
) -> tuple[list[str], list[str]]:
    """The changed steps with water for the liquid of tinned pulses, and a note where one took it."""
    foods = {part.read.food for part in parts if part.read.food} | {
        one.food for change in adapted.changes for one in change.to
    }
    if not any(tables.food_by_id[food].kind == "pulse" and tables.food_by_id[food].state != "dry" for food in foods):
        return list(marked), []
    listed = next((one for part in parts if (one := _SO_MUCH_KEPT.search(part.read.text))), None)
    much = f"{listed['much'] or listed['kept']} water" if listed else "water"
    told = [_with_water(_THE_RESERVED.sub(much, step)) for step in marked]
    return told, [_NOTE] if told != list(marked) else []


def _with_water(step: str) -> str:
    step = _WITH_IT.sub(
        lambda one: f"{one['pulses']}{' and' if 'in' in one['and'].split() else one['and']} a little water", step
    )
    step = _INCLUDING.sub(" with a little water", step)
    return _OF_IT.sub("water", _OF_A_TIN.sub("a little water", _KEPT.sub(r"\g<pulses>", step)))
