"""Liquid that a dry pulse or grain would have drunk up is kept back in the step that pours it in."""

import re
from collections.abc import Sequence

from calmlarder.adapt.in_words import short_name
from calmlarder.adapt.sentences import SENTENCE_ENDS
from calmlarder.adapt.step_notes import bare
from calmlarder.adapt.things_now import Told

_NOTE = re.compile(
    r"What stands in for (?P<names>.+) takes up about (?P<ml>\d+) ml less of the liquid: keep so much back, and add of "
    r"it what the dish wants\."
)
_POURED = re.compile(
    r"\b(?:pour|add|cover|tip|stir|put|mix|top|place|combine)\b[^.;]*?\b(?P<liquid>stock|broth|water)\b", re.IGNORECASE
)
_BOILED_APART = re.compile(r"\b(?:boil|simmer|cook)\w*\b.*\bdrain\b", re.IGNORECASE | re.DOTALL)
_DRAINS = re.compile(r"\bdrain\b", re.IGNORECASE)
_ML = re.compile(r"\b(?P<ml>\d{2,4}) ?ml (?:of )?(?:[a-z]+ ){0,2}(?:water|stock|broth)\b", re.IGNORECASE)


def kept_back_in_its_step(
    written: Sequence[str], steps: Sequence[str], notes: Sequence[str], told: Told
) -> tuple[list[str], list[str]]:
    """The steps with how much liquid to keep back where it is poured in, and the notes without what that says.

    `written` are the steps as they were. A pulse that was boiled apart and drained drank none of the dish's liquid:
    nothing is kept back. Where no step pours it in the note stays.
    """
    done, kept = list(steps), []
    for note in notes:
        found = _NOTE.fullmatch(note)
        foods = [food for food in told.changed if found and told.tables.food_by_id[food].name in found["names"]]
        if found is None or not foods:
            kept.append(note)
            continue
        if any(_BOILED_APART.search(step) and _names(step, foods, told) for step in written):
            continue
        place = next((place for place, _ in enumerate(done) if _pours(done, place, foods, told)), None)
        if place is None:
            kept.append(note)
        else:
            done[place] = _kept_back(done[place], int(found["ml"]))
    return done, kept


def _names(step: str, foods: Sequence[str], told: Told) -> bool:
    """Whether a step names one of the foods by its old name's last word, or by what it is now."""
    words = [told.tables.food_by_id[food].name.split()[-1] for food in foods]
    words += [short_name(bare(line)) for food in foods for line in told.changed[food].lines]
    return any(word.casefold().removesuffix("s") in step.casefold() for word in words)


def _pours(steps: Sequence[str], place: int, foods: Sequence[str], told: Told) -> bool:
    """Whether a step pours in the liquid in which what stands in is cooked, and pours none of it away."""
    poured = _POURED.search(steps[place])
    near = any(_names(step, foods, told) for step in steps[place : place + 2])
    return poured is not None and near and _DRAINS.search(steps[place], poured.end()) is None


def _kept_back(step: str, ml: int) -> str:
    poured = _POURED.search(step)
    if poured is None:
        return step
    liquid = poured["liquid"].lower()
    own = _ML.search(step, poured.start())
    much = f"the {liquid}" if own is not None and int(own["ml"]) <= ml else f"about {ml} ml of the {liquid}"
    end = next((one.end() for one in SENTENCE_ENDS.finditer(step, poured.end())), len(step))
    stop = "" if step[:end].rstrip().endswith((".", "!", "?", ";")) else "."
    head = step[: end - 1] + "." if step[:end].endswith(";") else step[:end]
    rest = step[end:].lstrip() if step[:end].endswith(";") else step[end:]
    rest = f" {rest[:1].upper()}{rest[1:]}" if step[:end].endswith(";") else rest
    return f"{head}{stop} Keep {much} back, and add of it what the dish wants.{rest}"
