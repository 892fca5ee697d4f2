"""Red flags in notes, told and denied. The list: AGA clinical practice update 2022 (recalled); the notes are ours."""

from pathlib import Path

import pytest

from calmlarder.cli import main
from calmlarder.reintroduction.red_flags import red_flags

TOLD = {
    "blood": ["blood in stool", "there was blood on the paper", "I bled after wiping", "dark black stools",
              "no pain but blood when i go", "blood in my poo, not much", "can't say there was no blood",
              "no fever, some blood", "red streaks in my stool", "never felt this bad: blood",
              "not calm today and blood in stool", "no pain. blood in stool", "bloody diarrhoea",
              "pain 2, wind 3; bloody stool", "I noticed blood"],
    "weight loss": ["lost 4 kg without trying", "losing weight and I don't know why", "unexplained weight loss",
                    "I have lost a stone in two months", "dropped 5 kilos", "weight has gone down a lot"],
    "night waking": ["woke at 3 with cramps", "diarrhea woke me up at 4am", "pain wakes me most nights",
                     "up at night with diarrhoea", "it wakes me up every night", "pain all night, could not sleep"],
    "fever": ["a bit feverish", "temperature of 38.5", "fever since monday",
              "I have a temperature", "38.9 temperature"],
    "anaemia": ["doctor says my iron is low", "low iron", "anemic again"],
    "new after 50": ["symptoms started at 54, never had them before"],
    "family": ["mum had bowel cancer", "ovarian cancer in the family"],
    "coeliac": ["my sister is coeliac", "celiac disease in my family"],
}  # fmt: skip
DENIED = [
    "no blood", "fine, no blood, no fever", "blood test came back fine", "slept badly", "lost 2 kg, on purpose",
    "haven't lost weight", "no family history of bowel cancer in my family", "woke up with no pain",
    "not bleeding any more", "blood orange juice", "black beans for dinner, pooed fine", "didn't see blood, had wind",
    "bloody bloating again", "no red flags: no blood, no weight loss, no fever", "Fever? no. Blood? no.",
    "no blood, fever or weight loss", "blood: none", "blood, none",
    "zero blood", "blood-free", "nobody in my family has coeliac disease", "red blood cells test normal",
    "bloated at night", "got up in the night for a glass of water", "lost 2 games, gut calm", "weight stable",
    "gave blood today", "awake early, gut fine", "",
]  # fmt: skip


@pytest.mark.parametrize(("flag", "note"), [(flag, note) for flag, notes in TOLD.items() for note in notes])
def test_what_is_told_is_heard(flag: str, note: str) -> None:
    assert flag in {one.flag for one in red_flags(note)}


@pytest.mark.parametrize("note", DENIED)
def test_what_is_denied_is_none(note: str) -> None:
    assert red_flags(note) == ()


def test_feel_answers_at_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--home", str(tmp_path), "feel", "4", "--note", "woke with pain, blood in stool"]) == 0
    assert "see a doctor" in capsys.readouterr().out
    assert main(["--home", str(tmp_path), "feel", "4", "--note", "no blood"]) == 0
    assert "doctor" not in capsys.readouterr().out
