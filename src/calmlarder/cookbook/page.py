"""The blocks of JSON-LD in a page of HTML. Nothing of the page is run or drawn."""

import re
from html.parser import HTMLParser

_OPENING = re.compile(r"<script\b[^>]{0,500}>", re.IGNORECASE)
_CLOSING = re.compile(r"</script", re.IGNORECASE)
_WRAPPING = re.compile(r"^\s*(?:/\*\s*)?(?:<!\[CDATA\[|<!--)(?:\s*\*/)?|(?:/\*\s*)?(?:\]\]>|-->)(?:\s*\*/)?\s*;?\s*$")
_ITEM = re.compile(r"<[a-z][^<>]{0,500}\bitemscope\b", re.IGNORECASE)
_MOST_BLOCKS = 100


class _Tag(HTMLParser):
    """Reads the `type` of one opening tag."""

    type = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.type = next((value or "" for name, value in attrs if name == "type"), "")


def looks_like_html(text: str) -> bool:
    """Whether a text is a page rather than a recipe in words."""
    start = text[:2000].lstrip().lower()
    known = start.startswith(("<!doctype", "<html", "<head", "<script", "<?xml", "<!--"))
    return known or bool(_OPENING.search(text) or _ITEM.search(text))


def ld_blocks(page: str) -> list[str]:
    """The text of each `<script type="application/ld+json">`, in order.

    Only the opening tags of scripts go through the parser, so that malformed markup costs no more than its length.
    """
    found: list[str] = []
    place = 0
    while len(found) < _MOST_BLOCKS:
        opening = _OPENING.search(page, place)
        if opening is None:
            break
        closing = _CLOSING.search(page, opening.end())
        end = closing.start() if closing else len(page)
        if _type_of(opening[0]).split(";")[0].strip().lower() == "application/ld+json":
            found.append(_WRAPPING.sub("", page[opening.end() : end]))
        place = end
        if closing is None:
            break
    return found


def _type_of(tag: str) -> str:
    parser = _Tag(convert_charrefs=True)
    parser.feed(tag)
    return parser.type
