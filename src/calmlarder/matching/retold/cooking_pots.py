"""What food was cooked in, put as a pot of it: `kaldero half full`, `wok of fried rice`, `a small pan`."""

import re

from calmlarder.matching.late_patterns import LatePattern

_COOKER = r"(?:(?:rice|slow|pressure|multi) ?cookers?|cookers?|instant pots?|crock ?pots?|stock ?pot|cooking pots?)"
# Pots and pans of other kitchens by the names that stand in English lines, too.
_PAN = (
    r"(?:dutch ovens?|cauldrons?|sauce ?pans?|frying pans?|woks?|skillets?|[ck]alderos?|palayok|kawali"
    r"|(?<!de la )ollas?|cazuelas?|kadh?ais?|karahis?|handis?|degchis?|pateelas?)"
)
_VESSEL = rf"(?:{_COOKER}|{_PAN}|(?<!loaf )(?<!cake )(?<!baking )(?<!roasting )pans?)"
_FULL = r"(?:(?:about |around |nearly |almost )?(?P<share>half|third|quarter|1/2|1/3|1/4|3/4)(?:[ -]?full)?|full)"
_OF_IT = LatePattern(rf"\b(?P<vessel>{_VESSEL})(?:ful)?,? (?:{_FULL} )?(?:of|de|ng|di)\b(?! (?:sal|arroz\s*$))")
# Behind a food, and nothing but its size before it.
_BEHIND = LatePattern(
    rf"(?<=[a-z\d])(?:,|\s-|\s\()? (?P<size>(?:a |an |one |the |in |small |little |wee |big |large |huge )*)"
    rf"(?P<vessel>{_VESSEL})(?:ful)?(?:,? {_FULL})?(?=\s*(?:$|[,;)]| left\b))"
)
# Before a food without a word between: `crockpot chicken stew`.
_BEFORE = LatePattern(rf"^(?:a |the |my |small |big |large |full )*{_COOKER} (?=[a-z]{{3}})(?!(?:of|full|half)\b)")
_POT_FULL = LatePattern(rf"\bpot,? {_FULL}(?= of\b|\s*(?:$|[,;)]))")
_BY_ITSELF = LatePattern(rf"\b(?:{_COOKER}|{_PAN})\b|\b(?:small|little|wee|big|large|huge|a) pans?\b")
_SIZES = LatePattern(r"\b(?:small|little|wee|big|large|huge)\b")


def in_pots(text: str) -> str:
    """A plain line with a potful for what food was cooked in, and how full that is before it."""
    text = _BEFORE.sub("potful of ", text)
    text = _OF_IT.sub(lambda found: f"{_share(found)}potful of", text)
    behind = _BEHIND.search(text)
    if behind and _BY_ITSELF.search(behind[0]):
        size = _SIZES.search(behind["size"])
        text = f"{text[: behind.start()]}, {_share(behind)}{size[0] + ' ' if size else ''}potful{text[behind.end() :]}"
    return _POT_FULL.sub(lambda found: f"{_share(found)}potful", text)


def _share(found: re.Match[str]) -> str:
    """The part of it that is there, before the pot it is of."""
    return f"{found['share']} a " if found["share"] else ""
