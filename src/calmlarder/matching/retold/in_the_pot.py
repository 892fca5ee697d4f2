"""What stands in a cooker, a pot or on a plate is cooked, where it comes dry: rice, pasta, pulses, grains."""

import re

from calmlarder.matching.amounts.measures import MEASURE
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.part import Part
from calmlarder.matching.several_foods.several import parts_of

_COOKER = LatePattern(
    r"\b(?:still |left |sitting )*(?:in|on) (?:the |a |my |our |its )?(?:small |big |large )?"
    r"(?:rice cooker|slow cooker|pressure cooker|instant pot|crock ?pot|cooker|sauce ?pan|frying pan|pan|wok|steamer"
    r"|casserole|stove|hob)\b(?: on (?:the )?(?:stove|hob|cooker|top))?"
)
# What it was baked in: `polenta, a loaf pan of it`.
_BAKED_IN = LatePattern(
    r"[,;]? ?\b(?:in )?(?:an? |the |one |my |our )?(?:whole |small |big |large |half )?"
    r"(?:(?:loaf|roasting|baking|oven|pie|pyrex) (?:pan|tin|tray|dish)|casserole dish)(?:ful)?\b"
    r"(?: (?:full )?of(?: it)?\b)?"
)
_POT = LatePattern(r"\b(?:still |left |sitting )*in (?:the |a |my |our |its )?(?:small |big |large )?pot\b")
# Nobody keeps a pot of what is dry.
_A_POT = LatePattern(r"\b(?<!yogurt )(?<!yoghurt )pot(?:s|fuls?)?\b(?! (?:barley|noodles?|roast|pies?|stickers?))")
_SERVED = LatePattern(
    r"\b(?:bowls?|bowlfuls?|plates?|platefuls?) (?:of )?|\bin (?:a|the) bowl\b"
    r"|\b(?:bowls?|bowlfuls?|plates?|platefuls?)$|\bportions?\b"
    r"|\btupper(?:ware)?s? (?=[a-z])"
    r"|\b(?:lunch ?box|packed lunch|(?:kids?'? )?lunch (?=pasta|rice|noodle|couscous|quinoa)|school lunch(?:es)?)\b"
    r"|\b(?:take ?out (?:container|box)|to ?go (?:container|box)|deli container|lunch ?box) of\b"
)
_TELLS_AMOUNT = LatePattern(rf"\d|\b(?:{MEASURE})\b")
_SIZE = LatePattern(r"\b(?:small|big|large)\b")
_NOT_COOKED = LatePattern(r"\b(?:dry|dried|raw|uncooked|soak(?:ed|ing)?|flour|flakes?|frozen|tin|can|jar|bag|packet)\b")
_STATES = frozenset({"dry", "canned drained"})  # chickpeas are from a tin unless something is said
_COMES_DRY = frozenset({"rice", "pasta", "noodle", "pulse", "grain"})


def without_cooker(text: str) -> tuple[str, bool]:
    """The text without the cooker or pan that things stand in, and whether it tells that they were cooked or served.

    A pot of something is a tub as well, so that it stays in the text.
    """
    bare = " ".join(_BAKED_IN.sub(" ", text).split())
    if bare and _BAKED_IN.search(text) and not _NOT_COOKED.search(bare):
        return bare, True
    told = any(shape.search(text) for shape in (_COOKER, _A_POT, _SERVED)) and not _NOT_COOKED.search(text)
    bare = " ".join(_POT.sub(_with_its_size, _COOKER.sub(_with_its_size, text)).split())
    return bare if bare != "potful" else text, told


def _with_its_size(found: re.Match[str]) -> str:
    """A pot, small or large, where a line tells only in what a food stands; nothing where it tells how much."""
    if _TELLS_AMOUNT.search(f"{found.string[: found.start()]} {found.string[found.end() :]}"):
        return " "
    size = _SIZE.search(found[0])
    return f" {size[0]} potful " if size else " potful "


def parts_cooked(text: str, hints: frozenset[str], brackets: tuple[str, ...], lexicon: Lexicon) -> list[Part]:
    """The foods of a line in a pot or on a plate, as `parts_of`; those that come dry are read as cooked."""
    parts = parts_of(text, hints, brackets, lexicon)
    unclear = any(part.named.outcome == "ask" for part in parts)
    if "cooked" in hints or not (unclear or _all_dry(parts, lexicon)):
        return parts
    cooked = [_assumed(part) for part in parts_of(text, hints | {"cooked"}, brackets, lexicon)]
    return cooked if all(part.named.outcome == "matched" for part in cooked) else parts


def _assumed(part: Part) -> Part:
    named = part.named
    return part._replace(named=named._replace(assumed=tuple(dict.fromkeys((*named.assumed, "cooked")))))


def _all_dry(parts: list[Part], lexicon: Lexicon) -> bool:
    foods = [lexicon.tables.food_by_id[food] for part in parts for food in part.named.foods]
    named = all(part.named.outcome == "matched" for part in parts)
    return named and all(food.state in _STATES and food.kind in _COMES_DRY for food in foods)
