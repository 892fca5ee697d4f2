"""What people jot down in short beside a food, put as it is read: `2 bags of 100`, `clementines, net, 12`, `do 4.12`.

Vessels, amounts, days, givers and remarks; how much a word stands for is common practice, no source.
"""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_END = r"(?=\s*[!.?]*\s*(?:$|[,;)]))"
_PIECES = (
    r"(?:apples?|pears?|oranges?|clementines?|mandarins?|satsumas?|tangerines?|lemons?|limes?|grapefruits?"
    r"|kiwis?|peach(?:es)?"
    r"|nectarines?|plums?|avo(?:cado)?s?|bananas?|mango(?:e?s)?|tomato(?:es)?|potato(?:es)?|spuds|carrots"
    r"|parsnips|beets"
    r"|beetroots|onions?|courgettes?|zucchinis?|cucumbers?|peppers?|cukes)"
)
_SACK = r"(?:(?:net|mesh|small|big|large|little) )?(?:bag|net|sack|box|crate|tray|punnet|basket|case|carton)"
_ABOUT = r"(?:about|around|approx|abt|maybe|like|roughly|circa|ca\.?|~|±)"
# Who gives: kin and neighbours, with a name behind or without.
_KIN = (
    r"(?:uncle|aunt(?:ie|y)?|grandma|grandpa|granny|grandmother|grandfather|granddad|gramps|gram|nana|nan|nonna"
    r"|nonno|oma|opa"
    r"|ouma|oupa|tannie|oom|tia|tio|abuela|abuelo|tita|tito|lola|lolo|tante|mononcle|matante|memere|pepere|baba"
    r"|teta|jeddo"
    r"|paw ?paw|maw ?maw|mee ?maw|mamaw|papaw|pop ?pop|big mama|pastor|father|deacon|sister|brother|cousin|neighbou?rs?"
    r"|mrs?|ms|miss|dr|coach|mother in law|mom in law|church ladies|church)"
)
_WHEN = r"(?:on|in|last|this|for|open|frozen|yest|today|mon|tue|wed|thu|fri|sat|sun|\d)"
_DAY_OF_MONTH = r"\d{1,2}[./-]\d{1,2}(?![\d/])"
_SOMEBODY = r"(?!me\b|us\b|hand\b|mistake\b|mon|tue|wed|thu|fri|sat|sun|tom|today|yest)[a-z]+"
_STRANGE = r"(?:strange|odd|weird|funny|funky|bad|off|wrong|iffy|fishy|nasty|rank|sour|rotten|suspicious|peculiar)"
_SLICED = (
    r"(?:ham|turkey|baloney|bologna|salami|pastrami|roast beef|cheese|cheddar|provolone|swiss|bread|loaf|bacon|chicken"
    r"|pepperoni|mortadella|prosciutto|mozzarella|gouda|havarti|tongue|beef)"
)
_PARTS_OF_A_PAN = {
    "half": 1 / 2, "1/2": 1 / 2, "a third": 1 / 3, "1/3": 1 / 3, "a quarter": 1 / 4, "1/4": 1 / 4, "2/3": 2 / 3,
    "3/4": 3 / 4,
}  # fmt: skip
_GRAMS_FROM = 50  # fewer are pieces


def in_short(text: str) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    return " ".join(put_in_turn(text, _PLAINLY).split())


_PLAINLY = (
    (LatePattern(r"\bw/ ?o(?:ut)?\b"), "without"),
    # A line that ends like a sentence: `best before Nov. 24.`
    (LatePattern(r"(?<=[\da-z)])(?<!\.\d)(?<!\.\d\d)\.+\s*$"), ""),
    # So many of them in one net: `clementines, net bag, ~12`.
    (
        LatePattern(rf"\b({_PIECES}),? {_SACK},? (?:of )?(?:{_ABOUT} ?)?(\d{{1,2}})(?: or so|ish)?\s*$"),
        r"\1 \2",
    ),
    (LatePattern(rf"\b({_PIECES}),? {_SACK} \({_ABOUT}? ?(\d{{1,2}})\)\s*$"), r"\1 \2"),
    # `buckwheat 2 bags of 100`: grams each, where no word tells pieces.
    (
        LatePattern(
            r"(?<![\w/.])(\d{1,2}) ?x? ?(?:bags?|packs?|packets?|pkts?|sachets?|tins?|cans?|blocks?|pouches"
            r"|tubs?|pots?|boxes)"
            r" (?:of|a|@|at) ?(\d{2,4})(?=\s*(?:$|[,;)]))"
        ),
        lambda found: f"{found[1]} x {found[2]} g" if int(found[2]) >= _GRAMS_FROM else found[0],
    ),
    # `1,5x tofu (175g each)`: one and a half of such packs.
    (
        LatePattern(r"(?<![\w/.])(\d)[.,](\d) ?x ([a-z][a-z ]*?) \(?(\d{2,4}) ?(g|ml|oz) each\)?"),
        lambda found: f"{float(f'{found[1]}.{found[2]}') * int(found[4]):g} {found[5]} {found[3]}",
    ),
    # A baked dish by the inches of its pan: common practice, no source.
    (
        LatePattern(
            r"\b(?:(half|1/2|a third|1/3|a quarter|1/4|2/3|3/4|an?|one|1) )?(?:of )?(?:an? )?(9 ?x ?13|13 ?x ?9"
            r"|8 ?x ?8|9 ?x ?9)"
            r"(?: ?(?:\"|''|inch|in))?(?: (?:pan|dish|tray|casserole|baking dish))?\b(?: of)?"
        ),
        lambda found: f" about {_PARTS_OF_A_PAN.get(found[1] or 'a', 1) * (2400 if '13' in found[2] else 1200):.0f} g ",
    ),
    # A kilo cut short, and litres: `1/4 kl`, `1.5lt half`.
    (LatePattern(r"(?<=\d) ?kl\b"), " kg"),
    (LatePattern(r"(?<=\d) ?(?:lts?|ltrs?|lit|liters?|litres?)\b\.?"), " l"),
    (LatePattern(r"\b(?:just )?(?:about|abt|bout) (gone|out|finished|empty|done)\b"), "nearly gone"),
    # What is left in a bottle or a tub by the width of a finger.
    (
        LatePattern(
            r"\b(wine|vino|milk|juice|oj|cream|oil|syrup|stock|broth|cheese|requeij\w+|yogh?urt|kefir|sauce"
            r"|vinegar|jam|dip)\b"
            r"([^;&+]*?),? (?:about |just |only )?(?:1|an?|one|2|two|half an?) (?:fingers?|dit[oa]|dedos?)\b(?: left)?",
            needs=("finger", "dit", "dedo"),
        ),
        r"\1\2 a little left",
    ),
    # `sausage, half a ring`, `baloney sliced thick x6`
    (
        LatePattern(r"\b(sausage|kielbasa|kolbasz|boerewors|chorizo|kubasa), (half|\d)(?: a)? (ring|coil)s?\b"),
        r"\1 \2 \3",
    ),
    (
        LatePattern(
            rf"\b((?:[a-z]+ )*{_SLICED}),? sliced(?:,? (?:thick|thin|thinly|thickly|medium))?,? ?"
            rf"(?:x ?(\d{{1,2}})|(\d{{1,2}}) ?x)\b"
        ),
        lambda found: f"{found[2] or found[3]} slices {found[1]}",
    ),
    # A jar by what was in it once: `stewed rhubarb, jam jar`.
    (
        LatePattern(
            r"(?<=[a-z\d]) ?[,(-]+ ?(?:in )?(?:an? |the |old |big |small |my )*(?:jam|honey|mayo\w*|pickle"
            r"|peanut butter|pb"
            r"|marmalade|mason|coffee|sauce) (jars?)(?:ful)?\)?(?! of)"
        ),
        r", \1",
    ),
    (
        LatePattern(
            r"(?<=[a-z\d]) ?[,(-]+ ?(?:in )?(?:an? |the |old |big |small |my )*(?:ice cream|marg\w*|butter"
            r"|yog\w*|sour cream"
            r"|cottage cheese|hummus|feta|take ?(?:out|away)|to ?go) (tubs?|pots?|containers?|boxe?s?|cartons?"
            r"|cups?)\)?(?! of)"
        ),
        r", \1",
    ),
    (LatePattern(r"\b(?:quart |qt |pint |pt )?sealers?\b"), "jar"),
    (LatePattern(r"\b(\d|one|un|two) pots? mason\b|\bpots? mason\b"), lambda found: f"{found[1] or 1} jar"),
    # The day that words of other tongues tell as a label: `kefir do 4.12`.
    (
        LatePattern(
            rf"\b(?:do|bis|tot|fino al?|hasta(?: el)?|ate|até|jusqu'?(?:au|a)|til|zu verbrauchen bis)"
            rf" (?:dnia |zum |o )?(?={_DAY_OF_MONTH})"
        ),
        "use by ",
    ),
    # `smietana 18 % to 6.12`; one to one and a half of something is an amount.
    (LatePattern(r"(?<!\d )(?<!up )\b(?:to|until|till) (?=\d{1,2}\.\d{1,2}\s*(?:$|[,;)]))"), "use by "),
    (LatePattern(r"(?<=\d) days?(?: more)? (?:max|tops|at (?:the )?most|at best|maximum)\b"), " days left"),
    (LatePattern(r"\b(?:limit|deadline)(?: is|:)? (?=\d{1,2}[/.-]\d)"), "use by "),
    # Whoever gave it, by whatever name: `from paw paw`, `from uncle Basil`.
    (
        LatePattern(
            rf"[,;(-]? ?\b(?:a gift |sent |brought |given )?(?:from|off) (?:my |our |the |old )*{_KIN}"
            rf"(?:'s (?:house|place|garden|tree|farm|land))?(?:[- ](?:san|chan|ji))?"
            rf"(?: (?!{_WHEN}|left\b)[a-z]+)?\)?(?=\s*(?:$|[,;)])| (?:{_WHEN}))"
            r"(?: (?=(?:mon|tue|wed|thu|fri|sat|sun)))?"
        ),
        lambda found: " from " if found[0].endswith(" ") else " ",  # given on a day that has been
    ),
    # How it was put up, and by whom: `beets, canned by Olga`, `seitan loaf, made by Finch`.
    (
        LatePattern(
            rf"(?<=[a-z\d])[,;]? \(?(?:home ?)?(canned|bottled|pickled|smoked|cured) by (?:my |our "
            rf"|the )?{_SOMEBODY}\)?{_END}"
        ),
        r" \1",
    ),
    (
        LatePattern(
            rf"(?<=[a-z\d])[,;]? \(?(?:home ?)?(?:preserved|put up|jarred|baked|made) by (?:my |our "
            rf"|the )?{_SOMEBODY}\)?{_END}"
        ),
        "",
    ),
    (
        LatePattern(
            r"[,;]? \(?(?:leftover |left )?from the (?:meal train|potluck|church|food bank|pantry|freezer meal)\b\)?"
        ),
        " ",
    ),
    # What smells strange has gone off; what has fuzz on it as well.
    (
        LatePattern(
            rf"\b(?:the |its |it )?smells? (?:is |are |seems? |a (?:bit|little) |kind of |kinda |really "
            rf"|very )*{_STRANGE}\b"
            rf"|\b(?:has |got |with |w )?(?:an? )?{_STRANGE} smell\b"
            rf"|\b(?:tastes?|tasting) (?:a bit |kinda |really )?{_STRANGE}\b"
        ),
        "smells off",
    ),
    (
        LatePattern(
            r"(?<=[a-z]{3})(?<!peach)[,;(]? ?\b(?:with|w/?|has|have|got|some|growing|covered in)? ?"
            r"(?:a bit of |some |a little |white |green |blue |grey |gray |black )*fuzz\b(?: on (?:it|top|them"
            r"|the top))?\)?" + _END
        ),
        ", fuzzy",
    ),
)
