"""What people jot down of a dish or of how a food is seasoned, flavoured or set, put as names have it."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_END = r"(?=\s*[!.?]*\s*(?:$|[,;)]))"
_DIPS = r"(?:salsa|guac(?:amole)?|queso|pico(?: de gallo)?|bean dip|dip)"
_DISHES = (
    r"(?:lasagn[ea]s?|quiche|pizza|calzone|enchiladas?|pierog(?:i|ies|y)"
    r"|burritos?|samosas?"
    r"|empanadas?|pasties|pasty|risotto|frittata|curry|soup|stew|casserole|pie|crepes?|omelette|dumplings|pot pie)"
)
_FILLINGS = (
    r"(?:spinach|mushrooms?|veg(?:gie|etable)?s?|beef|chicken|pork|turkey|lamb|cheese|bean|lentil|broccoli|seafood|tofu"
    r"|squash|butternut|pumpkin|potato|zucchini|carne asada|carnitas|al pastor|barbacoa|black bean|courgette"
    r"|sausage|ham|pepperoni|shrimp|prawn|salmon|tuna|kale|leek|asparagus)"
)
# What tells a state, a colour or what is in it stays: `noodles, fresh one`.
_KINDS = (
    r"(?:an?|this|that|just|only|last|other|bad|not|garlic|onion|fresh|dry|dried|frozen|raw|cooked|boiled|smoked|tinned"
    r"|canned|pickled|salted"
    r"|sweet|hot|plain|brown|white|red|green|yellow|black|purple|orange|firm|soft|silken|ripe|gf|vegan|\w*free"
    r"|garlicky?|oniony?)"
)
# What may stand behind a filling, so that it is none of a list: how much, and how long it is there.
_HOW_MUCH = (
    r"\d|half|quarter|third|one|two|three|a |an |small|big|large|whole|made|open|from|left|frozen|freezer|yest"
    r"|last|mon|tue"
    r"|wed|thu|fri|sat|sun"
)
_PLAINLY = (
    # Chips that are dipped are of maize in America and no fried potatoes.
    (
        LatePattern(rf"\b(?<!tortilla )(?<!potato )(?<!oven )chips (?:&|and|n|w|with|\+|/) (?={_DIPS}\b)"),
        "tortilla chips and ",
    ),
    (
        LatePattern(r"\b(eggs?|pickles?|gherkins|cukes|cucumbers)(?: |, )(?:hot|kosher|sweet|spicy|half sour) dill\b"),
        r"\1",
    ),
    # The filling of a dish behind a comma: `another lasagna, spinach, half`.
    (LatePattern(rf"^((?:[a-z\d/]+ ){{0,3}})({_DISHES}), ({_FILLINGS})(?=\s*$|, ?(?:{_HOW_MUCH}))"), r"\1\3 \2"),
    (
        LatePattern(
            r"\b(ice cream|gelato|sorbet|kombucha|seltzer|(?:oat|soya?|almond|coconut) yogh?urt|popsicles|jam)(?:,? ("
            r"vanilla(?: bean)?|chocolate(?: chip)?|strawberry rhubarb|mint chip|coffee|caramel)| (strawberry"
            r"|raspberry|mint"
            r"|lemon|ginger|blueberry|peach|cherry|mango|coconut|lime|berry))" + _END
        ),
        lambda found: f"{found[2] or found[3]} {found[1]}",
    ),
    # `pain sans gluten`, `pan de molde sin gluten`
    (
        LatePattern(r"\b(?:pain|pane|pao|brot|chleb|(?:potful of |pan de )?molde|pan) gluten[ -]free\b"),
        "gluten free bread",
    ),
    # Milk by its fat alone: `gallon of 2%`.
    (
        LatePattern(
            r"\b(gal(?:lon)?|quart|qt|jug|carton|litre|liter|pint) of ([12]|325) ?(?:%|percent)(?! (?:milk"
            r"|[a-z]*yog|cottage|cream|greek))"
        ),
        r"\1 of \2percent milk",
    ),
    (
        LatePattern(
            r"^([12]) ?(?:%|percent)(?= (?:about|almost|half|a |nearly|mostly|quarter|1/|\d))(?!.*\b(?:milk|yog"
            r"|cottage|cream))"
        ),
        r"\1percent milk",
    ),
    # Eggs by the dozen from whoever lays them.
    (
        LatePattern(
            r"\b((?:\d|half|an?|one|two|three) ?doz(?:en)?)(?: fresh)? (?=(?:from|off) (?:the |our |my )?"
            r"(?:hens?|chickens|girls|ladies|coop|ducks|flock)\b)"
        ),
        r"\1 eggs ",
    ),
    (LatePattern(r"\buse (?:na|already)\b"), "use first"),
    (LatePattern(r"(?<=[a-z]) ends (?=\d+(?:/\d+)? ?(?:#|(?:lbs?|oz|k?g|packs?|bags?)\b))"), " "),
    # `1 can each: corn, peas`, `dressing: italian, blue cheese`: what one word says of each.
    (
        LatePattern(
            r"^(?:1|one|an?) (can|tin|jar|bag|pack|box) each(?: of)?:? ([a-z][a-z ]+(?:(?:, | and | & )[a-z][a-z ]+)+)$"
        ),
        lambda found: ", ".join(f"1 {found[1]} {one}" for one in re.split(r", | and | & ", found[2])),
    ),
    (
        LatePattern(r"^(?:salad )?dressings? ?[:-] ?([a-z][a-z ]+(?:(?:, | and | & )[a-z][a-z ]+)+)$"),
        lambda found: ", ".join(f"{one} dressing" for one in re.split(r", | and | & ", found[1])),
    ),
    (LatePattern(r"(?<![\w/.])(\d/\d|\d(?:\.\d)?) ?#(?!\d)"), r"\1 lb"),
    # What is cut in slices was cooked and has set; so many servings of a pulse are cooked as well.
    (
        LatePattern(r"\bpolenta\b(?=[ ,(]*(?:[a-z]+ )?(?:slices|slab|squares?|wedges?|cold|firm|set|fried|log)\b)"),
        "cooked polenta",
    ),
    (
        LatePattern(
            r"\b(rajma|chole|lobia)\b(?! (?:masala|curry))(?=.*\b(?:servings?|portions?|tiffin|bowls?|katori"
            r"|left ?over)\b)"
        ),
        r"\1 curry",
    ),
    (LatePattern(r"\b(honey|syrup|molasses)\b[ ,(-]+(?:all |a bit |gone |has )*crystalli[sz]ed\b\)?"), r"\1"),
    (LatePattern(r"[,;]? ?\bcut (?:off|from) the cob\b"), ""),
    # Lime or lemon over a cut avocado keeps it green and is none of it.
    (
        LatePattern(
            r"(\b(?:avo(?:cado)?s?|guac(?:amole)?|apples?|pears?)\b[^;,&+]*?),? (?:with|w/?)"
            r" (?:lime|lemon)(?: juice)?\b"
        ),
        r"\1",
    ),
    (LatePattern(r"\bcut(?: up)?,? (?=(?:mon|tues?|wed|thurs?|fri|sat|sun)\w*\s*(?:$|[,;)]))"), "cut on "),
    # A kind behind a comma stands before its food: `milk, oat one`, `kugel, noodle kind`.
    (
        LatePattern(
            rf"^((?:(?:\d{{1,2}}|half|an?|one|two) )*)([a-z]+(?: [a-z]+){{0,2}}), (?!{_KINDS}\b)([a-z]+) (?:one"
            rf"|kind|sort){_END}"
        ),
        r"\1\3 \2",
    ),
    # Lime and chilli over fruit season it: `jicama half w limon y chile`.
    (
        LatePattern(
            r",? \(?\b(?:with|w/?|con) (?:limes?|lemon|limon)(?:,| y| and| &|\+|/) ?(?:chil[ei]s?|chilli|tajin)\b\)?"
            r"|,? \(?\b(?:with|w/?|con) (?:chil[ei]s?|tajin|salt)(?:,| y| and| &|\+|/) ?(?:limes?|lemon|limon)\b\)?"
        ),
        "",
    ),
    # Water that things lie in, however often it was changed.
    (LatePattern(r"\bin (?:salty|salted|salt) water\b"), "in brine"),
    (LatePattern(r",? ?\b(?:1st|2nd|3rd|4th|first|second|third|fourth|last|fresh) water\b"), ""),
    (LatePattern(r",? skimmed off(?: the top)?\b"), ""),
    (LatePattern(r"\b(?:in |from )?(?:the )?(?:chest|deep ?freeze)(?=\s*(?:$|[,;)]))"), "in freezer"),
    # The possessive of Afrikaans: `(oupa se packet)`.
    (
        LatePattern(r"\b(gran|grandad|dad|mum|brother|sister|oupa|ouma|pa|ma|oom [a-z]+|tannie [a-z]+) se (?=[a-z])"),
        r"\1's ",
    ),
    # What bends is no sweet.
    (
        LatePattern(r"\b(?:a bit|a little|bit|slightly|kinda|kind of|gone|going) gummy\b|(?<=[a-z]) gummy" + _END),
        "soft",
    ),
)


def dishes_in_short(text: str) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    return put_in_turn(text, _PLAINLY)
