"""What is corrected, sized or told by the way in a line, put as it is read: `2 lemons.. no 1`, `(im veggie)`."""

from calmlarder.matching.dates.day_names import DAY
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.owners.given_names import GIVEN_NAMES

_FREE = r"(?:lactose|dairy|gluten|wheat|egg|nut|fodmap)"
_DIET = (
    rf"(?:veggie|veg|vegan|vegetarian|pescatarian|pesky|coeliac|celiac|kosher|halal|{_FREE}[ -]?(?:free|intolerant)"
    r"|intolerant)"
)
_SIZE = r"(?:really |very |quite |one |an? )*(?:big|large|huge|massive|enormous|giant)"
_RIGHTED = r"(?:no(?:,? wait| actually| make that)?|wait(?:,? no)?|actually|sorry|make that|scratch that|i mean)"
_MASHED = (
    "neeps", "swede", "turnip", "turnips", "carrot", "carrots", "parsnip", "parsnips", "potato", "potatoes", "spuds",
    "tatties", "cauliflower", "celeriac", "avocado", "banana", "bananas", "peas", "yam", "pumpkin", "squash", "beans",
    "aubergine", "chickpeas", "eggs", "egg",
)  # fmt: skip
_OF_MILK = r"cheese|cheddar|slices|milk|cream|yog\w*|butter|spread|ice cream|custard|chocolate|mozzarella|feta"
_IN_FLAVOURS = r"yog(?:h)?urt|yog|jell[yo]|mousse|smoothie|milkshake|fromage frais|juice|jam|ice lolly"
_RUBBED_IN = r"salt|(?:black )?pepper|haldi|turmeric|lemon(?: juice)?|oil|cumin|paprika|herbs?|ginger|vinegar|chilli"
_PUT_ON = r"(?:already |all |is |are |was )*(?:put(?: on)?|rubbed(?: in| on)?|added|applied|smeared(?: on)?|mixed in)"
_GREW_ON = (
    r"windowsill|window sill|allotment|allottment|garden|plot|polytunnel|greenhouse|farm|pier|boat|harbour|quay|market"
    r"|stall|van|tree|vine|bush|bees|hedge|shed|balcony|patio|neighbours?|next door|nextdoor"
)
_PLAINLY = (
    (LatePattern(r"\bweds\b"), "wed"),
    (LatePattern(r"\bbutteries\b"), "rowies"),  # flaky rolls, and nothing that is buttery
    (LatePattern(r"(?<=\d)(?: ?-?odd)(?=\s*(?:$|[,;)]))"), ""),
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
    # `bag o salad`, and what is mashed where nothing says what.
    (
        LatePattern(
            r"\b(bags?|box|cans?|tubs?|jars?|bowls?|pots?|packs?|tins?|bits?|bunch|head|cups?|plate|loaf) o'? "
            r"(?=[a-z]{3})"
        ),
        r"\1 of ",
    ),
    (
        LatePattern("".join(rf"(?<!\b{root} )" for root in _MASHED) + r"\bmashed(?= (?:w|with|and|n)\b|\s*$|, )"),
        "mashed potato",
    ),
    (LatePattern(rf"\b({'|'.join(_MASHED)}),? (?:all )?mashed(?: up)?(?=\s*(?:$|[,;(]))"), r"mashed \1"),
    (LatePattern(r"\bchatn(?:i|ey)\b"), "chutney"),
    # `(me sisters)`: as people say it in the north of England.
    (
        LatePattern(
            r"\bme (?=(?:mum|mam|dad|nan|sister|brother|mate|gran|aunt(?:ie|y)|wife|husband|bro|sis|son|daughter)s?\b)"
        ),
        "my ",
    ),
    # So many of each flavour: `yoghurts: 3 strawberry 1 pear`.
    (
        LatePattern(
            rf"^({_IN_FLAVOURS})s?[ :,(-]+(?:x ?)?(\d{{1,2}}) ?x? ([a-z]+(?: [a-z]+)?)(?: ?[,&+] ?| and | n | )"
            rf"(\d{{1,2}}) ?x? "
            r"([a-z]+(?: [a-z]+)?)\)?$"
        ),
        r"\2 \3 \1s, \4 \5 \1s",
    ),
    # What it is filled with stands behind how much there is of it: `quiche 1/3 broccoli + stilton`.
    (
        LatePattern(
            r"^((?:half |the |a |some |leftover )*)(quiche|tart|flan|omelette|frittata)s?,? "
            r"(\d/\d|half|quarter|third|\d slices?)?"
            r"[ ,(-]+([a-z]+(?: cheese)?) ?(?:\+|&|and|n) ?([a-z]+(?: cheese)?)\b\)?(?=\s*(?:$|,))"
        ),
        r"\1\3 \4 and \5 \2",
    ),
    # Its seeds and roots are on it still.
    (
        LatePattern(
            r"(\b(?:pumpkin|squash|butternut|melon|papaya|pawpaw|pomegranate)\b[^,;]*?) (?:with|w/?) "
            r"(?:the |its )?seeds\b"
        ),
        r"\1",
    ),
    (LatePattern(r",? \b(?:with|w/?) (?:the |its |their )?roots?\b(?! (?:veg|ginger|beer))"), ""),
    # In British shops what is free from is baked without gluten, or made without milk.
    (LatePattern(rf"\bfree[ -]from (?=(?:[a-z]+ )?(?:{_OF_MILK})\b)"), "dairy free "),
    (
        LatePattern(
            r"\bfree[ -]from (?=(?:[a-z]+ )*[a-z]+)(?!(?:the|a|my|gluten|wheat|dairy|milk|lactose|egg|nut|sugar)\b)"
        ),
        "gluten free ",
    ),
    (LatePattern(r"\bfree[ -]from (?=(?:gluten|wheat|dairy|milk|lactose|egg|nut|sugar)\b)"), "without "),
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
            r"^(?:uht |long life )*lactose[ -]free (?:uht |long life )*"
            r"(?=(?:half |1/2 |a )?(?:\d(?:\.\d)? ?)?(?:l|litres?|liters?|ml|gal(?:lon)?|carton|jug)\b)"
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
    (LatePattern(r"\bw\. ?(?=[a-z]{3})"), "with "),
    # Where it came from, and nothing gone off: `honey off own bees`, `tomatoes off windowsill`.
    (
        LatePattern(
            rf"(?<=[a-z\d)]) off (?:(?:own|our own|an? [a-z]+|one of [a-z]+|this [a-z]+|that [a-z]+) ?(?:[a-z]+)?"
            rf"|(?:{_GREW_ON})|(?:{'|'.join(sorted(GIVEN_NAMES, key=len, reverse=True))}))"
            r"(?=\s*(?:$|[,;.()]| this | last | on | yest| mon| tue| wed| thu| fri| sat| sun))",
            needs=(" off ",),
        ),
        "",
    ),
    (
        LatePattern(rf"\(?\b({DAY})(?:'s)? (?:(?:farmers'? )?(?:mkts?|markets?)|car ?boot|boot sale)\b\)?"),
        r"bought \1",
    ),
    # The first of a crop is no day.
    (
        LatePattern(
            r"[,;(-]* ?\b(?:the )?(?:1st|first|last) of (?:the |this |our )?(?:winter|season|year|summer|spring|autumn"
            r"|fall"
            r"|crop|harvest|batch|new ones|garden)\b[!)]*"
        ),
        "",
    ),
    # What stands with it already is on it: `fish 5 pc, turmeric + salt already put`.
    (
        LatePattern(rf"[,;(-]+ ?(?:{_RUBBED_IN})(?: ?(?:\+|&|and|n|,) ?(?:{_RUBBED_IN}))* {_PUT_ON}\)?(?=\s*$)"),
        "",
    ),
    (
        LatePattern(rf"[,;(-]+ ?((?:[a-z]+ ?(?:\+|&|and|n|,) ?)*[a-z]+) {_PUT_ON}\)?(?=\s*$)"),
        r" with \1",
    ),
    # Nobody knows which: `(soup? squash?)`.
    (LatePattern(r"\(([a-z ]{3,})\? ?(?:or )?([a-z ]{3,})\?+\)"), r"(\1 or \2)"),
    (
        LatePattern(r"\b(tube\b,? )(?:squeezed|rolled|squashed)(?: up)? (?:flat|right up|to the end)\b"),
        r"\1nearly empty",
    ),
    (LatePattern(r"\b(?:rdy|redy|reddy) (?=meals?\b)"), "ready "),
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
    r"(?![^()]*(?:\d|\b(?:meat|beef|mince|pork|turkey|chicken|lamb|venison|bacon|chorizo|sausages?|no|not|without|minus)\b))"
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


def by_the_way(text: str) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    for shape, plainly in _PLAINLY:
        text = shape.sub(plainly, text)
    text = _WITHOUT_MEAT.sub(r"bean chilli\1", text) if "chil" in text else text
    text = _TUB_OF_CHILLI.sub(r"\1 chilli con carne", text)
    text = _POT_OF_CHILLI.sub(r"\1chilli con carne", text)
    text = _POT_OF_BEANS.sub("bean chilli", text) if "chil" in text else text
    text = _CANADIAN_DAY.sub(lambda day: f"20{day[1]}-{_MONTHS.index(day[2]) + 1:02}-{int(day[3]):02}", text)
    found = _STICKS.match(text)
    return f"2 handfuls {text}" if found else text
