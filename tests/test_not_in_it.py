"""What a dinner leaves out for the limits is named; what fits, and what something else is said of, is not.

Cut-offs of one food in a sitting: Varney et al. 2017. A usual portion of kidney beans (0.30 g of oligosaccharides of a
pulse) and of wheat pasta passes them, one of potatoes and carrots does not.
"""

from pathlib import Path

import pytest

from calmlarder.cli import main

LINES = ("firm tofu 400g", "potatoes 1kg", "6 carrots", "penne 500g", "2 tins kidney beans", "2 onions", "olive oil")


def test_what_passes_the_limits_is_named_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    listed = tmp_path / "larder.txt"
    listed.write_text("\n".join(LINES) + "\n", encoding="utf-8")
    assert main(["tonight", "--larder", str(listed), "--today", "2026-03-11", "--count", "1"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    (named,) = (part.split(".")[0] for part in told.split("Not in it, as a usual amount passes the limits: ")[1:])
    assert named == "dry wheat pasta and canned kidney beans"
    assert told.count("2 onions: a usual") == 1


@pytest.mark.parametrize(("made", "times"), [(("hummus",), 1), (("hummus", "curry sauce", "sausage rolls x4"), 1)])
def test_what_to_write_behind_several_is_told_once(
    made: tuple[str, ...], times: int, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    listed = tmp_path / "larder.txt"
    listed.write_text("\n".join((*LINES, *made)) + "\n", encoding="utf-8")
    assert main(["tonight", "--larder", str(listed), "--today", "2026-03-11", "--count", "1"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert told.count("write `without onion or garlic` behind") == times
    assert all(f"{one}: taken as" in told for one in made)
