"""Swaps, recomputed from the tables' files against the cut-offs of Varney et al. 2017 (doi:10.1111/jgh.13698).

Nothing here calls the program's own sums: by_hand.py works loads out anew.
"""

import copy
import csv
import json
import shutil
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest

from by_hand import AT_MOST, EXACT, SITTING, TABLES, VARNEY_2017, at_most, foods, known, likely, passed, rows
from calmlarder.checks.swap import verify
from calmlarder.cli import main
from calmlarder.intake.profile import profile_named
from calmlarder.render.swap_text import swap_object
from calmlarder.swaps.model import Asked
from calmlarder.swaps.rank import substitutes
from calmlarder.tables.book import Tables
from calmlarder.tables.check import check_tables
from calmlarder.tables.places import shipped

with (Path(__file__).parent / "swap_triggers.csv").open(encoding="utf-8", newline="") as _file:
    TRIGGERS = [(row["food"], float(row["amount_g"])) for row in csv.DictReader(_file)]


def asked(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    main(["swap", *words, "--json"])
    answer: dict[str, Any] = json.loads(capsys.readouterr().out)
    return answer


@pytest.fixture
def answer_for(tables: Tables) -> Callable[..., dict[str, Any]]:
    """What `swap --json` prints, without reading the tables anew each time."""

    def answer(food: str, grams: float, **others: Any) -> dict[str, Any]:
        profile = profile_named("elimination", tables)
        question = Asked(food=tables.food_by_id[food], grams=Decimal(str(grams)), profile=profile, **others)
        return swap_object(substitutes(question, tables))

    return answer


def plate_of(one: dict[str, Any]) -> list[tuple[str, float]]:
    return [(part["food"], part["grams"]) for part in one["parts"]]


def test_the_caps_are_the_published_cut_offs() -> None:
    elimination = [row for row in rows("caps") if row["profile"] == "elimination" and row["scope"] != "day"]
    of_one_food = {
        (row["group"], kind): float(row["typical_g"])
        for row in elimination
        if row["scope"] == "food"
        for kind in row["applies_to"].split(";")
    }
    assert of_one_food == VARNEY_2017
    for row in elimination:
        assert float(row["at_most_g"]) == pytest.approx(AT_MOST * float(row["typical_g"]))


def test_elimination_holds_back_every_trigger() -> None:
    assert len(TRIGGERS) >= 40
    assert len(dict(TRIGGERS)) == len(TRIGGERS)
    for food, grams in TRIGGERS:
        assert food in foods()
        assert not known(food) or passed([(food, grams)]), food


@pytest.mark.parametrize(("food", "grams"), TRIGGERS)
def test_each_trigger_has_three_sound_substitutes(
    food: str, grams: float, answer_for: Callable[..., dict[str, Any]]
) -> None:
    answer = answer_for(food, grams)
    assert list(answer) == ["food", "amount_g", "why", "substitutes"]
    assert answer["food"] == food
    assert len(answer["substitutes"]) >= 3
    for one in answer["substitutes"]:
        plate = plate_of(one)
        assert all(known(part) for part, _ in plate)
        assert not passed(plate), (food, plate)
        loads = {group: sum(likely(*part)[group] for part in plate) for group in one["load_g"]}
        assert one["load_g"] == pytest.approx(loads, abs=0.005)
        assert all(room >= -EXACT for room in one["headroom_g"].values())
        for group, room in one["headroom_g"].items():
            cuts = [cut for (named, _), cut in VARNEY_2017.items() if named == group]
            assert room <= max([*cuts, SITTING.get(group, 0)]) - one["load_g"][group] + EXACT
        assert 0 <= one["score"] <= 100
        assert one["keeps"]
        assert one["loses"]
        assert one["source"]


def test_why_tells_how_far_the_original_goes_over(capsys: pytest.CaptureFixture[str]) -> None:
    load = likely("garlic", 6)["oligosaccharides"]
    why = asked(capsys, "garlic", "--amount", "6")["why"]
    assert f"likely {load:.2f} g of fructans + GOS" in why
    assert f"{load - 0.20:.2f} g over" in why
    assert "fits" in asked(capsys, "carrot", "--amount", "80")["why"]
    assert "No figure is known for the fructans" in asked(capsys, "lychee")["why"]


@pytest.mark.parametrize(("food", "grams"), TRIGGERS)
@pytest.mark.parametrize(
    ("diet", "avoid"), [("vegan", ""), ("vegetarian", "gluten,milk"), ("omnivore", "soya,nuts,peanuts,sesame,eggs")]
)
def test_nothing_breaks_diet_or_allergens(
    food: str, grams: float, diet: str, avoid: str, answer_for: Callable[..., dict[str, Any]]
) -> None:
    shunned = set(avoid.split(",")) - {""}
    found = answer_for(food, grams, diet=diet, avoid=tuple(sorted(shunned)))["substitutes"]
    assert found, (food, diet, avoid)
    for part, _ in (part for one in found for part in plate_of(one)):
        row = foods()[part]
        assert diet != "vegan" or row["diet"] == "vegan"
        assert diet != "vegetarian" or row["diet"] != "omnivore"
        assert not shunned & set(row["allergens"].split(";"))
        assert "gluten" not in shunned or row["gluten"] == "no"


@pytest.mark.parametrize("every", [5])
def test_whatever_is_asked_only_sound_things_are_offered(every: int, answer_for: Callable[..., dict[str, Any]]) -> None:
    """One food in five (in tests/long each), at a usual, a large or a small amount: listed or computed, all hold."""
    offered = 0
    for place, (food, row) in [*enumerate(foods().items())][::every]:
        grams = max(0.1, round(min(900, float(row["portion_g"]) * (1, 2.5, 0.3)[place % 3]), 1))
        for one in answer_for(food, grams, diet="vegan")["substitutes"]:
            plate = plate_of(one)
            assert not passed(plate), (food, grams, plate)
            assert all(foods()[part]["diet"] == "vegan" and part != food for part, _ in plate)
            offered += 1
    assert offered > 1000 / every


def test_no_trouble_under_another_name(answer_for: Callable[..., dict[str, Any]]) -> None:
    for food, grams in TRIGGERS:
        if not known(food):
            continue
        over = passed([(food, grams)]) - {"total", "polyols"}
        for one in answer_for(food, grams)["substitutes"]:
            for part, _ in plate_of(one):
                assert all(at_most(part, group) < 0.8 * at_most(food, group) for group in over), (food, part)


def test_infused_oil_brings_no_fructans(capsys: pytest.CaptureFixture[str]) -> None:
    """Fructans are soluble in water and not in oil, so strained oil carries the aroma alone."""
    found = asked(capsys, "garlic")["substitutes"]
    oil = next(one for one in found if [part["food"] for part in one["parts"]] == ["oil-garlic"])
    assert oil["load_g"]["oligosaccharides"] == 0
    assert "strained" in oil["caution"]
    two = next(one for one in asked(capsys, "onion-brown")["substitutes"] if len(one["parts"]) == 2)
    assert "oil-garlic" in {part["food"] for part in two["parts"]}


@pytest.fixture
def home(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Callable[..., list[str]]:
    def keep(*lines: str) -> list[str]:
        for line in lines:
            assert main(["larder", "add", line, "--home", str(tmp_path / "home"), "--today", "2026-03-11"]) == 0
        capsys.readouterr()
        return ["--home", str(tmp_path / "home"), "--today", "2026-03-11"]

    return keep


def test_the_larder_comes_first(home: Callable[..., list[str]], capsys: pytest.CaptureFixture[str]) -> None:
    place = home("chives 30g", "100g leek greens, use by yesterday", "spring onion greens 5g")
    found = asked(capsys, "onion-brown", *place)["substitutes"]
    assert [one["in_larder"] for one in found] == [True] + [False] * (len(found) - 1)
    assert plate_of(found[0])[0][0] == "chives"
    only = asked(capsys, "onion-brown", "--from-larder", *place)["substitutes"]
    assert [plate_of(one)[0][0] for one in only] == ["chives"]


def test_without_a_larder(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    place = ["--home", str(tmp_path / "none")]
    assert main(["swap", "garlic", *place]) == 0
    assert not (tmp_path / "none").exists()
    assert main(["swap", "garlic", "--from-larder", *place]) == 2
    assert "the larder: nothing is in it yet" in capsys.readouterr().err


def test_text_is_narrow_and_tells_all(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    for food, _ in TRIGGERS[::7]:
        assert main(["swap", food, "--home", str(tmp_path)]) == 0
        out = capsys.readouterr().out
        assert max(map(len, out.splitlines())) <= 80
        for word in ("take", "when", "keeps", "loses", "brings"):
            assert f"   {word}" in out


@pytest.mark.parametrize(
    "words",
    [
        ["swap", "plutonium"],
        ["swap", "garlic", "--amount", "0"],
        ["swap", "garlic", "--amount", "-3"],
        ["swap", "garlic", "--amount", "nan"],
        ["swap", "garlic", "--amount", "1e9"],
        ["swap", "garlic", "--avoid", "joy"],
        ["swap", "garlic", "--profile", "nobody"],
    ],
)
def test_wrong_use_is_told(words: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(words) == 2
    error = capsys.readouterr().err
    assert error.startswith("calmlarder: ")
    assert "Traceback" not in error


@pytest.mark.parametrize(
    ("row", "where"),
    [
        ("garlik,chives,,1,any,a,b,,common_practice", "1"),
        ("garlic,chive,,1,any,a,b,,common_practice", "2"),
        ("garlic,garlic,,1,any,a,b,,common_practice", "2"),
        ("garlic,ginger,alone,1,any,a,b,,common_practice", "3"),
        ("garlic,mint,,lots,any,a,b,,common_practice", "4"),
        ("garlic,mint,,-1,any,a,b,,common_practice", "4"),
        ("garlic,mint,,1,sometimes,a,b,,common_practice", "5"),
        ("garlic,mint,,1,any,a,b,,hearsay", "9"),
        ("garlic,mint,,1,any,,,,common_practice", "1"),
        ("garlic,mint,,1,any,a\x1b[2Jb,c,,common_practice", "6"),
    ],
)
def test_a_faulty_row_is_told_with_its_place(row: str, where: str, tmp_path: Path) -> None:
    folder = Path(shutil.copytree(shipped("ingredient_tables"), tmp_path / "tables"))
    path = folder / "swaps.csv"
    path.write_text(path.read_text(encoding="utf-8") + row + "\n", encoding="utf-8")
    last = len(path.read_text(encoding="utf-8").splitlines())
    faults = [str(problem) for problem in check_tables([folder])[1]]
    assert any(fault.startswith(f"swaps.csv:{last}:{where}:") for fault in faults), faults


def test_the_check_of_swaps_finds_what_is_wrong(tables: Tables) -> None:
    asked_for = Asked(
        food=tables.food_by_id["onion-brown"], grams=Decimal(60), profile=profile_named("elimination", tables)
    )
    answer = swap_object(substitutes(asked_for, tables))
    request = {"profile": "elimination", "diet": "omnivore", "avoid": []}
    assert verify(answer, request, [TABLES]) == ()
    assert verify(answer, {**request, "avoid": ["gluten"]}, [TABLES])  # asafoetida may be cut with wheat
    for number, one in enumerate(answer["substitutes"]):
        for key in ("load_g", "headroom_g"):
            for group, shown in one[key].items():
                wrong = copy.deepcopy(answer)
                wrong["substitutes"][number][key][group] = shown + (0.05 if key == "headroom_g" else -0.05)
                assert verify(wrong, request, [TABLES]), (number, key, group)
    answer["substitutes"][0]["parts"][0]["food"] = "garlic"
    assert verify(answer, request, [TABLES])


def test_what_is_at_home_in_fewer_kitchens_does_not_stand_before_what_does_the_work_everywhere(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Ginger is no garlic in a pasta sauce: oil that garlic was in, or chives, come first, at home or not."""
    home = ["--home", str(tmp_path / "home")]
    assert main(["larder", "add", "fresh ginger 50g", "garlic bulb", "chives 40g", *home]) == 0
    capsys.readouterr()
    assert main(["swap", "garlic", "--json", *home]) == 0
    found = json.loads(capsys.readouterr().out)["substitutes"]
    foods = [[part["food"] for part in one["parts"]] for one in found]
    assert foods[0] == ["chives"]  # at home, and wherever garlic is
    assert foods.index(["oil-garlic"]) < foods.index(["ginger"])
