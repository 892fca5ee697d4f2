"""Words for a state that are said of one sort of food alone, and what they tell there.

Bread gets hard, bananas black, avocados ready, milk lumpy: of other foods the same words tell a kind or nothing.
"""

from typing import NamedTuple

from calmlarder.matching.late_patterns import LatePattern

RIPE_NOW = "ripe now"  # what keeps for two days and no longer, and presses less than what is soft
HOW = (
    r"(?:(?:a |an )?(?:wee |little )?(?:bit|little|tad|touch|smidge)|slightly|quite|very|rather|pretty|getting"
    r"|going|gone|turning|looking|fairly"
    r"|really|kind of|kinda|sort of|somewhat|too)"
)
_BREADS = (
    r"(?:bread|loaf|toast|baguettes?|barra|rolls?|buns?|baps?|bagels?|ciabatta|focaccia|sourdough|brioche|challah"
    r"|croissants?|scones?|pitt?as?|naans?|rotis?|chapatt?is?|tortillas?|parathas?|wraps?|muffins?|crumpets?)"
)
_RIPENS = (
    r"(?:avo(?:cado)?s?|mango(?:e?s)?|pears?|peach(?:es)?|nectarines?|persimmons?|kakis?|papayas?|pawpaws?|kiwis?)"
)
_GROWS_FLUFF = (
    r"(?:strawber\w*|strawbs?|raspber\w*|rasps?|blackber\w*|bluebs?|blueber\w*|berr(?:y|ies)|grapes|cherries|figs?|plums?"
    r"|peach(?:es)?|satsumas?|clementines?|mandarins?|tangerines?|oranges?|lemons?|limes?|tomato(?:es)?|toms)"
)
_ROOTS = (
    r"(?:parsnips?|carrots?|beetroots?|beets?|celeriac|turnips?|swedes?|radish(?:es)?|ginger|potato(?:es)?|spuds?|neeps?"
    r"|yams?|turmeric|horseradish|salsify|sweet potato(?:es)?)"
)
_BLACK = r"(?:(?:pretty much |nearly |almost |all |half )*(?:black|blackened|brown|browned|spotted|freckled))"
_LEAVES = (
    r"(?:lettuces?|rocket|arugula|spinach|salad|leaves|greens|chard|kale|cabbages?|sprouts|radicchio|endives?|chicory"
    r"|cress|watercress|cos|romaine|iceberg|herbs?|parsley|basil|coriander|cilantro|mint|dill|chives|pak choi|bok choy)"
)
# What has no sort that is brown, black or yellow while it is good.
_GREEN = rf"(?:{_LEAVES}|celery|cauliflowers?|cauli|broccoli|cucumbers?|asparagus|leeks?|fennel)"
# What has none that is brown or black, and may have one that is yellow.
_NOT_BROWN = rf"(?:{_GREEN}|avo(?:cado)?s?|courgettes?|zucchinis?|green beans|parsnips?|apples?|ginger|peppers?)"
_END = r"(?=\s*(?:$|[,;.!)]| x ?\d| \d{1,2}(?: ?x)?\s*$))"
_BEHIND = r"(?<=[a-z\d)])[ ,;(-]+"


class OfOneSort(NamedTuple):
    """A shape of words, the foods of which it is said, and what it then stands for."""

    sort: LatePattern
    shape: LatePattern
    words: str
    to_bin: bool = False
    instead: str = ""  # words of the food's name that it tells


OF_ONE_SORT = (
    # Green through and through it is bitter and holds solanine; green bits are cut out (FSA on potatoes: recalled).
    OfOneSort(
        LatePattern(r"^[^,;&]*\b(?:potato|spud|tattie|tater)\b"),  # of a bag some are, and are picked out
        LatePattern(
            rf"{_BEHIND}(?:(?:is|are|all|now|already|very|really|quite|properly|gone|turned) )*"
            r"(?<!bit )(?<!one )(?<!two )(?<!some )(?<!few )(?<!slightly )(?<!little )(?<!couple )(?<!tad )(?<!\d )"
            r"green"
            rf"(?: (?:all over|all through|through|now))?{_END}"
        ),
        "green all over",
        to_bin=True,
    ),
    # Potatoes turn green in the light, and that is no kind of them.
    OfOneSort(
        LatePattern(r"^[^,;&]*\b(?:potato(?:es)?|spuds?|tatties|tattie|taters?)\b"),
        LatePattern(
            rf"{_BEHIND}(?:some |one |a few |a couple |all |bits? )*"
            r"(?:(?:is|are|look|looks|looking|going|gone|turning|turned|a bit|bit|slightly|very|quite) )*green"
            r"(?: (?:bits?|patch(?:es)?|spots?|tinge|in places|on one side))?\)?$"
        ),
        "green",
    ),
    # Pink on what is white is no colour of it (common practice, no source).
    OfOneSort(
        LatePattern(
            r"\b(?:ricotta|cheese|cottage|cream|yog\w*|milk|quark|curd|dahi|paneer"
            r"|feta|mozz\w*|h[ou]m+[ou]s|tofu|labneh|bread|rice)\b"
        ),
        LatePattern(
            r"\b(?:(?:a )?(?:bit|little|tad|slightly|looks?|looking|gone|going|turned|turning|getting) )+"
            r"pink\b(?: on (?:the )?top)?"
            r"|\bpink(?:ish)? (?:bits?|spots?|patch(?:es)?|film|slime|fuzz|on (?:the )?top"
            r"|(?:round|around|at) the (?:edges?|rim|lid))\b"
        ),
        "gone pink",
        to_bin=True,
    ),
    # Milk and cream that have gone to lumps are sour (common practice, no source); cottage cheese has lumps.
    OfOneSort(
        LatePattern(r"^(?!.*coconut).*\b(?:milk|cream|half and half|custard)\b"),
        LatePattern(rf"\b(?:(?:{HOW}|is|it'?s|all|now) )*(?:lumpy|lumps in it|in lumps)\b"),
        "lumpy",
        to_bin=True,
    ),
    OfOneSort(
        LatePattern(r"^(?!.*\b(?:coconut|oat|soya?|almond|nut|rice|hemp|plant|chocolate|choc)\b).*\bmilk\b"),
        LatePattern(r"(?<!frozen )\b(?:(?:gone|it'?s|all|now|is|turned) )*(?:solid|chunky)\b"),
        "lumpy",
        to_bin=True,
    ),
    OfOneSort(
        LatePattern(rf"\b(?:{_LEAVES}|cucumbers?|courgettes?)\b"),
        LatePattern(
            rf"{_BEHIND}(?:(?:gone|turned|all|just|is|now|basically|mostly|to) )*(?:liquid|liquified|liquefied){_END}"
        ),
        "liquid",
        to_bin=True,
    ),
    # Old leaves and herbs have few days left, and no plain ones from now on.
    OfOneSort(
        LatePattern(rf"\b{_LEAVES}\b"),
        LatePattern(rf"{_BEHIND}(?:(?:a bit|quite|very|really|pretty|getting|is|are|rather|too) )*old(?: now)?{_END}"),
        "old",
    ),
    # Leaves that are brown all over are rotting (common practice, no source).
    OfOneSort(
        LatePattern(rf"\b{_LEAVES}\b"),
        LatePattern(
            r"\b(?:all|completely|totally|fully|entirely|wholly) (?:gone )?(?:brown|black)\b(?! at)"
            r"|\b(?:brown|black) all over\b"
        ),
        "all brown",
        to_bin=True,
    ),
    OfOneSort(
        LatePattern(rf"\b{_BREADS}\b"),
        LatePattern(
            rf"\b(?:(?:{HOW}|is|are|rock|now|it'?s) )+hard\b(?: as (?:a )?(?:rocks?|bricks?|nails?|stones?))?"
            rf"|\bhard(?: as (?:a )?(?:rocks?|bricks?|nails?|stones?))?{_END}"
        ),
        "gone hard",
    ),
    OfOneSort(
        LatePattern(r"\bbananas?\b"),
        LatePattern(
            rf"{_BEHIND}(?:(?:is|are|now|skins?|going|gone|v|very|quite|pretty|super|really|too|bit|a bit) )*{_BLACK}"
            r"(?=\s*(?:$|[,;.)]| (?:now|already|skins?)\b| x ?\d| \d{1,2}(?: ?x)?\s*$))"
            rf"|\b{_BLACK} (?=(?:soft )?bananas?\b)"
        ),
        "black",
        instead="ripe",
    ),
    # Its skin turns black when it is ripe (common practice, no source); its flesh when it is past that.
    OfOneSort(
        LatePattern(r"\b(?:avo(?:cado)?s?|aguacates?|paltas?)\b"),
        LatePattern(
            rf"{_BEHIND}(?:(?:is|are|now|skins?|going|gone|v|very|quite|pretty much|really|nearly|almost|all|a|bit) )*"
            rf"black(?: (?:now|already|skins?))?{_END}"
        ),
        RIPE_NOW,
        instead="ripe",
    ),
    OfOneSort(
        LatePattern(rf"\b{_RIPENS}\b"),
        LatePattern(
            r"(?<!not )(?<!nearly )(?<!almost )(?<!n't )(?<!yet )(?<!when )(?<!till )(?<!until )(?<!get )(?<!to )"
            rf"\b(?:ripe (?=(?:[a-z]+ )?{_RIPENS}\b)|(?:ripe|ready|perfect(?:ly ripe)?|ready to (?:eat|go))"
            r"(?: (?:now|already|today))?(?=\s*(?:$|[,;.!)])))"
        ),
        RIPE_NOW,
        instead="ripe",
    ),
    # The outer leaves alone: they come off, and the rest is used soon.
    OfOneSort(
        LatePattern(rf"\b{_LEAVES}\b"),
        LatePattern(
            rf"\b(?:outside|outer|some|a few|few) leaves (?:(?:{HOW}|are|have|all) )*"
            r"(?:brown|black|yellow|wilted|limp|soft|tatty|dry)\b"
        ),
        "outer leaves brown",
    ),
    # Roots that sprout fine ones are old, and not mouldy (common practice, no source).
    OfOneSort(
        LatePattern(rf"\b{_ROOTS}\b"),
        LatePattern(
            rf"\b(?:(?:a bit|bit|very|v|few|some|slightly) )*(?:hairy|whiskery) (?=(?:[a-z]+ )?{_ROOTS}\b)"
            rf"|{_BEHIND}(?:(?:is|are|a bit|bit|getting|going|gone|very|v) )*"
            rf"(?:hairy|whiskery)(?: (?:now|roots?|bits?))?{_END}"
        ),
        "hairy roots",
    ),
    # Fluff is mould: of some berries those are picked out, and the rest is eaten soon (common practice, no source).
    OfOneSort(
        LatePattern(rf"\b{_GROWS_FLUFF}\b"),
        LatePattern(
            r"\b(?:some|one|two|three|a few|few|a couple|couple|bits?|parts?|1|2|3)"
            r"(?: (?:of (?:them|em)|is|are|bits?|gone|a bit|bit|looking|getting))* fluffy\b"
            r"|\bfluffy (?:bits?|ones?|patch(?:es)?|corner|edges?)\b"
        ),
        "fluffy in parts",
    ),
    OfOneSort(
        LatePattern(
            rf"\b(?:{_GROWS_FLUFF}|{_BREADS}|cheese|cheddar|jam|sauce|passata|pesto|h[ou]m+[ou]s|yog\w*|cream)\b"
        ),
        LatePattern(
            rf"{_BEHIND}(?:(?:is|are|now|gone|going|turned|turning|looking|getting|a bit|bit|all|slightly|very|v) )*"
            rf"fluffy(?: on (?:the )?top)?{_END}"
        ),
        "fluffy",
        to_bin=True,
    ),
    # Spots of such colours are mould on what has none of its own (common practice, no source).
    OfOneSort(
        LatePattern(
            r"^(?!.*\b(?:blue (?:cheese|stilton|brie)|stilton|gorgonzola|roquefort|danish blue|cambozola)\b)"
            rf".*\b(?:{_BREADS}|{_GROWS_FLUFF}|cheese|cheddar|feta|halloumi|paneer|jam|sauce|passata|pesto|puree"
            r"|h[ou]m+[ou]s"
            r"|yog\w*|cream|quark|ricotta|mascarpone|tofu|tempeh|dip|soup|stew|curry|dal|rice|pasta|salsa|spread)\b"
        ),
        LatePattern(
            r"\b(?:(?:one|two|a|some|few|tiny|small|little|wee|bit of|has|got|with) )*(?:blue|bluish|blueish|grey|gray)"
            r"(?: (?:green|grey|gray|white))? (?:spots?|specks?|dots?|patch(?:es)?|bits?|fuzz|fluff)"
            r"(?: (?:on|in) (?:it|them|top|the top|one|the (?:crust|corner|edge|rim|lid|side)))?\b"
            r"|\b(?:white|green) (?:specks?|dots?|fluff)\b(?: on (?:it|them|top|the top))?"
        ),
        "mould",
        to_bin=True,
    ),
    OfOneSort(
        LatePattern(r"\b(?:mushrooms?|mushies|bean ?sprouts)\b"),
        LatePattern(rf"{_BEHIND}(?:(?:is|are|all|now|already) )*black(?:ened)?(?: now)?{_END}"),
        "black",
        to_bin=True,
    ),
    *(
        OfOneSort(
            LatePattern(rf"\b{sort}\b"),
            LatePattern(
                rf"{_BEHIND}(?:(?:is|are|it'?s|they'?re|now|all|bits?|half) )*(?:{colours})"
                rf"(?: (?:now|inside|bits?|spots?|patch(?:es)?|in places))?{_END}"
            ),
            words,
        )
        for sort, colours, words in (
            (_NOT_BROWN, "brown|browned|blackened", "brown"),
            (r"(?:avo(?:cado)?s?|aguacates?|paltas?)", "(?:black|dark)(?= inside)", "brown"),
            (_GREEN, "black", "black"),
            (_GREEN, "yellow|yellowed", "yellow"),
        )
    ),
)
