"""Two amounts of one food on a line are two lots of it: `milk 1L, milk 500ml`, `butter 250g + 100g`."""

import itertools

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.amounts.numbers_and_fractions import PART_WORDS, WHOLE_WORDS
from calmlarder.matching.conditions.condition_words import is_condition, without_marks
from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import HARMLESS, NOTES
from calmlarder.matching.names.plain_words import PLAIN_WORDS
from calmlarder.matching.names.words import SMALL, singular
from calmlarder.matching.part import WORD, Part, name_part
from calmlarder.matching.several_foods.pieces import ENDS, says_amount

_BETWEEN = LatePattern(r"\s*(,|;|&|\+|\band\b|\bplus\b|(?<!\w)n(?!\w))\s*")
_JOINS = frozenset({"&", "+", "and", "plus", "n"})
_ADDS = frozenset({"+", "plus"})
_MOST = 4  # lots of one food on a line; more of them are a list of something else: ours
_NUMBERS = "|".join(sorted(WHOLE_WORDS.keys() | PART_WORDS.keys(), key=len, reverse=True))
_TELLS_AMOUNT = LatePattern(rf"\d|\b(?:{_NUMBERS}|{MEASURE})\b")
_METRIC = LatePattern(rf"\d ?(?:{UNIT})\b")
# What tells how the amount before it is made up, or what of it is left, and no second lot.
_OF_THE_SAME = LatePattern(
    r"\b(?:left|remaining|gone|used|eaten|each|ea|apiece|per|total|altogether|in all|in it|inside"
    r"|of (?:them|which|it|em)|drained|net|gross|about|approx|or|to|boiled|cooked|soaked)\b"
)
# What says of a lot that it is another one than the one before.
_ANOTHER = LatePattern(
    r"\b(?:loose|other|another|more|extra|spare|open|opened|new|old|older|fresh|frozen|unopened|sealed|big|small)\b"
)


def of_it_again(text: str, hints: frozenset[str], lexicon: Lexicon) -> list[Part]:
    """The lots of one food whose name stands again behind a second amount, or goes without saying behind a plus.

    Both are weighed, or both counted: the eight of `thighs 1kg, 8 thighs` only tell what weighs a kilo, but
    where a word says that they are others (`carrots 1kg, 3 loose carrots`). Nothing where it is told otherwise.
    """
    pieces = [piece for piece in _BETWEEN.split(text) if piece.strip()]
    signs, pieces = pieces[1::2], pieces[::2]
    if not 2 <= len(pieces) <= _MOST or len(signs) != len(pieces) - 1 or not all(map(_TELLS_AMOUNT.search, pieces)):
        return []
    first = name_part(pieces[0], hints, lexicon)
    if first.named.outcome != "matched" or first.named.left or not first.said:
        return []
    parts = [first]
    for before, sign, piece in zip(pieces, signs, pieces[1:], strict=False):
        unlike = (_METRIC.search(before) is None) != (_METRIC.search(piece) is None)
        if _OF_THE_SAME.search(piece) or (unlike and not _ANOTHER.search(piece)):
            return []
        if (again := _again(piece, sign, parts[0], hints, lexicon)) is None:
            return []
        parts.append(again)
    return parts


def _again(piece: str, sign: str, first: Part, hints: frozenset[str], lexicon: Lexicon) -> Part | None:
    """The same food by its own name or by a word of it in a piece, or unnamed behind a plus; else nothing."""
    named = name_part(piece, hints, lexicon)
    if named.named.outcome == "matched" and not named.named.left and named.named.foods == first.named.foods:
        return named
    if _only_tells_amount(piece):
        more = sign in _JOINS and (sign in _ADDS or _METRIC.search(piece) or _ANOTHER.search(piece))
        return name_part(f"{piece} {first.said}", hints, lexicon) if more else None
    words = first.said.split()
    for head in itertools.accumulate(reversed(words), lambda behind, word: f"{word} {behind}"):
        fuller = name_part(f"{piece} {head}", hints, lexicon)
        if fuller.named.outcome == "matched" and not fuller.named.left and fuller.named.foods == first.named.foods:
            own = set(WORD.findall(piece)) - set(WORD.findall(first.words))
            return fuller if named.named.outcome != "matched" and _tells_a_kind(own, fuller) else None
    return None


def _tells_a_kind(words: set[str], fuller: Part) -> bool:
    """Whether words that tell no amount are plain ones or of a food's name, and one of them is of its name."""
    told = {singular(word) for word in words if not says_amount(word)} - SMALL
    return not told.isdisjoint(fuller.named.takes) and told <= fuller.named.takes | PLAIN_WORDS | NOTES | HARMLESS


def _only_tells_amount(piece: str) -> bool:
    words = WORD.findall(without_marks(piece).strip(ENDS))
    return bool(words) and all(
        says_amount(word) or is_condition(word) or bool(_ANOTHER.fullmatch(word)) or singular(word) in SMALL
        for word in words
    )
