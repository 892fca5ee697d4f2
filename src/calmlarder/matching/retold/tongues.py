"""The tables of other tongues by the words of a line: what each name or word may stand for in English."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any, NamedTuple

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.names.words import plain, words_of
from calmlarder.tables.book import Tables

WORD_OF_A_NAME = LatePattern(r"[^\W\d_]+(?:'[^\W\d_]+)?")
LONGEST_NAME = 5  # words of a name in another tongue: ours

# Each: in English, yes where it counts only beside others of its tongue, what it says, the language.
Rows = Sequence[Sequence[str]]


class Tongues(NamedTuple):
    """By plain text without dashes, the rows of each name and of each word; `starts` begin any of them.

    `accented` are names as they are typed with their accents, in English, that may mean something else without
    (`pâtes` are no pâtés).
    """

    names: Mapping[str, Rows]
    words: Mapping[str, Rows]
    starts: Sequence[str]
    accented: Mapping[str, str]


def spaced(text: str) -> str:
    """A text as it is looked up: plain, with a space for a dash."""
    return " ".join(plain(text).replace("-", " ").split())


def tongues_of(tables: Tables) -> Tongues:
    """Both tables of other tongues."""
    names = _grouped(
        (spaced(row.name), (row.english, row.beside, "food", row.language)) for row in tables.names_elsewhere
    )
    words = _grouped(
        (spaced(row.word), (row.english, row.beside, row.says, row.language)) for row in tables.words_elsewhere
    )
    starts = list(dict.fromkeys(said.split()[0] for said in (*names, *words)))
    told = {row.name.casefold() for row in tables.names}
    accented = {
        row.name: row.english
        for row in tables.names_elsewhere
        if row.beside and row.name.isalpha() and not row.name.isascii() and row.name not in told
    }
    return Tongues(names, words, starts, accented)


class _LateRows(Mapping[str, Rows]):
    """Rows by what they are of, a text for each, taken apart when they are asked for."""

    def __init__(self, written: Mapping[str, str]) -> None:
        self._written = written

    def __getitem__(self, said: str) -> Rows:
        return [row.split("\t") for row in self._written[said].split("\n")]

    def __contains__(self, said: object) -> bool:
        return said in self._written

    def __iter__(self) -> Iterator[str]:
        return iter(self._written)

    def __len__(self) -> int:
        return len(self._written)


def written_tongues(tongues: Tongues) -> dict[str, Any]:
    """Tongues as JSON values that are quickly read: a text for each name rather than many small lists."""
    texts = [
        {said: "\n".join("\t".join(row) for row in rows) for said, rows in table.items()}
        for table in (tongues.names, tongues.words)
    ]
    return {**tongues._asdict(), "names": texts[0], "words": texts[1]}


def tongues_in(written: Mapping[str, Any]) -> Tongues:
    """The tongues that `written_tongues` wrote."""
    return Tongues(**{**written, "names": _LateRows(written["names"]), "words": _LateRows(written["words"])})


def _grouped(rows: Iterable[tuple[str, tuple[str, ...]]]) -> dict[str, list[tuple[str, ...]]]:
    found: dict[str, list[tuple[str, ...]]] = {}
    for said, row in rows:
        found.setdefault(said, []).append(row)
    return found


def meanings(rows: Rows) -> set[frozenset[str]]:
    """The different foods, by the words of their English names, that rows of one name tell."""
    return {frozenset(words_of(row[0])) for row in rows}


def doubtful(tables: Tables, tongues: Tongues) -> Iterator[tuple[str, str, str]]:
    """Names that stand for several foods, each food with them: as such they are asked about, like any other name."""
    food_of = _food_of(tables)
    for said, rows in tongues.names.items():
        if len(meanings(rows)) > 1 and not any(row[1] for row in rows):
            foods = dict.fromkeys(food_of[words] for row in rows if (words := words_of(row[0])) in food_of)
            yield from ((said, food, "") for food in foods if len(foods) > 1)


def _food_of(tables: Tables) -> dict[tuple[str, ...], str]:
    """The food of each English name; of several the one that names.csv has as default, or the first."""
    found = {words_of(food.name): food.id for food in tables.foods}
    decided = set(found)
    for row in tables.names:
        said = words_of(row.name)
        if said not in found or (row.default and said not in decided):
            found[said] = row.food
            decided |= {said} if row.default else set()
    return found
