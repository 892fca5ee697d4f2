"""What was taken for granted in the lines of a larder is told with the dinner that rests on it."""

from pathlib import Path

import pytest

from calmlarder.cli import main


def test_a_food_that_is_counted_under_another_name_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Of what is in the dinner alone: nobody need read what every other line was taken for."""
    larder = tmp_path / "larder.txt"
    lines = ("halibut 300g use by tomorrow", "new potatoes 500g", "carrots 300g", "olive oil", "groundnuts")
    larder.write_text("\n".join(lines), encoding="utf-8")
    assert main(["--home", str(tmp_path), "tonight", "--larder", str(larder), "--count", "1"]) == 0
    told = " ".join(capsys.readouterr().out.split("Assumed of your lines")[1].split())
    assert told.startswith("halibut 300g use by tomorrow (haddock and other white fish)")
    assert "new potatoes" not in told
    assert "carrots" not in told


def test_a_sort_that_is_named_beside_a_dinner_and_was_not_typed_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """1% milk is counted as skimmed, and called so where its last day is told; cow milk is what anybody means."""
    larder = tmp_path / "larder.txt"
    lines = ("firm tofu 400g", "new potatoes 500g", "carrots 300g", "rosemary", "lemon", "1% milk, opened Sunday")
    larder.write_text("\n".join(lines), encoding="utf-8")
    asked = ["tonight", "--larder", str(larder), "--count", "1", "--today", "2026-03-11"]
    assert main(["--home", str(tmp_path), *asked]) == 0
    out = " ".join(capsys.readouterr().out.split())
    assert "Skimmed milk: today is its last day" in out
    assert "1% milk, opened Sunday (skimmed milk)" in out.split("Assumed of your lines")[1]
