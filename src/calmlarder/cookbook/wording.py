"""Words of ingredient lines that name no food: what is done to it, what it is for, headings."""

import re
from itertools import pairwise

OPTIONAL = re.compile(
    r"[(\[,]?\s*\b(?:optional(?:ly)?|if (?:you(?:'ve)? )?(?:like|desired|wish|using|needed"
    r"|liked|(?:have|got|have got) (?:it|any|some|them|one)))\b"
    r"(?: but [^(),;\d]{3,40}(?=[)\]]))?\s*[)\]]?"
)
HEADING = re.compile(
    r"#+ .*|for (?:the|a) [^\d,]{1,40}|to (?:serve|garnish|finish|decorate)|"
    r"to (?:put|bring|pull)(?: (?:it|them|everything|the \w+))?(?: all)?(?: (?:together|up))?|"
    r"to (?:assemble|layer|build|fill|stuff|coat|crumb|bread|thicken|glaze|fry|cook|roast|bake|poach|marinate|dress|top"
    r"|plate(?: up)?|accompany|go with(?: it)?|mix in|stir in|scatter|sprinkle|drizzle|brush|spread|dip|season)"
    r"(?: (?:it|them|the [a-z]+))?|"
    r"(?:the )?(?:sauce|dressing|marinade|filling|topping|garnish|dough|crust|salad|ingredients|base|glaze|batter"
    r"|crumble|streusel|icing|frosting|ganache|sponge|cake|meatball|burger|patty|patties|curry|stew|soup|slaw|dip|assembly"
    r"|top|bottom|lid|mash)s?"
    r"|(?:optional )?(?:toppings?|garnish(?:es)?|extras?|to (?:serve|finish|top|garnish))"
    r"(?:,? \(?(?:pick (?:some|any|a few|your own)|choose (?:some|any|a few)|your choice|(?:all )?optional"
    r"|(?:as|if|any|whatever) you (?:like|fancy)|any or all(?: of (?:these|them))?)\)?)?"
    r"|(?:the )?(?:wet|dry)(?: (?:ingredients|stuff|things|bits|mix))?|step \d|(?:and )?everything else|the rest"
    r"|also|as well|on the side|alongside|you(?:'ll| will)? also (?:need|want)"
    r"|(?:the )?(?:night|day|evening) before|(?:in the |next )?morning|(?:on )?day \w+(?: \w+)?"
)
# A row of signs before and behind: `-- Topping --`, `== Sauce ==`.
_RULED = re.compile(r"\s*([—–=~-])\1*\s*[^\d]{2,40}?\s*\1+\s*|\s*([*_#])\2{2,}\s*[^\d]{2,40}?\s*\2{2,}\s*")
_TIME = r"\d{1,3}(?:[./]\d)?(?: ?(?:-|to) ?\d{1,3})? ?(?:min(?:ute)?s?|h(?:ou)?rs?|h|days?)\b\.?"
NOTHING = re.compile(
    # `25 mins, plus cooling`: how long it takes
    rf"(?:about |approx(?:imately)?\.? |just |under |takes |ready in )?{_TIME}(?:,? (?:and )?{_TIME})?"
    rf"(?:,? (?:plus|and|\+) (?:{_TIME} )?(?:(?:overnight|about|an?|some|for) )*[a-z]+ing(?: time| overnight)?)?"
    r"|(?:(?:\w+ly |just[- ]boiled |boiled |boiling |hot |cold |warm |iced? |lukewarm |tepid |tap |filtered "
    r"|cool |fresh |reserved |starchy |salted |pasta |noodle |potato |cooking |soaking "
    r"|enough )*water(?: to cover(?: \w+){0,2})?"
    r"|ice(?: cubes?| water)?|(?:\w+ )?(?:skewers|toothpicks|string|twine|foil|parchment|baking paper|cocktail sticks))"
)
# A word ending in -ed or -ly is about cutting and treating, save these, which make another food of it.
_KEPT = frozenset({
    "dried", "canned", "tinned", "cooked", "uncooked", "smoked", "fried", "roasted", "pickled", "infused", "flavored",
    "flavoured", "fortified", "skimmed", "fermented", "salted", "mixed", "boiled", "baked", "clarified", "creamed",
    "dehydrated", "candied", "preserved", "cured", "condensed", "evaporated", "powdered", "sweetened", "steamed",
    "caramelised", "caramelized", "desiccated", "red", "seed", "linseed", "flaxseed", "aniseed", "hard-boiled",
    "unsweetened", "spiced", "seasoned", "stuffed", "marinated", "breaded", "crushed", "diced", "chopped", "soured",
    "cracked", "rolled", "strained", "sieved", "minced", "ground", "sliced", "curly", "jelly", "puffed", "malted",
    "crystallized", "crystallised", "aged", "curried", "glazed", "mashed", "braised", "stewed", "toasted", "split",
    "rapeseed", "cottonseed", "grapeseed", "hempseed", "weed", "seaweed", "bleed", "bread", "shelled",
    "processed", "filled", "coated", "battered", "shredded", "flaked", "blended", "reduced", "bottled", "concentrated",
})  # fmt: skip
_PREP = frozenset({
    "ripe", "extra", "very", "fine", "coarse", "freshly", "fresh", "plump", "firm", "cold", "warm", "hot", "heaping",
    "quality", "best", "good", "natural", "pure", "organic", "free-range", "free", "range", "store-bought", "store",
    "bought", "boneless", "skinless", "bone-in", "skin-on", "boned", "seedless", "unbleached", "lean", "thick", "thin",
    "medium-sized", "size", "about", "approximately", "each", "pieces", "such", "unsalted", "and", "or", "young",
    "your", "favorite", "favourite", "kosher", "cut", "into", "halves", "then", "if", "necessary", "plus", "virgin",
    "old-fashioned", "quick", "all", "total", "inch", "pitted", "bite", "unpeeled", "superfine", "untreated",
    "jumbo", "crisp", "extra-large", "full-fat", "low-sodium", "low-salt", "reduced-salt", "reduced-sodium",
    "lower-salt", "no-salt", "no-salt-added", "double-concentrated", "country", "caps", "branches", "greek", "most",
    "flavorful", "flavourful", "fragrant", "tiny", "day-old", "stale", "matchsticks", "matchstick", "batons", "ribbons",
    "coins", "shavings", "shell-on", "head-on", "tail-on", "shells-on", "tails-on",
})  # fmt: skip
# These end so and are foods themselves.
_FOODS = frozenset({
    "seaweed", "weed", "seed", "linseed", "flaxseed", "aniseed", "rapeseed", "cottonseed", "grapeseed", "hempseed",
    "bread",
})  # fmt: skip
_ENDING = re.compile(r"[a-z]{2,}(?:ed|ly)")
# How it was grown, cut or cured; never what it is free from or tastes of.
_HYPHENED = re.compile(
    r"[a-z]+-(?:ripe|sized?|grain(?:ed)?|cut|style|skim|roasted|packed|cured|fed|raised|cook(?:ing)?)"
)
_MOST = re.compile(r"(?!zest$|harvest$)[a-z]{3,}est")  # the ripest, the freshest
_GREEK = re.compile(r"\bgreek(?:-style)?$")
_NO_FOOD = frozenset(
    {"half", "halves", "quarter", "quarters", "white", "black", "red", "green", "sweet", "light", "whole"}
)
_TAIL = re.compile(
    r"\s*(?:;|\s-\s|–|\b(?:plus (?:more|extra|additional|a (?:little|bit|touch|splash|few)(?: more| extra)?"
    r"(?= for\b| if\b| to\b|,|$))|plus \d|to taste|to serve|to garnish"
    r"|to sprinkle|to finish|to season|to coat|to (?:top|scatter|drizzle|dip|decorate|mop)\b"
    r"|for (?!\w+ oil)|as (?:needed|required|garnish|a garnish)"
    r"|or (?:more|so|as|to taste|less|not)\b|such as|preferably|ideally|cut in|cut into|about|at room"
    r"|from (?:a|the|about|\d)|in (?:spring |salted )?water|in brine|like|without"
    r"|(?:and )?(?:covered|packed|preserved|stored) in\b"
    r"|(?:mixed|beaten|whisked|dissolved|stirred|combined|blended) (?:with|in|into|together)\b"
    r"|see (?:note|recipe)|note|as per|in total|per person"
    r"|taken|torn|thawed|according|depending|until|halved|peeled|and cut"
    r"|with (?:its|their|the|skins?|bones?|stems?|juices?|liquid|fronds|tops|greens|leaves)\b"
    r"|on the (?:side|vine)|left|reserved|removed)).*"
)


def is_heading(shown: str, bare: str) -> bool:
    """Whether a line parts the list: by its words, `bare` of signs, or by signs on both sides of it."""
    plain_words = OPTIONAL.sub(" ", bare).strip()
    return bool(HEADING.fullmatch(bare) or HEADING.fullmatch(plain_words) or _RULED.fullmatch(shown))


def without_tail(text: str) -> str:
    """The text up to what it is for, how much more, or a remark; `whole peeled tomatoes` has none."""
    cut = _TAIL.sub("", text, count=1).strip(" ,.;:-*")
    return text if not cut or (cut != text and names_nothing(cut)) else cut


def without_prep(text: str) -> str:
    """The words that may name a food."""
    # Greek olives are olives; greek yoghurt is a food of its own.
    words = re.findall(r"[^\s,;:()\"*_]+", text)
    of_yoghurt = {
        word for word, behind in pairwise(words) if _GREEK.match(word) and behind.startswith(("yog", "style"))
    }
    kept = [word for word in words if not is_prep(word.strip(".!?'")) or word in of_yoghurt]
    return " ".join(word.strip(".!?*") for word in kept)


def is_prep(word: str) -> bool:
    """Whether a word says how a food is cut, treated or grown, and names none."""
    return (
        word in _PREP
        or bool(_HYPHENED.fullmatch(word))
        or bool(_MOST.fullmatch(word))
        or (word not in _KEPT and "-" not in word and bool(_ENDING.fullmatch(word)))
    )


def names_nothing(text: str) -> bool:
    """Whether a text is only how something is cut, a share or a colour: `diced firm`, `half`, `white`."""
    words = without_prep(text).split()
    return all(word in _NO_FOOD or (word in _KEPT - _FOODS and word.endswith("ed")) for word in words)
