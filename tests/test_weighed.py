"""What the scale really showed is computed again, and the way back under the cap is told."""

from calmlarder.compose.compose import compose
from calmlarder.compose.scale_readings import passed_caps

LINES = [
    "firm tofu 250g",
    "cooked rice 350g, made today",
    "broccoli 300g, use by today",
    "rapeseed oil",
    "soy sauce",
]


def test_too_much_on_the_scale_names_the_limit_and_what_to_take_off(tables, patterns, lots_of, wanting) -> None:  # type: ignore[no-untyped-def]
    wanted = wanting()
    dinner = compose(lots_of(LINES), wanted, patterns, tables).dinners[0]
    uses = tuple(use.model_copy(update={"how": "weigh"}) if use.food == "broccoli" else use for use in dinner.uses)
    dinner = dinner.model_copy(update={"uses": uses})
    broccoli = next(use for use in dinner.uses if use.food == "broccoli")
    key = "oligosaccharides:fresh;other"
    assert passed_caps(dinner, {broccoli.lot: broccoli.grams}, wanted.profile, tables) == ()
    passed = passed_caps(dinner, {broccoli.lot: broccoli.grams + 60}, wanted.profile, tables)
    over = next(one for one in passed if one.cap.key == key)
    assert over.grams_over > 0
    assert over.leave_out_food == "broccoli"
    assert 1 <= over.leave_out_grams <= 60
    mended = {broccoli.lot: broccoli.grams + 60 - over.leave_out_grams}
    assert key not in {one.cap.key for one in passed_caps(dinner, mended, wanted.profile, tables)}
