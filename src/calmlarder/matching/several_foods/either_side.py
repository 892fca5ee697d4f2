"""What stands on either side of a sign between two names: two foods, or a food and which sort of it."""

import re

from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import expanded
from calmlarder.matching.names.words import singular
from calmlarder.matching.part import WORD, Part
from calmlarder.matching.several_foods.headings import bare_words
from calmlarder.matching.several_foods.pieces import ENDS, SPLIT, says_amount


def turned_back(text: str, lexicon: Lexicon) -> str:
    """The text with a sort before its food where a comma turns them round and both are one name: `rice, brown`."""
    head, _, rest = text.partition(",")
    sort, comma, behind = rest.partition(",")
    food, which = " ".join(bare_words(head)), " ".join(expanded(map(singular, WORD.findall(sort))))
    is_name = which not in lexicon.spelt and food in lexicon.spelt and f"{which} {food}" in lexicon.spelt
    return f"{sort.strip()} {head}{comma}{behind}" if which and is_name else text


def each_a_food(whole: Part, text: str, lexicon: Lexicon) -> bool:
    """Whether each piece is a food of its own: `thumb ginger, 2 cloves garlic` and `ginger, garlic` are no paste.

    What a comma turns round is one food (`milk, oat`).
    """
    pieces = [piece for piece in SPLIT.split(text) if piece.strip(ENDS)]
    names = [" ".join(bare_words(piece)) for piece in pieces]
    if len(pieces) < 2 or not all(name in lexicon.spelt for name in names):
        return False
    is_paste = lexicon.tables.food_by_id[whole.named.foods[0]].kind == "paste"
    by_commas = len([piece for piece in text.split(",") if piece.strip(ENDS)]) == len(pieces)
    in_order = by_commas and (is_paste or " ".join(names) in lexicon.spelt)
    takes = whole.named.takes
    return (
        in_order
        or (by_commas and _is_another_food(pieces, names, whole, lexicon))
        or all(
            any(says_amount(word) and singular(word) not in takes for word in WORD.findall(piece)) for piece in pieces
        )
    )


def _is_another_food(pieces: list[str], names: list[str], whole: Part, lexicon: Lexicon) -> bool:
    """Whether the second of two names is several things, or has an amount before it, and none is of the whole line.

    As in `peanut butter, 1 cup walnuts` and `butter, walnuts`: what is turned round is one word in the singular.
    """
    if len(pieces) != 2 or any(lexicon.spelt[name] in whole.named.foods for name in names):
        return False
    counted = re.match(r"\s*(?:\d|half\b|an? )", pieces[1])
    several = [word for word in WORD.findall(pieces[1]) if singular(word) != word]
    return bool(counted or several)
