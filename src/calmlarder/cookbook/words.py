"""A recipe in plain text or Markdown: which lines are ingredients, and where each stands in the text."""

import re
from typing import NamedTuple

from calmlarder.cookbook.behind import is_above, is_over, is_switch
from calmlarder.cookbook.bounds import LONGEST_STEP, LONGEST_TITLE, MOST_LINES, MOST_STEPS, check_count, fail
from calmlarder.cookbook.by_the_spoon import served_by_the_spoon, volume_in
from calmlarder.cookbook.recipe import Form, Recipe
from calmlarder.cookbook.run_together import (
    STAMP,
    begins_method,
    has_name_first,
    is_a_list,
    joined_amounts,
    listed_of_sentences,
    pieces_of,
    told_plainly,
)
from calmlarder.cookbook.serves import (
    SERVES,
    is_yield,
    pieces_in,
    served_in_dishes,
    serves_above,
    serves_in,
    serves_up_to,
)
from calmlarder.cookbook.text_lines import BULLET, Line, bare_line, lines_of, unmarked
from calmlarder.cookbook.title_line import dish_title, names_a_dish
from calmlarder.cookbook.told_needs import told_as_lists
from calmlarder.cookbook.unwrapped import unwrapped
from calmlarder.matching.amounts.numbers_and_fractions import NUMBER_ALONE
from calmlarder.matching.names.words import plain

_LONGEST_INGREDIENT = 400
_LONGEST_HEADING = 60
_MOST_BETWEEN = 2  # lines without an amount between those that have one: ours
_LEAST_IN_A_RUN = 4  # lines with an amount, of a list that no heading tells: ours
_INGREDIENTS = re.compile(
    r"(?:the )?(?:ingredients?|ingredient list|(?:(?:what|stuff|things|bits) )?you(?:'ll| will)? (?:need|want)"
    r"|shopping list"
    r"|(?:the )?(?:stuff|shopping|bits)|to (?:buy|get)|gather"
    r"|what goes in(?:to it)?|what's in it)"
    r"(?: list)?(?: \(?(?:for|serves|serving|makes|feeds|enough for)\b.{0,40})?"
)
_METHOD = re.compile(
    r"(?:the )?(?:method|instructions?|directions?|preparation|steps?|how to (?:make|cook|do) .{0,40}|how to|"
    r"what (?:to|you) do|how to make it|do this|cooking|to (?:make|cook)|procedure|how it(?:'s| is) (?:done|made)"
    r"|what happens(?: next| then)?|(?:this is )?how|(?:how|what) (?:i|we) (?:do|make|cook)(?: it)?|make it"
    r"|the doing"
    r"|here'?s how(?: to .{0,40})?"
    r"|let'?s (?:cook|go|bake|make it|get (?:cooking|baking|started))|off we go|get (?:cooking|baking))[!.]?"
)
# With a number before it or a stop behind it, it is a step.
_ONE_WORD = re.compile(r"\s*(?:#+ )?[*_]{0,2}(?:cook|then|next)[*_]{0,2}\s?:?\s*", re.IGNORECASE)
_OTHER = re.compile(
    r"(?:(?:(?:cook|chef|baker|author|recipe|kitchen|serving|make[- ]ahead)(?:'?s'?)? )?"
    r"(?:notes?|tips?|variations?)(?: (?:&|and) (?:tricks|tips|notes|variations|swaps))?"
    r"|nutrition.{0,30}|storage|stor(?:ing|age) .{0,30}|(?:how )?to (?:store|freeze)\b.{0,20}|video|equipment"
    r"|substitutions?|faqs?|frequently asked questions|you(?:'ll)? also need|comments?"
    # `about 12 sheets of lasagne` is an ingredient
    r"|about(?! (?:\d|[½¼¾⅓⅔⅛]|an? |half |one |two |three |four |five |six |ten |twelve |some )).{0,40})"
)
_ABOUT = re.compile(r"(?:serves|servings?|makes|yields?|prep|cook|cooking|total|time|ready|source|by)\b")
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
_SUBJECT = re.compile(r"subject\s?:\s?(?:(?:re|fwd?)\s?:\s?)*(?=\S)", re.IGNORECASE)


# A heading over what may be put on it, none of which says an amount.
_CHOSEN_FROM = re.compile(r"(?:optional )?(?:toppings?|garnish(?:es)?|extras?|to serve|to finish|on the side)\b.{0,30}")


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
    text = told_plainly(text)
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
    return Recipe(
        title=found.title[:LONGEST_TITLE] or "A recipe",
        serves=serves_above(found.head)
        or serves_in(found.about)
        or served_in_dishes(pieces)
        or _listed_for(text)
        or served_by_the_spoon(found.title, pieces),
        ingredients=tuple(item.text for item in found.items),
        steps=found.steps[:MOST_STEPS],
        form=form,
        source=text,
        pieces=pieces,
        serves_up_to=serves_up_to(found.head) or serves_up_to(found.about),
    )


def is_a_recipe(text: str) -> bool:
    """Whether a text holds ingredients that can be told from the rest, and steps."""
    if text.count("\n") > MOST_LINES:
        return False
    found = layout(text)
    return len(found.items) >= _LEAST_IN_A_RUN - 1 and bool(found.steps)


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
    chosen, rest = _told(lines) if has_heads else _guessed(lines, top)
    start = top + 1 if titled else top
    items = _in_one([item for index in chosen for item in _items(lines[index])])
    last = max(chosen, default=len(lines))
    behind = next((one for one in rest if one > last and _is_behind(lines[one].text)), len(lines))
    # What stands above the ingredients is said of the dish, where a method stands below them.
    below = [index for index in rest if index > min(chosen, default=0)]
    rest = [index for index in (below or rest) if index < behind]
    steps = tuple(unwrapped(lines, [index for index in rest if index >= start]))
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
    short = len(name) <= _LONGEST_HEADING and not _SENTENCES.search(name) and section_of(name) is None
    return behind if short and not _ABOUT.match(plain(name)) and not like_ingredient(name) else top


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


def section_of(line: str) -> str | None:
    """`in` for the heading of ingredients, `on` for that of the method, `off` for notes and the like."""
    if len(line) > 2 * _LONGEST_HEADING and ":" not in line[:_LONGEST_HEADING]:
        return None
    if _ONE_WORD.fullmatch(line[:_LONGEST_HEADING]):
        return "on"
    bare = plain(bare_line(line[:LONGEST_STEP])).rstrip(": ")
    head = bare.split(":")[0]
    for pattern, kind in ((_INGREDIENTS, "in"), (_METHOD, "on"), (_OTHER, "off")):
        if pattern.fullmatch(bare) or (kind != "off" and ":" in bare and pattern.fullmatch(head)):
            return kind
    return None


def like_ingredient(line: str) -> bool:
    """Whether a line starts with an amount, or has it behind a name and a sign."""
    bare = plain(bare_line(line[: 2 * _LONGEST_INGREDIENT]))
    if not bare or len(bare) > _LONGEST_INGREDIENT // 2 or _ABOUT.match(bare) or SERVES.match(bare) or pieces_in(bare):
        return False
    starts = NUMBER_ALONE.match(bare) or re.match(r"\d|an? (?:\w+ )?\w+ of\b", bare) or has_name_first(bare)
    return bool(starts) and not re.search(r"[.!?] [a-z]", _SHORT.sub(r"\1", bare))


# A stop behind what is cut short ends no sentence: `1 c. milk`.
_SHORT = re.compile(r"\b(c|tbsp?|tbl?s|tsp|oz|pkg|pkt|env|sm|lg|med|lbs?|pts?|qts?|gal|doz|ea|approx|abt|no)\.")


# `Custard or ice cream, to serve`, below a list.
_TO_SERVE = re.compile(r"[^.;:!?\d]{3,60},? (?:to|for) (?:serve|serving)")
# `- **Pesto**` in a list whose other lines are not set so: it parts the list.
_ALL_BOLD = re.compile(r"[ \t]*(?:[-*+•·][ \t]+)?(?:\*\*|__)[^*_\d]{2,40}(?:\*\*|__):?[ \t]*")


# `Filling: 1.5 kg chicken thighs; 4 leeks, sliced`
_PART_IN_FRONT = re.compile(r"[ \t]*[-*+•]?[ \t]*[A-Za-z][\w ]{2,30}:[ \t]+(?=\d)")


def _told(lines: list[Line]) -> tuple[list[int], list[int]]:
    """Indexes of ingredients and of steps where the text has headings for them."""
    chosen: list[int] = []
    rest: list[int] = []
    where = "before"
    last_head = max((at for at, line in enumerate(lines) if section_of(line.text) == "on"), default=-1)
    for index, line in enumerate(lines):
        section = section_of(line.text)
        if section is not None:
            where = section
            if section == "in" and _inline(line.text):
                chosen.append(index)
            elif section == "on" and line.text.partition(":")[2].strip():
                rest.append(index)
        elif line.text.strip() and where == "in":
            if chosen and (_is_step(line.text) or (index > last_head and _starts_to_tell(lines, index))):
                where = "on"
                rest.append(index)
            elif bare_line(line.text) and not is_switch(line.text) and not is_yield(bare_line(line.text)):
                chosen.append(index)
        elif line.text.strip() and where == "on":
            rest.append(index)
    return chosen, rest


def _starts_to_tell(lines: list[Line], index: int) -> bool:
    behind = next((one.text for one in lines[index + 1 : index + 4] if one.text.strip()), "")
    for one in lines[index + 1 :]:
        if section_of(one.text) is not None:
            break
        if like_ingredient(one.text):
            return False  # no ingredient is ever taken for a step
    return begins_method(bare_line(lines[index].text), bare_line(behind))


def _is_step(line: str) -> bool:
    """A line too long for an ingredient, or several sentences: somebody forgot the heading of the method."""
    return len(line) > _LONGEST_INGREDIENT or (len(line) > 120 and len(re.findall(r"[.!?](?:\s|$)", line)) > 1)


def _guessed(lines: list[Line], first: int) -> tuple[list[int], list[int]]:
    """The same without headings: blocks of lines of which most start with an amount are ingredients."""
    chosen: list[int] = []
    rest: list[int] = []
    block: list[int] = []
    for index in [*range(len(lines)), len(lines)]:
        if index < len(lines) and lines[index].text.strip():
            block.append(index)
            continue
        titled = not like_ingredient(lines[first].text) or names_a_dish(lines[first].text)
        while block and block[0] == first and titled:
            block.pop(0)  # the title
        like = [one for one in block if like_ingredient(lines[one].text) or _is_in_one_line(lines[one].text)]
        if chosen and block and all(_is_to_serve(lines[one].text) for one in block):
            chosen += block
            block = []
            continue
        if (
            chosen
            and not like
            and block
            and _CHOSEN_FROM.fullmatch(plain(bare_line(lines[block[0]].text)))
            and len(block) > 1
        ):
            chosen += block
            block = []
            continue
        if len(like) * 2 >= len(block) > 0 and not any(_is_step(lines[one].text) and one not in like for one in block):
            told = {one for one in block if one > like[0] and begins_method(bare_line(lines[one].text), "")}
            chosen += [one for one in block if one not in told and not _ABOUT.match(plain(bare_line(lines[one].text)))]
            rest += sorted(told)
        else:
            rest += block
        block = []
    return (chosen, rest) if chosen else _longest_run(lines)


def _is_in_one_line(line: str) -> bool:
    """Whether a line is a whole list, with a sign between its foods: `2 tbsp oil; 1 onion, chopped; 2 courgettes`."""
    part = _PART_IN_FRONT.match(line)
    line = line[part.end() :] if part else line
    return ";" in line and len(line) <= LONGEST_STEP and is_a_list(bare_line(line))


def _is_to_serve(line: str) -> bool:
    """Whether a line below the list names what the dish is served with: `Custard or ice cream, to serve`."""
    bare = bare_line(line)
    return _TO_SERVE.fullmatch(plain(bare)) is not None and not begins_method(bare, "")


def _longest_run(lines: list[Line]) -> tuple[list[int], list[int]]:
    """The longest run of lines that begin with amounts, with a line or two between them that do not: a chat."""
    filled = [index for index, line in enumerate(lines) if line.text.strip()]
    runs: list[list[int]] = [[]]
    gap: list[int] = []
    for index in filled:
        text = bare_line(lines[index].text)
        if like_ingredient(text):
            runs[-1] += [*gap, index] if runs[-1] else [index]
            gap = []
        elif not runs[-1] or len(gap) == _MOST_BETWEEN or len(text) > _LONGEST_HEADING or begins_method(text, ""):
            runs.append([])
            gap = []
        else:
            gap.append(index)
    run = max(runs, key=len)
    like = sum(like_ingredient(lines[index].text) for index in run)
    if like < _LEAST_IN_A_RUN or 3 * like < 2 * len(run):
        return [], filled
    return run, [index for index in filled if index not in set(run)]


def _inline(line: str) -> str:
    """What stands behind `Ingredients:` on the same line."""
    _, colon, behind = line.partition(":")
    behind = behind.strip(" *_")
    return behind if colon and re.search(r"[,;]", behind) else ""


def _items(line: Line) -> list[Item]:
    if section_of(line.text) == "in":
        begin = line.text.index(":") + 1
        return [_item(line.text[at:end], line.start + at) for at, end in pieces_of(line.text, begin)]
    if part := _PART_IN_FRONT.match(line.text):
        spans = pieces_of(line.text, part.end())
        measured = [like_ingredient(line.text[at:end]) for at, end in spans]
        if len(spans) > 1 and 2 * sum(measured) > len(spans):
            return [_item(line.text[at:end], line.start + at) for at, end in spans]
    bulleted = BULLET.match(line.text)
    short = len(line.text) <= _LONGEST_INGREDIENT * 2 and is_a_list(line.text[bulleted.end() if bulleted else 0 :])
    if short or _is_in_one_line(line.text):
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
    return Item(_bare_item(text)[: 2 * _LONGEST_INGREDIENT], start + left, start + len(text.rstrip()))


def _bare_item(text: str) -> str:
    return unmarked(text)
