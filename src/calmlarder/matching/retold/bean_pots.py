"""Pots of beans, dry bulbs, links and parts of a pack, put as they are read: a bean pot is a dish."""

from calmlarder.matching.late_patterns import LatePattern

# A bean pot is a dish that began with an onion, where nothing says that they were only boiled.
_PULSE = r"(?:(?:black|kidney|white|red|pinto|butter|haricot|navy|cannellini|borlotti|mixed) )?(?:bean|chickpea|lentil)"
_BEAN_POT = LatePattern(
    rf"\b(?:(?:old )?pot(?:ful)? of (?:left ?over )?({_PULSE})s?|({_PULSE})s? pot)\b(?! (?:of|chill?i)\b)"
)
_ONLY_BOILED = LatePattern(r"\b(?:boiled|soak(?:ed|ing)?|plain|dry|dried|unseasoned|unsalted|just cooked)\b")


# What was soaked and then boiled is boiled.
_SOAKED_FIRST = LatePattern(
    r"\bsoak(?:ed|ing)?\b(?: over ?night| (?:for )?\d+ ?(?:h|hrs?|hours?))?[ ,/&+]*(?:(?:and|n|then) )*"
    r"(?=(?:pressure )?(?:boiled|cooked|simmered|steamed)\b)"
)


# An onion that is dry is a bulb as ever; dried ones come in flakes.
_DRY_BULB = LatePattern(r"\bdry (?=(?:onions?|shallots?|garlic)\b)|(?<=[a-z\d)])[ ,]+dry(?=\s*(?:$|[,;.)]))")
_BULB = LatePattern(
    r"^(?!.*\b(?:flak|powder|granul|minced|crisp|fried|dried|chopped|soup))"
    r"[^,;&+]*\b(?:onions?|shallots?|garlic)\b"
)
_LINKS = LatePattern(r"(?<=\d )links?\b(?! sausage)")
# `1kg, bout 3rd left`, `500g about half`.
_THIRD = LatePattern(r"\b(?:a )?3rd (?=left|of|gone|used|full)")
_ABOUT_HALF = LatePattern(
    r"(?<![\w/.])(\d+(?:\.\d+)? ?(?:k?g|ml|l|oz|lbs?)\b(?: [a-z]+)?),? "
    r"(?:about|bout|abt|approx|roughly|around|maybe) (half|(?:a )?third|(?:a )?quarter|1/2|1/3|1/4|2/3|3/4)$"
)


def pots_plainly(text: str) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    text = _DRY_BULB.sub("", text) if "dry" in text and _BULB.search(text) else text
    text = _LINKS.sub("", text) if "link" in text else text
    text = _ABOUT_HALF.sub(r"\1 \2 left", _THIRD.sub("third ", text))
    text = _SOAKED_FIRST.sub("", text) if "soak" in text else text
    if "pot" in text and not _ONLY_BOILED.search(text):
        text = _BEAN_POT.sub(lambda found: f"potful of {found[1] or found[2]} stew", text)
    return text
