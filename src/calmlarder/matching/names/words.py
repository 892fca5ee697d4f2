"""Words in the form in which they are compared: lower case, no accents, singular."""

import re
import unicodedata
from functools import lru_cache

_IRREGULAR = {
    "leaves": "leaf", "loaves": "loaf", "halves": "half", "potatoes": "potato", "tomatoes": "tomato",
    "mangoes": "mango", "radishes": "radish", "peaches": "peach", "dishes": "dish", "kiwis": "kiwi",
    "chillies": "chilli", "chilies": "chili",
}  # fmt: skip
_NO_PLURALS = frozenset(
    {
        "maris", "this", "tennis", "cassis", "pastis", "basis",
        # Foods of their own in other tongues: `gatas` is milk, `gata` coconut milk.
        "gatas", "rawas", "morus", "adas", "polos", "mais", "miris", "gulas", "khas",
    }
)  # fmt: skip
# Written close to a whole number, `2½` must not become 21/2.
_FRACTION = re.compile(r"[¼-¾⅐-⅞]")
# Letters that no accent makes: NFKD leaves them as they are.
_LETTERS = str.maketrans({"ø": "o", "æ": "ae", "œ": "oe", "ł": "l", "đ": "d", "ð": "d", "ı": "i", "þ": "th"})
_WORD = re.compile(r"[^\W_]+")
SMALL = frozenset(
    {
        "of",
        "the",
        "a",
        "an",
        "and",
        "in",
        "from",
        "with",
        "some",
        "my",
        "our",
        "de",
        "di",
        "del",
        "della",
        "du",
        "des",
        "da",
    }
)


def plain(text: str) -> str:
    """Lower case, without accents, one kind of apostrophe, dash and digit, single spaces."""
    if text.isascii():
        return " ".join(text.casefold().split())
    decomposed = unicodedata.normalize("NFKD", _FRACTION.sub(r" \g<0>", text.casefold()).translate(_LETTERS))
    bare = "".join(sign for sign in decomposed if not unicodedata.combining(sign))
    # Digits of every script count as `\d`, but what looks for a certain one looks for 0 to 9.
    bare = "".join(str(unicodedata.decimal(sign, sign)) for sign in bare)
    for fancy, simple in (("’", "'"), ("‘", "'"), ("–", "-"), ("—", "-"), ("⁄", "/"), ("×", "x")):
        bare = bare.replace(fancy, simple)
    return " ".join(bare.split())


@lru_cache(maxsize=20_000)  # the same words stand in every name and line
def singular(word: str) -> str:
    """A rough singular of an English word; the same rule is used on both sides of a comparison."""
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if len(word) <= 3 or not word.endswith("s") or word.endswith(("ss", "us")) or word in _NO_PLURALS:
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("ches", "shes", "xes", "sses", "zes")):
        return word[:-2]
    return word[:-1]


def raw_words(plain_text: str) -> tuple[str, ...]:
    """The words of a plain text that carry meaning, as they are written."""
    return tuple(word for word in _WORD.findall(plain_text.replace("'", "")) if word not in SMALL)


def words_of(text: str) -> tuple[str, ...]:
    """The words that carry meaning, singular, in order."""
    return tuple(singular(word) for word in raw_words(plain(text)))
