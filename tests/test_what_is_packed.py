"""The wheel carries what the program looks for beside its modules; tests/long builds and installs it."""

import tomllib
from pathlib import Path

from calmlarder.tables import places

ROOT = Path(__file__).resolve().parents[1]


def test_tables_and_patterns_go_where_the_program_looks_for_them() -> None:
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    packed = settings["tool"]["hatch"]["build"]["targets"]["wheel"]["force-include"]
    for folder, place in packed.items():
        assert (ROOT / folder).is_dir()
        assert places._PACKAGE.parent / place == places._PACKAGE / "data" / folder
    assert set(packed) == {"ingredient_tables", "recipes"}
