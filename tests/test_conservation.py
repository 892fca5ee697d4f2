"""Conservation: every gram that came in is in a lot, eaten, given or thrown, whatever is done and undone.

The check from outside is the law itself, kept by a second set of books here that never reads the program's.
Some hundred actions in the suite; 10,000 by `python tests/test_conservation.py`.
"""

import tempfile
from collections.abc import Callable
from copy import deepcopy
from datetime import date, datetime
from pathlib import Path
from typing import Any

import hypothesis.strategies as st
from hypothesis import HealthCheck, settings
from hypothesis.stateful import (
    RuleBasedStateMachine,
    initialize,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from calmlarder.larder.reading import LarderReader
from calmlarder.sitting.eaten import Eaten
from calmlarder.store.eaten import content_of
from calmlarder.store.larder import KeptLot, add, kept, lots_on_day, used_up
from calmlarder.store.ledger import eaten_up, end, ended
from calmlarder.store.store import Store
from calmlarder.tables.load import load_tables
from calmlarder.tables.places import shipped

TODAY = date(2026, 3, 11)
TABLES = load_tables([shipped("ingredient_tables")])
READER = LarderReader(TABLES, TODAY)
NAMES = ("kale", "carrots", "firm tofu", "spinach", "cow milk", "cooked white rice", "courgette", "eggs")
NEAR_G = 0.11  # a lot is kept to a tenth of a gram
HOWS = st.sampled_from(["eaten", "given", "thrown"])
counted = {"actions": 0}


class Books(RuleBasedStateMachine):
    """The store beside books of our own: what came in, and what ended how."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = tempfile.TemporaryDirectory()
        self.store = Store.at(Path(self.folder.name))
        self.books: dict[str, float] = {"in": 0, "eaten": 0, "given": 0, "thrown": 0}
        self.before: list[dict[str, float]] = []
        self.after: list[dict[str, float]] = []

    def teardown(self) -> None:
        self.store.close()
        self.folder.cleanup()

    def lots(self) -> list[KeptLot]:
        return lots_on_day(self.store, TODAY, TABLES)

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
        grams=st.lists(st.integers(1, 2000), min_size=3, max_size=3),
    )
    def add(self, names: list[str], grams: list[int]) -> None:
        lines = [f"{g} g {name}, use by tomorrow" for name, g in zip(names, grams, strict=False)]
        lots = [lot for line in lines if (reading := READER.read(line, "t")) and (lot := reading.lot)]
        assert len(lots) == len(lines)
        self.act(lambda: add(self.store, lots, "add"), **{"in": sum(lot.grams for lot in lots)})

    @precondition(lambda self: self.store.lots())
    @rule(number=st.integers(0, 50), share=st.floats(0.01, 1), how=HOWS)
    def part_ends(self, number: int, share: float, how: Any) -> None:
        one = self.pick(number)
        grams = round(one.lot.grams * share, 1)
        if grams <= 0:
            return
        # Less than 5 g left is nothing left, and has gone the same way.
        gone = one.lot.grams if one.lot.grams - grams < 5 else grams
        self.act(lambda: end(self.store, [one], TABLES, TODAY, how, None, grams), **{how: gone})

    @precondition(lambda self: self.store.lots())
    @rule(number=st.integers(0, 50), more=st.booleans(), how=HOWS, why=st.sampled_from([None, "mouldy", "other"]))
    def whole_ends(self, number: int, more: bool, how: Any, why: Any) -> None:
        lots = self.lots()[: 2 if more else 1] if number % 2 else [self.pick(number)]
        gone = sum(one.lot.grams for one in lots)
        self.act(lambda: end(self.store, lots, TABLES, TODAY, how, why), **{how: gone})

    @precondition(lambda self: self.store.lots())
    @rule(parts=st.lists(st.tuples(st.integers(0, 50), st.integers(1, 1500)), min_size=1, max_size=4))
    def cook(self, parts: list[tuple[int, int]]) -> None:
        """As the Cook screen does, and now and then with more than the larder knew of."""
        lots = self.lots()
        uses = [(lots[n % len(lots)].lot.line, lots[n % len(lots)].lot.food, grams) for n, grams in parts]
        left = used_up(lots, uses)
        gone = sum(
            one.lot.grams - (float(rest["grams"]) if (rest := left[one.id]) is not None else 0)
            for one in lots
            if one.id in left
        )
        entry = Eaten(at=datetime(2026, 3, 11, 18), who="me", text="d", food="", title="d", grams=gone, loads=())

        def do() -> None:
            entries = eaten_up(lots, left, TABLES, TODAY)
            self.store.change_lots(left, "cook", [content_of(entry)], entries)

        self.act(do, eaten=gone)

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
        self.store.close()
        self.store = Store.at(Path(self.folder.name))

    @invariant()
    def every_gram_is_somewhere(self) -> None:
        near = NEAR_G * (len(self.before) + len(self.after) + 1)
        told = {
            how: sum(one.grams for one in ended(self.store) if one.how == how) for how in ("eaten", "given", "thrown")
        }
        for how, grams in told.items():
            assert abs(grams - self.books[how]) < near
        there = sum(one.lot.grams for one in self.lots())
        # Rounding is booked, too: what a lot lost is what it was less what it is.
        assert abs(self.books["in"] - there - sum(told.values())) < 0.01
        assert all(one.grams > 0 for one in ended(self.store))


def steps(examples: int, each: int) -> None:
    run_state_machine_as_test(
        Books,
        settings=settings(
            max_examples=examples, stateful_step_count=each, deadline=None, derandomize=examples > 50,
            suppress_health_check=list(HealthCheck),
        ),
    )  # fmt: skip


def test_every_gram_that_came_in_is_somewhere() -> None:
    steps(12, 25)


if __name__ == "__main__":
    steps(400, 50)
    print(f"{counted['actions']} actions: every gram that came in is in a lot, eaten, given or thrown")
