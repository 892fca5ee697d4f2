"""What a line allows in its food's place: it is read, and what may not be eaten of it leaves the changed recipe."""

from collections.abc import Callable
from functools import partial
from typing import Any

import pytest

from calmlarder.cookbook.lines import LineReader
from calmlarder.tables.book import Tables

Adapt = Callable[..., dict[str, Any]]


@pytest.fixture(scope="module")
def lines(tables: Tables) -> LineReader:
    return LineReader(tables)


@pytest.fixture
def adapt(adapt: Adapt) -> Adapt:
    """What is read of lines, in a supper."""
    return partial(adapt, "Supper")


@pytest.mark.parametrize(
    ("line", "food", "others"),
    [
        ("1 sheet lavash, torn to fit the pot (or 1 thinly sliced potato)", "flatbread", ("potato",)),
        ("2 tablespoons fish sauce (or soy for vegetarians)", "fish-sauce", ("soy-sauce",)),
        ("3 ounces crumbled cotija (feta works too)", "cotija", ("feta",)),
        ("1 slice sourdough, torn, or 40 g breadcrumbs", "bread-sourdough-white", ("breadcrumbs",)),
        ("2 leeks (or 1 onion)", "leek-whole", ("onion-brown",)),
        ("1 parsley root (or parsnip)", "parsley-root", ("parsnip",)),
        ("1 litre stock, vegetable or chicken", "stock-onion", ("stock-meat",)),
    ],
)
def test_each_is_read_by_itself(line: str, food: str, others: tuple[str, ...], lines: LineReader) -> None:
    read = lines.read(line)
    assert (read.food, read.alternatives) == (food, others)


@pytest.mark.parametrize(
    ("line", "food", "grams"),
    [
        ("75 g plain flour + a bit extra if the mix is wet", "flour-wheat-white", 75),
        ("2 cups shelled fava beans, fresh or frozen, skins slipped off", "broad-beans-fresh", 240),
        ("12 oz fresh wheat noodles (or 8 oz dried)", "noodles-wheat-dry", 228),
        ("1 tablespoon chili oil with its sediment, plus more for drizzling", "chilli-crisp", 15),
        ("1 small clove of garlic, finely grated, with a pinch of salt", "garlic", 3),
        ("2 packed cups baby spinach", "spinach", 60),  # a cup of 30 g: USDA SR28, 11457
    ],
)
def test_a_remark_hides_no_trigger(line: str, food: str, grams: float, lines: LineReader) -> None:
    """12 ounces fresh for 8 dry is what such lines say themselves; the others: common practice, no source."""
    read = lines.read(line)
    assert read.food == food
    assert read.grams == pytest.approx(grams, rel=0.01)


def test_what_may_not_be_eaten_leaves_line_and_step(adapt: Adapt) -> None:
    """Naan is of wheat, which elimination limits; rice holds none of what is limited (Varney et al. 2017)."""
    found = adapt(
        "500 g firm tofu", "1 tbsp oil", "Cooked basmati rice or warm naan, to serve",
        steps="1. Fry the tofu in the oil.\n2. Serve with rice or warm naan.",
    )  # fmt: skip
    assert found["status"] == "adapted"
    assert "naan" not in found["recipe"]
    assert "cooked basmati rice, to serve" in found["recipe"].casefold()
    assert "Serve with rice." in found["recipe"]


def test_what_is_sound_besides_stays(adapt: Adapt) -> None:
    found = adapt("500 g firm tofu", "1 tbsp oil", "2 tbsp soy sauce or tamari", steps="1. Fry the tofu in the oil.")
    assert "2 tbsp soy sauce or tamari" in (found["recipe"] or "")
    assert found["status"] == "fits"


def test_salt_beside_the_garlic_stays(adapt: Adapt) -> None:
    found = adapt(
        "400 g lettuce", "3 tbsp olive oil", "4 garlic cloves, crushed to a paste with ½ tsp salt",
        steps="1. Whisk the oil and the garlic and toss the lettuce in it.",
    )  # fmt: skip
    assert "1/2 tsp salt" in found["recipe"]


def test_what_takes_its_place_has_the_amount_of_the_line(adapt: Adapt) -> None:
    found = adapt(
        "400 g basmati rice", "3 tbsp oil", "6 sheets lavash (or 2 thinly sliced potatoes)",
        steps="1. Lay the lavash in the oiled pot, fill in the rice and steam for 40 minutes.",
    )  # fmt: skip
    assert "2 thinly sliced potatoes" in found["recipe"]
    assert "lavash" not in found["recipe"].split("Notes")[0]
