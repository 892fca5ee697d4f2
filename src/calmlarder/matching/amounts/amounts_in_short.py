"""Amounts that are told in short: `half the big pot`, `1/2 dz`, `last inch`, `fam pack`, `no more than a bite`.

How much a word stands for is common practice, no source.
"""

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import put_in_turn

_SHARE = r"(half|a third|third|a quarter|quarter|1/2|1/3|1/4|2/3|3/4)"
_PACK = r"(jar|bottle|tub|tube|tin|packet|bag|box|carton|block|pack)"
_PLAINLY = (
    # `canned peas, wax beans (2+1)`: so many of each.
    (
        LatePattern(r"^(canned|tinned) ([a-z][a-z ]*), ([a-z][a-z ]*) \((\d{1,2}) ?[+&,] ?(\d{1,2})\)$"),
        r"\4 cans \2, \5 cans \3",
    ),
    # The new one is what there is of it: `scrapings + a new jar`.
    (
        LatePattern(
            r"(?:scrap(?:e|ing)s?|dregs|(?:the )?(?:end|last|bottom)(?: of (?:it|one|a jar|the jar|a bag))?|a bit left)"
            rf" ?(?:\+|&|and|plus) (?:an? |one |1 )?(?:new|full|fresh|whole|unopened|sealed) {_PACK}\b"
        ),
        r"1 \1",
    ),
    # How far down it is tells no more where it is measured: `a mug maybe, bottom of the jar`.
    (
        LatePattern(
            r"((?:\d|\b(?:an?|one|two|half an?)) (?:small |big |good )?(?:mug|cup|glass|handful|scoop)s?(?:ful)?\b"
            rf"[^,;(]*)[,;(-]+ ?(?:the )?(?:end|bottom|rest|last) of (?:the |a )?{_PACK}\b\)?"
        ),
        r"\1",
    ),
    # All but the bones is gone.
    (
        LatePattern(
            r"(\b(?:chicken|turkey|duck|goose|bird)\b.*?)[ ,(–-]+(?:it'?s |is |is now )?"
            r"(?:mostly|mainly|nearly all|almost all|nearly|almost) (?:the |just )?"
            r"(?:bones?|carcass|picked clean)(?: now| left)?\)?"
        ),
        r"cooked \1, a little left",
    ),
    (LatePattern(r"\bbag of (?:mixed |green |baby )*leaves\b"), "bag of salad leaves"),
    # A part of what a dish was cooked in, behind it: `kadhi - half pan`, `soup, half the big pot`.
    (
        LatePattern(
            rf"(?<=[a-z\d])[ ,(–-]+(?:about |maybe )?{_SHARE}(?: of)?(?: an?| the| my)? (?:(?:big|large|whole"
            rf"|soup|stock|cooking|small) )*"
            r"(?:(?<=big )pot|(?<=large )pot|(?<=whole )pot|(?<=soup )pot|(?<=stock )pot|(?<=cooking )pot|pan"
            r"|saucepan|dutch oven)"
            r"\b\)?(?=\s*(?:$|[,;)]| left\b| from\b| made\b))"
        ),
        r", \1 a potful",
    ),
    (LatePattern(r"(?<![\w/.])(1/2|half(?: an?)?) ?dz\b"), "half a dozen"),
    (LatePattern(r"(?<=[a-z\d])[ ,(–-]+(?:the )?last (?:half )?(?:inch|cm|centimetre)(?:es)?(?: or so)?(?: of"
                 r" (?:it|the jar))?\)?(?=\s*(?:$|[,;]))"),
     ", a little left"),
    (
        LatePattern(r"(?<=[a-z\d])[ ,]+(jar|bottle|tub|tube|tin|packet|bag|carton)[ ,(–-]+(?:the )?(?:very"
                    r" )?(?:end|dregs|scrapings?)"
                    r"\)?(?=\s*(?:$|[,;]))"),
        r", \1, a little left",
    ),
    (LatePattern(r"\b(?:fam|family|value|club)[ -](?:pk|pck|pkg)\b"), "family pack"),
    (LatePattern(r"\bfam (?=packs?\b)"), "family "),
    # So little is left of a pack of whatever size: `cottage cheese 24oz tub, spoonful left`, `1 in left`.
    (
        LatePattern(
            r"(?:[, ]+\d+(?:\.\d+)? ?(?:oz|g|ml|lbs?|kg|l))?((?: (?:tub|jar|bottle|pot|carton|bag"
            r"|pack))?)[ ,(–-]+(?:about |maybe |just |only )?"
            r"(?:an? |one |1 |half an? |1/2 )?(?:spoonfuls?|scoop|few spoons|couple (?:of )?spoons|in|inch"
            r"|inches|cm|scrape|smear|mouthful"
            r"|sip) left\b\)?"
        ),
        r"\1, a little left",
    ),
    # Most of so many that are sold together.
    (
        LatePattern(r"\bmost of (?:an?|the) (4|6|8|10|12|18|24)[ -]?(?:pack|pk|case|box)\b"),
        lambda found: f"{int(found[1]) * 3 // 4}",
    ),
)  # fmt: skip


def amounts_in_short(text: str) -> str:
    """A plain line with such amounts put plainly; all others stay as they are."""
    return put_in_turn(text, _PLAINLY)
