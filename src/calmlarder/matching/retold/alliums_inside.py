"""Onion or garlic that a line tells to be in its food, as names have it: `gherkins - homemade, garlic inside`.

No food of its own, and never passed over: what lay beside garlic counts as it does. Brackets are read elsewhere.
"""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.several_foods.headings import bare_words

_HOW_IT_IS = (
    r"(?:crispy|crisp|fried|raw|whole|chopped|crushed|minced|roasted|roast|pickled|black|dried|cooked|red|white|real"
    r"|fresh|some|lots of|loads of|bits of|tons of|plenty of|a bit of|a little|a few|few|the|much|too much|a lot of)"
)
_SAYS = (
    r"(?:(?:it |they |this |which |that |i think |the |ingredients? |label |packet |pack |tin |jar |box )*"
    r"(?:(?:is |are )?(?:full of|having|loaded with)|has|have|had|got|gots|contains?|with|w|holds?|made with"
    r"|includes?|including|there'?s|lists?|says?|list of)(?: got)?)"
)
_ALLIUMS = r"(onions?|garlic|shallots?)(?: ?(?:and|&|\+|n|/|or|,) ?(onions?|garlic|shallots?))?"
_FORM = r"(?: (?:cloves?|bits?|pieces?|chunks?|powder|pwdr|pdr|flakes|slices|granules))?"
_IN_IT = r"(?:(?:is |are )?inside|in it|in them|in these|in this(?: one)?|in that|in there|through it|on it|in)"
_ENDS = r"(?=\s*(?:$|[,;.!(]))"
_TOLD = LatePattern(
    rf"[,;:-]* ?\b(?:{_SAYS} )?(?:{_HOW_IT_IS} )*\b{_ALLIUMS}{_FORM} {_IN_IT}\b{_ENDS}"
    rf"|[,;:-]+ ?{_SAYS} (?:{_HOW_IT_IS} )*\b{_ALLIUMS}{_FORM}{_ENDS}"
)


# What tastes of it holds it: `red chilli sauce, the garlicky one`.
_TASTES_OF_IT = LatePattern(
    r"[ ,;(-]+(?:the |very |quite |really |a bit |bit |too )*(garlick?|onion)y"
    r"(?: (?:one|ones|kind|sort|stuff|type))?\b\)?(?=\s*$)"
    r"|[,;(-]+ ?(?:the |with )*(garlic|onion) (?:one|kind|sort|type|flavou?r(?:ed)?)\b\)?(?=\s*(?:$|[,;]))"
)
_SORT_BEHIND = LatePattern(
    r"(?<=[a-z])(?<! and)(?<! n)[,;(-]+ ?(onion|garlic)\)?(?=\s*$)"  # `gravy granules, onion`
)
_BY_SORTS = LatePattern(
    r"\b(?:granules|gravy|stock cubes?|stock|crisps|soup|crackers|dip|h[ou]+mm?[ou]+s|sausages?|burgers?|bouillon"
    r"|granuals|bhajis?|seasoning|couscous|relish|bagels?|naans?|passata|pasta sauce)$"
)
# What was cooked with them is nothing by itself any more: `collards cooked w ham hock + onion`.
_COOKED_WITH = LatePattern(
    r"\b(?:cooked|stewed|braised|simmered|fried|sauteed|roasted|baked|made) (?:up )?(?:with|w|in) [^;]*?"
    r"\b(onions?|garlic)\b[^;]*$"
)
_DENIED = LatePattern(r"\b(?:no|not any|without|minus|zero) ?$")
_OTHER_WORD = LatePattern(
    r"\b([^\W\d_]{3,})(?= (?:inside|in it|in them)\b)|(?<=\bhas )([^\W\d_]{3,})(?=\s*[,;)]|\s*$)"
    r"|(?<=\bwith )([^\W\d_]{3,})(?=\s*[,;)]|\s*$)|(?<=\bgot )([^\W\d_]{3,})(?=\s*[,;)]|\s*$)"
)
# The flavour of a made thing, which is no garlic beside it: `garlic & herb houmous`, `sauerkraut, garlic dill`.
_WITH_HERBS = (
    r"(?:herbs?|chives?|dill|parsley|rosemary|thyme|basil|sage|pepper|black pepper|butter|lemon|chilli|sea salt)"
)
_MADE = LatePattern(
    r"\b(?:h[ou]+mm?[ou]+s|dips?|crackers?|crisps|chips|soft cheese|butter|bread|loaf|dressing|mayo\w*|couscous|wraps?"
    r"|pitt?as?|olives?|tofu|dough ?balls?|naans?|focaccia|croutons|nuts|wedges|spread|pate|sauerkraut|kraut|pickles?"
    r"|gherkins?|marinade|pesto|baguettes?|bagels?|goujons?|seitan|tempeh|almonds|ricotta|feta|yogh?urt|sour cream"
    r"|creme fraiche|salami|chicken|prawns|mussels|mushrooms|potatoes|rice|pasta|gnocchi|popcorn|crostini)\b"
)
_FLAVOUR = LatePattern(
    rf"[,;]? ?\b(?:garlic (?:and |& ?|n |\+ ?|, ?)?{_WITH_HERBS}|{_WITH_HERBS} (?:and |& ?|n |\+ ?)?garlic)"
    r"\b(?! (?:cloves?|bulbs?))",
    needs=("garlic",),
)
# Garlic that stands in its own oil makes no other food of it, but a home-made one.
_ITS_OWN_OIL = LatePattern(r"\b(?:garlic|onion|shallot)[ -](?:infused )?(?:olive )?oil\b")
_LONGEST_NAME = 8  # words that name one: ours


def alliums_inside(text: str, lexicon: Lexicon) -> str:
    """A plain line with what is told to be in its food behind `with`, in English."""
    text = _OTHER_WORD.sub(lambda found: _in_english(found[0], lexicon), text)
    if ("onion" not in text and "garlic" not in text and "shallot" not in text) or _ITS_OWN_OIL.search(text):
        return text
    if _is_a_name(text, lexicon):
        return text
    text = _TASTES_OF_IT.sub(lambda found: f" with {(found[1] or found[2]).removesuffix('k')}", text)
    if (behind := _SORT_BEHIND.search(text)) and _BY_SORTS.search(text[: behind.start()]):
        return f"{text[: behind.start()]} with {behind[1]}"
    if (cooked := _COOKED_WITH.search(text)) and cooked.start():
        return f"{text[: cooked.start()]}with {cooked[1]}"
    if (flavour := _FLAVOUR.search(text)) and _names_it(text, flavour):
        return f"{text[: flavour.start()]} {text[flavour.end() :].lstrip(' ,')} with garlic".strip()
    found = _TOLD.search(text)
    if found and _DENIED.search(text[: found.start()]):
        return text
    return f"{text[: found.start()]}{_beside(found)}{text[found.end() :]}" if found and found.start() else text


def _is_a_name(text: str, lexicon: Lexicon) -> bool:
    """Whether a food's own name tells of the onion or garlic: `garlic and herb soft cheese, 150 g`."""
    words = bare_words(text)
    names = (words[at:end] for at in range(4) for end in range(at + 3, min(at + _LONGEST_NAME, len(words)) + 1))
    return any({"onion", "garlic"} & {*name} and " ".join(name) in lexicon.spelt for name in names)


def _names_it(text: str, flavour: re.Match[str]) -> bool:
    """Whether a made thing stands right behind the flavour, or before it in a line of nothing more."""
    return bool(
        _MADE.match(text[flavour.end() :].lstrip())
        or (_MADE.search(text[: flavour.start()]) and not text[flavour.end() :].strip(" ,;.)") and "," in flavour[0])
    )


def _in_english(word: str, lexicon: Lexicon) -> str:
    """`garlic` or `onion` where a word of another tongue means it, else the word."""
    food = lexicon.tables.food_by_id.get(lexicon.spelt.get(word, ""))
    if food is None or food.kind != "allium":
        return word
    return next((name for name in ("garlic", "onion") if food.id.startswith(name)), word)


def _beside(found: re.Match[str]) -> str:
    told = dict.fromkeys("onion" if word.startswith(("onion", "shallot")) else word for word in found.groups() if word)
    return f" with {' or '.join(told)}"
