"""Swaps in a dish: whether each part can stand there is read anew from the pattern's own file and foods.csv."""

import json
import tomllib
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from by_hand import foods, passed, rows
from calmlarder.cli import main
from calmlarder.intake.plate import Serving
from calmlarder.intake.profile import profile_named
from calmlarder.swaps.model import Asked
from calmlarder.swaps.rank import substitutes
from calmlarder.swaps.work import work
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

PAIRS = [
    ("garlic", "stir-fry"),
    ("garlic", "pasta"),
    ("onion-brown", "tomato-stew"),
    ("cauliflower", "tray-bake"),
    ("mushroom-button", "stir-fry"),
    ("chickpeas-boiled", "grain-bowl"),
    ("pasta-wheat-dry", "pasta"),
    ("milk-cow", "porridge"),
    ("tofu-silken", "noodle-soup"),
]


def pattern(name: str) -> dict[str, Any]:
    return tomllib.loads((shipped("recipes") / f"{name}.toml").read_text(encoding="utf-8"))


def takes(slot: dict[str, Any], food: dict[str, str]) -> bool:
    ways = {way.partition(":")[0] for way in food["minutes"].split(";")}
    return (
        slot["role"] in food["roles"].split(";")
        and slot["method"] in ways
        and food["kind"] in slot.get("kinds", [food["kind"]])
        and food["id"] in slot.get("foods", [food["id"]])
        and food["id"] not in slot.get("not_foods", [])
        and food["state"] in slot.get("states", [food["state"]])
    )


def asked(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    assert main(["swap", *words, "--json", "--home", "/nowhere/at/all"]) in {0, 3}
    answer: dict[str, Any] = json.loads(capsys.readouterr().out)
    return answer


@pytest.mark.parametrize(("food", "name"), [pair for pair in PAIRS if pair[0] in foods()])
def test_each_part_can_stand_in_the_dish(food: str, name: str, capsys: pytest.CaptureFixture[str]) -> None:
    dish = pattern(name)
    answer = asked(capsys, food, "--in", name)
    for one in answer["substitutes"]:
        for part in one["parts"]:
            row = foods()[part["food"]]
            homes = {home.partition(":")[0] for home in row["flavours"].split(";")}
            assert "any" in homes or homes & set(dish["flavours"]), part
            slots = [slot for slot in dish["slots"].values() if takes(slot, row)]
            assert slots, part
            if len(one["parts"]) == 1 and one["when"].startswith("cooked"):
                assert any(slot["method"] != "raw" for slot in slots)
            if len(one["parts"]) == 1 and one["when"].startswith("raw"):
                assert any(slot["method"] == "raw" for slot in slots)
        assert not passed([(part["food"], part["grams"]) for part in one["parts"]])


def test_enough_is_left_to_choose(capsys: pytest.CaptureFixture[str]) -> None:
    assert len([pair for pair in PAIRS if pair[0] in foods()]) >= 6
    for food, name in PAIRS[:5]:
        assert len(asked(capsys, food, "--in", name)["substitutes"]) >= 2, (food, name)


def test_the_dish_says_how_much(capsys: pytest.CaptureFixture[str]) -> None:
    """Two vegetables share the usual 1.x portions of the slot; --amount overrules it."""
    slot = pattern("stir-fry")["slots"]["vegetable"]
    usual = float(foods()["mushroom-button"]["portion_g"]) * slot["portions"][1] / slot["usual_items"]
    assert asked(capsys, "mushroom-button", "--in", "stir-fry")["amount_g"] == pytest.approx(usual, abs=0.5)
    assert asked(capsys, "mushroom-button", "--in", "stir-fry", "--amount", "50")["amount_g"] == 50


def test_raw_and_cooked_are_told_apart(capsys: pytest.CaptureFixture[str]) -> None:
    """Spices fried in oil have no place in a cold box; chives strewn raw have."""
    cold = {"food": "onion-red", "pattern": "potato-salad-box"}
    assert all(
        slot["method"] == "raw" for slot in pattern(cold["pattern"])["slots"].values() if slot["role"] == "topping"
    )
    found = asked(capsys, cold["food"], "--in", cold["pattern"])["substitutes"]
    assert found
    single = [one for one in found if len(one["parts"]) == 1]
    heated = [slot for slot in pattern(cold["pattern"])["slots"].values() if slot["method"] != "raw"]
    for one in single:
        if one["when"].startswith("cooked"):
            assert any(takes(slot, foods()[one["parts"][0]["food"]]) for slot in heated)


def test_fructans_stay_out_of_oil_in_the_dish_too(capsys: pytest.CaptureFixture[str]) -> None:
    """Fructans dissolve in water, not in oil (Tuck et al. 2018, J Hum Nutr Diet 31:422-435)."""
    found = asked(capsys, "garlic", "--in", "stir-fry")["substitutes"]
    oil = next(one for one in found if [part["food"] for part in one["parts"]] == ["oil-garlic"])
    assert oil["load_g"]["oligosaccharides"] == 0


def test_pulses_from_a_tin_hold_less(capsys: pytest.CaptureFixture[str]) -> None:
    """Canning and draining lowers the GOS of pulses (Tuck et al. 2018): the tin is offered, its load is smaller."""
    answer = asked(capsys, "chickpeas-boiled", "--amount", "40")
    tin = next(one for one in answer["substitutes"] if one["parts"][0]["food"].endswith("-canned"))
    gos = {(row["food"], row["component"]): float(row["g_per_100g"]) for row in rows("fermentables")}
    part = tin["parts"][0]
    whole = gos["chickpeas-boiled", "gos"] + gos["chickpeas-boiled", "fructans"]
    less = gos[part["food"], "gos"] + gos[part["food"], "fructans"]
    assert less * part["grams"] < whole * 40


def test_what_lies_beside_it_counts(tables: Tables) -> None:
    """A plate that is nearly full leaves less to choose from, and nothing offered passes the cut-offs with it."""
    profile = profile_named("elimination", tables)
    question = Asked(food=tables.food_by_id["cauliflower"], grams=Decimal(75), profile=profile)
    beside = [Serving(tables.food_by_id["broccoli"], Decimal(30))]
    alone = substitutes(question, tables).substitutes
    with_it = substitutes(question, tables, None, beside).substitutes
    assert 0 < len(with_it) < len(alone)
    for one in with_it:
        plate = [(part.food.id, float(part.grams)) for part in (*one.candidate.parts, *beside)]
        assert not passed(plate)


def test_work_is_a_share_and_like_does_most_of_it(tables: Tables) -> None:
    leaf, other, oil = (tables.food_by_id[name] for name in ("spinach", "kale", "oil-olive"))
    assert work(leaf, [leaf]) == pytest.approx(1.0)
    assert 0 <= work(leaf, [oil]) < work(leaf, [other]) < 1


@pytest.mark.parametrize("words", [("garlic", "--in", "nowhere\x1b[2J"), ("milk-cow", "--in", "stir-fry")])
def test_wrong_dishes_are_told(words: tuple[str, ...], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["swap", *words, "--home", "/nowhere/at/all"]) == 2
    error = capsys.readouterr().err
    assert error.startswith("calmlarder: --in")
    assert "\x1b" not in error


def test_in_a_recipe_the_share_of_one_and_the_rest_count(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """300 g for two are 150 g each; what is offered passes no cut-off together with the rest of the plate."""
    recipe = tmp_path / "tray.txt"
    lines = "300 g cauliflower\n60 g broccoli\n2 tbsp olive oil\na thingummy of whatsit\n"
    recipe.write_text(f"Tray of greens\n\nServes 2\n\nIngredients\n{lines}\nMethod\nRoast it.\n", encoding="utf-8")
    answer = asked(capsys, "cauliflower", "--in-recipe", str(recipe))
    assert answer["amount_g"] == 150
    assert any("thingummy" in line for line in answer["not_counted"])
    assert answer["substitutes"]
    alone = asked(capsys, "cauliflower", "--amount", "150")["substitutes"]
    room = {one["parts"][0]["food"]: one["headroom_g"]["total"] for one in alone}
    for one in answer["substitutes"]:
        assert one["headroom_g"]["total"] < room[one["parts"][0]["food"]]
        plate = [(part["food"], part["grams"]) for part in one["parts"]]
        assert not passed([*plate, ("broccoli", 30), ("oil-olive", 14)])
    assert main(["swap", "garlic", "--in-recipe", str(recipe)]) == 2
    assert main(["swap", "garlic", "--in-recipe", str(tmp_path / "none")]) == 2
    assert "Traceback" not in capsys.readouterr().err


def test_a_rest_that_passes_a_cap_already_is_told(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """Onion passes Varney et al. 2017 whatever stands for the garlic: what adds nothing to it may still be offered."""
    recipe = tmp_path / "stew.txt"
    recipe.write_text(
        "Stew\n\nServes 2\n\nIngredients\n1 onion\n2 cloves garlic\n200 g carrots\n\nMethod\nFry it.\n",
        encoding="utf-8",
    )
    assert passed([("onion-brown", 55.0)]) >= {"oligosaccharides"}
    answer = asked(capsys, "garlic", "--in-recipe", str(recipe))
    assert "oil-garlic" in {one["parts"][0]["food"] for one in answer["substitutes"]}
    for one in answer["substitutes"]:
        assert one["load_g"]["oligosaccharides"] == 0
        assert one["headroom_g"]["oligosaccharides"] < 0
