"""A word that heads others: the kinds of one food behind it, what a bracket lists, and what the company tells."""

from collections.abc import Iterable

from calmlarder.matching.amounts.numbers_and_fractions import Span
from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import expanded
from calmlarder.matching.names.notes import (
    COLOURS,
    COLOURS_ELSEWHERE,
    DISH_WHEN_MADE,
    GENERIC,
    HARMLESS,
    NOTES,
    PRODUCTS,
    WITH,
)
from calmlarder.matching.names.words import SMALL, raw_words, singular
from calmlarder.matching.part import WORD, Part, name_part
from calmlarder.matching.several_foods.pieces import ENDS, MOST_PARTS, SPLIT, says_amount

_ONES = frozenset({"one", "ones"})
# Words that only say of what sort the things in a bracket behind them are.
_HEADING_WORDS = frozenset({
    "salad", "leaf", "green", "fruit", "cheese", "veg", "vegetable", "fish", "nut", "berry", "mushroom", "bag", "mix",
    "mixed", "assorted", "bowl",
})  # fmt: skip
_WHOLE_KINDS = frozenset({"fish", "cheese"})  # words for a whole kind of food: `fish (salmon)` is salmon
_DRY_GOODS = frozenset({
    "rice", "quinoa", "lentil", "bean", "chickpea", "pasta", "noodle", "couscous", "bulgur", "barley", "millet",
    "buckwheat", "pea",
})  # fmt: skip
_SEASONINGS = frozenset({"spice", "herb", "salt"})


def own_kind(piece: str) -> bool:
    """Whether a piece only says which of its kind the food before it is: `turnip (the big orange one)` is no orange."""
    words = WORD.findall(piece)
    if words and COLOURS_ELSEWHERE.issuperset(words):
        return True
    return (
        bool(words) and words[-1] in _ONES and all(word in COLOURS | HARMLESS | NOTES | SMALL | _ONES for word in words)
    )


def names_both(text: str, lexicon: Lexicon) -> bool:
    """Whether two pieces are names of which one holds the other, or that end alike: they are two foods.

    As in `onion, spring onion`; `kidney beans, black beans`.
    """
    named = [words for piece in SPLIT.split(text) if (words := bare_words(piece)) and " ".join(words) in lexicon.spelt]
    alike = any(one != other and one[-1] == other[-1] for one in named for other in named)
    return alike or any(set(one) < set(other) for one in named for other in named)


def bare_words(piece: str) -> tuple[str, ...]:
    """The words of a piece, as names have them, without its amount."""
    return expanded(singular(word) for word in raw_words(piece.strip(ENDS)) if not says_amount(word))


def dishes_left_over(pieces: list[str]) -> list[str]:
    """The pieces, with what opens the line said of dishes as well: in `leftover rice and dal` both are left over."""
    if not pieces:
        return []  # of nothing but signs and ands
    if pieces[0].startswith(("cooked ", "boiled ")):
        return [pieces[0], *(f"cooked {piece}" if _comes_dry(piece) else piece for piece in pieces[1:])]
    if not pieces[0].startswith("leftover"):
        return pieces
    if len(pieces) == 2 and not set(map(singular, WORD.findall(pieces[1]))) & FITS.keys():
        both = [word for piece in pieces for word in WORD.findall(piece)]
        if not any(map(says_amount, both)):
            return [pieces[0], f"leftover {pieces[1]}"]  # one meal: `leftover rice and chicken`
    return [
        piece if at == 0 or DISH_WHEN_MADE.isdisjoint(map(singular, WORD.findall(piece))) else f"leftover {piece}"
        for at, piece in enumerate(pieces)
    ]


def _comes_dry(piece: str) -> bool:
    """Whether a piece is but the name of what is cooked from dry, as in `cooked quinoa and lentils`."""
    words = [singular(word) for word in WORD.findall(piece.partition(" in ")[0])]
    return bool(words) and words[-1] in _DRY_GOODS and not any(map(says_amount, words)) and not set(words) & FITS.keys()


def without_heading(parts: list[Part], hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The parts without a first one that only heads the second: `lettuce, romaine` is one food.

    It does where it names the same food, or both words together name the second, and no amount is told of the first.
    """
    if len(parts) != 2 or parts[0].amount.how != "none" or len(parts[0].said.split()) != 1:
        return parts
    heading, kind = parts
    if heading.named.foods == kind.named.foods:
        return [kind]  # `cheese, grated, cheddar`
    if heading.said in kind.said.split():
        return parts
    both = name_part(f"{kind.said} {heading.said}", hints, lexicon, whole_name=True).named
    words = {heading.said, *kind.said.split()}
    is_one = (
        both.outcome == "matched"
        and both.foods == kind.named.foods
        and (both.takes >= words or (heading.said in _WHOLE_KINDS and _kind(heading, lexicon) == _kind(kind, lexicon)))
    )
    return [kind] if is_one else parts


def without_head_of_bracket(parts: list[Part], bracket: str) -> list[Part]:
    """The parts of a line with a bracket, without a first one that only heads what is listed there.

    As in `salad stuff (lettuce, cucumber, tomatoes)` and `bag of leaves (rocket, spinach)`; these share the bag.
    """
    if len(parts) < 3:
        return parts
    head, *kinds = parts
    if head.named.foods in [part.named.foods for part in kinds]:
        return kinds
    told = [piece for piece in SPLIT.split(bracket) if piece.strip(ENDS)]
    if len(told) != len(kinds) or not {singular(word) for word in head.said.split()} <= _HEADING_WORDS:
        return parts
    if head.amount.how == "none" or any(part.amount.how != "none" for part in kinds):
        return kinds
    each = head.amount.number.times(Span(*[1 / len(kinds)] * 3))
    return [part._replace(amount=head.amount._replace(number=each)) for part in kinds]


def _kind(part: Part, lexicon: Lexicon) -> str:
    return lexicon.tables.food_by_id[part.named.foods[0]].kind


_AMONG_SPICES = {
    "pepper": "black pepper",
    "coriander": "ground coriander",
    "ginger": "ground ginger",
    "mustard": "mustard seeds",
    "chilli": "dried chilli",
    "chili": "dried chilli",
    "chillies": "dried chilli",
}
_DRY = frozenset({"spice", "salt"})
_INDIAN = frozenset({"curry-leaves", "asafoetida", "fenugreek-seed"})  # beside them mustard is its seeds
_BESIDE_FRESH = frozenset({"salt", "pepper-black", "pepper-white", "bay-leaf"})
_COME_DRIED = frozenset({"thyme", "oregano", "rosemary", "sage", "marjoram", "dill", "tarragon", "mint"})


def pepper_of_spices(parts: list[Part], hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The parts, where `pepper` among nothing but seasonings is the spice: `turmeric, chilli powder, pepper`.

    So are chilli, coriander, ginger and mustard, beside nothing but dry spices: `mustard, cumin, asafoetida`.
    """
    foods = lexicon.tables.food_by_id
    others = [part for part in parts if part.said not in _AMONG_SPICES]
    dry = all(foods[food].kind in _DRY for part in others for food in part.named.foods)
    few = len(others) < 2 and not (others and len(parts) > 2)
    if few or any(foods[food].kind not in _SEASONINGS for part in others for food in part.named.foods):
        return parts
    only_salted = {food for part in others for food in part.named.foods} <= _BESIDE_FRESH  # beside mustard in its jar
    is_indian = any(food in _INDIAN for part in others for food in part.named.foods)
    return [
        part
        if part.said not in _AMONG_SPICES
        or part.amount.how != "none"
        or not ((dry and not only_salted) or part.said == "pepper" or (part.said == "mustard" and is_indian))
        else part._replace(named=name_part(_AMONG_SPICES[part.said], hints, lexicon).named)
        for part in parts
    ]


def herbs_of_spices(parts: list[Part], hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The parts, where a bare herb beside nothing but seasonings, a ground spice among them, is dried.

    As in `paprika n thyme`; salt, pepper and bay stand beside fresh ones as well.
    """
    foods = lexicon.tables.food_by_id
    kinds = [foods[food].kind for part in parts for food in part.named.foods]
    ground = any(foods[one].kind == "spice" and one not in _BESIDE_FRESH for part in parts for one in part.named.foods)
    if not ground or not _SEASONINGS.issuperset(kinds):
        return parts
    return [
        part._replace(named=name_part(f"dried {part.said}", hints, lexicon).named)
        if part.said in _COME_DRIED and part.amount.how == "none" and len(part.words.split()) == 0
        else part
        for part in parts
    ]


def of_one_heading(heading: str, behind: list[str], hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """Kinds of what a heading names: `seeds - pumpkin, sunflower`, `cheese: feta, halloumi`."""
    pieces = [piece for text in behind for piece in SPLIT.split(text) if piece.strip(ENDS)]
    if not 2 <= len(pieces) <= MOST_PARTS or singular(heading.strip(ENDS)) not in GENERIC | PRODUCTS:
        return []
    parts = []
    for piece in pieces:
        both = name_part(f"{piece} {heading}", hints, lexicon, whole_name=True)
        alone = name_part(piece, hints, lexicon, whole_name=True)
        parts.append(both if both.named.outcome == "matched" else alone)
    return parts if all(part.named.outcome == "matched" for part in parts) else []


def listed(brackets: Iterable[str], hints: frozenset[str], text: str, lexicon: Lexicon) -> list[Part]:
    """The foods that a bracket lists, or that stand behind a colon, in the state that the line tells.

    As in `leftover roast veg (carrots parsnips)`.
    """
    told = hints | (frozenset(singular(word) for word in WORD.findall(text)) & frozenset(FITS))
    for inside in brackets:
        pieces = [piece for piece in SPLIT.split(inside) if piece.strip(ENDS)]
        if len(pieces) == 1:
            pieces = inside.split()
        if not 2 <= len(pieces) <= MOST_PARTS or pieces[0].split()[0] in WITH:
            continue
        parts = [name_part(piece, told, lexicon, whole_name=True) for piece in pieces]
        if len(parts) == 2 and parts[1].said in PRODUCTS:
            continue  # mustard oil is no mustard and no oil
        if all(part.named.outcome == "matched" for part in parts):
            return parts
    return []
