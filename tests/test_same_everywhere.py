"""The same answer from the same larder whatever PYTHONHASHSEED, locale or time zone says; so are plans by work."""

import json
import os
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest

PLACES = (
    {"PYTHONHASHSEED": "1", "TZ": "Asia/Tokyo", "LC_ALL": "C"},
    {"PYTHONHASHSEED": "77", "TZ": "America/Lima", "LC_ALL": "C.UTF-8"},
)
# Both in one process: a start takes as long as a dinner.
ONE_AFTER_ANOTHER = """
import json, sys
from calmlarder.cli import main
for words in json.loads(sys.argv[1]):
    if main(words):
        sys.exit(1)
"""
LINES = "rice noodles 200g\nfirm tofu 280g, use by tomorrow\ncarrots 300g\nkale 150g\nsoy sauce\n"


def answered(place: dict[str, str], folder: Path, commands: Sequence[Sequence[str]]) -> Any:
    at = ["--today", "2026-03-11", "--home", str(folder / "home")]
    more = ["--at", "18:00", "--larder", str(folder / "lines"), "--json"]
    asked = [[*at, *words, *more] for words in commands]
    run = subprocess.run(
        [sys.executable, "-c", ONE_AFTER_ANOTHER, json.dumps(asked)],
        capture_output=True, check=True, env={**os.environ, **place},
    )  # fmt: skip
    told = json.loads(run.stdout.replace(b"}\n{", b"},\n{").join((b"[", b"]")))
    assert len(told) == len(commands)
    for shown in told:
        shown.pop("seconds", None)
        shown.get("cost", {}).pop("first_seconds", None)
    return told


@pytest.mark.long
def test_the_same_dinner_and_plan_everywhere(tmp_path: Path) -> None:
    (tmp_path / "lines").write_text(LINES, encoding="utf-8")
    commands = (("tonight", "--seconds", "600"), ("plan", "--sittings", "tonight", "--work", "1", "--buy", "0"))
    one, other = (answered(place, tmp_path, commands) for place in PLACES)
    assert one == other
