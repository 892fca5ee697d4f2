"""Amounts as people put them: halves of packs, dessertspoons, mugs' worths, prices that are none."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import Rewrite

# A dessertspoon is two teaspoons: common practice, no source.
_DESSERTSPOONS = LatePattern(r"(?<![\w/.])(\d+(?:\.\d+)?) ?(?:dsp|dessert ?spoon(?:ful)?)s?\b")
_AND_A_HALF = LatePattern(r"^(?:an? |one )?((?!.*dozen)[a-z]{3,}(?: [a-z]{3,})?) (?:and|n|&) (?:a half|1/2)$")
# A bottle by its pints, and a sausage by its shape.
_PINTER = LatePattern(r"(?<![\w/.])(\d) ?pinters?\b")
_RING = LatePattern(r"\b(chorizo|kielbasa|sausage|sucuk|boerewors)( \d| half(?: a)?)? rings?\b")
_SPRINKLE_OF = LatePattern(r"\b(?:a |the last )?(?:sprinkl(?:es?|ing)|mouthfuls?) of (?:the )?(?=[a-z])")
_KILOS = LatePattern(r"(?<![\w.,/-])(\d/\d|\d{1,2}(?:\.\d)?) ?k\b")
# So many cuts of something are slices; what is cut is no slice.
_CUTS = LatePattern(r"(?<=\d )cuts?\b|\b(one|two|three|four|five|six|few|couple|some)( of)? cuts\b")
_VAC_PACK = LatePattern(r"\bvac(?:uum)?[ -]?pack(?:ed|s)\b")
# What was paid says nothing of how much there is: `spinach 20 bob each`.
_PRICE = LatePattern(
    r"[,;(@]? ?(?<![\w.])(?:at |for )?\d+(?:\.\d+)? ?(?:bob|quid|shillings?|ksh|kes|naira|rands?|pesos?|rupees|dollars?"
    r"|bucks|pence|euros?)\b(?: (?:each|apiece|a (?:bunch|bag|kilo|pop|piece)|per \w+|the lot))?\)?",
    needs=(
        "bob",
        "quid",
        "shilling",
        "ksh",
        "kes",
        "naira",
        "rand",
        "peso",
        "rupees",
        "dollar",
        "bucks",
        "pence",
        "euro",
    ),
)
# `mugs worth of milk` is one mug of it, written without its apostrophe.
_A_MUGS_WORTH = LatePattern(
    r"^(?:about |maybe )?(?:a |one )?(mug|cup|bowl|jar|handful|spoon)(?:e?s|'s) worth of (?=[a-z])"
)
# An empty milk tin measures dry goods: `egusi, one milk tin`.
_MILK_TIN = LatePattern(r"(?<=[a-z,)] )((?:one|two|three|four|half|\d+) )milk (tins?|cups?)\b")
# Of a weight that is printed on it a little is there: `butter 100g, little left`.
_LITTLE_OF_MEASURE = LatePattern(
    r"(?<=[a-z]) \d+(?:\.\d+)? ?(?:k?g|ml|l|oz|lbs?)((?: (?:tub|jar|bottle|pot|carton|bag|pack|block|tin))?)[ ,(-]+"
    r"(?:only |just )?(?:a )?(?:little|bit|tiny bit|little bit|touch)(?: left\b|(?=\s*$))\)?"
)
# `yoghurt 200g cup, 2`: two of them.
_SO_MANY_BEHIND = LatePattern(
    r"(?<![\d.x])(\d{2,4} ?(?:g|ml))( (?:cup|pot|tub|pack|packet|block|carton|tin|can|bag|bottle|jar)s?),? ?x? ?(\d)"
    r"(?=\s*$)"
)
# A word of the name that is no kilogram: `KG whiting fillets 500g`.
_NO_KILO = LatePattern(r"^kgs? (?=[a-z].*\d ?(?:k?g|lbs?|oz)\b)")
# A bottle by its litres alone.
_LITRES = LatePattern(
    r"\b((?:soft ?drinks?|milk|juice|squash|cordial|lemonade|cola|water|soda|oat drink|oat milk|soya milk|soy milk|wine"
    r"|beer|cider)s?) ([0-3]\.\d{1,2})(?=\s*(?:$|[,;(]))(?! ?%)"
)
_HALF_USED = LatePattern(r"\b(?:half|1/2) (?:used|eaten)\b(?! by)")
_AND_ANOTHER_HALF = LatePattern(
    r"(\d{1,2})(?: ?,| ?\+| and| plus)? (?:another|extra) (?:half|1/2)(?: (?:one|of one))?\b"
)
# `yoghurt 500g, half`, `gallon of milk half`: half of what is measured is there.
_HALF_OF_MEASURE = LatePattern(
    r"(\d ?(?:k?g|ml|l|cl|litres?|liters?|pints?|pts?|oz|lbs?)\b|\b(?:gallon|litre|liter|pint|quart|kilo)\b)"
    r"([^,;&+]*?)(?:, ?| ?\(| )(?:half|1/2)\)?$"
)
# `1/2 x 500g mince` is half of such a pack.
_PART_OF_PACK = LatePattern(
    r"(?<![\w/.])(1/2|half|1/3|1/4|3/4|2/3|a third|a quarter) ?(?:x|of an?|of|an?|) ?(?=\d)"
    r"(\d{2,4}) ?(k?g|ml|oz|lbs?)\b"
)
# What grows small is half as much and less.
_DWARF = LatePattern(
    r"\b(?:lebanese|persian|thai|mini|baby|snack|tiny|dwarf|finger) "
    r"(?=(?:cucumber|cuc|cuke|aubergine|eggplant|brinjal|courgette|zucchini)s?\b)"
)
# How a thing is cut, where no number says how many pieces.
_IN_PIECES = LatePattern(r"(?<=[a-z]) (?:pieces|florets)(?=(?: only)?\s*(?:$|[,;(]))")
_HAS_A_NUMBER = LatePattern(r"\d|\b(?:few|couple|some|half|one|two|three|four)\b")
# `carrots and parsnips, 1kg of each`: so much of the one and as much of the other.
_OF_EACH = LatePattern(
    r"^([a-z][a-z ]+(?:(?:, | and | & | \+ )[a-z][a-z ]+)+),? "
    r"(\d{1,4}(?:\.\d)?(?: ?(?:kg|g|kilos?|lbs?|oz|ml|l|tins?|bags?|packs?|jars?))?) (?:of )?each$"
)


def _of_each(found: re.Match[str]) -> str:
    return ", ".join(f"{found[2]} {thing}" for thing in re.split(r", | and | & | \+ ", found[1]))


SPOONS_AND_PIECES = (
    Rewrite(_DESSERTSPOONS, lambda found: f"{float(found[1]) * 2:g} tsp"),
    Rewrite(_AND_A_HALF, r"1.5 \1"),
    Rewrite(_PINTER, r"\1 pints"),
    Rewrite(_RING, r"\1\2 pack"),
    Rewrite(_SPRINKLE_OF, "a little bit of "),
)
AMOUNTS = (
    Rewrite(_KILOS, r"\1 kg"),
    Rewrite(_CUTS, lambda found: f"{found[1]} slices" if found[1] else "slices"),
    Rewrite(_VAC_PACK, "vac pack"),
    Rewrite(_PRICE, " "),
    Rewrite(_A_MUGS_WORTH, r"1 \1 of "),
    Rewrite(_DWARF, "small "),
    Rewrite(_IN_PIECES, "", unless=_HAS_A_NUMBER),
    Rewrite(_MILK_TIN, r"\1\2"),
    Rewrite(_NO_KILO, ""),
    Rewrite(_LITRES, r"\1 \2 l"),
    Rewrite(_LITTLE_OF_MEASURE, r"\1, a little left"),
    Rewrite(_SO_MANY_BEHIND, r"\3 x \1\2"),
    Rewrite(_HALF_USED, "half left opened"),
    Rewrite(_AND_ANOTHER_HALF, r"\1.5"),
    Rewrite(_HALF_OF_MEASURE, r"\1\2 half left"),
    Rewrite(_PART_OF_PACK, r"\2\3 \1 left"),
    Rewrite(_OF_EACH, _of_each),
)
