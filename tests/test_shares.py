"""What dishes share, worked out by hand: steps of a lot counted whole, and kinds that follow each other.

The steps are rank-one cuts of Chvátal and Gomory: for whole numbers u with a sum of at most U, the sum of u // t is at
most U // t. All pairs of whole numbers are tried here.
"""

from calmlarder.plan.shares import Again, Steps, Taken, overdrawn

RICE, TOFU = 0, 1
UNITS = {RICE: 15, TOFU: 40}


def dish(rice: int = 0, tofu: int = 0, covers: tuple[int, ...] = (0,), kinds: frozenset[str] = frozenset()) -> Taken:
    return Taken(covers, {RICE: rice, TOFU: tofu}, kinds)


def test_one_and_a_third_dishes_of_rice_are_too_many() -> None:
    """11 of 15 units each: by units 1.36 dishes go, in whole ones a single one."""
    mixed = [(dish(rice=11), 1.0), (dish(rice=11), 0.36)]
    assert sum(taken.units[RICE] * fraction for taken, fraction in mixed) <= UNITS[RICE]
    (halves,) = [share for share in overdrawn(mixed, UNITS) if share.step == 8]
    assert (halves.place, halves.of(dish(rice=11)), halves.room(UNITS)) == (RICE, 1, 1)


def test_whole_dishes_that_the_lots_hold_overdraw_no_steps() -> None:
    for one in range(UNITS[RICE] + 1):
        for other in range(UNITS[RICE] + 1 - one):
            assert not overdrawn([(dish(rice=one), 1.0), (dish(rice=other), 1.0)], UNITS)
    assert not overdrawn([(dish(tofu=20), 1.0), (dish(tofu=20), 1.0)], UNITS)


def test_a_kind_again_is_counted_at_two_sittings_that_follow_each_other() -> None:
    tofu = frozenset({"tofu"})
    again = Again(1, "tofu")
    assert [again.of(dish(covers=covers, kinds=tofu)) for covers in ((0,), (1,), (2,), (0, 2))] == [0, 1, 1, 1]
    assert again.of(dish(covers=(1, 2), kinds=tofu)) == 1  # its own leftover is no second time
    assert again.of(dish(covers=(1,), kinds=frozenset({"egg"}))) == 0
    assert again.room(UNITS) == Steps(RICE, 8).room(UNITS) == 1
