"""A page of HTML as lines of text, with what is a heading and what stands in which list."""

import html
import re
from typing import NamedTuple

from calmlarder.clean import clean_line
from calmlarder.cookbook.markup import Token, tokens

_MOST_BLOCKS = 20_000
_LONGEST = 5_000
_UNSEEN = frozenset({"nav", "footer", "aside", "form", "select", "button", "svg", "head", "iframe", "figure"})
_LINES = frozenset({
    "address", "article", "aside", "blockquote", "br", "dd", "div", "dl", "dt", "fieldset", "header", "hr", "label",
    "li", "main", "ol", "p", "pre", "section", "table", "tbody", "thead", "tr", "ul",
})  # fmt: skip
_HEADS_A_LIST = 6  # the lowest level of heading in HTML
_NUMBER = re.compile(r"[\d½⅓¼¾⅔⅛]")
_HEADINGS = {f"h{level}": level for level in range(1, 7)}
_LISTS = frozenset({"ul", "ol", "table", "dl"})
_BOXES = frozenset({"article", "div", "main", "section"})
_DEEPEST_PART = 40  # of parts within parts; deeper ones count as that: ours
_LONGEST_HEAD = 60  # signs; a longer line is a sentence: ours
_PARTS = frozenset({"span", "b", "strong", "td", "th"})
# `400 g`, `1 medium (about 700 g)`: nothing but an amount, in a cell or before a colon of its own.
_ONLY_AMOUNT = re.compile(
    r"(?:about |approx\.? )?[\d½¼¾⅓⅔⅛][\d½¼¾⅓⅔⅛ ./–-]*(?:x ?\d{1,4} ?)?(?:[a-z]{1,11}\.?)?"
    r"(?: (?:tins?|cans?|medium|large|small|heads?|bunch(?:es)?|cloves?|jars?|packs?|sprigs?|sticks?|handfuls?"
    r"|each)){0,2}"
    r"(?: ?\([^()]{1,30}\))?",
    re.IGNORECASE,
)
_IS_UNIT = re.compile(
    r"(?:k?g|grams?|m?l|oz|lbs?|cups?|tbsps?|tsps?|tablespoons?|teaspoons?|tins?|cans?|cloves?|sticks?|sprigs?"
    r"|bunch(?:es)?|pinch(?:es)?|handfuls?|slices?|pieces?|heads?|jars?|packs?|pints?)\.?",
    re.IGNORECASE,
)
# `<span class="ingredient-notes">`: what is said of the food before it.
_OF_NOTES = re.compile(r"(?:^|[\s_-])(?:notes?|prep(?:aration)?|comment)(?:$|\s)", re.IGNORECASE)
_OF_TIPS = re.compile(r"(?:^|[\s_-])(?:tips?|notes?)(?:$|[\s_-])", re.IGNORECASE)
_NOTE = "\x01"
_OF_HEADINGS = re.compile(r"(?:^|[\s_-])(?:group|heading|header|section|subhead\w*|title)(?:$|\s)", re.IGNORECASE)
_BOLD = frozenset({"b", "strong"})
_LONGEST_AMOUNT = 40
_MOST_CELLS = 4  # of a row: what, how much, in what, and a note


class Block(NamedTuple):
    """A line of a page: `level` 1 to 6 of a heading, else 0; `listed` is the number of its list, else 0.

    `inside` numbers the parts of the page that it stands in, from the outermost.
    """

    level: int
    listed: int
    text: str
    inside: tuple[int, ...] = ()


class _Page:
    """The lines so far."""

    def __init__(self) -> None:
        self.blocks: list[Block] = []
        self._text: list[str] = []
        self._level = 0
        self._lists: list[int] = []
        self._count = 0
        self._parts: list[tuple[str, int]] = []
        self._hidden: list[str] = []
        self._in_row = False
        self._cells: list[str] = []  # the tags of those of the row so far
        self._may_head = False  # whether the line is an item of a list that its class calls a heading, all in bold
        self._bold = 0
        self._is_wide = False  # whether the only cell of the row so far spans others
        self._term = ""  # what the last line is, where it is the term of a list of terms

    def takes(self, token: Token) -> None:
        """The next tag or text."""
        if self._hidden:
            if token.kind == "start" and token.name == self._hidden[0] and not token.empty:
                self._hidden.append(token.name)
            elif token.kind == "end" and token.name == self._hidden[0]:
                self._hidden.pop()
        elif token.kind == "text":
            self._text.append(token.name)
            self._may_head &= self._bold > 0 or not token.name.strip()
        elif token.kind == "start":
            self._starts(token)
        elif token.kind == "end":
            self._ends(token.name)

    def _starts(self, token: Token) -> None:
        tag = token.name
        self._bold += tag in _BOLD
        if tag in _UNSEEN and not token.empty and not _is_a_tip(token):
            self._hidden.append(tag)
        elif tag in _HEADINGS:
            self.breaks()
            self._level = _HEADINGS[tag]
        elif tag in {"td", "th"}:
            self._text.append("\x00")  # whoever wrote the page may have left its end out
            self._cells.append(tag)
            self._is_wide = token.attributes.get("colspan", "1") not in {"", "0", "1"}
        elif tag in _LINES:
            within = bool(self._lists) and tag in _LISTS
            self.breaks(_HEADS_A_LIST if within else 0)
            self._in_row = tag == "tr"
            self._cells.clear()
            self._may_head = tag == "li" and _OF_HEADINGS.search(token.attributes.get("class", "")) is not None
            if tag != "dd":
                self._term = ""
            if tag in _LISTS:
                self._count += 1
                self._lists.append(self._count)
            elif tag in _BOXES and len(self._parts) < _DEEPEST_PART:
                self._count += 1
                self._parts.append((tag, self._count))
        elif self._text and _OF_NOTES.search(token.attributes.get("class", "")):
            self._text.append(_NOTE)

    def _ends(self, tag: str) -> None:
        self._bold -= tag in _BOLD and self._bold > 0
        if tag in _HEADINGS:
            self.breaks()
            self._level = 0
        elif tag in _LINES:
            told = len(self.blocks)
            self.breaks()
            if tag == "dt":
                self._term = self.blocks[-1].text if len(self.blocks) > told else ""
            elif tag == "dd" and self._term and len(self.blocks) > told:
                self._joins_the_term()
            self._in_row &= tag not in {"tr", "table"}
            if tag in _LISTS and self._lists:
                self._lists.pop()
            elif self._parts and self._parts[-1][0] == tag:
                self._parts.pop()
        elif tag in _PARTS:
            self._text.append("\x00")

    def _joins_the_term(self) -> None:
        """One line of a term and what stands under it, where either is but an amount: `250g`, `plain flour`."""
        term, said = self.blocks[-2].text, self.blocks[-1]
        if _is_amount(term) != _is_amount(said.text):
            line = f"{term} {said.text}" if _is_amount(term) else f"{said.text} {term}"
            self.blocks[-2:] = [said._replace(text=line, level=0)]
        self._term = ""

    def breaks(self, heads: int = 0) -> None:
        """The end of a line. Parts set apart by their look alone are set apart by a space.

        A short line without a number before a list within its list is the heading of that, of level `heads`; so is a
        row of a table that is but one cell for a heading.
        """
        alone = self._in_row and (self._cells == ["th"] or (self._cells == ["td"] and self._is_wide))
        alone |= self._may_head
        heads = _HEADS_A_LIST if alone else heads
        told = _with_notes("".join(self._text))
        self._text.clear()
        if not told.strip("\x00 \n\t\r") or len(self.blocks) >= _MOST_BLOCKS:
            return
        if self._in_row and len(self._cells) > 1 and set(self._cells) == {"th"} and not _NUMBER.search(told):
            return  # what the columns hold: `What`, `How much`
        pieces = _amount_first(told.split("\x00")) if self._in_row else told.split("\x00")
        apart = "".join((" " if index and piece[:1].isalnum() else "") + piece for index, piece in enumerate(pieces))
        text = clean_line(html.unescape(apart[:_LONGEST]))
        if text:
            level = self._level or (heads if len(text) <= _LONGEST_HEAD and not _NUMBER.search(text) else 0)
            inside = tuple(number for _, number in self._parts)
            self.blocks.append(Block(level, self._lists[-1] if self._lists else 0, text, inside))


def _is_a_tip(token: Token) -> bool:
    """Whether a part that stands aside is said of the recipe: `<aside class="tip">`."""
    return token.name == "aside" and _OF_TIPS.search(token.attributes.get("class", "")) is not None


def _amount_first(pieces: list[str]) -> list[str]:
    """The cells of a row as a line of a list: how much, of what, and what is noted of it behind a comma."""
    cells = [piece for piece in pieces if piece.strip()]
    amount = next((at for at, cell in enumerate(cells) if _is_amount(cell)), None)
    if amount is None or not 1 < len(cells) <= _MOST_CELLS or amount > 1:
        return pieces
    if amount == 0 and len(cells) == _MOST_CELLS - 2:
        return pieces  # as it should stand
    rest = [cell for at, cell in enumerate(cells) if at != amount]
    if amount == 0 and len(rest) > 1 and _IS_UNIT.fullmatch(rest[0].strip()):
        rest = [f"{rest[0].strip()} {rest[1].strip()}", *rest[2:]]
    return [cells[amount], ", ".join(cell.strip() for cell in rest)]


def _with_notes(told: str) -> str:
    """A line whose notes are set apart by their look: by a comma, where no sign stands there."""
    if _NOTE not in told:
        return told
    bare = re.sub(rf"[\s\x00]*{_NOTE}[\s\x00]*$", "", told)
    return re.sub(rf"(?<=\w)[\s\x00]*{_NOTE}[\s\x00]*(?=\w)", ", ", bare).replace(_NOTE, "")


def _is_amount(text: str) -> bool:
    bare = html.unescape(text[: 2 * _LONGEST_AMOUNT]).strip()
    return len(bare) <= _LONGEST_AMOUNT and _ONLY_AMOUNT.fullmatch(bare) is not None


def blocks_of(page: str) -> list[Block]:
    """The lines of a page that its reader sees, in order."""
    whole = _Page()
    for token in tokens(page):
        whole.takes(token)
    whole.breaks()
    return whole.blocks
