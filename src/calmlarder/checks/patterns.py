"""A dish pattern as its file says it, read without the package's own models."""

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any


def pattern_of(recipes: Path, name: str) -> dict[str, Any]:
    """The pattern of this id, with the places of `shared/slots.toml` that it names among its slots."""
    pattern = _read(recipes / f"{name}.toml")
    named = pattern.get("shared", ())
    shared = _read(recipes / "shared" / "slots.toml") if named else {}
    return {**pattern, "slots": {**pattern["slots"], **{place: shared[place] for place in named}}}


def kinds_known(recipes: Path) -> Mapping[str, Any]:
    """The kinds of dish that may be asked for, by their names."""
    return _read(recipes / "shared" / "kinds.toml")


def _read(path: Path) -> Mapping[str, Any]:
    return _taken_apart(path.read_text(encoding="utf-8"))


@lru_cache(maxsize=512)
def _taken_apart(text: str) -> Mapping[str, Any]:
    """What a file holds: a dinner is checked when it is found and again when it is shown."""
    return tomllib.loads(text)
