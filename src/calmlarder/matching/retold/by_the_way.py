"""What is corrected, sized or told by the way in a line, put as it is read: `2 lemons.. no 1`, `(im veggie)`."""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_FREE = r"(?:lactose|dairy|gluten|wheat|egg|nut|fodmap)"
_DIET = (
    rf"(?:veggie|veg|vegan|vegetarian|pescatarian|pesky|coeliac|celiac|kosher|halal|{_FREE}[ -]?(?:free|intolerant)"
    r"|intolerant)"
)
_SIZE = r"(?:really |very |quite |one |an? )*(?:big|large|huge|massive|enormous|giant)"
_RIGHTED = r"(?:no(?:,? wait| actually| make that)?|wait(?:,? no)?|actually|sorry|make that|scratch that|i mean)"
_PLAINLY = (
    # `2 lemons.. no 1`: the last number counts.
    (
        LatePattern(
            rf"(?<![\w/.])(\d{{1,2}}) ([a-z][a-z ]+?)[ ,.;(–-]+{_RIGHTED},? (?:it'?s |its |only |just |there'?s )*"
            r"(\d{1,2})\)?$"
        ),
        r"\3 \2",
    ),
    # What somebody is does not tell what a thing is.
    (
        LatePattern(
            rf"[,;(]? ?\b(?:i'?m|i am|we'?re|we are|she'?s|he'?s|they'?re) (?:a |the |all |both |not )*{_DIET}"
            r"(?: (?:one|though|now|so .*))?(?=\s*(?:$|[,;)]))"
        ),
        " ",
    ),
    # What beasts do, and how people eat, tells nothing of what is there: `eggs 18, chooks are going mad`.
    (
        LatePattern(
            r"(?<=[a-z\d])[ ,.;(–-]+ ?(?:(?:the|my|our) )?(?:chooks?|hens?|chickens?|ducks?|bees|goats?|cows?|girls)"
            r" (?:(?:are|is|r|have|has|had|were|keep|went|been)\b"
            r"|(?:just |still )?(?:lay|laid|laying|stopped|started)\b).*$"
        ),
        "",
    ),
    (
        LatePattern(
            r"(?<=[a-z\d])[ ,.;(–-]+ ?(?:(?:the|my|our) )?(?:kids?|boys?|girls?|teenagers?|children|we|i)"
            r" (?:drinks?|eats?|gets? through|goes? through|inhales?|demolish(?:es)?|scoffs?|loves?|lives? on)"
            r" (?:it|them|these|those|this|that|loads|tons|so much)\b[^,;()]*(?=\)?$)"
        ),
        "",
    ),
    # A finger of a root is a piece of it.
    (
        LatePattern(
            r"\b(ginger|turmeric|galangal|horseradish),? "
            r"((?:an? |one |two |\d )?)(?:(?:small|big|fat|thin|little) )?fingers?\b"
        ),
        r"\1 \2piece",
    ),
    # Hung up in a plait: the same bulbs.
    (LatePattern(r"\b(onions?|garlic|shallots?),? (?:braided|plaited|in a (?:braid|plait|string))\b"), r"\1"),
    # Whole nuts in a butter of them: a coarse one.
    (LatePattern(r"(?<=butter) ?[,(-] ?whole nuts?\b\)?|(?<=\bpb) ?[,(-] ?whole nuts?\b\)?"), " crunchy"),
    # Packets that came with a meal hold none of it.
    (
        LatePattern(
            r"\b((?:sachets?|packets?|pouches|pots)\b[^,;]*?) (?:from|off|out of) (?:the |a |our |last night'?s )?"
            r"(?:(?:chinese|indian|thai|sushi|burger|chip|fish) )?"
            r"(?:take ?-?(?:away|out)s?|restaurant|delivery|place|shop)\b"
        ),
        r"\1",
    ),
    # Tops that grow again in water are there as they are.
    (
        LatePattern(
            r"[,;(-]* ?\b(?:re-?growing|rooting)"
            r"(?: (?:in|on) (?:a |the )?(?:jar|glass|water|cup|jug|(?:window ?)?sill))?"
            r"(?: of water)?\b\)?"
        ),
        " ",
    ),
    (LatePattern(r"\bthings? of (?=garlic\b)"), "bulb of "),
    # `bag o salad`
    (
        LatePattern(
            r"\b(bags?|box|cans?|tubs?|jars?|bowls?|pots?|packs?|tins?|bits?|bunch|head|cups?|plate|loaf) o'? "
            r"(?=[a-z]{3})"
        ),
        r"\1 of ",
    ),
    # Nothing of it is in the thing, and it is no amount: `0 cal syrup`.
    (LatePattern(r"\b(?:0|zero)[ -]?(?:carbs?|sodium)\b,? ?"), " "),
    (LatePattern(r"\b(?:0|zero)[ -]?(?:cal(?:orie)?s?|sugars?)\b"), "sugar free"),
    (LatePattern(r"\b0 fat\b"), "fat free"),
    # A store of the house is no food: `swede (root cellar)`.
    (
        LatePattern(
            r"[,;(]+ ?(?:kept |still )?(?:in |from |on )?(?:the )?(?:root cellar|cold ?(?:room|cellar|store)"
            r"|mud ?room|basement"
            r"|root store|larder floor|back porch|sun ?room)\b\)?"
        ),
        " ",
    ),
    # What is small of such vessels is a bowl that one eats from: common practice, no source.
    (LatePattern(r"\b(?:small|little) (?:dish|ramekin|casserole)(?:es)?\b(?! of dried)"), "bowl"),
    (
        LatePattern(
            r"[,;(]? ?\b(?:home ?grown|grown|planted|picked|dug|raised|foraged|caught) by (?:the |my |our )?[a-z]+"
            r"(?: \d{1,2}\b\.?)?\)?"
        ),
        " ",
    ),
    # Milk by its fat or its box alone: `2% gallon`, `lactose free 2L`.
    (
        LatePattern(
            r"^((?:1|2|325)percent|skim(?:med)?|whole|homo) "
            r"(?=(?:half |1/2 |a |1 )?(?:gal(?:lon)?|quart|qt|litre|liter|jug|\d ?l)\b)"
        ),
        r"\1 milk ",
    ),
    (
        LatePattern(
            r"^(?:uht |long life )*lactose[ -]free,? (?:uht |long life )*"
            r"(?=(?:half |1/2 |a |one |two )?(?:\d(?:\.\d)? ?)?(?:l|litres?|liters?|ml|gal(?:lon)?|carton|jug)\b)"
        ),
        "lactose free milk ",
    ),
    # What colour they are behind their name: `pickled eggs pink ones 4`.
    (LatePattern(r"(?<=eggs) (?:the )?(?:pink|brown|white|purple|blue|speckled) ones?\b"), ""),
    (LatePattern(r"\b(small|large|big|medium|little)[ -]?ish\b"), r"\1"),
    # A big bowl is one that is served from: so much as two and a half that one eats from; common practice, no source.
    (LatePattern(rf"\b{_SIZE} (?:mixing )?bowl(?:ful)?\b(?: full)?"), "2 1/2 bowls"),
    (LatePattern(r"\bmore (?:[a-z]+ )?than (?:we|i|you|anyone|anybody|he|she|they)\b[a-z' ]*"), "plenty"),
    # What is left is weighed: `about a quarter left, 500g`.
    (
        LatePattern(
            r"\b(?:about |maybe |roughly |nearly )*(?:a |one )?(?:half|quarter|third|1/2|1/4|1/3|2/3|3/4)"
            r"(?: of (?:it|one))?"
            r" left(?:, ?(?:so |about |approx |roughly |say |or |ca )*| so )(?=\d+(?:\.\d+)? ?(?:k?g|grams|kilos?)\b)"
        ),
        "",
    ),
    # Most of a leek's end is its greens.
    (
        LatePattern(r"[,(]? ?\b(?:mostly|mainly|just|only|all) (?:the )?greens? (?:ends?|parts?|tops?|bits?)\b\)?"),
        " green part",
    ),
    (LatePattern(r"[,;(]? ?\b(?:good|nice|lovely|long|big|great|plenty of) green (?:tops|leaves|bits)\b"), ""),
    # A store of dry goods that was filled is some packs of it.
    (
        LatePattern(
            r"(?<=[a-z],) (?:big|large) tin,? full\b|(?<=[a-z]) (?:big|large) tin,? full\b"
            r"|(?<=[a-z]) (?:big|large) (?:dabba|drum|canister),? full\b"
        ),
        " 2 packets",
    ),
    (LatePattern(r"[,;(]? ?\b(?:made )?(?:from|with) whole (?:soya? ?)?beans\b(?=.*$)"), ""),
    (LatePattern(r"\b(?:from|since|at|over) (?:the |last )?week ?end\b"), "from saturday"),
)
# Raw vegetables in sticks, of which no amount is told: what one has ready in a tub.
_STICKS = LatePattern(
    r"^(?!.*\d)(?!.*\b(?:bag|tub|box|pot|pack|packet|few|half|handful|bunch|some|bit)\b)"
    r"(?:[a-z]+ )?(?=(?:carrot|celery|cucumber|pepper|swede) (?:sticks|batons)\b)"
)
# A pot of it, and no chilli, where a line tells when it was made.
_POT_OF_CHILLI = LatePattern(
    r"^((?:some |the |my |our |homemade |leftover |last of the |rest of the )*)chill?i"
    r"(?=(?: (?:i|we|mum|dad|nan) made)? (?:from|left over|leftover|made|cooked|last night|yesterday|on sunday)\b"
    r"|,? (?:made|cooked|leftover|yesterday|last night|sunday|monday)\b)"
    r"(?!.*\b(?:hot|dried|plant|market|garden|shop)\b)"
)
# So much of it is the dish: `tub of chilli`.
_TUB_OF_CHILLI = LatePattern(
    r"\b(tubs?|tupper(?:ware)?s?|portions?|bowls?|containers?|pots?|potfuls?)(?: of)? chill?i(?=\s*(?:$|[,;(]))",
    needs=("chil",),
)
# A bracket that tells what is in it tells no meat.
_WITHOUT_MEAT = LatePattern(
    r"(?<!bean )\bchill?i((?:,? (?:tub|pot|box|bowl|potful|left ?overs?))?),? "
    r"\((?=[^()]*\b(?:beans?|lentils?|chickpeas?|tofu|vegetables|veg)\b)"
    r"(?![^()]*(?:\d|\b(?:meat|beef|mince|pork|turkey|chicken|lamb|venison|bacon|chorizo|sausages?|no|not"
    r"|without|minus)\b))"
    r"[^()]*\)"
)
_POT_OF_BEANS = LatePattern(
    r"\b(?:veggie|veg|vegan|vegetarian|bean|(?:3|three|mixed) bean|lentil) chill?i"
    r"(?=,? (?:(?:i|we|mum|dad|nan) made|from|left over|leftover|made|cooked|yesterday|last night)\b)"
)
# The months on packs of Canada, in two letters: Canadian Food Inspection Agency, date markings: recalled.
_MONTHS = ("ja", "fe", "mr", "al", "ma", "jn", "jl", "au", "se", "oc", "no", "de")
_CANADIAN_DAY = LatePattern(
    rf"(?<![\w/.])(?:20)?(2[4-9]|3\d)[ -]?({'|'.join(_MONTHS)})[ -]?(0?[1-9]|[12]\d|3[01])(?![\w/.])",
    needs=_MONTHS,
)
_ENGLISH = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
# The same the other way round, behind a word for a label: `bb 06 de`.
_CANADIAN_DAY_FIRST = LatePattern(
    rf"\b(bbe?|best before|best by|exp|expires|ub|use by|mejor antes del)\.? (0?[1-9]|[12]\d"
    rf"|3[01])[ -]?({'|'.join(_MONTHS)})"
    r"(?=\s*(?:$|[,;)]))",
    needs=_MONTHS,
)


def by_the_way(text: str) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    text = put_in_turn(text, _PLAINLY)
    text = _WITHOUT_MEAT.sub(r"bean chilli\1", text) if "chil" in text else text
    text = _TUB_OF_CHILLI.sub(r"\1 chilli con carne", text)
    text = _POT_OF_CHILLI.sub(r"\1chilli con carne", text)
    text = _POT_OF_BEANS.sub("bean chilli", text) if "chil" in text else text
    text = _CANADIAN_DAY_FIRST.sub(lambda day: f"{day[1]} {int(day[2])} {_ENGLISH[_MONTHS.index(day[3])]}", text)
    text = _CANADIAN_DAY.sub(lambda day: f"20{day[1]}-{_MONTHS.index(day[2]) + 1:02}-{int(day[3]):02}", text)
    found = _STICKS.match(text)
    return f"2 handfuls {text}" if found else text
