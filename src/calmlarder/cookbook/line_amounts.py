"""All the amounts of one ingredient line: in front, in brackets, or at its end."""

import re

from calmlarder.cookbook.quantity import Found, Quantity, size_in, take_quantity

_BRACKETS = re.compile(r"[(\[]([^()\[\]]*)[)\]]?")


def no_inches(line: str) -> str:
    """A plain line in which `2"` is two inches, without its percentages."""
    line = re.sub(r"(?<=\d)\s?(?:\"|''|”|″)", " inch ", line)
    return re.sub(r"\d+(?:\s?-\s?\d+)?\s?%(?: fat| cocoa| solids)*", " ", line)


def amounts_of(line: str) -> tuple[Found, str]:
    """The amounts of a line, in front, in brackets or at its end, and what its brackets say besides."""
    sizes: list[Quantity] = []
    notes: list[str] = []
    each = False
    for inside in _BRACKETS.findall(line)[:10]:
        if inside.lstrip().startswith("or "):
            continue  # `(or 1/4 tsp garlic powder)` is no size of what stands before it
        given, of_each = size_in(inside.strip())
        if given:
            sizes += given
            each = each or of_each or bool(re.match(r"\S+(?: \d+/\d+)?\s*[(\[]", line))
        else:
            notes.append(inside)
    bare = " ".join(_BRACKETS.sub(" ", line).split())
    found = take_quantity(bare)
    if found.main is None:
        behind = re.match(r"(.*?[^\W\d_])[\s,:–-]+(?=\d)(.{1,40})$", bare)
        late = take_quantity(behind[2]) if behind else None
        if behind and late and late.main is not None and not late.rest:
            found = late._replace(rest=behind[1])
        elif sizes:
            found = Found(sizes.pop(0), (), False, found.rest)
    again = re.match(r"(.*?[^\W\d_])[\s,]+(\d[\d /.,-]*(?:to \d+ ?)?(?:ml|l|g|kg))$", found.rest)
    if found.main is not None and again:
        found = found._replace(rest=again[1], sizes=(*found.sizes, *size_in(again[2])[0]))
    return found._replace(sizes=(*found.sizes, *sizes), each=found.each or each), " ".join(notes)
