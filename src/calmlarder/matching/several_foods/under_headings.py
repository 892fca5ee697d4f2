"""What a heading of a list says of the lines below it, written beside each: `freezer:`, `not mine:`.

So each line says by itself where it is and whose, when it is kept, edited or asked about later.
"""

from collections.abc import Iterable, Iterator

from calmlarder.matching.late_patterns import LatePattern
from calmlarder.matching.line_text import without_bullet
from calmlarder.matching.names.words import plain
from calmlarder.matching.remarks import is_heading

_FREEZER = LatePattern(
    r"(?:in |on |from |out of )?(?:the |my |our )?(?:freezers?|frozen)"
    r"(?: (?:stuff|things|bits|food|items|part|section|contents|list))?"
)
_NOT_OURS = LatePattern(r"not (?:mine|ours)|theirs|hands off|(?:flat|house|room)mates?'?s?(?: stuff| shelf)?|others'?")
_WHOSE = LatePattern(
    r"mine|ours|my stuff|our stuff|my shelf|me|us|shared(?: stuff)?|communal|house|everyone(?:'?s)?|kids'?"
)
_SAYS_WHERE = LatePattern(r"\b(?:freezer|frzr|frozen|fridge|refrigerator|cupboard|pantry|larder|shelf|counter)\b")
_SAYS_WHOSE = LatePattern(r"\b(?:mine|ours|our|my|shared|everyone(?:'s)?)\b|[a-z]'s\b")
_COMMENT = LatePattern(r"(?:^|\s)#.*$")


def under_headings(lines: Iterable[str]) -> Iterator[str]:
    """The lines, each with what its heading says, where it says nothing else itself.

    A freezer ends at the next place, and at an empty line behind its things; whose it is at the next that says whose.
    """
    frozen = theirs = filled = False
    for line in lines:
        bare = plain(without_bullet(_COMMENT.sub("", line)))
        said = bare.strip(" :-.")
        if not bare:
            frozen, filled = frozen and not filled, False
        elif is_heading(bare) and (_WHOSE.fullmatch(said) or _NOT_OURS.fullmatch(said)):
            theirs = _NOT_OURS.fullmatch(said) is not None
        elif is_heading(bare):
            frozen, filled = _FREEZER.fullmatch(said) is not None, False
        elif frozen or theirs:
            filled = True
            where = ", in the freezer" * (frozen and not _SAYS_WHERE.search(bare))
            whose = " (not mine)" * (theirs and not _SAYS_WHOSE.search(bare))
            comment = _COMMENT.search(line)
            end = comment.start() if comment else len(line)
            yield f"{line[:end].rstrip()}{where}{whose}{line[end:]}"
            continue
        yield line
