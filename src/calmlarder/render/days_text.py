"""Days side by side in a terminal: a column for each day, a row for each group, and how the gut felt."""

import textwrap
from collections.abc import Iterator, Sequence
from typing import Any

from calmlarder.history.correlation import LEAST_DAYS, LEVEL, TESTED, Related, Together
from calmlarder.history.days import Day, since_first
from calmlarder.history.felt import WORST
from calmlarder.render.style import Style
from calmlarder.tables.vocabulary import GROUPS, Group

ROW_WORDS: dict[Group, str] = {
    "oligosaccharides": "fructans + GOS",
    "lactose": "lactose",
    "excess_fructose": "excess fructose",
    "sorbitol": "sorbitol",
    "mannitol": "mannitol",
    "polyols": "sorbitol+mannitol",
    "total": "total without lactose",
}
CAUTION = (
    "This shows, and does not diagnose. Days follow one another and meals bring many things at once, sleep and "
    "strain are not in it, and a figure that stands out may be chance. Change what you eat with a dietitian."
)
_EIGHTHS, _PLAIN = "▁▂▃▄▅▆▇█", "12345678"
_NO_LOG = " "
_NONE = {True: "·", False: "."}
_LABEL = 22
_BESIDE = 38  # columns of the label before a row and of the number behind it


def days_text(days: Sequence[Day], related: Related, style: Style) -> Iterator[str]:
    """Lines for a terminal, in pieces that fit its width, from the first day of which something is known."""
    asked, days = len(days), since_first(days)
    span = f"{days[0].on} to {days[-1].on}{f', of {asked} days' if asked > len(days) else ''}"
    yield from style.headings(f"Eaten of each group, and how the gut felt: {span}")
    if not any(day.loads_g or day.felt for day in days):
        yield from _filled('Nothing was logged. `calmlarder ate "200 ml orange juice"`, `calmlarder feel 3`', style)
    width = max(1, style.width - _BESIDE)
    for start in range(0, len(days), width):
        yield from _piece(days[start : start + width], days, style)
    blank = f"a {_NONE[style.blocks]} is none at all, a blank a day without a log"
    yield from _filled(f"Each row is drawn up to its own most; {blank}.", style)
    yield ""
    yield from _notes(days, style)
    yield style.strong("Together")
    yield from _related(related, style)
    yield from _filled(CAUTION, style)


def _piece(shown: Sequence[Day], days: Sequence[Day], style: Style) -> Iterator[str]:
    yield f"  {'':{_LABEL}}{_scale(shown)}"
    for group in GROUPS:
        grams = [None if day.loads_g is None else day.loads_g[group] for day in shown]
        most = max((day.loads_g[group] for day in days if day.loads_g is not None), default=0.0)
        row = "".join(_sign(value, most, style) for value in grams)
        yield f"  {ROW_WORDS[group]:{_LABEL}}{row}  most {most:.2f} g"
    row = "".join(_sign(None if day.worst is None else float(day.worst), WORST, style) for day in shown)
    yield f"  {'gut, 0 to 10':{_LABEL}}{row}  worst of day"


def _scale(shown: Sequence[Day]) -> str:
    """Day of the month under every seventh column."""
    text = [" "] * (len(shown) + 5)
    for number in range(0, len(shown), 7):
        label = f"{shown[number].on:%d.%m}"
        text[number : number + len(label)] = label
    return "".join(text).rstrip()


def _sign(value: float | None, most: float, style: Style) -> str:
    if value is None:
        return _NO_LOG
    if value <= 0 or most <= 0:
        return _NONE[style.blocks]
    signs = _EIGHTHS if style.blocks else _PLAIN
    return signs[min(len(signs) - 1, int(value / most * len(signs)))]


def _notes(days: Sequence[Day], style: Style) -> Iterator[str]:
    told = [one for day in days for one in day.felt if one.note]
    if told:
        yield style.strong("Notes")
        for one in told:
            yield from _filled(f"{one.at:%Y-%m-%d %H:%M}  gut {one.score}: {one.note}", style)
        yield ""


def _related(related: Related, style: Style) -> Iterator[str]:
    if related.days < LEAST_DAYS:
        yield from _filled(
            f"{related.days} of the days have both a score of the gut and a whole log. From {LEAST_DAYS} days on it is "
            "shown whether days with more of a group were worse days; with fewer, chance alone could say so.", style,
        )  # fmt: skip
    for one in related.found:
        yield from _filled(f"{ROW_WORDS[one.group]:{_LABEL}}{together_words(one)}", style)
    if related.days >= LEAST_DAYS:
        yield from _filled(
            "How the day's grams go with the worst score of the same day, from -1 (more, and calmer) over 0 (no link "
            "seen) to 1 (more, and worse): Spearman's rank correlation, over "
            f"{related.days} days. {len(TESTED)} groups were looked at, so each interval is at {LEVEL:.0%}, for all of "
            "them to hold together at 95 %. A group without a row never varied.", style,
        )  # fmt: skip
    if related.left_out:
        yield from _filled(
            f"Days with a feeling left out, for nothing logged or figures not known: {related.left_out}.",
            style,
        )


def together_words(one: Together) -> str:
    """The coefficient, its interval, and what that says."""
    return f"{one.rho:+.2f}, between {one.low:+.2f} and {one.high:+.2f}: {_says(one)}"


def _says(one: Together) -> str:
    if one.low > 0:
        return "worse on days with more"
    return "better on days with more" if one.high < 0 else "may be nothing"


def days_object(days: Sequence[Day], related: Related) -> dict[str, Any]:
    """Plain values."""
    return {
        "days": [
            {
                "on": day.on.isoformat(),
                "sittings": day.sittings,
                "loads_g": None if day.loads_g is None else {g: round(x, 4) for g, x in day.loads_g.items()},
                "unknown": list(day.unknown),
                "worst": day.worst,
                "felt": [one.model_dump(mode="json") for one in day.felt],
            }
            for day in days
        ],
        "together": {
            "days": related.days,
            "least_days": LEAST_DAYS,
            "left_out": related.left_out,
            "groups_tested": list(TESTED),
            "level": LEVEL,
            "found": [one.model_dump(mode="json") for one in related.found],
            "caution": CAUTION,
        },
    }


def _filled(text: str, style: Style) -> list[str]:
    return textwrap.wrap(text, style.width, initial_indent="  ", subsequent_indent="  ")
