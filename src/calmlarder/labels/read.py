"""What in a packet's list matters, how much of it there may be, and what nobody can tell from the list."""

import re
from collections.abc import Mapping
from typing import NamedTuple

from calmlarder.labels.packet import Listed, Packet
from calmlarder.labels.words import LabelWord, Words
from calmlarder.matching.names.words import plain, words_of
from calmlarder.tables.allergens import Held, said
from calmlarder.tables.vocabulary import ALLERGENS

_LONGEST = 5  # words of a row
_E_NUMBER = re.compile(r"\be[\s-]?(\d{3,4})(?:\s?\([ivx]+\))?", re.IGNORECASE)
_NUMBER_ALONE = re.compile(r"e\d{3,4}")
_DENIED = re.compile(r"\b(\w+)[ -]free\b|\b(?:no|without) (?:added )?(\w+)")


class Told(NamedTuple):
    """One ingredient that matters and the row that says so."""

    listed: Listed
    word: LabelWord


class Label(NamedTuple):
    """A packet read: what matters in its order, allergens it holds and may hold traces of."""

    ingredients: int
    told: tuple[Told, ...]
    allergens: tuple[str, ...]
    traces: tuple[str, ...]

    @property
    def advice(self) -> tuple[str, ...]:
        """What to do, since a list tells no grams; never a verdict."""
        found = []
        if any(one.word.sure == "may" for one in self.told):
            found.append("Ask the maker about what may hold something: its words alone do not tell.")
        if any(one.word.sure == "yes" for one in self.told):
            found.append(
                "How much there is of each the list does not tell. In elimination choose another packet; later a small "
                "serving may be fine."
            )
        if not self.told:
            found.append("No word of the list is known to matter. That is no proof: ask the maker where in doubt.")
        return tuple(found)


def label_of(packet: Packet, words: Words, misleading: Mapping[str, set[Held]]) -> Label:
    """What matters in a packet."""
    told = _each_once(
        [Told(one, word) for one in packet.listed for word in _words_in(one.text, words) if word.holds != "nothing"]
    )
    texts = (*(one.text for one in packet.listed), packet.contains)
    held = {allergen for text in texts for allergen in said(text, misleading)}
    traces = said(packet.traces, misleading) - held
    return Label(
        ingredients=sum(not one.inside for one in packet.listed),
        told=told,
        allergens=tuple(one for one in ALLERGENS if one in held),
        traces=tuple(one for one in ALLERGENS if one in traces),
    )


def _each_once(told: list[Told]) -> tuple[Told, ...]:
    """Without the second name of one thing: `sorbitol (E420)` is one sweetener, and so is `E420 (sorbitol)`."""
    kept: list[Told] = []
    for one in told:
        if not any(_is_second_name(one, other) for other in kept):
            kept.append(one)
    return tuple(kept)


def _is_second_name(one: Told, first: Told) -> bool:
    """Whether it only gives the number of what is named before it, or the name of that number."""
    together = one.listed == first.listed or one.listed.inside == first.listed.text
    a_number = any(_NUMBER_ALONE.fullmatch(word.words) for word in (one.word, first.word))
    return together and a_number and (one.word.holds, one.word.sure) == (first.word.holds, first.word.sure)


def _words_in(text: str, words: Words) -> list[LabelWord]:
    """The rows whose words stand in a text, the longest at each place; nothing that it says is not in it."""
    bare = _E_NUMBER.sub(r" e\1 ", plain(text))
    denied = {word for pair in _DENIED.findall(bare) for word in words_of(" ".join(pair))}
    spoken = words_of(bare)
    found: dict[str, LabelWord] = {}
    at = 0
    while at < len(spoken):
        ends = range(min(len(spoken), at + _LONGEST), at, -1)
        end = next((end for end in ends if spoken[at:end] in words), None)
        if end is not None and not denied & set(spoken[at:end]):
            row = words[spoken[at:end]]
            found[row.words] = row
        at = end or at + 1
    return list(found.values())
