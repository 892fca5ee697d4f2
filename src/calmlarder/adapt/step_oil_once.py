"""Infused oil in a changed step goes into the pan with the dish's own fat; nobody fries oil in oil."""

import re

from calmlarder.and_list import and_list

_INFUSED = r"(?:the )?(?:garlic|onion)-infused oil(?: \[[^\]]*\])?"
_FAT = (
    r"(?:half (?:of )?|the rest of |a little (?:of )?|[\d½¼¾/]+ (?:tbsp|tsp|tablespoons?|teaspoons?|ml|g) (?:of )?)*"
    r"(?:the |some )?(?:(?:hot|warm|remaining|olive|extra[- ]virgin|rapeseed|vegetable|sunflower|groundnut|coconut) )*"
    r"(?:oil|butter|ghee)\b"
)
_FRIES = r"(?:stir-fry|fry|saut[eé]|cook|soften|sweat|brown|sizzle)"
# `fry the garlic-infused oil and ginger in the olive oil`
_IN_OIL = re.compile(
    rf"\b(?P<verb>{_FRIES}) (?P<things>(?:[^.;:\[\]]|\[[^\]]*\])*?infused oil(?:[^.;:\[\]]|\[[^\]]*\])*?) "
    rf"in (?P<fat>{_FAT})",
    re.IGNORECASE,
)
# `heat the oil in a pan and fry the garlic-infused oil in it`
_IN_IT = re.compile(
    rf"\b(?P<heat>heat|warm) (?P<fat>{_FAT})(?P<where> (?:in|over) [^,.;]{{2,40}}?)?,? (?:and|then) "
    rf"(?:gently |briefly )?{_FRIES} (?P<oil>{_INFUSED}) in it\b",
    re.IGNORECASE,
)
# `Add the garlic-infused oil and fry for a minute`
_FRIED_ALONE = re.compile(
    rf"(?P<add>\b(?:add|stir in|tip in) {_INFUSED},? (?:and |then )+)(?:gently |briefly )?{_FRIES}\b", re.IGNORECASE
)
# `Heat the oil in a pan and fry the garlic-infused oil and ginger for 1 minute`
_FRIED_WITH = re.compile(
    rf"(?:(?P<heat>\b(?:heat|warm|melt|add) {_FAT})(?P<mid>[^.;\[\]]*?))?"
    rf"(?P<verb>\b(?:(?:gently|briefly) )?{_FRIES}) "
    r"(?P<things>(?:[^.;:()\[\]]|\[[^\]]*\])*?infused oil(?:(?:,| and) [^.;:()\[\]]*?)?)"
    r"(?=,? (?:stirring|for|until|till|over|with|in|on|then)\b|,? and (?:cook|stir|add|let|leave)\b|,? \d|[.;]|$)",
    re.IGNORECASE,
)
_LISTED = re.compile(
    r"(?:the |all the |(?:(?:[\d½¼¾/]+ (?:g|tbsp|tsp|ml)|rest|some|half) of the )|[a-z])[a-z -]*(?: \[[^\]]*\])?", re.I
)
# What seasons turns no gold in the oil, as the garlic beside it did.
_GOLDEN = re.compile(
    r"(?P<said>\b(?:chill?i(?:es)?|ginger|flakes|cumin|spices|thyme|rosemary|lemongrass|anchov\w+)"
    r" in the garlic-infused oil(?:[^.;]*?) until )"
    r"(?:(?:it is|they are|just|barely|lightly|light|pale|turning|starting to turn) )*gold(?:en)?\b(?: brown)?",
    re.IGNORECASE,
)
_BETWEEN = re.compile(r",? and |, ")


def oil_once(step: str) -> str:
    """The step with infused oil beside the oil of the pan, where it was to be fried in it."""
    step = _IN_IT.sub(r"\g<heat> \g<fat> and \g<oil>\g<where>", step)
    step = _FRIED_ALONE.sub(r"\g<add>warm it", _IN_OIL.sub(_together, step))
    return _GOLDEN.sub(r"\g<said>fragrant", _FRIED_WITH.sub(_with_the_others, step))


def _with_the_others(found: re.Match[str]) -> str:
    """`fry the ginger in the garlic-infused oil`; with the fat of the pan, where the sentence has just heated that."""
    things = _BETWEEN.split(found["things"])
    oils = [one for one in things if re.fullmatch(rf"(?:[\d/ ]+ (?:tsp|tbsp) of )?{_INFUSED}", one, re.IGNORECASE)]
    others = [one for one in things if one not in oils]
    if len(oils) != 1 or not all(_LISTED.fullmatch(one) for one in others):
        return found[0]
    oil = oils[0] if oils[0][0].isdigit() else f"the {oils[0].removeprefix('the ')}"
    if not others:
        return (
            f"{found['heat']} and {oil}{found['mid'].removesuffix(' and ').removesuffix(', ')}"
            if found["heat"]
            else found[0]
        )
    the = "the " if things[0] in oils and things[0].startswith("the ") and not others[0].startswith("the ") else ""
    if found["heat"]:
        return f"{found['heat']} and {oil}{found['mid']}{found['verb']} {the}{and_list(others)}"
    return f"{found['verb']} {the}{and_list(others)} in {oil}"


def _together(found: re.Match[str]) -> str:
    things = _BETWEEN.split(found["things"])
    oils = [one for one in things if re.fullmatch(_INFUSED, one, re.IGNORECASE)]
    others = [one for one in things if one not in oils]
    if not oils:
        return found[0]
    fats = and_list([f"the {oils[0].removeprefix('the ')}", found["fat"]])
    if not others:
        return f"{'Heat' if found['verb'][0].isupper() else 'heat'} {fats}"
    the = "the " if things[0] in oils and things[0].startswith("the ") and not others[0].startswith("the ") else ""
    return f"{found['verb']} {the}{and_list(others)} in {fats}"
