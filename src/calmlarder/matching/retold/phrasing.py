"""Phrases that people put another way, written the way names have them."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.retold.bean_pots import pots_plainly
from calmlarder.matching.retold.flavours import flavours_aside
from calmlarder.matching.retold.in_passing import said_in_passing
from calmlarder.matching.retold.texted import as_texted

PERCENT = "percent"
_WITH_STROKE = LatePattern(r"\bw/ ?(?=[a-z])(?!o\b)")
_PERCENT = LatePattern(r"(?<![\w.])(\d{1,3})(?:\.(\d{1,2}))? ?%(?! (?:left|full|gone|used))")
_PACKED_IN = LatePattern(
    r"\bin (?:(?:olive|sunflower|vegetable|spring|salted|sugar|light|own|its own|their own|natural|fruit) )?"
    r"(oil|brine|water|juice|syrup|vinegar)\b"
)
_ON_BONE = LatePattern(r"\b(?:(?:left |still )?on (?:the )?bone|bone[ -]in|with (?:the |its )?bones?(?: in| on)?)\b")
_OFF_BONE = LatePattern(r"\b(?:off (?:the )?bone|bones? out|bone[ -]out)\b")
# Cream of wheat, of tartar or of mushroom soup is no cream.
_CREAM_OF = LatePattern(r"\b(?:cream|crm|crem) of (?!the\b|a\b|some\b)(?=[a-z])")
_AND_A_HALF = LatePattern(r"^(?:an? |one )?((?!.*dozen)[a-z]{3,}(?: [a-z]{3,})?) (?:and|n|&) (?:a half|1/2)$")
# What is sour by its nature is not bad for being so.
_SOUR_ANYWAY = LatePattern(r"\b(?:kimchi|sauerkraut|kraut|pickles|gherkins?|kefir|kombucha)\b")
# What smells by its nature is not bad for that.
_SMELLS_ANYWAY = LatePattern(
    r"\b(?:blue|stilton|gorgonzola|roquefort|camembert|brie|munster|limburger|epoisses|taleggio|reblochon|goat'?s|ripe)\b"
    r"|\b(?:fish sauce|shrimp paste|belacan|bagoong|kimchi|natto|durian|jackfruit|asafoetida|hing|stockfish|kippers?"
    r"|stinky tofu|bean ?curd|fermented"
    r"|parmesan|dried (?:fish|shrimp|prawns))\b"
)
_HOW_SMELLY = LatePattern(
    r"[,;(]? ?\b(?:(?:a )?(?:bit|little)|very|quite|really|so|rather|pretty|strong|properly|well)? ?"
    r"(?:smelly|stinky|stinks|stinking|smells (?:strong|a bit|a lot|loads))(?! (?:of|off|bad|tofu)\b)"
    r"(?: (?:but|as) (?:it'?s |they'?re |that'?s )?(?:meant|supposed|ok|fine|good)[a-z ]*)?(?: (?:haha|lol))?\)?"
)
_HOW_SOUR = LatePattern(
    r"[,;]? ?\b(?:(?:a )?(?:bit|little)|slightly|super|very|quite|really|too|extra|pretty|getting|gone"
    r"|going|tastes?|smells?)(?: (?:very|quite|a bit|really|too))? sour\b"
)
# What a marinade is made of is no other food of the line.
_MAY_BE_ALLIUM = LatePattern(
    r"onion|garlic|shallot|leek|chive|bbq|barbecue|tikka|tandoori|jerk|teriyaki|sauce|paste|spice|curry|mix|herb|rub|harissa"
)
_SO_MANY_BEANS = LatePattern(r"\b(?:three|four|five|six|[3-6]) bean (salad|mix)\b")
_MARINADE = LatePattern(r"\s*\((?:in |with )?([a-z][a-z ,&+]*)\)")
_SPRINKLE_OF = LatePattern(r"\b(?:a |the last )?(?:sprinkl(?:es?|ing)|mouthfuls?) of (?:the )?(?=[a-z])")
_LOW_FODMAP = LatePattern(r"\blo(?:w)?[- ]?fo(?:d ?map|d)?\b")
_PUNYA = LatePattern(r" ?\(?\b([a-z]{2,}) punya\b\)?")  # the possessive of Malay
_KILOS = LatePattern(r"(?<![\w.,/-])(\d/\d|\d{1,2}(?:\.\d)?) ?k\b")
# Free of onion, and no onion.
_FREE_FROM = LatePattern(r"\b(onion|garlic)s?(?: (?:and|&|or|/) ?(onion|garlic)s?)?[ -]free\b ?([^,;&+()]*)")
# `not lactose free` and `isn't gf` are the ordinary thing, with all that it holds.
_NOT_FREE = LatePattern(
    r"[ ,(-]+(?:not|isn'?t|ain'?t) (?:the |a |an )?"
    r"(?:(?:lactose|lacto|gluten|dairy|milk|wheat)[ -]?free|lf|gf|df|vegan)"
    r"(?: (?:one|ones|kind|sort|stuff|type))?\b\)?"
)
# A bird that was roasted whole is another amount than some of its meat.
_WHOLE_BIRD = LatePattern(
    r"\b(half|whole|most of|quarter|1/2|1/4|3/4|1|one|a|the rest of)( of)?( an?| the)? "
    r"(?=(?:(?:whole|left ?over|cooked|cold|roasted|roast|rotisserie|bbq|barbecued?|grilled|spit|hot) )*"
    r"(?:roasted|roast|rotisserie|bbq|barbecued?|grilled|hot|cooked) chicken(?! (?:breast|thigh|leg|wing|piece"
    r"|slice|sandwich|wrap|curry|soup|salad|pie|drum|carcass|bone|crisp|flavour|stock|gravy|bit|scrap|meat|fillet)))"
)
# A dish that has its own name is that one, from wherever: `indian takeaway: chicken korma`, `cottage pie ready meal`.
_TAKEAWAY = LatePattern(
    r"\b(?:(?:indian|chinese|thai|japanese|mexican|italian|vietnamese|korean|turkish|greek|lebanese) )?"
    r"take[ -]?(?:aways?|outs?)\b(?! (?:box|container|tub))\s*[:-]?"
    r"|\bleft ?over (?:indian|chinese|thai|japanese|mexican|vietnamese|korean|turkish|greek|lebanese)\s*[:-]"
)
_READY_MEAL = LatePattern(r"(?<=[a-z]{3} )(?:ready|microwave|tv)[ -]?(?:meals?|dinners?)\b")
_OWN_NAME = LatePattern(
    r"\b(?:korma|masala|tikka|jalfrezi|madras|vindaloo|balti|bhuna|dopiaza|dhansak|rogan josh|butter chicken|biryani"
    r"|saag|paneer|bhajis?|samosas?|pad thai|sushi|ramen|pho|kebabs?|doner|shawarma|sweet (?:and|n|&) sour|chow mein"
    r"|pizzas?|burritos?|spring rolls?|dumplings|fish (?:and|n|&) chips)\b"
)
_MADE_DISH = LatePattern(
    r"\b(?:lasagn[ea]|pie|bake|mac\w*(?: (?:and|n|&))? cheese|carbonara|bolognese|stew|casserole|chilli|moussaka"
    r"|hotpot)\b"
)
_CHICKEN_HALF = LatePattern(
    r"\b((?:left ?over )?(?:(?:cold|hot|whole|cooked) )*"
    r"(?:roasted|roast|rotisserie|bbq|barbecued?|grilled|cooked) chicken)"
    r"[ ,(-]+(?:the |about |roughly |nearly |maybe )?(?:other )?(half|1/2|whole|quarter)\b\)?"
    r"(?! (?:a )?(?:breast|thigh|leg))"
)
# So many cuts of something are slices; what is cut is no slice.
_CUTS = LatePattern(r"(?<=\d )cuts?\b|\b(one|two|three|four|five|six|few|couple|some)( of)? cuts\b")
_VAC_PACK = LatePattern(r"\bvac(?:uum)?[ -]?pack(?:ed|s)\b")
# What grows small is half as much and less.
_DWARF = LatePattern(
    r"\b(?:lebanese|persian|thai|mini|baby|snack|tiny|dwarf|finger) "
    r"(?=(?:cucumber|cuc|cuke|aubergine|eggplant|brinjal|courgette|zucchini)s?\b)"
)
# How a thing is cut, where no number says how many pieces.
_IN_PIECES = LatePattern(r"(?<=[a-z]) (?:pieces|florets)(?=(?: only)?\s*(?:$|[,;(]))")
_UNRIPE = LatePattern(r"\b(?:not (?:yet |quite |really |very |that |so )?ripe(?: yet| enough)?|under ?ripe)\b")
_JARS = r"(jars?|tins?|cans?|pouch(?:es)?|cartons?)"
_IN_BRACKET = LatePattern(rf"\(\s*(?:in |from )?(?:an? |the )?{_JARS}\s*\)")
_IN_JAR = LatePattern(rf"(?<=[a-z]) (?:in|from) (?:an? |the )?{_JARS}\b(?! of\b)")
# Herbs stand in it, whatever it once held.
_IN_WATER = LatePattern(
    r"\b(?:in|sitting in|standing in) (?:an? |the )?(?:jar|glass|mug|jug|vase|cup|tumbler)(?: of water)\b"
)


# An empty milk tin measures dry goods: `egusi, one milk tin`.
_MILK_TIN = LatePattern(r"(?<=[a-z,)] )((?:one|two|three|four|half|\d+) )milk (tins?|cups?)\b")


# `pots` alone are potatoes; pots of something, or beside a food, are not.
_POTS = LatePattern(
    r"(?P<before>(?:about|abt|approx|around|roughly|maybe|x|small|big|large|lge|med|medium|wee|old|last|a|an|the|my|few"
    r"|some|lots|loads|of|bag|sack|half|new|\d+(?:/\d+)?|\d+(?:\.\d+)? ?k?g|kg|kilos?|lbs?|[ ,-])*)\bpots\b"
    r"(?P<behind>(?:[ ,().-]|x ?\d*|\d+(?:\.\d+)? ?(?:k?g|lbs?|kilos?)?|bag|sack|left|few|a|bit|of|is|are|some|one|two"
    r"|soft|sprouting|going|gone|green|old|eyes|wrinkly|bendy|ok|fine|still|still good|small|big|large|medium|about"
    r"|new)*)"
)


# `carrots and parsnips, 1kg of each`: so much of the one and as much of the other.
_OF_EACH = LatePattern(
    r"([a-z][a-z ]+(?:(?:, | and | & | \+ )[a-z][a-z ]+)+),? "
    r"(\d{1,4}(?:\.\d)?(?: ?(?:kg|g|kilos?|lbs?|oz|ml|l|tins?|bags?|packs?|jars?))?) (?:of )?each"
)
# Money off and what was taken off it: nothing has gone off.
_NOT_GONE_OFF = LatePattern(
    r"(?:\b\d{1,2} ?(?:%|per ?cent)|[£$€]\d+(?:\.\d+)?|\b(?:half|third)(?: price)?) off\b"
    r"|\b(?:with )?(?:the )?(?:tops?|rinds?|skins?|crusts?|stalks?|heads?|tails?|shells?|lids?|labels?)"
    r" (?:cut |taken |trimmed |chopped |peeled )?off\b"
)
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
_FINISH_OFF = LatePattern(r"\b(?:finish|polish|use|eat)(?:ing)? off\b(?= [a-z])")
_GREENS_ONLY = LatePattern(
    r"(?<=\()(?:only |just )?(?:the )?(green|white) (?:bits?|parts?|ends?)(?: only)?(?=\))"
    r"|(?<=[a-z] )(?:only |just )?(?:the )?(green|white) (?:bits?|parts?|ends?) only\b"
)
_HALF_USED = LatePattern(r"\b(?:half|1/2) (?:used|eaten)\b(?! by)")
# `yoghurt 500g, half`, `gallon of milk half`: half of what is measured is there.
_HALF_OF_MEASURE = LatePattern(
    r"(\d ?(?:k?g|ml|l|cl|litres?|liters?|pints?|pts?|oz|lbs?)\b|\b(?:gallon|litre|liter|pint|quart|kilo)\b)"
    r"([^,;&+]*?)(?:, ?| ?\(| )(?:half|1/2)\)?$"
)
_AND_ANOTHER_HALF = LatePattern(
    r"(\d{1,2})(?: ?,| ?\+| and| plus)? (?:another|extra) (?:half|1/2)(?: (?:one|of one))?\b"
)
# `1/2 x 500g mince` is half of such a pack.
_PART_OF_PACK = LatePattern(
    r"(?<![\w/.])(1/2|half|1/3|1/4|3/4|2/3|a third|a quarter) ?(?:x|of an?|of|an?|) ?(?=\d)"
    r"(\d{2,4}) ?(k?g|ml|oz|lbs?)\b"
)
# Whoever says tin means those in tomato sauce, unless another kind is told; a can of beans may be any.
_TIN_OF_BEANS = LatePattern(r"\b(tins?(?: of| ?[-:])?) beans\b|\bbeans\b(?=.*\btins?\b)")
_OTHER_BEANS = LatePattern(
    r"\b(?:kidney|black|butter|cannellini|haricot|pinto|borlotti|green|mixed|broad|white|red|chick|lima|navy|baked"
    r"|adzuki|refried|runner|french|dry|dried|water|brine|chilli|chili|fava|soya|garden|bean"
    r")\b"
)


# What a dish holds, told in a bracket: `stew (onion inside)`.
_DISH = LatePattern(
    r"\b(?:soup|stew|curry|chill?i|sauce|bol\w*|ragu|stir|lasagne|pie|dh?al|daal|casserole|tagine|gravy|stock|broth"
    r"|sausages?|burgers?|meatballs?|hummus|salsa|dip|mix|filling|stuffing|risotto|pasta|veg"
    r"|snags?|links?|lingui[cç]a|marinara|merguez|bratwurst|bangers?|franks|hot ?dogs?|crackers|bagels?|bread|naan"
    r"|focaccia|falafels?|koft[ae]|kebabs?|paste|relish|chutney|pickle|dressing|mayo|dip|spread|passata|ketchup|crisps"
    r"|paneer|seitan|tofu|puff|roll|rolls|refried\w*|refryed|powder|seasoning|granules|cubes?|pesto|wings|nuggets|kievs?|rice)\b"
)
_SAYS_SO = LatePattern(
    r"\(\s*(?:it )?(?:has|got|contains?|made with) ([a-z]+(?: [a-z]+)?)(?: (?:in|inside))?(?: it)?\s*\)"
)
# `palak (onion garlic wala)`: no things of their own.
_MADE_WITH = LatePattern(
    r"\(\s*(?:with |has |in )?((?:onions?|garlic)(?: ?(?:and|&|\+|/|-)? ?(?:onions?|garlic))?)"
    r" (?:wala|waala|wali|waali|tadka|based|heavy|type|version|one)\s*\)"
)
_ONLY_A_VESSEL = LatePattern(
    r"(?:the |a |an |my |big |small |old )*(?:pot|tub|box|bowl|tupperware|container|dish|thing|jar|bag|pan)\b(?! of)"
)
_SAYS = (
    r"(?:check o?,? ?)?(?:i think )?(?:(?:it|which|they|i|we|pack|packet|label|tin|jar) )?"
    r"(?:has|have|gets?|got|contains?|with|w/?|some|prob(?:ably|s)?|maybe|might|may|could|must"
    r"|a bit of|bit of|sure|i bet|there'?s|made (?:it |them )?(?:with|w/)|says?|lists?"
    r"|check(?:ed)?,?|full of|loads of|plenty)"
)
_WHEREIN = (
    r"(?: (?:in|inside|in it|on it|in there|in them|in (?:this|that|these|those)(?: ones?)?"
    r"|on (?:the )?(?:pack|packet|label|tin|jar|back)))"
)
_HELD = LatePattern(
    rf"\(\s*(?:(?:beef|pork|lamb|chicken|turkey|meat),? )?(?:{_SAYS} )*"
    r"((?:onions?|garlic)(?: ?(?:and|&|\+|/|,)? ?(?:onions?|garlic))?)(?: (?:powder|granules|salt|pdr|pwdr|stuff))?"
    rf"{_WHEREIN}?(?: ?(?:and|&|\+|,) ?(?:wheat|gluten|stuff|spices?|salt|herbs?|all sorts|etc))?"
    r"(?:,? (?:i checked|sadly|of course|obviously|obvs|god help me|unfortunately|sorry))?\s*\)"
)


_MADE = LatePattern(r"\b(?:left ?overs?|home ?made|made|takeaway|take ?out|cooked)\b")
# An onion that has sprouted is no food of its own.
_SPROUTED = LatePattern(
    r"\b((?:onions?|shallots?|potato(?:es)?|spuds?|tatties|garlic|ginger)\b[^,;&]*?[,;(]? ?)(?:has |have )?sprouted\b"
)
_IN_IT = LatePattern(r" (?:inside|in it|in there)\s*\)")
# A dessertspoon is two teaspoons: common practice, no source.
_DESSERTSPOONS = LatePattern(r"(?<![\w/.])(\d+(?:\.\d+)?) ?(?:dsp|dessert ?spoon(?:ful)?)s?\b")
_FREE_OF = LatePattern(r"\b([gld])/f\b")


# `two don black finish`: they have gone black, and are there.
_DON_BLACK = LatePattern(r"\bdon (?=(?:black|ripe|yellow|brown)\b)(\w+)(?: finish)?")
# The American word is of a mix, the British one of the chilli alone.
_CHILI_POWDER = LatePattern(r"(?:(?<=^)|(?<=[,;.&+] )|(?<=\band ))chili powder\b(?! (?:blend|mix))")
_BUNCH_OF_BANANAS = LatePattern(
    r"\bbunch\b(?=.*\bbananas?\b)|(?:(?<=banana )|(?<=bananas ))bunch\b(?! of (?:\d|three|four|five|six|seven))"
)
# New potatoes are small ones.
_NEW_POTATOES = LatePattern(
    r"(?<=\d )(?:baby |new )+(?=(?:pots|potato(?:es)?|spuds|tatt?ies)\b)"
    r"|\b(?:baby |new )+(?=(?:pots|potato(?:es)?|spuds|tatt?ies)\b[^\d]*\d{1,2}(?![\d./]| ?(?:k?g|lbs?|oz|kilos?)\b))"
)
_RIBS = LatePattern(r"\brib(s?)\b")  # of celery
# A bottle by its pints, and a sausage by its shape.
_PINTER = LatePattern(r"(?<![\w/.])(\d) ?pinters?\b")
_RING = LatePattern(r"\b(chorizo|kielbasa|sausage|sucuk|boerewors)( \d| half(?: a)?)? rings?\b")
# How firm tofu is tells which one it is, wherever it stands.
_TOFU = LatePattern(
    r"^(?P<before>(?:.*\b)?)tofu\b(?P<between>[^;&+]*?)[ ,(]+(?<!\d )(?<!one )"
    r"(?P<kind>soft|(?:extra[ -])?firm|silken)\)?$"
)
# So much cocoa is in dark chocolate alone.
_COCOA = LatePattern(r"\b(?:choc|chocolate)\b(?! (?:chips?|spread|biscuits?|milk|cake|ice))(?=.*\b[5-9]\dpercent)")
# `a tin an a bag`.
_AN_A = LatePattern(r"\ban (?=(?:a|an|\d+|one) )")
# Leaves are frozen in little lumps.
_LUMPS = LatePattern(r"\b(?:blocks|lumps?|nuggets|pellets|pucks|balls|chunks|bits)\b(?! of)")
_FROZEN_LEAVES = LatePattern(
    r"\b(?:frozen|frz\w*|froz\w*)\b.*\b(?:spinach|kale|chard|greens)\b"
    r"|\b(?:spinach|kale|chard|greens)\b.*\b(?:frozen|freezer|frz\w*)\b"
)
# A kilo of it is meal, a bowl of it porridge.
_PAP = LatePattern(
    r"\bpap\b(?=[ ,:-]*(?:\d+(?:\.\d)? ?(?:kg|kilos?)|(?:big |full |half )*(?:bag|sack)))"
    r"|(?<=kg )pap\b|(?<=bag )pap\b|(?<=bag of )pap\b|(?<=kg of )pap\b"
)
# So many of what grows in hands: `plantain 3 fingers`, `okro 10 fingers`.
_FINGERS = LatePattern(r"\b(?<!fish )(?<!lady )(?<!ladys )(?<!lady's )(?<!ladies )fingers?\b")
_COMES_IN_FINGERS = LatePattern(r"\b(?:bananas?|plantains?|ok[r]os?|okras?|ochros?|ochras?|bhindi|matoke|turmeric)\b")
# Words of Indian English: so many numbers of a vegetable, and the cloves of a bulb.
_NUMBERS_OF_PODS = LatePattern(r"\bdrumsticks?(?=,? \d+ ?nos?\b)|(?<=\bnos )drumsticks?\b|(?<=\bno )drumsticks?\b")
_GARLIC_FLAKES = LatePattern(r"(?<=\bgarlic )(\d+) flakes?\b|(?<!\w)(\d+) flakes?(?= (?:of )?garlic\b)")

# American for milk and cream in one; anything else is half of this and half of that.
_HALF_AND_HALF = LatePattern(r"\bhalf[ -]?(?:and|&|n)[ -]?half\b")


def one_word(text: str) -> str:
    """A plain text, of a line or a name, with what makes another food of a word in one word with it.

    Garlic in oil is no garlic oil, 2% milk is another milk, and cream of wheat is no cream.
    """
    if " in " in text:
        text = _PACKED_IN.sub(r"in\1", text)
    if "bone" in text:
        text = _OFF_BONE.sub("offbone", _ON_BONE.sub("onbone", text))
    if "m of " in text:
        text = _CREAM_OF.sub("creamof ", text)
    text = _HALF_AND_HALF.sub("halfandhalf", text) if "half" in text else text
    return _PERCENT.sub(lambda found: f"{found[1]}{found[2] or ''}{PERCENT}", text) if "%" in text else text


def _denied_behind(found: re.Match[str]) -> str:
    """`garlic free pesto` is pesto without garlic."""
    lacking = f"{found[1]} or {found[2]}" if found[2] else found[1]
    return f"{found[3].rstrip()} without {lacking} "


def _held_plainly(found: re.Match[str]) -> str:
    """What a bracket says a thing holds, behind `with`; a shallot is an onion there."""
    return f" with {re.sub(r'shallots?', 'onion', found[1])}"


def plainly_put(text: str) -> str:
    """A plain line with its container beside the food: `peppers (jar)`, `beetroot in a jar`; `not ripe` is unripe."""
    text = flavours_aside(said_in_passing(_WITH_STROKE.sub("with ", text) if "w/" in text else text))
    text = _MADE_WITH.sub(lambda found: f" with {' or '.join(found[1].split())} ", text) if "(" in text else text
    held = "(" in text and (_IN_IT.search(text) or _DISH.search(text) or _MADE.search(text))
    text = _HELD.sub(r" with \1", text) if held else text
    text = _SAYS_SO.sub(_held_plainly, text) if "(" in text and not _ONLY_A_VESSEL.match(text) else text
    text = _SPROUTED.sub(r"\1 sprouting", text) if "sprouted" in text else text
    if "dsp" in text or "dessert" in text:
        text = _DESSERTSPOONS.sub(lambda found: f"{float(found[1]) * 2:g} tsp", text)
    text = _FREE_OF.sub(r"\1f", text) if "/f" in text else text
    text = _UNRIPE.sub("unripe", text) if "ripe" in text else text
    text = _AND_A_HALF.sub(r"1.5 \1", text) if "half" in text else text
    text = _PINTER.sub(r"\1 pints", text) if "pinter" in text else text
    text = _RING.sub(r"\1\2 pack", text) if " ring" in text else text
    if "tofu" in text and (found := _TOFU.match(text)):
        kind = "silken" if found["kind"] == "soft" else found["kind"]
        text = f"{found['before']}{kind} tofu{found['between']}"
    text = _RIBS.sub(r"stalk\1", text) if "celery" in text else text
    if "sour" in text and _SOUR_ANYWAY.search(text):
        text = _HOW_SOUR.sub(" ", text)
    if ("smel" in text or "stin" in text) and _SMELLS_ANYWAY.search(text):
        text = _HOW_SMELLY.sub(" ", text)
    if "marinat" in text and "(" in text:
        text = _MARINADE.sub(lambda found: f" with {found[1]} " if _MAY_BE_ALLIUM.search(found[1]) else " ", text)
    text = _SO_MANY_BEANS.sub(r"mixed bean \1", text) if "bean" in text else text
    text = _SPRINKLE_OF.sub("a little bit of ", text) if "sprinkl" in text or "mouthful" in text else text
    text = _LOW_FODMAP.sub("low fodmap", text) if "fo" in text else text
    text = _PUNYA.sub(r" (\1's)", text) if "punya" in text else text
    if ("take" in text or "left" in text) and _OWN_NAME.search(text):
        text = _TAKEAWAY.sub("leftover ", text)
    if "meal" in text or "dinner" in text:
        text = _READY_MEAL.sub(" ", text) if _MADE_DISH.search(text) or _OWN_NAME.search(text) else text
    text = as_texted(text)
    text = _KILOS.sub(r"\1 kg", text) if "k" in text else text
    text = _NOT_FREE.sub(" ", text) if "not " in text or "n't " in text or "nt " in text else text
    if "free" in text:
        text = _FREE_FROM.sub(_denied_behind, text)
    text = _CUTS.sub(lambda found: f"{found[1]} slices" if found[1] else "slices", text) if " cut" in text else text
    text = _VAC_PACK.sub("vac pack", text) if "vac" in text else text
    text = _PRICE.sub(" ", text)
    text = _A_MUGS_WORTH.sub(r"1 \1 of ", text) if " worth " in text else text
    text = _NOT_GONE_OFF.sub(" ", _FINISH_OFF.sub("finish", text)) if "off" in text else text
    text = _DWARF.sub("small ", text) if _DWARF.search(text) else text
    if not re.search(r"\d|\b(?:few|couple|some|half|one|two|three|four)\b", text):
        text = _IN_PIECES.sub("", text)
    if "chicken" in text:
        text = _CHICKEN_HALF.sub(r"\2 joint \1", text)
        text = _WHOLE_BIRD.sub(r"\1 joint ", text)
    text = _MILK_TIN.sub(r"\1\2", text) if "milk" in text else text
    pots = _POTS.fullmatch(text) if "pots" in text else None
    text = f"{pots['before']}potatoes{pots['behind']}" if pots else text
    text = pots_plainly(text)
    text = _HALF_USED.sub("half left opened", text) if "half" in text or "1/2" in text else text
    text = _AND_ANOTHER_HALF.sub(r"\1.5", text) if "another" in text or "extra" in text else text
    text = _HALF_OF_MEASURE.sub(r"\1\2 half left", text) if "half" in text or "1/2" in text else text
    text = _PART_OF_PACK.sub(r"\2\3 \1 left", text)
    if "each" in text and (found := _OF_EACH.fullmatch(text)):
        text = ", ".join(f"{found[2]} {thing}" for thing in re.split(r", | and | & | \+ ", found[1]))
    text = _foods_plainly(text)
    text = _IN_WATER.sub(" ", text)
    text = _IN_BRACKET.sub(r" \1", text) if "(" in text else text
    return _IN_JAR.sub(r" \1", text)


def _foods_plainly(text: str) -> str:
    """What some foods are called, and how they are counted, as it is read: `mealie meal` for pap, cloves of garlic."""
    text = (
        _GREENS_ONLY.sub(lambda found: f"{found[1] or found[2]}s", text) if "green" in text or "white" in text else text
    )
    if "beans" in text and "tin" in text and not _OTHER_BEANS.search(text):
        text = _TIN_OF_BEANS.sub(lambda found: f"{found[1] or ''} baked beans".lstrip(), text)
    text = _NUMBERS_OF_PODS.sub("drumstick pods", text) if "drumstick" in text else text
    if "flake" in text:
        text = _GARLIC_FLAKES.sub(lambda found: f"{found[1] or found[2]} cloves", text)
    if "finger" in text and _COMES_IN_FINGERS.search(text):
        text = _FINGERS.sub(" ", text)
    text = _DON_BLACK.sub(r"gone \1", text) if "don " in text else text
    text = _CHILI_POWDER.sub("chili powder blend", text) if "chili" in text else text
    text = _BUNCH_OF_BANANAS.sub("hand", text) if "banana" in text else text
    text = _NEW_POTATOES.sub("small new ", text) if "new " in text or "baby " in text else text
    if "choc" in text and PERCENT in text and "dark" not in text:
        text = _COCOA.sub("dark chocolate", text)
    text = _AN_A.sub("and ", text) if " an " in text else text
    text = (
        _LUMPS.sub("cubes" if re.search(r"\d|few|some|couple", text) else "bag", text)
        if "fr" in text and _FROZEN_LEAVES.search(text)
        else text
    )
    text = _PAP.sub("mealie meal", text) if "pap" in text else text
    return text
