"""Each line of a cook is heard of again: what stays, what a block leaves, whose oil fries. Common practice, no source.

An hour or less in cold water for a pound, less for what is thin: US Department of Agriculture, safe methods of thawing
(recalled). Thawed food is eaten within a day: UK Food Standards Agency (recalled).
"""

from collections.abc import Callable, Sequence

import pytest

from calmlarder.compose.compose import Composed, compose
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.freezing import thaw_minutes
from calmlarder.larder.lot import Lot
from calmlarder.larder.opening import left_of_a_block
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables

Ask = Callable[..., Composed]


@pytest.fixture
def ask(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> Ask:
    def asked(lines: Sequence[str], pattern: str, people: int = 2) -> Composed:
        chosen = [one for one in patterns if one.id == pattern]
        return compose(lots_of(lines), wanting(people=people, seconds=60), chosen, tables)

    return asked


def told(composed: Composed) -> str:
    return "\n".join(composed.dinners[0].cautions)


FRIDGE = ["rice 1kg", "carrots 4", "smoked tofu 200g", "tamari", "chilli flakes"]


def test_what_keeps_and_is_in_no_dish_is_named(ask: Ask) -> None:
    said = told(ask([*FRIDGE, "peanut butter", "oat drink", "frozen peas", "salt", "2 pears"], "stir-fry", 1))
    stays = next(line for line in said.splitlines() if line.startswith("Stays for another day: "))
    assert all(name in stays for name in ("peanut butter", "oat drink"))
    assert "salt" not in stays  # stands there anyhow
    assert "pear" in next(line for line in said.splitlines() if line.startswith("Not in it, as a usual amount"))


def test_what_is_left_of_a_block_has_its_days(ask: Ask) -> None:
    assert "Left in what you open: smoked tofu (" in told(ask(FRIDGE, "stir-fry", 1))


def test_of_several_blocks_one_is_cut_into(lots_of: Callable[[Sequence[str]], list[Lot]], tables: Tables) -> None:
    (two,) = lots_of(["tofu (firm) x 2 blocks"])
    assert left_of_a_block(two, two.grams - 485, tables) == pytest.approx(two.grams - 485)
    assert left_of_a_block(two, two.grams / 2, tables) == 0
    (opened,) = lots_of(["firm tofu 300g, opened"])
    assert left_of_a_block(opened, 100, tables) == 0


def test_only_what_is_cooked_thaws(ask: Ask, lots_of: Callable[[Sequence[str]], list[Lot]], tables: Tables) -> None:
    lines = ["rice 1kg", "carrots 4", "tempeh 400g (freezer)", "tamari", "chilli flakes"]
    said = told(ask(lines, "stir-fry", 1))
    assert "Thaw no more than " in said
    assert "30 minutes for a slab" in said
    assert "prawns" not in said
    (tempeh,) = lots_of(["tempeh 400g (freezer)"])
    assert thaw_minutes(tempeh, tables.food_by_id["tempeh"], 400, microwave=False) == 30


def test_oil_of_the_steps_is_the_cooks_own(ask: Ask) -> None:
    lines = ["potatoes 1kg", "tempeh 250g", "spinach 300g", "carrots 4", "mustard"]
    assert "The oil of the steps" not in told(ask(lines, "warm-salad", 1))
    assert "The oil of the steps: your rapeseed oil." in told(ask([*lines, "rapeseed oil"], "warm-salad", 1))
    sesame = told(ask([*lines, "toasted sesame oil"], "warm-salad", 1))
    assert "The oil of the steps: a plain one, as toasted sesame oil is for a few drops at the end." in sesame


def test_thighs_with_their_bones_weigh_what_they_weigh(ask: Ask, lots_of: Callable[[Sequence[str]], list[Lot]]) -> None:
    """150 to 200 g raw with bone and skin (common practice), a fifth of it bone (USDA SR 28, 05091: recalled)."""
    (thighs,) = lots_of(["Chicken thighs bone in, 8, best before Mar 13"])
    assert 8 * 115 <= thighs.grams <= 8 * 160
    lines = ["8 chicken thighs bone in", "potatoes 2kg", "carrots 8", "olive oil", "thyme"]
    dinner = ask(lines, "tray-bake", 4).dinners[0]
    use = next(one for one in dinner.uses if "thighs" in one.name)
    assert use.household is not None
    many, _, with_bones = use.household.partition(", ")
    assert many in {"4 of the 8", "all 8"}  # as many each
    assert with_bones.endswith("g including the bones")
    count = 4 if many == "4 of the 8" else 8
    assert 115 <= use.grams / count <= 160


def test_no_crumb_of_onion_is_offered_by_the_gram(ask: Ask) -> None:
    (onion,) = [one for one in ask([*FRIDGE, "onions 2 sprouting"], "stir-fry", 1).excluded if "onion" in one.line]
    assert "would fit" not in onion.why
    assert "last day" not in onion.why


def test_of_what_a_label_tells_is_said(ask: Ask) -> None:
    (sauce,) = [one for one in ask([*FRIDGE, "brown sauce"], "stir-fry", 1).excluded if "sauce" in one.line]
    assert "how much onion or garlic it holds nobody can tell: if its label names neither" in sauce.why
