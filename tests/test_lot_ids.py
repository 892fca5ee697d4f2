"""A lot's number is never another lot's, also after an update of the store; what is open runs out by the day typed."""

import sqlite3
from collections.abc import Callable
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest
from textual.pilot import Pilot

from calmlarder.household.kept_lots import KeptLot, kept, lots_on_day
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.store.documents import packed
from calmlarder.store.home import FILE_NAME
from calmlarder.store.schema import STEPS, statements
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables
from calmlarder.tui.app import LarderApp
from calmlarder.tui.larder_screen import LarderScreen
from programs import TODAY
from test_screens import solved


def content(line: str, tables: Tables) -> dict[str, Any]:
    reading = LarderReader(tables, TODAY).read(line, "typed")
    assert reading is not None
    assert reading.lot is not None
    return kept(reading.lot)


def typed(store: Store, line: str, tables: Tables) -> int:
    (lot_id,) = store.add_lots([content(line, tables)], f"add {line}")
    return lot_id


def test_the_number_of_what_was_taken_out_is_not_given_again(tmp_path: Path, tables: Tables) -> None:
    with Store.at(tmp_path) as store:
        first = typed(store, "kale 150g", tables)
        store.change_lots({first: None}, "remove kale")
        assert typed(store, "carrots x4", tables) > first


def test_nor_is_the_number_of_what_was_undone(tmp_path: Path, tables: Tables) -> None:
    with Store.at(tmp_path) as store:
        first = typed(store, "kale 150g", tables)
        store.undo()
        assert typed(store, "carrots x4", tables) > first


def store_of_version(version: int, home: Path) -> sqlite3.Connection:
    home.mkdir(exist_ok=True)
    old = sqlite3.connect(home / FILE_NAME, isolation_level=None)
    for step in STEPS[:version]:
        for statement in statements(step):
            old.execute(statement)
    old.execute(f"PRAGMA user_version = {version}")
    return old


def test_a_store_of_before_keeps_its_numbers_and_gives_none_again(tmp_path: Path, tables: Tables) -> None:
    old = store_of_version(4, tmp_path)
    kale = packed("lots", content("kale 150g", tables))
    old.execute("INSERT INTO lots (id, content) VALUES (3, ?)", (kale,))
    old.execute("INSERT INTO actions VALUES (1, 'remove kale', 0)")
    old.execute("INSERT INTO changes VALUES (1, 1, 'lots', '7', ?, NULL)", (kale,))
    old.close()
    with Store.at(tmp_path) as store:
        assert [one.id for one in store.lots()] == [3]
        assert typed(store, "carrots x4", tables) == 8
        store.undo()
        assert store.undo() == "remove kale"
        assert [one.id for one in store.lots()] == [3, 7]


@pytest.mark.parametrize("line", ["tofu 280g, opened", "coconut milk, half used", "soya milk 500 ml, opened"])
def test_what_is_open_without_a_day_runs_out(line: str, tmp_path: Path, tables: Tables) -> None:
    """Opened milk, tofu and tins keep days, not for ever (keeping.csv); the day before it was typed is taken."""
    with Store.at(tmp_path) as store:
        reading = LarderReader(tables, TODAY).read(line, "typed")
        assert reading is not None
        assert "opened yesterday" in reading.assumed
        store.add_lots([kept(lot) for lot in reading.lots], "add")
        left = [lots_on_day(store, TODAY + timedelta(days=after), tables)[0].lot.days_left for after in (0, 1, 9)]
    assert left[0] is not None
    assert left == [left[0], left[0] - 1, left[0] - 9]


def test_what_was_kept_open_without_a_day_is_open_since_the_day_before_the_update(
    tmp_path: Path, tables: Tables
) -> None:
    old = store_of_version(4, tmp_path)
    tofu = content("firm tofu 280g", tables)
    tofu |= {"line": "firm tofu 280g, opened", "opened": True, "dates": [{"kind": "opened", "on": None}]}
    text = packed("lots", tofu)
    old.execute("INSERT INTO lots (content) VALUES (?)", (text,))
    old.execute('INSERT INTO lots (content) VALUES (\'{"v": 1, "crc": 1}\')')  # damaged: it stays as it is
    old.execute("INSERT INTO actions VALUES (1, 'add firm tofu 280g, opened', 0)")
    old.execute("INSERT INTO changes VALUES (1, 1, 'lots', '1', NULL, ?)", (text,))
    old.close()

    def days_left(on: date) -> int | None:
        (one,) = lots_on_day(store, on, tables)
        return one.lot.days_left

    day = date.today()
    with Store.at(tmp_path) as store:
        first = days_left(day)
        assert first is not None
        assert days_left(day + timedelta(days=2)) == first - 2
        assert [one.id for one in store.broken_lots()] == [2]
        store.undo()
        store.redo()
        assert days_left(day + timedelta(days=2)) == first - 2


@pytest.mark.long
def test_cook_takes_nothing_from_a_lot_that_is_another_food_by_now(play: Callable[..., LarderApp]) -> None:
    told: list[str] = []

    async def act(app: LarderApp, pilot: Pilot[None]) -> None:
        await pilot.press("f8", "f3")
        await solved(app, pilot)
        await pilot.press("enter")
        await pilot.pause()
        use = app.screen._dinner.uses[0]  # type: ignore[attr-defined]
        # As another window does it: the line is written anew, and means another food.
        app._store.change_lots({int(use.lot): content("white sugar 500g", app._kitchen.tables)}, "edit")
        before = amounts(app._kitchen.lots())
        await pilot.press("c")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        told.extend(notice.message for notice in app._notifications)
        assert not isinstance(app.screen, LarderScreen)
        assert amounts(app._kitchen.lots()) == before

    def amounts(lots: list[KeptLot]) -> dict[int, float]:
        return {one.id: one.lot.grams for one in lots}

    play(act)
    assert any("is gone" in message for message in told)
