"""Water in the place of a liquid of which there is less now, in the step that pours it in."""

import re
from collections.abc import Sequence

from calmlarder.adapt.in_words import VERBS_NEXT
from calmlarder.adapt.names import Names, spans_in
from calmlarder.adapt.step_heat import sentence_at

_MADE_UP = re.compile(r"(?:Less|Without) (?P<names>.+): make up the liquid with up to (?P<ml>\d+) ml water\.")
_POURS = re.compile(r"\b(?:pour|add|stir|tip|whisk|mix)\w*\b", re.IGNORECASE)
_REST = re.compile(r"\b(?:rest of|remaining)(?: the)? $", re.IGNORECASE)
_SOME = re.compile(r"\b(?:half|part|some|a little|splash|spoon\w*|tbsp|tablespoons?|swirl)\b[^.;,]*$", re.IGNORECASE)
_WATER = re.compile(r"\b(?P<ml>\d{1,4}) ?ml (?:of )?(?P<how>(?:cold |hot |boiling )?water)\b")
_BEFORE_MORE = re.compile(rf"(?:,| and) (?!{VERBS_NEXT})", re.IGNORECASE)
_NEAR = 60  # signs between the liquid and the water that goes in with it: ours


def water_in_its_step(
    steps: Sequence[str], notes: Sequence[str], foods: frozenset[str], names: Names
) -> tuple[list[str], list[str]]:
    """The steps with the water that makes up for less of these liquids, and the notes without what that says.

    Where no step pours in the liquid the note stays.
    """
    told, kept = list(steps), []
    for note in notes:
        made_up = _MADE_UP.fullmatch(note)
        place = _place(told, foods, names) if made_up is not None and foods else None
        if made_up is None or place is None:
            kept.append(note)
            continue
        number, end = place
        told[number] = _with_water(told[number], end, int(made_up["ml"]))
    return told, kept


def _place(steps: Sequence[str], foods: frozenset[str], names: Names) -> tuple[int, int] | None:
    """The step that pours the liquid in, or the rest of it, and where its name ends there."""
    found: list[tuple[bool, int, int]] = []
    for number, step in enumerate(steps):
        for start, end, meant in spans_in(step, names):
            before = sentence_at(step, end)[: max(0, end - step.find(sentence_at(step, end)))]
            if meant & foods and _POURS.search(before) and not _SOME.search(step[:start].rpartition(". ")[2]):
                found.append((bool(_REST.search(step[:start])), number, end))
    first = next((one for one in found if one[0]), found[0] if found else None)
    return (first[1], first[2]) if first is not None else None


def _with_water(step: str, end: int, ml: int) -> str:
    own = _WATER.search(step, end)
    if own is not None and own.start() - end < _NEAR:
        return f"{step[: own.start()]}up to {int(own['ml']) + ml} ml {own['how']}{step[own.end() :]}"
    joined = "," if _BEFORE_MORE.match(step, end) else " and"
    return f"{step[:end]}{joined} up to {ml} ml water{step[end:]}"
