"""The blocks of JSON-LD in a page of HTML, and the page's own address."""

import re

from calmlarder.cookbook.markup import tokens

_START = re.compile(r"<(?:script|meta|link|body|main|article|section|div|ul|ol|h[1-6]|p|table)\b", re.IGNORECASE)
_ITEM = re.compile(r"<[a-z][^<>]{0,500}\b(?:itemscope|itemprop|class)\b", re.IGNORECASE)
# `//<![CDATA[`, `/*<![CDATA[*/`, `<!--` in front; their ends behind.
_WRAPPED = re.compile(r"^\s*(?:(?://|/\*)?\s*(?:<!\[CDATA\[|<!--)\s*(?:\*/)?\s*)+")
_UNWRAPPED = re.compile(r"(?:(?://|/\*)?\s{0,9}(?:\]\]>|-->)\s{0,9}(?:\*/)?\s{0,9};?\s{0,9}){1,3}$")
_MOST_BLOCKS = 100
_LONGEST_ADDRESS = 2_000


def looks_like_html(text: str) -> bool:
    """Whether a text is a page rather than a recipe in words."""
    start = text[:2000].lstrip().lower()
    known = start.startswith(("<!doctype", "<html", "<head", "<script", "<?xml", "<!--"))
    return known or bool(_START.match(text[:2000].lstrip()) or "<script" in text.lower() or _ITEM.search(text))


def ld_blocks(page: str) -> list[str]:
    """The text of each `<script type="application/ld+json">`, in order, without comments and CDATA round it."""
    found: list[str] = []
    telling = False
    for token in tokens(page):
        if token.kind == "raw" and telling:
            found.append(_bare(token.name))
            if len(found) >= _MOST_BLOCKS:
                break
        kind = token.attributes.get("type", "") if token.kind == "start" and token.name == "script" else ""
        telling = kind.split(";")[0].strip().lower() == "application/ld+json"
    return found


def address_of(page: str) -> str:
    """The page's address as it gives it (`canonical`, `og:url`), or nothing."""
    if "canonical" not in page and "og:url" not in page:
        return ""
    for token in tokens(page):
        if token.kind == "end" and token.name == "head":
            break
        told = token.attributes
        if token.kind == "start" and token.name == "link" and "canonical" in told.get("rel", "").lower().split():
            return _address(told.get("href", ""))
        if token.kind == "start" and token.name == "meta" and told.get("property") == "og:url":
            return _address(told.get("content", ""))
    return ""


def _address(text: str) -> str:
    bare = text.strip()
    return bare if re.match(r"https?://\S+$", bare) and len(bare) <= _LONGEST_ADDRESS else ""


def _bare(block: str) -> str:
    block = _WRAPPED.sub("", block, count=1)
    tail = block[-60:]
    return block[: len(block) - len(tail)] + _UNWRAPPED.sub("", tail)
