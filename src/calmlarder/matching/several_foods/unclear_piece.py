"""A line of several foods of which some are clear: those stand, and only the others are asked about."""

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import DECIDING, DISHES, GENERIC, HARMLESS, NOTES, PRODUCTS, WITH, WITHOUT, is_note
from calmlarder.matching.names.words import SMALL, singular
from calmlarder.matching.part import SOFT, WORD, Part, name_part
from calmlarder.matching.several_foods.headings import dishes_left_over
from calmlarder.matching.several_foods.pieces import ENDS, MOST_PARTS, says_amount

# A stroke stands between two words for one thing as often as between two things.
_BETWEEN = LatePattern(r"\s*(?:,|;|&|\+|\band\b|\bplus\b|(?<!\w)n(?!\w))\s*")
_JOINED = LatePattern(r"&|\+|\band\b|\bplus\b|(?<!\w)n(?!\w)")
_OTHERWISE = LatePattern(r"\bor\b|\bmix(?:ed)?\b|\bwith\b|[/?:]|\bw/")
_SAYS_NOTHING = SMALL | NOTES | HARMLESS | SOFT | frozenset(FITS)


def some_clear(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The foods of a line, of which some may not be clear; nothing where none is, or where they may be one food.

    What is not clear must stand by itself: have a food's word or an amount of its own, or be joined by `and`. A piece
    that only says a quality (`chicken, marinated`) may change the one before it.
    """
    pieces = [piece for piece in _BETWEEN.split(text) if piece.strip(ENDS)]
    if not 2 <= len(pieces) <= MOST_PARTS or _OTHERWISE.search(text):
        return []
    found: list[Part] = []
    for piece in dishes_left_over(pieces):
        words = [word for word in WORD.findall(piece) if not says_amount(word)]
        if piece.split()[0] in WITH | WITHOUT:
            return []  # what is in a thing, or not
        if any(singular(word) in FITS for word in words) and all(singular(word) in _SAYS_NOTHING for word in words):
            return []  # a state told apart is of a food before it: `lamb leg, half, cooked`
        if found and all(singular(word) in _SAYS_NOTHING for word in words):
            found[-1] = found[-1]._replace(words=f"{found[-1].words} {piece}")
            continue
        part = name_part(piece, hints, lexicon, whole_name=True)
        joined, counted = bool(_JOINED.search(text)), len(words) < len(WORD.findall(piece))
        listed = len(pieces) > 2 or joined or counted
        if part.named.outcome != "matched" and not (listed and _by_itself(part, words, counted or not joined, lexicon)):
            return []
        found.append(part)
    clear = [part for part in found if part.named.outcome == "matched"]
    said = [part.said for part in found]
    answered = any(part in lexicon.meant for part in said)  # then nothing need be left open
    return found if clear and (len(clear) < len(found) or answered) and len(set(said)) == len(said) else []


def counted_apart(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The foods of a list of amounts in which a word that nobody knows has its own: `200g kombu, 300g zorblax`."""
    pieces = [piece for piece in _BETWEEN.split(text) if _is_counted(piece)]
    if len(pieces) < 2 or not any(is_strange(piece, lexicon) for piece in pieces):
        return []
    return some_clear(text, hints, lexicon)


def joined_to_strange(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The foods of a line in which `and` joins to a food a word that nobody knows: `blorp and yoghurt`, or nothing."""
    if not _JOINED.search(text) or not any(is_strange(piece, lexicon) for piece in _JOINED.split(text)):
        return []
    return some_clear(text, hints, lexicon)


def _is_counted(piece: str) -> bool:
    """Whether a piece of a line tells a number or a weight, and more."""
    words = WORD.findall(piece)
    return any(word[0].isdigit() for word in words) and not all(map(says_amount, words))


def is_strange(piece: str, lexicon: Lexicon) -> bool:
    """Whether a piece is one word that nobody knows, with an amount or not: another thing of a list, and no note."""
    words = [singular(word) for word in WORD.findall(piece) if not says_amount(word) and word not in SMALL]
    return len(words) == 1 and words[0] not in lexicon.words and not is_note(words[0]) and len(words[0]) > 3


def _by_itself(part: Part, words: list[str], apart: bool, lexicon: Lexicon) -> bool:
    """Whether a piece names a thing of its own that is not clear.

    A word for many kinds does where it stands apart, by an amount or a comma: `rice and beans` may be a dish.
    """
    bare = [singular(word) for word in words]
    if not bare or not part.said or not DISHES.isdisjoint(bare):
        return False  # with a curry the rice is cooked
    if any(word in lexicon.alone and word not in _SAYS_NOTHING | DECIDING | GENERIC | PRODUCTS for word in bare):
        return True
    strange = any(word not in lexicon.words and not is_note(word) and len(word) > 3 for word in bare)
    return strange or (bare[-1] in GENERIC and apart)
