"""Words that are spelt right and stand for another that sounds the same, where the word beside them tells which.

Common practice, no source.
"""

from calmlarder.matching.late_patterns import LatePattern

_ENDS_THERE = r"(?= *(?:$|[\d,;(:-]|x\d|half|tubes?|jars?|tins?|packs?|bags?|opened|left|use|ub|bb))"
_MISTAKEN = (
    (LatePattern(r"\b(?P<a>(?:sour|soured|double|single|whipping|heavy|whipped|clotted) )(?:creme|creem|crem|crème)\b"),
     "cream"),
    (LatePattern(r"\bbeens\b"), "beans"),
    (LatePattern(r"\b(?P<a>(?:green|runner|french|string|broad|kidney|black|butter|baked|pinto) )(?:been|beams)"
                 + _ENDS_THERE), "beans"),
    (LatePattern(r"\b(?P<a>(?:bean|brussels?|alfalfa|mung) )(?:sprots|spouts|sprats)\b"), "sprouts"),
    (LatePattern(r"\bbeen(?= sprouts)"), "bean"),
    (LatePattern(r"\b(?P<a>(?:plain|self[ -]?rais\w+|bread|wheat|rice|corn|chickpea|gf|gluten free|strong) )floor\b"),
     "flour"),
    (LatePattern(r"\b(?P<a>(?:tomato|curry|miso|ginger|garlic|chill?i|bean) )past" + _ENDS_THERE), "paste"),
    (LatePattern(r"\b(?P<a>(?:minute|sirloin|rump|fillet|beef|rib ?eye|tuna|gammon) )(?:stake|staek|steack)(?=s?\b)"),
     "steak"),
    (LatePattern(r"\b(?P<a>(?:burger|hot ?dog|hamburger) )(?:bins|boons|bans|bund|buns?)" + _ENDS_THERE), "buns"),
    (LatePattern(r"\b(?P<a>(?:\d{1,2}|bunch of|bag of|some|few|couple of) )leaks\b"), "leeks"),
    (LatePattern(r"\b(?P<a>(?:bunch of|fresh|dried|sprigs? of|jar of|pot of) )time\b" + _ENDS_THERE), "thyme"),
    (LatePattern(r"^(?P<a>(?:\d{1,2} |big |frozen |thick )*)(?:stake|staek|steack)(?=s?(?: x ?\d| \d| ?$))"), "steak"),
    (LatePattern(r"^(?P<a>(?:\d{1,2} |few |some |cooked |golden )*)beats(?= ?$| x ?\d| \d)"), "beets"),
    (LatePattern(r"\b(?:sower|soure) cream\b"), "sour cream"),
    (LatePattern(r"\bcreme (?=cheese\b)"), "cream "),
    (LatePattern(r"\bpine apple"), "pineapple"),
    (LatePattern(r"^(?P<a>(?:(?:an?|\d{1,2}|bag|kilo|kg|bunch|some|few|the|of|big|baby|grated|raw) )*)"
                 r"(?:carats?|karats|carets)(?= ?(?:$|[\d,;(:-]|an?\b|bags?|x\d|half|bunch))"), "carrots"),
    (LatePattern(r"\b(?P<a>(?:plain|self[ -]?rais\w+|bread|strong|white|wholemeal|corn|rice|gluten free|gf|bag of) )"
                 r"flower\b(?!s)"), "flour"),
    (LatePattern(r"^flower(?=[ ,]+(?:plain|self))"), "flour"),
    (LatePattern(r"^(?P<a>(?:(?:two|three|four|five|six|couple of|pack of|some|\d{1,2}) )*)leaks\b"), "leeks"),
    (LatePattern(r"\b(?P<a>(?:pound|lb|kilo|kg|\dg|\d g|pack|packet)s? of )mints\b(?=.*\b(?:beef|lamb|pork|turkey)\b)"),
     "mince"),
    (LatePattern(r"\b(?P<a>(?:beef|lamb|pork|turkey|steak) )mints\b"), "mince"),
    (LatePattern(r"^(?P<a>(?:(?:some|two|three|four|five|six|baby|small|new|\d{1,2}) )*)(?:mussles|muscles)\b"),
     "mussels"),
    (LatePattern(r"\b(?P<a>(?:corn|wheat|bran|breakfast|box of|bowl of) )serials?\b"), "cereal"),
    (LatePattern(r"^(?P<a>(?:(?:some|box of|half a box of) )*)serial\b(?! number)"), "cereal"),
    (LatePattern(r"\b(?P<a>(?:pork|lamb|chicken|beef) )(?:lion|line|loyn)\b(?! of)"), "loin"),
    (LatePattern(r"\b(?P<a>(?:salmon|cod|fish|chicken|haddock) )(?:fill it|fill its|fillits?|philips?)\b"), "fillets"),
    (LatePattern(r"^(?P<a>(?:(?:some|tin of|can of|jar of|\d{1,2}) )*)(?:current|currant) jelly\b"),
     "redcurrant jelly"),
    # A bird from the spit is cooked, however its name is spelt.
    (LatePattern(r"\b(?:rot+is+[aeiy]*r\w*|rotis) (?=(?:chicken|chick|chx|chix|chkn|chickn|bird|chook)\b)"),
     "rotisserie "),
    (LatePattern(r"(?P<a>\brotisserie )(?:chick|chx|chix|chkn|chickn|bird)(?:en)?\b"), "chicken"),
    (LatePattern(r"\bsnag(?=s?\b)"), "sausage"),  # Australian
    # Made without rennet, which changes nothing here; a cheese of plants is called vegan.
    (LatePattern(r"\b(?:veggie|vegetarian)(?: friendly)? (?=(?:parmesan|parm|cheddar|feta|brie|mozzarella|halloumi"
                 r"|gouda|edam|gruyere|emmental|manchego|pecorino|grana|hard cheese)\b)"), ""),
    (LatePattern(r"\bfro(?:ze|zen) solid\b"), "frozen"),
    (LatePattern(r"\b(?P<a>milk\b(?!.*fr(?:o|ee)z)[^,;&+]*?[ ,-]+(?:(?:has|is|gone|all|turned|now|bit|a) )*)"
                 r"solid\b(?!s| in)"), "gone off"),
    (LatePattern(r"(?P<a>\b(?:soya?|tofu)\b.*)\bfrom whole (?=(?:soya? )?beans\b)"), "from "),
    # What grows in a garden is in its pod, and in no tin.
    (LatePattern(r"(?:(?<=^)|(?<=\d )|(?<=g )|(?<=of )|(?<=some ))beans (?=(?:from|off|out of) (?:the |our |my )?"
                 r"(?:garden|allotment|veg patch|plot)\b)"), "fresh beans "),
    (LatePattern(r"\b(?P<a>(?:minced?|ground|stewing|diced) )meet\b"), "meat"),
)  # fmt: skip
# Words beside a food that are of what it is in, how big it is or how it looks, and not of another food.
_LID = LatePattern(
    r"\b(?:green|red|blue|yellow|white|black|pink|orange|purple|gold|golden|brown) "
    r"(?=(?:lid|label|sticker|cap|tub|box|wrapper|tupperware|bowl)(?:s|es)?\b)"
)
# What a vessel once held, or is for, is not there: `rice in an ice cream tub`, `carrots in the salad drawer`.
_HELD_ONCE = LatePattern(
    r"\b(in|inside|into) (?:an?|the|my|our|that|this|one|some) (?:(?:old|empty|clean|big|small|little|used|spare) )*"
    r"(?:ice ?cream|peanut butter|pasta sauce|butter|margarine|marge|spread|yog\w*|jam|honey|coffee|biscuit|cookie|cake"
    r"|bread|eggs?|soup|salad|veg|vegetables?|veggie|fruit|cheese|meat|fish|chocolate|mayo|hummus|houmous|curry|flour"
    r"|rice|sugar|tea|lunch|cereal|passata|takeaway|milk) (?:(tub|box|container|pot|tupperware)|bin"
    r"|drawer|bowl|shelf|crisper|jar|tin|crock|compartment|basket|carton|rack)\b(?! of)"
)
_KING_SIZE = LatePattern(r"\b(?:king|queen|bumper)[ -]?sized?\b")
_BIT_DRY = LatePattern(
    r"(?<=[a-z\d),]) (?:a )?(?:wee |little )?(?:bit|touch|slightly|rather|kinda|kind of) dry(?: now)?"
    r"(?=\s*(?:$|[,;.)]))"
)
_STALE = LatePattern(
    r"\b(?:bread|loaf|rolls?|buns?|bagels?|baguettes?|pittas?|naans?|sourdough|toast|cake|wraps?|tortillas?)\b"
)
_HOT_DOG = LatePattern(r"\bhotdog(?=s?\b)")


def mended(text: str) -> str:
    """A plain line with such words put right, hot dogs in two words, and words of a lid or a size aside."""
    text = _HOT_DOG.sub("hot dog", text) if "hotdog" in text else text
    text = _LID.sub("", text) if "milk" not in text else text  # of milk it tells how fat it is
    text = _HELD_ONCE.sub(lambda found: f"{found[1]} a {found[2]}" if found[2] else "", text) if "in" in text else text
    text = _KING_SIZE.sub("big", text)
    text = _BIT_DRY.sub(" dried out", text) if " dry" in text and not _STALE.search(text) else text
    for mistaken, meant in _MISTAKEN:
        text = mistaken.sub(lambda found, meant=meant: f"{found.groupdict().get('a') or ''}{meant}", text)  # type: ignore[misc]
    return text
