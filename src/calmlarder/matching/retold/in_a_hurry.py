"""What people leave out when they type in a hurry: small words round a vessel, a wrapping, a look, a glut."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import HARMLESS, NOTES
from calmlarder.matching.names.words import singular
from calmlarder.matching.owners.owner_words import is_name

_END = r"(?=\s*(?:$|[,;)]| (?:from|since|made|opened?|cooked|x ?\d|\d)))"
_OF_WHAT = r"(?:steel|metal|plastic|glass|pyrex|ceramic|enamel|foil|lidded|little|small|big|old|blue|red|clear)"
# What it lies in, where that measures nothing: `soup in flask`; a steel bowl is a bowl.
_VESSEL_OF = LatePattern(
    rf"\bin (?:an? |the |my |our )?(?:{_OF_WHAT} )+(?=(?:bowl|box|tub|tray|dish|container|jar|pot)\b)"
)
_VESSEL_BEHIND = LatePattern(rf"(?<=[a-z\d])[,;(-]+ ?(?:{_OF_WHAT} )+(?:tin|dabba|container|box|lid)\)?(?=\s*$)")
_IN_VESSEL = LatePattern(rf"\bin (?:an? |the |my |our )?(?:{_OF_WHAT} )*(?:flask|thermos|jug|tiffin|dabba){_END}")
# So much as a tub that ice cream once came in, where another food is named.
_ICE_CREAM_TUB = LatePattern(
    r"\b(?:old |empty |clean |big |in )*ice[ -]?cream (?:tub|box|bowl|container|pot|dabba|bucket)(?P<s>(?:e?s)?)\b"
)
_COLD_SWEET = frozenset({"ice", "cream", "icecream", "vanilla", "chocolate", "strawberry", "mint", "caramel", "frozen"})
_IN_BAGS_OF = LatePattern(
    r"[,;]? ?\b(?:split |portioned |divided |packed |done |all )*(?:in|into) (?:\d |small |little |separate |freezer )*"
    r"(?:bags?|packs?|lots|batches|twos|threes|pairs) of (?:\d|one|two|three|four)\b",
    needs=(" of ",),
)
# Whose it is, where somebody is to be asked: `tofu - hemi's - ask first`.
_ASK_FIRST = LatePattern(
    r"[,;(-] ?([a-z]{3,}?)(?:'?s)?,? ?[,;(-]+ ?(?:so )?ask (?:me |him |her |them )?(?:first|before)\b\)?"
)
# Film round what is left of a thing, without the word that tells so: `half red onion cling film`.
_FILM = LatePattern(
    r"^(?!.*\b(?:rolls?|box|some|spare|more|new|bit|end|of|our|my|the|need|buy)\b)"
    r"(.*\b(?!half\b|quarter\b|third\b|big\b|small\b)[a-z]{3,}\b.*?),? (?:cling ?film(?:ed)?|cling ?wrap(?:ped)?)$"
)
# A dish, and neither salt nor pepper beside it.
_SALT_N_PEPPER = LatePattern(r"\bsalt ?(?:n|and|&|\+) ?pep+er (?=(?:squid|calamari)\b)")
_ON_TURN = LatePattern(r"\bon turn\b")
_DRY_LOOKING = LatePattern(r"\bdry[ -]looking\b")
_DODGY_LOOKING = LatePattern(r"\b(?:off|suspect|sketchy|questionable|grim|rough)[ -]looking\b")
# How many there are is told by the number beside it.
_GLUT = LatePattern(r"[,;(-]? ?\b(?:an? )?glut\b(?: of)?\)?")
_WINDFALL = LatePattern(r"\bwindfalls?\b")
_FALLS = LatePattern(r"\b(?:pears?|plums?|damsons?|quinces?|apples?|walnuts?|chestnuts?|bramleys?|cookers?)\b")
_NUMBER = LatePattern(r"\d")
_ONE_END = LatePattern(r" ?\b(?:at |on )?(?:one|both|the|other) ends?(?=\s*(?:$|[,;)]))")
_STATE_BEFORE = LatePattern(
    r"\b(?:soft|soggy|watery|slimy|mushy|squishy|brown|limp|dry|mouldy|wet|rubbery) (?:at |on )?(?:one|both|the) end"
)
# A plate of two things that were cooked: `bacon & cabbage leftovers`.
_TWO_LEFT_OVER = LatePattern(
    r"^([a-z]+(?: [a-z]+)?) ?(?:&|\+|and\b|n\b) ?([a-z]+) left ?overs?\b"
    r"(?=\s*(?:$|[,;(]| from| mon| tue| wed| thu| fri| sat| sun| yest| last))"
)
# What a mix is said to hold, where that is what such a mix holds.
_MIX_OF = LatePattern(
    r"^((?:\d[\w.]* |half |bag |of |pack |frozen )*)(mixed|mix|stir[ -]?fry) (?:veg|vegetables?|veggies)(?: mix)?"
    r"((?: (?:frozen|bag|pack|packet|half|open(?:ed)?))*)[ ,:(-]+(?:with |of )?"
    r"(?:(?:baby |green |sweet ?)?(?:carrots?|peas?|corn|sweetcorn|beans?)(?: ?[,/&+] ?| and | n | |\)|$)){2,}$"
)


def in_a_hurry(text: str, lexicon: Lexicon) -> str:
    """A plain line with such words put plainly; all others stay as they are."""
    if " in " in text:
        text = _IN_VESSEL.sub(" ", _VESSEL_OF.sub("in ", text))
    text = _VESSEL_BEHIND.sub("", _IN_BAGS_OF.sub(" ", text))
    if (asked := _ASK_FIRST.search(text)) and is_name(asked[1], lexicon):
        text = f"{text[: asked.start()]} ({asked[1]}'s){text[asked.end() :]}"
    if "ice" in text and (found := _ICE_CREAM_TUB.search(text)):
        others = {singular(word) for word in re.findall(r"[a-z]+", text[: found.start()] + text[found.end() :])}
        if not (others - _COLD_SWEET - NOTES - HARMLESS).isdisjoint(lexicon.alone):
            text = f"{text[: found.start()]}tub{'s' if found['s'] else ''}{text[found.end() :]}"
    text = _SALT_N_PEPPER.sub("battered ", text) if "salt" in text else text
    text = _FILM.sub(r"\1", text) if "cling" in text else text
    if "looking" in text:
        text = _DODGY_LOOKING.sub("dodgy", _DRY_LOOKING.sub("a bit dry", text))
    text = _ON_TURN.sub("on the turn", text) if "on turn" in text else text
    text = _GLUT.sub(" ", text) if "glut" in text and _NUMBER.search(text) else text
    if "windfall" in text and _FALLS.search(text):
        text = _WINDFALL.sub(" ", text)
    text = _ONE_END.sub("", text) if " end" in text and _STATE_BEFORE.search(text) else text
    if "left" in text:
        text = _TWO_LEFT_OVER.sub(lambda found: _both_left_over(found[0], found[1], found[2], lexicon), text)
    return _MIX_OF.sub(_mix_alone, text) if "mix" in text or "fry" in text else text


def _mix_alone(found: re.Match[str]) -> str:
    """A mix without what it holds; of carrots, peas, maize and beans it is the frozen one."""
    mix = "stir fry vegetables" if "fry" in found[2] else "frozen mixed vegetables"
    return f"{found[1]}{mix}{found[3]}"


def _both_left_over(whole: str, one: str, other: str, lexicon: Lexicon) -> str:
    """Two foods, each left over; as it stands where both together are a name, or one of them is none."""
    names = [" ".join(map(singular, name.split())) for name in (one, other)]
    if any(joint.join(names) in lexicon.spelt for joint in (" and ", " n ", " ")):
        return whole
    return f"leftover {one}, leftover {other}" if all(name in lexicon.spelt for name in names) else whole
