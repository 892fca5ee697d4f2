"""One line a cook types, taken apart: amount, food words, place, dates, condition, owner."""

import re
from datetime import date
from functools import lru_cache
from typing import Literal, NamedTuple

from calmlarder.matching.amounts import Amount, take_amount
from calmlarder.matching.conditions import take_condition
from calmlarder.matching.dates import Dated, take_dates
from calmlarder.matching.words import plain

LONGEST_LINE = 400
Place = Literal["fridge", "freezer", "cupboard"]
_PLACES: dict[str, Place] = {
    "freezer": "freezer", "frozen": "freezer", "fridge": "fridge", "refrigerator": "fridge",
    "cupboard": "cupboard", "pantry": "cupboard", "larder": "cupboard", "shelf": "cupboard", "counter": "cupboard",
}  # fmt: skip
_IN_PLACE = re.compile(
    r"\b(?:in|from) (?:the )?(freezer|fridge|refrigerator|cupboard|pantry|larder)\b|\b(?:on) the (shelf|counter)\b"
)
_NUMBER_WORD = re.compile(r"(?:half|third|quarter|one|two|three|four|five|six|seven|eight|nine|ten)\b")
_NAME = "zzname"  # stands for a name while the amount is taken
_PLACE_WORD = re.compile(r"\b(freezer|fridge|cupboard|pantry)\b")
_BRACKETS = re.compile(r"[(\[]([^)\]]*)[)\]]")
_NOT_AN_OWNER = re.compile(
    r"\d|\b(?:use|best|opened|open|frozen|drained|cooked|dry|raw|about|approx|soft|bendy|fridge|freezer|cupboard|parts?)\b"
)


class Entry(NamedTuple):
    """What one line says. `words` are the words left for the food."""

    text: str
    words: str
    amount: Amount
    place: Place | None
    dates: tuple[Dated, ...]
    condition: str | None
    to_bin: bool
    owner: str | None
    owner_agrees: bool


def read_entry(text: str, today: date, names: frozenset[str]) -> Entry | None:
    """A line taken apart, or None for an empty line or a comment.

    `names` are the known food names in plain form. Raises ValueError, in words for a cook, when the line
    cannot be.
    """
    if len(text) > LONGEST_LINE:
        raise ValueError(f"the line is longer than {LONGEST_LINE} signs")
    line = re.sub(r"(?:^|\s)#.*$", "", text).strip()
    if not line:
        return None
    if any(not sign.isprintable() for sign in line.replace("\t", " ")):
        raise ValueError("the line holds signs that are no text")
    rest = plain(line)
    owner, agrees, rest = _take_owner(rest)
    dates, rest = take_dates(rest, today)
    condition, to_bin, rest = take_condition(rest, names)
    place, rest = _take_place(rest)
    if place is None and any(dated.kind == "frozen" for dated in dates):
        place = "freezer"
    amount, rest = _take_amount(rest, names)
    words = re.sub(r"\s*([,;])[,;\s]*", r", ", re.sub(r"[:!?\"]", " ", rest))
    words = " ".join(words.split()).strip(" .-+*&,;/")
    return Entry(line, words, amount, place, dates, condition, to_bin, owner, agrees)


@lru_cache(8)
def _begun_with_a_number(names: frozenset[str]) -> tuple[str, ...]:
    """Names whose number is no amount: `five spice`, `half-fat creme fraiche`; the longest first."""
    return tuple(sorted((name for name in names if _NUMBER_WORD.match(name)), key=lambda name: (-len(name), name)))


def _take_amount(text: str, names: frozenset[str]) -> tuple[Amount, str]:
    for name in _begun_with_a_number(names):
        found = re.search(rf"(?<![\w-]){re.escape(name)}(?![\w-])", text)
        if found:
            amount, rest = take_amount(f"{text[: found.start()]}{_NAME}{text[found.end() :]}")
            return amount._replace(measured_words=None), rest.replace(_NAME, name)
    return take_amount(text)


def with_name(text: str, name: str, today: date, names: frozenset[str]) -> str:
    """The line with another name for its food, everything else as it was.

    Raises ValueError, as `read_entry` does.
    """
    entry = read_entry(text, today, names)
    line = plain(text)
    if entry is None or not entry.words:
        return name
    if entry.words in line:
        return line.replace(entry.words, name, 1)
    for word in entry.words.replace(",", " ").split():
        line = re.sub(rf"(?<!\w){re.escape(word)}(?!\w)", " ", line, count=1)
    return " ".join(f"{name}, {line.strip(' ,')}".split()).strip(" ,")


def _take_owner(text: str) -> tuple[str | None, bool, str]:
    found = _BRACKETS.search(text)
    if not found:
        return None, False, text
    inside = found[1].strip()
    agrees = bool(re.search(r"\bok(?:ay)?\b", inside))
    name = re.sub(r"[,;]?\s*\bok(?:ay)?\b", "", inside).strip(" ,;")
    if not name or ("'s" not in name and _NOT_AN_OWNER.search(name)):
        return None, False, f"{text[: found.start()]} {text[found.end() :]}, {inside}"
    name = re.sub(r"'s?$", "", name)
    return name, agrees, f"{text[: found.start()]} {text[found.end() :]}"


def _take_place(text: str) -> tuple[Place | None, str]:
    found = _IN_PLACE.search(text) or _PLACE_WORD.search(text)
    if found:
        word = next(group for group in found.groups() if group)
        return _PLACES[word], f"{text[: found.start()]} {text[found.end() :]}"
    # `frozen` stays among the words: frozen peas are a food of their own.
    return ("freezer", text) if re.search(r"\bfrozen\b", text) else (None, text)
