"""The words of a line as the tables know them: short forms written out, slips of spelling mended."""

from collections.abc import Iterable
from typing import NamedTuple

from calmlarder.matching.conditions.states import FITS
from calmlarder.matching.names.food_abbreviations import ABBREVIATIONS, ONLY_BESIDE
from calmlarder.matching.names.lexicon import Lexicon
from calmlarder.matching.names.notes import DECIDING, DISHES, HARMLESS, NOTES
from calmlarder.matching.names.words import singular

_NOT_BEFORE = {"tom": frozenset({"yum", "yam", "kha", "ka", "collins"})}  # soups and a drink, and no tomatoes


# What pasta is made of besides white flour.
_KINDS_OF_PASTA = frozenset({
    "wholemeal", "wholegrain", "whole", "grain", "wheat", "brown", "gluten", "free", "lentil", "chickpea", "corn",
    "maize", "spelt", "pea", "buckwheat",
})  # fmt: skip


class Token(NamedTuple):
    """A word of a line: as typed, and the known words it stands for."""

    typed: str
    words: tuple[str, ...]
    sure: bool = True
    slip: bool = False
    piece: int = 0  # of the line, between its commas
    raw: str = ""  # as written, plural and all
    group: int = 0  # of the line, between its ands
    added: bool = False  # behind a `with`
    others: tuple[str, ...] = ()  # further words that a slip may be


class Words(NamedTuple):
    """The words of one food, and what is known of them.

    `known` are those that stand in some name; `told` those that tell a state, here or elsewhere in the line (`tin of`,
    `made yesterday`); `soft` those that may be measures or conditions, and are left over only where nothing else is.
    """

    tokens: tuple[Token, ...]
    known: frozenset[str]
    told: frozenset[str]
    soft: frozenset[str]
    lexicon: Lexicon


def words_of_food(tokens: Iterable[Token], hints: frozenset[str], soft: frozenset[str], lexicon: Lexicon) -> Words:
    """The words of one food; `hints` are words for a state that stand elsewhere in the line."""
    kept = tuple(tokens)
    known = frozenset(word for token in kept for word in token.words)
    # `fred` may be a slip of fried, and is no state of anything
    told = frozenset(word for token in kept if token.sure for word in token.words if word in FITS)
    return Words(kept, known, hints | told, soft, lexicon)


def tokens_of(written: Iterable[str], lexicon: Lexicon, plain_words: frozenset[str] = frozenset()) -> tuple[Token, ...]:
    """Typed words, plain, as known words in the singular: short forms written out, slips of spelling mended.

    `plain_words` are no slips of a food's name: measures, conditions and the like.
    """
    as_written = tuple(written)
    typed = tuple(map(singular, as_written))
    found: list[Token] = []
    for index, word in enumerate(typed):
        before = typed[index - 1] if index else ""
        after = typed[index + 1] if index + 1 < len(typed) else ""
        if word in ABBREVIATIONS and _may_be_short(word, before, after):
            found.append(Token(word, ABBREVIATIONS[word]))
        elif word in lexicon.words or word in HARMLESS or word in DECIDING or word in DISHES or word in FITS:
            found.append(Token(word, (word,)))
        elif word not in plain_words | NOTES and (both := lexicon.joined(word)):
            found.append(Token(word, both))
        else:
            names = _names_around(index, typed)
            found.append(Token(word, ()) if word in plain_words else _misspelt(word, as_written[index], names, lexicon))
    return _as_pasta(found, lexicon)


def _names_around(index: int, typed: tuple[str, ...]) -> tuple[str, ...]:
    """What would be a name if a word were mended: with the one or two words before it, and with the one behind."""
    before, after = typed[max(0, index - 2) : index], typed[index + 1 : index + 2]
    around = ((*before[-1:], "{}"), (*before, "{}"), ("{}", *after))
    written = (" ".join(full for one in words for full in ABBREVIATIONS.get(one, (one,))) for words in around)
    return tuple(name for name in written if name != "{}")


def _misspelt(word: str, written: str, names: tuple[str, ...], lexicon: Lexicon) -> Token:
    """A strange word as the known one that it is a slip of, alone or beside its neighbours; else as it stands."""
    slip = lexicon.slip(word, written)
    if slip is None or not slip.sure:
        beside = lexicon.slip_beside(word, names)
        if beside:
            return Token(word, (beside,), True, True)
    return Token(word, (slip.word,), slip.sure, True, others=slip.others) if slip else Token(word, ())


def _as_pasta(tokens: list[Token], lexicon: Lexicon) -> tuple[Token, ...]:
    """The words with `pasta` for a shape of it that a word of its kind stands beside: `wholemeal penne`, `penne gf`."""
    found = list(tokens)
    is_said = any(token.typed == "pasta" for token in tokens)
    for at, token in enumerate(tokens):
        if token.typed in lexicon.shapes:
            beside = (*tokens[max(0, at - 3) : at], *tokens[at + 1 : at + 2])
            kinds = frozenset(word for one in beside for word in one.words if word in _KINDS_OF_PASTA)
            if kinds and (is_said or not lexicon.is_name(kinds | {token.typed})):
                found[at] = token._replace(words=("pasta",))
    return tuple(found)


def _may_be_short(word: str, before: str, after: str) -> bool:
    """`pot` is a container but in `sweet pot`, `mac` a name but in `mac and cheese`."""
    if after in _NOT_BEFORE.get(word, ()):
        return False
    return word not in ONLY_BESIDE or before in ONLY_BESIDE[word] or (word == "mac" and after in ONLY_BESIDE[word])
