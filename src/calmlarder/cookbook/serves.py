"""How many people a recipe is for, as its words say."""

import re

from calmlarder.matching.numbers import WHOLE_WORDS

_COUNT = r"(\d{1,3}|" + "|".join(word for word in WHOLE_WORDS if word not in {"few", "several", "couple"}) + r")"
_PEOPLE = r"(?:people|persons?|servings?|portions?|serves|eaters|guests|adults)"
SERVES = re.compile(
    rf"\b(?:serves|servings?|feeds|portions?)\b[\s:*_]{{0,6}}(?:about |up to )?{_COUNT}\b(?!\s?(?:g|ml|kcal)\b)"
    rf"|\b(?:makes|yields?|for)\b[\s:*_]{{0,6}}(?:about )?{_COUNT}(?:\s?(?:-|–|to)\s?\d{{1,3}})?\s{_PEOPLE}\b"
    rf"|\b{_COUNT}(?:\s?(?:-|–|to)\s?\d{{1,3}})?\s(?:generous |large |small )?{_PEOPLE}\b",
    re.IGNORECASE,
)


def serves_in(text: str) -> int | None:
    """The number of people, of which a range's lower end, so that nobody's share is taken for smaller than it is."""
    alone = re.fullmatch(r"\s*(\d{1,3})(?:\s?(?:-|–|to)\s?\d{1,3})?\s*", text)
    found = SERVES.search(text)
    word = next((group for group in found.groups() if group), "") if found else alone[1] if alone else ""
    count = WHOLE_WORDS.get(word.lower()) or (int(word) if word.isdigit() else 0)
    return count if 1 <= count <= 1000 else None


def number_span(text: str) -> tuple[int, int] | None:
    """Where the number of people stands, with the end of its range, so that another can be put there."""
    found = SERVES.search(text)
    if found is None:
        return None
    group = next(index for index in range(1, 4) if found[index])
    end = found.end(group)
    rest = re.match(r"\s?(?:-|–|to)\s?\d{1,3}\b", text[end:])
    return found.start(group), end + (rest.end() if rest else 0)
