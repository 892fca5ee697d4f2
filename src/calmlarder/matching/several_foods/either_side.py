"""What stands on either side of a sign between two names: two foods, or a food and which sort of it."""

import re

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import expanded
from calmlarder.matching.names.words import singular
from calmlarder.matching.part import WORD, Part
from calmlarder.matching.several_foods.headings import bare_words
from calmlarder.matching.several_foods.pieces import ENDS, SPLIT, says_amount

# What is listed by its sort behind a comma, whatever food the sort is: `jam, cherry`, `stock, chicken`.
_BY_SORT = frozenset({
    "jam", "marmalade", "juice", "chutney", "cordial", "squash", "hummus", "houmous", "soup", "sauce", "crisp",
    "pesto", "mustard", "tea", "stock", "broth", "mayonnaise", "mayo", "dressing", "pie", "cake", "biscuit",
    "cracker", "sausage", "burger", "curry", "stew", "steak", "mince", "relish", "salsa", "ketchup", "cereal",
    "noodle", "vinegar", "gnocchi", "sorbet", "smoothie", "jelly", "syrup", "dip", "spread", "paste", "puree",
    "compote", "gravy", "ravioli", "bean", "lentil", "powder", "seed", "extract", "risotto", "quiche", "pizza",
    "sandwich", "wrap", "crumble", "tart",
})  # fmt: skip
# And what only some kinds of food are a sort of: almond milk and rice milk, and no coffee milk or milk and butter.
_PLANTS = frozenset({"nut", "seed", "grain", "rice", "pulse", "soya", "fruit", "flour"})
_SORTS = {
    "milk": _PLANTS - {"rice"}, "drink": _PLANTS, "butter": frozenset({"nut", "seed"}),
    "flour": _PLANTS | {"potato", "root"},
    "pasta": frozenset({"grain", "rice", "pulse"}), "penne": frozenset({"grain", "rice", "pulse"}),
    "spaghetti": frozenset({"grain", "rice", "pulse"}), "macaroni": frozenset({"grain", "rice", "pulse"}),
    "oil": frozenset({"nut", "seed", "olive", "sweetcorn"}), "yoghurt": _PLANTS | {"plant-drink"},
    "yogurt": _PLANTS | {"plant-drink"}, "cream": frozenset({"nut", "grain", "soya"}), "cheese": frozenset({"cheese"}),
    "tomato": frozenset({"fruit", "meat"}), "bread": frozenset({"bread", "wrap"}),
}  # fmt: skip
_NO_ALLIUM_IN_IT = frozenset({"oil", "salad", "milk", "egg", "rice", "pasta"})
# What comes in orange, so that the word behind a comma is its colour.
_ORANGE_KINDS = frozenset({"pepper", "squash", "cheese"})
_ORANGE_TOO = frozenset({"sweet potato", "turnip", "carrot", "melon", "lentil", "cauliflower", "chilli", "tomato"})


_GROWS = frozenset({"root", "leaf", "salad-leaf", "herb", "brassica", "fruit-vegetable", "allium", "tomato", "potato"})


def turned_back(text: str, lexicon: Lexicon) -> str:
    """The text with a sort before its food where a comma turns them round and both are one name: `rice, brown`."""
    head, _, rest = text.partition(",")
    sort, comma, behind = rest.partition(",")
    food, which = " ".join(bare_words(head)), " ".join(expanded(map(singular, WORD.findall(sort))))
    both = lexicon.spelt.get(f"{which} {food}")
    is_name = (
        food in lexicon.spelt
        and both is not None
        and (which not in lexicon.spelt or _is_one_of_its_kind(which, food, lexicon))
    )
    return f"{sort.strip()} {head}{comma}{behind}" if which and is_name else text


def _is_one_of_its_kind(which: str, food: str, lexicon: Lexicon) -> bool:
    """Whether a word by itself is a sort of what grows before it, and names it alone as well: `cabbage, savoy`."""
    sort, head = (lexicon.tables.food_by_id[lexicon.spelt[name]] for name in (which, food))
    return sort.id == lexicon.spelt[f"{which} {food}"] and head.kind == sort.kind and head.kind in _GROWS


def two_foods(text: str, lexicon: Lexicon) -> list[str]:
    """The two pieces of a line with a comma between two foods of which neither is a sort of the other; else nothing.

    As in `plum, tomato` and `milk, butter`, which together would name a third.
    """
    pieces = [piece for piece in text.split(",") if piece.strip(ENDS)]
    if len(pieces) != 2 or len([one for one in SPLIT.split(text) if one.strip(ENDS)]) != 2:
        return []
    names = [" ".join(bare_words(piece)) for piece in pieces]
    if not all(name in lexicon.spelt and name not in FITS for name in names) or names[0] == names[1]:
        return []
    both_ways = ((pieces, names), (pieces[::-1], names[::-1]))
    return [] if any(_is_turned_round(two, both, lexicon) for two, both in both_ways) else pieces


def each_a_food(whole: Part, text: str, lexicon: Lexicon) -> bool:
    """Whether each piece is a food of its own: `thumb ginger, 2 cloves garlic` and `ginger, garlic` are no paste.

    What a comma turns round is one food (`milk, oat`).
    """
    pieces = [piece for piece in SPLIT.split(text) if piece.strip(ENDS)]
    names = [" ".join(word for word in bare_words(piece) if word != "little") for piece in pieces]
    if len(pieces) < 2 or not all(name in lexicon.spelt for name in names):
        return False
    is_paste = lexicon.tables.food_by_id[whole.named.foods[0]].kind == "paste"
    by_commas = len([piece for piece in text.split(",") if piece.strip(ENDS)]) == len(pieces)
    in_order = by_commas and (is_paste or " ".join(names) in lexicon.spelt)
    takes = whole.named.takes
    if by_commas and len(names) == 2 and not _is_turned_round(pieces, names, lexicon):
        return True
    return (
        in_order
        or (by_commas and _is_another_food(pieces, names, whole, lexicon))
        or all(
            any(says_amount(word) and singular(word) not in takes for word in WORD.findall(piece)) for piece in pieces
        )
    )


def _is_turned_round(pieces: list[str], names: list[str], lexicon: Lexicon) -> bool:
    """Whether the second of two foods may be a sort of the first: `milk, almond`; never `milk, butter`."""
    food = lexicon.tables.food_by_id
    head, sort = (food[lexicon.spelt[name]] for name in names)
    last = names[0].split()[-1]
    several = any(singular(word) != word for word in WORD.findall(pieces[0]))
    if names[1] == "orange":
        return head.kind in _ORANGE_KINDS or names[0] in _ORANGE_TOO or last in _BY_SORT
    if names[1] == "soya":
        return f"soya {last}" in lexicon.spelt  # by itself it is the sauce
    if sort.kind == "allium":
        return last not in _NO_ALLIUM_IN_IT and head.kind not in _GROWS  # garlic bread may be meant: it holds more
    return last in _BY_SORT or sort.kind in _SORTS.get(last, ()) or head.kind == sort.kind or several


def _is_another_food(pieces: list[str], names: list[str], whole: Part, lexicon: Lexicon) -> bool:
    """Whether the second of two names is several things, or has an amount before it, and none is of the whole line.

    As in `peanut butter, 1 cup walnuts` and `butter, walnuts`: what is turned round is one word in the singular.
    """
    if len(pieces) != 2 or any(lexicon.spelt[name] in whole.named.foods for name in names):
        return False
    counted = re.match(r"\s*(?:\d|half\b|an? )", pieces[1])
    several = [word for word in WORD.findall(pieces[1]) if singular(word) != word]
    return bool(counted or several)
