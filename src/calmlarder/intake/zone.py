"""How far local clocks were from UTC, so that hours between sittings are hours whatever the clocks did."""

from datetime import datetime, time, timedelta, tzinfo

EVENING = time(18)  # when people sit down on a day that is not today: common practice, no source
FURTHEST = timedelta(hours=26)  # between two local clocks on Earth: UTC+14 and UTC-12


def offsets_at(local: datetime, zone: tzinfo | None = None) -> tuple[int, ...]:
    """Minutes ahead of UTC of a local time in a zone, without one in the machine's own.

    Two where the clock change makes it happen twice, or never: the caller must live with either. A moment with
    `fold` set is known to be the second.
    """
    folds = (1,) if local.fold else (0, 1)
    found = []
    for fold in folds:
        moment = local.replace(tzinfo=zone, fold=fold)
        offset = (moment if zone else moment.astimezone()).utcoffset()
        if offset is not None:
            found.append(offset // timedelta(minutes=1))
    return tuple(dict.fromkeys(found))


def this_minute() -> datetime:
    """Local time now, to the minute; `fold` is set in the second of two hours that have one name."""
    return datetime.now().astimezone().replace(second=0, microsecond=0, tzinfo=None)
