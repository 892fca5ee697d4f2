"""What is settled at home of eye and scale reaches `limit`, `swap` and `adapt`; caps of Varney et al. 2017."""

import json
from pathlib import Path
from typing import Any

import pytest

from calmlarder.cli import main
from calmlarder.store.store import Store


def told(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    assert main([*words, "--json"]) in {0, 3}
    answer: dict[str, Any] = json.loads(capsys.readouterr().out)
    return answer


@pytest.fixture
def unsure(tmp_path: Path) -> str:
    """A home whose cook judges amounts 60 % wrong."""
    with Store.at(tmp_path) as store:
        store.set({"eye": 60}, "settle")
    return str(tmp_path)


def test_limit(unsure: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    usual = told(capsys, "limit", "broccoli", "--home", str(tmp_path / "none"))["grams_eye"]
    less = told(capsys, "limit", "broccoli", "--home", unsure)["grams_eye"]
    assert abs(less - usual * 1.3 / 1.6) <= 1
    assert told(capsys, "limit", "broccoli", "--home", unsure, "--eye", "30")["grams_eye"] == usual


def test_swap(unsure: str, capsys: pytest.CaptureFixture[str]) -> None:
    loads = [
        {
            one["parts"][0]["food"]: one["load_g"]["oligosaccharides"]
            for one in told(capsys, "swap", "brown onion", "--home", unsure, *more)["substitutes"]
            if len(one["parts"]) == 1
        }
        for more in ((), ("--eye", "30"))
    ]
    both = [food for food in loads[0] if loads[1].get(food, 0) > 0.01]
    assert both
    for food in both:
        assert loads[0][food] == pytest.approx(loads[1][food] * 1.6 / 1.3, abs=0.002)
    assert main(["swap", "brown onion", "--home", unsure]) == 0
    assert "60 % more" in " ".join(capsys.readouterr().out.split())


def test_adapt(unsure: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "soup.txt"
    path.write_text("Soup\n\nServes 4\n\nIngredients\n\n2 carrots\n3 brown onions\n", encoding="utf-8")
    key = "oligosaccharides"
    unsure_load, usual = (
        told(capsys, "adapt", str(path), "--home", unsure, *more)["before"]["at_most_g"][key]
        for more in ((), ("--eye", "30"))
    )
    assert unsure_load == pytest.approx(usual * 1.6 / 1.3, rel=0.02)
