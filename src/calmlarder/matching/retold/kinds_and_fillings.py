"""What kinds, fillings and flavours of a thing are told, where it grew and what is on it, put as names have it."""

from calmlarder.matching.dates.day_names import DAY
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.owners.given_names import GIVEN_NAMES
from calmlarder.matching.rewriting import put_in_turn

_MASHED = (
    "neeps", "swede", "turnip", "turnips", "carrot", "carrots", "parsnip", "parsnips", "potato", "potatoes", "spuds",
    "tatties", "cauliflower", "celeriac", "avocado", "banana", "bananas", "peas", "yam", "pumpkin", "squash", "beans",
    "aubergine", "chickpeas", "eggs", "egg",
)  # fmt: skip
_OF_MILK = r"cheese|cheddar|slices|milk|cream|yog\w*|butter|spread|ice cream|custard|chocolate|mozzarella|feta"
_IN_FLAVOURS = (
    r"yog(?:h)?urt|yog|jell[yo]|mousse|smoothie|milkshake|fromage frais|juice|jam|ice lolly"
    r"|sausage|burger|pizza|pie|pastie|samosa|soup|crisp|sandwich|wrap|spring roll|tart|flan|kebab|pate|dip|noodle pot"
)
_NOT_IN_IT = (
    r"(?:mou?ld|bugs?|moths?|weevils?|maggots?|ants?|lumps?|holes?|bits?|stuff|water|ice|spoons?|nothing|something"
    r"|anything|much|little|half|some|few|one|two|three|left|still|only|just|the|and|not|onions?|garlic|shallots?|leeks?"
    r"|air|dirt|mud|stones?|seeds?|pips|what|whatever|who|hair|toum|aioli"
    r"|lasun|lehsun|pyaa?z|ajo|alho|ail|cebolla|cebola|knoblauch|zwiebeln?)\b"
)
_RUBBED_IN = r"salt|(?:black )?pepper|haldi|turmeric|lemon(?: juice)?|oil|cumin|paprika|herbs?|ginger|vinegar|chilli"
_PUT_ON = r"(?:already |all |is |are |was )*(?:put(?: on)?|rubbed(?: in| on)?|added|applied|smeared(?: on)?|mixed in)"
_GREW_ON = (
    r"windowsill|window sill|allotment|allottment|garden|plot|polytunnel|greenhouse|farm|pier|boat|harbour|quay|market"
    r"|stall|van|tree|vine|bush|bees|hedge|shed|balcony|patio|neighbours?|next door|nextdoor"
)
_PLAINLY = (
    (LatePattern(r"\bweds\b"), "wed"),
    # What it drips of is its own juice.
    (
        LatePattern(
            r"(?<=[a-z\d])[ ,.;(-]+(?:some|all|one|few|bit|a bit|juice|very ripe,?)(?: are| is)? dripping\)?"
            r"(?=\s*(?:$|[,;.]))"
        ),
        "",
    ),
    (LatePattern(r"\bgrinded\b"), "ground"),
    (LatePattern(r"\bbutter ?crunch(?: lettuces?)?\b"), "buttercrunch lettuce"),
    (LatePattern(r"\bpottles?\b"), "pot"),
    (LatePattern(r"[,;(-] ?(?:in )?(?:an? )?iced? block\b\)?"), " frozen"),
    (LatePattern(r"[,;(-]+ ?oily (?:on )?top\b\)?"), ""),
    (LatePattern(r"[,;(-]+ ?(?:the )?meat (?:all )?(?:picked|taken|stripped)(?: off)?(?: (?:it|the bone))?\b\)?"), " "),
    # Noodles of rice by their name in Vietnam.
    (LatePattern(r"\bbun (?=(?:cooked|boiled|noodles?|vermicelli)\b)"), "rice noodles "),
    # What is in it names it no more than behind `with`: `laksa paste, jar, shrimp in it`.
    (
        LatePattern(
            rf"(?<=[a-z\d?)])((?:, (?:an? )?(?:jar|bowl|tub|box|pot|tin|pan|dish))?)[,;?(-]+ ?"
            rf"(?:it has |has |got |there'?s )?(?!{_NOT_IN_IT})([a-z]{{3,}}(?: (?!{_NOT_IN_IT})[a-z]{{3,}})?) "
            r"(?:is |are )?in (?:it|them|there)(?: too| i think| as well)?\)?(?=\s*$)"
        ),
        r" with \2\1",
    ),
    # A kind of it, and no amount.
    (LatePattern(r"[,;(-]? ?\b(?:no|without|with|w/?o?) (?:any |the )?(?:juicy |big )?bits\b(?! of| in)\)?"), ""),
    (LatePattern(r"\b(?:an? )?(?:dod|daud|dawd|skelf|tate|tad|skoosh|glug|slug) of "), "a bit of "),
    (LatePattern(r"\bbutteries\b"), "rowies"),  # flaky rolls, and nothing that is buttery
    (LatePattern(r"(?<=\d)(?: ?-?odd)(?=\s*(?:$|[,;)]))"), ""),
    # What is mashed where nothing says what.
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
            rf"^({_IN_FLAVOURS})s?(?: (?:cup|pot|tube|tub)s)?[ :,(-]+(?:x ?)?(\d{{1,2}}) ?x? "
            r"([a-z]+(?: [a-z]+)?)(?: ?[,&+] ?| and | n | )"
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
            r"|crop|harvest|batch|new ones|garden|allotment|plot|glut)\b[!)]*"
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


def as_named(text: str) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    return put_in_turn(text, _PLAINLY)
