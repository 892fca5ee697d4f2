"""Two foods in the place of one: both come into the steps, and a line that is swapped is not left out besides.

What a cook would say of each page; the pages are made up.
"""

from collections.abc import Callable
from typing import Any

import pytest

from calmlarder.adapt.model import Amount, Change
from calmlarder.adapt.step_all_named import all_named
from calmlarder.tables.book import Tables

Adapt = Callable[..., dict[str, Any]]


def change(*lines: tuple[str, str, float]) -> Change:
    return Change(
        place=0, ingredient="600 g sweet potatoes", change="swap",
        to=tuple(Amount(food=food, grams=grams, high=grams, weighed=True) for food, _, grams in lines),
        lines=tuple(line for _, line, _ in lines), why="likely too much mannitol",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ("Add the sweet potatoes and simmer.", "Add the sweet potatoes and potatoes and simmer."),
        ("Roast the sweet potatoes for an hour.", "Roast the sweet potatoes and potatoes for an hour."),
        ("Add the sweet potatoes, stock and salt.", "Add the sweet potatoes, potatoes, stock and salt."),
        ("Mash the sweet potatoes with the potatoes.", "Mash the sweet potatoes with the potatoes."),
    ],
)
def test_what_no_step_names_stands_beside_what_it_came_with(step: str, told: str, tables: Tables) -> None:
    both = change(("sweet-potato", "240 g sweet potatoes", 240), ("potato", "360 g potatoes", 360))
    assert all_named(["Heat the oil.", step], [both], tables) == ["Heat the oil.", told]


def test_a_line_without_figures_that_is_swapped_is_not_left_out_besides(adapt: Adapt) -> None:
    """No composition table has pomegranate molasses; a listed stand-in does its work."""
    found = adapt(
        "Red pepper dip", "300 g red peppers", "100 g walnuts", "1 clove garlic",
        "2 tablespoons pomegranate molasses, plus more for drizzling", "2 tbsp olive oil",
        steps="1. Blend the peppers, walnuts, garlic and molasses.\n2. Drizzle with oil and molasses.", serves=8,
    )  # fmt: skip
    of_it = [one["change"] for one in found["changes"] if "molasses" in one["ingredient"]]
    assert of_it == ["swap"]
    assert "left out" not in found["recipe"]
