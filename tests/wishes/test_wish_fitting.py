"""Of two things that fit, the one a cook would reach for. Common practice, no source."""

from collections.abc import Callable

import pytest

from calmlarder.compose.compose import best_dinners
from calmlarder.compose.request import DinnerRequest
from calmlarder.larder.lot import Lot
from calmlarder.patterns.pattern import Pattern
from calmlarder.tables.book import Tables


@pytest.mark.parametrize(
    ("pattern", "lines", "there"),
    [
        ("paprika-stew", ["beef mince 500g", "potatoes 1kg", "carrots x4", "paprika", "chopped tomatoes 3 tins"],
         "tomato-canned"),
        ("coconut-braise", ["firm tofu 400g", "potatoes 1kg", "basmati rice 1kg", "carrots x4", "coconut milk tin",
                            "fresh ginger", "soy sauce"], "rice-basmati-dry"),
        ("tomato-stew", ["firm tofu 400g", "potatoes 1kg", "courgettes x2", "chopped tomatoes tin", "fresh rosemary",
                         "smoked paprika", "cumin", "lemon", "olive oil", "garlic-infused oil"], "oil-garlic"),
        ("tomato-stew", ["firm tofu 400g", "potatoes 1kg", "courgettes x2", "chopped tomatoes tin", "fresh rosemary",
                         "smoked paprika", "olive oil", "nutritional yeast"], "nutritional-yeast"),
        ("stir-fry", ["firm tofu 400g", "white rice 1kg", "pak choi x3", "carrots x3", "soy sauce", "mirin",
                      "fresh ginger", "rapeseed oil"], "mirin"),
        # Butter is all there is to fry in; oil, where it stands beside it, goes with soy sauce.
        ("supper-plate", ["salmon fillet 300g", "white rice 500g", "green beans 400g", "soy sauce", "butter 250g"],
         "butter"),
        ("supper-plate", ["salmon fillet 300g", "white rice 500g", "green beans 400g", "soy sauce", "butter 250g",
                          "rapeseed oil"], "oil-rapeseed"),
        ("tomato-stew", ["firm tofu 400g", "potatoes 1kg", "courgettes x2", "chopped tomatoes tin", "fresh rosemary",
                         "smoked paprika", "butter 250g"], "butter"),
    ],
)  # fmt: skip
def test_what_fits_better_goes_in(
    tables: Tables, patterns: tuple[Pattern, ...], lots_of: Callable[..., list[Lot]],
    wanting: Callable[..., DinnerRequest], pattern: str, lines: list[str], there: str,
) -> None:  # fmt: skip
    chosen = [one for one in patterns if one.id == pattern]
    _, dinners = best_dinners(lots_of(lines), wanting(people=2, seconds=60, protein_floor_g=8), chosen, tables)
    assert there in {use.food for use in dinners[0].uses}
