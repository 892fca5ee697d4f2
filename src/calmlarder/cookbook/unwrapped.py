"""Steps of a text that was broken at its margin: a line that the one before runs on into is one with it."""

import re
from itertools import pairwise

from calmlarder.cookbook.behind import is_between
from calmlarder.cookbook.bounds import LONGEST_STEP
from calmlarder.cookbook.serves import SERVES
from calmlarder.cookbook.text_lines import Line, bare_line

# A line of at least so many signs that ends within a sentence, and what begins one that is not its end.
_RUNS_ON = re.compile(r"^.{30,}[^.!?:;)\]]$|^.{60,}[^:]$")
_WITHIN = re.compile(r"[^\s.!?:;)\]]$")
_GOES_ON = re.compile(r"\s*[a-z(]")
_STARTS_ANEW = re.compile(r"\s*(?:[-*+•·▢☐□–‣◦#]|\d{1,2}[.):]|step \d|\*\*|[A-Z][A-Z ]{3,}$)", re.IGNORECASE)


def unwrapped(lines: list[Line], rest: list[int]) -> list[str]:
    """The steps, of which a line that the one before runs on into is one step with it: a text broken at its margin."""
    steps: list[str] = []
    before: int | None = None
    broken = _is_broken(lines, rest)
    for index in rest:
        text = bare_line(lines[index].text)
        if SERVES.match(text) or not text or is_between(text):
            continue
        runs_on = (
            before == index - 1
            and _RUNS_ON.search(lines[index - 1].text[:LONGEST_STEP].rstrip()) is not None
            and (broken or lines[index - 1].text.rstrip()[-1:] not in ".!?")
            and not _STARTS_ANEW.match(lines[index].text)
        )
        if runs_on and len(steps[-1]) + len(text) < LONGEST_STEP:
            steps[-1] = f"{steps[-1]} {text}"
        else:
            steps.append(text[:LONGEST_STEP])
        before = index
    return steps


def _is_broken(lines: list[Line], rest: list[int]) -> bool:
    """Whether a text is broken at its margin: somewhere a line ends within a sentence that the next one ends."""
    return any(
        after == at + 1
        and _WITHIN.search(lines[at].text[:LONGEST_STEP].rstrip()) is not None
        and _GOES_ON.match(lines[after].text) is not None
        for at, after in pairwise(rest)
    )
