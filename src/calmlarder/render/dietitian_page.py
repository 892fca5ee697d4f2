"""The page for a dietitian: what was eaten, how it was scored, what was concluded; Markdown and HTML, with plots.

It is written to a file and sent nowhere. Facts in one colour; who reads it draws the conclusions.
"""

from collections.abc import Iterator, Mapping, Sequence
from datetime import date
from html import escape
from typing import NamedTuple

from calmlarder.history.days import Day
from calmlarder.history.felt import WORST
from calmlarder.intake.cap_words import CAP_WORDS
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.reintroduction.clock import Clock
from calmlarder.reintroduction.course import Standing, Tried
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import group_of, is_dose, ladder_of
from calmlarder.reintroduction.red_flags_in_notes import RED_FLAG
from calmlarder.render.challenge_names import limit_line, name_of
from calmlarder.render.clock_text import clock_text
from calmlarder.tables.vocabulary import GROUPS

TITLE = "Challenges and what was eaten"
HTML_BEGINS, MARKDOWN_BEGINS = "<!doctype html>\n<!-- calmlarder: for a dietitian", f"# {TITLE}"
_NOTE = (
    "Written by the person themselves with a program on their own machine. Grams of each group are estimates from food "
    "tables. Risks come from a model of these days alone; its constants and the doses are the program's own, "
    "without a published source. It is no diagnosis."
)
_SCORES = (
    "Scores run from 0, calm, to 10, the worst they know; a day has that of the worst of pain, bloating, wind and "
    "urgency. Baseline: the mean of three calm days. A reaction: 2 or more above it on the day of the dose, or on the "
    "day after where a dose comes every second day. A dose is repeated after a first reaction; two, or one of 4 above "
    "the baseline or of 7, end it."
)
_STYLE = (
    "body{font:16px/1.5 sans-serif;max-width:50rem;margin:2rem auto;padding:0 1rem;color:#111;background:#fff}"
    "table{border-collapse:collapse;margin:1rem 0}"
    "td,th{border-bottom:1px solid #999;padding:.2rem .6rem;text-align:left}"
    "svg{max-width:100%;height:auto}"
)
_OPEN = "By the model these days do not settle it: another try could come out otherwise."
_DAYS = (
    "Likely grams of each group as logged; an empty day was not logged. A dose that was only scored stands in the "
    "table of its challenge."
)
_APART = {1: "one a day", 2: "one every second day"}
_PITCH, _TALL, _LEFT, _TOP = 12, 60, 40, 12  # of a day's column, in user units
_MOST_DAYS = 366


class Page(NamedTuple):
    """All that is told: one person's challenges as they stand, limits, and the days since the first of them began."""

    who: str
    phase: str
    today: date
    clock: Clock | None
    courses: tuple[tuple[Course, Standing], ...]
    limits: tuple[OwnLimit, ...]
    days: tuple[Day, ...]
    foods: Mapping[str, str]  # names by id


class _Table(NamedTuple):
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


class _Section(NamedTuple):
    """A heading with lines, a table, and the challenge whose doses its plot marks."""

    title: str
    lines: tuple[str, ...]
    table: _Table | None = None
    plot: Course | None = None


def markdown(page: Page) -> str:
    """As CommonMark; a plot is a column of marks beside the score."""
    lines = [MARKDOWN_BEGINS, "", f"{page.who}, {page.today}. {_NOTE}", ""]
    for section in _sections(page):
        lines += [f"## {_plain(section.title)}", ""]
        for line in section.lines:
            lines += [_plain(line), ""]
        if section.table is not None:
            lines += [_row(section.table.heads), _row(("---",) * len(section.table.heads))]
            lines += [*(_row(row) for row in section.table.rows), ""]
    return "\n".join(lines)


def html(page: Page) -> str:
    """As a page that needs nothing else."""
    policy = "default-src 'none'; style-src 'unsafe-inline'"
    parts = [
        f"{HTML_BEGINS} -->",
        f'<html lang="en"><head><meta charset="utf-8"/><meta http-equiv="Content-Security-Policy" content="{policy}"/>',
        f"<title>{TITLE}</title><style>{_STYLE}</style></head><body>",
        f"<h1>{TITLE}</h1><p>{escape(page.who)}, {page.today}. {escape(_NOTE)}</p>",
    ]
    for section in _sections(page):
        parts.append(f"<h2>{escape(section.title)}</h2>")
        parts += [f"<p>{escape(line)}</p>" for line in section.lines]
        if section.plot is not None:
            parts.append(scores_svg(page.days, section.plot))
        if section.table is not None:
            parts.append(_html_table(section.table))
    return "\n".join([*parts, "</body></html>", ""])


def _sections(page: Page) -> Iterator[_Section]:
    lines = [f"Phase: {page.phase}."]
    lines += [clock_text(page.clock)] if page.clock is not None else []
    lines += [limit_line(own) for own in page.limits] or ["No limits of their own yet."]
    lines += [_SCORES] if page.courses else []
    yield _Section("Where they are", tuple(lines))
    for course, stands in page.courses:
        yield _course(course, stands, page.foods)
    yield _Section("Days", (_DAYS,), _days(page.days))


def _course(course: Course, stands: Standing, foods: Mapping[str, str]) -> _Section:
    ladder = ladder_of(course.challenge)
    doses = ", ".join(f"{dose:g}" for dose in ladder.doses_g)
    lines = [f"Doses {doses} g, {_APART[ladder.every_days]}, from {course.started}; a dose in one dinner."]
    if course.stopped is not None:
        why = "they noted a sign that a doctor should know of" if course.why_stopped == RED_FLAG else course.why_stopped
        lines.append(f"Stopped {course.stopped}: {why or 'no reason said'}. Nothing is concluded.")
    elif stands.ended is not None:
        risks = zip(stands.reckoning.doses_g, stands.reckoning.risks, strict=True)
        lines.append(f"Ended: {stands.ended}. {_concluded(course, stands, foods)}")
        lines.append(
            "Modelled share of days on which the dose itself brings a reaction: "
            + ", ".join(f"{d:g} g {r:.0%}" for d, r in risks)
            + "."
        )
        lines += [_OPEN] if stands.reckoning.ambiguous else []
    else:
        lines.append("Still going on.")
    lines += (
        ["Skipped: " + ", ".join(f"{day}{f' ({why})' if why else ''}" for day, why in course.skipped.items()) + "."]
        if course.skipped
        else []
    )
    heads = ("Day", "Dose, g", "Food", "Grams of it", "Worst score", "0 to 10", "Baseline", "Result")
    rows = tuple(_tried(one, foods) for one in stands.tried)
    table = _Table(heads, rows) if rows else None
    return _Section(f"Challenge: {name_of(course.challenge)}", tuple(lines), table, course)


def _concluded(course: Course, stands: Standing, foods: Mapping[str, str]) -> str:
    limit = stands.reckoning.own_limit_g
    name = name_of(group_of(course.challenge))
    if not is_dose(course.challenge, limit):
        return f"No dose was borne well enough: the limit of elimination stays, {limit:g} g of {name} at one meal."
    food = foods.get(course.food, "")
    grams = max((one.grams for one in course.eaten if one.dose_g == limit), default=0.0)
    return (
        f"Estimated limit for one meal: {limit:g} g of {name}{f' ({grams:g} g of {food})' if food and grams else ''}."
    )


def _tried(one: Tried, foods: Mapping[str, str]) -> tuple[str, ...]:
    worst = "" if one.worst is None else str(one.worst)
    return (
        one.eaten.on.isoformat(), f"{one.eaten.dose_g:g}" if one.eaten.dose_g else "none, to compare",
        foods.get(one.eaten.food, one.eaten.food), f"{one.eaten.grams:g}" if one.eaten.dose_g else "",
        worst, "=" * (one.worst or 0),
        "" if one.baseline is None else f"{one.baseline:.1f}", one.result or f"left out: {one.left_out}",
    )  # fmt: skip


def _days(days: Sequence[Day]) -> _Table:
    heads = ("Day", *(CAP_WORDS.get(group, group) for group in GROUPS), "Worst score", "0 to 10", "Notes")
    return _Table(heads, tuple(_day(day) for day in days))


def _day(day: Day) -> tuple[str, ...]:
    loads = ["" if day.loads_g is None else f"{day.loads_g[group]:.2f}" for group in GROUPS]
    notes = "; ".join(one.note for one in day.felt if one.note)
    worst = "" if day.worst is None else str(day.worst)
    return (day.on.isoformat(), *loads, worst, "=" * (day.worst or 0), notes)


def scores_svg(days: Sequence[Day], course: Course) -> str:
    """The day's worst scores as bars, doses marked below them with their grams of the group."""
    shown = [day for day in days if day.on >= course.started][:_MOST_DAYS]
    doses = {one.on: one.dose_g for one in course.eaten}
    width, height = _LEFT + _PITCH * max(1, len(shown)) + 60, _TOP + _TALL + 50
    parts = [
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width} {height}" width="{width}" height="{height}" '
        f'role="img" font-family="sans-serif" font-size="10"><title>{escape(_described(shown, doses))}</title>',
        f'<text x="0" y="{_TOP + 8}">{WORST}</text><text x="0" y="{_TOP + _TALL}">0</text>',
        f'<line x1="{_LEFT}" x2="{width - 60}" y1="{_TOP + _TALL}" y2="{_TOP + _TALL}" stroke="#111"/>',
    ]
    for number, day in enumerate(shown):
        left = _LEFT + number * _PITCH
        if day.worst is not None:
            tall = max(1, _TALL * day.worst // WORST)
            top = _TOP + _TALL - tall
            parts.append(f'<rect x="{left + 2}" y="{top}" width="{_PITCH - 4}" height="{tall}" fill="#555"/>')
        if day.on in doses:
            middle, base = left + _PITCH // 2, _TOP + _TALL
            parts.append(f'<path d="M{middle} {base + 3}l4 8h-8z" fill="#111"/>')
            parts.append(
                f'<text transform="translate({middle + 3} {base + 40}) rotate(-90)">{doses[day.on]:g} g</text>'
            )
    return "\n".join([*parts, "</svg>"])


def _described(days: Sequence[Day], doses: dict[date, float]) -> str:
    told = [
        f"{day.on}: {'no score' if day.worst is None else day.worst}"
        + (f", dose {doses[day.on]:g} g" if day.on in doses else "")
        for day in days
    ]
    return f"Worst score of each day, 0 to 10. {'; '.join(told)}"


def _html_table(table: _Table) -> str:
    heads = "".join(f"<th>{escape(head)}</th>" for head in table.heads)
    rows = "\n".join(f"<tr>{''.join(f'<td>{escape(cell)}</td>' for cell in row)}</tr>" for row in table.rows)
    return f"<table><tr>{heads}</tr>\n{rows}</table>"


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(_plain(cell) for cell in cells)} |"


def _plain(text: str) -> str:
    """Typed text as it stands, whatever Markdown would make of it."""
    escaped = "".join(f"\\{sign}" if sign in "\\`*_{}[]<>#|!" else sign for sign in text)
    return " ".join(escaped.split())
