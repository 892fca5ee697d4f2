"""What a word that nobody knows may say of the food beside it: another food, or a note that changes nothing."""

import itertools

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.names.common_foods import FORMS
from calmlarder.matching.names.name_weights import Reading
from calmlarder.matching.names.notes import GENERIC, KINDS_OF_MANY, MANY_KINDS, is_note
from calmlarder.matching.names.spelling import sounds
from calmlarder.matching.names.tokens import Words
from calmlarder.matching.names.words import words_of
from calmlarder.tables.rows import Food

# Plants that come as milk, oil, butter and flour at least as often as by themselves.
_STEMS = frozenset({"soya", "coconut", "oat", "almond", "peanut", "sesame", "cashew", "hazelnut", "hemp"})
# Tongues in which a word behind the name of a food says how it is, and those that write two nouns as one word.
_JOIN_NOUNS = frozenset({"de", "nl", "da", "no", "sv"})
_NOTES_BEHIND = _JOIN_NOUNS | {"es", "pt", "it", "fr", "pl", "el", "id", "fil", "vi", "th"}
_COMMON = frozenset(FORMS.values())
_SORTS = frozenset({"bread", "cheese"})  # of which there are so many that a word behind tells one: `pane carasau`
_OF_A_PLACE = ("ese", "ish", "ian", "an", "ic", "ch", "ed")  # endings of words for where a dish is from


def is_beside_a_note(best: Reading, words: Words) -> bool:
    """Whether a food by another name was taken for all that a strange word says of it: that is shown."""
    return any(_strange(best, words)) and _by_another_name(best, words.lexicon.tables.food_by_id[best.food])


def is_far_off(best: Reading, words: Words) -> bool:
    """Whether but one letter of a short word makes a food of it that few have, and that sounds otherwise: smelt, spelt.

    Such an offer is far from what was typed; it is better told that the food is not known.
    """
    slips = [token for token in words.tokens if token.slip and not token.sure and set(token.words) & best.takes]
    return (
        best.food not in words.lexicon.common
        and best.takes <= {word for token in slips for word in token.words}
        and not any(token.others or sounds(token.typed) == sounds(word) for token in slips for word in token.words)
    )


def is_another(best: Reading, words: Words) -> bool:
    """Whether a strange word may be the food, or say which food it is.

    `congee leftover` and `injera 6 rolls` are named by the strange word; gungo peas are peas of a kind not known here.
    """
    strange = _strange(best, words)
    if not any(strange):
        return False
    if best.takes <= FITS.keys() | words.soft:
        return True
    behind = {word for token in words.tokens if token.added for word in token.words}
    if best.takes <= behind and any(
        is_strange and not token.added for token, is_strange in zip(words.tokens, strange, strict=True)
    ):
        return True  # what is in it does not name it: `meatloaf with onions`
    if any(is_strange and after.typed == "style" for is_strange, after in zip(strange, words.tokens[1:], strict=False)):
        return True  # in the manner of nobody knows what: `zorb style mince` may hold no meat
    opening = [is_strange for token, is_strange in zip(words.tokens, strange, strict=True) if token.piece == 0]
    if opening and all(opening) and not any(set(token.words) & best.takes for token in words.tokens if not token.piece):
        return True  # what stands first names it: `egusi, one milk tin`
    taken = [bool(set(token.words) & best.takes) for token in words.tokens]
    if all(token.slip for token, is_taken in zip(words.tokens, taken, strict=True) if is_taken):
        return True  # two words of another tongue: `kasar peynir` is no kesar
    beside = [
        taken[at] and (strange[at - 1 : at] == [True] or strange[at + 1 : at + 2] == [True]) for at in range(len(taken))
    ]
    for at, token in enumerate(words.tokens[:-1]):
        if taken[at] and strange[at + 1] and token.piece == words.tokens[at + 1].piece and best.takes <= _STEMS:
            return True  # `soya mlk`: the strange word says what of it
    if sum(taken) == 1 and strange[max(0, (at := taken.index(True)) - 1) : at + 2] == [True, False, True]:
        return True  # in the middle of what nobody knows: `moreton bay bugs`
    food = words.lexicon.tables.food_by_id[best.food]
    is_whole = food.kind == "pulse" and best.takes <= {*words_of(food.name), *words.soft}  # `falafel fertig`
    follows = taken.index(True) + 1 if any(taken) else 0
    tells_none = best.takes <= GENERIC | FITS.keys() | words.soft  # `zorb beans`, where kidney beans are told
    is_said = is_whole and strange[follows : follows + 1] == [True]
    if any(beside) and food.kind in KINDS_OF_MANY and tells_none and not is_said:
        return True
    if any(beside) and food.kind in _SORTS and _by_another_name(best, food):
        return True
    if any(beside) and _by_another_name(best, food) and not _takes_notes(best, strange, words):
        return True
    return any(
        before and set(token.words) & best.takes & MANY_KINDS and len(best.takes - frozenset(FITS)) == 1
        for before, token in zip(strange, words.tokens[1:], strict=False)
    )


def _strange(best: Reading, words: Words) -> list[bool]:
    """Of each word, whether nobody knows it: neither a name, nor a note, nor how much or in which state.

    What stands before `style` tells how it is seasoned, but beside meat that it may be none (`zorb style mince`).
    """
    is_of_plants = words.lexicon.tables.food_by_id[best.food].diet != "omnivore"
    return [
        not (token.typed[0].isdigit() or token.typed in words.soft or is_note(token.typed))
        and (not token.words or (token.slip and not token.sure and not set(token.words) & best.takes))
        and not (after and after.typed == "style" and (is_of_plants or token.typed.endswith(_OF_A_PLACE)))
        for token, after in itertools.zip_longest(words.tokens, words.tokens[1:])
    ]


def _by_another_name(best: Reading, food: Food) -> bool:
    """Whether one word that is not in the food's own name stands for it: `rapa` is a turnip, `cime di rapa` is none.

    Nobody takes `zucchini` for another name of anything: what is common in English is no less its own.
    """
    is_one = len(best.takes - frozenset(FITS)) == 1
    return is_one and best.takes.isdisjoint(words_of(food.name)) and best.takes.isdisjoint(_COMMON)


def _takes_notes(best: Reading, strange: list[bool], words: Words) -> bool:
    """Whether a strange word beside an exact name of another tongue only says how it is: `huevos de corral`.

    In the tongues of Europe and of south-east Asia it does behind the name; before it only where nouns are joined in
    one word (`nye kartofler`). Elsewhere the food stands last, or a dish has two names: `gajar halwa` is no carrot.
    """
    at = next(index for index, token in enumerate(words.tokens) if set(token.words) & best.takes)
    token, before = (
        words.tokens[at],
        at > 0 and strange[at - 1] and words.tokens[at - 1].piece == words.tokens[at].piece,
    )
    if token.slip or best.missing:
        return False
    tongues = {row[-1] for row in words.lexicon.tongues.names.get(token.raw, ())}
    if before:
        return bool(tongues) and tongues <= _JOIN_NOUNS
    return not tongues or bool(tongues & _NOTES_BEHIND)
