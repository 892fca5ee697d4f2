"""The household in one file: what goes in comes out, on another machine too, and nothing else does."""

import copy
import hashlib
import json
import os
import random
import stat
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from calmlarder.store.documents import PLACES
from harm import Answer, ask, lots_of, stocked

Document = dict[str, Any]


def backed_up(home: Path, file: Path) -> Document:
    assert ask(home, "backup", str(file)).status == 0
    return dict(json.loads(file.read_text(encoding="utf-8")))


def household(document: Document) -> Document:
    return {place: document[place] for place in (*PLACES, "own_tables")}


def restored(home: Path, document: Document, tmp_path: Path) -> Answer:
    file = tmp_path / "changed.json"
    file.write_text(json.dumps(document), encoding="utf-8")
    return ask(home, "restore", "--yes", str(file))


def digest(document: Document) -> str:
    """As DEVELOPERS.md tells it, written again here."""
    rest = {name: value for name, value in document.items() if name != "sha256"}
    plain = json.dumps(rest, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    return hashlib.sha256(plain.encode()).hexdigest()


@pytest.fixture
def home(tmp_path: Path) -> Path:
    stocked(tmp_path / "home")
    assert ask(tmp_path / "home", "larder", "add", "mystery jar 200g").status == 0  # waits for an answer
    return tmp_path / "home"


def test_a_household_moves_to_another_machine(home: Path, tmp_path: Path) -> None:
    mine = ("tables", "mine", "add", "seed pesto", "--from", "50 g fresh basil; 30 g walnuts; 60 ml olive oil")
    assert ask(home, *mine).status == 0
    before = backed_up(home, tmp_path / "all.json")
    assert before["sha256"] == digest(before)
    assert sorted(before["own_tables"]) == ["foods.csv", "keeping.csv", "mixtures.csv"]
    assert any("asked" in one for one in before["lots"].values())
    new = tmp_path / "new" / "home"
    assert ask(new, "restore", str(tmp_path / "all.json")).status == 0  # nothing is there: nobody is asked
    assert household(backed_up(new, tmp_path / "again.json")) == household(before)
    assert lots_of(new) == lots_of(home)
    assert ask(new, "eaten", "--json").out == ask(home, "eaten", "--json").out
    assert ask(new, "tables", "show", "seed pesto").status == 0


@pytest.mark.skipif(os.name == "nt", reason="rights of Unix")
def test_a_backup_is_for_its_owner_alone_and_writes_over_nothing(home: Path, tmp_path: Path) -> None:
    backed_up(home, tmp_path / "all.json")
    assert stat.S_IMODE((tmp_path / "all.json").stat().st_mode) == 0o600
    assert ask(home, "backup", str(tmp_path / "all.json")).status == 2
    assert ask(tmp_path / "nothing", "backup", str(tmp_path / "none.json")).status == 2
    assert not (tmp_path / "none.json").exists()


def test_restoring_asks_and_undo_takes_it_back(home: Path, tmp_path: Path) -> None:
    backed_up(home, tmp_path / "all.json")
    assert ask(home, "larder", "add", "2 limes").status == 0
    assert ask(home, "feel", "5", "--when", "14:00").status == 0
    later = household(backed_up(home, tmp_path / "later.json"))
    refused = ask(home, "restore", str(tmp_path / "all.json"))
    assert refused.status == 2
    assert "--yes" in refused.err
    assert household(backed_up(home, tmp_path / "same.json")) == later
    assert ask(home, "restore", "--yes", str(tmp_path / "all.json")).status == 0
    assert "limes" not in ask(home, "larder", "list").out
    assert ask(home, "larder", "undo").status == 0
    assert household(backed_up(home, tmp_path / "back.json")) == later


def test_no_lot_gets_a_number_that_the_ledger_knows(home: Path, tmp_path: Path) -> None:
    new = tmp_path / "new"
    document = backed_up(home, tmp_path / "all.json")
    document["ended"]["1"]["lot"] = 900
    document["sha256"] = digest(document)
    assert restored(new, document, tmp_path).status == 0
    answer = ask(new, "larder", "add", "2 limes", "--json")
    assert json.loads(answer.out)["lots"][0]["id"] > 900


CHANGES: dict[str, Callable[[Document], object]] = {
    "another kind": lambda one: one.update(kind="a song"),
    "a newer version": lambda one: one.update(version=99),
    "newer rows": lambda one: one["documents"].update(lots=99),
    "no rows": lambda one: one.pop("eaten"),
    "rows as a list": lambda one: one.update(lots=[1, 2]),
    "a negative number": lambda one: one["lots"].update({"-1": next(iter(one["lots"].values()))}),
    "a huge number": lambda one: one["lots"].update({"9" * 30: next(iter(one["lots"].values()))}),
    "negative grams": lambda one: next(iter(one["lots"].values())).update(grams=-5),
    "endless grams": lambda one: next(iter(one["lots"].values())).update(grams=1e999),
    "a day that is none": lambda one: next(iter(one["lots"].values())).update(dates=[{"kind": "use-by", "on": "x"}]),
    "a score beyond the scale": lambda one: next(iter(one["felt"].values())).update(score=11),
    "a table of another name": lambda one: one["own_tables"].update({"../foods.csv": "id\n"}),
    "a table that is wrong": lambda one: one["own_tables"].update({"foods.csv": "id,name\nx\n"}),
    "a table with escapes": lambda one: one["own_tables"].update({"names.csv": "name,food\n\x1b[31m,egg\n"}),
    "a row within rows within rows": lambda one: one["settings"].update(words=[[[[[[[[[[[[[[1]]]]]]]]]]]]]]),
}  # fmt: skip


@pytest.mark.parametrize("change", CHANGES)
def test_what_is_wrong_is_refused_and_nothing_changes(change: str, home: Path, tmp_path: Path) -> None:
    document = backed_up(home, tmp_path / "all.json")
    before = household(copy.deepcopy(document))
    CHANGES[change](document)
    document["sha256"] = ""
    answer = restored(home, document, tmp_path)
    assert answer.status == 2, (change, answer)
    assert household(backed_up(home, tmp_path / "after.json")) == before
    assert not list(home.glob(".restoring-*"))


def test_a_changed_sign_is_found(home: Path, tmp_path: Path) -> None:
    backed_up(home, tmp_path / "all.json")
    text, dice = (tmp_path / "all.json").read_text(encoding="utf-8"), random.Random(1)
    digits = [place for place, sign in enumerate(text) if sign.isdigit()]
    for place in dice.sample(digits, 20):
        changed = f"{text[:place]}{(int(text[place]) + 1) % 10}{text[place + 1 :]}"
        (tmp_path / "flipped.json").write_text(changed, encoding="utf-8")
        assert ask(home, "restore", "--yes", str(tmp_path / "flipped.json")).status == 2, changed[
            place - 40 : place + 9
        ]


def test_what_comes_in_cannot_steer_a_terminal(home: Path, tmp_path: Path) -> None:
    document = backed_up(home, tmp_path / "all.json")
    for lot in document["lots"].values():
        lot["line"] = "\x1b]0;evil\x07\x1b[31mkale\u202e 150g"
    document["sha256"] = ""
    assert restored(home, document, tmp_path).status == 0
    for words in (["larder", "list"], ["larder", "list", "--json"], ["larder", "export"]):
        assert not {"\x1b", "\x07", "\u202e"}.intersection(ask(home, *words).out)


def test_every_place_of_the_store_is_in_it(home: Path, tmp_path: Path) -> None:
    """A place that a later version adds must come along, and be looked at on its way in."""
    from calmlarder.household.backup import _CHECKS

    assert set(_CHECKS) | {"settings"} == set(PLACES)
    assert set(PLACES) <= set(backed_up(home, tmp_path / "all.json"))
