"""The notes of a page that hold of the changed dish too, sentence by sentence.

One that names what is changed, gone or not in the list at all may be wrong now, and says something that nobody counted:
it stays out. So does one that keeps the dish for longer than three days, unless it is frozen.
"""

import re
from collections.abc import Sequence

from calmlarder.adapt.model import Adapted
from calmlarder.adapt.names import names_of_all, spans_in
from calmlarder.adapt.step_verbs import is_a_verb, may_be_a_verb
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.matching.names.words import words_of
from calmlarder.tables.book import Tables

_SENTENCES = re.compile(r"(?<=[.!?])\s+")
# Parts of a vegetable that another has not.
_PARTS = re.compile(
    r"\b(?:leaves|stalks?|stems?|florets?|peel|peelings|skins?|outer|cores?|pods?|bones?)\b", re.IGNORECASE
)
_ALLIUM = re.compile(r"\b(?:garlic\w*|onions?|shallots?|leeks?|scallions?|alliums?)\b", re.IGNORECASE)
_KEEPS_LONG = re.compile(
    r"\b(?:[4-9]|\d\d|four|five|six|seven|ten)(?: ?[-–] ?\d+| to \w+| or \w+)? days\b|\b(?:weeks?|months?)\b",
    re.IGNORECASE,
)
# Frozen it is safe as long as it is frozen, whatever is in it (food-safety authorities' advice, recalled).
_FROZEN = re.compile(r"\b(?:freez\w*|frozen|freezer)\b", re.IGNORECASE)
_DAYS = re.compile(r"\bdays?\b|\bfridge\b", re.IGNORECASE)
# Another way to cook it, which was said of the steps as they were, and what is said of the page.
_OTHERWISE = re.compile(
    r"\b(?:instead|swap\w*|substitut\w*|replac\w*|in place of|stand in|vegans?|vegetarian|dairy|gluten"
    r"|works? (?:too|as well|in)|if you (?:like|have|want|can't|cannot)|slow[ -]cooker|pressure[ -]cooker|air[ -]fryer"
    r"|microwave|steps? \d|nutrition|calories|per serving|comment|subscribe|newsletter|affiliate|rating|stars?)\b",
    re.IGNORECASE,
)


_THE_DISH = {words_of(one) for one in ("leftovers", "filling", "sauce", "dough", "batter")}  # whatever is in it


def own_notes(
    notes: Sequence[str], reads: Sequence[IngredientRead], adapted: Adapted, tables: Tables
) -> tuple[str, ...]:
    """The notes that hold, each without the sentences that do not."""
    gone = {change.place for change in adapted.changes if change.change in {"swap", "out"}}
    changed = gone | {one.place for one in adapted.unread}
    stays = {read.food for place, read in enumerate(reads) if read.food and place not in changed}
    kept = []
    for note in notes:
        said = _with_their_answers(_SENTENCES.split(note.strip()))
        told = [one for one in said if _holds(one, stays, tables)]
        kept += [" ".join(told)] if told and told[0] == said[0] else []
    return tuple(kept)


def _with_their_answers(sentences: Sequence[str]) -> list[str]:
    """The sentences, a question with what follows it as one: `No spinach? Use shredded kale.`"""
    told: list[str] = []
    for one in sentences:
        if told and told[-1].endswith("?"):
            told[-1] = f"{told[-1]} {one}"
        else:
            told.append(one)
    return told


def _holds(sentence: str, stays: set[str], tables: Tables) -> bool:
    if sentence.endswith("?") or any(one.search(sentence) for one in (_ALLIUM, _PARTS, _OTHERWISE)):
        return False
    if _KEEPS_LONG.search(sentence) and not (_FROZEN.search(sentence) and not _DAYS.search(sentence)):
        return False
    spans = spans_in(sentence, names_of_all(tables))
    named = [one for one in spans if not (is_a_verb(sentence[one[0] : one[1]]) and may_be_a_verb(sentence, one[:2]))]
    return all(meant & stays or words_of(sentence[start:end]) in _THE_DISH for start, end, meant in named)
