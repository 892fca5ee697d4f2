"""Several at one table: every plate within its own limits, by `checks/` and by the recount of `random_larders`.

Cut-offs: Varney et al. 2017. The two hundred households of the issue are run by hand (`made_up_households.py`).
"""

import copy
import json
import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any
from unittest.mock import patch

import pytest

from calmlarder.cli import main
from calmlarder.compose.compose import compose_at_table
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.intake.own_profile import own_profile
from calmlarder.intake.profile import Profile, profile_named
from calmlarder.intake.stacking import rooms
from calmlarder.intake.table import Eater, equal_shares_of, table_profile
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from conftest import TODAY
from how_much import some
from made_up_households import eaters_of, faults_of, lots_of, request_for, wrong_plates

FREE = Profile(name="none", food_caps=(), sitting_caps=())


@pytest.mark.parametrize("seed", some(range(300, 312), 3))
def test_random_households_eat_within_everybodys_limits(
    seed: int, tables: Tables, patterns: tuple[Pattern, ...]
) -> None:
    eaters, lots = eaters_of(seed, tables), lots_of(seed, tables)
    request = request_for(eaters, tables)
    for dinner in compose_at_table(lots, request, patterns, tables).dinners:
        assert not list(wrong_plates(dinner_object(dinner), eaters))
        assert not faults_of(dinner, request, lots)


def test_shares_go_by_appetite(tables: Tables) -> None:
    """A child at 0.6 and two who eat as usual: an equal share is 13/9 of the child's."""
    profile = profile_named("elimination", tables)
    table = [Eater(who=who, profile=profile, appetite=much) for who, much in (("a", 1.0), ("b", 1.0), ("child", 0.6))]
    assert float(equal_shares_of(table[2], table)) == pytest.approx(2.6 / 3 / 0.6)
    joint = table_profile(table).at("dinner")
    oligos = next(cap for cap in joint.sitting_caps if cap.key == "oligosaccharides")
    assert oligos.typical_g == (Decimal("0.5") * Decimal("2.6") / 3).quantize(Decimal("0.0001"), "ROUND_DOWN")


def test_one_persons_past_and_anothers_limit_are_not_mixed(tables: Tables) -> None:
    """Whoever tolerates more may have eaten more: the others' room stays whole."""
    elimination = profile_named("elimination", tables)
    owns = [OwnLimit(component="gos", grams=2, on=TODAY, said_by="d")]
    table = [Eater(who="me", profile=own_profile(elimination, owns)), Eater(who="kit", profile=elimination)]
    cap = next(c for c in table_profile(table).at("dinner").sitting_caps if c.key == "oligosaccharides")
    assert rooms((), cap) == rooms((), next(c for c in elimination.at().sitting_caps if c.key == "oligosaccharides"))


def test_a_vegan_and_one_who_is_not_get_protein_apart(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]]
) -> None:
    """Rice and vegetables for both; chicken never touches the vegan's plate."""
    lots = lots_of(
        ["rice 500g", "4 carrots", "courgette 400g", "soy sauce", "olive oil", "1 lime", "chicken breast 200g",
         "firm tofu 60g", "spinach 200g"]
    )  # fmt: skip
    profile = profile_named("elimination", tables)
    eaters = (
        Eater(who="me", profile=profile, diet="omnivore", protein_g=20),
        Eater(who="kit", profile=profile, diet="vegan", protein_g=5, protein_floor_g=4),
    )
    request = request_for(eaters, tables)
    (dinner, *_) = compose_at_table(lots, request, patterns, tables).dinners
    assert not faults_of(dinner, request, lots)
    told = json.loads(json.dumps(dinner_object(dinner)))
    for wrong in ((r"\b\d+ g", "7 g"), ("for me only", "for kit only"), ("no pink", "some pink"), (" Keep its .*", "")):
        spoilt = copy.deepcopy(told)
        spoilt["apart"][0]["said"] = re.sub(*wrong, told["apart"][0]["said"])
        assert spoilt != told
        with patch("made_up_households.dinner_object", lambda _, told=spoilt: told):
            assert faults_of(dinner, request, lots), wrong
    told["apart"][0]["moment"]["minutes"] = 2
    with patch("made_up_households.dinner_object", lambda _: told):
        assert any("on the heat" in fault for fault in faults_of(dinner, request, lots))
    (part,) = [one for one in dinner.apart if one.food == "chicken-breast"]
    assert part.whose == ("me",)
    assert "Keep its board" in part.said
    assert all(use.food != "chicken-breast" for use in dinner.uses)


def test_two_packs_of_one_food_come_apart_once(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]]
) -> None:
    """Mushrooms hold mannitol: elimination bears 0.20 g of it in one food (Varney et al. 2017); kit has no limits."""
    lots = lots_of(
        ["rice 500g", "4 carrots", "firm tofu 400g", "soy sauce", "olive oil", "1 lime", "spinach 200g",
         "mushrooms 250g, use by today", "mushrooms 250g, use by today"]
    )  # fmt: skip
    profile = profile_named("elimination", tables)
    request = request_for((Eater(who="me", profile=profile), Eater(who="kit", profile=FREE)), tables)
    (dinner, *_) = compose_at_table(lots, request, patterns, tables).dinners
    apart = [part.food for part in dinner.apart]
    assert "mushroom-button" in apart
    assert len(set(apart)) == len(apart)


def test_an_allergen_of_one_is_in_nobodys_part(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]]
) -> None:
    lots = lots_of(
        ["rice 500g", "4 carrots", "firm tofu 300g", "soy sauce", "olive oil", "1 lime", "feta 200g, use by today"]
    )
    eaters = (Eater(who="me", profile=FREE, protein_g=40), Eater(who="kit", profile=FREE, avoid=("milk",)))
    request = request_for(eaters, tables)
    for dinner in compose_at_table(lots, request, patterns, tables).dinners:
        assert all(part.food != "feta" for part in dinner.apart)


@dataclass
class Spoilt:
    """A dinner's JSON with one thing changed, which the check must see."""

    name: str
    change: Callable[[dict[str, Any]], None]


@pytest.mark.parametrize(
    "spoilt",
    [
        Spoilt("more", lambda told: [use.update(grams=use["grams"] * 3) for use in told["uses"]]),  # type: ignore[func-returns-value]
        Spoilt("shown", lambda told: told["portions"][0]["loads_g"].update(oligosaccharides=0.0)),
        Spoilt("protein", lambda told: told["portions"][0].update(protein_g=99.0)),
        Spoilt("nobody", lambda told: told["portions"].pop()),
    ],
    ids=lambda one: one.name,
)
def test_the_check_of_plates_can_fail(
    spoilt: Spoilt, tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]]
) -> None:
    lots = lots_of(["rice 900g", "9 carrots", "firm tofu 900g", "soy sauce", "olive oil", "3 limes", "spinach 900g"])
    profile = profile_named("elimination", tables)
    request = request_for((Eater(who="me", profile=profile), Eater(who="kit", profile=profile)), tables)
    (dinner, *_) = compose_at_table(lots, request, patterns, tables).dinners
    told = json.loads(json.dumps(dinner_object(dinner)))
    spoilt.change(told)
    with patch("made_up_households.dinner_object", lambda _: told):
        faults = faults_of(dinner, request, lots)
    assert any(fault.startswith(("me:", "kit:")) for fault in faults), faults


def test_a_dinner_for_named_people_is_logged_for_each(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    def run(*words: str, status: int = 0) -> Any:
        assert main(["--home", str(tmp_path), "--today", TODAY.isoformat(), *words]) == status
        return capsys.readouterr().out

    for line in ("rice 500g", "4 carrots", "firm tofu 400g", "soy sauce", "olive oil", "1 lime", "spinach 200g"):
        run("larder", "add", line)
    run("people", "add", "kit", "--appetite", "1.3", "--profile", "elimination")
    told = json.loads(run("tonight", "--for", "me,kit+1", "--json"))
    (first, *_) = told["dinners"]
    assert [one["who"] for one in first["portions"]] == ["me", "kit", "guest"]
    assert sum(one["share"] for one in first["portions"]) == pytest.approx(1, abs=0.001)
    kept = json.loads(run("cooked", "--json"))["eaten"]
    assert [one["who"] for one in kept] == ["me", "kit"]  # a guest keeps no log
    assert kept[1]["grams"] == pytest.approx(1.3 * kept[0]["grams"], rel=0.02)
    assert main(["--home", str(tmp_path), "tonight", "--for", "me,me"]) == 2
    assert main(["--home", str(tmp_path), "tonight", "--for", "nobody-here"]) == 2


def test_a_plan_for_named_people_holds_for_each(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Its replay counts each plate, and what each ate at noon against their evening."""

    def run(*words: str) -> str:
        assert main(["--home", str(tmp_path), "--today", TODAY.isoformat(), *words]) == 0
        return capsys.readouterr().out

    for line in ("rice 2kg", "9 carrots", "firm tofu 1200g", "soy sauce", "olive oil", "3 limes", "spinach 400g"):
        run("larder", "add", line)
    run("people", "add", "kit", "--appetite", "0.6", "--profile", "elimination")
    told = json.loads(
        run("plan", "--for", "me,kit", "--meals", "tonight, tomorrow packed", "--work", "1", "--buy", "0", "--json")
    )
    dinners = [one["dinner"] for one in told["sittings"] if one["dinner"]]
    assert dinners
    for dinner in dinners:
        share = {one["who"]: one["share"] for one in dinner["portions"]}["kit"]
        meals = dinner["people"] / 2  # a dish may be cooked for several
        assert share * meals == pytest.approx(0.375, abs=0.001)
