"""Contents, kinds and remarks that people put another way, as they are read: `plant milk (soya)`, `plate on top`."""

import re

from calmlarder.matching.dates.day_names import DAY
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

# Lentils that are a dish: told in a bowl or a portion, made, left, or somebody's.
_DAL = LatePattern(
    r"(?<!chana )(?<!toor )(?<!tur )(?<!moong )(?<!mung )(?<!masoor )(?<!masur )(?<!musur )(?<!urad )(?<!red )"
    r"(?<!yellow )(?<!split )(?<!dry )(?<!dried )(?<!cholar )(?<!tadka )(?<!curry )\b(?:dal|daal|dahl)\b"
    r"(?! (?:makhani|tadka|fry|cooked|chawal|bhat|baati|dhokli|bag|packet|flour))"
)
_A_DISH = LatePattern(
    r"\b(?:portions?|servings?|helpings?|bowls?|bowlful|katori|ladles?|finish(?:ing|ed)?|eat(?:ing)?|reheat(?:ed)?)\b"
    r"|(?:[a-z]'s|\b(?:mum|mom|mam|nan|gran|aunt(?:y|ie)|neighbou?r|flatmate|housemate|roommate)s) (?:dal|daal|dahl)\b"
)
_PLAINLY = (
    # `ham, sliced - tomek work`: whose it is and where it is eaten.
    (
        LatePattern(
            r"(?<=[a-z\d]) - (?!(?:for|from|to|at|the|my|our|after|before|all|some|good|use|this|next|last"
            r"|till|until)\b)"
            r"([a-z]{3,}) (?:work|school|gym|packed lunch)$"
        ),
        r" (\1's)",
    ),
    # `plant milk (soya)`, `dairy free yoghurt, coconut`: which plant it is of.
    (
        LatePattern(
            r"\b(?:plant(?:[ -]based)?|dairy[ -]free|non[ -]?dairy|vegan|alt(?:ernative)?)"
            r" (milk|yog(?:h)?urts?|yogs?|cream)"
            r"(?: \(| ?- ?| )(soya?|oat|almond|coconut|rice|hemp|cashew|hazelnut|pea)\b\)?"
        ),
        r"\2 \1",
    ),
    # `cawl, veg`, `curry (veg)`: a dish of vegetables, and no vegetables beside it.
    (
        LatePattern(
            r"\b(soup|curry|pie|stew|cawl|casserole|lasagn[ea]|chilli|korma|biryani|burgers?|samosas?|past(?:y|ies)|broth"
            r"|balti|moussaka|fried rice|chow mein)(?:, | - |: | \()veg(?:etables?|etarian|gie)?\)?"
            r"(?=\s*(?:$|,? ?\d|,? half))"
        ),
        r"veg \1",
    ),
    # What is on a cake is on it.
    (
        LatePattern(
            r"\b((?:cake|muffins|cupcakes|buns|gateau)\b[^,]*(?:,[^,]*)?)(?:,| with) (?:and )?"
            r"(?:butter ?cream|icing|candles)(?= ?(?:$|[,;]))"
        ),
        r"\1",
    ),
    # What was left on plates, with its day behind it.
    (
        LatePattern(
            r"^(?:off|from|left on) (?:the |my |our |their )?(?:[a-z]+s?'?s?'? )?plates? (last night|yesterday)"
            r" ?[:,-] ?(.*)$"
        ),
        r"\2, from \1",
    ),
    (
        LatePattern(rf"\b(?:finish|eat|have|drink)(?: it| them)?(?: up)? (before|by) (?=(?:{DAY})\b)"),
        r"use \1 ",
    ),
    # A meal that somebody left, by its day: `(lads' tea friday - not eaten)`.
    (
        LatePattern(
            rf"[,(-] ?(?:[a-z]+s?'?s? )?(?:tea|dinner|supper|lunch) (?:on |from )?({DAY})[ ,-]+(?:was )?"
            r"(?:not eaten|uneaten|never eaten|nobody ate (?:it|them)|not had)\)?"
        ),
        r", from \1",
    ),
    # The tea of children is their dinner, in Britain.
    (LatePattern(r"\b(kids|lads|boys|girls|family|children'?s|wains|weans)(') ?tea\b(?! bags?)"), r"\1\2 dinner"),
    (LatePattern(r"\b(kids|lads|boys|girls|family|childrens|wains|weans) tea\b(?! bags?)"), r"\1 dinner"),
    (LatePattern(rf"\b({DAY}) bake\b"), r"baked \1"),
    # A tin or jar of which the rest is left was opened on the day that a bracket tells.
    (
        LatePattern(rf"^((?=.*\b(?:half|rest|remains|quarter|third)\b).*\b(?:tin|can|jar|carton)\b.*) \(({DAY})\)$"),
        r"\1 opened \2",
    ),
    # What is eaten of a dish is said of the dish: `light soup, fish finish, only soup`, `gravy, no meat left`.
    (
        LatePattern(
            r"(?<=[a-z\d])[,;(] ?(?:(?:all |the )*[a-z]+ (?:is |are |don )?(?:finish(?:ed)?|all gone|all eaten)"
            r"|no [a-z]+ left?),? ?(?:(?:only|just) (?:the )?(?:soup|sauce|gravy|stew|liquid|broth)"
            r"(?: left)?)?\)?(?=$|[,;])"
        ),
        "",
    ),
    (LatePattern(r"\b(?:wey|that|wey dey|wey still) remain(?: small)?\b"), "leftover"),
    # `pear, butter soft`, `rock hard`: how soft, how hard; butter that is soft stays butter.
    (LatePattern(r"\b(?:rock|bone|stone|brick|rubber) (?=(?:soft|hard|dry)\b)"), ""),
    (LatePattern(r"^((?:pears?|avocados?|avos?|peach(?:es)?|plums?|mango(?:es)?)\b[^;]*), butter soft$"), r"\1, soft"),
    # Lids, water and stones belong to no list of foods.
    (
        LatePattern(
            r"[,(]? ?\b(?:with|w/?|under) (?:an? |the |some )?(?:plate|lid|saucer|cling ?(?:film|wrap)|foil|cloth"
            r"|tea ?towel|paper|water|oil)(?: (?:on(?: it)?(?: top)?|over(?: it)?(?: the top)?|on the top))\b\)?"
        ),
        "",
    ),
    (
        LatePattern(
            r"[,(]? ?\b(?:with|w/?) (?:the |its )?(?:seed|stone|pit|stones|pips|skin|skins|leaves|roots) "
            r"(?:still )?(?:in|on)\b\)?"
        ),
        "",
    ),
    (
        LatePattern(r"[,(]? ?\bin (?:their|its|the) (?:skins?|leaf|leaves|husks?)\b(?! of)\)?"),
        "",
    ),
    (LatePattern(r"[,(]? ?\bfrom (?:a|the|my|our|last) (?:meal|recipe|veg|food|dinner)[ -](?:kit|box|bag)s?\b\)?"), ""),
    (LatePattern(r"[,(]? ?\bin (?:a|the|my) (?:jug|drawer|basin)(?: (?:with|w/?) (?:a|the) banana)?(?=$|[,;)])"), ""),
    (LatePattern(r"\b(?:cut (?:into )?)?curry size(?: pieces)?\b"), ""),
    (LatePattern(r"\bvac(?:uum)? pack (?=\d+ ?g\b)"), "vacuum packed "),
    (LatePattern(r" on (?:the )?vines?\b"), ""),
    (
        LatePattern(r"\bchips (?:and|&|n|with) (curry sauce|gravy|cheese|mushy peas) left ?overs?\b"),
        r"leftover chips, \1",
    ),
    (LatePattern(r"\btoad in the hole\b"), "toad in hole"),  # nothing lies in it
    (LatePattern(r"(?<=[a-z]) [a-z]{3,}-ish(?: one)?\b"), ""),
    (LatePattern(r"\br/meals?\b"), "ready meal"),
    (LatePattern(r"\b(?:meals on wheels|food bank|foodbank) (?=[a-z])"), ""),
    (LatePattern(r"\b(over|to|last )nite\b"), r"\1night"),
    (LatePattern(r"\bflavs?\b"), "flavour"),
    (LatePattern(r"\bnoods\b"), "noodles"),
    # A word of another tongue for mushrooms, and their sort in English beside it.
    (
        LatePattern(
            r"\b(?:madarch|champignons?|funghi|setas?|pilze|pieczarki|svampe?|sopp|khumbi?|cogumelos|hongos)"
            r" \((chestnut|button|portobello|oyster|shiitake)s?\)"
        ),
        r"\1 mushrooms",
    ),
    # `noodles 3 packets curry flavour`: the flavour is told of them.
    (LatePattern(r"^((?:instant )?noodles)\b(.*?),? ([a-z]+) flavou?r$"), r"instant noodles (\3 flavour)\2"),
    (LatePattern(r"\bpurple (?=(?:aubergines?|egg ?plants?|brinjals?|kathirikkai|begun|baingan)\b)"), ""),
    (LatePattern(r"(?<=[a-z] )ice (?=cubes\b)"), ""),
    (LatePattern(r"^crudites ?[:,-] ?"), ""),
    # High in protein says what a yoghurt or a wrap is sold as, and is no powder.
    (
        LatePattern(
            r"\b(?:high|extra|added)[ -]protein\b(?! (?:powder|bars?|shakes?|balls?))"
            r"(?=.*\b(?:yog|milk|wrap|bread|bagel|pudding|quark|skyr|cheese))|(?<=[a-z] )\bhigh protein\b(?! [a-z])"
        ),
        "",
    ),
    (LatePattern(r"\bplus (?=(?:tops|leaves|greens|stalks)\b)"), "with "),
    # A year tells of what keeps: `chutney 2023 & 2024`.
    (LatePattern(r"\b20[12]\d(?: ?(?:&|and|\+|,|/) ?20[12]\d)+\b"), ""),
)  # fmt: skip
# What a mix is made of, behind a dash or in a bracket, is in it: `1kg mixed veg - corn carrot beans`.
_MADE_UP_OF = LatePattern(
    r"\b((?:mixed (?:veg(?:etables)?|fruit|nuts|berries|peppers|leaves|seeds)|stir[ -]?fry (?:veg(?:etables)?|mix)"
    r"|fruit salad|salad mix|veg mix|trail mix)(?:,? (?:an? |\d+ ?)?(?:k?g|kilos?|bags?|packs?|tubs?|half|bag of))*)"
    r" ?(?:(?:-|–|:) ?([a-z][a-z ,&+/]*?)(?=$| - | – |;|\()|\(([a-z][a-z ,&+/]*)\))"
)
# The same with nothing between: `frozen mixed veg peas carrot corn`.
_MADE_UP_AT_ONCE = LatePattern(r"\b(mixed veg(?:etables)?|veg mix) ([a-z]+(?:(?:,| and| &)? [a-z]+){1,5})$")
_PARTS_OF_MIXES = LatePattern(
    r"(?:(?:peas?|carrots?|(?:sweet)?corn|(?:green |french )?beans|broccoli|cauli(?:flower)?|peppers?|cabbage|sprouts"
    r"|bean ?sprouts|mange ?tout|sugar snaps|spinach|courgettes?|swede|parsnips?|turnips?|(?:red |white )?cabbage"
    r"|raspberries|strawberries|blueberries|blackberries|blackcurrants|redcurrants|cherries|grapes|melon|pineapple"
    r"|apples?|oranges?|mango|kiwi|almonds|cashews|walnuts|hazelnuts|peanuts|raisins|pecans|brazils|rocket|chard"
    r"|red|green|yellow|orange|sunflower|pumpkin|sesame|flax|seeds)(?:[ ,&+/]|and|n)*){2,}"
)


def told_otherwise(text: str) -> str:
    """A plain line with such phrases put plainly; all others stay as they are."""
    text = put_in_turn(text, _PLAINLY)
    text = _DAL.sub("dhal curry", text, count=1) if _DAL.search(text) and _A_DISH.search(text) else text
    at_once = _MADE_UP_AT_ONCE.search(text)
    if at_once and _PARTS_OF_MIXES.fullmatch(at_once[2]):
        text = text[: at_once.end(1)]
    return _MADE_UP_OF.sub(_without_parts, text)


def _without_parts(found: re.Match[str]) -> str:
    """A mix without what it is made of, where all that it names are usual parts of such a mix and none is an allium."""
    told_at_once = found[3] and not any(sign.isdigit() for sign in found[1])  # a bracket is read as it stands
    return found[1] if not told_at_once and _PARTS_OF_MIXES.fullmatch(found[2] or found[3]) else found[0]
