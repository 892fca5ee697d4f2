"""The names by which the steps of a recipe may call the foods of its list."""

from collections.abc import Sequence

from calmlarder.adapt.called import (
    bare_cloves,
    called_by_lines,
    last_words_of_a_kind,
    single_words,
    single_words_of_a_part,
    sorts_of_flour,
    treated_names,
)  # fmt: skip
from calmlarder.adapt.changed_lines import Part
from calmlarder.adapt.collective import animals_in
from calmlarder.adapt.names import Names, names_as_cut, with_last_words
from calmlarder.tables.book import Tables

_DISHES_TOO = frozenset({"dal", "daal", "dahl", "dhal", "dhall", "daahl"})


def names_in_steps(parts: Sequence[Part], tables: Tables) -> Names:
    """The names, and which foods each may mean; the later ones in the order of this go before the others."""
    known = {part.read.food for part in parts if part.read.food}
    names = {
        **last_words_of_a_kind(parts, tables),
        **animals_in(parts, tables),
        **names_as_cut(
            [(one.read.food, one.read.text) for one in parts if one.read.food in known and one.read.food], tables
        ),
        **single_words(parts),
        **sorts_of_flour(parts, tables),
        **bare_cloves(parts),
        **treated_names(known, tables),
        **with_last_words(known, tables),
        **single_words_of_a_part(parts),
        **called_by_lines(parts),
    }
    listed = " ".join(part.read.text.casefold() for part in parts if part.read.outcome != "heading")
    return {words: meant for words, meant in names.items() if not _is_the_dish(words, listed)}


def _is_the_dish(words: tuple[str, ...], listed: str) -> bool:
    """Whether a name that no line has is that of the dish too: `pour it over the dal`."""
    return len(words) == 1 and words[0] in _DISHES_TOO and words[0] not in listed
