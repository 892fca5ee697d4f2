"""Use-by days as iCalendar, parsed back by the `icalendar` library, and its lines measured against RFC 5545."""

from datetime import UTC, date, datetime
from pathlib import Path

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calmlarder.cli import main
from calmlarder.larder.lot import Lot, LotDate
from calmlarder.render.ics import calendar
from calmlarder.tables.book import Tables

STAMP = datetime(2026, 3, 11, 17, 5, 9, tzinfo=UTC)


def lot(line: str, *dates: LotDate, place: str = "fridge") -> Lot:
    return Lot.model_validate(
        {
            "id": "7", "line": line, "food": "kale", "grams_low": 200, "grams": 200, "grams_high": 200, "place": place,
            "opened": False, "dates": dates, "days_left": 1, "days_from": "",
            "safety_days_left": 1, "safety_from": "", "condition": None,
            "to_bin": False, "owner": None, "owner_agrees": False,
        }
    )  # fmt: skip


def use_by(year: int, month: int, day: int) -> LotDate:
    return LotDate(kind="use-by", on=date(year, month, day))


def folded_right(text: str) -> bool:
    """RFC 5545, 3.1: CRLF behind every line, at most 75 octets in each, and each is UTF-8 by itself."""
    raw = text.encode()
    lines = raw.split(b"\r\n")
    return (
        lines.pop() == b"" and b"\n" not in b"".join(lines) and all(len(line.decode().encode()) <= 75 for line in lines)
    )


def test_it_is_read_back_by_a_general_library(tables: Tables) -> None:
    text = calendar([(7, lot("kale; 200 g, use by 2028-02-29", use_by(2028, 2, 29)))], tables, STAMP)
    assert folded_right(text)
    read = icalendar.Calendar.from_ical(text)
    assert (read["VERSION"], "calmlarder" in read["PRODID"]) == ("2.0", True)
    (event,) = read.walk("VEVENT")
    assert event.decoded("DTSTART") == date(2028, 2, 29)
    assert event.decoded("DTSTAMP") == STAMP
    assert str(event["SUMMARY"]) == "use by: kale, 200 g"
    assert str(event["DESCRIPTION"]) == "kale; 200 g, use by 2028-02-29 (fridge)"
    assert event["DTSTART"].params["VALUE"] == "DATE"
    assert not event.errors


def test_a_uid_stays_with_its_lot_and_no_two_share_one(tables: Tables) -> None:
    def uids(*lots: tuple[int, Lot]) -> list[str]:
        return [str(one["UID"]) for one in icalendar.Calendar.from_ical(calendar(lots, tables, STAMP)).walk("VEVENT")]

    both = lot("kale", use_by(2026, 3, 12), LotDate(kind="best-before", on=date(2026, 3, 14)))
    assert len(set(uids((1, both), (2, both)))) == 4
    assert uids((1, lot("kale", use_by(2026, 3, 12)))) == uids((1, lot("kale, moved", use_by(2026, 3, 20))))


def test_only_days_on_a_label_that_still_hold(tables: Tables) -> None:
    made = LotDate(kind="made", on=date(2026, 3, 10))
    opened = LotDate(kind="opened", on=date(2026, 3, 10), assumed=True)
    lots = [(1, lot("kale", made, opened)), (2, lot("kale", use_by(2026, 3, 12), place="freezer"))]
    assert "VEVENT" not in calendar(lots, tables, STAMP)
    assert icalendar.Calendar.from_ical(calendar([], tables, STAMP))["VERSION"] == "2.0"


@settings(deadline=None)
@given(st.text(st.characters(exclude_categories=["Cs"]), max_size=300))
def test_any_words_come_back_whole(line: str) -> None:
    from calmlarder.tables.load import load_tables
    from calmlarder.tables.places import shipped

    global _TABLES
    _TABLES = _TABLES or load_tables([shipped("ingredient_tables")])
    text = calendar([(1, lot(line, use_by(2026, 3, 12)))], _TABLES, STAMP)
    assert folded_right(text)
    (event,) = icalendar.Calendar.from_ical(text).walk("VEVENT")
    kept = "".join(sign for sign in line.replace("\r\n", "\n") if sign == "\n" or sign.isprintable())
    assert str(event["DESCRIPTION"]) == f"{kept} (fridge)"


_TABLES: Tables | None = None


def test_the_command_writes_a_file_and_nothing_over_others(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home = ["--home", str(tmp_path / "home"), "--today", "2026-03-11"]
    assert main(["larder", "add", "kale 200g, use by tomorrow", *home]) == 0
    file = tmp_path / "days.ics"
    for _ in range(2):
        assert main(["larder", "export", "--ics", str(file), *home]) == 0
    raw = file.read_bytes()
    assert raw.count(b"\r\n") == raw.count(b"\n") == 12
    assert icalendar.Calendar.from_ical(raw).walk("VEVENT")[0].decoded("DTSTART") == date(2026, 3, 12)
    capsys.readouterr()
    assert main(["larder", "export", "--ics", *home]) == 0
    assert capsys.readouterr().out.startswith("BEGIN:VCALENDAR")
    other = tmp_path / "letter.txt"
    other.write_text("dear aunt", encoding="utf-8")
    assert main(["larder", "export", "--ics", str(other), *home]) == 2
    assert main(["larder", "export", "--ics", str(tmp_path / "no" / "where.ics"), *home]) == 2
    assert other.read_text(encoding="utf-8") == "dear aunt"
    assert "Traceback" not in capsys.readouterr().err
