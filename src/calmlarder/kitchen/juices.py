"""Juices of a tray are there where raw meat, fish or tomatoes gave them: common practice, no source."""

import re
from collections.abc import Sequence

from calmlarder.kitchen.filling import ALREADY_COOKED, Filling
from calmlarder.patterns.pattern import Pattern, Step
from calmlarder.tables.vocabulary import CANNED_STATES

_GIVES_JUICE = frozenset({"meat", "poultry", "fish", "shellfish", "tomato"})
_DRY = frozenset({*ALREADY_COOKED, *CANNED_STATES})
_STIRRED = re.compile(r"^Stir the juices of the tray, loosened with a splash of hot water, into (\{[a-z,]+\})\.$")
_OVER = re.compile(r", with (\{[a-z,]+)\|the juices\} over it")
_WITH_THEM = " with the juices of the tray"
_SOUR = frozenset({"acid", "citrus"})  # they run by themselves


def without_juices(pattern: Pattern, fillings: Sequence[Filling]) -> Pattern:
    """The pattern as it is told where nothing on the tray gives off any."""
    slots = {slot for step in pattern.steps if step.place == "oven" for slot in step.slots}
    roasted = [one for one in fillings if one.slot in slots]
    if not slots or any(one.food.kind in _GIVES_JUICE and one.food.state not in _DRY for one in roasted):
        return pattern
    return pattern.with_steps([one for step in pattern.steps if (one := _dry(step, fillings)) is not None])


def _dry(step: Step, fillings: Sequence[Filling]) -> Step | None:
    found = _STIRRED.match(step.words)
    if found is not None:
        here = [one for one in fillings if one.slot in step.slots]
        thick = any(one.food.kind not in _SOUR and one.food.id != "tahini" for one in here)  # that is stirred already
        return step.with_words(f"Loosen {found[1]} with a spoon of hot water.") if thick else None
    words = _OVER.sub(r"[, with \1} over it]", step.words)
    return step.with_words(words.replace(_WITH_THEM, ""))
