"""What the scale really showed is computed again, and the way back under the cap is told."""

from calmlarder.compose.compose import compose
from calmlarder.compose.weighed import passed_caps

LINES = [
    "firm tofu 250g",
    "cooked rice 350g, made today",
    "broccoli 300g, use by today",
    "rapeseed oil",
    "soy sauce",
]


def test_too_much_on_the_scale_names_the_cap_and_what_to_take_off(tables, patterns, lots_of, wanting) -> None:  # type: ignore[no-untyped-def]
    wanted = wanting()
    dinner = compose(lots_of(LINES), wanted, patterns, tables).dinners[0]
    broccoli = next(use for use in dinner.uses if use.food == "broccoli")
    assert broccoli.how == "weigh"
    assert passed_caps(dinner, {broccoli.lot: broccoli.grams}, wanted.profile, tables) == ()
    passed = passed_caps(dinner, {broccoli.lot: broccoli.grams + 40}, wanted.profile, tables)
    over = next(one for one in passed if one.cap.key == "oligosaccharides:fresh;other")
    # Up to 0.3 g of fructans (recalled) and 0.1 g of GOS in 100 g: 40 g more bring 0.16 g.
    assert 0 < over.grams_over <= 0.16
    assert over.leave_out_food == "broccoli"
    assert 1 <= over.leave_out_grams <= 40
    mended = {broccoli.lot: broccoli.grams + 40 - over.leave_out_grams}
    assert "oligosaccharides:fresh;other" not in {
        one.cap.key for one in passed_caps(dinner, mended, wanted.profile, tables)
    }
