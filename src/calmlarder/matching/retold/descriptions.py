"""What a later part of a line says of the food before it, and which names others without being one of them.

A part is a description where its own words make it one: what it is like (`hard as nuts`, `lime green`, `egg sized`),
how good it is (`sushi grade`), where it lies (`in the butter dish`, `by the milk`), what it is for or goes with
(`great on toast`, `burger night`), what it is not (`the orange no the white`). Anything else may be a second food.
"""

import re

from calmlarder.matching.late_patterns import LatePattern

_END = r"(?=\s*[!.?]*\s*(?:$|[,;:)!]|\. | - | but\b| so\b))"
_AFTER = r"(?:[,;] ?|(?<=\()|(?<=[a-z\d)]) - | )"  # what parts it from the food
_A = r"(?:(?:a|an|the|my|our|some|that|this|its) )?"
_WORDS = r"(?!(?:an?|the|my|our|some)\b)[a-z]+(?: [a-z]+)?"
# One word, as the one before it is the food's: `flour tortillas burrito size`.
_THING = r"(?!(?:an?|the|my|our|some)\b)(?:[a-z]+ (?=(?:ball|egg|pea|bean|box|bar|coin|tip)\b))?[a-z]+"
# What a food lies in and is eaten with: no place.
_NOT_IN_IT = (
    r"(?![a-z ]*\b(?:sauce|oil|brine|gravy|syrup|water|milk|juice|dressing|marinade|stock|broth|pesto|curry|dip"
    r"|freezer|frzr|fridge|cupboard|pantry|larder|half|quarter|third|big|large|small|full|open(?:ed)?|yesterday"
    r"|today|last"
    r"|this|(?:mon|tue|tues|wed|wednes|thu|thurs|fri|sat|satur|sun)(?:day)?(?:'?s)?)\b)"
)
_NO_ALLIUM = r"(?![a-z ]*\b(?:garlic|onions?|shallots?|leeks?|chives)\b)"
_HUES = r"(?:red|green|yellow|pink|brown|white|black|purple|orange|blue|grey|gray|golden?)"
# A mustard green is a leaf.
_NAMES_OF_HUES = (
    r"(?:butter|salmon|lime|lemon|olive|cherry|plum|chocolate|mint|peach|cream|mustard(?![ -]green)|coffee|wine)"
)
_PLACES = (
    r"(?:shelf|drawer|caddy|shop|counter|van|stall|board|rack|bar|float|aisle|man|lady|guy|bloke|woman|bin|basket|crate"
    r"|section|compartment|cupboard|crisper|market|place|truck|factory)"
)
_VESSELS = r"(?:tin|jar|tub|dish|box|cup|bowl|glass|bag|wrapper|paper|carton|bottle|container|mug)"
_DINNERS = (
    r"(?:pizza|burger|taco|curry|fish|pasta|pancake|soup|roast|pie|stir[ -]fry|noodle|salad|bbq|kebab|ramen|sushi"
    r"|fajita|burrito|chill?i|meatball|steak|toast|waffle|wing|hot ?dog|nacho|fondue|cheese)"
)
_GOES = (
    r"(?:(?:great|nice|good|lovely|fab|perfect|best|delicious|yum|amazing|goes|go|going|works?|eat|have|serve|use)"
    r"(?: (?:well|it|them|nicely|great|good|lovely|best))? (?:on|with|in|over|into)"
    r"|to (?:go|have|eat|serve|put) (?:with|on|in)|enough for)"
)
_WISHES = (
    r"(?:(?:the )?(?:kids?|mum|mom|dad|we|i|they|he|she|everyone|boys|girls|wife|husband|partner|flatmate)"
    r" (?:wants?|want to (?:make|have)|fancy|fancies|might (?:make|do|have)|may make|could make|love|loves|asked for)"
    r"|(?:could|might|may|should|would|will|gonna) (?:be|make|do|become)(?: (?:a|good|nice))?|was going to be|thinking)"
)
_DONE_BY = ("use", "used", "best", "eat", "eaten", "sell", "finish", "finished", "go", "gone", "cook", "cooked", "made")
_UNTIL = "".join(f"(?<!{word} )" for word in _DONE_BY)
_BESIDE = (
    rf"(?:next to|beside|behind|under(?:neath)?|below|above|near"
    rf"|{_UNTIL}by(?! the (?:end|weekend|time|way)\b)|on top of|in with|in among"
    r"|among|amongst|in beside"
    r"|between|hidden (?:behind|under|by|in))"
)
_SHAPES = (
    # `sushi grade`, `restaurant quality`; not `grade a`
    LatePattern(rf"{_AFTER}{_A}{_WORDS}[ -](?:grade|quality|calibre|standard)\b(?! [a-c]\b)\)?"),
    # `egg sized`, `cream coloured`, `the size of a lemon`, `colour of carrots`
    LatePattern(rf"{_AFTER}(?:about |roughly )?{_A}{_THING}[ -](?:sized|size|shaped|colou?red|colou?r){_END}"),
    LatePattern(rf"{_AFTER}{_A}(?:colou?r|shape|texture|smell|look|thickness|weight|length) of {_A}{_WORDS}{_END}"),
    LatePattern(rf"{_AFTER}(?:nice |bright |dark |light |pale |deep )?{_NAMES_OF_HUES}[ -]{_HUES}{_END}"),
    # `hard as nuts`, `tastes of lemon`, `soft like butter`
    LatePattern(
        rf"{_AFTER}(?:(?:as )?(?:hard|soft|dry|sweet|sour|cold|hot|flat|tough|thin|cheap|light|black|white|green|fresh"
        rf"|old|good|rare|dead|salty|smooth|sharp) as |(?:tastes?|tasting|looks?|looking|feels?|bit|a bit|soft|hard)"
        rf" (?:a bit )?(?:of|like) ){_NO_ALLIUM}{_A}{_WORDS}{_END}"
        rf"|[,;(-] ?(?:just |almost |nearly )?like {_NO_ALLIUM}{_A}{_WORDS}{_END}",
        needs=(" as ", "tast", "look", "feel", "like "),
    ),
    LatePattern(
        rf"{_AFTER}(?:very |bit |a bit |too |quite |really |so |slightly |rather )*(?:lemony|minty|nutty|cheesy|buttery"
        rf"|peppery|fruity|beany|eggy|milky|limey|gingery|herby|peachy|appley|tomatoey|vinegary|sugary|syrupy){_END}"
    ),
    LatePattern(
        rf"{_AFTER}(?:too|so|not|way too) (?:much|little|enough) (?:salt|sugar|pepper|chilli|spice|vinegar){_END}"
    ),
    # `in the butter dish`, `from the cheese counter`, `by the milk`, `egg shelf`
    LatePattern(
        rf"{_AFTER}(?:in|from|on|inside|at|off) {_NOT_IN_IT}{_NO_ALLIUM}{_A}(?:old |empty |little )*{_WORDS}"
        rf" (?:{_VESSELS}|{_PLACES}){_END}"
    ),
    LatePattern(
        rf"{_AFTER}{_NOT_IN_IT}(?:the )?{_WORDS} (?:shelf|drawer|caddy|shop|counter|van|stall|aisle|float){_END}"
    ),
    LatePattern(rf"{_AFTER}{_BESIDE} (?:the|my|our|some|a|an) {_WORDS}{_END}"),
    # `burger night`, `fish friday`
    LatePattern(
        rf"{_AFTER}(?:it'?s |for |is )*(?:{_DINNERS} (?:night|nite|evening|party)|taco tuesday|fish friday|pancake day"
        rf"|meat(?:less|[ -]free) monday){_END}"
    ),
    # `great on toast`, `to go with the rice`, `enough for pasta`, `kids want pizza`
    LatePattern(rf"{_AFTER}{_GOES} {_NO_ALLIUM}{_A}{_WORDS}{_END}"),
    LatePattern(rf"[,;(-] ?{_WISHES} {_A}{_WORDS}{_END}"),
    LatePattern(
        rf"[,;(-] ?(?:maybe|perhaps|possibly|thinking) {_A}(?:soup|stew|curry|stir[ -]?fry|pie|salad|smoothie){_END}"
    ),
    LatePattern(rf"[,;(-] ?(?:for )?{_A}(?:soup|stew|curry|stir[ -]?fry|pie|smoothie|salad) ?\?"),
    LatePattern(
        rf"[,;(-] ?(?:needs?|wants?|missing|could do with|just add) (?:some |more |a bit of )?(?![a-z]+(?:ing|ed)\b"
        rf"|to\b|cook\b|wash\b|peel\b|finish\b|go\b|work\b|use\b|check\b|sort\b|trim\b|thaw\b|defrost\b"
        rf"|a\b){_WORDS}{_END}"
    ),
    # `not the chicken one`, `egg free`
    LatePattern(
        rf"[,;(-] ?(?:and |but )?not (?:the|for|with|that|like|in)(?! (?:me|us|you|my|our)\b) {_NO_ALLIUM}{_WORDS}"
        rf"(?: (?:one|ones|kind|sort|type|stuff))?{_END}"
    ),
    LatePattern(rf"[,;(-] ?(?:egg|nut|soya?|fish|meat|sesame|peanut|corn|msg|additive|seed) ?-?free{_END}"),
)  # fmt: skip
# Of two colours one is denied; the other tells a kind only where its food has kinds by colour.
_ONE_COLOUR = LatePattern(
    rf"{_AFTER}(?:the |a )?({_HUES})(?: (?:one|ones|kind|sort|type))?,? (?:no|not"
    rf"|and not) (?:the )?{_HUES}(?: (?:one|ones|kind|sort|type))?{_END}"
)
_THE_ORANGE = LatePattern(rf"{_AFTER}(?:the )?orange (?:ones?|kind|sort|type|stuff|block|bit){_END}")
_BY_COLOUR = LatePattern(
    r"\b(?:peppers?|capsicums?|lentils?|onions?|cabbages?|rice|grapes?|miso|wine|beans?|chocolate|carrots?|dal|daal"
    r"|curry"
    r"|potato(?:es)?|quinoa|tomato(?:es)?|currants?|asparagus|tea|vinegar|sugar|bread|grapefruit|leicester|turnips?"
    r"|neeps?)\b"
)
_SUGAR_FREE = LatePattern(rf"[,;(-] ?sugar ?-?free{_END}")
# What is sweet without sugar holds polyols: it stays a question.
_SWEET = LatePattern(
    r"\b(?:choc\w*|sweets?|candy|candies|gums?|jams?|mints?|ice cream|biscuits?|cookies?|syrups?|jell[yo]|cakes?|bars?"
    r"|sorbet|lollies|lolly|pastilles?|drops|toffees?|spread|squash|cordial|pudding|dessert|muffins?|honey|marmalade)\b"
)
_FOR_A_ROAST = LatePattern(
    r"\bfor (?:the |our |my )?(?:sun(?:day)?|sat(?:urday)?|fri(?:day)?|christmas|easter) (?:roast|lunch|dinner|tea)"
    r"(?: [a-z]+)?" + _END
)
_RIDDLE = LatePattern(
    r"\b(?:mystery|something|unknown|unlabell?ed|unidentified|no idea|dunno|maybe|perhaps|either|might be|could be)\b"
    r"|^(?:[a-z\d]+ )?(?:box|tub|tupper\w*|container|pot|bag|leftovers?|thing)(?: in the freezer)?$|\?"
)
# What a gluten-free pasta or bread is made of, told in a bracket: `gf pasta (rice/quinoa)`.
_GRAIN = r"(?:(?:brown |white )?rice|quinoa|corn|maize|buckwheat|millet|amaranth|teff|sorghum|potato|tapioca)"
_MADE_OF_GRAINS = LatePattern(
    rf"(?<=[a-z]) ?[,(-] ?(?:made (?:of|from|with) )?{_GRAIN}(?: flour)? ?(?:/|,|and|&|\+|n) ?{_GRAIN}(?: flour)?"
    rf"(?: ?(?:/|,|and|&|\+) ?{_GRAIN})?\)"
)
_FREE_OF_GLUTEN = LatePattern(
    r"\b(?:gf|gluten[ -]free)\b.*\b(?:pasta|penne|fusilli|spaghetti|macaroni|bread|loaf|wraps?|crackers?|noodles?)\b"
)
# `peppers lime green` are green ones.
_HUE_OF_PEPPER = LatePattern(
    rf"(?<!black )(?<!white )\b((?:peppers?|capsicums?)[^,;]*?){_AFTER}{_NAMES_OF_HUES}[ -]"
    rf"(?=(?:green|red|yellow){_END})"
)
_IN_ORANGE = LatePattern(
    r"\b(?:peppers?|capsicums?|lentils?|turnips?|neeps?|tomato(?:es)?|sweet potato(?:es)?|chill?is?)\b"
)
# A word before it that may be a food's: `tinned salmon red` is none that is tinned.
_FOOD_BEFORE = LatePattern(
    r"\b(?!(?:tinned|tins?|cans?|canned|jars?|bags?|packs?|packets?|pkt|tubs?|half|some|the|open(?:ed)?|frozen|fresh|smoked"
    r"|raw|wild|big|small|large|one|two|three|four)\b)[a-z]{3}"
)


def without_descriptions(text: str) -> str:
    """A plain line without the parts that describe the food before them."""
    text = _HUE_OF_PEPPER.sub(r"\1 ", text)
    text = _THE_ORANGE.sub(_colour, _ONE_COLOUR.sub(_colour, text))
    if _SUGAR_FREE.search(text):
        bare = _SUGAR_FREE.sub("", text)
        text = f"sugar free {bare}" if _SWEET.search(bare) else bare
    text = _MADE_OF_GRAINS.sub(" ", text) if _FREE_OF_GLUTEN.search(text) else text
    text = _FOR_A_ROAST.sub("", text)
    for shape in _SHAPES:
        text = shape.sub(_unless_first, text)
    return text


def _colour(found: re.Match[str]) -> str:
    """The colour that is told, where it tells a kind of the food before it."""
    before = found.string[: found.start()]
    told = found[1] if found.re.groups else "orange"
    return f", {told}" if (_IN_ORANGE if told == "orange" else _BY_COLOUR).search(before) else ""


def _unless_first(found: re.Match[str]) -> str:
    """Nothing, or what stands there where no food is named before it, or nobody knows which."""
    before = found.string[: found.start()]
    return "" if _FOOD_BEFORE.search(before) and not _RIDDLE.search(before) else found[0]
