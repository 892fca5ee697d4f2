"""Which of the foods that words may be are worth offering: those of the likeliest sort, and those the words name."""

from collections.abc import Callable

from calmlarder.matching.names.foods import Candidate
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.words import words_of
from calmlarder.tables.rows import Food

_AS_LIKELY = 1.0  # of 100: ours


def of_one_sort(candidates: tuple[Candidate, ...], text: str, lexicon: Lexicon) -> tuple[Candidate, ...]:
    """The candidates without those of another kind that only resemble a word of the line: flat bread is no tonic water.

    One that a word of the line names by itself stays, whatever it is.
    """
    if not candidates:
        return candidates
    foods = lexicon.tables.food_by_id
    best = max(one.score for one in candidates)
    kinds = {foods[one.food].kind for one in candidates if one.score >= best - _AS_LIKELY}
    called = {food for word in words_of(text) for food in lexicon.called(word)}
    return tuple(
        one
        for one in candidates
        if one.score >= best - _AS_LIKELY or foods[one.food].kind in kinds or one.food in called
    )


def worth_offering(
    candidates: tuple[Candidate, ...], is_left_out: Callable[[Food], bool], lexicon: Lexicon
) -> tuple[Candidate, ...]:
    """The candidates, of the equally likely those of most kitchens first.

    What is left out is not eaten here: it is offered only where there is nothing else.
    """
    foods = lexicon.tables.food_by_id
    eaten = [one for one in candidates if not is_left_out(foods[one.food])] or list(candidates)
    most = max((one.score for one in candidates), default=0.0)
    return tuple(sorted(eaten, key=lambda one: (one.score < most - _AS_LIKELY, one.food not in lexicon.common)))
