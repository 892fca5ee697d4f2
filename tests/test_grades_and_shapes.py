"""A grade, a length or a shape behind a plain food is no reason to ask which one it is."""

from collections.abc import Callable

import pytest

from calmlarder.larder.lot import Lot


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("Maple syrup, dark", "maple-syrup"), ("maple syrup amber", "maple-syrup"),
        ("biber green long ones", "pepper-green"), ("long green peppers 3", "pepper-green"),
        ("eggs 1 tray kulang 5", "egg"),
        ("brinjal 1 long", "aubergine"), ("fried gluten balls", "seitan"), ("gluten balls 10", "seitan"),
    ],
)  # fmt: skip
def test_it_is_not_asked_about(line: str, food: str, lots_of: Callable[..., list[Lot]]) -> None:
    (lot,) = lots_of([line])
    assert lot.food == food
    assert lot.grams > 0
