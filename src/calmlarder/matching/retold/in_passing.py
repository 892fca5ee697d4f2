"""What is said in passing of a food, written the way names have it: how it was washed, that it is ripe, its flavour."""

from calmlarder.matching.late_patterns import LatePattern

_TIMES_WASHED = LatePattern(r"\b(?:triple|double|pre|twice)[ -]?(?=(?:washed|rinsed)\b)")
_GROUND_ON = LatePattern(
    r"\b(?:ground|soaked|fermented) "
    r"(?=(?:and \w+ )?(?:yesterday|today|this morning|last night|on (?:mon|tue|wed|thu|fri|sat|sun)))"
)
# What is sour by its nature is not bad for turning so.
_SOUR_BATTER = LatePattern(
    r"[,;]? ?\b(?:(?:a )?bit |slightly |getting |turning |going |gone |will be )*sour\b(?! cream)"
)
_TURNING_SOUR = LatePattern(r"\b(?:turning|starting to turn|starting to go|getting) sour\b")
# A plantain that is ripe, or has turned yellow or black, is another food than a green one.
_PLANTAIN = LatePattern(r"\b(?<!green )(?<!ripe )plantains?\b")
_IS_RIPE = LatePattern(r"\b(?<!not )(?<!un)(?:over ?ripe|ripe|ripened|going black|gone black|all black|spotty)\b")
_GREENISH = LatePattern(
    r"[ ,(]*\b(?:still |quite |a bit |bit |very )*greenish\b\)?|[ ,(]*\bstill (?:quite |a bit )?green\b\)?"
)
_TURNED = LatePattern(r"\b(?:ripe|brown|yellow)\b")
_BANANA = LatePattern(r"\b(?<!green )bananas?\b")
# The flavour of an ice: it holds the milk and the sugar whichever it is.
_ICE = LatePattern(
    r"\b(ice[ -]?cream|gelato)s?\b([^,;:(]*)(?:[,;:] ?| - | ?\()"
    r"(?:butter pecan|(?:mint )?choc(?:olate)?(?: chips?)?(?: mint)?|vanilla|strawberry|rum (?:and|&|n) raisin"
    r"|cookie dough|cookies (?:and|&|n) cream|(?:salted )?caramel|rocky road|neapolitan|coffee|pralines?(?: pecan)?"
    r"|toffee|fudge|birthday cake|raspberry ripple|banana)\)?(?= ?(?:$|[,;(]|\d))"
)
# `rice? no scratch that its couscous`: what was written first is taken back.
_TAKEN_BACK = LatePattern(r"^.*\b(?:scratch that|wait,? no|no,? wait)[,.:]? (?:it'?s|they'?re|its|theyre) (?=[a-z\d])")
_WHOLE_CHICKEN = LatePattern(r"\(?\bchicken\)?,? whole\b(?! (?:breast|leg|thigh|wing))")
_SOAKED_AND_BOILED = LatePattern(
    r"\bsoaked(?: overnight)?,? ?(?:and|n|&|then|\+|,) ?(?:then )?(?=(?:boiled|cooked|pressure cooked)\b)"
)
# What is sold large and lies there cut up is a tub of it, where no number says how much.
_CUT_UP = LatePattern(
    r"\b((?:water ?melon|melon|honeydew|cantaloupe|pineapple|pumpkin|squash|papaya|jackfruit)s?)"
    r" (?:chunks|cubes|cubed|balls|diced?|pieces|cut up)\b"
)
_SAYS_HOW_MUCH = LatePattern(
    r"\d(?!\d?(?:st|nd|rd|th|[./-]\d))|\b(?:tubs?|bags?|packs?|packets?|tins?|cans?|box(?:es)?|bowls?|cups?|half|bit|few"
    r"|quarter|handfuls?|frozen|roast(?:ed)?|container|pots?)\b"
)
_SCRAPINGS = LatePattern(r"\bscrapin'?s?\b")
# What is eaten cold was cooked before, where it comes dry or raw: `cold pasta, half tub`.
_COLD = LatePattern(
    r"\bcold (?=(?:plain |boiled |left ?over )?(?:pasta|spaghetti|spag|penne|macaroni|fusilli|noodles?|quinoa|couscous"
    r"|lentils?|bulg[ua]r|spuds?|tatt?ies?|(?:new |baby )?potato(?:es)?|chickpeas?|chicken|turkey|beef|pork|lamb|salmon"
    r"|sausages?|veg|broccoli|carrots?|beans)\b(?! (?:salad|soup|noodles?|smoked|cuts?|sauce)))"
)
_COLD_ROAST = LatePattern(r"\bcold (?=roast(?:ed)?\b)")  # roast says by itself that it was cooked
_DAYS_GOOD = LatePattern(r"\b(?:last |only |for )?(\d{1,2}) days? good\b")


def said_in_passing(text: str) -> str:
    """A plain line with such phrases put plainly."""
    text = _TIMES_WASHED.sub("", text) if "washed" in text or "rinsed" in text else text
    if "batter" in text:
        text = _SOUR_BATTER.sub("", _GROUND_ON.sub("made ", text))
    text = _TURNING_SOUR.sub("on the turn", text) if "sour" in text else text
    if "plantain" in text and _IS_RIPE.search(text):
        text = _PLANTAIN.sub("ripe plantain", text, count=1)
    if "banana" in text and len(_GREENISH.findall(text)) == 1 and not _TURNED.search(text):
        text = _BANANA.sub(r"green \g<0>", _GREENISH.sub(" ", text), count=1)
    text = _SOAKED_AND_BOILED.sub("", text) if "soaked" in text else text
    if _CUT_UP.search(text) and not _SAYS_HOW_MUCH.search(text):
        text = _CUT_UP.sub(r"1 tub \1 cut up", text)
    text = _SCRAPINGS.sub("scraping", text) if "scrapin" in text else text
    text = _ICE.sub(r"\1\2", text) if "ice" in text or "gelato" in text else text
    text = _TAKEN_BACK.sub("", text) if "scratch" in text or "wait" in text else text
    text = _WHOLE_CHICKEN.sub("whole chicken", text) if "whole" in text else text
    text = _COLD.sub("cooked ", _COLD_ROAST.sub("", text)) if "cold" in text else text
    return _DAYS_GOOD.sub(r"\1 days left", text) if " good" in text else text
