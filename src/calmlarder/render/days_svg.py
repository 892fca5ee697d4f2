"""Days side by side as a picture: black on white, with a title and a description for who cannot see it."""

from collections.abc import Iterator, Sequence
from xml.sax.saxutils import escape

from calmlarder.history.days import Day, since_first
from calmlarder.history.felt import WORST
from calmlarder.intake.eaten import ME
from calmlarder.render.days_text import CAUTION, ROW_WORDS
from calmlarder.tables.vocabulary import GROUPS

BEGINS = "<svg "
_LEFT, _RIGHT, _TOP = 150, 110, 60  # room for names, for numbers, for the heading; all in user units
_ROW, _GAP, _LEAST_TALL = 48, 20, 3
_PITCH, _LEAST_PITCH, _WIDEST = 12, 2, 1200  # of a day's column; many days are drawn narrower
_NARROWEST = 400  # of the columns together: the heading has its room
_LABEL = 46  # room that the day below a column takes
_SHORT = f"{CAUTION.partition('.')[0]}."
_KEY = "A thin mark is none at all, a gap a day without a log."


def days_svg(days: Sequence[Day], who: str) -> str:
    """An SVG 1.1 document of its own, from the first day of which something is known."""
    days = since_first(days)
    pitch = max(_LEAST_PITCH, min(_PITCH, _WIDEST // len(days)))
    rows = len(GROUPS) + 1
    width = _LEFT + max(pitch * len(days), _NARROWEST) + _RIGHT
    height = _TOP + rows * (_ROW + _GAP) + 50
    span = f"{days[0].on} to {days[-1].on}"
    lines = [
        f'{BEGINS}xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" '
        f'viewBox="0 0 {width} {height}" role="img" aria-labelledby="title description" '
        'font-family="sans-serif" font-size="12" fill="black">',
        f'<title id="title">{_text(f"{_heading(who)}, {span}")}</title>',
        f'<desc id="description">{_text(_described(days))}</desc>',
        f'<rect width="{width}" height="{height}" fill="white"/>',
        f'<text x="10" y="24" font-weight="bold">{_text(_heading(who))}</text>',
        f'<text x="10" y="42">{span}</text>',
    ]
    for number, group in enumerate(GROUPS):
        grams = [None if day.loads_g is None else day.loads_g[group] for day in days]
        most = max((value for value in grams if value is not None), default=0.0)
        lines += _row(number, ROW_WORDS[group], f"most {most:.2f} g", width)
        lines += _bars(number, days, grams, most, pitch)
    lines += _row(rows - 1, "gut, 0 to 10", "10 is the worst", width)
    lines += _dots(rows - 1, days, pitch)
    lines += _axis(rows, days, pitch)
    lines.append(f'<text x="10" y="{height - 8}" font-size="10">{_text(_KEY + " " + _SHORT)}</text>')
    return "\n".join([*lines, "</svg>", ""])


def _heading(who: str) -> str:
    whose = "" if who == ME else f" by {who}"
    return f"Eaten{whose} of each group, and how the gut felt"


def _floor(row: int) -> int:
    return _TOP + row * (_ROW + _GAP) + _ROW


def _row(row: int, name: str, number: str, width: int) -> Iterator[str]:
    yield f'<text x="10" y="{_floor(row) - _ROW // 2 + 4}">{_text(name)}</text>'
    end = width - _RIGHT
    yield f'<line x1="{_LEFT}" y1="{_floor(row)}" x2="{end}" y2="{_floor(row)}" stroke="black"/>'
    yield f'<text x="{end + 8}" y="{_floor(row) - _ROW // 2 + 4}">{_text(number)}</text>'


def _bars(row: int, days: Sequence[Day], grams: Sequence[float | None], most: float, pitch: int) -> Iterator[str]:
    for column, (day, value) in enumerate(zip(days, grams, strict=True)):
        if value is not None:
            # A thin line for none at all; a day without a log stays empty.
            tall = max(_LEAST_TALL, value / most * _ROW if most else 0)
            left, wide = _LEFT + (column + 1 / 6) * pitch, pitch * 2 / 3
            yield (
                f'<rect x="{left:.2f}" y="{_floor(row) - tall:.1f}" width="{wide:.2f}" height="{tall:.1f}">'
                f"<title>{day.on}: {value:.2f} g</title></rect>"
            )


def _dots(row: int, days: Sequence[Day], pitch: int) -> Iterator[str]:
    size = min(3.0, max(1.0, pitch / 3))
    for column, day in enumerate(days):
        for one in day.felt:
            high = _floor(row) - one.score / WORST * _ROW
            told = f"{one.at:%Y-%m-%d %H:%M}: {one.score}{f', {one.note}' if one.note else ''}"
            yield (
                f'<circle cx="{_LEFT + column * pitch + pitch / 2:g}" cy="{high:.1f}" r="{size:g}">'
                f"<title>{_text(told)}</title></circle>"
            )


def _axis(rows: int, days: Sequence[Day], pitch: int) -> Iterator[str]:
    weeks = -(-_LABEL // (7 * pitch))
    for column in range(0, len(days), 7 * weeks):
        yield f'<text x="{_LEFT + column * pitch}" y="{_floor(rows - 1) + 16}">{days[column].on:%d.%m.}</text>'


def _described(days: Sequence[Day]) -> str:
    logged, felt = [day for day in days if day.loads_g is not None], [day for day in days if day.worst is not None]
    parts = [f"{len(days)} days; something eaten was logged on {len(logged)}, a feeling on {len(felt)}."]
    for group in GROUPS:
        best = max(logged, key=lambda day: (day.loads_g or {}).get(group, 0.0), default=None)
        if best is not None and best.loads_g is not None and best.loads_g[group]:
            parts.append(f"Most {ROW_WORDS[group]}: {best.loads_g[group]:.2f} g on {best.on}.")
    worst = max(felt, key=lambda day: day.worst or 0, default=None)
    if worst is not None:
        parts.append(f"The gut felt worst on {worst.on}: {worst.worst} of {WORST}.")
    return " ".join([*parts, CAUTION])


def _text(words: str) -> str:
    """Escaped, and without signs that XML does not allow."""
    return escape("".join(sign for sign in words if sign.isprintable()), {'"': "&quot;"})
