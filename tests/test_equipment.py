"""A kitchen with fewer rings, no oven, no blender: dishes that want them stay away, and the timeline keeps to it."""

from collections.abc import Callable, Sequence
from pathlib import Path

import pytest

from calmlarder.checks.dinner import verify
from calmlarder.cli import main
from calmlarder.compose.compose import compose
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.kitchen.equipment import THINGS, Equipment
from calmlarder.larder.lot import Lot
from calmlarder.matching.kitchen_told import kitchen_lacks
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped

LotsOf = Callable[[Sequence[str]], list[Lot]]
Wanting = Callable[..., DinnerRequest]
LINES = ["firm tofu 280g, use by today", "dry white rice 500g", "spinach 200g, use by today", "3 carrots", "soy sauce",
         "rapeseed oil", "eggs x6", "potatoes 1kg"]  # fmt: skip


def most_at_once(dinner: Dinner, place: str) -> int:
    moments = [moment for moment in dinner.timeline.moments if moment.equipment == place]
    return max((sum(m.start_min <= minute < m.start_min + m.minutes for m in moments)
                for minute in range(dinner.minutes)), default=0)  # fmt: skip


def test_every_pattern_names_what_its_methods_need(patterns: tuple[Pattern, ...]) -> None:
    for pattern in patterns:
        held = " ".join(pattern.equipment).split()
        methods = {slot.method for slot in pattern.slots.values()}
        assert "oven" in held or not any(step.place in {"oven", "dish"} for step in pattern.steps), pattern.id
        assert "microwave" in held or "microwave" not in methods, pattern.id


def test_every_thing_that_may_be_missing_is_wanted_by_some_dish(patterns: tuple[Pattern, ...]) -> None:
    for thing in THINGS:
        assert any(Equipment(missing=(thing,)).lacks(pattern.equipment) for pattern in patterns), thing


def test_no_pan_is_no_wide_pan_and_no_wide_pan_leaves_the_others() -> None:
    assert Equipment(missing=("pan",)).lacks(["hob", "wide pan"]) == ("pan",)
    assert Equipment(missing=("wide pan",)).lacks(["hob", "pan with a lid"]) == ()
    assert Equipment(missing=("pot",)).lacks(["pot with a lid"]) == ("pot",)


@pytest.mark.parametrize("rings", [1, 2, 4])
def test_the_timeline_keeps_to_the_rings(
    rings: int, tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    dishes = [one for one in patterns if one.id == "rice-bowl"]
    wanted = wanting(equipment=Equipment(rings=rings))
    (dinner,) = compose(lots_of(LINES), wanted, dishes, tables).dinners
    assert most_at_once(dinner, "ring") == min(rings, 2)
    request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
    plain = [lot.model_dump(mode="json") for lot in lots_of(LINES)]
    where = [shipped("ingredient_tables")], shipped("recipes")
    assert verify(dinner_object(dinner), request, plain, *where) == ()
    if rings > 1:
        fewer = {**request, "equipment": {"rings": 1, "missing": []}}
        assert any("too much at once" in fault for fault in verify(dinner_object(dinner), fewer, plain, *where))
    without = {**request, "equipment": {"rings": rings, "missing": ["wide pan", "pot"]}}
    assert any("there is none" in fault for fault in verify(dinner_object(dinner), without, plain, *where))


def test_what_is_missing_leaves_dishes_out_and_is_said(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: LotsOf, wanting: Wanting
) -> None:
    dishes = [one for one in patterns if one.id == "tray-bake"]
    lots = lots_of(["firm tofu 280g", "potatoes 1kg", "carrots 400g", "rapeseed oil", "aubergine 300g"])
    assert compose(lots, wanting(), dishes, tables).dinners
    nothing = compose(lots, wanting(equipment=Equipment(missing=("oven", "blender"))), dishes, tables)
    assert not nothing.dinners
    assert "that the kitchen has no oven" in nothing.obstacles
    assert "the kitchen has no oven, and so no tray bake" in nothing.obstacles
    assert not any("blender" in words for words in nothing.obstacles)
    assert nothing.nearest is None


def test_on_the_command_line(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["demo", "--rings", "5", "--no-equipment", "oven,sauna"]) == 2
    told = capsys.readouterr().err
    assert "--rings" in told
    assert "sauna" in told
    assert main(["demo", "--today", "2026-03-11", "--rings", "1", "--no-equipment", "oven,wide pan"]) == 0


@pytest.mark.parametrize(
    ("line", "lacks"),
    [
        ("(microwave only btw)", ("oven", "pan", "pot")), ("no oven, oven's broken", ("oven",)),
        ("hob broken", ("pan", "pot")), ("only got a microwave", ("oven", "pan", "pot")),
        ("just a hob and a microwave", ("oven",)), ("stove dead", ("oven", "pan", "pot")),
        ("we only have one pan", ()), ("oven chips", ()), ("microwave rice pouch x2", ()), ("microwave", ()),
        ("oven bottom muffins, no butter", ()), ("broken noodles", ()),
    ],
)  # fmt: skip
def test_a_list_tells_what_the_kitchen_lacks(line: str, lacks: tuple[str, ...]) -> None:
    assert kitchen_lacks(line) == lacks


def test_where_a_list_says_microwave_only_nothing_is_cooked_on_a_hob(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    larder = tmp_path / "room.txt"
    foods = "(microwave only btw)\ncooked rice cups 2\n3 hard boiled eggs\nspinach 100g\nsoy sauce\n"
    larder.write_text(foods, encoding="utf-8")
    assert main(["tonight", "--larder", str(larder), "--today", "2026-03-11", "--home", str(tmp_path / "home")]) == 0
    told = capsys.readouterr().out
    assert "Microwave" in told
    assert " pan " not in told
    assert " pot " not in told
    assert "it tells what the kitchen lacks" in " ".join(told.split())
