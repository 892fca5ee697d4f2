"""What was done to a thing before it is cooked, where it was kept, how it is sorted: put as it is read, or left out.

`season up already`, `split peas in steep`, `(we put up)`, `shrimp 21/25`, `out of the root cellar`.
"""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_WHO = r"(?:we|i|mom|mum|mam|dad|gran|grandma|granny|nan|nana|auntie|aunt)"
_STORES = (
    r"(?:root cellar|cold ?(?:room|cellar|store)|cellar|clamp|root store|barn|shed|garage|loft|attic|basement|pantry"
    r"|outhouse|porch|bunker|pit|crawl ?space)"
)
_MILKS = {
    "full fat": "whole", "full-fat": "whole", "whole": "whole", "blue top": "whole", "semi skimmed": "semi skimmed",
    "semi-skimmed": "semi skimmed", "semi": "semi skimmed", "green top": "semi skimmed", "skimmed": "skimmed",
    "skim": "skimmed", "red top": "skimmed",
}  # fmt: skip
_A_MEASURE = (
    r"(?:(?:half|1/2|an?|one|two|\d(?:\.\d)?) ?(?:an? )?)?(?:pints?|pt|litres?|liters?|ltr|l|carton|bottle|jug)"
)
_GALLON = r"(?:(?:half|1/2|an?|one|1) ?(?:an? )?)?(?:gal(?:lon)?|quart|qt|jug|carton)"
_PLAINLY = (
    # Rubbed with what nobody names: raw still, and garlic and onion are in most such seasonings, so that it is asked.
    (LatePattern(r"\b(?:all )?season(?:ed)? up\b(?: (?:already|and ready|ready|for later))?"), "marinated"),
    (LatePattern(r"(?<=[a-z\d])[, ]+seasoned (?:already|and ready|ready to cook)\b"), " seasoned"),
    # What lies in water.
    (LatePattern(r"\b(?:in|at) (?:the |a )?(?:steep|soak)\b"), "soaking"),
    (
        LatePattern(
            r"\b(soak(?:ed|ing)?|steep(?:ed|ing)?)[, (]+(?:in water )?(?:since|from),? (?:the )?"
            r"(?:morning|noon|midday|lunch(?: ?time)?"
            r"|breakfast|dinner"
            r"|this (?:morning|afternoon)|earlier|\d{1,2}(?::\d\d)? ?(?:am|pm))\b\)?"
        ),
        r"\1",
    ),
    (
        LatePattern(
            rf"(?<=[a-z\d])[ ,;(]+(?:come |came |brought |dug |got )?(?:up )?(?:out of|from|outta) (?:the |our "
            rf"|my |grandma'?s )?"
            rf"{_STORES}\b\)?"
        ),
        " ",
    ),
    (
        LatePattern(
            rf"[ ,;(]+(?:that |which |as )?{_WHO} (?:put (?:it |them )?(?:up|by|down)|(canned|bottled|jarred)"
            r"|preserved)"
            r"(?: (?:it|them|ourselves|myself))?\b\)?(?=\s*(?:$|[,;]))"
        ),
        lambda found: " canned" if found[1] else " ",
    ),
    # How many go to a pound sorts shrimps by size, and tells no amount; nor do heads and tails.
    (
        LatePattern(
            r"\b(shrimps?|prawns?|scallops?|langoustines?)\b,? (?:size )?(?:u ?/? ?1[05]|(?:[1-9]\d|[6-9]) ?[/-] ?\d\d)"
            r"(?: ?(?:ct|count|per lb|size))?\b"
        ),
        r"\1",
    ),
    (
        LatePattern(r"\b(?:hds|heads?|shells?|tails?)[ -](?:off|on)\b(?=.*\b(?:lbs?|g|kg|oz|pcs?|thaw\w*|frozen"
                    r"|raw|peeled)\b)"),
        " ",
    ),
    (LatePattern(r"\bthaw(?:ing|ed)? (?:out )?in (?:the )?(?:sink|bowl|cold water)\b"), "thawing"),
    (LatePattern(r"\b(?<=bell )peps\b|^peps\b"), "peppers"),
    # Milk by its fat alone: `pint of full fat`, `half gal 2%`.
    (
        LatePattern(rf"^({_A_MEASURE}),? (?:of )?({'|'.join(sorted(_MILKS, key=len, reverse=True))})(?=\s*(?:$"
                    rf"|[,;(]))"),
        lambda found: f"{found[1]} {_MILKS[found[2]]} milk",
    ),
    (LatePattern(rf"^({_GALLON}),? (?:of )?([12]|325) ?(?:%|percent)(?=\s*(?:$|[,;(]))"), r"\1 \2percent milk"),
    # A meringue by its short name, which is a bread roll in India; there nobody cuts it in half or in slices.
    (
        LatePattern(r"\b(half (?:of )?(?:an? |the )|slices? of |bit of |rest of the )pav\b|\bpav(?=,? (?:half"
                    r"|slices?|base|\d slices?|w(?:ith)? cream)\b)"),
        lambda found: f"{found[1] or ''}pavlova",
    ),
    # What has turned to water.
    (
        LatePattern(
            r"\b(spinach|rocket|arugula|lettuces?|salad|leaves|herbs?|coriander|cilantro|basil|parsley|kale"
            r"|chard|cucumbers?"
            r"|courgettes?|tomato(?:es)?|berries|strawberries|beansprouts|watercress)"
            r"(?: (?:is|are|has become|now|basically|just|literally|pretty much|all))+ (?:soup|liquid|juice"
            r"|sludge|goo)\b"
        ),
        r"\1 slimy",
    ),
    # Where a meal was bought is no meal beside it; what a chip shop fries is in batter, or cooked.
    (LatePattern(r"(?<=[a-z]), ?(?:from )?(?:the |a )?(take ?away|take ?out|carry ?out)(?=\s*(?:$|,))"), r" \1"),
    (
        LatePattern(
            r"\b(fish|cod|haddock|sausages?|chips)((?: (?:left ?overs?|left|half|\d))*) (?:from|off) (?:the |our )?"
            r"(?:chippy|chip shop|chipper|fish shop|chip van)\b",
            needs=("chip", "fish shop"),
        ),
        lambda found: f"{'leftover chips' if found[1] == 'chips' else f'battered {found[1]}'}{found[2]}",
    ),
    (
        LatePattern(r"\b(?:chippy|chip shop|chipper) (fish|cod|haddock|sausages?|chips)\b", needs=("chip",)),
        lambda found: "leftover chips" if found[1] == "chips" else f"battered {found[1]}",
    ),
    # Cubes of a pulp, which a heading tells of each: `baby puree cubes: sweet potato 4, pear 6`.
    (
        LatePattern(
            r"^(?:baby |bub'?s? |frozen )*(?:food |puree )cubes ?[:–-] ?([a-z ]+?) ?x? ?(\d{1,2}) ?(?:,|&|\+|and) "
            r"?([a-z ]+?) ?x? ?(\d{1,2})$"
        ),
        r"\2 cubes \1 puree, \4 cubes \3 puree",
    ),
    # A pulse by the slip of its name.
    (LatePattern(r"\bblack[ -]?eye'?s? (?=peas?\b|beans?\b)"), "black eyed "),
    # That it was trimmed, behind which part of it went bad.
    (
        LatePattern(
            r"(\b(?:edges?|ends?|tips?|leaves|tops?|corners?|stalks?) [a-z ]*?),? (?:but )?(?:i|we) (?:cut"
            r"|trimmed|took)"
            r" (?:it|them|that|those) ?(?:off|out|away)?$"
        ),
        r"\1",
    ),
    (LatePattern(r"[,;(-]+ ?(?:some |a bit of |with |has )?(?:water|liquid|whey) on (?:the )?top\b\)?"), ""),
    # Fresh fruit that has dried is no dried fruit, and potatoes with eyes sprout.
    (LatePattern(r"\b((?:limes?|lemons?|oranges?|clementines?|mandarins?|satsumas?) (?:x ?)?\d{1,2})(?: (?:a bit"
                 r"|bit|quite))? dry$"), r"\1 dried out"),
    (LatePattern(r"[ ,(]+(?:(?:with|w/?|got|have) )?(?:some |a few |few |little |big |tiny )*eyes\b\)?(?=\s*(?:$"
                 r"|[,;]))"), " sprouting"),
    (LatePattern(r"\b(?:a )?bit (?=(?:yellow|brown|limp|soft|wilted|floppy|bendy|wrinkly|dry|tired|sad)\s*$)"), ""),
    (
        LatePattern(
            r"(\b(?:filo|phyllo|pastry)\b[^;]*?)[,;(-]+ ?dr(?:y"
            r"|ied)(?: out)?"
            r" (?:at|on|around|round) (?:the |its )?(?:edges?|ends?|corners?)\)?"
        ),
        r"\1",
    ),
    (LatePattern(r"\bpotato bread (?:x ?)?(\d{1,2}) farls?\b|\b(\d{1,2}) potato bread farls?\b"),
     lambda found: f"{found[1] or found[2]} potato farls"),
)  # fmt: skip


def made_ready(text: str) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    return " ".join(put_in_turn(text, _PLAINLY).split())
