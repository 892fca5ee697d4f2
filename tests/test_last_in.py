"""What waits badly: halloumi, cooked fish, strips of steak in a simmer, a fillet on its way to the plate.

Common practice, no source.
"""

from collections.abc import Callable

from calmlarder.compose.dinner import Dinner
from calmlarder.kitchen.wording import warmed

Cook = Callable[..., Dinner]
PLATE = ["potatoes 1kg", "courgette x2", "tomatoes x4", "lemon", "dried oregano", "olive oil"]


def said(dinner: Dinner) -> str:
    return " ".join(dinner.steps)


def test_halloumi_is_fried_when_the_vegetables_are_done(cook: Cook) -> None:
    text = said(cook([*PLATE, "halloumi 250g"], "supper-plate"))
    assert text.index("courgette in the pan") < text.index("add the halloumi")
    assert "Return" not in text
    assert "lift out" not in text


def test_a_steak_rests_and_does_not_go_back(cook: Cook) -> None:
    text = said(cook([*PLATE, "beef steak 300g"], "supper-plate"))
    assert "lift out onto a warm plate under foil" in text
    assert "Return" not in text


def test_what_would_wait_long_is_fried_last(cook: Cook) -> None:
    """Aubergine takes twelve minutes: a steak is cold by then, so that waits under foil for the steak."""
    fridge = ["potatoes 1kg", "aubergine 1", "lemon", "dried oregano", "olive oil", "beef steak 300g"]
    text = said(cook(fridge, "supper-plate"))
    aubergine, steak = text.index("ry the aubergine"), text.index("beef steak with salt and pepper in the pan")
    assert aubergine < text.index("ift out the aubergine onto a warm plate under foil") < steak
    assert "Return" not in text


def test_tinned_tuna_is_warmed_once_in_its_sauce(cook: Cook) -> None:
    fridge = ["gluten-free pasta 500g", "tinned tuna x2", "courgette x2", "chopped tomatoes tin", "olive oil", "basil"]
    text = said(cook(fridge, "pasta"))
    assert text.index("canned tomatoes to the pan") < text.index("tuna to the pan, and heat through")
    assert "lift out" not in text


def test_raw_chicken_for_the_same_pasta_is_browned_first(cook: Cook) -> None:
    fridge = ["gluten-free pasta 500g", "chicken breast 300g", "courgette x2", "chopped tomatoes tin", "olive oil"]
    text = said(cook(fridge, "pasta"))
    assert text.index("chicken breast") < text.index("canned tomatoes to the pan") < text.index("Return the chicken")


def test_strips_of_steak_do_not_simmer(cook: Cook) -> None:
    fridge = ["rice 1kg", "broccoli 1", "carrots x3", "soy sauce", "fresh ginger", "oil", "spring onion greens"]
    strips = said(cook([*fridge, "beef stir fry strips 300g"], "donburi"))
    assert strips.index("lift out") < strips.index("simmer") < strips.index("Return the beef steak")
    assert "lift out" not in said(cook([*fridge, "firm tofu 400g"], "donburi"))


def test_what_was_cooked_before_is_warmed_whichever_of_them_is_named_first() -> None:
    said = "heat oil in a pan; brown cooked turkey and canned lentils in it"
    assert warmed(["canned lentils", "cooked turkey"], said) == said.replace("brown", "warm")
