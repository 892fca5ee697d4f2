"""Phrases that tell an amount: parts of a usual one, and other ways to write a number."""

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.amounts.numbers_and_fractions import PART_WORDS, WHOLE_WORDS, Span
from calmlarder.matching.late_patterns import LatePattern

CHUNK = Span(0.2, 0.35, 0.6)  # of a pack: common practice, no source
# What says that little is left says so of a measured amount as well: `a gallon of milk, almost gone`.
NEARLY_GONE = LatePattern(r"\b(?:nearly|almost|mostly|about|pretty much) (?:empty|gone|finished|done)\b")
# Words for a part of what there usually is, and how much of it: common practice, no source.
SHARES = (
    (LatePattern(r"\b(?:nearly|almost|mostly|about to be|pretty much) (?:empty|gone|finished|done|out)\b"
        r"|\b(?:nearly|almost|next to|pretty much) (?:none|nothing|no)\b(?: left)?"
        r"|\b(?:barely|hardly|scarcely) (?:any|anything)\b(?: left)?"
        r"|\b(?:dregs|last|scraps?) of(?: the)?\b"
                r"|\b(?:end|dregs|remains) of the\b"
                r"|\b(?:just the |the |an )?end of (?:a |its |my )?(?=(?:jar|bottle|tub|tube|bag|packet)\b)"
                r"|\b(?:the )?(?:end|bottom|dregs|remains) of (?:(?:a |its |my )|the (?:[a-z]+ )?)?"
                r"(?=(?:bag|jar|packet|pack|tub|bottle|box|carton|tube|pot|tin)\b)"
                r"|\brunning (?:low|out)\b|\blow on\b"), Span(0.05, 0.12, 0.25)),
    (LatePattern(r"\b(?:scrapes?|smears?|scrapings?|smidge[n]?|dregs) of(?: the)?\b"
        r"|\b(?:just |only )*(?:the )?(?:last )?(?:scrapes?|smears?|scrapings?|dregs"
        r"|(?<=last )(?:squeeze|dribble|drop))\b"
        r"(?: (?:left )?(?:round|around|in|at|on) the [a-z]+)?(?: only)?"
        r"|\b(?:what'?s|whats) left (?:round|around|at|on) the [a-z]+"),
     Span(0.02, 0.06, 0.12)),
    (LatePattern(r"\b(?:(?:wee|tiny|little) (?:drops?|bits?|pieces?|lumps?)|drops?|dribbles?|splodges?|trickle"
        r"|thimbles?)(?: of)?\b(?! )?"),
     Span(0.05, 0.1, 0.2)),
    (LatePattern(r"\b(?:good |big |nice |large )?(?:chunk|hunk)\b(?: (?:of|left)\b)?"), CHUNK),
    (LatePattern(r"\b(?:a )?sliver\b(?: of\b)?|\bslivers of\b"), Span(0.05, 0.1, 0.2)),
    (LatePattern(r"\b(?:end |odd |last |small )?(?:bits?|scraps?|nubs?|stubs?|stumps?|lumps?|hunks?|remnants?"
        r"|chunks?)\b(?: (?:of|left)\b)?"), Span(0.1, 0.25, 0.45)),
    (LatePattern(r"\b(?:loads?|lots|tons|plenty|heaps|masses|oodles|piles|too (?:many|much)|many(?! seed)|glut)\b"
        r"(?: (?:and \w+|of)\b)?"), Span(1.5, 2.5, 4)),
    (LatePattern(r"\b(?:nearly|almost|mostly) full\b"), Span(0.75, 0.85, 1)),
    (LatePattern(r"\b(?:a |only |just )*(?:few |couple of |couple )?(?<!saffron )strands?\b(?: (?:of|left)\b)?"),
     Span(0.02, 0.06, 0.12)),
    (LatePattern(r"\ba little(?: bit)?(?: of)?\b"), Span(0.1, 0.25, 0.45)),
    (LatePattern(r"\b(?:(?:about |an |one )?inch left|inch in the bottom)\b"), Span(0.05, 0.12, 0.2)),
)  # fmt: skip
LEFT = LatePattern(
    rf"(?<![\w/])(?:about |only |just |approx )?({'|'.join(PART_WORDS)}|three quarters|two thirds|\d/\d"
    rf"|\d{{1,2}}%)(?: (?:of it|a|of|the|an?))?"
    r"(?: (?:pack|bag|jar|tub|tin|bottle|block|carton|box))? (left|full|remaining|gone|used|eaten|empty)\b",
    needs=(" left", " full", " remaining", " gone", " used", " eaten", " empty"),
)
GONE = frozenset({"gone", "used", "eaten", "empty"})
_GRAMS_ONLY = (
    r"([5-9]\d|[1-9]\d\d|[1-4]\d00)(?![\w/.%-])(?!,\d)"
    rf"(?! ?(?:x|{UNIT}|{MEASURE}|percent|of|to)\b)"
)
# Other ways to write an amount, and the plain one.
PLAINLY = (
    (LatePattern(r"(?<!\w)x ?(\d\.\d)(?![\w.])"), r"\1"),
    # `yoghurt 500g half`: half of the pot is left.
    (LatePattern(r"(?<=\d)( ?(?:k?g|ml|l|ltr|litres?)) (half|1/2)(?=\s*(?:$|[,;)]))"), r"\1 \2 left"),
    # In what a part or a number of a thing is kept is no measure of it: `half, in a zip bag`.
    (
        LatePattern(
            r"(?<!\w)(half|quarter|third|\d/\d|\d{1,2})\b([^\d]*?),? ?\b(?:kept |wrapped |stored |sitting )?in "
            r"(?:a |an |its |my |the |some )?(?:(?:zip|ziplock|ziploc|freezer|sandwich|plastic|paper|little|small"
            r"|big|old|clear|glass|lidded|sealed|zip lock) )*"
            r"(?:bags?|baggie|tub|box|container|bowl|foil|cling ?film|plastic|tupperware|paper|wrap"
            r"|cup|mug|glass|saucer)\b(?! of)",
            needs=("in ",),
        ),
        r"\1\2 ",
    ),
    # How it is packed tells no number.
    (LatePattern(r"\bvac(?:uum)?[ -]?(?:pac?ks?|packed|sealed)\b"), " "),
    # `2 bags x100g`: so many of so much; a tin stays one, of which the liquid is poured off.
    (
        LatePattern(
            rf"(?<![\w./])(\d{{1,2}}) ?(tins?|cans?)(?: of)? ?[x@] ?(?=\d+(?:\.\d+)? ?(?:{UNIT})\b)",
            needs=("tin", "can"),
        ),
        r"\1 \2 of ",
    ),
    (
        LatePattern(
            r"(?<![\w./])(\d{1,2}) ?(?:bags?|pa?c?ks?|pa?c?kts?|packets?|pouch(?:es)?|sachets?|boxes|tubs?"
            r"|pots?|jars?|blocks?|cartons?|punnets?|nets?|bottles?|trays?|btls?|slabs?)"
            rf"(?: of)? ?[x@] ?(?=\d+(?:\.\d+)? ?(?:{UNIT})\b)"
        ),
        r"\1 x ",
    ),
    # `thighs x8 (2 packs)`: the packs are counted by what is in them.
    (
        LatePattern(
            r"(?<!\w)(x ?\d{1,2}|\d{1,2} ?x)(?: *, *| )(?:in )?(?:\d{1,2}|one|two|three|four) "
            r"(?:packs?|packets?|bags?|boxes|box|trays?|punnets?|nets?|pkts?)\b"
        ),
        r"\1",
    ),
    (LatePattern(r"\b(?:an?|one|1)\s+and an? half\b"), "1.5"),  # `a lime and a half`, without the lime
    # What it stands in tells no more than its size, and a pack for many holds more.
    (LatePattern(r"\bpint (?:deli )?(?:container|tub|carton|bottle|box|jar)s?\b"), "pint"),
    (
        LatePattern(
            r"\b(?:family|value|jumbo|mega|bulk|club)(?:[ -]size)? (?=(?:pack|packet|pkg|package|bag|box|tub)\b)"
        ),
        "large ",
    ),
    (LatePattern(r"(?<!\d )(?<!of )\bchunks\b(?! of)"), " "),  # how it is cut, as in `mango chunks`
    # A year, and no number of anything: `frozen broad beans 2013`.
    (LatePattern(r"(?<![\w./,-])(?:19[6-9]\d|20(?:0[1-9]|[1-4]\d))(?![\w/.,%-])(?! ?(?:x|[mk]?g|ml|l)\b)"), " "),
    (LatePattern(r"(?:\+ ?/? ?-|-/\+|±|~) ?(?=\d)"), "about "),
    # So many in a pack are pieces, and no grams: `tortillas 60 pk`.
    (LatePattern(r"(?<![\w/.x])([5-9]\d|1\d\d)[ -]?(?:packs?|pk|pck|ct|count)\b\.?(?! of)"), r" \1 pieces "),
    (LatePattern(r"(?<=\d)[ -]?(?:ct|count)\b,? (?:half|1/2)\b", needs=("half", "1/2")), " half left"),
    (LatePattern(r"(?<=\d)[ -]?(?:ct|count)\b\.?"), " "),
    (LatePattern(r"(?<=\d)(?=doz(?:en)?\b)"), " "),
    (LatePattern(r"\b(?:dozn|dozzen|dozon|duzen|dozin)\b"), "dozen"),
    (LatePattern(r"(?<=\d) ?c\b(?!\.? ?(?:&|and) )\.?"), " cup"),
    # What is said of all of them, and of the odd bit beside a number, changes no number.
    (LatePattern(r"\b(?:the )?(?:very )?last of (?:them|these|those|'?em|it)\b(?=.*\d)"), " "),
    (
        LatePattern(r"(\d[^\d]*?)\b(?:the )?(?:very )?last of (?:them|these|those|'?em|it)\b", needs=("last of",)),
        r"\1 ",
    ),
    (LatePattern(r"(?<=\w) (?:and|n|&|\+) (?:a )?(?:little |wee |tiny )?(?:bits?|scraps?|drops?)(?: more)?\s*$"), " "),
    (LatePattern(r"\b(?:1|one|an?)? ?doz(?:en)? (?:and|n|&) an? half\b"), "18"),
    (
        LatePattern(
            rf"\b({'|'.join(WHOLE_WORDS)}) (?:and|n|&) (?:an? )?(?=half\b|quarter\b)", needs=("half", "quarter")
        ),
        r"\1 and a ",
    ),
    # A shopping bag of what grows is no packet of it: common practice, no source.
    (LatePattern(r"\b(?:a |one |whole )?carrier bag(?: ?full)?(?: of)?\b"), " 1 kg "),
    # `tofu 14oz, two`: so many of so much.
    *(
        (LatePattern(rf"(?<![\w./])(\d+(?:\.\d+)? ?(?:{UNIT})), ?x? ?(?:{word}|{number})(?=\s*$)"), rf"{number} x \1")
        for number, word in enumerate(("two", "three", "four", "five", "six"), 2)
    ),
    # `2 pcs a 200 g`: so many of so much.
    (
        LatePattern(
            rf"(?<![\w./])(\d{{1,2}}) ?(?:pcs?|pieces?|nos?|x|stk|st)?\.? ?(?:,? ?(?:a|at|je|@)) (?=\d+ ?(?:{UNIT})\b)"
        ),
        r"\1 x ",
    ),
    (LatePattern(r"(?<=\d) ?(?:n|&|\+) (?=a half|a quarter|half|½|1/2)"), " and "),
    (LatePattern(r"(?<=\d) and (?=half\b)"), " and a "),
    (LatePattern(r"\b(?:half|1/2) (?:a )?doz(?:en)?\b\.?"), "half a dozen"),
    (LatePattern(r"(?<=\d )dz\b|(?<=\d)dz\b"), " doz"),
    (LatePattern(r"\b(?<!half )(?:1|one|an?) +doz(?:en)?\b\.?(?: or so)?"), "12"),
    (LatePattern(r"\b(?:2|two) doz(?:en)?s?\b\.?"), "24"),
    (LatePattern(r"(?<=\d) (?:and|n|&) (?=\d/\d)"), " "),
    (LatePattern(r"\b(?:enough|just enough) (?:left )?(?:for|4) (?:about )?(?=\d|one|two|three|four)"), " portions "),
    (
        LatePattern(r"\bportions (\d+|one|two|three|four)\b(?: (?:people|person|of us|portions?|meals?))?"),
        r"\1 portions",
    ),
    (
        LatePattern(
            r"(?:(?<=^)|(?<=, )|(?<=[a-z] ))(?<!half )(?<!quarter )(?<!quarters )(?<!half a )(?<!and )(?<!third )"
            r"(?<!thirds )(?<!couple )"
            r"(?:a |about a )?(?=(?:kilo|kg|litre|liter|gallon|gal|quart|qt|pound|lb)\b)"
        ),
        "1 ",
    ),
    (LatePattern(rf"(?<!\d )\b({MEASURE}) and a half\b", needs=(" and a half",)), r"1.5 \1"),
    (LatePattern(r"\bdoz\b\.?"), "dozen"),
    (LatePattern(r"\bhalf an? stone\b"), "0.5 stone"),
    (LatePattern(r"\b(?<!half )an? stone\b(?! (?:baked|ground|fruit|in|out|free))|(?<=[a-z] )stone of\b"), "1 stone"),
    (LatePattern(r"\b(?:only )?(?:a )?few left\b(?=.*\d)", needs=("few left",)), " "),
    (
        LatePattern(r"\b(?:few|small(?: small)?|little) left\b|\bonly (?:a )?few\b|\bnot (?:much|many)(?: left)?\b"),
        "a bit of",
    ),
    (LatePattern(r"(?<=\d) ?(?:nos?|pcs?)\b\.?"), " "),
    (
        LatePattern(
            rf"(?:(?<![\w/.])(?:1|one) )?\b(?:packs?|pks?|pcks?|packets?|pkts?|box(?:es)?|bags?|trays?|cartons?|cases?"
            rf"|nets?|sets?|bunch(?:es)?) of ({'|'.join(WHOLE_WORDS)}|\d{{1,3}})\b(?! ?(?:k?g|ml|l|oz|lbs?)\b)"
        ),
        r" \1 ",
    ),
    (
        LatePattern(
            rf"(?<![\w/.x])(?!(?:1|one)\b)(\d{{1,2}}|{'|'.join(WHOLE_WORDS)})[ -]?(?:pack|pk"
            rf"|pck)\b(?! of)",
            needs=("pack", "pk", "pck"),
        ),
        r" \1 ",
    ),
    (
        LatePattern(
            r"(?<=\d)(?=(?:tins?|cans?|jars?|packs?|packets?|bags?|tubs?|blocks?|punnets?|cartons?|bottles?"
            r"|bunch(?:es)?|heads?|slices?|cloves?|pts?|pints?|rashers?|nests?|fillets?|pkts?)\b)"
        ),
        " ",
    ),
    (LatePattern(r"\b(?:a )?coupl(?:e|a)(?: of)?\b"), "2"),
)
# Without such a number no text holds grams without their unit: short, so that the long ones wait for it.
MAY_BE_GRAMS = LatePattern(r"\d\d(?![\w/.%-])(?! ?(?:x|k?g|ml|l|oz)\b)")
# A number too large to be counted is grams: `spinach 400`, `tofu 2 x 350`. Ours, common practice.
BARE_GRAMS = (
    # `cheddar 350 block`: what a pack weighs, for nobody has so many of them.
    (
        LatePattern(
            r"(?<![\w/.,:-])([1-9]\d\d)(?= (?:block|tub|pot|bag|pack|packet|pkt|tin|can|jar|punnet|carton|pouch)\b)"
        ),
        r"\1g",
    ),
    (LatePattern(rf"(?<![\w/.,:-])(\d{{1,2}}) ?x ?{_GRAMS_ONLY}"), r"\1 x \2g"),
    (LatePattern(rf"(?<![\w/.,:-])(?<!\dx )(?<!x ){_GRAMS_ONLY}"), r"\1g"),
)  # fmt: skip
