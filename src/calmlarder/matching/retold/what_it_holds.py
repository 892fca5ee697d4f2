"""What a thing holds or is free of, said so that its onion and garlic are read: `stew (onion inside)`, `gf`."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.rewriting import Rewrite

# What a dish holds, told in a bracket: `stew (onion inside)`.
_OF_A_DISH = LatePattern(
    r"\b(?:soup|stew|curry|chill?i|sauce|bol\w*|ragu|stir|lasagne|pie|dh?al|daal|casserole|tagine|gravy|stock|broth"
    r"|sausages?|burgers?|meatballs?|hummus|salsa|dip|mix|filling|stuffing|risotto|pasta|veg"
    r"|snags?|links?|lingui[cç]a|marinara|merguez|bratwurst|bangers?|franks|hot ?dogs?|crackers|bagels?|bread|naan"
    r"|focaccia|falafels?|koft[ae]|kebabs?|paste|relish|chutney|pickle|dressing|mayo|dip|spread|passata|ketchup|crisps"
    r"|paneer|seitan|tofu|puff|roll|rolls|refried\w*|refryed|powder|seasoning|granules|cubes?|pesto|wings|nuggets|kievs?|rice)\b"
    r"|\b(?:left ?overs?|home ?made|made|takeaway|take ?out|cooked)\b"
    r"| (?:inside|in it|in there)\s*\)"
)
_SAYS_SO = LatePattern(
    r"\(\s*(?:it )?(?:has|got|contains?|made with) ([a-z]+(?: [a-z]+)?)(?: (?:in|inside))?(?: it)?\s*\)"
)
# `palak (onion garlic wala)`: no things of their own.
_MADE_WITH = LatePattern(
    r"\(\s*(?:with |has |in )?((?:onions?|garlic)(?: ?(?:and|&|\+|/|-)? ?(?:onions?|garlic))?)"
    r" (?:wala|waala|wali|waali|tadka|based|heavy|type|version|one)\s*\)"
)
_ONLY_A_VESSEL = LatePattern(
    r"^(?:the |a |an |my |big |small |old )*(?:pot|tub|box|bowl|tupperware|container|dish|thing|jar|bag|pan)\b(?! of)"
)
_SAYS = (
    r"(?:check o?,? ?)?(?:i think )?(?:(?:it|which|they|i|we|pack|packet|label|tin|jar) )?"
    r"(?:has|have|gets?|got|contains?|with|w/?|some|prob(?:ably|s)?|maybe|might|may|could|must"
    r"|a bit of|bit of|sure|i bet|there'?s|made (?:it |them )?(?:with|w/)|says?|lists?"
    r"|check(?:ed)?,?|full of|loads of|plenty)"
)
_WHEREIN = (
    r"(?: (?:in|inside|in it|on it|in there|in them|in (?:this|that|these|those)(?: ones?)?"
    r"|on (?:the )?(?:pack|packet|label|tin|jar|back)))"
)
_HELD = LatePattern(
    rf"\(\s*(?:(?:beef|pork|lamb|chicken|turkey|meat),? )?(?:{_SAYS} )*"
    r"((?:onions?|garlic)(?: ?(?:and|&|\+|/|,)? ?(?:onions?|garlic))?)(?: (?:powder|granules|salt|pdr|pwdr|stuff))?"
    rf"{_WHEREIN}?(?: ?(?:and|&|\+|,) ?(?:wheat|gluten|stuff|spices?|salt|herbs?|all sorts|etc))?"
    r"(?:,? (?:i checked|sadly|of course|obviously|obvs|god help me|unfortunately|sorry))?\s*\)"
)
# What a marinade is made of is no other food of the line.
_MAY_BE_ALLIUM = LatePattern(
    r"onion|garlic|shallot|leek|chive|bbq|barbecue|tikka|tandoori|jerk|teriyaki|sauce|paste|spice|curry|mix|herb|rub|harissa"
)
_MARINATED = LatePattern(r"marinat")
_MARINADE = LatePattern(r"\s*\((?:in |with )?([a-z][a-z ,&+]*)\)")
_FREE_OF = LatePattern(r"\b([gld])/f\b")
_LACTOSE = LatePattern(r"\blact(?:o|os|ose)?\.? ?-?(?:free|fr)\b")
_LOW_FODMAP = LatePattern(r"\blo(?:w)?[- ]?fo(?:d ?map|d)?\b")
# Free of onion, and no onion.
_FREE_FROM = LatePattern(r"\b(onion|garlic)s?(?: (?:and|&|or|/) ?(onion|garlic)s?)?[ -]free\b ?([^,;&+()]*)")
# `not lactose free` and `isn't gf` are the ordinary thing, with all that it holds.
_NOT_FREE = LatePattern(
    r"[ ,(-]+(?:not|isn'?t|ain'?t) (?:the |a |an )?"
    r"(?:(?:lactose|lacto|gluten|dairy|milk|wheat)[ -]?free|lf|gf|df|vegan)"
    r"(?: (?:one|ones|kind|sort|stuff|type))?\b\)?"
)


def _marinade(found: re.Match[str]) -> str:
    return f" with {found[1]} " if _MAY_BE_ALLIUM.search(found[1]) else " "


def _denied_behind(found: re.Match[str]) -> str:
    """`garlic free pesto` is pesto without garlic."""
    lacking = f"{found[1]} or {found[2]}" if found[2] else found[1]
    return f"{found[3].rstrip()} without {lacking} "


def _held_plainly(found: re.Match[str]) -> str:
    """What a bracket says a thing holds, behind `with`; a shallot is an onion there."""
    return f" with {re.sub(r'shallots?', 'onion', found[1])}"


HELD = (
    Rewrite(_MADE_WITH, lambda found: f" with {' or '.join(found[1].split())} "),
    Rewrite(_HELD, r" with \1", where=_OF_A_DISH),
    Rewrite(_SAYS_SO, _held_plainly, unless=_ONLY_A_VESSEL),
    Rewrite(_FREE_OF, r"\1f"),
    Rewrite(_LACTOSE, "lactose free"),
    Rewrite(_MARINADE, _marinade, where=_MARINATED),
    Rewrite(_LOW_FODMAP, "low fodmap"),
)
FREE_FROM = (
    Rewrite(_NOT_FREE, " "),
    Rewrite(_FREE_FROM, _denied_behind),
)
