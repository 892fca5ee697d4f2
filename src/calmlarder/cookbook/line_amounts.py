"""All the amounts of one ingredient line: in front, in brackets, or at its end."""

import re

from calmlarder.cookbook.line_amount import Found, Quantity, size_in, take_quantity
from calmlarder.cookbook.wording import names_nothing
from calmlarder.matching.amounts.numbers_and_fractions import Span

# `, about 350 g in total`: behind a comma the weight of all of them, or of each.
_BEHIND = re.compile(
    r",\s*(?:(?:total weight|weighing|approximate weight|net weight)\s*)?"
    r"(?:about |around |approximately |approx\.? |roughly |ca?\.? |circa |~ ?)?"
    r"(\d[\d /.½¼¾-]*(?:to \d+ ?)?(?:g|kg|oz|ounces?|lbs?|pounds?|ml))\b\.?(?P<each> each| apiece)?"
    r"(?: in total| total| altogether| all together| in all)?\s*(?=,|$)"
)
_YOU_NEED = re.compile(r"^(?:you(?:'ll)? (?:will )?need|to (?:yield|make|give)|yields?|makes?|gives?|for) ")
# How much more a heaped spoon holds than a level one: common practice, no source.
_HEAPED = re.compile(r"\b(heaped|heaping|rounded)\s+(?:tea|table|dessert)?(?:spoon|tsp|tbsp|dsp)")
_HOW_MUCH_MORE = {"heaped": Span(1.3, 1.6, 2), "heaping": Span(1.3, 1.6, 2), "rounded": Span(1.1, 1.3, 1.5)}
# How large a piece is by what it is like, in grams of what is as dense as water. A golf ball is 42.7 mm wide (The
# Rules of Golf); the others: common practice, no source.
_LIKE = {"golf ball": Span(35, 41, 47), "walnut": Span(10, 15, 20), "egg": Span(45, 55, 65), "thumb": Span(10, 15, 20)}
_AS_LARGE = re.compile(
    r",?\s*\b(?:about |roughly )?(?:the )?size of (?:an? )?(?P<like>golf ball|walnut|egg|thumb)s?\b"
    r"|\b(?P<sized>golf[- ]ball|walnut|egg|thumb)[- ]sized?\b(?: (?:piece|lump|knob|chunk)(?: of)?)?"
)
_BRACKETS = re.compile(r"[(\[]([^()\[\]]*)[)\]]?")


def no_inches(line: str) -> str:
    """A plain line in which `2"` is two inches, without its percentages."""
    line = re.sub(r"(?<=\d)\s?(?:\"|''|”|″)", " inch ", line)
    return re.sub(r"\d+(?:\s?-\s?\d+)?\s?%(?: fat| cocoa| solids)*", " ", line)


def without_likeness(line: str) -> str:
    """A plain line without what a piece is said to be as large as: no walnut is in `the size of a walnut`."""
    return _AS_LARGE.sub(" ", line)


def amounts_of(line: str) -> tuple[Found, str]:
    """The amounts of a line, in front, in brackets or at its end, and what its brackets say besides."""
    sizes: list[Quantity] = []
    notes: list[str] = []
    each = False
    like = _AS_LARGE.search(line)
    if like:
        line = f"{line[: like.start()]} {line[like.end() :]}".strip()
    behind = _BEHIND.search(line)
    if behind and take_quantity(line[: behind.start()]).main is not None:
        sizes += size_in(behind[1])[0]
        each = bool(behind["each"])
        line = f"{line[: behind.start()]}{line[behind.end() :]}"
    for inside in _BRACKETS.findall(line)[:10]:
        if inside.lstrip().startswith("or "):
            continue  # `(or 1/4 tsp garlic powder)` is no size of what stands before it
        given, of_each = size_in(_YOU_NEED.sub("", inside.strip()))
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
        if behind and late and late.main is not None and names_nothing(late.rest):
            found = late._replace(rest=", ".join(filter(None, (behind[1], late.rest.strip(" ,")))))
        elif sizes:
            found = Found(sizes.pop(0), (), False, found.rest)
    heaped = _HEAPED.search(bare)
    if heaped and found.main is not None:
        found = found._replace(main=found.main._replace(number=found.main.number.times(_HOW_MUCH_MORE[heaped[1]])))
    if like:
        size = Quantity(_LIKE[(like["like"] or like["sized"]).replace("-", " ")], "g")
        count = found.main if found.main is not None and found.main.unit != "g" else Quantity(Span(1, 1, 1), None)
        found = found._replace(main=count._replace(unit=None), sizes=(size,), each=True)
    # `1 onion 150 g` says it again, `50 g butter plus 20 g` more of it.
    again = re.match(r"(.*?[^\W\d_])(?<!\bplus)[\s,]+(\d[\d /.,-]*(?:to \d+ ?)?(?:ml|l|g|kg))$", found.rest)
    if found.main is not None and again:
        found = found._replace(rest=again[1], sizes=(*found.sizes, *size_in(again[2])[0]))
    return found._replace(sizes=(*found.sizes, *sizes), each=found.each or each), " ".join(notes)
