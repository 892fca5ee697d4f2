"""Steps and timeline of every dinner of the sixty fridges: one schedule, told twice, and safe to eat.

Read from what the cook sees, with names and signs of our own here: signs of doneness after public food-safety advice
(UK Food Standards Agency, "Cooking your food": poultry, pork and mince steaming hot with no pink; USDA FSIS, safe
minimum temperatures: fish opaque and flaking, shellfish firm, egg white and yolk firm), the rest is cooks' common
practice.
"""

import re
from collections.abc import Iterator, Mapping
from functools import cache

import pytest

from calmlarder.compose.dinner import Dinner
from calmlarder.patterns.load import load_patterns
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped
from calmlarder.tables.rows import Food
from how_much import some
from pans import pan_faults
from test_fridges import FRIDGES, propose

STATES = r"^(cooked|boiled|dry|canned|fresh|frozen|dried|ground|fried|firm|plain|raw|steamed|roast|baked|microwaved) "
SIGNS = {"poultry": "no pink", "meat": "no pink|browned|crisp|steam", "fish": "flak", "shellfish": "firm|shell is open",
         "egg": r"\bset\b"}  # fmt: skip
NEVER_FRIED = {"yoghurt", "salad-leaf", "seed", "nut", "olive", "pickle"}
NEVER_FRIED_FOODS = {"mayonnaise", "salad-cream", "tartare-sauce", "ketchup", "pesto-no-garlic", "cottage-cheese",
                     "quark", "cream-cheese", "mascarpone", "ricotta", "brie", "feta", "basil", "coriander", "dill",
                     "mint", "parsley", "chives", "avocado", "cucumber"}  # fmt: skip


@cache
def book() -> Tables:
    return load_tables([shipped("ingredient_tables")])


@cache
def dinners() -> Mapping[str, Dinner]:
    patterns = load_patterns(shipped("recipes"))
    found = {}
    for path in some(FRIDGES, 2):
        composed = propose(path, book(), patterns)
        if composed.dinners:
            found[path.stem] = composed.dinners[0]
    return found


def each() -> Iterator[tuple[str, Dinner, list[Food]]]:
    for fridge, dinner in dinners().items():
        called = {use.food: use.name for use in dinner.uses}
        yield fridge, dinner, [book().food_by_id[food].model_copy(update={"name": called[food]}) for food in called]


def test_most_fridges_have_a_dinner_to_look_at() -> None:
    assert len(dinners()) >= len(some(FRIDGES, 2)) / 2


def in_the_steps(dinner: Dinner, food: Food) -> tuple[int, int]:
    """Where a food is first put into the dish: the step, and how far into it."""
    short = re.escape(re.sub(STATES, "", food.name))
    for number, step in enumerate(dinner.steps):
        if not step.startswith(("Weigh ", "Get ready", "Meanwhile get ready", "Bring a pot", "Meanwhile bring a pot")):
            found = re.search(rf"\d½? ?(?:g |t(?:sp|bsp) )?{re.escape(food.name)}\b|\bthe {short}\b", step)
            if found:
                return number, found.start()
    pytest.fail(f"{dinner.title}: no step adds {food.name}")


def test_every_food_is_added_once_in_steps_and_timeline_alike() -> None:
    for fridge, dinner, foods in each():
        added = [food for moment in dinner.timeline.moments for food in moment.adds]
        assert sorted(added) == sorted({use.slot + use.food: use.food for use in dinner.uses}.values()), fridge
        for food in foods:
            grams = {use.slot: 0 for use in dinner.uses if use.food == food.id}
            for use in dinner.uses:
                if use.food == food.id:
                    grams[use.slot] += use.grams
            for amount in grams.values():
                name = re.escape(food.name)
                told = rf"(?<!\d){amount} g {name}(?![\w-])|\d½? ?(?:t(?:sp|bsp) )?{name} \({amount} g\)"
                said = re.findall(told, " ".join(dinner.steps))
                assert len(said) == list(grams.values()).count(amount), (fridge, food.name, said)


def test_in_the_same_order() -> None:
    for fridge, dinner, foods in each():
        added = list(dict.fromkeys(food for moment in dinner.timeline.moments for food in moment.adds))
        by_steps = sorted(foods, key=lambda food: in_the_steps(dinner, food))
        moment_of = {food: n for n, moment in enumerate(dinner.timeline.moments) for food in reversed(moment.adds)}
        places = [moment_of[food.id] for food in by_steps]
        assert places == sorted(places), (fridge, [food.id for food in by_steps], added)
        for food in foods:
            assert food.name in dinner.timeline.moments[moment_of[food.id]].what, (fridge, food.name)


def test_what_must_be_cooked_through_is_and_has_its_sign() -> None:
    seen = set()
    for fridge, dinner, foods in each():
        text = " ".join(dinner.steps)
        for food in foods:
            if food.kind in SIGNS and food.state == "raw":
                seen.add(food.kind)
                assert re.search(SIGNS[food.kind], text), (fridge, food.name)
            if "raw" not in food.minutes:
                hot = [m for m in dinner.timeline.moments if m.equipment and food.name in m.what]
                later = [m for m in dinner.timeline.moments if m.equipment and m.minutes >= min(food.minutes.values())]
                assert hot or later, (fridge, food.name)
    assert {"fish", "egg", "shellfish"} <= seen


def test_nothing_is_fried_that_must_not_be() -> None:
    for fridge, dinner, _ in each():
        for moment in dinner.timeline.moments:
            if moment.equipment == "ring":
                for food_id in moment.adds:
                    food = book().food_by_id[food_id]
                    assert food.kind not in NEVER_FRIED, (fridge, moment.what)
                    assert food_id not in NEVER_FRIED_FOODS, (fridge, moment.what)


def test_what_stays_in_the_pan_is_no_egg_among_other_proteins() -> None:
    """Eggs set in three minutes and burn in ten: nothing is fried on top of them that takes longer."""
    for fridge, dinner, _ in each():
        in_pan = False
        for step in (one for one in dinner.steps if not one.startswith(("Weigh ", "Get ready", "Meanwhile get ready"))):
            if in_pan:
                late = re.search(r"Add .*, and (?:fry|cook) until .* About (\d+) minutes", step)
                assert late is None or int(late[1]) <= 3, (fridge, step)
            in_pan = in_pan or bool(
                re.search(r"[Cc]rack in \d+ eggs \(\d+ g\), and stir", step) and "lift out" not in step
            )
            in_pan = in_pan and not re.search(r"^(?:Serve|Lay|Fill|Spoon|Slide|Ladle|Heap|Toss)", step)


def test_the_words_are_whole_sentences() -> None:
    """No brace is left, nothing is salted with salt, no list has a hole in it, nothing is called by two names."""
    for fridge, dinner, _ in each():
        text = " ".join([dinner.title, *dinner.steps])
        hole = r"[{}|]|\band (?:and|with|,)|\bwith (?:and|,|\.)| ,|\.\.|\bbrown it\b"
        assert not re.search(hole, text), (fridge, text)
        for step in dinner.steps:
            assert not (re.search(r"\d g soy sauce", step) and "pinch of salt" in step), (fridge, step)


def test_plates_fill() -> None:
    """A main meal of a day of 1,800 to 2,500 kcal, a quarter of it and more (EU reference intake 2,000 kcal,
    Regulation (EU) No 1169/2011, annex XIII); a few fridges hold no more."""
    energies = [dinner.per_person.energy_kcal for dinner in dinners().values()]
    assert sum(energy >= 450 for energy in energies) >= 0.9 * len(energies)


def test_a_fat_to_fry_in_is_named() -> None:
    """No pan is heated without the larder's own fat, or oil that is taken for granted and counted."""
    for fridge, dinner, foods in each():
        text = " ".join(dinner.steps)
        if re.search(r"\b(fry|brown|soften)\b", text.lower()) and "dry" not in text and "non-stick" not in text:
            assert dinner.taken_for_granted or any("fat" in food.roles for food in foods), fridge
            assert all(thing.split(" ", 2)[2] in text for thing in dinner.taken_for_granted)


def test_nothing_whole_is_weighed_and_a_weighed_amount_stands_first() -> None:
    for fridge, dinner, _ in each():
        weighed = [use for use in dinner.uses if use.how == "weigh" and not use.whole]
        first = dinner.steps[0]
        assert first.startswith("Weigh ") == bool(weighed), fridge
        for use in dinner.uses:
            assert (use in weighed) == (bool(weighed) and use.name in first), (fridge, use.name)


def test_its_pans_are_minded() -> None:
    for fridge, dinner, _ in each():
        assert not pan_faults(dinner, book().food_by_id), fridge
