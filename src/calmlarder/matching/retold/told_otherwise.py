"""Amounts, vessels, contents and remarks that people put another way, as they are read: `3lb 6oz`, `a hand of 5`."""

import re

from calmlarder.matching.dates.day_names import DAY
from calmlarder.matching.late_patterns import LatePattern

_NUMBER = r"(?:\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|twelve)"
_SMALL_NUMBER = r"(?:half(?: an?)?|1/2|quarter|1/4|3/4|\d{1,2}|an?|one|two|three|four|five|six)"
_OUNCES_TO_A_POUND = 16
_POUNDS_AND_OUNCES = LatePattern(
    r"(?<![\w./])(\d{1,2}) ?(?:lbs?|pounds?)(?:,| and)? ?(\d{1,2}) ?(?:ozs?|ounces?)\b",
    needs=("lb", "pound"),
)
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
_END = r"(?=\s*(?:$|[,;.)!]| - ))"
_PLAINLY = (
    # `green bananas hand of 5` are five of them.
    (LatePattern(rf"\b(?:hand|bunch|bag|net|string|plait) of ({_NUMBER})(?= ?(?:$|[,;()]))"), r"x \1"),
    # `box 5 pcs left` are five of what was in it.
    (
        LatePattern(r"\b(?:box|tin|packet|pack|tub|bag|tray),? (\d{1,2}) ?(pcs?|pieces?|slices?)\b(?! (?:each|x))"),
        r"\1 \2",
    ),
    # `ham, sliced - tomek work`: whose it is and where it is eaten.
    (
        LatePattern(
            r"(?<=[a-z\d]) - (?!(?:for|from|to|at|the|my|our|after|before|all|some|good|use|this|next|last"
            r"|till|until)\b)"
            r"([a-z]{3,}) (?:work|school|gym|packed lunch)$"
        ),
        r" (\1's)",
    ),
    # `loaf heel end`, `the heel end of`: the crust, and no whole loaf.
    (LatePattern(r"\bloaf(?:,| -)? (?:the )?heel(?: end)?\b"), "heel"),
    (LatePattern(r"\bheel end\b"), "heel"),
    (LatePattern(r"\b(end|bit|drop|dregs|scraps|scrapings|remains|rest|bottom|half|quarter|third) of$"), r"\1"),
    # How it is cut tells no amount: `rhubarb frozen in bits`.
    (LatePattern(rf"(?<=[a-z]) in (?:little |small |big )?(?:bits|chunks|lumps|strips|batons|rings){_END}"), ""),
    # A fist is a small head, a football a large one.
    (LatePattern(r"\b(?:(?:the )?size of (?:a|my) fist|fist[ -]?sized?|tennis ball sized?)\b"), "small"),
    (LatePattern(r"\b(?:the )?size of (?:a|my) (?:head|football|baby'?s head)\b"), "large"),
    # `oat drink, like 2 coffees worth`: what goes into so many cups is a splash each.
    (
        LatePattern(
            rf"\b(?:like |about |enough for )?({_SMALL_NUMBER}) (?:coffees?|teas|brews?|cuppas?|cups of tea)'? ?worth\b"
        ),
        r"\1 x 2 tbsp",
    ),
    (LatePattern(r"\benough (?:milk )?for (?:a|one|1) (?:coffee|brew|cuppa|cup of tea)\b"), "2 tbsp"),
    # What stands in a jar on its last legs is nearly eaten; what grows so is wilted.
    (
        LatePattern(r"\b((?:jar|bottle|tub|tube|pot|carton|packet|tin)\b.*?),? on (?:its|their) last legs\b"),
        r"\1 nearly gone",
    ),
    # `hummus 2 tubs, 1 beetroot 1 plain`
    (
        LatePattern(
            r"^([a-z]+s?) 2 (tubs|pots|jars|packs|packets|bags)[ ,:(-]+(?:1|one) ([a-z]+)(?:,| and| &)? (?:1|one)"
            r" (?:plain|ordinary|normal|original|regular)\b\)?"
        ),
        r"1 \2 \3 \1, 1 \2 \1",
    ),
    # `sardine tin x2 tomato tin x3`: two things that no comma parts.
    (
        LatePattern(
            r"((?:tins?|cans?|jars?|bags?|bottles?|pa?c?kt?s?) ?x ?\d{1,2}) (?=[a-z]+(?: [a-z]+)?"
            r" (?:tins?|cans?|jars?|bags?|bottles?|pa?c?kt?s?) ?x ?\d)"
        ),
        r"\1, ",
    ),
    # A vessel that once held another food: `soup, 2 takeaway packs`, `stew in an ice cream tub`.
    (
        LatePattern(
            rf"(?<=[a-z)])((?:,| in| -)? (?:(?:an? |the |my |{_SMALL_NUMBER} ))?(?:old |empty |big |small |little )?)"
            r"(?:take ?away|take ?out|marg(?= cups?\b)|margarine(?= cups?\b))"
            r" (tubs?|box(?:es)?|pots?|containers?|packs?|cups?|tins?|trays?)\b"
        ),
        r"\1\2",
    ),
    (
        LatePattern(
            r"(?<=[a-z)])((?:,| -)? in (?:an? |the |my |our )?(?:old |empty |big |small |little )?)"
            r"(?:ice ?cream|marg(?:arine)?|butter|yog(?:h)?urt|sweet|quality) (tub|box|pot|container|tin)\b"
        ),
        r"\1\2",
    ),
    # `plant milk (soya)`, `dairy free yoghurt, coconut`: which plant it is of.
    (
        LatePattern(
            r"\b(?:plant(?:[ -]based)?|dairy[ -]free|non[ -]?dairy|vegan|alt(?:ernative)?)"
            r" (milk|yog(?:h)?urts?|yogs?|cream)"
            r"(?:,? \(?| ?- ?)(soya?|oat|almond|coconut|rice|hemp|cashew|hazelnut|pea)\b\)?"
        ),
        r"\2 \1",
    ),
    # `cawl, veg`, `curry (veg)`: a dish of vegetables, and no vegetables beside it.
    (
        LatePattern(
            r"\b(soup|curry|pie|stew|cawl|casserole|lasagn[ea]|chilli|korma|biryani|burgers?|samosas?|past(?:y|ies)|broth"
            r"|balti|moussaka|fried rice|chow mein)(?:, | - |: | \()veg(?:etables?|etarian|gie)?\)?"
            r"(?=\s*(?:$|[,;]| \d| half))"
        ),
        r"veg \1",
    ),
    # What is left of a whole dish is a part of the whole, and of no portion: `lasagne half left`.
    (
        LatePattern(
            r"^((?:[a-z'-]+ ){0,4}(?:lasagn[ea]|pie|cake|quiche|crumble|tart|moussaka|pizza|trifle|cheesecake"
            r"|gateau|flan|frittata)\b"
            r"(?: [a-z]+){0,3}?),? (?:about |bout |around )?(?:a )?(half|third|quarter|1/2|1/3|1/4|2/3|3/4) left\b"
        ),
        r"\2 a \1",
    ),
    # What is on a cake is on it.
    (
        LatePattern(
            r"\b((?:cake|muffins|cupcakes|buns|gateau)\b[^,]*(?:,[^,]*)?)(?:,| with) (?:and )?"
            r"(?:butter ?cream|icing|candles|jam and cream)(?= ?(?:$|[,;]))"
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
    (
        LatePattern(
            r"\((?:the |my |our )?(?:lads|kids|boys|girls|childrens|children's|mens|men's|wains|weans)'?"
            r" (?:tea|dinner|supper|lunch)[^()]*\)"
        ),
        "",
    ),
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
            r"|no [a-z]+ (?:left?|in it)),? ?(?:(?:only|just) (?:the )?(?:soup|sauce|gravy|stew|liquid|broth)"
            r"(?: left)?)?\)?(?=$|[,;])"
        ),
        "",
    ),
    (LatePattern(r"\b(?:wey|that|wey dey|wey still) remain(?: small)?\b"), "leftover"),
    # `butter soft`, `rock hard`: how soft, how hard.
    (LatePattern(r"\b(?:butter|rock|bone|stone|brick|rubber) (?=(?:soft|hard|dry)\b)"), ""),
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
        LatePattern(r"[,(]? ?\bin (?:their|its|the) (?:skins?|jackets?|leaf|leaves|husks?|pods?|shells?)\b(?! of)\)?"),
        "",
    ),
    (LatePattern(r"[,(]? ?\bfrom (?:a|the|my|our|last) (?:meal|recipe|veg|food|dinner)[ -](?:kit|box|bag)s?\b\)?"), ""),
    (LatePattern(r"[,(]? ?\bin (?:a|the|my) (?:jug|drawer|basin)(?: (?:with|w/?) (?:a|the) banana)?(?=$|[,;)])"), ""),
    (LatePattern(r"\b(?:cut (?:into )?)?curry size(?: pieces)?\b"), ""),
    (LatePattern(r"\bvac(?:uum)? pack (?=\d+ ?g\b)"), "vacuum packed "),
    # `satsumas net, 5 left` are five, and no nets.
    (
        LatePattern(r"(?<=[a-z])(?:,| -)? (?:net|bag|box|pack|packet|punnet|tray|carton|tub),? (\d{1,2}) (?=left\b)"),
        r" \1 ",
    ),
    (LatePattern(r"\b(\d{1,2}|one|two|three) (?:lonely|lone|measly|solitary|odd) (?=[a-z]{3})"), r"\1 "),
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
    (LatePattern(r"\bclay (?=pots?\b)"), ""),
    (LatePattern(r"\bhorse ?shoes?\b"), "ring"),
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
    # `courgettes, 3 lil ones`, `sweet potato, one, massive`: the size of what is counted.
    (LatePattern(rf"\b({_NUMBER}) (?:lil|little|wee|titchy|tiddly|tiny|small)(?: ones?| uns)\b"), r"\1 small"),
    (LatePattern(rf"\b({_NUMBER}) (?:big|large|huge|massive|whopping)(?: ones?| uns)\b"), r"\1 large"),
    (LatePattern(rf"(?<=[,x ])({_NUMBER}), ?(?:massive|huge|enormous|giant|massive one|big one|large)$"), r"\1 large"),
    (LatePattern(rf"(?<=[,x ])({_NUMBER}), ?(?:tiny|titchy|small|wee|little)(?: one)?$"), r"\1 small"),
    (LatePattern(r", ?(?:just )?(?:a )?(?:little|tiny|wee)(?: bit)?(?: left)?$"), ", a little bit"),
    (LatePattern(r"\bplus (?=(?:tops|leaves|greens|stalks)\b)"), "with "),
    # A year tells of what keeps: `chutney 2023 & 2024`.
    (LatePattern(r"\b20[12]\d(?: ?(?:&|and|\+|,|/) ?20[12]\d)+\b"), ""),
    (LatePattern(r"(?<=\d) balance\b|\bbalance (?=\d)"), " left "),
)  # fmt: skip
# What a mix is made of, behind a dash or in a bracket, is in it: `1kg mixed veg - corn carrot beans`.
_MADE_UP_OF = LatePattern(
    r"\b((?:mixed (?:veg(?:etables)?|fruit|nuts|berries|peppers|leaves|seeds)|stir[ -]?fry (?:veg(?:etables)?|mix)"
    r"|fruit salad|salad mix|veg mix|trail mix)(?:,? (?:an? |\d+ ?)?(?:k?g|kilos?|bags?|packs?|tubs?|half|bag of))*)"
    r" ?(?:(?:-|–|:) ?([a-z][a-z ,&+/]*?)(?=$| - | – |;|\()|\(([a-z][a-z ,&+/]*)\))"
)
_PARTS_OF_MIXES = LatePattern(
    r"(?:(?:peas?|carrots?|(?:sweet)?corn|(?:green |french )?beans|broccoli|cauli(?:flower)?|peppers?|cabbage|sprouts"
    r"|bean ?sprouts|mange ?tout|sugar snaps|spinach|courgettes?|swede|parsnips?|turnips?|(?:red |white )?cabbage"
    r"|raspberries|strawberries|blueberries|blackberries|blackcurrants|redcurrants|cherries|grapes|melon|pineapple"
    r"|apples?|oranges?|mango|kiwi|almonds|cashews|walnuts|hazelnuts|peanuts|raisins|pecans|brazils|rocket|chard"
    r"|red|green|yellow|orange|sunflower|pumpkin|sesame|flax|seeds)(?:[ ,&+/]|and|n)*){2,}"
)
# Milk by the colour of its top, in Britain: whole is blue, semi-skimmed green, skimmed red (common practice).
_MILK = LatePattern(r"\b(?:milk|dud+h|doodh)\b")
_TOPS = LatePattern(
    r"(?<![\w.])(\d(?:\.\d)? ?(?:pints?|pt|pts|litres?|l|ltr)),? (blue|green|red)(?: tops?)?(?=\s*(?:$|[,+&;]|and\b))"
)
_KINDS_OF_MILK = {"blue": "whole milk", "green": "semi skimmed milk", "red": "skimmed milk"}
# What is wrapped in leaves is counted so, and is in no wrap.
_IN_LEAVES = LatePattern(r"\b(?:moi ?moi|moin ?moin|kenkey|banku|abacha|eko|agidi|tamales?|zongzi|ofada)\b")
_WRAPS = LatePattern(r"(?<=\d )wraps?\b")


def told_otherwise(text: str) -> str:
    """A plain line with such phrases put plainly; all others stay as they are."""
    text = _POUNDS_AND_OUNCES.sub(_in_ounces, text)
    for shape, plainly in _PLAINLY:
        text = shape.sub(plainly, text)
    if _MILK.search(text) and _TOPS.search(text):
        text = _MILK.sub("", _TOPS.sub(lambda found: f"{found[1]} {_KINDS_OF_MILK[found[2]]}", text), count=1)
    text = _DAL.sub("dhal curry", text, count=1) if _DAL.search(text) and _A_DISH.search(text) else text
    text = _MADE_UP_OF.sub(_without_parts, text)
    return _WRAPS.sub("pieces", text) if _IN_LEAVES.search(text) else text


def _in_ounces(found: re.Match[str]) -> str:
    return f"{int(found[1]) * _OUNCES_TO_A_POUND + int(found[2])} oz"


def _without_parts(found: re.Match[str]) -> str:
    """A mix without what it is made of, where all that it names are usual parts of such a mix and none is an allium."""
    told_at_once = found[3] and not any(sign.isdigit() for sign in found[1])  # a bracket is read as it stands
    return found[1] if not told_at_once and _PARTS_OF_MIXES.fullmatch(found[2] or found[3]) else found[0]
