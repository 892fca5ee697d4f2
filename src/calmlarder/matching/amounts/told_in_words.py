"""Amounts that people put in words of their own, written as they are read: `lb and a half`, `2 of the 14oz`."""

import re

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS
from calmlarder.matching.late_patterns import LatePattern

_PARTS = {"half": 1 / 2, "third": 1 / 3, "quarter": 1 / 4, "1/2": 1 / 2, "1/3": 1 / 3, "1/4": 1 / 4}
_AND_A_HALF = LatePattern(
    r"\b(?:(?:a|one|1) )?(lb|lbs|pound|oz|ounce|cup|gallon|quart)s? (?:and|n|&) (?:a )?half\b(?! and\b)"
)
_OF_THAT_SIZE = LatePattern(
    r"(?<![\d/.])\b(\d{1,2}|two|three|four) of (?:the |those )?(\d{1,4}(?:\.\d+)?) ?(oz|g|ml|lb)s?\b"
    r"(?: (?:ones|packs?|blocks?|tubs?))?"
    r"(?:\s*(?:\+|and|plus|&)\s*(?:a |one |about )*(half|third|quarter|1/2|1/3|1/4)\b(?: (?:of one|one))?)?"
)
# What is gone of a pack leaves the rest of it.
_REST = {
    "1/2": "half", "half": "half", "1/3": "2/3", "third": "2/3", "1/4": "3/4", "quarter": "3/4", "3/4": "quarter",
    "three quarters": "quarter", "2/3": "third", "two thirds": "third",
}  # fmt: skip
_PART_GONE = LatePattern(
    r"(?<![\w/.])(?<!\bother )(?<!\bthe )(?:about |around |maybe |nearly |over |a |one )*"
    r"(1/[234]|[23]/[34]|half|third|quarter|three quarters"
    r"|two thirds) (?:of (?:it|them) )?(?:is |are |has )?(?:been )?(?:gone|used|eaten|drunk)\b"
    r"(?! (?:to|off|soft|mouldy|bad|limp|brown))"
)
_HALF_FULL = LatePattern(
    r"\b(?:about |around )?(?:half ?way (?:down|through|full|gone)|half[ -]full|half[ -]way|down to (?:about )?half)\b"
)
# Which is no full cream milk.
_FULL = LatePattern(
    r"\b(?:a )?(?<!nearly )(?<!almost )(?<!half )full (?=(?:tub|jar|bag|box|pot|bottle|carton|tin|can|pack|packet)s?\b)"
    r"|,? (?<!nearly )(?<!almost )(?<!not )(?:still |all )?full(?=\s*(?:$|[,;)]))"
)
# So many cups of rice are measured; `brown rice cups` are packs of it cooked.
_CUPS = LatePattern(r"(\brice\b.*?[\d½¼¾] ?|\b[\d½¼¾] )cups?\b(?= ?(?:$|[,;).+&]|of\b|left\b|or so\b))")
_ONE_PACK_OF = LatePattern(r"\b(?:1|one|a) (?=(?:pack|packet|bag|box|tray) of \d)")
# So much by a thumb or a fist, and for how long it lasts, are nobody's: common practice, no source.
_WORTH = LatePattern(
    r"\b(?:about |roughly )?(?:(?:an? )?(?P<two>two |2 )?(?P<body>thumb|matchbox|palm|fist|finger)s?'?s?[ -]"
    r"(?:worth|width|sized?|length|lump|piece)\b(?: (?:lump|piece|bit|chunk))?(?: of\b)?"
    r"|(?:an? |one |two |2 |few )?(?:day|week|month|meal|night)s?'?s?'? worth(?: of)?\b)"
)
_OF_BODY = {"thumb": " thumb ", "matchbox": " matchbox ", "finger": " thumb ", "palm": " 90 g ", "fist": " 120 g "}
_COUNTS = sorted(WHOLE_WORDS.keys() - {"few", "several", "couple"}, key=len, reverse=True)  # a number may follow those
_WORD_LEFT = LatePattern(rf"\b({'|'.join(_COUNTS)}) left\b(?! (?:of|from|on))")
_END_OF = LatePattern(
    r"\b(?:the |just the )?(?:end|stub|stump) of (?:(?:a|the|one) )?(?:block|wedge|loaf|stick|log)(?: of)?\b"
)
# What they are, and no number of them: `spinach leaves`.
_LEAVES = LatePattern(
    r"(?<![\d.] )(?<!few )(?<!some )(?<!couple )(?<!of )(?<!odd )\b(spinach|kale|lettuce|chard|basil) leaves\b"
    r"(?! ?x? ?\d)(?!.*\b(?:few|some|couple)\b)"
)
# `1 dozen + 4`, `a dozen eggs plus 3`
_DOZEN_AND_SOME = LatePattern(
    r"(?<![\w/])(?:(?:an? )?|(\d|one|two|three) ?)doz(?:en)?( eggs)? ?(?:\+|&|and|plus|n) ?(\d|1[01])\b"
    rf"(?! ?(?:doz|{UNIT}|half|/))"
)
# `half a dozen less one`, `a dozen minus 2`
_DOZEN_LESS = LatePattern(
    rf"(?<![\w/])(?P<half>1/2|half)?(?: ?(?:an?|1|one) | ?)doz(?:en)?\b\.?(?P<food> eggs)?,? (?:less|minus|bar|except) "
    rf"(?P<less>\d|1[01]|{'|'.join(_COUNTS)})\b",
    needs=("doz",),
)
# `eggs 4 dozen`, `2 1/2 doz`: so many times twelve.
_SO_MANY_DOZEN = LatePattern(
    rf"(?<![\w/.])(?P<many>\d{{1,2}}|{'|'.join(_COUNTS)})(?P<half>\.5| ?(?:(?:and|&|n) )?(?:an? )?(?:half|1/2))?(?: a)?"
    r" ?(?:doz(?:en)?s?|dz)\b\.?(?: of\b)?",
    needs=("doz", "dz"),
)
# `4 halves` of what is cut are two of it; nuts and dried fruit come as halves.
_HALVES = LatePattern(
    r"(?<![\w/.x])(\d{1,2}) ((?:[a-z]+ ){0,2}?)(?:halves|halfs|halve)\b(?! of)",
    needs=("halves", "halfs", "halve"),
)
_COME_AS_HALVES = LatePattern(r"\b(?:\w*nuts?|pecans?|dried|tins?|tinned|cans?|canned|almonds?)\b")
# `handful walnuts n raisins`: one of each.
_HANDFUL_OF_BOTH = LatePattern(
    r"\b((?:a )?handful)(?: of)? (?!mac )([a-z]{4,}s?) (?:n|and|&|\+) ([a-z]{4,})(?=\s*$)", needs=("handful",)
)
# `potato bread and soda farls two of each`
_TWO_OF_EACH = LatePattern(
    rf"^([a-z][a-z ]+?) (?:and|&|n|\+) ([a-z][a-z ]+?),? (\d{{1,2}}|{'|'.join(_COUNTS)}) of each$", needs=(" of each",)
)
# Of a small pack that lies open so little is left: `butter 100g, less than half`.
_LESS_THAN_HALF = LatePattern(
    rf"(?<![\w.])(\d{{2,4}}) ?({UNIT})\b((?: ?(?:{MEASURE}))?)[,;(-]+ ?(?:a bit |just |well )?"
    r"(less|more) than (half|a third|a quarter)(?: (?:left|of it|full|there))*\)?(?=\s*$)",
    needs=(" than ",),
)
# What they lie in measures nothing where they are counted: `egg whites 3 in a jar`.
_COUNTED_IN = LatePattern(
    r"^((?:egg (?:whites?|yolks?)|eggs?|boiled eggs?|[a-z]+s) \d{1,2}) in (?:an? |the )?(?:old |small |little )?"
    r"(?:jar|cup|mug|glass|bowl|box|tub|bag|dish|saucer)\b"
)
_HAND_FULL = LatePattern(r"\bhands? ?full?s?\b(?! of (?:bananas|plantain))")
_QUARTERS = LatePattern(r"(?<![\w/.])3 ?(?:qtrs?|quarters?)(?: of)?(?: an?| the)?\b")  # `3 qtr bag spinach`
# `1 red cabbage, quarter`: so much of the one; a quarter of a bird is a cut of it.
_PART_OF_ONE = LatePattern(
    r"^(?:1|one|an?) (?!.*\b(?:chicken|duck|turkey|leg|bird|pound|pint|dozen|and an?)\b)([a-z][a-z ]{2,}?)[ ,(]+"
    r"(half|quarter|third|1/2|1/4|1/3|3/4)\)?$"
)
_TWO_HANDS = LatePattern(r"\b(?:a )?double handful\b")
_PACK_BEHIND = LatePattern(r"(?<=[a-z]s )(?:packs?|pk|pck|packet|pkt)\.? ?(\d{1,2})(?=\s*(?:$|[,;)]))")  # `wraps pk 8`
# For one it comes in pots, and in a big one for all.
_BIG_POT = LatePattern(
    r"\b(?:big|large|family|giant|huge) pots?\b(?= (?:of )?(?:[a-z]+ )*yog)|(?<=yoghurt )(?:big|large) pot\b"
)
# Of what is cut or bought by weight, so much stands in a bracket for all of it.
_CUT = LatePattern(r"\b(?:fillets?|filets?|steaks?|chops?|breasts?|thighs?|legs?|escalopes?|cutlets?|loins?|darnes?)\b")
_BRACKET_GRAMS = LatePattern(
    r"\(\s*(?:approx|about|around|total|in total|all in|roughly|ca|circa|~|c)?\.? ?\d+(?:\.\d+)? ?(?:k?g|oz|lbs?)"
    r"(?: (?:total|in total|together|all in|altogether|or so))?\s*\)"
)
_TIMES = LatePattern(r"(?<![\w.])(?:x ?\d{1,2}|\d{1,2} ?x)(?![\w.])")
# `2 pcs boneless, 200 g each`: so many of so much, before the line is parted at its commas.
_SO_MUCH_EACH = LatePattern(
    rf"(?<![\w./])x? ?(\d{{1,2}})\b(?! ?(?:{UNIT})\b)([^\d&+;]{{0,24}}?)[ ,(]+"
    rf"(?:about |abt |approx |c |around |roughly |maybe |~ ?)?(\d+ ?(?:{UNIT})) ?(?:each|apiece|ea|a ?piece)\b\)?",
    needs=("each", " ea", "apiece", "a piece"),
)
# `454 g box + part of another`: so much and about half of it; common practice, no source.
_PART_OF_ANOTHER = LatePattern(
    rf"(\d+(?:\.\d+)?) ?({UNIT})\b((?: ?(?:{MEASURE}))?) ?(?:\+|&|and|plus|n|,) ?"
    r"(?:(?:a |about )*(?:part|bit|half|most|some|rest|the rest|a third) (?:of )?(?:another|a second|an? other)"
    r"|another (?:half|part)|another opened)(?: (?:one|box|bag|pack|packet|tin|jar))?\b",
    needs=("another", "second", "other"),
)
# Behind all else: `marg, low`, `kimchi little`; low fat and little gem stand before something.
_LOW = LatePattern(
    r"(?<=[a-z)])[ ,(-]+(?:(?:is|getting|going|a bit|pretty|quite|very|v) )*low(?:[ -]?ish)?\)?(?=\s*$)", needs=("low",)
)
_LITTLE = LatePattern(r"(?<=[a-z)])(?<!\ba)[ ,(-]+(?:very |v )?little(?: left)?\)?(?=\s*$)", needs=("little",))
# For how long a thing is heated says nothing of how much there is: `rice pouch 2 min`.
_MINUTES = LatePattern(r"(?<=[a-z)] )\d{1,2}(?: ?- ?\d{1,2})? ?min(?:ute)?s?\b(?! (?:pizza|roll|burger|pep|cuc))")


def amounts_plainly(text: str) -> str:
    """A plain line with such amounts as they are read elsewhere."""
    text = _PART_OF_ANOTHER.sub(lambda found: f"{float(found[1]) * 1.5:g} {found[2]}{found[3]}", text)
    text = _COUNTED_IN.sub(r"\1", _LESS_THAN_HALF.sub(_less_than_half, text))
    text = _LITTLE.sub(" a little", _LOW.sub(" running low", _MINUTES.sub(" ", text)))
    text = _LEAVES.sub(r"\1", _DOZEN_AND_SOME.sub(_in_all, text))
    text = _TWO_OF_EACH.sub(r"\3 \1, \3 \2", _DOZEN_LESS.sub(_dozen_less, text))
    text = _SO_MANY_DOZEN.sub(_so_many_dozen, text)
    text = _HALVES.sub(_halves, text) if not _COME_AS_HALVES.search(text) else text
    text = _WORTH.sub(lambda found: f" {found['two'] or ''}{_OF_BODY.get(found['body'], '')}", text)
    text = _AND_A_HALF.sub(r"1.5 \1", _SO_MUCH_EACH.sub(r"\1 x \3 \2", text))
    text = _OF_THAT_SIZE.sub(_all_of_them, text)
    text = _PART_GONE.sub(lambda found: f"{_REST[found[1]]} left", _HALF_FULL.sub("half left", text))
    text = _ONE_PACK_OF.sub("", _FULL.sub("", text) if "cream" in text or "fat" in text else text)
    text = _CUPS.sub(r"\1cupfuls", text) if "rice" in text else text
    text = _WORD_LEFT.sub(lambda found: f"{WHOLE_WORDS[found[1]]} left", text)
    text = _END_OF.sub("heel", text)
    text = _HANDFUL_OF_BOTH.sub(r"\1 \2, \1 \3", text)
    text = _HAND_FULL.sub("handful", text) if "hand" in text else text
    text = _QUARTERS.sub("3/4", text) if "q" in text else text
    text = _PART_OF_ONE.sub(r"\2 \1", text)
    text = _TWO_HANDS.sub("2 handfuls", text)
    text = _PACK_BEHIND.sub(r"\1", text)
    text = _BIG_POT.sub("tub", text) if "yog" in text else text
    if _CUT.search(text) and len(_BRACKET_GRAMS.findall(text)) == 1:
        text = _TIMES.sub("", text)
    return text


def _in_all(found: re.Match[str]) -> str:
    """A dozen and some as one number."""
    said = found[1] or "one"
    dozens = int(said) if said.isdigit() else WHOLE_WORDS[said]
    return f"{12 * dozens + int(found[3])} {found[2] or ''}"


def _less_than_half(found: re.Match[str]) -> str:
    """A pack of which less or more than a part is left, as so much: a tenth or so to either side, by eye; ours."""
    part = {"half": 0.5, "a third": 0.33, "a quarter": 0.25}[found[5]] + (0.15 if found[4] == "more" else -0.1)
    return f"{float(found[1]) * part:.3g} {found[2]}{found[3]}"


def _dozen_less(found: re.Match[str]) -> str:
    """What is left of a dozen, or of half of one, as one number."""
    less = int(found["less"]) if found["less"].isdigit() else WHOLE_WORDS[found["less"]]
    return f" {(6 if found['half'] else 12) - less}{found['food'] or ''}"


def _so_many_dozen(found: re.Match[str]) -> str:
    many = int(found["many"]) if found["many"].isdigit() else WHOLE_WORDS[found["many"]]
    return str(int(12 * (many + (0.5 if found["half"] else 0))))


def _halves(found: re.Match[str]) -> str:
    return f"{int(found[1]) / 2:g} {found[2]}".strip()


def _all_of_them(found: re.Match[str]) -> str:
    number = int(found[1]) if found[1].isdigit() else WHOLE_WORDS[found[1]]
    return f"{(number + _PARTS.get(found[4], 0)) * float(found[2]):.4g} {found[3]}"
