"""The same answer from the same larder whatever PYTHONHASHSEED, locale or time zone says; so are plans by work."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

PLACES = (
    {"PYTHONHASHSEED": "1", "TZ": "Asia/Tokyo", "LC_ALL": "C"},
    {"PYTHONHASHSEED": "77", "TZ": "America/Lima", "LC_ALL": "C.UTF-8"},
)
LINES = "rice noodles 200g\nfirm tofu 280g, use by tomorrow\ncarrots 300g\nkale 150g\nsoy sauce\n"


def answered(place: dict[str, str], folder: Path, *words: str) -> Any:
    at = ["--today", "2026-03-11", "--home", str(folder / "home")]
    more = ["--at", "18:00", "--larder", str(folder / "lines"), "--json"]
    run = subprocess.run(
        [sys.executable, "-m", "calmlarder", *at, *words, *more],
        capture_output=True, check=True, env={**os.environ, **place},
    )  # fmt: skip
    shown = json.loads(run.stdout)
    shown.pop("seconds", None)
    shown.get("cost", {}).pop("first_seconds", None)
    return shown


def test_the_same_dinner_and_plan_everywhere(tmp_path: Path) -> None:
    (tmp_path / "lines").write_text(LINES, encoding="utf-8")
    for words in (("tonight", "--seconds", "600"), ("plan", "--sittings", "tonight", "--work", "1", "--buy", "0")):
        one, other = (answered(place, tmp_path, *words) for place in PLACES)
        assert one == other, words
