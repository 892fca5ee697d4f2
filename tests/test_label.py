"""A packet's list of ingredients, held against Regulations (EU) No 1169/2011 and (EC) No 1333/2008."""

import io
import json
import sys
from pathlib import Path
from typing import Any

import pytest

from calmlarder.cli import main
from calmlarder.labels.words import read_label_words, source_faults
from calmlarder.tables.places import shipped


def told(capsys: pytest.CaptureFixture[str], text: str) -> dict[str, Any]:
    assert main(["label", text, "--json"]) == 0
    answer: dict[str, Any] = json.loads(capsys.readouterr().out)
    return answer


def holds(answer: dict[str, Any]) -> dict[str, str]:
    return {one["words"]: one["holds"] for one in answer["matters"]}


@pytest.mark.parametrize(
    ("number", "group"),
    [
        # Regulation (EC) No 1333/2008, Annex II, part B: the polyols by E number.
        ("E420", "sorbitol"), ("E 421", "mannitol"), ("E953", "polyols"), ("e-965", "polyols"), ("E966", "polyols"),
        ("E967", "polyols"), ("E968", "polyols"), ("E420(ii)", "sorbitol"), ("E330", None), ("E202", None),
    ],
)  # fmt: skip
def test_polyols_by_e_number(number: str, group: str | None, capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(capsys, f"Ingredients: sugar, water, sweetener ({number})")
    assert set(holds(answer).values()) == ({group} if group else set())


def test_the_order_tells_how_much_at_most(capsys: pytest.CaptureFixture[str]) -> None:
    """Article 18: descending weight, so the third is at most a third; Annex VII A 6: below 2 % the order is free."""
    answer = told(capsys, "Tomatoes, water, onion, salt, garlic powder")
    most = {one["words"]: one["at_most_percent"] for one in answer["matters"]}
    assert most == {"onion": pytest.approx(100 / 3, abs=0.01), "garlic powder": 20.0}
    long = ", ".join([*(f"thing{n}" for n in range(80)), "garlic"])
    assert told(capsys, long)["matters"][0]["at_most_percent"] == 2.0
    said = told(capsys, "tomatoes (80%), onions (5%), sugar, inulin")
    assert [one["at_most_percent"] for one in said["matters"]] == [5.0, 5.0]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        # Annex VII, part C: an additive is named by its class with its name or its E number; both name one sweetener.
        ("sweetener: sorbitol (E420)", ["sorbitol"]), ("sorbitol syrup [E 420(ii)], salt", ["sorbitol"]),
        ("E420 (sorbitol)", ["e420"]), ("sweetener: sorbitol E420", ["sorbitol"]),
        ("sweeteners (maltitol (E965), sorbitol)", ["maltitol", "sorbitol"]), ("E420, E421", ["e420", "e421"]),
        ("erythritol (E968)", ["erythritol"]), ("whey powder (milk)", ["whey powder", "milk"]),
    ],
)  # fmt: skip
def test_a_thing_with_its_number_is_one_thing(text: str, words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert [one["words"] for one in told(capsys, text)["matters"]] == words


@pytest.mark.parametrize(
    ("text", "answer"),
    [
        (
            "tofu, onion powder, spices",
            "It holds fructans (onion powder); it may hold onion or garlic unnamed (spice).",
        ),
        ("rice, salt", "It names nothing that is known to matter."),
    ],
)
def test_the_answer_stands_first(text: str, answer: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["label", text]) == 0
    assert " ".join(capsys.readouterr().out.split()).startswith(answer)
    assert told(capsys, text)["answer"] == answer


def test_inside_another_it_is_at_most_a_part_of_that(capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(capsys, "rice, sauce (water, soy sauce (water, soya beans, wheat), garlic), sesame oil")
    found = {one["words"]: (one["inside"], one["at_most_percent"]) for one in answer["matters"]}
    assert found["garlic"] == ("sauce", pytest.approx(50 / 3, abs=0.01))
    assert found["wheat"] == ("soy sauce", pytest.approx(25 / 3, abs=0.01))
    assert set(answer["allergens"]) == {"gluten", "soya", "sesame"}


def test_hidden_and_named_are_told_apart(capsys: pytest.CaptureFixture[str]) -> None:
    answer = told(
        capsys,
        "Wheat flour, honey, glucose-fructose syrup, whey powder (milk), chicory root fibre, pea flour, "
        "natural flavourings, spices. May contain nuts and sesame.",
    )
    assert holds(answer) == {
        "wheat flour": "fructans", "honey": "fructose", "glucose fructose syrup": "fructose",
        "whey powder": "lactose", "milk": "lactose", "chicory root fibre": "fructans", "pea flour": "gos",
        "natural flavouring": "hidden", "spice": "hidden",
    }  # fmt: skip
    assert (set(answer["allergens"]), set(answer["traces"])) == ({"gluten", "milk"}, {"nuts", "sesame"})
    assert answer["verdict"] == "not_known"
    assert any(one.startswith("Ask the maker") for one in answer["advice"])
    assert any("later a small serving may be fine" in one for one in answer["advice"])


@pytest.mark.parametrize(
    "text", ["soya lecithin", "wheat starch", "coconut milk", "garlic-infused oil", "onion-free stock powder of salt"]
)
def test_names_that_sound_so_and_hold_none(text: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert set(holds(told(capsys, f"rice, {text}")).values()) <= {"hidden"}


def test_nothing_found_is_no_verdict(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(b"Ingredients: rice, salt.\n")))
    assert main(["label", "-"]) == 0
    shown = " ".join(capsys.readouterr().out.split())
    assert "That is no proof" in shown
    assert "2 ingredients read" in shown
    assert main(["label", " , "]) == 2
    assert main(["label", "a" * 30_000]) == 2


def test_the_table_of_words_is_checked(tmp_path: Path) -> None:
    (tmp_path / "label_words.csv").write_text(
        "words,holds,sure,note,source\nzorb,gos,yes,,nobody\nzorbs,lactose,yes,,eu1333\nzab,sugar,yes,,eu1333\n",
        encoding="utf-8",
    )
    shipped_words = shipped("ingredient_tables")
    faults = [*read_label_words([shipped_words, tmp_path])[1], *source_faults([shipped_words, tmp_path])]
    assert {str(fault).split(" ")[0].rstrip(":") for fault in faults} == {
        "label_words.csv:2:5", "label_words.csv:3:1", "label_words.csv:4:2",
    }  # fmt: skip
    assert [*read_label_words([shipped_words])[1], *source_faults([shipped_words])] == []


def test_a_file_named_in_place_of_the_list_is_read(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    packet = tmp_path / "bar.txt"
    packet.write_text(
        "Ingredients: triticale flakes, isomalto-oligosaccharide syrup, peach, lactose-free milk", "utf-8"
    )
    # Wheat's and rye's cross holds fructans as both do; peaches hold sorbitol (Yao et al. 2014, 10.1111/jhn.12127).
    assert holds(told(capsys, str(packet))) == {
        "triticale": "fructans", "isomalto oligosaccharide": "gos", "peach": "sorbitol",
    }  # fmt: skip
