"""A pack of tortillas that several sittings share holds no more than is in it: the plan's own check recounts it."""

import json
from pathlib import Path

import pytest

from calmlarder.cli import main

LINES = ["eggs 12", "cheddar 450g", "tomatoes 6", "zucchini 400g", "corn tortillas 250g", "rice", "olive oil"]
SITTINGS = "today dinner, tomorrow dinner, 2026-11-29 dinner"


def test_a_pack_is_not_eaten_twice(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home = ["--home", str(tmp_path / "home"), "--today", "2026-11-27"]
    assert main(["larder", "add", *LINES, *home]) == 0
    capsys.readouterr()
    main(["plan", "--sittings", SITTINGS, "--people", "3", "--work", "2", "--buy", "0", "--json", *home])
    plan = json.loads(capsys.readouterr().out)
    used = [use["grams"] for one in plan["sittings"] if one["dinner"] for use in one["dinner"]["uses"]
            if use["food"] == "tortilla-corn"]  # fmt: skip
    assert used
    assert sum(used) <= 250
