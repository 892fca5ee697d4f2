"""What cooks write in passing in an ingredient line, put as its reader knows it."""

import re
from collections.abc import Callable

_PLANT = r"(?:oat|soya?|almond|rice|coconut|hemp|pea)"
_WATER = r"(?:(?:cold|warm|hot|boiling|lukewarm|tepid|iced?) )?water"
_MEAT = r"(?:pork|beef|lamb|chicken|turkey|venison|duck|veal|mutton|goat|boar)"
_FILLED = r"(?:ravioli|raviolini|tortellini|tortelloni|agnolotti|cappelletti|mezzelune)"
_HOW_WELL = r"(?:well|lightly|generously|liberally|heavily|highly|all over)"
_SOME = r"(?:plenty of|lots of|a (?:little|bit of|pinch of|good pinch of)|some)"
_SPOON = r"(?:[\d½¼¾][\d/. -]*|an? |a little |some )(?:tbsps?|tsps?|tablespoons?|teaspoons?|ml|cups?|splash(?:es)? of)?"
_TALK: tuple[tuple[re.Pattern[str], str | Callable[[re.Match[str]], str]], ...] = (
    # `few turns of pepper`, `3 grinds of the mill`: the seasoning, whatever else is called pepper
    (
        re.compile(
            r"(?:^|(?<=[a-z])(?:,| and| plus) |(?<= ))(?:an? )?"
            r"(?:(?:few|good|generous|couple of|several|many|some|\d+) )*"
            r"(?:turns?|grinds?|grindings?|twists?|cracks?|milling) (?:of|from) (?:the )?"
            r"(?:(?:pepper ?)?mill|(?:(?:fresh|freshly|black|ground) )*pepper)\b"
        ),
        lambda found: " and black pepper" if found[0].startswith((",", " ")) else "black pepper",
    ),
    # `a little butter`, `a bit of parmesan`: no whole one of it
    (
        re.compile(
            r"^an? (?:(?:very |tiny |wee )?little|(?:(?:little|tiny|wee|good) )?(?:bit|touch|scrap|smear|lick|film) of)"
            r"(?: (?:more|extra|of))* (?=[a-z])(?!gems?\b|over\b|under\b|less\b)"
        ),
        "some ",
    ),
    # `a shake of hot sauce`, `sprinkle of paprika`: so little that nobody counts it
    (
        re.compile(
            r"^(?:an? )?(?:(?:good|big|little|light|generous|small|fine) )?"
            r"(?:shakes?|sprinkl(?:e|ing)|dusting|shower|scattering|slick|trickle|thread) of (?=[a-z])"
        ),
        "some ",
    ),
    # `3 gherkins, plus 1 tbsp of their vinegar`: what they lie in counts with them
    (
        re.compile(
            r",? (?:plus|and|with|\+) (?:about )?(?:[\d½¼¾⅓⅔][\d/. ]*(?:tbsp|tsp|tablespoons?|teaspoons?|ml|cups?)|an?"
            r" (?:splash|spoonful|little|bit)|some|a little) (?:of )?(?:their|its|the)(?: own)? "
            r"(?:juices?|brine|vinegar|liquid|liquor|syrup|pickling (?:juice|liquid|vinegar))\b"
        ),
        "",
    ),
    # `200 g oats, half of them blitzed to flour`: what becomes of some of it names no food beside it
    (
        re.compile(
            r",? (?:half|some|a (?:third|quarter|few|handful)|most|the rest) of (?:them|it) "
            r"(?:\w+ly )?(?:blitzed|ground|crushed|chopped|mashed|blended|whizzed|grated|sliced|left|kept|torn|toasted)"
            r"\b[^,;()]*"
        ),
        "",
    ),
    # `salmon fillet in 4 pieces`, `chickpeas in their liquid`
    (
        re.compile(
            r",? (?:cut )?in(?:to)? \d{1,2} (?:(?:equal|even|large|small|thick|chunky) )?"
            r"(?:pieces|portions|chunks|wedges|strips)\b"
        ),
        "",
    ),
    (re.compile(r"(?<=[a-z]),? in (?:their|its)(?: own)? (?:liquid|brine|water|liquor|tin|can|jar)\b"), ""),
    # `cumin and coriander seeds, toasted and ground`
    (
        re.compile(
            r"(?<=seeds),? (?:(?:dry|lightly|freshly|well)[- ])?(?:toasted|roasted),? (?:and|then|&) "
            r"(?:(?:finely|coarsely|roughly) )?(?:ground|crushed)\b"
        ),
        "",
    ),
    # `1 egg, not if anybody is vegan, it holds without`: for whom it is, and no other food
    (
        re.compile(
            r",? (?:but )?(?:not|only|just|leave (?:it )?out|skip (?:it|this)|omit) if "
            r"(?:any(?:body|one)|some(?:body|one)|you|they|we|he|she|it)\b[^()]*$"
        ),
        "",
    ),
    # `honey + a drizzle to finish`
    (
        re.compile(
            r",? (?:\+|plus|and) an? (?:(?:little|final|last|good) )?"
            r"(?:drizzle|dusting|dash|pinch|splash|sprinkle|grating|knob|swirl|spoonful)(?: more| extra)? "
            r"(?:to|for) (?:finish|serve|serving|top|garnish|dust|drizzle|the top)[^,;()]*"
        ),
        "",
    ),
    # `150 ml red wine (optional, or more stock)`: it may stay out, or something else do in its place
    (re.compile(r"\(optional,? (?:or|and) (?=[a-z])"), "(optional) (or "),
    (re.compile(r"\bor (?:just |simply )?use (?:(?:more|extra|some) )?(?=[a-z])"), "or "),
    # `8 sausages, good fat ones`
    (
        re.compile(
            r",? (?:(?:really|nice|good|big|fat|plump|thick|thin|small|large|little|juicy|proper|decent|best|lovely"
            r"|the|firm|young|not too|meaty) )+ones\b[^,;()]{0,30}$"
        ),
        "",
    ),
    (re.compile(rf"\bmilk \((?:cow'?s?|dairy|whole)(?:,? or |/)({_PLANT})(?: milk)?\)"), r"cow milk or \1 drink"),
    (re.compile(rf"\bmilk \(({_PLANT})(?: milk)?(?:,? or |/)(?:cow'?s?|dairy|whole)\)"), r"cow milk or \1 drink"),
    (re.compile(r"\b(?:long|large|small|big|mild|hot) (?=dried (?:red )?chill?i(?:e?s)?\b)"), ""),
    # how long it soaks in plain water
    (
        re.compile(
            rf",? (?:soaked|steeped|softened|rehydrated) (?:in|with) {_WATER}"
            r"(?: (?:for|until|\d+(?:-\d+)? ?(?:m|h))[^,;()]*)?"
        ),
        "",
    ),
    # `white and yolk kept separate`: the whole of it
    (re.compile(r"(?<=\begg)(s?), whites? and yolks? (?:kept )?(?:separate[d]?|apart)\b"), r"\1, separated"),
    # `slaked with 1 tbsp cold water`
    (
        re.compile(
            r",? (?:slaked|mixed|blended|let down|loosened|whisked|stirred)"
            r"(?: to a (?:thin |smooth )?paste| together)? "
            rf"(?:with|in|into) {_SPOON} ?(?:of )?{_WATER}"
        ),
        "",
    ),
    (
        re.compile(r"\b(?:any|whatever|some|your usual|the) (?:cooking |frying )?oil (?:that )?(?:you|i|we) [a-z ]+$"),
        "oil",
    ),
    (re.compile(r"\bdouble[- ](?=podded\b)"), ""),
    # `stale sourdough, about 3 slices`, `half a pumpkin, 600g flesh`
    (
        re.compile(r"^([a-z][a-z -]+), (?:about )?(\d{1,2}) (slices|rashers|sheets|rounds)\b(?: of it)?"),
        r"\2 \3 \1",
    ),
    (
        re.compile(
            r"^(?:\d+|half|an?|one)(?: an?)? ([a-z -]+), (?:about )?(\d{2,4} ?g|\d(?:\.\d)? ?kg)(?: of)? flesh\b"
        ),
        r"\2 \1",
    ),
    # what the crumbs were made of is no loaf beside them
    (
        re.compile(
            r"(?<=crumbs), (?:made |grated |blitzed |whizzed )?(?:from|of|with|using) "
            r"(?:an?|the|some|day|yesterday|stale|old|leftover|your|good)[- ]"
            r"(?!.*\b(?:gluten|rye|spelt|sourdough|wholemeal|brown|corn)\b)[a-z' -]{3,30}$"
        ),
        "",
    ),
    # dotted out as on a menu: `1 onion ...... finely chopped`
    (re.compile(r"\s*(?:\.\s?){3,}\s*(?=[a-z])"), ", "),
    # by the sheet, the gram or dried it is the pasta, no dish from a tray
    (
        re.compile(
            r"^(?!.*\b(?:leftover|ready|portions?|slices?|frozen|cooked)\b)(?P<much>\d[\d./ -]*(?:g|oz|pack(?:et)?)? ?)"
            r"(?:sheets? )?(?:of )?(?P<sort>(?:(?:dried|dry|fresh|no-cook|oven-ready|egg|plain|white) )*)lasagn[ea]s?"
            r"(?: pasta)?(?: sheets?)?(?=$|[,(])"
        ),
        r"\g<much>\g<sort>lasagne sheets",
    ),
    (re.compile(r",? in (?:(?:thick|thin|fat|large|small) )?(?:wedges|chips)\b"), ""),
    # `pork and fennel sausages`: what the meat is seasoned with is no food beside it; nor what a pasta is filled with
    (re.compile(rf"\b({_MEAT}) (?:and|&) [a-z]+(?: [a-z]+)? (?=(?:sausages?|chipolatas?|bangers?)\b)"), r"\1 "),
    (
        re.compile(
            rf"\b({_MEAT}) (?:and|&) (?!(?:[a-z]+ )?(?:onions?|shallots?|leeks?|garlic|chives?)\b)[a-z]+(?: [a-z]+)? "
            r"(?=(?:burgers?|meatballs?|patties|koftas?|kebabs?)\b)"
        ),
        r"\1 ",
    ),
    (re.compile(rf"\b[a-z]+(?:, [a-z]+)?,? (?:and|&) [a-z]+ (?={_FILLED}\b)"), ""),
    # `plain flour, seasoned well with salt and black pepper`: neither is limited, and the food is what is counted
    (
        re.compile(
            rf",? (?:and )?(?:{_HOW_WELL} )?season(?:ed)?(?: {_HOW_WELL})? with "
            rf"(?:{_SOME} )?(?:(?:sea|flaky|kosher|fine|coarse|table|rock) )?salt"
            rf"(?: (?:and|&) (?:{_SOME} )?(?:(?:freshly|ground|black|white|cracked|milled) )*pepper)?(?=$|[,;)])"
        ),
        "",
    ),
    # so much for each of them, however many they are
    (
        re.compile(
            r"^(?:an?|1|one) (?:(?:good|big|generous|small) )?(?:dollop|spoonful|blob|scoop|handful|drizzle) of "
            r"([a-z][a-z -]+?) (?:each|apiece|a head|per person)$"
        ),
        r"\1",
    ),
    (re.compile(r"\bspears? (?:of )?(?=(?:\w+ )?broccoli\b)"), "stalks "),
    (
        re.compile(
            r"^(?:an?|1|one) (?:(?:small|medium|large|cold|whole|leftover) )*((?:roast(?:ed)?|rotisserie) chicken)\b"
        ),
        r"1 joint \1",
    ),
)  # fmt: skip


def said_plainly(line: str) -> str:
    """A plain line, in which turns of speech that mean a known thing say it."""
    for pattern, known in _TALK:
        line = pattern.sub(known, line)
    return line
