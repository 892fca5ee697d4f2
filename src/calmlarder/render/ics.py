"""Use-by and best-before days as iCalendar (RFC 5545), for the calendar somebody already has."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime
from uuid import NAMESPACE_URL, uuid5

from calmlarder import __version__
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables

_FOLD_OCTETS = 75  # RFC 5545, 3.1: without the line break
_WORDS = {"use-by": "use by", "best-before": "best before"}


def calendar(lots: Iterable[tuple[int, Lot]], tables: Tables, stamp: datetime) -> str:
    """One all-day event for each day on a label; `stamp` is the UTC moment of writing.

    A lot in the freezer has none: its label no longer says when to eat it.
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:-//calmlarder//calmlarder {__version__}//EN"]
    for lot_id, lot in lots:
        for dated in lot.dates:
            if dated.kind in _WORDS and dated.on is not None and lot.place != "freezer":
                lines += _event(lot_id, lot, dated.kind, dated.on, tables, stamp)
    lines.append("END:VCALENDAR")
    return "".join(f"{part}\r\n" for line in lines for part in _folded(line))


def _event(lot_id: int, lot: Lot, kind: str, on: date, tables: Tables, stamp: datetime) -> Iterator[str]:
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
