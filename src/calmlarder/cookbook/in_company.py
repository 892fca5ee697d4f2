"""Lines that only the rest of a recipe makes clear: bare cloves among whole spices, pulses that no step soaks."""

import re
from collections.abc import Sequence

from calmlarder.cookbook.lines import LineReader
from calmlarder.cookbook.recipe import IngredientRead, Recipe

_BARE_CLOVES = re.compile(r"\s*(\d{1,2}|an?|one|two|three|four|five|six|eight|a few)\s+cloves?\s*", re.IGNORECASE)
_WHOLE_SPICES = frozenset({"cinnamon-stick", "cinnamon", "star-anise", "cardamom", "allspice", "mace", "peppercorns"})
_WHOLE = re.compile(r"\b(?:sticks?|pods?|berries|star anise|whole|peppercorns?|blades?)\b", re.IGNORECASE)
# A step that soaks pulses, or boils them as long as only dry ones need.
_FROM_DRY = re.compile(
    r"\bsoak\w*|\bovernight\b|\bpressure cook\w*|\binstant pot\b|\bslow cook\w*"
    r"|\b(?:1|2|3|one|two|three|1½|1\.5) ?(?:hours?|hrs?)\b"
    r"|\b(?:4[05]|5\d|60|[7-9]\d) ?(?:min|mins|minutes)\b|\bdr(?:y|ied) (?:\w+ )?(?:beans?|chickpeas?|pulses)\b",
    re.IGNORECASE,
)
_CANNED, _OTHERWISE = "canned ", ("dry ", "boiled ")
_WEIGHED = re.compile(
    r"(\s*[\d½¼¾][\d./½¼¾ ]*\s?(?:g|kg|oz|ounces?|cups?|lbs?|tbsp|tablespoons?)\.?\s+(?:of\s+)?)", re.IGNORECASE
)
TAKEN = "canned, drained"
_AS_A_SPICE = "the spice"


def read_in_company(recipe: Recipe, reader: LineReader) -> list[IngredientRead]:
    """Each line of a recipe as the reader takes it, or as the rest of the recipe says, which is `assumed`."""
    reads = [reader.read(text) for text in recipe.ingredients]
    steps = " ".join(recipe.steps)
    found = []
    for place, read in enumerate(reads):
        near = reads[max(0, place - 2) : place + 3]
        found.append(_as_a_spice(read, near, reader) or _from_a_tin(read, steps, reader) or read)
    return found


def _as_a_spice(read: IngredientRead, near: Sequence[IngredientRead], reader: LineReader) -> IngredientRead | None:
    """`4 cloves` between cinnamon and star anise: the spice, which is said; beside other things it may be garlic."""
    bare = _BARE_CLOVES.fullmatch(read.text)
    among = [one for one in near if one.food in _WHOLE_SPICES and _WHOLE.search(one.text)]
    if read.outcome == "read" or bare is None or not among:
        return None
    again = reader.read(f"{bare[1]} whole cloves")
    return again.model_copy(update={"text": read.text, "assumed": _AS_A_SPICE}) if again.outcome == "read" else None


def _from_a_tin(read: IngredientRead, steps: str, reader: LineReader) -> IngredientRead | None:
    """A weight of pulses of no state: out of a tin and drained, where no step soaks or boils them for long."""
    tins = [one for one in read.choices if one.startswith(_CANNED)]
    head = _WEIGHED.match(read.text)
    asked = read.outcome == "ask" and len(tins) == 1 and any(one.startswith(_OTHERWISE) for one in read.choices)
    if not asked or head is None or not steps or _FROM_DRY.search(f"{read.text} {steps}"):
        return None
    again = reader.read(f"{head[0]}{tins[0]}, drained")
    return again.model_copy(update={"text": read.text, "assumed": TAKEN}) if again.outcome == "read" else None
