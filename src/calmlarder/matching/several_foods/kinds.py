"""Several kinds of one food on a line."""

import re

from calmlarder.matching.amounts.measures import UNIT
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS
from calmlarder.matching.conditions.condition_words import is_condition, without_marks
from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import expanded
from calmlarder.matching.names.notes import HARMLESS, NOTES
from calmlarder.matching.names.plain_words import PLAIN_WORDS
from calmlarder.matching.names.words import SMALL, raw_words, singular
from calmlarder.matching.part import WORD, Part, name_part
from calmlarder.matching.several_foods.headings import bare_words
from calmlarder.matching.several_foods.pieces import COLON, ENDS, MOST_PARTS, SPLIT, says_amount

# Words for a kind of a food, of which one line may name several; those of one row tell the same of it.
_KINDS = (
    frozenset({"red", "green", "yellow", "orange", "white", "brown", "black", "ripe", "unripe"}),
    frozenset({"firm", "silken", "smoked", "plain"}),
    frozenset({"dry", "dried", "canned", "tinned", "cooked", "fresh", "frozen", "raw"}),
)
_ONE_AFTER_THE_OTHER = frozenset({"cooked", "raw", "fresh", "frozen"})
_KIND_WORDS = "|".join(sorted(word for kinds in _KINDS for word in kinds))
KIND = LatePattern(rf"\b(?:{_KIND_WORDS})\b")
_BEFORE_KIND = LatePattern(
    rf"(?<=[a-z])(?<!\bv)(?<!\bvery)(?<!\bhalf) "
    rf"(?=(?:v |very )?(?:(?:\d+(?:/\d)?|half) (?:v |very )?[a-z]|(?:{_KIND_WORDS}) \d))"
)
_APIECE = LatePattern(r"\b(\d{1,2}|one) (?:ea|each|of each)\b")
_BEFORE_EACH = LatePattern(rf"(?<!\d )\b(?:{_KIND_WORDS})\b")
_COUNT_OF_KIND = LatePattern(rf"\b(one|two|three|four) (?=(?:{_KIND_WORDS})\b)")
_OF_SO_MANY = LatePattern(
    rf"(?P<before>[a-z ]*?) ?x? ?(?P<all>\d{{1,2}}) ?x? ?(?P<behind>[a-z ]*?) ?, ?(?P<some>\d{{1,2}}) "
    rf"(?:is |are |of them |one )*(?P<kind>{_KIND_WORDS})$"
)
_INITIALS = {"r": "red", "g": "green", "y": "yellow", "o": "orange"}
_BY_INITIALS = LatePattern(r"(?<![\w/])([rgyo](?:/[rgyo])+)(?![\w/])")
# `peppers red green yellow`: one of each.
_KINDS_BEHIND = LatePattern(
    rf"(?:(?P<count>\d{{1,2}}) )?(?P<food>[a-z][a-z ]*?)s?,? "
    rf"(?P<kinds>(?:(?:{_KIND_WORDS})(?: ?[,/&+] ?| and | n | ))+(?:{_KIND_WORDS}))$"
)
_FILLING = frozenset({"one", "ones", "too", "also", "x", "as", "well", "v", "very", "still", "each", "ea", "is", "are"})


_COUNTED = LatePattern(rf"(?<![\d./])x? ?(\d{{1,2}})(?![\d./]| ?(?:{UNIT})\b)")
_BESIDE = HARMLESS | NOTES | PLAIN_WORDS  # what may stand beside a kind and changes nothing


# What stands before a food and tells no kind of it: `microwave rice (basmati)`; a pilot bread is one.
_SAYS_NO_KIND = HARMLESS | NOTES | FITS.keys() | {"quick", "instant", "pouch"}
_BRACKET = LatePattern(r"\s*\(([^()]*)\)")
_SUCH_ONES = LatePattern(r"([^,;&+()]*?[a-z\d]),? (?:the )?([a-z]+) (?:ones?|kind|type|sort)")
_CHILD = frozenset({"baby", "toddler", "kid", "child"})
_COMES_YOUNG = frozenset({
    "potato", "root", "leaf", "salad-leaf", "brassica", "sweetcorn", "fruit-vegetable", "mushroom", "stem", "tomato",
})  # fmt: skip
_LONG_BRACKET = 4  # words: a longer one tells more than a kind; ours


def beside_its_food(text: str, lexicon: Lexicon) -> str:
    """A plain text with a bracket that only tells a kind beside the food it stands behind.

    It is said of that one: `rice (brown), lentils`; `milk (oat), peppers (red x1)`; `potatoes (baby)` are no baby's.
    """
    if "(" not in text:
        return text
    text = _BRACKET.sub(lambda found: f"({_in_one_breath(found[1])})", text)
    while places := [
        (found, at) for found in _BRACKET.finditer(text) if (at := _names_before(found, text, lexicon)) >= 0
    ]:
        found, at = places[0]
        text = f"{text[:at]}{found[1]} {text[at : found.start()]}{text[found.end() :]}"
    if len([piece for piece in SPLIT.split(_BRACKET.sub(" ", text)) if piece.strip(ENDS)]) < 2:
        return text
    return _BRACKET.sub(lambda found: f" {found[1]}" if _is_one_kind(found[1]) else found[0], text)


def _in_one_breath(inside: str) -> str:
    """A bracket that tells a colour and a state without the comma between them; two colours are two kinds."""
    words = [piece.strip(ENDS) for piece in inside.split(",")]
    rows = [next((n for n, kinds in enumerate(_KINDS) if word in kinds), None) for word in words]
    return " ".join(words) if None not in rows and len(set(rows)) == len(rows) > 1 else inside


def of_that_kind(text: str, lexicon: Lexicon) -> str:
    """A plain text with what `onion ones` tells before the food it stands behind, where that is a name."""
    found = _SUCH_ONES.fullmatch(text)
    if not found:
        return text
    words = [word for word in bare_words(found[1]) if not word[0].isdigit()]
    return f"{found[2]} {found[1]}" if " ".join((found[2], *words)) in lexicon.spelt else text


def _names_before(found: re.Match[str], text: str, lexicon: Lexicon) -> int:
    """Where the piece begins with which a bracket behind it makes a name (`milk (oat)`); -1 where it makes none."""
    inside = expanded(singular(word) for word in raw_words(found[1]) if not word[0].isdigit())
    at = max((split.end() for split in SPLIT.finditer(text[: found.start()])), default=0)
    name = " ".join((*inside, *bare_words(text[at : found.start()])))
    if len(SPLIT.split(found[1])) > 1 or re.search(r"\d", found[1]):
        return -1
    if len(inside) > 1 and all(KIND.fullmatch(word) or word in FITS for word in inside):
        return at  # `rice (brown, cooked)`
    told = [word for word in inside if word not in HARMLESS]
    *ahead, head = bare_words(text[at : found.start()]) or [""]
    named = " ".join((*told, head)) in lexicon.spelt and _SAYS_NO_KIND.issuperset(ahead)
    if told and ahead and named and not set(told) <= FITS.keys():
        return at  # `microwave rice 250g (plain basmati)`
    if _CHILD & set(inside) and name in lexicon.spelt:
        kind = lexicon.tables.food_by_id[lexicon.spelt[name]].kind
        return at if kind in _COMES_YOUNG else -1  # baby potatoes, and a baby's milk
    return at if name in lexicon.spelt and 0 < len(inside) < _LONG_BRACKET and not set(inside) <= FITS.keys() else -1


def _is_one_kind(inside: str) -> bool:
    return len(SPLIT.split(inside)) == 1 and _kind_only(inside)


def kinds_of_one(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """Several kinds of one food: `firm tofu 400g, silken 1`, `bell peppers 1 red 1 green`, `chickpeas dry, canned x4`.

    The first piece names the food; every other one says but another kind of it, with its amount.
    """
    text = _BY_INITIALS.sub(lambda found: " , ".join(_INITIALS[one] for one in found[1].split("/")), text)
    apiece = _APIECE.search(text)
    if apiece:
        text = _BEFORE_EACH.sub(rf" {apiece[1]} \g<0>", f"{text[: apiece.start()]} {text[apiece.end() :]}")
    text = _COUNT_OF_KIND.sub(lambda found: f"{WHOLE_WORDS[found[1]]} ", text)
    behind = _KINDS_BEHIND.fullmatch(text)
    one_sort = behind is not None and any(
        set(KIND.findall(behind["kinds"])) <= kinds and not set(KIND.findall(behind["kinds"])) <= _ONE_AFTER_THE_OTHER
        for kinds in _KINDS
    )
    if behind and one_sort and not KIND.search(behind["food"]):
        kinds_told = KIND.findall(behind["kinds"])
        each = f"{int(behind['count']) / len(kinds_told):g} " if behind["count"] else ""
        parts = [name_part(f"{each}{kind} {behind['food']}", hints, lexicon) for kind in kinds_told]
        foods = {part.named.foods for part in parts}
        if all(part.named.outcome == "matched" for part in parts) and len(foods) == len(parts):
            return parts
    some = _OF_SO_MANY.match(text)
    if some and (parts := _some_of_them(some, hints, lexicon)):
        return parts
    told = KIND.findall(text)
    several = [set(told) & kinds for kinds in _KINDS if sum(word in kinds for word in told) > 1]
    if not several:
        return []
    after = (words <= _ONE_AFTER_THE_OTHER or "frozen" in words for words in several)
    if all(after) and len(re.findall(r"\d+", text)) < 2:
        return []  # `brown rice (cooked, frozen)` is one thing, and so are `dried apricots, frozen`
    for split in (SPLIT, _BEFORE_KIND):
        pieces = [piece for one in split.split(text) for piece in COLON.split(one) if piece.strip(ENDS)]
        pieces = _with_their_states(pieces)
        if split is _BEFORE_KIND:
            pieces = [piece for one in pieces for piece in SPLIT.split(one) if piece.strip(ENDS)]
        if not 2 <= len(pieces) <= MOST_PARTS:
            continue
        if all(map(_kind_only, pieces[:-1])):  # `2 red 1 yellow pepper`
            head = " ".join(word for word in WORD.findall(KIND.sub(" ", pieces[-1])) if not says_amount(word))
            pieces = [head, *pieces[:-1], pieces[-1].replace(head, " ")] if head else pieces
        if not all(map(_kind_only, pieces[1:])):
            continue
        if not any(all(kinds & set(KIND.findall(piece)) for piece in pieces[1:]) for kinds in _KINDS):
            continue
        head = " ".join(word for word in WORD.findall(KIND.sub(" ", pieces[0])) if not says_amount(word))
        if not head:
            continue
        first = [pieces[0]] if KIND.search(pieces[0]) else []
        texts = [*first, *(f"{_shared(pieces)}{piece} {head}" for piece in pieces[1:])]
        parts = [name_part(one, hints, lexicon) for one in texts]
        foods = {part.named.foods for part in parts}
        if all(part.named.outcome == "matched" for part in parts) and len(foods) == len(parts) > 1:
            return parts
    return []


def _with_their_states(pieces: list[str]) -> list[str]:
    """The pieces, with one that only says a state beside the one before it: `half a red one, wrinkly`."""
    told: list[str] = []
    for piece in pieces:
        if told and all(map(is_condition, WORD.findall(without_marks(piece)))):
            told[-1] = f"{told[-1]} {piece}"
        else:
            told.append(piece)
    return told


def _shared(pieces: list[str]) -> str:
    """How many there are of each kind, where only the food has a number: `peppers 2 (red and green)`."""
    found = _COUNTED.search(pieces[0])
    behind = pieces[1:]
    if not found or KIND.search(pieces[0]) or any(re.search(r"\d|half", piece) for piece in behind):
        return ""
    return f"{int(found[1]) / len(behind):g} " if int(found[1]) >= len(behind) else ""


def _some_of_them(found: re.Match[str], hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """So many of a food of which some are of another kind: `tofu x2, 1 silken` is one of each."""
    head, kind = f"{found['before']} {found['behind']}", found["kind"]
    rest = int(found["all"]) - int(found["some"])
    if rest < 1 or KIND.search(head):
        return []
    parts = [name_part(text, hints, lexicon) for text in (f"{rest} {head}", f"{found['some']} {kind} {head}")]
    foods = {part.named.foods for part in parts}
    return parts if all(part.named.outcome == "matched" for part in parts) and len(foods) == 2 else []


def _kind_only(piece: str) -> bool:
    """Whether a piece says a kind and an amount, and nothing else."""
    words = WORD.findall(KIND.sub(" ", piece))
    return bool(KIND.search(piece)) and all(
        says_amount(word) or word in SMALL | _FILLING or singular(word) in _BESIDE or is_condition(word)
        for word in words
    )
