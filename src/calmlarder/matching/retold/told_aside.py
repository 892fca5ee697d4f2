"""What is told beside a food's name in many words, put plainly before the line is read: home-made oil, days, jars."""

import re

from calmlarder.matching.dates.day_names import DAY
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.owners.given_names import GIVEN_NAMES

# Oil with what it was infused with still in it was made at home, and so was what somebody made.
_INFUSED = LatePattern(
    r"\b(?:garlic|onion|shallot|herb|rosemary|basil|thyme|chilli|chili)[ -](?:infused )?(?:olive )?oil\b"
)
_STILL_IN = LatePattern(
    r"[,;]? ?\(?\b(?:with |w/ ?)?(?:the )?(?:garlic |whole )?(?:cloves?|bulbs?|garlic|bits|pieces|sprigs?|herbs?)"
    r"(?: (?:are|is))?(?: still)? (?:in it|left in|in there|in the bottle|in)\b\)?"
)
_SOMEBODY_MADE = LatePattern(
    r"(?:(?<=\boil )|(?<=\boil, )|(?<=\boil \())(?:that |which )?(?:[a-z]+ )?made (?:it )?"
    r"(?=at |on |for |in |last |by |yesterday|today|\d|[,;]|$)"
)
_AT_CHRISTMAS = LatePattern(r"\b(?:(?:at|on|since|over|from|for|last) )+(?:christmas|xmas)(?: day)?\b")
# A thing kept for somebody's dish on a day: no day on which it was made.
_NOT_MEALS = r"(?!(?:the |our |my )?(?:lunch|dinner|tea|supper|breakfast|brunch|work|school)\b)"
_NOBODY_NAMED = r"(?!(?:her|his|their)\b)"
_FOR_A_DAY = LatePattern(
    rf"(?<!good )(?<!fine )(?<!best )(?<!ok )\bfor {_NOT_MEALS}{_NOBODY_NAMED}"
    rf"(?:the |our |my |a |an )?[a-z]+(?:'s)?(?: [a-z]+)?"
    rf"(?<! use)(?<! exp)(?<! on)(?<! opened)(?<! bought)(?<! made)(?<! cooked)(?<! ub)(?<! bb)(?<! by),? "
    rf"(?:on )?({DAY})(?=\s*(?:$|[,;)]))"
)
_ITS_DAY = LatePattern(
    rf"\b(last (?:night|nite)|yesterday|this morning|(?:last )?(?:{DAY}))'s(?: one)?(?=\s*(?:$|[,;.)]))"
)
# What a food lies in smells: said of the food.
_ITS_WATER = LatePattern(
    r"\b(?:the |its )?(?:water|brine|liquid|juices?|packet|pack|whey) (?=(?:is |a bit |bit |really |now )*"
    r"(?:smells?|smelly|stinks|slimy|off\b|gone (?:off|sour|bad)))"
)
# Herbs stand in a jar of water.
_HERBS_IN_JAR = LatePattern(r"(\b(?:bunch|sprigs?|handful)\b.*?) in (?:a |the )?(?:jar|glass|mug)\b")
_CURRY_BESIDE = LatePattern(
    r"\bcurry(?= (?:and|&|n) (?:thyme|cumin|turmeric|pepper|salt)\b)|(?:(?<=^)|(?<=[,.;] ))curry(?=\s*(?:[,.;]|$))"
)
_SPICE_RACK = LatePattern(r"\b(?:thyme|seasoning|white pepper|bay|cumin|turmeric|nutmeg|cubes?|salt|paprika|oregano)\b")
_TWO_MINCES = LatePattern(r"\bminced? (beef|pork|lamb|turkey) (\d+ ?k?g?) (?:and|&|\+) (beef|pork|lamb|turkey) (?=\d)")
_DAIRY = LatePattern(r"\b(?:paneer|cheese|feta|halloumi|milk|yog\w*|butter|cream|eggs?|ghee|curd|dahi|cheddar)\b")
_NOT_VEGAN = LatePattern(r"[,;]? ?\bnot (?:vegan|plant[ -]based)\b,? ?")
_LEAVE = LatePattern(r",? ?\bleave(?: it| them| alone)*(?=\s*\))")
_CRUMBLE_LEFT = LatePattern(r"\b(?:an? |just a |only a )(?:little )?crumble(?= (?:left|of)\b)")
_POWDER = LatePattern(r"\bpdr\b|\bpwdr\b")
_HIS_ONLY = LatePattern(
    r"[,;-] ?(?:for )?(?:the |my |our )?(wife|husband|hubby|partner|mum|mom|dad|gran|nan|son|daughter|flatmate"
    r"|housemate|roommate|baby|toddler) only\b"
)
_SMALL_ONES = LatePattern(
    r"\bfor (?:the |my |our )?(?:small|little|wee|tiny|young|lil) (?:ones?|people|man|fella|guys?)\b"
)
# Whose way it was made tells nothing of whose it is; with whom it will be eaten neither.
_RECIPE = LatePattern(
    r"[,;(-]? ?\b(?:by |from |to )?(?:my |our |the )?[a-z]{3,}'?s (?:old |own |secret |famous |special )?recipe\b\)?",
    needs=("recipe",),
)
_MEAL_WITH = LatePattern(
    r"\b(for (?:(?:a|the|our|my) )?(?:breakfast|brunch|lunch|dinner|tea|supper|drinks))"
    r" with (?:my |our |the )?[a-z]{3,}(?=\s*(?:$|[,;.)]))"
)
# What a list is of: `all the usual spices, cumin, paprika`; never by itself, and no name of a food.
_OF_A_SORT = LatePattern(
    r"^(?:(?:all|the|our|my|usual|various|loads of|lots of|some|assorted|a? ?bunch of|few|couple of|normal|standard) )*"
    r"(?:masalas|spices|sauces|condiments|seasonings|spreads|staples|basics|dry goods|store ?cupboard stuff|aromatics)"
    r"(?: (?:obvs|obviously|of course|as usual|like|such as|including|incl|eg|ie|etc))*\s*[:,(-]*\s*"
    r"(?=[a-z]{3,}[^a-z]+[a-z]{3,})"
)
# What is named by half of its name under `sauces:`, and is another food by itself.
_AS_SAUCE = LatePattern(
    r"(?:^|(?<=[,&+] )|(?<=\band )|(?<=\bn )|(?<=\())"
    r"(?:soy|fish|oyster|plum|mint|apple|cranberry|peanut|mushroom|black bean|sweet chilli|curry)"
    r"(?=\s*(?:$|[,;&+)]|and\b|n\b))"
)
_KIDS_ONLY = LatePattern(r"[,;-]? ?\b(?:for )?(?:the )?kids'? only\b")
_OIL_ON_TOP = LatePattern(
    r"[,;]? ?\(?\b(?:w/ ?|with )?(?:the |its |all the )?oil (?:is |has |all )?(?:sitting |sat |floating )?"
    r"(?:on (?:the )?top|separated)\b\)?"
)
# `my roommate has rice`, `thats kaylees lunch dont`, `uncle fred's stockfish, he is coming back for it sunday`.
_SOMEBODY_HAS = LatePattern(
    r"^(?:(?:my|our|the) )?((?:room|flat|house)mate|mum|mom|dad|sister|brother|landlady|landlord|neighbou?r|gran|nan)"
    r" (?:has|has got|'s got) (?:some )?([^.;]+?)(?:,? but (?:we|i|she|he|they)\b.*)?$"
)
_NAMED_HAS = LatePattern(
    r"^([a-z]{3,}) (?:has|has got|'s got|owns) (?:some |the |a )?(?!(?:eaten|used|had|a go)\b)([a-z\d][^.;]+)$"
)
_THEIR_MEAL = LatePattern(
    r"[,;-]? ?\b(?:that'?s|thats|its|it'?s|this is)"
    r" (?!tomorrow|today|tonight|yesterday|[a-z]+day'?s)([a-z]{3,}?)'?s (?:lunch|dinner|tea|supper|breakfast)\b"
    r"(?: (?:dont|don'?t|leave(?: it)?|hands off|not yours))?$"
)
_COMES_FOR_IT = LatePattern(
    r"[,;-]? ?\b(?:he|she|they)(?:'?s| is|'?ll| will| are|'?re)? (?:coming|come|picking|collecting)"
    r"(?: back| round| over)?"
    r"(?: (?:to (?:get|collect)|for|up))? (?:it|them)(?: up)?(?: (?:on )?[a-z]+day| later| soon| tomorrow)?"
)
_SOMEBODY_NEEDS = LatePattern(r"[,;]? ?- ?([a-z]{3,})'s [a-z]+ (?:needs?|wants?)(?: (?:it|them|these|this))?$")
# Sugar in a lump is a block of it; tofu in pieces with a number is no bag of marinated ones.
_SUGAR_LUMP = LatePattern(
    r"\b(jaggery|gur|gud|vellam|panela|piloncillo|rapadura|palm sugar)\b(,? (?:(?:\d|one|two|half a|a) )?)"
    r"(?:lumps?|chunks?)\b"
)
_LUMP_OF_SUGAR = LatePattern(r"\b(?:lumps?|chunks?) of (?=(?:jaggery|gur|gud|panela|piloncillo|rapadura|palm sugar)\b)")
_TOFU_PIECES = LatePattern(
    r"(\btofu,? )(\d|one|two|three|four|half a) pieces?\b|(\d|one|two|three|four) pieces? (?:of )?(?=tofu\b)"
)
_EMPTY = LatePattern(r"\(\s*\)")
# A stick of bread by its Spanish name; by itself a barra is a fish.
_BARRA = LatePattern(r"\bbarras?(?: (?:of|de) (?:bread|pan))\b|(?<=bread, )barras?\b|(?<=bread \()barras?\b")
_BREAD_BARRA = LatePattern(
    r"\b(?:bread|loaf)\b([^()]*?)[,;(]+ ?(?:(?:a|the) )?(half |quarter |\d+ )?(?:a )?(?:barra|baguette|stick)s?\b\)?"
)


def told_aside(text: str) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    if "oil" in text and _INFUSED.search(text):
        text = _home_made_oil(text)
    text = _AT_CHRISTMAS.sub("made 25 december", text) if "made" in text else text
    text = _FOR_A_DAY.sub(r"for \1", text) if "for " in text else text
    text = _ITS_DAY.sub(r"from \1", text) if "'s" in text else text
    text = _ITS_WATER.sub("", text)
    text = _HERBS_IN_JAR.sub(r"\1", text) if " in " in text else text
    text = _CURRY_BESIDE.sub("curry powder", text) if "curry" in text and _SPICE_RACK.search(text) else text
    text = _TWO_MINCES.sub(r"minced \1 \2, minced \3 ", text) if "mince" in text else text
    text = _CRUMBLE_LEFT.sub("a bit", text) if "crumble" in text else text
    text = _POWDER.sub("powder", text)
    text = _LUMP_OF_SUGAR.sub("block of ", _SUGAR_LUMP.sub(r"\1\2block", text))
    text = _TOFU_PIECES.sub(_portions, text) if "tofu" in text else text
    if "barra" in text or "baguette" in text:
        text = _BREAD_BARRA.sub(r"\2baguette \1", _BARRA.sub("baguette", text))
    if (found := _SOMEBODY_HAS.match(text)) and found[2] not in {"some", "it", "none"}:
        text = f"{found[2]} ({found[1]}'s)"
    if (found := _NAMED_HAS.match(text)) and found[1] in GIVEN_NAMES:
        text = f"{found[2]} ({found[1]}'s)"
    text = _THEIR_MEAL.sub(r" (\1's)", text)
    text = _SOMEBODY_NEEDS.sub(r" (\1's)", text) if "need" in text or "want" in text else text
    text = _COMES_FOR_IT.sub(" ", text) if "com" in text or "pick" in text or "coll" in text else text
    text = _OIL_ON_TOP.sub(" ", text) if "oil" in text else text
    if (headed := _OF_A_SORT.match(text)) and "sauces" in headed[0]:
        text = f"{headed[0]}{_AS_SAUCE.sub(lambda found: f'{found[0]} sauce', text[headed.end() :])}"
    text = _OF_A_SORT.sub("", text)
    text = _SMALL_ONES.sub("for the kids", text)
    text = _MEAL_WITH.sub(r"\1", _RECIPE.sub(" ", text))
    text = _KIDS_ONLY.sub(" (kids)", text)
    text = _HIS_ONLY.sub(r" (for \1 only)", text) if " only" in text else text
    if "vegan" in text and _DAIRY.search(text):
        text = _EMPTY.sub(" ", _LEAVE.sub("", _NOT_VEGAN.sub(" ", text)))
    return text


def _portions(found: re.Match[str]) -> str:
    return f"{found[1]}{found[2]} portions" if found[1] else f"{found[3]} portions of "


def _home_made_oil(text: str) -> str:
    bare = _STILL_IN.sub(" ", text)
    made = _AT_CHRISTMAS.sub("on 25 december", bare)
    made = _SOMEBODY_MADE.sub("made ", made).replace("on 25 december", "made 25 december").replace("made made", "made")
    if made == bare == text or "home" in made:
        return made
    return f"homemade {made}"
