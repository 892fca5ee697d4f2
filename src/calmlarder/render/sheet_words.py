"""A sheet as plain text for a message, and as Markdown."""

import re
from collections.abc import Iterator

from calmlarder.render.sheet import Level, Part, Sheet
from calmlarder.render.style import BESIDE_LIMITS

_MARKS = re.compile(r"([\\`*_\[\]<>|#~&])")
_LEADING = re.compile(r"^(\s*)([-+]|\d+[.)])(?=\s|$)")


def as_text(sheet: Sheet) -> str:
    """Plain text; the dishes of a plan, and the timeline of a dish, stay out of a message."""
    lines = [sheet.title, sheet.about, ""]
    for part in sheet.parts:
        if part.kind == "timeline":
            continue
        lines += [part.heading, *_listed(part), ""]
    if sheet.levels:
        lines += [BESIDE_LIMITS, *(f"- {_level(one)}" for one in sheet.levels), ""]
    return "\n".join([*lines, *sheet.cautions]) + "\n"


def _listed(part: Part) -> Iterator[str]:
    for number, line in enumerate(part.lines, start=1):
        yield f"{number}. {line}" if part.kind == "steps" else line if part.kind == "words" else f"- {line}"


def _level(one: Level) -> str:
    return f"{one.name}: {one.likely}, {one.at_most} ({round(one.share * 100)} %)"


def as_markdown(sheet: Sheet) -> str:
    """Markdown; whatever a name holds is text and marks nothing up."""
    return "\n".join(_marked(sheet, 1)) + "\n"


def _marked(sheet: Sheet, depth: int) -> Iterator[str]:
    yield f"{'#' * depth} {_plain(sheet.title)}"
    yield ""
    yield _plain(sheet.about)
    for part in sheet.parts:
        yield from ("", f"{'#' * (depth + 1)} {_plain(part.heading)}", "")
        for number, line in enumerate(part.lines, start=1):
            ends = {"steps": f"{number}. ", "words": ""}.get(part.kind, "- ")
            yield f"{ends}{_plain(line)}"
            if part.kind == "words":
                yield ""
    if sheet.levels:
        yield from (
            "",
            "| each person, g | likely of its limit | at most of its limit | full |",
            "|---|---:|---:|---:|",
        )
        for one in sheet.levels:
            figures = f"{one.likely} | {one.at_most} | {round(one.share * 100)} %"
            yield f"| {_plain(one.name)} | {figures} |"
    for dish in sheet.dishes:
        yield ""
        yield from _marked(dish, depth + 1)
    if depth == 1:
        yield from (line for caution in sheet.cautions for line in ("", _plain(caution)))


def _plain(text: str) -> str:
    return _LEADING.sub(r"\1\\\2", _MARKS.sub(r"\\\1", " ".join(text.split())))
