"""Pieces of a bird go into the pot with their bones, and their weight with them stands beside what can be eaten.

A third of pieces of chicken is bone: US Department of Agriculture, Standard Reference 28, 05006, refuse (recalled).
"""

import re
from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.checks.dinner_read import Read
from calmlarder.checks.shown_amounts import measure_faults, step_faults

PIECES = "chicken-drumsticks"
BONE = 0.33
ROASTED = ("potatoes 1kg", "carrots 4", "oil", "thyme")
NEAREST_G = 25


@pytest.mark.parametrize(("line", "told"), [("chicken pieces 1 kg", "about"), ("6 chicken thighs bone in", "6")])
def test_the_amounts_and_the_step_tell_what_pieces_weigh_with_their_bones(
    line: str, told: str, cook: Callable[..., Any]
) -> None:
    dinner = cook([line, *ROASTED], "roots-tray", people=3)
    use = next(one for one in dinner.uses if one.food == PIECES)
    assert told in use.household
    (with_bones,) = re.findall(r", (\d+) g including the bones", use.household)
    assert abs(use.grams / (1 - BONE) - int(with_bones)) <= NEAREST_G
    assert f"{with_bones} g including the bones)" in " ".join(dinner.steps)


def test_what_is_sold_without_bones_has_none(cook: Callable[..., Any]) -> None:
    dinner = cook(["boneless chicken drumsticks 700g", *ROASTED], "roots-tray", people=3)
    assert any(one.food.startswith("chicken") for one in dinner.uses)
    assert "with the bones" not in " ".join(dinner.steps)


def test_the_check_recounts_the_bones() -> None:
    use = {
        "food": PIECES,
        "name": "chicken",
        "grams": 630,
        "lot": "1",
        "line": "chicken",
        "slot": "protein",
        "how": "eye",
    }
    row = {"kind": "poultry", "name": "chicken", "portion_g": "150"}

    def faults(household: str, step: str) -> list[str]:
        dinner = {"uses": [{**use, "household": household}], "steps": [step], "taken_for_granted": []}
        lots = {"1": {"line": "chicken", "grams": 670}}
        read = Read(dinner, lots, {PIECES: row}, {}, {}, (), None)  # type: ignore[arg-type]
        return [*measure_faults(read), *step_faults(read)]

    assert not faults("950 g including the bones", "Add 630 g chicken (950 g including the bones).")
    assert faults("700 g including the bones", "Add 630 g chicken (700 g including the bones).")
    assert faults("950 g including the bones", "Add 630 g chicken (800 g including the bones).")
