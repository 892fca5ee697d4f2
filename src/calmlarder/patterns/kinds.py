"""The kinds of dish that a cook can ask for, with their words: `shared/kinds.toml` beside the patterns."""

import tomllib
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import Annotated

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from calmlarder.matching.names.words import words_of
from calmlarder.patterns.pattern import Pattern
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.tables.places import shipped

KINDS_FILE = "shared/kinds.toml"


class DishKind(BaseModel):
    """A kind of dish: how a sentence names one, `a soup`, and other words for it."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    name: str
    said: Annotated[str, Field(min_length=3)]
    words: tuple[str, ...] = ()


def read_kinds(folder: Path) -> tuple[tuple[DishKind, ...], list[Problem]]:
    """The kinds in the order of the file, and what is wrong with it."""
    path = folder / KINDS_FILE
    try:
        told = tomllib.loads(path.read_text(encoding="utf-8"))
        return tuple(DishKind.model_validate({"name": name, **kind}) for name, kind in told.items()), []
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        return (), [Problem(where=KINDS_FILE, what=f"cannot be read ({error})", remedy="look at that line")]
    except (ValidationError, TypeError):
        remedy = 'write each as `[soup]`, `said = "a soup"`, `words = ["broth"]`'
        return (), [Problem(where=KINDS_FILE, what="holds a kind in another form", remedy=remedy)]


@cache
def shipped_kinds() -> tuple[DishKind, ...]:
    """The kinds that come with the program, read once. Raises CannotGoOn."""
    kinds, problems = read_kinds(shipped("recipes"))
    if problems:
        raise CannotGoOn(problems)
    return kinds


def kind_faults(patterns: Sequence[Pattern], kinds: Sequence[DishKind]) -> Iterator[Problem]:
    """A pattern of no kind or of an unknown one, a kind that no pattern is of, a word that stands for two kinds."""
    known = [kind.name for kind in kinds]
    for pattern in patterns:
        where = f"{pattern.id}.toml"
        if not pattern.kind:
            remedy = f'write `kind = ["soup"]`, or another of {KINDS_FILE}'
            yield Problem(where=where, what="says no kind of dish", remedy=remedy)
        for name in pattern.kind:
            if name not in known:
                remedy = f"write one of {', '.join(known)}, or add it to {KINDS_FILE}"
                yield Problem(where=where, what=f"`{name}` is no kind of dish", remedy=remedy)
    used = {name for pattern in patterns for name in pattern.kind}
    for name in known:
        if name not in used:
            yield Problem(where=KINDS_FILE, what=f"no pattern is of the kind `{name}`", remedy="write it into one")
    owner: dict[tuple[str, ...], str] = {}
    for kind in kinds:
        for word in (kind.name, *kind.words):
            if owner.setdefault(words_of(word), kind.name) != kind.name:
                what = f"`{word}` stands for {owner[words_of(word)]} and {kind.name}"
                yield Problem(where=KINDS_FILE, what=what, remedy="leave it at one of them")
