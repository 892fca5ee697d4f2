"""A recipe in plain text or Markdown: which lines are ingredients, and where each stands in the text."""

import re
from typing import NamedTuple

from calmlarder.cookbook.behind import is_above, is_over
from calmlarder.cookbook.behind_the_steps import without_what_is_behind
from calmlarder.cookbook.bounds import LONGEST_STEP, LONGEST_TITLE, MOST_LINES, MOST_STEPS, check_count, fail
from calmlarder.cookbook.by_the_spoon import served_by_the_spoon, volume_in
from calmlarder.cookbook.chosen_lines import lines_guessed, lines_told
from calmlarder.cookbook.line_kinds import (
    ABOUT,
    LONGEST_HEADING,
    LONGEST_INGREDIENT,
    PART_IN_FRONT,
    is_in_one_line,
    like_ingredient,
    section_of,
)
from calmlarder.cookbook.recipe import Form, Recipe
from calmlarder.cookbook.run_together import (
    STAMP,
    is_a_list,
    joined_amounts,
    listed_of_sentences,
    pieces_of,
    told_plainly,
)
from calmlarder.cookbook.serves import (
    pieces_in,
    served_in_dishes,
    serves_above,
    serves_in,
    serves_in_prose,
    serves_up_to,
)
from calmlarder.cookbook.text_lines import BULLET, Line, bare_line, lines_of, unmarked
from calmlarder.cookbook.title_line import dish_title, names_a_dish, spoken_of
from calmlarder.cookbook.told_needs import told_as_lists
from calmlarder.cookbook.told_tables import tables_as_lists
from calmlarder.cookbook.unwrapped import unwrapped
from calmlarder.matching.names.words import plain

_FEW_WORDS = 3  # `4 generous bowls`: ours
_LEAST_LISTED = 3  # ingredients of a text that is taken for a recipe: ours
_MARKDOWN = re.compile(r"^\s{0,3}#{1,6} \S|^\s{0,3}[-*+] \S.*\*\*|^\*\*\S.*\*\*\s*:?\s*$", re.MULTILINE)


# A mail's own lines and its greeting stand above what it brings; its subject is the title.
_OF_A_MAIL = re.compile(
    rf"{STAMP.pattern}.*|\W*(?:from|to|cc|bcc|date|sent|reply-to)\s?:\s?\S.*"
    r"|(?:hi|hiya|hello|hey|dear)\b(?: [^\s.,!]{1,20}){0,3}\s?[,!.]*",
    re.IGNORECASE,
)
# `Hello you, here is the pie that you asked for`
_GREETS = re.compile(r"(?:hi|hiya|hello|hey|dear)\b[^,!]{0,30}[,!] (?:\S+ ){3,}", re.IGNORECASE)
_MAILED = re.compile(
    rf"{STAMP.pattern}.*|\W*(?:from|to|cc|bcc|date|sent|reply-to)\s?:\s?\S.*|-+ ?(?:original|forwarded) message\b.*",
    re.IGNORECASE,
)
_SENTENCES = re.compile(r"[a-z]\. |[.!]$")
_SUBJECT = re.compile(r"subject\s?:\s?(?:(?:(?:re|fwd?)\s?:|\[[^\]\n]{1,30}\])\s?)*(?=\S)", re.IGNORECASE)


# `- **Pesto**` in a list whose other lines are not set so: it parts the list.
_ALL_BOLD = re.compile(r"[ \t]*(?:[-*+•·][ \t]+)?(?:\*\*|__)[^*_\d]{2,40}(?:\*\*|__):?[ \t]*")
_OVER_THE_LIST = re.compile(r"(?mi)^\W{0,6}ingredients\b[^\n\w]{1,4}[^\n]{1,30}$")


class Item(NamedTuple):
    """An ingredient and where it stands in the source: `start` to `end`, behind its bullet."""

    text: str
    start: int
    end: int


class Layout(NamedTuple):
    """What of a text is what. Lines are without their marks; `head` is what stands above the ingredients."""

    title: str
    items: tuple[Item, ...]
    steps: tuple[str, ...]
    about: str
    head: str


def recipe_in_words(text: str) -> Recipe:
    """A recipe from cleaned text or Markdown. Raises CannotGoOn when no ingredient can be told from the rest."""
    text = tables_as_lists(told_plainly(text))
    found = layout(text)
    if not found.items and (needed := told_as_lists(text)) is not None:
        text, found = needed, layout(needed)
    if not found.items and (listed := listed_of_sentences(text)) is not None:
        return recipe_in_words(listed).model_copy(update={"guessed": True})
    if not found.items:
        fail(
            "holds no ingredients that can be told from the rest",
            "put a line `Ingredients` before them and `Method` behind them",
        )
    check_count(len(found.items))
    form: Form = "markdown" if _MARKDOWN.search(text[:200_000]) else "text"
    pieces = volume_in(found.about) or pieces_in(found.about)
    fed = serves_in_prose(found.head.split("\n")) or (None, None)
    return Recipe(
        title=found.title[:LONGEST_TITLE] or _spoken_title(found.head) or "A recipe",
        serves=serves_above(found.head)
        or serves_in(found.about)
        or fed[0]
        or served_in_dishes(pieces)
        or _listed_for(text)
        or next((each for line in found.head.split("\n") if (each := served_in_dishes(_in_dishes(line)))), None)
        or served_by_the_spoon(found.title, pieces),
        ingredients=tuple(item.text for item in found.items),
        steps=found.steps[:MOST_STEPS],
        form=form,
        source=text,
        pieces=pieces,
        serves_up_to=serves_up_to(found.head) or serves_up_to(found.about) or (fed[1] if fed[1] != fed[0] else None),
    )


def is_a_recipe(text: str) -> bool:
    """Whether a text holds ingredients that can be told from the rest, and steps."""
    if text.count("\n") > MOST_LINES:
        return False
    found = layout(text)
    return len(found.items) >= _LEAST_LISTED and bool(found.steps)


def _spoken_title(head: str) -> str:
    """The dish that a letter speaks of above its recipe: `You asked about the parsnip soup.`"""
    lines = (line for line in head.split("\n") if line.strip())
    return next((one for line in lines if (one := spoken_of(line)) != line), "")


def _in_dishes(line: str) -> str:
    """A line above the list that says no more than how many bowls or plates it fills."""
    return line if len(line.split()) <= _FEW_WORDS else ""


def _listed_for(text: str) -> int | None:
    """How many people the heading of the list is for: `Ingredients (4 servings)`."""
    heading = _OVER_THE_LIST.search(text)
    return serves_in(heading[0]) if heading else None


def layout(text: str) -> Layout:
    """Title, ingredients and steps of a text. Raises CannotGoOn for one longer than any recipe."""
    if text.count("\n") > MOST_LINES:
        fail(f"holds more than {MOST_LINES} lines", "give one recipe")
    lines = list(lines_of(text))
    filled = [index for index, line in enumerate(lines) if line.text.strip()]
    if not filled:
        return Layout("", (), (), "", "")
    top = next((index for index in filled if not _is_round_it(lines[index].text)), filled[0])
    top = _behind_a_greeting(lines, filled, top)
    first = _SUBJECT.sub("", lines[top].text.strip())
    has_heads = any(section_of(line.text) == "in" for line in lines)
    # Above the heading of its ingredients even `Three-bean chilli` is a title.
    titled = section_of(first) is None and (has_heads or not like_ingredient(first) or names_a_dish(first))
    mailed = top > filled[0] and _OF_A_MAIL.fullmatch(bare_line(lines[filled[0]].text)) is not None
    title = "" if not titled or (mailed and _SENTENCES.search(first)) else bare_line(first)
    chosen, rest = lines_told(lines) if has_heads else lines_guessed(lines, top)
    start = top + 1 if titled else top
    items = _in_one([item for index in chosen for item in _items(lines[index])])
    last = max(chosen, default=len(lines))
    behind = next((one for one in rest if one > last and _is_behind(lines[one].text)), len(lines))
    # What stands above the ingredients is said of the dish, where a method stands below them.
    below = [index for index in rest if index > min(chosen, default=0)]
    rest = [index for index in (below or rest) if index < behind]
    rest = without_what_is_behind(lines, [index for index in rest if index >= start])
    steps = tuple(unwrapped(lines, rest))
    taken = set(chosen)
    about = "\n".join(line.text[:LONGEST_STEP] for index, line in enumerate(lines) if index not in taken)[:100_000]
    above = lines[: min(chosen, default=len(lines))]
    title = dish_title(title, [_SUBJECT.sub("", line.text[:LONGEST_STEP].strip()) for line in above[top:]])
    head = "\n".join(bare_line(line.text) for line in above)[:10_000]
    return Layout(title, items, steps, about, head)


def _behind_a_greeting(lines: list[Line], filled: list[int], top: int) -> int:
    """Where the title stands: on the next line, where this one greets somebody in a sentence and that is a name."""
    behind = next((index for index in filled if index > top), None)
    if behind is None or not _GREETS.match(bare_line(lines[top].text)):
        return top
    name = bare_line(lines[behind].text)
    if any(like_ingredient(line.text) for line in lines[behind + 1 : behind + 2]):
        return top  # the first line of the list, however little it looks like one
    short = len(name) <= LONGEST_HEADING and not _SENTENCES.search(name) and section_of(name) is None
    return behind if short and not ABOUT.match(plain(name)) and not like_ingredient(name) else top


def without_a_mail(text: str) -> str:
    """A text without what a mail or a message says of itself above its recipe."""
    first = min((item.start for item in layout(text).items), default=0)
    head = text[:first].split("\n")
    kept = [line for line in head if not _MAILED.fullmatch(bare_line(line))]
    return "\n".join(kept) + text[first:] if len(kept) < len(head) else text


def _is_behind(line: str) -> bool:
    bare = bare_line(line)
    return is_over(bare) or (section_of(line) == "off" and bare[-1:] not in ".!?")


def _is_round_it(line: str) -> bool:
    bare = bare_line(line[:LONGEST_STEP])
    return _OF_A_MAIL.fullmatch(bare) is not None or is_above(bare)


def _items(line: Line) -> list[Item]:
    if section_of(line.text) == "in":
        begin = line.text.index(":") + 1
        return [_item(line.text[at:end], line.start + at) for at, end in pieces_of(line.text, begin)]
    if part := PART_IN_FRONT.match(line.text):
        spans = pieces_of(line.text, part.end())
        measured = [like_ingredient(line.text[at:end]) for at, end in spans]
        if len(spans) > 1 and 2 * sum(measured) > len(spans):
            return [_item(line.text[at:end], line.start + at) for at, end in spans]
    bulleted = BULLET.match(line.text)
    short = len(line.text) <= LONGEST_INGREDIENT * 2 and is_a_list(line.text[bulleted.end() if bulleted else 0 :])
    if short or is_in_one_line(line.text):
        begin = bulleted.end() if bulleted else 0
        return [_item(line.text[at:end], line.start + at) for at, end in pieces_of(line.text, begin)]
    begin = bulleted.end() if bulleted and not _ALL_BOLD.fullmatch(line.text) else 0
    item = _item(line.text[begin:], line.start + begin)
    if _ALL_BOLD.fullmatch(line.text):
        item = item._replace(text=f"{bare_line(item.text).strip(' :')}:")
    return [item]


def _in_one(items: list[Item]) -> tuple[Item, ...]:
    """The items, of which an amount in a line of its own is one with the name below it."""
    spans = joined_amounts([item.text for item in items])
    return tuple(
        Item(" ".join(item.text for item in items[first:end]), items[first].start, items[end - 1].end)
        for first, end in spans
    )


def _item(text: str, start: int) -> Item:
    left = len(text) - len(text.lstrip())
    return Item(_bare_item(text)[: 2 * LONGEST_INGREDIENT], start + left, start + len(text.rstrip()))


def _bare_item(text: str) -> str:
    return unmarked(text)
