"""Foods by another word or another order of words: `soft tofu` behind a comma, `mealie meal` for pap, cut chickens."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import Rewrite

# How firm tofu is tells which one it is, wherever it stands.
_TOFU = LatePattern(
    r"^(?P<before>(?:.*\b)?)tofu\b(?P<between>[^;&+]*?)[ ,(]+(?<!\d )(?<!one )"
    r"(?P<kind>soft|(?:extra[ -])?firm|silken)\)?$"
)
_RIBS, _CELERY = LatePattern(r"\brib(s?)\b"), LatePattern(r"celery")
_SO_MANY_BEANS = LatePattern(r"\b(?:three|four|five|six|[3-6]) bean (salad|mix)\b")
# A dish that has its own name is that one, from wherever: `indian takeaway: chicken korma`, `cottage pie ready meal`.
_TAKEAWAY = LatePattern(
    r"\b(?:(?:indian|chinese|thai|japanese|mexican|italian|vietnamese|korean|turkish|greek|lebanese) )?"
    r"take[ -]?(?:aways?|outs?)\b(?! (?:box|container|tub))\s*[:-]?"
    r"|\bleft ?over (?:indian|chinese|thai|japanese|mexican|vietnamese|korean|turkish|greek|lebanese)\s*[:-]"
)
_OWN_NAME = LatePattern(
    r"\b(?:korma|masala|tikka|jalfrezi|madras|vindaloo|balti|bhuna|dopiaza|dhansak|rogan josh|butter chicken|biryani"
    r"|saag|paneer|bhajis?|samosas?|pad thai|sushi|ramen|pho|kebabs?|doner|shawarma|sweet (?:and|n|&) sour|chow mein"
    r"|pizzas?|burritos?|spring rolls?|dumplings|fish (?:and|n|&) chips)\b"
)
_READY_MEAL = LatePattern(
    r"(?<=[a-z]{3} )(?:ready|microwave|tv)[ -]?(?:meals?|dinners?)\b"
    r"|(?<=[a-z]{3})(?: for (?:one|two|1|2|me))?[,(-]+ ?(?:a |the )?(?:ready|microwave|tv)[ -]?(?:meals?|dinners?)\b\)?"
)
_MADE_DISH = LatePattern(
    r"\b(?:lasagn[ea]|pie|bake|gratin|cauli(?:flower)? cheese|mac\w*(?: (?:and|n|&))? cheese|carbonara|bolognese|stew"
    r"|casserole|chilli|moussaka|hotpot|risotto|stroganoff|goulash|paella|cannelloni|tagine|enchiladas?)\b"
)
_DISH_BY_NAME = LatePattern(rf"{_MADE_DISH.written}|{_OWN_NAME.written}")
_CHICKEN_HALF = LatePattern(
    r"\b((?:left ?over )?(?:(?:cold|hot|whole|cooked) )*"
    r"(?:roasted|roast|rotisserie|bbq|barbecued?|grilled|cooked) chicken(?: (?:plain|cold|whole))?)"
    r"[ ,(-]+(?:the |about |roughly |nearly |maybe )?(?:other )?(half|1/2|whole|quarter|[123]/4|2/3)"
    r"(?: of (?:it|one|him|her))?\b\)?"
    r"(?! (?:a )?(?:breast|thigh|leg))"
)
# A bird that was roasted whole is another amount than some of its meat.
_WHOLE_BIRD = LatePattern(
    r"\b(half|whole|most of|quarter|1/2|1/4|3/4|1|one|a|the rest of)( of)?( an?| the)? "
    r"(?=(?:(?:whole|left ?over|cooked|cold|roasted|roast|rotisserie|bbq|barbecued?|grilled|spit|hot) )*"
    r"(?:roasted|roast|rotisserie|bbq|barbecued?|grilled|hot|cooked) chicken(?! (?:breast|thigh|leg|wing|piece"
    r"|slice|sandwich|wrap|curry|soup|salad|pie|drum|carcass|bone|crisp|flavour|stock|gravy|bit|scrap|meat|fillet)))"
)
# `pots` alone are potatoes; pots of something, or beside a food, are not.
_POTS = LatePattern(
    r"^(?P<before>(?:about|abt|approx|around|roughly|maybe|x|small|big|large|lge|med|medium|wee|old|last|a|an|the|my|few"
    r"|some|lots|loads|of|bag|sack|half|new|\d+(?:/\d+)?|\d+(?:\.\d+)? ?k?g|kg|kilos?|lbs?|[ ,-])*)\bpots\b"
    r"(?P<behind>(?:[ ,().-]|x ?\d*|\d+(?:\.\d+)? ?(?:k?g|lbs?|kilos?)?|bag|sack|left|few|a|bit|of|is|are|some|one|two"
    r"|soft|sprouting|going|gone|green|old|eyes|wrinkly|bendy|ok|fine|still|still good|small|big|large|medium|about"
    r"|new)*)$"
)
_GREENS_ONLY = LatePattern(
    r"(?<=\()(?:only |just )?(?:the )?(green|white) (?:bits?|parts?|ends?)(?: only)?(?=\))"
    r"|(?<=[a-z] )(?:only |just )?(?:the )?(green|white) (?:bits?|parts?|ends?) only\b"
)
# Whoever says tin means those in tomato sauce, unless another kind is told; a can of beans may be any.
_TIN_OF_BEANS = LatePattern(r"\b(tins?(?: of| ?[-:])?) beans\b|\bbeans\b(?=.*\btins?\b)")
_OTHER_BEANS = LatePattern(
    r"\b(?:kidney|black|butter|cannellini|haricot|pinto|borlotti|green|mixed|broad|white|red|chick|lima|navy|baked"
    r"|adzuki|refried|runner|french|dry|dried|water|brine|chilli|chili|fava|soya|garden|bean"
    r")\b"
)
# Words of Indian English: so many numbers of a vegetable, and the cloves of a bulb.
_NUMBERS_OF_PODS = LatePattern(r"\bdrumsticks?(?=,? \d+ ?nos?\b)|(?<=\bnos )drumsticks?\b|(?<=\bno )drumsticks?\b")
_GARLIC_FLAKES = LatePattern(r"(?<=\bgarlic )(\d+) flakes?\b|(?<!\w)(\d+) flakes?(?= (?:of )?garlic\b)")
# So many of what grows in hands: `plantain 3 fingers`, `okro 10 fingers`.
_FINGERS = LatePattern(r"\b(?<!fish )(?<!lady )(?<!ladys )(?<!lady's )(?<!ladies )fingers?\b")
_COMES_IN_FINGERS = LatePattern(r"\b(?:bananas?|plantains?|ok[r]os?|okras?|ochros?|ochras?|bhindi|matoke|turmeric)\b")
# The American word is of a mix, the British one of the chilli alone.
_CHILI_POWDER = LatePattern(r"(?:(?<=^)|(?<=[,;.&+] )|(?<=\band ))chili powder\b(?! (?:blend|mix))")
_BUNCH_OF_BANANAS = LatePattern(
    r"\bbunch\b(?=.*\bbananas?\b)|(?:(?<=banana )|(?<=bananas ))bunch\b(?! of (?:\d|three|four|five|six|seven))"
)
# Young leaves, and no one leaf.
_BABY_LEAF = LatePattern(r"\bbaby lea(?:f|ves) (?=(?:spinach|kale|lettuce|greens|chard|rocket|salad|mix)\b)")
# So many of them, or how they look: a nana's things are told otherwise.
_NANAS = LatePattern(
    r"(?:(?<=^)|(?<=\d )|(?<=bunch of ))nanas\b(?=\s*(?:$|[,;(])"
    r"| \d| (?:brown|ripe|green|spotty|black|going|bit|very|v)\b)"
)
# New potatoes are small ones.
_NEW_POTATOES = LatePattern(
    r"(?<=\d )(?:baby |new )+(?=(?:pots|potato(?:es)?|spuds|tatt?ies)\b)"
    r"|\b(?:baby |new )+(?=(?:pots|potato(?:es)?|spuds|tatt?ies)\b[^\d]*\d{1,2}(?![\d./]| ?(?:k?g|lbs?|oz|kilos?)\b))"
)
# So much cocoa is in dark chocolate alone.
_COCOA = LatePattern(r"\b(?:choc|chocolate)\b(?! (?:chips?|spread|biscuits?|milk|cake|ice))(?=.*\b[5-9]\dpercent)")
_DARK = LatePattern(r"dark")
# Leaves are frozen in little lumps.
_LUMPS = LatePattern(r"\b(?:blocks|lumps?|nuggets|pellets|pucks|balls|chunks|bits)\b(?! of)")
_FROZEN_LEAVES = LatePattern(
    r"\b(?:frozen|frz\w*|froz\w*)\b.*\b(?:spinach|kale|chard|greens)\b"
    r"|\b(?:spinach|kale|chard|greens)\b.*\b(?:frozen|freezer|frz\w*)\b"
)
# Rice is sold boiled in sealed cups; a cup of rice is a measure of it.
_RICE_CUP = LatePattern(
    r"\b(?:(?:microwav(?:e|able|eable)|instant|ready|minute|steamed) )*((?:white|brown|basmati|jasmine|wild|sticky) )?"
    r"rice (?:cup|bowl)(s?)\b(?: (?:microwav(?:e|able|eable)|instant))?"
)
_OF_THE_HOME = LatePattern(r"\b(?:cooked|boiled|left ?overs?|made|from|open(?:ed)?|fried)\b")
# Instant coffee with its creamer and sugar holds milk.
_THREE_IN_ONE = LatePattern(r"\b(?:3|three)[ -]?in[ -]?(?:1|one) coffee\b|\bcoffee (?:3|three)[ -]?in[ -]?(?:1|one)\b")
# What was blended with onion is one thing, and no peppers beside it: `blended tatashe/rodo/onion`.
_BLENDED = LatePattern(
    r"\b(?:blended|blitzed|liquidi[sz]ed|puree?d|grinded|pounded) (?:[a-z]+(?: ?[/&+,] ?| and | n | with | )){1,5}?"
    r"(?:onions?|alubosa|albasa|sibuyas|pyaz|garlic|ayu)\b(?:(?: ?[/&+,] ?| and | n )[a-z]+)*"
)
# A plain base with so many of something: foods of their own, and no dish that is made with them.
_BASE_WITH = LatePattern(
    r"^((?:an? |the |my )?(?:(?:bowl|plate|cup|portion|helping|pot)s? of )?(?:(?:brown|white|boiled|cooked|plain) )*"
    r"(?:rice|pasta|noodles|quinoa|potato(?:es)?|toast|couscous|polenta)),? (?:with|and|plus) "
    r"(?=(?:\d{1,2}|an?|two|three|some) [a-z]{3,})"
)
# Rice in Korean where it stands in its cooker, and no bread roll.
_BAP = LatePattern(r"\bbap\b(?=.*\b(?:cooker|potful|rice)\b)")
# A kilo of it is meal, a bowl of it porridge.
_PAP = LatePattern(
    r"\bpap\b(?=[ ,:-]*(?:\d+(?:\.\d)? ?(?:kg|kilos?)|(?:big |full |half )*(?:bag|sack)))"
    r"|(?<=kg )pap\b|(?<=bag )pap\b|(?<=bag of )pap\b|(?<=kg of )pap\b"
)


def _base_and_others(found: re.Match[str]) -> str:
    """`bowl of rice, 2 eggs`; what is on a plate or in a bowl is cooked."""
    on_a_plate = " of " in found[1] and "cooked" not in found[1] and "boiled" not in found[1]
    return f"{found[1].replace(' of ', ' of cooked ') if on_a_plate else found[1]}, "


def _tofu(found: re.Match[str]) -> str:
    kind = "silken" if found["kind"] == "soft" else found["kind"]
    return f"{found['before']}{kind} tofu{found['between']}"


def _frozen_lumps(found: re.Match[str]) -> str:
    return "cubes" if re.search(r"\d|few|some|couple", found.string) else "bag"


DISHES = (
    Rewrite(_TOFU, _tofu),
    Rewrite(_RIBS, r"stalk\1", where=_CELERY),
    Rewrite(_SO_MANY_BEANS, r"mixed bean \1"),
    Rewrite(_TAKEAWAY, "leftover ", where=_OWN_NAME),
    Rewrite(_READY_MEAL, " ", where=_DISH_BY_NAME),
)
BIRDS_AND_POTS = (
    Rewrite(_CHICKEN_HALF, r"\2 joint \1"),
    Rewrite(_WHOLE_BIRD, r"\1 joint "),
    Rewrite(_POTS, r"\g<before>potatoes\g<behind>"),
)
FOODS = (
    Rewrite(_GREENS_ONLY, lambda found: f"{found[1] or found[2]}s"),
    Rewrite(_TIN_OF_BEANS, lambda found: f"{found[1] or ''} baked beans".lstrip(), unless=_OTHER_BEANS),
    Rewrite(_NUMBERS_OF_PODS, "drumstick pods"),
    Rewrite(_GARLIC_FLAKES, lambda found: f"{found[1] or found[2]} cloves"),
    Rewrite(_FINGERS, " ", where=_COMES_IN_FINGERS),
    Rewrite(_CHILI_POWDER, "chili powder blend"),
    Rewrite(_NANAS, "bananas"),
    Rewrite(_BABY_LEAF, "baby "),
    Rewrite(_BUNCH_OF_BANANAS, "hand"),
    Rewrite(_NEW_POTATOES, "small new "),
    Rewrite(_COCOA, "dark chocolate", unless=_DARK),
    Rewrite(_LUMPS, _frozen_lumps, where=_FROZEN_LEAVES),
    Rewrite(_THREE_IN_ONE, "latte"),
    Rewrite(_BLENDED, "tomato salsa with onion and garlic"),
    Rewrite(_BASE_WITH, _base_and_others),
    Rewrite(_BAP, "cooked rice"),
    Rewrite(_RICE_CUP, r"microwave \1rice cup\2", unless=_OF_THE_HOME),
    Rewrite(_PAP, "mealie meal"),
)
