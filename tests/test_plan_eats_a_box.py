"""What was boxed for tomorrow's lunch is what a new plan eats there, whatever else lies beside it."""

import json
from pathlib import Path

import pytest

from calmlarder.cli import main

CHICKEN = ["chicken thighs 500 g use by tomorrow", "potatoes 1 kg", "carrots 400 g", "green beans 200 g", "oil"]
LUNCH = ["eggs 6", "gluten free bread 400 g", "cheddar 200 g", "lettuce", "mustard"]


@pytest.mark.parametrize("meals", ["tomorrow packed", "tomorrow packed, tomorrow dinner"])
def test_a_box_is_eaten_before_bread_that_keeps(meals: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A cooked meal on its last day is worth more than slices of bread that have five days left."""
    home = ["--home", str(tmp_path), "--today", "2026-03-11"]
    assert main([*home, "larder", "add", *CHICKEN, *LUNCH]) == 0
    assert main([*home, "tonight", "--people", "2"]) == 0
    assert main([*home, "cooked", "--boxes", "1"]) == 0
    capsys.readouterr()
    assert main([*home, "plan", "--meals", meals, "--work", "10", "--json"]) == 0
    plan = json.loads(capsys.readouterr().out)
    lunch = plan["sittings"][0]
    assert (lunch["date"], lunch["sitting"]) == ("2026-03-12", "packed")
    assert any(one["name"].endswith("(boxed)") for one in lunch["dinner"]["uses"])
    assert not [one for one in plan["wasted"] if "boxed" in one["line"]]
