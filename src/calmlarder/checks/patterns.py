"""A dish pattern as its file says it, read without the package's own models."""

import tomllib
from pathlib import Path
from typing import Any


def pattern_of(recipes: Path, name: str) -> dict[str, Any]:
    """The pattern of this id, with the places of `shared/slots.toml` that it names among its slots."""
    pattern = _read(recipes / f"{name}.toml")
    named = pattern.get("shared", ())
    shared = _read(recipes / "shared" / "slots.toml") if named else {}
    return {**pattern, "slots": {**pattern["slots"], **{place: shared[place] for place in named}}}


def _read(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))
