"""Which part of a leek or a spring onion a line means: both, or one of them."""

import re

# `white and green parts`, `green and white parts separated`: the whole of it.
_SHADE = r"(?:(?:pale |light |dark )?green|white)s?"
_BOTH_PARTS = re.compile(
    rf",?\s*\b{_SHADE}(?: parts?)?(?:,| and| &) {_SHADE}(?: parts?)?\b"
    r"(?: (?:only|separated|divided|(?:kept )?(?:apart|separate)))?"
)
# `green parts reserved`, `keeping the green tops for garnish`: they come in later, so the whole of it is meant.
_ONE_PART = rf"(?:the )?{_SHADE}(?: (?:parts?|tops?|ends?|bits?|leaves|stems?))?"
_PART_FOR_LATER = re.compile(
    rf",?\s*(?:(?:and|with|but) )?(?:{_ONE_PART} (?:are |is )?"
    r"(?:reserved|kept|saved|set aside|separated|put aside|held back)"
    rf"|(?:reserv|keep|sav|sett|separat|hold)(?:e|ing)?(?: aside| back)? {_ONE_PART}\b(?: aside| back| apart)?)"
    r"(?: (?:separate(?:ly)?|apart))?(?: (?:for|to) [^,;()]+)?"
)
# `white part sliced`, where the green one is kept for later: said of one part, and no word of which is meant.
_OTHER_PART = re.compile(
    r",\s*(?:the )?whites?(?: (?:parts?|ends?|bits?|bulbs?))?(?= (?:\w+ly |very )?\w+ed\b|\s*[,;]|\s*$)"
)
# `dark green leaves cut off`, `discard the green tops`: the whites are left, which hold far more.
_GREENS = r"(?:(?:dark|tough|outer|the|any) )*green (?:leaves|parts?|tops?|ends?)"
_NO_GREENS = re.compile(
    rf",?\s*(?:(?:roots?|root ends?) and )?{_GREENS} (?:are )?"
    r"(?:cut off|cut away|removed|discarded|trimmed(?: off| away)?|thrown away)"
    rf"|,?\s*(?:discard|remove|trim off|cut off|without)(?:ing)? {_GREENS}"
)
# `whites chopped, greens sliced`: both go in, each cut in its own way.
_PARTS = r"(?:the )?(?:whites?|greens?)(?: (?:parts?|tops?|ends?|bits?))?"
_CUT = r"(?:(?:\w+ly|very|left) )?(?:\w+ed|whole|cut \w+)"
_EACH_CUT = re.compile(rf"\s*[,:(–-]?\s*{_PARTS} {_CUT},? (?:and )?{_PARTS} {_CUT}\)?(?=$|[,;])")


def both_parts(line: str) -> str:
    """A line without its word that whites and greens are both meant."""
    return _BOTH_PARTS.sub(" ", line)


def told_by_part(line: str) -> str:
    """A line that says which part is thrown away, kept for later or cut in its own way, as it is read: the white part
    only, or the whole.
    """
    told = _NO_GREENS.sub(" ", line)
    if told != line:
        return f"{_BOTH_PARTS.sub(' ', told)}, white part only"
    line = _EACH_CUT.sub(" ", line)
    if " only" in line or _BOTH_PARTS.search(line):
        return line
    whole = _PART_FOR_LATER.sub(" ", line)
    return _OTHER_PART.sub(",", whole) if whole != line else line
