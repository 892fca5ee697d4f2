"""Water in the place of a liquid of which there is less now, in the step that pours it in."""

import re
from collections.abc import Mapping, Sequence

from calmlarder.adapt.in_words import VERBS_NEXT
from calmlarder.adapt.names import Names, spans_in
from calmlarder.adapt.sentences import SENTENCE_ENDS, sentence_at

_MADE_UP = re.compile(r"(?P<how>Less|Without) (?P<names>.+): make up the liquid with up to (?P<ml>\d+) ml water\.")
_POURS = re.compile(r"\b(?:pour|add|stir|tip|whisk|mix)\w*\b", re.IGNORECASE)
_REST = re.compile(r"\b(?:rest of|remaining)(?: the)? $", re.IGNORECASE)
_SOME = re.compile(r"\b(?:half|part|some|a little|splash|spoon\w*|tbsp|tablespoons?|swirl)\b[^.;,]*$", re.IGNORECASE)
_WATER = re.compile(r"\b(?P<ml>\d{1,4}) ?ml (?:of )?(?P<how>(?:cold |hot |boiling )?water)\b")
_LISTED_WATER = re.compile(r"(?:,|\band|\bwith) (?:the )?water\b(?! \()")
_BEFORE_MORE = re.compile(rf"(?:,| and) (?!{VERBS_NEXT})", re.IGNORECASE)
_NEAR = 60  # signs between the liquid and the water that goes in with it: ours


def water_in_its_step(
    written: Sequence[str], steps: Sequence[str], notes: Sequence[str], foods: Mapping[str, str], names: Names
) -> tuple[list[str], list[str]]:
    """The steps with the water that makes up for less of a liquid, and the notes without what that says.

    `written` are the steps as they were, which name a liquid that is gone; `foods` are what changed, by its name. Where
    no step pours it in the note stays.
    """
    done, kept = list(steps), []
    for note in notes:
        made_up = _MADE_UP.fullmatch(note)
        each = made_up["names"].split(" and ") if made_up is not None else []
        wet = frozenset(food for name, food in foods.items() if name in each)
        place = _place(done, wet, names) if wet else None
        if made_up is not None and wet and place is None and made_up["how"] == "Without":
            place = _place_of_what_is_gone(written, done, wet, names)
        if made_up is None or place is None:
            kept.append(note)
            continue
        number, end = place
        if made_up["how"] == "Less" or end is not None:
            done[number] = _with_water(done[number], end or 0, int(made_up["ml"]))
        else:
            done[number] = _instead(done[number], written[number], made_up["names"], int(made_up["ml"]))
    return done, kept


def _place(steps: Sequence[str], foods: frozenset[str], names: Names) -> tuple[int, int | None] | None:
    """The step that pours the liquid in, or the rest of it, and where its name ends there."""
    found: list[tuple[bool, int, int]] = []
    for number, step in enumerate(steps):
        for start, end, meant in spans_in(step, names):
            before = sentence_at(step, end)[: max(0, end - step.find(sentence_at(step, end)))]
            if meant & foods and _POURS.search(before) and not _SOME.search(step[:start].rpartition(". ")[2]):
                found.append((bool(_REST.search(step[:start])), number, end))
    first = next((one for one in found if one[0]), found[0] if found else None)
    return (first[1], first[2]) if first is not None else None


def _place_of_what_is_gone(
    written: Sequence[str], steps: Sequence[str], foods: frozenset[str], names: Names
) -> tuple[int, int | None] | None:
    """The step that poured in what is left out now, where it still does something."""
    named = (at for at, step in enumerate(written) if any(meant & foods for _, _, meant in spans_in(step, names)))
    first = next(named, None)
    place = _place(written, foods, names) or ((first, None) if first is not None else None)
    if place is None or place[0] >= len(steps) or "left out" in steps[place[0]]:
        return None
    return place[0], None


def _with_water(step: str, end: int, ml: int) -> str:
    own = _WATER.search(step, end)
    if own is not None and own.start() - end < _NEAR:
        return f"{step[: own.start()]}up to {int(own['ml']) + ml} ml {own['how']}{step[own.end() :]}"
    listed = _LISTED_WATER.search(step, end)
    if listed is not None and listed.start() - end < _NEAR:
        return f"{step[: listed.end()]} (up to {ml} ml more than the list says){step[listed.end() :]}"
    joined = "," if _BEFORE_MORE.match(step, end) else " and"
    return f"{step[:end]}{joined} up to {ml} ml water{step[end:]}"


def _instead(step: str, written: str, name: str, ml: int) -> str:
    """The step with water for a liquid that is gone, at the end of the sentence that poured it in."""
    count = next((at for at, one in enumerate(SENTENCE_ENDS.split(written)) if name.split()[-1] in one.casefold()), 0)
    ends = [*(one.start() for one in SENTENCE_ENDS.finditer(step)), len(step)]
    end = ends[min(count, len(ends) - 1)]
    return f"{step[:end].rstrip()}, with up to {ml} ml water in the place of the {name}{step[end:] or '.'}"
