"""The shipped tables and patterns, a fixed day, and helpers to compose from lines."""

import inspect
import json
import os
import shutil
import signal
from collections.abc import Callable, Sequence
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

import read_once  # before anything else of calmlarder
from answers import check
from calmlarder.cli import main
from calmlarder.compose.compose import best_dinners
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.profile import profile_named
from calmlarder.kitchen.equipment import Equipment
from calmlarder.larder.lines_to_lots import LarderReader
from calmlarder.larder.lot import Lot
from calmlarder.patterns.load import shipped_patterns
from calmlarder.patterns.pattern import Pattern
from calmlarder.render.dinner_json import dinner_object
from calmlarder.tables.book import Tables
from calmlarder.tables.load import load_tables
from composed_once import first_plan, install
from mutations import Answer
from tiny import Tiny, tiny_of

install()
read_once.share_readers()

TODAY = date(2026, 3, 11)  # a Wednesday

_MEMORY = Path("/dev/shm")  # a file system in memory, where Linux has one
_ROOM = 2 << 30  # bytes; a whole run leaves less behind

settings.register_profile("calm", deadline=None)  # no test may depend on how busy the machine is
settings.load_profile("calm")


def pytest_configure() -> None:
    """Homes of a test are written to memory, and Ctrl-C is heard: neither hangs on how the tests were started.

    Every action waits for the disk otherwise, longer than it computes.
    """
    if os.access(_MEMORY, os.W_OK) and shutil.disk_usage(_MEMORY).free > _ROOM:
        os.environ.setdefault("PYTEST_DEBUG_TEMPROOT", str(_MEMORY))
    # A shell starts what it puts in the background deaf to Ctrl-C, and children inherit that.
    if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
        signal.signal(signal.SIGINT, signal.default_int_handler)


def pytest_xdist_auto_num_workers() -> int:
    """One more than there are cores: tests of screens and terminals wait a third of their time."""
    return (os.cpu_count() or 1) + 1


@pytest.fixture(autouse=True)
def _no_tables_of_the_users_own(monkeypatch: pytest.MonkeyPatch, tmp_path_factory: pytest.TempPathFactory) -> None:
    monkeypatch.delenv("CALMLARDER_TABLES", raising=False)
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path_factory.getbasetemp() / "nobody"))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.getbasetemp() / "derived"))


@pytest.fixture
def quick_plans(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of each plan the first, day after day, whatever the clock says: for what is not about how good a plan is."""
    monkeypatch.setattr("calmlarder.plan.plan_days.plan_days", first_plan)


@pytest.fixture
def short_why(monkeypatch: pytest.MonkeyPatch) -> None:
    """Of each why all but what more room, or a better figure, would be worth: for what is not about that."""
    monkeypatch.setattr("calmlarder.compose.why.why.bounds", lambda *_: iter(()))
    monkeypatch.setattr("calmlarder.compose.why.why.MOST", 1)


@pytest.fixture(scope="session")
def tables() -> Tables:
    """The shipped tables, whatever the environment lays over them."""
    return load_tables([read_once.SHIPPED])


@pytest.fixture
def first_keys() -> tuple[str, ...]:
    """What `play` presses before it plays; a test file gives its own."""
    return ()


@pytest.fixture
def play(tmp_path: Path, tables: Tables, first_keys: tuple[str, ...]) -> Callable[..., Any]:
    """The terminal program under a pilot: `play(act, size)` plays on the larder in `tmp_path / "home"`."""
    from programs import run_program  # Textual is loaded only where a screen is tested

    def run(act: Any, size: tuple[int, int] = (80, 24), **how: Any) -> Any:
        return run_program(tmp_path / "home", tables, act, size, **{"keys": first_keys, **how})

    return run


@pytest.fixture(scope="session")
def patterns() -> tuple[Pattern, ...]:
    return shipped_patterns()


@pytest.fixture(scope="session")
def reader(tables: Tables) -> LarderReader:
    return LarderReader(tables, TODAY)


@pytest.fixture(scope="session")
def lots_of(reader: LarderReader) -> Callable[[Sequence[str]], list[Lot]]:
    def lots(lines: Sequence[str]) -> list[Lot]:
        readings = reader.read_all(lines, "test")
        return [reading.lot for reading in readings if reading.lot is not None]

    return lots


@pytest.fixture
def fridge(request: pytest.FixtureRequest, lots_of: Callable[[Sequence[str]], list[Lot]]) -> list[Lot]:
    """The lines of the test's docstring below its first paragraph, as the cook typed them."""
    _, _, typed = (inspect.getdoc(request.function) or "").partition("\n\n")
    return lots_of([line.strip() for line in typed.splitlines() if line.strip()])


@pytest.fixture
def pan(fridge: list[Lot], tables: Tables, wanting: Callable[..., DinnerRequest]) -> Callable[..., Tiny]:
    """The tiny pan dish over the fridge of the test's docstring."""

    def made(**values: Any) -> Tiny:
        return tiny_of(fridge, wanting(**values), tables)

    return made


@pytest.fixture(scope="session")
def wanting(tables: Tables) -> Callable[..., DinnerRequest]:
    def wanted(profile: str = "elimination", **values: Any) -> DinnerRequest:
        return DinnerRequest(today=TODAY, profile=profile_named(profile, tables), **{"seconds": 600.0, **values})

    return wanted


@pytest.fixture
def cook(
    tables: Tables,
    patterns: tuple[Pattern, ...],
    lots_of: Callable[[Sequence[str]], list[Lot]],
    wanting: Callable[..., DinnerRequest],
) -> Callable[..., Dinner]:
    """The best dinner of a fridge that one pattern makes; it passed the check."""

    def dinner(lines: Sequence[str], pattern: str, people: int = 2, rings: int = 2) -> Dinner:
        chosen = [one for one in patterns if one.id == pattern]
        wanted = wanting(people=people, seconds=60, protein_floor_g=8, equipment=Equipment(rings=rings))
        lots = lots_of(lines)
        _, dinners = best_dinners(lots, wanted, chosen, tables)
        request = {**wanted.model_dump(mode="json"), "profile": wanted.profile.name}
        assert check(Answer(dinner_object(dinners[0]), request, [lot.model_dump(mode="json") for lot in lots])) == ()
        return dinners[0]

    return dinner


@pytest.fixture
def adapt(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Callable[..., dict[str, Any]]:
    """The JSON of `adapt` for a recipe of so many lines and steps, in elimination."""

    def run(title: str, *ingredients: str, steps: str, serves: int = 4, status: int = 0) -> dict[str, Any]:
        text = [title, "", f"Serves {serves}", "", "Ingredients", "", *ingredients, "", "Method", "", steps, ""]
        path = tmp_path / "recipe.txt"
        path.write_text("\n".join(text), encoding="utf-8")
        assert main(["--home", str(tmp_path / "home"), "adapt", str(path), "--json"]) == status
        found: dict[str, Any] = json.loads(capsys.readouterr().out)
        return found

    return run
