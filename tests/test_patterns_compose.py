"""Each dish pattern makes its dish from an ordinary fridge, and tells it as a cook would.

The fridges are in `pattern_fridges.toml`, invented, one for each pattern. A dish is composed from its pattern alone,
and goes through the check that shares no code with the solver.
"""

import re
import tomllib
from collections.abc import Callable, Sequence
from functools import cache
from pathlib import Path
from shutil import copytree

import pytest

from calmlarder.compose.compose import best_dinners
from calmlarder.compose.dinner import Dinner, PlateUse
from calmlarder.compose.request import PROTEIN_FLOOR_G, PROTEIN_TARGET_G, DinnerRequest
from calmlarder.household.checked import faults_of
from calmlarder.household.request import Evening
from calmlarder.larder.lot import Lot
from calmlarder.patterns.load import load_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.problems import CannotGoOn
from calmlarder.tables.book import Tables
from calmlarder.tables.places import shipped
from pans import pan_faults

FRIDGES: dict[str, list[str]] = tomllib.loads(
    (Path(__file__).parent / "pattern_fridges.toml").read_text(encoding="utf-8")
)
NEVER_ON_HEAT = {"mayonnaise", "vegan-mayonnaise", "quark", "cottage-cheese", "basil", "coriander", "parsley", "dill"}


def amount_said(use: PlateUse) -> str:
    """How a step says an amount: `120 g carrots`, `2 eggs (110 g)`, `1 egg (55 g)`."""
    one = re.escape(use.name.removesuffix("s"))
    return rf"\b{use.grams} g {re.escape(use.name)}|\d½? ?(?:t(?:sp|bsp) )?{one}s? \({use.grams} g\)"


@pytest.fixture(scope="session")
def asked(tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[[Sequence[str]], list[Lot]], wanting):  # type: ignore[no-untyped-def]
    """The pattern, the lots of its fridge, the request, and the dish it makes."""
    by_id = {pattern.id: pattern for pattern in patterns}

    @cache
    def make(name: str) -> tuple[Pattern, list[Lot], DinnerRequest, Dinner]:
        pattern = by_id[name]
        sitting = pattern.sittings[0]
        aim, floor = PROTEIN_TARGET_G[sitting], PROTEIN_FLOOR_G[sitting]
        wanted = wanting(sitting=sitting, protein_g=aim, protein_floor_g=floor, seconds=60)
        lots = lots_of(FRIDGES[name])
        assert len(lots) == len(FRIDGES[name]), "every line is read"
        _, dinners = best_dinners(lots, wanted, [pattern], tables)
        assert dinners, f"{name} makes nothing of its fridge"
        return pattern, lots, wanted, dinners[0]

    return make


@pytest.mark.parametrize("name", sorted(FRIDGES))
def test_it_makes_its_dish(name: str, asked, tables: Tables) -> None:  # type: ignore[no-untyped-def]
    pattern, lots, wanted, dinner = asked(name)
    assert dinner.pattern == name
    assert not faults_of(dinner, (), Evening(wanted, lots, tables, [shipped("ingredient_tables")]))
    text = " ".join(dinner.steps)
    assert "{" not in text + dinner.title
    assert not re.search(r"\b(with|and|of|over|under)( (and|with|,)|[,.]|$)", dinner.title), dinner.title
    assert not re.search(r"\b(with|and|of) (and|with|\.|,)|  |\.\.| ,", text), text
    for use in dinner.uses:
        assert re.search(amount_said(use), text), use.name
        moments = [moment for moment in dinner.timeline.moments if use.food in moment.adds]
        assert len(moments) == 1, f"{use.name} comes in once"
        if use.food in NEVER_ON_HEAT:
            assert not moments[0].equipment, f"{use.name} stays off the heat"
    slots = pattern.slots
    if "dinner" in pattern.sittings:
        greens = sum(use.grams for use in dinner.uses if slots[use.slot].role == "vegetable")
        assert greens >= 60, f"{greens} g of vegetables"
        assert any(slots[use.slot].role == "base" for use in dinner.uses), "a base that fills"


@pytest.mark.parametrize("name", sorted(FRIDGES))
def test_what_is_raw_is_cooked_to_a_sign(name: str, asked, tables: Tables) -> None:  # type: ignore[no-untyped-def]
    """From where it comes in, the sign of `cautions.csv` (there: fsa_uk) is said, by its last word at least."""
    pattern, _, _, dinner = asked(name)
    slots = pattern.slots
    for use in dinner.uses:
        sign = tables.done_sign(tables.food_by_id[use.food])
        if sign and slots[use.slot].method != "raw":  # cold chicken in a wrap needs none
            comes_in = next(n for n, step in enumerate(dinner.steps) if re.search(amount_said(use), step))
            after = dinner.steps[comes_in:]
            assert any(re.search(rf"\b{sign.split()[-1]}\b", step) for step in after), (use.food, sign)


@pytest.mark.parametrize("name", sorted(FRIDGES))
def test_its_pans_are_minded(name: str, asked, tables: Tables) -> None:  # type: ignore[no-untyped-def]
    *_, dinner = asked(name)
    assert not pan_faults(dinner, tables.food_by_id)


def test_every_pattern_has_its_fridge(patterns: tuple[Pattern, ...]) -> None:
    """But for boxes, which no line of a larder is, and gram flour, of which the least that holds fits no limit."""
    without = {"cold-from-its-box", "warmed-again", "warmed-for-lunch"}
    assert set(FRIDGES) == {pattern.id for pattern in patterns} - without


def test_the_traditions_are_many(patterns: tuple[Pattern, ...]) -> None:
    assert len(patterns) >= 80
    assert len({pattern.tradition for pattern in patterns if "dinner" in pattern.sittings}) >= 10


def test_there_are_dishes_for_every_kitchen(patterns: tuple[Pattern, ...]) -> None:
    """Of each: a dish without a stove, from the microwave alone, of one pan, from the oven."""
    dinners = [pattern for pattern in patterns if "dinner" in pattern.sittings]
    places = {pattern.id: {step.place for step in pattern.steps} for pattern in dinners}
    assert any(there <= {"plate", "bowl"} for there in places.values())
    assert any("microwave" in there and not there & {"pan", "pot", "oven", "dish"} for there in places.values())
    assert any("oven" in there or "dish" in there for there in places.values())
    assert any(there & {"pan", "pot"} and "apart" not in there and "oven" not in there for there in places.values())


def test_words_that_may_lose_a_brace_are_refused(tmp_path: Path) -> None:
    """`[, and {knob} on {base}]` lost its whole step where there was no butter: the rice was never served."""
    folder = tmp_path / "recipes"
    copytree(shipped("recipes"), folder)
    pattern = folder / "steamed-shellfish.toml"
    words = pattern.read_text(encoding="utf-8")
    assert "[, with {knob} on top]" in words
    pattern.write_text(words.replace("[, with {knob} on top]", "[, and {knob} on {base}]"), encoding="utf-8")
    with pytest.raises(CannotGoOn, match="some may stay empty"):
        load_patterns(folder)
