"""A grain that a step only pours hot water over, where what takes its place has to boil."""

import re
from collections.abc import Callable, Sequence

from calmlarder.adapt.model import Change
from calmlarder.adapt.sentences import SENTENCE_ENDS, ends_in, minutes_in, says, sentence_at, sentence_behind
from calmlarder.adapt.step_minutes import COOKS, OVEN
from calmlarder.and_list import and_list

_SOAKS = re.compile(
    r"\bsoak\w*|\b(?:pour|cover|over|add)\b[^.;]{0,60}\b(?:boiling|hot|just-boiled|boiled) (?:water|\w* ?stock)"
    r"|\b(?:leave|stand|swell)\b[^.;]{0,40}\b(?:minutes?|mins?|absorbed|tender|soft)\b",
    re.IGNORECASE,
)
_POURED = re.compile(r"\bpour (?:it|this|the \w+) over\b", re.IGNORECASE)
# Only the liquid boils, which is poured over what soaks.
_LIQUID_BOILS = re.compile(
    r"\b(?:bring|boil|heat)(?:s|ing)?\b[^.;]{0,40}\b(?:water|stock|broth|liquid|kettle)\b"
    r"(?: \[[^\]]*\])?(?:[^.;,]{0,15}\bto (?:the|a) boil)?",
    re.IGNORECASE,
)
_INTO_A_BOWL = re.compile(
    r"(?:\s*\d+[.)])?\s*(?:Meanwhile,? )?(?:put|place|tip|pour) the [\w -]{3,40} (?:in|into) a (?:\w+ ){0,2}"
    r"(?:bowl|dish)\.$",
    re.IGNORECASE,
)
_COVERS = re.compile(
    r"\s*(?:cover|leave|stand|let it|(?:do not|don[’']t|no need to) add(?: any)?(?: more)? water)\b", re.I
)
_MEANWHILE = re.compile(r"^\s*(?:\d+[.)]\s*)?(?:meanwhile|while)\b", re.IGNORECASE)
_OWN_NUMBER = re.compile(r"\s*\d{1,2}[.)] ")
_SO_MUCH = re.compile(r"(?:an?|some|half|½|\d|the)\b", re.IGNORECASE)
_BAKES = 20  # minutes in which a grain is done under a lid in the oven: ours


def is_only_soaked(step: str, end: int, change: Change, behind: str = "") -> bool:
    """Whether a step pours hot water over what has to boil now, where it names it or in the sentence behind.

    What is baked in it for long, in this step or in `behind`, boils there.
    """
    if not change.not_soaked:
        return False
    told = sentence_at(step, end)
    told = f"{told}. {sentence_behind(step, told)}"
    soaks = says(_SOAKS, told) or says(_POURED, told)
    if soaks and any(
        minutes_in(one) >= _BAKES for one in SENTENCE_ENDS.split(f"{step[end:]}\n{behind}") if OVEN.search(one)
    ):
        return False
    return soaks and not says(COOKS, _LIQUID_BOILS.sub(" ", told))


def without_soaking(step: str, instead: str, alone: bool, others: Callable[[str], Sequence[str]]) -> str:
    """A step that boils what it only poured hot water over: the sentence that soaks makes room.

    What else stands in it (`others`, as the step calls it) is stirred in when it is done. Where that sentence is not
    found, what to do stands before it all.
    """
    told = f"{instead[:1].upper()}{instead[1:]}"
    kept: list[str] = []
    found = False
    start = 0
    for stop in (*ends_in(step), len(step)):
        sentence = step[start:stop]
        start = stop
        goes_on = found and bool(_COVERS.match(sentence))
        goes_on |= alone and not found and bool(_INTO_A_BOWL.match(sentence)) and _soaks_next(step, start)
        if not found and (says(_SOAKS, sentence) or says(_POURED, sentence)):
            found = True
            beside = others(sentence)
            the = "" if beside and _SO_MUCH.match(beside[0]) else "the "
            told = f"{told}, then stir in {the}{and_list(beside)}" if beside else told
            number = _OWN_NUMBER.match(sentence) if not kept else None
            kept.append(f"{' ' if kept else number[0] if number else ''}{_begun_as(sentence, told)}.")
        elif not goes_on:
            kept.append(sentence)
    return "".join(kept) if found else f"[In place of the soaking: {instead}.] {step}"


def _begun_as(sentence: str, told: str) -> str:
    """What is done instead, meanwhile where the sentence says so."""
    while_that = _MEANWHILE.search(sentence)
    return f"Meanwhile {told[:1].lower()}{told[1:]}" if while_that else told


def _soaks_next(step: str, start: int) -> bool:
    sentence = SENTENCE_ENDS.split(step[start:].lstrip())[0]
    return says(_SOAKS, sentence) or says(_POURED, sentence)
