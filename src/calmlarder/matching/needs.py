"""Pieces of text of which each text that fits a regular expression holds one, found from the expression itself.

Where a line holds none of them, the expression need be neither compiled nor searched for. To find them takes as long
as half a compiling, so that they are found once and kept (`kept_names`).
"""

from collections.abc import Iterable, Sequence
from re import _constants as op  # type: ignore[attr-defined]
from re import _parser  # type: ignore[attr-defined]
from typing import Any

from calmlarder.matching.late_patterns import NOTHING, START, Pieces

_MOST = 64  # pieces: to look for more takes as long as to search with a short expression
_LONG = 1000  # signs: to compile one takes a millisecond and more, worth a look for more and commoner pieces; ours
_RARER_BY = 20  # a sign more makes a piece so much rarer: ours, roughly as letters are in English
_RARE = 0.011  # worth looking for: a piece of two signs, or several of three; ours
_RARE_FOR_LONG = 0.06  # a piece of one sign as well; ours
_BOUNDARY, _OF_WORD = (op.AT, op.AT_BOUNDARY), (op.CATEGORY, op.CATEGORY_WORD)


def needs_of(written: str) -> Pieces:
    """The rarest such pieces of an expression without flags; the empty text where none are worth looking for.

    Raises re.error for what is no expression.
    """
    best = _rarest(_pieces(_parser.parse(written)))
    is_long = len(written) > _LONG
    few = len(best) <= _MOST * (4 if is_long else 1)
    return best if few and _commonness(best) <= (_RARE_FOR_LONG if is_long else _RARE) else NOTHING


def _commonness(pieces: Pieces) -> float:
    return sum(float(_RARER_BY) ** -len(piece) for piece in pieces)


def _rarest(found: Iterable[Pieces]) -> Pieces:
    return min(found, key=_commonness, default=NOTHING)


def _pieces(parts: Any, at_start: bool = False) -> list[Pieces]:
    """Every set of pieces that a sequence needs one of: its runs of plain signs, and what stands between them.

    `at_start`: where a word begins, if its first sign is one of a word.
    """
    found: list[Pieces] = []
    run = ""
    for code, value in _flat(parts):
        if code is op.LITERAL:
            run += START if at_start and not run and chr(value).isalnum() else ""
            run += chr(value)
            at_start = False
            continue
        at_start = at_start or (code, value) == _BOUNDARY or (code is op.ASSERT_NOT and _is_of_word_behind(value))
        if code in {op.AT, op.ASSERT_NOT}:  # takes no room
            continue
        if run:
            found.append((run,))
        run = ""
        inside = _inside(code, value, at_start)
        at_start = False
        if inside:
            found.append(inside)
    return [*found, (run,)] if run else found


def _flat(parts: Any) -> Sequence[tuple[Any, Any]]:
    """The sequence with what is in plain groups in their place."""
    flat: list[tuple[Any, Any]] = []
    for code, value in parts:
        if code is op.SUBPATTERN and not value[1] and not value[2]:
            flat += _flat(value[3])
        elif code is op.ATOMIC_GROUP:
            flat += _flat(value)
        else:
            flat.append((code, value))
    return flat


def _is_of_word_behind(value: Any) -> bool:
    """Whether what must not stand before is any sign of a word: where a word goes on, no other begins."""
    ahead, parts = value
    return ahead < 0 and len(parts) == 1 and parts[0][0] is op.IN and _OF_WORD in parts[0][1]


def _inside(code: Any, value: Any, at_start: bool) -> Pieces | None:
    """What a part that is more than one sign needs, None where that is nothing."""
    if code is op.BRANCH:
        branches = [_rarest(_pieces(one, at_start)) for one in value[1]]
        return None if NOTHING in branches else tuple(dict.fromkeys(piece for one in branches for piece in one))
    if code in {op.MAX_REPEAT, op.MIN_REPEAT, op.POSSESSIVE_REPEAT} and value[0] > 0:
        return _rarest(_pieces(value[2], at_start))
    if code is op.ASSERT:  # what stands before or behind is in the text as well
        return _rarest(_pieces(value[1]))
    if code is op.IN and all(kind is op.LITERAL for kind, _ in value):
        return tuple(chr(one) for _, one in value)
    return None
