"""The foods between the signs of a line, and those that stand side by side without one."""

import re

from calmlarder.matching.amounts.amount_of_line import take_amount
from calmlarder.matching.amounts.numbers_and_fractions import Span
from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.name_index import expanded
from calmlarder.matching.names.notes import HARMLESS, NOTES, WITH
from calmlarder.matching.names.words import SMALL, singular
from calmlarder.matching.part import WORD, Part, name_part
from calmlarder.matching.several_foods.headings import (
    bare_words,
    dishes_left_over,
    herbs_of_spices,
    own_kind,
    pepper_of_spices,
    without_heading,
)
from calmlarder.matching.several_foods.kinds import KIND
from calmlarder.matching.several_foods.pieces import ENDS, MOST_PARTS, SPLIT, says_amount
from calmlarder.matching.several_foods.side_by_side import names_food, says_food, side_by_side
from calmlarder.matching.several_foods.unclear_piece import is_strange

_TINS_HEADING = LatePattern(r"(?:tins|cans|tinned)(?: stuff)? ?[:-]")
# `frozen peas n corn, cup or so`: so much of both.
_TWO_JOINED = LatePattern(r"^[^,;&+]+?(?: and | n | & | ?\+ )[^,;&+]+?,[^,;&+]+$")
_HALF = Span(0.4, 0.5, 0.6)
_TIN = LatePattern(r"\b(?:tins?|cans?|canned|tinned)\b")


def foods_between_signs(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The foods between the signs of a line, and those that stand side by side without one; or nothing."""
    pieces = [piece for piece in SPLIT.split(text) if piece.strip(ENDS)]
    if not 1 <= len(pieces) <= MOST_PARTS or (len(pieces) > 1 and all(map(_says_only_which, pieces[1:]))):
        return []  # `rice (brown, cooked)` is one thing
    last = {singular(word) for word in pieces[-1].split()}
    if len(pieces) > 2 and last <= frozenset(FITS):  # `cumin, coriander (ground)`: said of each
        pieces = [f"{piece} {pieces[-1]}" for piece in pieces[:-1]]
    found: list[Part] = []
    strange = False
    tinned = [bool(_TIN.search(piece)) for piece in pieces]
    own_tins = any(tinned) and not all(tinned) and not _TINS_HEADING.match(text)
    for piece in _with_their_tins(dishes_left_over(pieces), lexicon) if own_tins else dishes_left_over(pieces):
        if piece.split()[0] in WITH:
            return []
        if found and _only_amounts(piece, lexicon):
            found = _with_amount_behind(found, piece, text)
            continue
        if len(pieces) == 2 and found and _is_shape_of_it(piece, found[-1], lexicon):
            continue
        if found and own_kind(piece):
            found[-1] = found[-1]._replace(words=f"{found[-1].words} {piece}")
            continue
        piece = of_the_kind_before(piece, found, lexicon)
        told = hints - {"canned"} if own_tins and not _TIN.search(piece) else hints
        part = name_part(piece, told, lexicon, whole_name=len(pieces) > 1)
        if part.named.outcome == "matched":
            found.append(part)
            continue
        beside = side_by_side(piece, told, lexicon)
        if beside:
            found += beside
        elif found and part.named.outcome == "unknown" and not says_food(piece, lexicon):
            strange |= is_strange(piece, lexicon)
            found[-1] = found[-1]._replace(words=f"{found[-1].words} {piece}")  # a note on what stands before it
        else:
            return []
    if strange and len(found) > 1:
        return []  # one of a list is not known: it is asked about
    found = herbs_of_spices(pepper_of_spices(found, hints, lexicon), hints, lexicon)
    bare = without_heading(found, hints, lexicon)
    return bare if len(found) > 1 or own_kind(pieces[-1]) else []


def _with_amount_behind(found: list[Part], piece: str, text: str) -> list[Part]:
    """The foods with an amount that stands behind them: of the last one, or of two that an `and` joins by halves."""
    *before, last = found
    last = last._replace(words=f"{last.words} {piece}")
    if any(part.amount.how != "none" for part in found):
        return [*before, last]
    try:
        amount, _ = take_amount(piece)
    except ValueError:
        return [*before, last]
    if amount.how == "none":
        return [*before, last]
    if len(found) == 2 and _TWO_JOINED.match(text):
        half = amount._replace(number=amount.number.times(_HALF))
        return [part._replace(amount=half) for part in (*before, last)]
    return [*before, last._replace(amount=amount)]


def _says_only_which(piece: str) -> bool:
    """Whether a piece tells but a colour, a state or how much of what stands before it, and no number."""
    words = WORD.findall(piece)
    return not re.search(r"\d", piece) and all(
        KIND.fullmatch(word) or singular(word) in FITS or singular(word) in SMALL | NOTES for word in words
    )


def _is_shape_of_it(piece: str, before: Part, lexicon: Lexicon) -> bool:
    """Whether a piece only tells the shape of the pasta before it, and how much: `gf pasta, third of a bag (penne)`."""
    words = set(bare_words(piece))
    kinds = {lexicon.tables.food_by_id[food].kind for food in before.named.foods}
    return bool(words) and words <= lexicon.shapes and kinds == {"pasta"} and before.amount.how == "none"


def _with_their_tins(pieces: list[str], lexicon: Lexicon) -> list[str]:
    """The pieces, with an amount of tins beside what it is of: a tin is said of its food, and not of a whole list."""
    joined: list[str] = []
    for piece in pieces:
        if joined and _TIN.search(piece) and _only_amounts(piece, lexicon):
            joined[-1] = f"{joined[-1]} {piece}"
        else:
            joined.append(piece)
    return joined


def of_the_kind_before(piece: str, found: list[Part], lexicon: Lexicon) -> str:
    """A piece that says but which sort of the food before it: the three cherry of `6 toms + 3 cherry` are no fruit.

    Who counts foods writes the plural; the tofu of `6 eggs, 500g tofu` is weighed.
    """
    words = bare_words(piece)
    if not found or len(words) != 1 or not re.search(r"(?:^|\s)\d+ [a-z]+$|\b(?:few|some|couple)\b", piece.strip(ENDS)):
        return piece
    written = next((word for word in WORD.findall(piece) if expanded((singular(word),)) == words), "")
    head = [word for word in found[-1].said.split() if not word.startswith("(")][-1:]
    both = lexicon.spelt.get(f"{words[0]} {' '.join(expanded(head))}")
    kinds = {lexicon.tables.food_by_id[food].kind for food in found[-1].named.foods}
    alike = both is not None and lexicon.tables.food_by_id[both].kind in kinds  # ginger behind garlic is no paste
    return f"{piece} {head[0]}" if head and written == words[0] and alike else piece


def _only_amounts(piece: str, lexicon: Lexicon) -> bool:
    """Whether a piece says how much there is of what stands before it, and names nothing (`big pot half left`)."""
    words = WORD.findall(piece)
    return bool(words) and all(
        (says_amount(word) and not names_food(word, lexicon)) or singular(word) in SMALL | NOTES | HARMLESS
        for word in words
    )
