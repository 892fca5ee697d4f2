"""Clock changes, midnight, leap day and travel: what was eaten counts for its hours, and never too little.

Worked by hand from the rules of the time zones: Europe/Berlin was ahead of UTC by 1 h until 2026-03-29 02:00 and by
2 h until 2026-10-25 03:00, when it is 02:00 again; America/New_York by -5 h in winter; Pacific/Apia by 13 h. The
zones' own data are those of IANA, through Python's zoneinfo.
"""

import json
import time
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calmlarder.checks.within_limits import _before
from calmlarder.cli import main
from calmlarder.intake.eaten import Eaten, Load
from calmlarder.intake.stacking import Stacking, still_counted
from calmlarder.intake.zone import offsets_at
from calmlarder.store.logs import log, may_count
from calmlarder.store.store import Store

BERLIN, NEW_YORK, APIA = ZoneInfo("Europe/Berlin"), ZoneInfo("America/New_York"), ZoneInfo("Pacific/Apia")
LOAD = Load(cutoff_class="core", group="oligosaccharides", plan_ug=1000, worst_ug=1000)


def eaten(at: str, *offsets: int) -> Eaten:
    return Eaten(
        at=datetime.fromisoformat(at),
        who="me",
        text="t",
        food="",
        title="t",
        grams=1,
        loads=(LOAD,),
        offsets_min=offsets,
    )


def sitting(at: str, *offsets: int, window: float = 3) -> Stacking:
    return Stacking(at=datetime.fromisoformat(at), offsets_min=offsets, window_hours=window)


def minutes(entry: Eaten, how: Stacking) -> float | None:
    since = how.since(entry)
    return None if since is None else since / timedelta(minutes=1)


@pytest.mark.parametrize(
    ("what", "entry", "how", "by_hand"),
    [
        ("an hour is left out: 3.5 h on the clock are 2.5 h",
         eaten("2026-03-29T01:00", 60), sitting("2026-03-29T04:30", 120), 150),
        ("an hour comes twice: 2.5 h on the clock are 3.5 h",
         eaten("2026-10-25T00:30", 120), sitting("2026-10-25T03:00", 60), 210),
        ("02:30 may be either: 00:30 or 01:30 UTC, the shorter time counts",
         eaten("2026-10-25T02:30", 120, 60), sitting("2026-10-25T04:00", 60), 90),
        ("02:50 before the change, 02:10 after it: 20 minutes, though the clock fell back",
         eaten("2026-10-25T02:50", 120, 60), sitting("2026-10-25T02:10", 60), 20),
        ("west: lunch at 12:00 in Berlin is 11:00 UTC, and 08:00 in New York is 13:00 UTC",
         eaten("2026-01-10T12:00", 60), sitting("2026-01-10T08:00", -300), 120),
        ("east: 12:00 in New York is 17:00 UTC, and 20:00 in Berlin is 19:00 UTC",
         eaten("2026-01-10T12:00", -300), sitting("2026-01-10T20:00", 60), 120),
        ("over the date line: 23:30 in Apia is 10:30 UTC, and 01:30 of the same day in Pago Pago is 12:30 UTC",
         eaten("2026-01-10T23:30", 780), sitting("2026-01-10T01:30", -660), 120),
        ("midnight", eaten("2026-03-10T23:10", 60), sitting("2026-03-11T01:40", 60), 150),
        ("leap day", eaten("2028-02-28T23:00", 60), sitting("2028-02-29T00:30", 60), 90),
        ("the day behind it", eaten("2028-02-29T23:00", 60), sitting("2028-03-01T00:30", 60), 90),
        ("no leap day", eaten("2027-02-28T23:00", 60), sitting("2027-03-01T00:30", 60), 90),
        ("an old entry without an offset: the clock as typed",
         eaten("2026-03-29T01:00"), sitting("2026-03-29T03:30", 120), 150),
        ("eaten after the sitting", eaten("2026-03-11T19:00", 60), sitting("2026-03-11T18:00", 60), None),
    ],
)  # fmt: skip
def test_worked_by_hand(what: str, entry: Eaten, how: Stacking, by_hand: int | None) -> None:
    assert minutes(entry, how) == by_hand, what
    counted = still_counted([entry], how)
    assert bool(counted) is (by_hand is not None and by_hand < 180)
    if counted:
        # Until when, by the clock of the sitting.
        assert counted[0].until == how.at + timedelta(minutes=180 - (by_hand or 0))
    # The check that shares no code says the same.
    request = {"stacking": how.model_dump(mode="json"), "eaten": [entry.model_dump(mode="json")]}
    assert bool(list(_before(request))) is bool(counted)


def test_offsets_of_hours_that_come_twice_or_never() -> None:
    assert offsets_at(datetime(2026, 10, 25, 2, 30), BERLIN) == (120, 60)
    assert offsets_at(datetime(2026, 10, 25, 2, 30, fold=1), BERLIN) == (60,)
    assert set(offsets_at(datetime(2026, 3, 29, 2, 30), BERLIN)) == {60, 120}
    assert offsets_at(datetime(2026, 7, 1, 12), BERLIN) == (120,)
    assert offsets_at(datetime(2026, 1, 10, 12), NEW_YORK) == (-300,)
    assert offsets_at(datetime(2026, 1, 10, 12), APIA) == (780,)


@given(
    st.datetimes(datetime(2026, 1, 1), datetime(2026, 12, 31), timezones=st.just(ZoneInfo("UTC"))),
    st.integers(0, 179), st.sampled_from([BERLIN, NEW_YORK, APIA]), st.sampled_from([BERLIN, NEW_YORK, APIA]),
)  # fmt: skip
def test_nothing_eaten_in_the_window_is_ever_left_out(
    moment: datetime, gone: int, there: ZoneInfo, here: ZoneInfo
) -> None:
    """Against instants of UTC, which have no clock changes: typed as anybody would, without saying which 02:30."""
    moment = moment.replace(second=0, microsecond=0)
    typed = moment.astimezone(there).replace(tzinfo=None, fold=0)
    later = (moment + timedelta(minutes=gone)).astimezone(here).replace(tzinfo=None, fold=0)
    entry = eaten(typed.isoformat(), *offsets_at(typed, there))
    how = Stacking(at=later, offsets_min=offsets_at(later, here))
    since = how.since(entry)
    assert since is not None
    assert since <= timedelta(minutes=gone)
    assert still_counted([entry], how)


@pytest.fixture
def berlin(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    monkeypatch.setenv("TZ", "Europe/Berlin")
    time.tzset()
    yield
    monkeypatch.undo()
    time.tzset()


@pytest.mark.usefixtures("berlin")
def test_the_commands_count_by_utc(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home = str(tmp_path / "home")

    def stacked(day: str, at: str) -> object:
        capsys.readouterr()
        main(["tonight", "--home", home, "--today", day, "--at", at, "--seconds", "2", "--json"])
        return json.loads(capsys.readouterr().out)["stacked"]

    for line in ("firm tofu 280g", "cooked rice 400g, made today", "spinach 200g", "soy sauce", "rapeseed oil"):
        assert main(["larder", "add", line, "--home", home, "--today", "2026-03-28"]) == 0
    assert main(["ate", "90 g tinned chickpeas", "--home", home, "--when", "2026-03-29T01:00"]) == 0
    assert stacked("2026-03-29", "04:30") is not None
    assert stacked("2026-03-29", "05:00") is None
    # A flight: the log was written where the clock was 5 h behind UTC, which may be said outright.
    assert main(["ate", "30 g rye bread", "--home", home, "--when", "2026-01-10T12:00-05:00"]) == 0
    assert stacked("2026-01-10", "20:00") is not None
    assert stacked("2026-01-10", "21:00") is None


def test_entries_typed_by_another_clock_are_found(tmp_path: Path) -> None:
    with Store.at(tmp_path) as store:
        log(store, eaten("2026-01-10T12:00", 60))
        at = datetime(2026, 1, 10, 8)
        assert [one.offsets_min for one in may_count(store, at, 3)] == [(60,)]
        assert may_count(store, at + timedelta(days=3), 3) == ()
