"""One word behind two that both are kinds of it: `chicken and veg stock` is chicken stock and vegetable stock."""

import re

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import singular
from calmlarder.matching.several_foods.headings import bare_words

# What is bought by its kind, and seldom as a mixture of two: a juice, a soup or a sausage may be of both.
_HEADS = (
    r"oils?|stocks?|stock cubes?|seeds?|beans?|lentils?|peas|vinegars?|flours?|milks?|noodles?|rice|nuts|leaves"
    r"|powders?|wines?|butters?|breads?|tortillas?|sprouts|mustards?|sugars?"
)
_TWO_OF_IT = LatePattern(
    r"(?P<before>(?:\d[\d./]* ?(?:k?g|oz|lbs?)? |some |a few |bag of |bags of |jar of |half )*)"
    r"(?P<one>(?!(?:rice|butter|bread|cheese|eggs?|ham|pork|bacon|sausages?|franks|bouillon|stock)\b)"
    r"[a-z]+(?: [a-z]+)?)(?: and | n | ?[&+] ?)"
    rf"(?P<other>[a-z]+(?: [a-z]+)?) (?P<head>{_HEADS})\b"
)


def with_their_head(text: str, lexicon: Lexicon) -> str:
    """A plain text with that word behind both, where both are names of different foods then."""
    return _TWO_OF_IT.sub(lambda found: _apart(found, lexicon), text)


def _apart(found: re.Match[str], lexicon: Lexicon) -> str:
    head = found["head"]
    names = [" ".join(bare_words(f"{found[one]} {head}")) for one in ("one", "other")]
    if (
        not all(name.endswith(singular(head.split()[-1])) and name in lexicon.spelt for name in names)
        or lexicon.spelt[names[0]] == lexicon.spelt[names[1]]
    ):
        return found[0]
    whole = " ".join(bare_words(f"{found['one']} {found['other']} {head}"))
    if whole in lexicon.spelt or " ".join(bare_words(found[0])) in lexicon.spelt:
        return found[0]
    return f"{found['before']}{found['one']} {head} and {found['other']} {head}"
