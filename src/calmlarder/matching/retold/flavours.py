"""The flavour or the filling of a made thing: noodles of chicken flavour hold no chicken, pierogi are no onions."""

from calmlarder.matching.late_patterns import LatePattern

_FLAVOUR = LatePattern(
    r"[,;(]? ?(?:in )?\b(?!no |without )(?<!no )(?<!without )(?:[a-z]+ (?:(?:and|&|n) )?)?[a-z]+ flavou?r(?:ed)?\b\)?"
)
_INSTANT_NOODLES = (
    r"\b(?:flavou?red )?(?:(?:2|two|3|three)[ -]?min(?:ute)?s?|instant|ramen|packet)(?: wheat| egg)? noodles?\b"
    r"|\bramen(?: bricks?| packs?| packets?)?\b(?! (?:broth|stock|soup|egg))"
)
_INSTANT = LatePattern(_INSTANT_NOODLES)
_NOODLE_POT = LatePattern(r"\b((?:noodle (?:pots?|cups?)|(?:cup|pot) noodles?)\b[^()]*)\((?!.*\d)[a-z][a-z &+-]+\)")
# `instant noodles chicken`: their flavour behind them, alone.
_BEHIND_INSTANT = LatePattern(
    rf"(?:{_INSTANT_NOODLES})(?P<many>(?: ?x ?\d{{1,2}})?),? \(?(?:chicken|beef|curry|pork|prawn|shrimp|veg|vegetable"
    r"|duck|kimchi|chilli|sesame|mushroom|seafood)\)?(?=\s*(?:$|x ?\d|\d))"
)
# `tin soup tomato`: which soup, behind it.
_WHICH_SOUP = LatePattern(
    r"\b(?:instant |dried )?(tins?|cans?|packets?|pkts?|packs?|sachets?|cartons?|cups?|mugs?)(?: a| of)?[ -]?soups?,? "
    r"(chicken|tomato|mushroom|veg|vegetable|lentil|onion|miso|leek|minestrone)\b"
)
_CRISPS = LatePattern(r"\b((?:potato )?crisps)\b([^()]*)\(([a-z][a-z &+]+)\)")
_PLAIN_CRISPS = LatePattern(r"\b(?:salted|plain|sea salt|original|open\w*|half|mine|pack\w*|bags?|kids?|multi\w*)\b")
_HUMMUS = LatePattern(
    r"\b(?:h[ou]+mm?[ou]+s)\b[,( ]+(roasted garlic|roasted red pepper|red pepper|carameli[sz]ed onion|beetroot|jalapeno"
    r"|sweet chilli|moroccan|lemon(?: (?:and|&) coriander)?)\b\)?"
)
_DUMPLINGS = r"(?:dumplings?|gyozas?|momos?|wontons?|mandu|pot ?stickers?|jiaozi)"
_OTHERS = r"(?:pierog(?:i|ies?|y)|pelmeni|varenik[iy]|samosas?|spring rolls?|empanadas?)"
_ROLLS = r"(?:samosas?|spring rolls?|empanadas?)"
# Fillings that add no allergen of their own; what the tables count as vegan has none of meat.
_OF_PLANTS = (
    r"(?:potato(?:es)?|onions?|garlic|cabbage|mushrooms?|sauerkraut|kraut|veg(?:etables?|gie)?|spinach|chives?|leeks?|tofu"
    r"|peas?|lentils?)"
)
_FILLING = rf"(?:{_OF_PLANTS}|pork|beef|chicken|lamb|turkey|meat)"


def _filled(thing: str, filling: str) -> LatePattern:
    return LatePattern(
        rf"\b({thing})\b((?: (?:frozen|fried|steamed|boiled|cooked|leftover|homemade|opened|half)| from [a-z]+)*"
        r"(?:,? \d[^()]*?)?)"
        r" ?(?:\(| with | )(?:with )?"
        rf"({filling}(?:(?:,| and| &| \+| n|\+|&)* ?{filling})*)\b(?! ?(?:and|&|\+|n) ?[a-z])\)?"
    )


_PASTA = (
    r"(?:ravioli|tortellini|tortelloni|cappelletti|agnolotti|cannelloni|mezzelune|pizzas?(?! cheese\b)|quiches?|flans?)"
)
_IN_PASTA = (
    r"(?:cheese|ricotta|spinach|mushrooms?|pumpkin|butternut|squash|mozzarella|parmesan|tomato(?:es)?|basil"
    r"|veg(?:gie)?)"
)
# `ravioli, cheese, 1 bag`: what stands alone between commas behind what is filled or topped.
_FILLED_BEHIND_COMMA = LatePattern(
    rf"\b({_PASTA}),? \(?({_IN_PASTA}(?:(?: and| &| \+| n|,)* {_IN_PASTA})*)\)?(?= ?(?:[,;]|\d|half|$))"
)
# What is told of the filling, and what is left of it: of some things it may not be as the tables count them.
_WITH_FILLING = (
    (
        _filled(
            r"(?:pierog(?:i|ies?|y)|perog(?:i|ies?|y)|pyrohy|varenyky|varenik[iy])",
            r"(?:potato(?:es)?, cheese and onions?|potato(?:es)?|cheese|cheddar|(?:cottage|farmer'?s) cheese)",
        ),
        r"pierogi ruskie\2",
    ),
    (_filled(_DUMPLINGS, _FILLING), r"\1\2"),
    (_filled(_ROLLS, _OF_PLANTS), r"\1\2"),
    (_filled(_OTHERS, _FILLING), r"\1\2 with \3"),
)


# Sausages by their seasoning: `garlic & herb snags`.
_GARLIC_AND_HERB = LatePattern(r"\b(?:garlic|onion) (?:and|&|n|\+) (?:herbs?|chives?|sage)\b,? ?")
_SAUSAGES = LatePattern(r"\b(?:sausages?|snags?|bangers?|chipolatas?|burgers?|sausage links?)\b")


def flavours_aside(text: str) -> str:
    """A plain line with the flavour of noodles, crisps and hummus in their name, and no filling of dumplings."""
    if "noodle" in text or "ramen" in text:
        if _INSTANT.search(text) and (found := _FLAVOUR.search(text)):
            rest = f"{text[: found.start()]} {text[found.end() :]}"
            text = _INSTANT.sub("flavoured instant noodles", rest if _INSTANT.search(rest) else text)
        text = _BEHIND_INSTANT.sub(r"flavoured instant noodles\g<many>", text)
        text = _NOODLE_POT.sub(r"\1", text)
    if "crisps" in text and (found := _CRISPS.search(text)) and not _PLAIN_CRISPS.search(found[3]):
        text = f"{text[: found.start()]}flavoured crisps{found[2]}{text[found.end() :]}"
    text = _WHICH_SOUP.sub(r"\1 \2 soup", text) if "soup" in text else text
    text = _HUMMUS.sub(r"\1 hummus", text) if "m" in text and "us" in text else text
    if _SAUSAGES.search(text) and _GARLIC_AND_HERB.search(text):
        text = f"{_GARLIC_AND_HERB.sub('', text)} with garlic"
    text = _FILLED_BEHIND_COMMA.sub(r"\1", text)
    for shape, left in _WITH_FILLING:
        text = shape.sub(left, text)
    return text
