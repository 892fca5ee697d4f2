"""The list of a packet taken apart: its ingredients in order, and how much each may be at most."""

import re
from typing import NamedTuple

from calmlarder.clean import clean_line
from calmlarder.matching.amounts.numbers_and_fractions import number
from calmlarder.problems import CannotGoOn, Problem

LONGEST = 20_000  # characters; the longest lists of packets have some thousand
_DEEPEST = 6
# Below 2 % the order is free: Regulation (EU) No 1169/2011, Annex VII, part A, point 6. Source seen: recalled.
_FREE_ORDER_PERCENT = 2.0
_HEAD = re.compile(r"^.*?\bingredients?\s*:\s*", re.IGNORECASE)
_TRACES = re.compile(
    r"[.;,]?\s*\b(?:may (?:also )?contain|(?:made|produced|packed) in an? (?:factory|environment|facility)"
    r"|not suitable)\b",
    re.IGNORECASE,
)
_ADVICE = re.compile(r"[.;,]?\s*\b(?:contains\s*:?|allergy advice\s*:?|allergens?\s*:|for allergens)", re.IGNORECASE)
_PERCENT = re.compile(r"\(?(\d{1,3}(?:[.,]\d{1,2})?)\s?%\)?")
_ANY_ORDER = re.compile(r"\bin (?:varying|variable) proportions?\b", re.IGNORECASE)


class Listed(NamedTuple):
    """One ingredient: `place` counts from 1 in its own list, `most_percent` is of the whole packet by weight."""

    text: str
    place: int
    inside: str
    most_percent: float
    said_percent: float | None


class Packet(NamedTuple):
    """The ingredients, those of compound ones behind them, what it says it contains, and what traces of."""

    listed: tuple[Listed, ...]
    contains: str
    traces: str


def packet_of(text: str) -> Packet:
    """A packet's text taken apart. Raises CannotGoOn where it holds no list or is too long for one."""
    if len(text) > LONGEST:
        raise CannotGoOn([Problem(where="the label", what="is longer than any list", remedy="give the list alone")])
    bare = _HEAD.sub("", " ".join(clean_line(line) for line in text.splitlines()), count=1).strip()
    traced = _TRACES.search(bare)
    traces = bare[traced.start() :] if traced else ""
    bare = bare[: traced.start()] if traced else bare
    advice = _ADVICE.search(bare)
    contains = bare[advice.start() :] if advice and advice.start() > 0 else ""
    bare = bare[: advice.start()] if contains and advice else bare
    listed = tuple(_listed(bare, "", 100.0, 0))
    if not listed:
        raise CannotGoOn([Problem(where="the label", what="names no ingredient", remedy="type the packet's list")])
    return Packet(listed, contains, traces)


def _listed(text: str, inside: str, most: float, depth: int) -> list[Listed]:
    """Each may weigh no more than the one before it: article 18 of Regulation (EU) No 1169/2011."""
    found: list[Listed] = []
    whole, ordered = most, not _ANY_ORDER.search(text)
    for place, piece in enumerate(_pieces(text), start=1):
        head, inner = _bracket(piece)
        said = _PERCENT.search(head) or _PERCENT.fullmatch(inner.strip())
        percent = min(100.0, number(said[1].replace(",", "."))) if said else None
        here = most
        if ordered:
            here = min(whole, max(_FREE_ORDER_PERCENT, min(most, whole / place)))
        if percent is not None and not inside:  # inside another it may be of that one or of the whole
            here = percent
            most = min(most, max(percent, _FREE_ORDER_PERCENT)) if ordered else most
        name = " ".join(_PERCENT.sub(" ", head).split()).strip(" .*")
        if name:
            found.append(Listed(name, place, inside, here, percent))
        if inner and depth < _DEEPEST and not _PERCENT.fullmatch(inner.strip()):
            found += _listed(inner, name, here, depth + 1)
    return found


def _pieces(text: str) -> list[str]:
    """The parts between commas that stand outside brackets."""
    pieces, depth, begin = [], 0, 0
    for at, character in enumerate(text):
        if character in "([{":
            depth += 1
        elif character in ")]}":
            depth = max(0, depth - 1)
        elif character in ",;" and depth == 0 and not re.match(r"\d", text[at + 1 : at + 2]):
            pieces.append(text[begin:at])
            begin = at + 1
    return [piece.strip() for piece in (*pieces, text[begin:]) if piece.strip(" .")]


def _bracket(piece: str) -> tuple[str, str]:
    """What stands outside the brackets of a piece, and inside."""
    head: list[str] = []
    inner: list[str] = []
    depth = 0
    for character in piece:
        closing = character in ")]}"
        depth -= closing and depth > 0
        (inner if depth > 0 else head).append(character if character not in "([{)]}" or depth > 0 else " ")
        depth += character in "([{"
    return "".join(head), "".join(inner).strip()
