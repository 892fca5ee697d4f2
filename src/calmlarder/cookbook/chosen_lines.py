"""Which lines of a plain text are ingredients and which are steps: by their headings, else by their amounts."""

import re

from calmlarder.cookbook.behind import is_switch
from calmlarder.cookbook.line_kinds import ABOUT, LONGEST_HEADING, is_in_one_line, is_step, like_ingredient, section_of
from calmlarder.cookbook.run_together import begins_method
from calmlarder.cookbook.serves import is_yield
from calmlarder.cookbook.text_lines import Line, bare_line
from calmlarder.cookbook.title_line import names_a_dish
from calmlarder.matching.names.words import plain

_MOST_BETWEEN = 2  # lines without an amount between those that have one: ours
_LEAST_IN_A_RUN = 4  # lines with an amount, of a list that no heading tells: ours
_NUMBERED = re.compile(r"\s*(\d{1,2})[.)] ")
# A heading over what may be put on it, none of which says an amount.
_CHOSEN_FROM = re.compile(r"(?:optional )?(?:toppings?|garnish(?:es)?|extras?|to serve|to finish|on the side)\b.{0,30}")
# `Custard or ice cream, to serve`, below a list.
_TO_SERVE = re.compile(r"[^.;:!?\d]{3,60},? (?:to|for) (?:serve|serving)")


def lines_told(lines: list[Line]) -> tuple[list[int], list[int]]:
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
            if chosen and (is_step(line.text) or (index > last_head and _starts_to_tell(lines, index))):
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


def lines_guessed(lines: list[Line], first: int) -> tuple[list[int], list[int]]:
    """The same without headings: blocks of lines of which most start with an amount are ingredients."""
    chosen: list[int] = []
    rest: list[int] = []
    block: list[int] = []
    for index in [*range(len(lines)), len(lines)]:
        if index < len(lines) and re.search(r"\w", lines[index].text):
            block.append(index)
            continue
        titled = not like_ingredient(lines[first].text) or names_a_dish(lines[first].text)
        while block and block[0] == first and titled:
            block.pop(0)  # the title
        like = [one for one in block if like_ingredient(lines[one].text) or is_in_one_line(lines[one].text)]
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
        if len(like) * 2 >= len(block) > 0 and not any(is_step(lines[one].text) and one not in like for one in block):
            told = {one for one in block if one > like[0] and begins_method(bare_line(lines[one].text), "")}
            chosen += [one for one in block if one not in told and not ABOUT.match(plain(bare_line(lines[one].text)))]
            rest += sorted(told)
        else:
            rest += block
        block = []
    chosen, rest = _by_their_numbers(lines, chosen, rest)
    return (chosen, rest) if chosen else _longest_run(lines)


def _by_their_numbers(lines: list[Line], chosen: list[int], rest: list[int]) -> tuple[list[int], list[int]]:
    """The same, a line that is numbered next behind a step taken for a step: `5) 200 (fan 180) for 30 min.`"""
    numbers = {index: int(found[1]) for index in rest if (found := _NUMBERED.match(lines[index].text))}
    for index in chosen:
        own = _NUMBERED.match(lines[index].text)
        if own is not None and any(before < index and number == int(own[1]) - 1 for before, number in numbers.items()):
            numbers[index] = int(own[1])
            rest = sorted([*rest, index])
    return [index for index in chosen if index not in set(rest)], rest


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
        elif not runs[-1] or len(gap) == _MOST_BETWEEN or len(text) > LONGEST_HEADING or begins_method(text, ""):
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
