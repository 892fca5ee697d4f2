"""Use-by and best-before days, and the meals of a plan, as iCalendar (RFC 5545), for the calendar one has."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, timedelta
from typing import TYPE_CHECKING
from uuid import NAMESPACE_URL, uuid5

from calmlarder import __version__
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables

if TYPE_CHECKING:
    from calmlarder.plan.planned import SittingPlanned

_FOLD_OCTETS = 75  # RFC 5545, 3.1: without the line break
_AT_TABLE = timedelta(hours=1)  # how long a meal fills a calendar: common practice, no source
_WORDS = {"use-by": "use by", "best-before": "best before"}


def calendar(
    lots: Iterable[tuple[int, Lot]], tables: Tables, stamp: datetime, planned: "Iterable[SittingPlanned]" = ()
) -> str:
    """One all-day event for each day on a label, an hour for each meal planned; `stamp` is the UTC moment of writing.

    A lot in the freezer has none: its label no longer says when to eat it.
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:-//calmlarder//calmlarder {__version__}//EN"]
    for lot_id, lot in lots:
        for dated in lot.dates:
            if dated.kind in _WORDS and dated.on is not None and lot.place != "freezer":
                lines += _event(lot_id, lot, (dated.kind, dated.on), tables, stamp)
    for sitting in planned:
        lines += _meal(sitting, stamp)
    lines.append("END:VCALENDAR")
    return "".join(f"{part}\r\n" for line in lines for part in _folded(line))


def _event(lot_id: int, lot: Lot, label: tuple[str, date], tables: Tables, stamp: datetime) -> Iterator[str]:
    kind, on = label
    name = tables.food_by_id[lot.food].name
    # The same lot keeps its UID when its day or its amount is written anew, so a calendar moves the event.
    uid = uuid5(NAMESPACE_URL, f"calmlarder:{lot_id}:{lot.food}:{kind}")
    yield "BEGIN:VEVENT"
    yield f"UID:{uid}"
    yield f"DTSTAMP:{stamp:%Y%m%dT%H%M%SZ}"
    yield f"DTSTART;VALUE=DATE:{on:%Y%m%d}"
    yield f"SUMMARY:{_text(f'{_WORDS[kind]}: {name}, {lot.grams:g} g')}"
    yield f"DESCRIPTION:{_text(f'{lot.line} ({lot.place})')}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def _meal(one: "SittingPlanned", stamp: datetime) -> Iterator[str]:
    """A meal at local time, whatever zone the calendar shows (RFC 5545, 3.3.5, form 1)."""
    if one.dinner is None:
        return
    box = "leftovers: " if one.leftover_of is not None else ""
    amounts = ", ".join(f"{use.grams} g {use.name}" for use in one.dinner.uses)
    yield "BEGIN:VEVENT"
    # The same meal of the same day keeps its UID when it is planned again, so a calendar changes the event.
    yield f"UID:{uuid5(NAMESPACE_URL, f'calmlarder:{one.day.isoformat()}:{one.sitting}')}"
    yield f"DTSTAMP:{stamp:%Y%m%dT%H%M%SZ}"
    yield f"DTSTART:{one.at:%Y%m%dT%H%M%S}"
    yield f"DTEND:{one.at + _AT_TABLE:%Y%m%dT%H%M%S}"
    yield f"SUMMARY:{_text(f'{one.sitting}: {box}{one.dinner.title}')}"
    yield f"DESCRIPTION:{_text('from its box' if box else f'{one.dinner.minutes} minutes: {amounts}')}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def _text(words: str) -> str:
    """A TEXT value (RFC 5545, 3.3.11): what would end it is escaped, control signs are left out."""
    plain = "".join(sign for sign in words.replace("\r\n", "\n") if sign == "\n" or sign.isprintable())
    for sign in "\\;,":
        plain = plain.replace(sign, f"\\{sign}")
    return plain.replace("\n", "\\n")


def _folded(line: str) -> Iterator[str]:
    """The line in pieces of at most 75 octets, all but the first behind a space; no sign is cut in two."""
    piece, size = "", 0
    for sign in line:
        octets = len(sign.encode())
        if size + octets > _FOLD_OCTETS:
            yield piece
            piece, size = " ", 1
        piece += sign
        size += octets
    yield piece
