"""Red flags in notes, told and denied. The list: AGA clinical practice update 2022 (recalled); the notes are ours."""

from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calmlarder.cli import main
from calmlarder.reintroduction.red_flags_in_notes import red_flags
from calmlarder.render.signs_text import see_a_doctor

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
    "bleeding": ["black stool", "tarry stools since noon", "vomiting blood", "threw up blood", "bloody diarrhoea",
                 "a lot of blood in the toilet", "heavy bleeding", "bleeding that won't stop"],
    "faint": ["fainted", "I feel faint", "passed out in the bathroom", "fainting and cramps"],
    "severe pain": ["severe stomach pain", "worst pain ever", "unbearable cramps", "pain 10 of 10", "pain 9/10",
                    "pain was 8 out of 10", "stomach pain is excruciating"],
    "vomiting": ["can't keep water down", "cannot keep anything down", "vomiting all night", "throwing up all day",
                 "not able to keep water down", "couldn't keep any fluids down", "can’t stop vomiting"],
    "allergy": ["hives and swollen lips after prawns", "trouble breathing", "throat swelling", "my tongue is swollen",
                "can't breathe properly", "lips swelled up"],
    "eating": ["I make myself sick", "made myself throw up", "haven't eaten for two days",
               "have not eaten anything in 3 days", "I am starving myself"],
    "life": ["want to die", "I don't want to live any more", "thought of killing myself", "suicidal thoughts"],
}  # fmt: skip
TOLD["night waking"] += [
    "woke me at night", "pain that kept waking me at night", "had to run to the toilet at 3 am",
    "ran to the loo in the middle of the night",
]  # fmt: skip
TOLD["blood"] += [
    "there were drops of red in the toilet", "not much blood, but some", "a few drops of blood", "not sure if blood",
    "blood?", "doctor took blood because of blood in my stool", "no pain but there is blood",
]  # fmt: skip
TOLD["weight loss"] += [
    "lost 5 kg in a month, not on purpose", "didn't mean to lose 3 kg", "I wasn't trying to lose weight but lost 4 kg",
    "I didnt mean to but im 4 kg lighter", "unintentional weight loss of 3kg",
]  # fmt: skip
TOLD["night waking"] += ["got up twice in the night with diarrhoea", "up three times last night with the runs",
                         "can't sleep because of the cramps"]  # fmt: skip
TOLD["fever"] += ["temperature was 38.7", "temp 38.5", "hot and shivering"]
TOLD["new after 50"] += ["never had this before I turned 55", "these symptoms are new, I am 61"]
TOLD["severe pain"] += ["10/10 pain"]
TOLD["vomiting"] += ["I can't stop being sick"]
TOLD["life"] += ["I don't see a point in living"]
DENIED = [
    "no blood", "fine, no blood, no fever", "blood test came back fine", "slept badly", "lost 2 kg, on purpose",
    "haven't lost weight", "no family history of bowel cancer in my family", "woke up with no pain",
    "not bleeding any more", "blood orange juice", "black beans for dinner, pooed fine", "didn't see blood, had wind",
    "bloody bloating again", "no red flags: no blood, no weight loss, no fever", "Fever? no. Blood? no.",
    "no blood, fever or weight loss", "blood: none", "blood, none",
    "zero blood", "blood-free", "nobody in my family has coeliac disease", "red blood cells test normal",
    "bloated at night", "got up in the night for a glass of water", "lost 2 games, gut calm", "weight stable",
    "gave blood today", "awake early, gut fine", "",
    "yellow fever vaccine", "hay fever, gut fine", "the baby woke me at night", "the cat woke me up at night",
    "no black stool", "didn't faint", "a faint smell of garlic", "no severe pain", "pain not severe", "pain 2 of 10",
    "could keep water down", "no vomiting all night", "no trouble breathing", "lips not swollen", "swollen belly",
    "haven't eaten onions for two days", "haven't eaten out for 3 weeks", "pain 8 am to 9 am", "dying for a pizza",
    "didnt see blood", "dont have a fever", "havent lost weight", "0 blood", "no blood!", "blood = none",
    "doctor took blood", "had blood taken", "nose bleed", "gums bled", "want to lose 3 kg", "temperature 36.8",
    "oven temperature 180", "I am 56 and feeling well", "new recipe, 60 g oats", "bright red pepper salad, loo fine",
    "up at night with the baby", "not once up at night", "sick of rice", "can't stop being sick of rice",
    "ran to the toilet at 3 pm", "lunch was 10 of 10", "never vomited blood", "not suicidal", "not fainted",
]  # fmt: skip


@pytest.mark.parametrize(("flag", "note"), [(flag, note) for flag, notes in TOLD.items() for note in notes])
def test_what_is_told_is_heard(flag: str, note: str) -> None:
    assert flag in {one.flag for one in red_flags(note)}


@pytest.mark.parametrize("note", DENIED)
def test_what_is_denied_is_none(note: str) -> None:
    assert red_flags(note) == ()


_BEFORE = ("", "today ", "gut ok, ", "calm mostly; ", "after dinner: ", "bloated. ", "tired but ", "dose day. ")
_BEHIND = ("", " today", ", otherwise fine", "; will see", "!", " :(", ", wind 2", ". bloating 3")


@given(
    st.sampled_from([note for notes in TOLD.values() for note in notes]),
    st.sampled_from(_BEFORE), st.sampled_from(_BEHIND), st.sampled_from([str, str.upper, str.capitalize]),
)  # fmt: skip
def test_a_sign_is_heard_whatever_stands_around_it(
    told: str, before: str, behind: str, written: Callable[[str], str]
) -> None:
    assert red_flags(written(f"{before}{told}{behind}"))


@given(st.sampled_from(["no blood", "no fever", "didn't see any blood", "no blood or fever", "slept through, no pain",
                        "no weight loss", "nobody in the family has coeliac disease", "without blood"]),
       st.sampled_from(_BEFORE), st.sampled_from(_BEHIND))  # fmt: skip
def test_what_is_denied_stays_denied_whatever_stands_around_it(denied: str, before: str, behind: str) -> None:
    assert not red_flags(f"{before}{denied}{behind}")


@pytest.mark.parametrize("note", ["black stool", "throwing up blood", "bloody diarrhoea", "fainted", "swollen lips"])
def test_an_emergency_is_one_clear_sentence(note: str) -> None:
    """Black stool and vomited blood are emergencies: common advice on bleeding from the gut, recalled."""
    told = see_a_doctor(red_flags(note))
    assert f"“{note}”" in told
    assert "emergency number" in told
    assert "soon" not in told
    assert "need not be serious" not in told


@pytest.mark.parametrize(
    ("note", "said", "unsaid"),
    [
        ("my sister has coeliac disease", "coeliac test", "emergency"),
        ("dad had bowel cancer", "no hurry", "emergency"),
        ("low iron", "coeliac", "emergency"),
        ("blood in my stool", "emergency help now", "hurry"),
        ("can't keep water down", "medical help today", "soon"),
        ("severe stomach pain", "emergency help now", "soon"),
        ("want to die", "crisis line", "stool"),
        ("I make myself sick", "need not bear it alone", "emergency help now"),
    ],
)
def test_each_sign_has_its_own_answer(note: str, said: str, unsaid: str) -> None:
    told = see_a_doctor(red_flags(note))
    assert said in told
    assert unsaid not in told


def test_the_most_urgent_comes_first_and_nothing_is_lost() -> None:
    told = see_a_doctor(red_flags("low iron. black stool"))
    assert told.startswith("You wrote “black stool”. That needs emergency help now")
    assert "“low iron”" in told


@pytest.mark.parametrize("scores", [["8"], ["9", "0", "1", "0"]])
def test_strong_pain_in_numbers_is_answered(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], scores: list[str]
) -> None:
    assert main(["--home", str(tmp_path), "feel", *scores]) == 0
    assert "get emergency help" in " ".join(capsys.readouterr().out.split())


@pytest.mark.parametrize("scores", [["7"], ["2", "9", "9", "0"]])
def test_strong_wind_is_no_strong_pain(tmp_path: Path, capsys: pytest.CaptureFixture[str], scores: list[str]) -> None:
    assert main(["--home", str(tmp_path), "feel", *scores]) == 0
    assert "emergency" not in capsys.readouterr().out


def test_feel_answers_at_once(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--home", str(tmp_path), "feel", "4", "--note", "woke with pain, blood in stool"]) == 0
    assert "see a doctor" in capsys.readouterr().out
    assert main(["--home", str(tmp_path), "feel", "4", "--note", "no blood"]) == 0
    assert "doctor" not in capsys.readouterr().out


@pytest.mark.parametrize(
    "line", ["blood in my stool", "pain 9/10", "black stools", "200 g carrots, blood in my stool", "low iron",
             "my throat is swollen", "i feel faint", "woke at 3 with cramps"],
)  # fmt: skip
@pytest.mark.parametrize("command", [("larder", "add"), ("ate",), ("match",)])
def test_a_sign_in_the_place_of_a_food_is_answered(
    line: str, command: tuple[str, ...], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    home = [] if command == ("match",) else ["--home", str(tmp_path)]
    assert main([*command, *home, line]) == 2
    told = capsys.readouterr()
    words = " ".join((told.out + told.err).split())
    assert "That is no food" in words or "that is no food" in words
    assert see_a_doctor(red_flags(line)).split(". ")[0] in words
    assert "calmlarder feel 4 --note" in words
    assert "pudding" not in words
    if command != ("match",):
        assert main(["larder", "list", *home]) == 0
        assert "carrots" not in capsys.readouterr().out


@pytest.mark.parametrize(
    "line", ["blood orange", "black pudding 200 g", "new potatoes 50 g", "feverfew tea", "pain 8 slices",
             "gluten free bread 400 g (my son is coeliac)", "black beans 200 g", "100 g blood sausage"],
)  # fmt: skip
def test_a_food_stays_a_food(line: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["match", line]) == 0
    assert "no food" not in capsys.readouterr().out
