"""A page of HTML as a row of tags and texts, read once from front to back. Nothing of the page is run or drawn.

Malformed or endless markup costs no more than its length: no sign is looked at more than a few times.
"""

import html
import re
from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

_MOST_TAGS = 200_000
_MOST_ATTRIBUTES = 60
_LONGEST_VALUE = 20_000
_NAME = re.compile(r"<(/?)([a-zA-Z][\w:-]{0,40})")
_ATTRIBUTE = re.compile(
    r"[\s/]*+([^\s\"'<>/=][^\s\"'<>/=]{0,80})(?:\s{0,20}=\s{0,20}(?:([\"'])|([^\s\"'<>]{1,2000})))?"
)
_GAP = re.compile(r"[\s/]*+")
_RAW = {
    tag: re.compile(rf"</{tag}\b", re.IGNORECASE) for tag in ("script", "style", "textarea", "template", "noscript")
}
VOID = frozenset({"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "wbr"})


class Token(NamedTuple):
    """A tag that starts or ends, or text between tags (`raw` where it stands in a script or style)."""

    kind: Literal["start", "end", "text", "raw"]
    name: str  # of a tag; the text itself
    attributes: Mapping[str, str] = {}
    empty: bool = False  # it ends where it starts


def tokens(page: str) -> Iterator[Token]:
    """The tags and texts of a page, in order; comments are left out, entities of attributes are read."""
    place = 0
    for _ in range(_MOST_TAGS):
        at = page.find("<", place)
        if at < 0:
            break
        if at > place:
            yield Token("text", page[place:at])
        named = _NAME.match(page, at)
        if named is None:
            place = _behind_comment(page, at)
            if place == at + 1:
                yield Token("text", "<")
            continue
        tag = named[2].lower()
        if named[1]:
            place = _behind(page, ">", named.end())
            yield Token("end", tag)
            continue
        attributes, place, closed = _attributes(page, named.end())
        yield Token("start", tag, attributes, closed or tag in VOID)
        if tag == "input" and attributes.get("type") == "number" and attributes.get("value", "").isdigit():
            yield Token("text", f" {attributes['value']} ")  # as a reader of the page sees it: `Servings: [4]`
        if tag in _RAW and not closed:
            ending = _RAW[tag].search(page, place)
            end = ending.start() if ending else len(page)
            yield Token("raw", page[place:end])
            place = end
    else:
        return
    if place < len(page):
        yield Token("text", page[place:])


def _behind_comment(page: str, at: int) -> int:
    if page.startswith("<!--", at):
        return _behind(page, "-->", at + 4)
    return _behind(page, ">", at) if page[at + 1 : at + 2] in ("!", "?") else at + 1


def _behind(page: str, sign: str, place: int) -> int:
    found = page.find(sign, place)
    return len(page) if found < 0 else found + len(sign)


def _attributes(page: str, place: int) -> tuple[dict[str, str], int, bool]:
    """The attributes of a tag, where it ends, and whether it closes itself; a `<` or `>` in quotes ends nothing."""
    found: dict[str, str] = {}
    for _ in range(_MOST_ATTRIBUTES):
        one = _ATTRIBUTE.match(page, place)
        if one is None:
            break
        place = one.end()
        value = one[3] or ""
        if one[2]:
            end = page.find(one[2], place, place + _LONGEST_VALUE)
            if end < 0:
                break
            value, place = page[place:end], end + 1
        found.setdefault(one[1].lower(), html.unescape(value) if "&" in value else value)
    gap = _GAP.match(page, place)
    closed = "/" in gap[0] if gap else False
    place = gap.end() if gap else place
    if page[place : place + 1] == ">":
        return found, place + 1, closed
    # Something is wrong in the tag: it ends at the next sign that may end it.
    near = place + _LONGEST_VALUE
    ends = [at for at in (page.find(">", place, near), page.find("<", place, near)) if at >= 0]
    place = min(ends, default=min(near, len(page)))
    return found, place + 1 if page[place : place + 1] == ">" else place, False
