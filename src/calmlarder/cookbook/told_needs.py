"""A list told as a sentence: `You will want three bananas, four ounces of butter and two eggs.`"""

import re
from itertools import dropwhile

from calmlarder.cookbook.wording import names_nothing
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS
from calmlarder.matching.names.words import plain

_NUMBER = "|".join(WHOLE_WORDS)
_AMOUNT = (
    rf"(?:[\d½¼¾⅓⅔⅛]|(?:about |some )?(?:{_NUMBER}|half|a|an)\b|(?:pinch|handful|splash|knob|juice|zest|plenty)\b)"
)
_LEADS = (
    r"(?:(?:for (?:this|it|the \w+)|so|first),? )?"
    r"(?:(?:then )?you(?:'ll|’ll| will|'d|’d)? (?:also )?(?:need|want|require)"
    r"|(?:i|we|she|he) (?:use|take|need)s?|take|gather|get|have ready|get together|assemble)(?: (?:up|together|out))?"
)
_SENTENCE = re.compile(rf"^\W*{_LEADS}\s?:? (?={_AMOUNT})(?P<list>.+?)(?:\.\s+(?=[A-Z])|\.?\s*$)", re.IGNORECASE)
# A comma or `and` before an amount parts two foods; another comma says how one is cut.
_PARTS = re.compile(rf"\s*(?:[,;]\s+(?:and\s+)?|\s+and\s+)(?={_AMOUNT})", re.IGNORECASE)
_PARTS_AT_A_COMMA = re.compile(r"\s*[,;]\s+(?:and\s+)?", re.IGNORECASE)
_WITH_AN_AMOUNT = re.compile(rf"{_AMOUNT}", re.IGNORECASE)
_LEAST = 3  # foods with amounts, of a sentence that is a list: ours
_LONGEST = 4_000


def told_as_lists(text: str) -> str | None:
    """A text with the sentences that tell what one needs as a list, and the method behind the last of them.

    None where it has no such sentence.
    """
    told: list[str] = []
    last = -1
    for line in text.split("\n"):
        found = _SENTENCE.match(line) if len(line) <= _LONGEST else None
        foods = _foods(found["list"]) if found else []
        if found is None or not foods:
            told.append(line)
            continue
        told += ["Ingredients", ""] * (last < 0) + [f"- {food}" for food in foods]
        last = len(told)
        told.append(line[found.end() :])
    if last < 0:
        return None
    behind = list(dropwhile(lambda line: not line.strip(), told[last:]))
    return "\n".join([*told[:last], "", "Method", "", *behind])


def _foods(text: str) -> list[str]:
    """The foods of a list in a sentence, each with what is done to it."""
    foods: list[str] = []
    for piece in _PARTS.split(text):
        first, *others = _PARTS_AT_A_COMMA.split(piece)
        foods.append(first)
        for other in others:
            # `salt`, `pepper` have no amount; `broken up` is what is done to the food before it
            if _is_done_to_it(other):
                foods[-1] += f", {other}"
            else:
                foods.append(other)
    measured = sum(_WITH_AN_AMOUNT.match(food) is not None for food in foods)
    return [food.strip() for food in foods] if 2 * measured >= len(foods) and measured >= _LEAST else []


_DONE = re.compile(
    r"(?:[a-z]+ly )?(?:[a-z]{2,}(?:ed|en)|cut|torn|ground|split|broken|beaten|left|to|for|in|at|or|if|as|the|with"
    r"|about|plus|weighed)\b",
    re.IGNORECASE,
)


def _is_done_to_it(piece: str) -> bool:
    return names_nothing(plain(piece)) or _DONE.match(piece) is not None
