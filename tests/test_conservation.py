"""Conservation: every gram that came in is in a lot, eaten, given or thrown, whatever is done and undone.

The check from outside is the law itself, kept by a second set of books here that never reads the program's.
The log of what was eaten is kept in those books, too: no gram of a food is there twice. Some hundred actions in the
suite; 10,000 by `python tests/test_conservation.py`.
"""

import tempfile
from collections.abc import Callable
from copy import deepcopy
from datetime import date, datetime
from pathlib import Path
from typing import Any

import hypothesis.strategies as st
import pytest
from hypothesis import HealthCheck, settings
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from calmlarder.history.eaten_up import Eaters
from calmlarder.history.log_entry import Meal, eaten_of
from calmlarder.household.booking import Boxing, Ending, Taken, end, move, take, used_up
from calmlarder.household.household import Household
from calmlarder.household.kept_lots import KeptLot, kept
from calmlarder.intake.eaten import Eaten
from calmlarder.larder.box import Box
from calmlarder.larder.freezing import frozen, thawed
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.store.logs import ended, log
from calmlarder.store.store import Store
from calmlarder.tables.load import load_tables
from calmlarder.tables.mixture import Mixture, MixturePart
from calmlarder.tables.places import shipped

TODAY = date(2026, 3, 11)
TABLES = load_tables([shipped("ingredient_tables")])
READER = LarderReader(TABLES, TODAY)
NAMES = ("kale", "carrots", "firm tofu", "spinach", "cow milk", "cooked white rice", "courgette", "eggs")
NEAR_G = 0.11  # a lot is kept to a tenth of a gram
CRUMBS_G = 8  # what of each lot may be lost to crumbs and to whole grams on the way into boxes
WHO = st.sampled_from([("me",), ("me", "kit"), ()])
HOWS = st.sampled_from(["eaten", "given", "thrown"])
counted = {"actions": 0}


class Books(RuleBasedStateMachine):
    """The store beside books of our own: what came in, and what ended how."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.home = Household(Path(self.folder.name), TABLES, TODAY)
        self.books: dict[str, float] = {
            "in": 0,
            "eaten": 0,
            "given": 0,
            "thrown": 0,
            "boxed": 0,
            "logged": 0,
            "by itself": 0,
        }
        self.before: list[dict[str, float]] = []
        self.after: list[dict[str, float]] = []

    def teardown(self) -> None:
        self.home.close()
        self.folder.cleanup()

    @property
    def store(self) -> Store:
        return self.home.store

    def lots(self) -> list[KeptLot]:
        return self.home.lots()

    def pick(self, number: int) -> KeptLot:
        lots = self.lots()
        return lots[number % len(lots)]

    def act(self, do: Callable[[], Any], **changes: float) -> None:
        """One action that must be one undo."""
        do()
        self.before.append(deepcopy(self.books))
        self.after.clear()
        for name, grams in changes.items():
            self.books[name] += grams
        counted["actions"] += 1

    @initialize()
    def start(self) -> None:
        self.add(["kale", "cow milk", "carrots"], [200, 1000, 300])

    @rule(
        names=st.lists(st.sampled_from(NAMES), min_size=1, max_size=3),
        grams=st.lists(st.integers(30, 1200), min_size=3, max_size=3),
    )
    def add(self, names: list[str], grams: list[int]) -> None:
        lines = [f"{g} g {name}, use by tomorrow" for name, g in zip(names, grams, strict=False)]
        lots = [lot for line in lines if (reading := READER.read(line, "t")) and (lot := reading.lot)]
        assert len(lots) == len(lines)
        self.act(
            lambda: self.store.add_lots([kept(lot) for lot in lots], "add"), **{"in": sum(lot.grams for lot in lots)}
        )

    @precondition(lambda self: self.store.lots())
    @rule(number=st.integers(0, 50), share=st.floats(0.01, 1), how=HOWS)
    def part_ends(self, number: int, share: float, how: Any) -> None:
        one = self.pick(number)
        grams = round(one.lot.grams * share, 1)
        if grams <= 0:
            return
        # Less than 5 g left is nothing left, and has gone the same way.
        gone = one.lot.grams if one.lot.grams - grams < 5 else grams
        self.act(lambda: end(self.home, [one], Ending(how, None, grams)), **{how: gone})

    @precondition(lambda self: self.store.lots())
    @rule(number=st.integers(0, 50), share=st.floats(0.01, 1))
    def part_moves(self, number: int, share: float) -> None:
        """Into the freezer or out of it: as much is there as was."""
        one = self.pick(number)
        grams = round(one.lot.grams * share, 1)
        moved = thawed if one.lot.place == "freezer" else frozen
        self.act(lambda: move(self.home, one, lambda lot: moved(lot, TODAY), "move", grams))

    @precondition(lambda self: self.store.lots())
    @rule(number=st.integers(0, 50), more=st.booleans(), how=HOWS, why=st.sampled_from([None, "mouldy", "other"]))
    def whole_ends(self, number: int, more: bool, how: Any, why: Any) -> None:
        lots = self.lots()[: 2 if more else 1] if number % 2 else [self.pick(number)]
        gone = sum(one.lot.grams for one in lots)
        self.act(lambda: end(self.home, lots, Ending(how, why)), **{how: gone})

    @precondition(lambda self: self.store.lots())
    @rule(number=st.integers(0, 50), share=st.floats(0.01, 1), who=WHO)
    def is_eaten_up(self, number: int, share: float, who: tuple[str, ...]) -> None:
        """Outside a dinner: the log takes on what it does not hold yet, in the same action."""
        one = self.pick(number)
        grams = round(one.lot.grams * share, 1)
        if grams <= 0:
            return
        gone = one.lot.grams if one.lot.grams - grams < 5 else grams
        spare = max(0.0, self.books["by itself"]) if one.lot.food == "kale" else 0.0
        mine = gone if who == ("me",) else gone / 2 if who else 0
        held = min(spare, mine if "me" in who else 0 if who else gone)
        eaters = Eaters(who=who, at=datetime(2026, 3, 11, 18))
        self.act(
            lambda: end(self.home, [one], Ending(grams=grams, eaters=eaters)),
            eaten=gone,
            logged=(gone if who else 0) - (held if who else 0),
            **{"by itself": -held},
        )

    @rule(grams=st.integers(1, 300))
    def ate(self, grams: int) -> None:
        """Kale that was logged by itself: later it ends, or was never in the larder."""
        reading = READER.read(f"{grams} g kale", "t")
        assert reading is not None
        assert reading.lot is not None
        entry = eaten_of(reading.lot, Meal(datetime(2026, 3, 11, 12), "me"), TODAY, TABLES)
        self.act(lambda: log(self.store, entry), logged=grams, **{"by itself": grams})

    @precondition(lambda self: self.store.lots())
    @rule(parts=st.lists(st.tuples(st.integers(0, 50), st.integers(1, 1500)), min_size=1, max_size=4))
    def cook(self, parts: list[tuple[int, int]]) -> None:
        """As the Cook screen does, and now and then with more than the larder knew of."""
        lots = self.lots()
        uses = {lots[n % len(lots)].lot.id: grams for n, grams in parts}
        gone = taken(self.home, lots, uses)
        entry = Eaten(at=datetime(2026, 3, 11, 18), who="me", text="d", food="", title="d", grams=gone, loads=())
        self.act(lambda: take(self.home, lots, Taken("d", uses, (entry,), Boxing(None, 0))), eaten=gone)

    @precondition(lambda self: any(one.lot.box is None and one.lot.grams >= 20 for one in self.lots()))
    @rule(shares=st.integers(2, 4), boxes=st.integers(1, 2), half=st.booleans())
    def cook_and_box(self, shares: int, boxes: int, half: bool) -> None:
        """Two things, whole or half of them, some of it into boxes: that part is still there, under another name."""
        lots = self.lots()
        plain = [one for one in lots if one.lot.box is None and one.lot.grams >= 20][:2]
        uses = {one.lot.id: int(one.lot.grams / (2 if half else 1)) for one in plain}
        parts = tuple(
            MixturePart(food=one.lot.food, grams=g, most_hundredths=130 * g)
            for one, g in zip(plain, uses.values(), strict=True)
        )
        mixture = Mixture(shares=shares, share_grams=sum(uses.values()) // shares, parts=parts)
        box = Box(
            title="a dish", mixture=mixture, keeps_days=1, keeps_why="", freezes=True, heated=False, cold=True
        )  # fmt: skip
        grams = float(mixture.share_grams * boxes)
        lot = plain[0].lot.model_copy(
            update={"line": f"box {len(self.before)}", "food": box.food_id, "box": box, "grams": grams,
                    "grams_low": grams, "grams_high": grams}
        )  # fmt: skip
        gone = taken(self.home, lots, uses)
        share = boxes / shares
        self.act(
            lambda: take(self.home, lots, Taken("d", uses, (), Boxing(lot, share))),
            eaten=gone * (1 - share),
            boxed=gone * share,
        )

    @precondition(lambda self: self.store.lots())
    @rule(number=st.integers(0, 50))
    def freeze(self, number: int) -> None:
        one = self.pick(number)
        frozen = one.lot.model_copy(update={"place": "freezer"})
        self.act(lambda: self.store.change_lots({one.id: kept(frozen)}, "freeze"))

    @rule()
    def undo(self) -> None:
        counted["actions"] += 1
        words = self.store.undo()
        assert (words is not None) == bool(self.before)
        if self.before:
            self.after.append(self.books)
            self.books = self.before.pop()

    @rule()
    def redo(self) -> None:
        counted["actions"] += 1
        words = self.store.redo()
        assert (words is not None) == bool(self.after)
        if self.after:
            self.before.append(self.books)
            self.books = self.after.pop()

    @rule()
    def restart(self) -> None:
        counted["actions"] += 1
        self.home.close()

    @invariant()
    def no_gram_is_logged_twice(self) -> None:
        held = sum(row.content["grams"] for row in self.store.eaten(TODAY.isoformat()) if row.content["food"])
        assert abs(held - self.books["logged"]) < 0.2 * (len(self.before) + len(self.after) + 1)

    @invariant()
    def every_gram_is_somewhere(self) -> None:
        near = NEAR_G * (len(self.before) + len(self.after) + 1)
        told = {
            how: sum(one.grams for one in ended(self.store) if one.how == how) for how in ("eaten", "given", "thrown")
        }
        for how, grams in told.items():
            assert abs(grams - self.books[how]) < near
        there = sum(one.lot.grams for one in self.lots() if one.lot.box is None)
        ends = [one for one in ended(self.store) if not one.food.startswith("boxed-")]
        # Rounding is booked, too: what a lot lost is what it was less what it is.
        assert abs(self.books["in"] - there - sum(one.grams + one.boxed for one in ends)) < 0.01
        # What went into boxes is in a box, or ended out of one; a box holds whole grams, and no crumbs of a lot.
        boxed = sum(one.lot.grams for one in self.lots() if one.lot.box is not None)
        boxed += sum(one.grams for one in ended(self.store) if one.food.startswith("boxed-"))
        cooked = sum(one.boxed > 0 for one in ends)
        assert -near < self.books["boxed"] - boxed < CRUMBS_G * cooked + near
        assert all(one.grams + one.boxed > 0 for one in ended(self.store))


def taken(home: Household, lots: list[KeptLot], uses: dict[str, int]) -> float:
    """Grams that leave the lots, crumbs with them."""
    left = used_up(home, lots, uses)
    return sum(
        one.lot.grams - (float(rest["grams"]) if (rest := left[one.id]) is not None else 0)
        for one in lots
        if one.id in left
    )


def steps(examples: int, each: int) -> None:
    run_state_machine_as_test(
        Books,
        settings=settings(
            max_examples=examples, stateful_step_count=each, deadline=None, derandomize=examples > 50,
            suppress_health_check=list(HealthCheck),
        ),
    )  # fmt: skip


@pytest.mark.long
def test_every_gram_that_came_in_is_somewhere() -> None:
    steps(12, 25)


if __name__ == "__main__":
    steps(400, 50)
    print(f"{counted['actions']} actions: every gram that came in is in a lot, eaten, given or thrown")
