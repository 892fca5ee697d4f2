"""The words of packets that matter: `label_words.csv`, from which a word of your own needs one row."""

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field

from calmlarder.matching.names.words import words_of
from calmlarder.problems import Problem
from calmlarder.tables.cells import Row
from calmlarder.tables.csvfile import read_csv
from calmlarder.tables.rows import Source

FILE = "label_words.csv"
# `hidden` may hold onion or garlic without naming them; `nothing` is a name that sounds like one that matters.
Holds = Literal["fructans", "gos", "lactose", "fructose", "sorbitol", "mannitol", "polyols", "hidden", "nothing"]


class LabelWord(Row):
    """Words on a packet, what they hold, and whether that is certain."""

    words: Annotated[str, Field(min_length=2)]
    holds: Holds
    sure: Literal["yes", "may"]
    note: str
    source: Annotated[str, Field(min_length=1)]


Words = Mapping[tuple[str, ...], LabelWord]


def read_label_words(folders: Sequence[Path]) -> tuple[dict[tuple[str, ...], LabelWord], list[Problem]]:
    """The rows by their words in the singular, later folders over earlier ones, and what is wrong in them."""
    found: dict[tuple[str, ...], LabelWord] = {}
    problems: list[Problem] = []
    for folder in folders:
        here: dict[tuple[str, ...], str] = {}
        lines, faults = read_csv(folder / FILE, LabelWord) if (folder / FILE).exists() else ([], [])
        problems += faults
        for line in lines:
            key = words_of(line.row.words)
            first = here.setdefault(key, line.where)
            if not key or (first != line.where and found[key].holds != line.row.holds):
                what = f"`{line.row.words}` says something else at {first}"
                problems.append(Problem(where=f"{line.where}:1", what=what, remedy="keep one of the two rows"))
            found[key] = line.row
    return found, problems


def source_faults(folders: Sequence[Path]) -> Iterator[Problem]:
    """Rows whose source is no key of sources.csv."""
    keys = {
        line.row.key
        for folder in folders
        if (folder / "sources.csv").exists()
        for line in read_csv(folder / "sources.csv", Source)[0]
    }
    for folder in folders:
        for line in read_csv(folder / FILE, LabelWord)[0] if (folder / FILE).exists() else ():
            if line.row.source not in keys:
                what = f"`{line.row.source}` is no source"
                remedy = "write a key of sources.csv, or add the source there"
                yield Problem(where=f"{line.where}:5", what=what, remedy=remedy)
