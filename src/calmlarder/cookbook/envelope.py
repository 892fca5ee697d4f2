"""A mail or a note without what stands round its recipe: its headers, what it answers, how its writer signs."""

import re

_HEADER = re.compile(r"(?:from|to|cc|bcc|date|sent|subject|reply-to)\s?:\s?\S.*", re.IGNORECASE)
_SUBJECT = re.compile(r"subject\s?:", re.IGNORECASE)
# `Subject: [bakers] Re: ...`: a list of readers sets its name before what they write.
_ANSWERS = re.compile(r"\s*subject\s?:\s*(?:(?:(?:re|fwd?|aw|wg)\s?:|\[[^\]\n]{1,30}\])\s*)*", re.IGNORECASE)
_LEAST_HEADERS = 2  # of a mail; one alone may be a remark (`From: Gran`): ours
# Headers that nobody reads, and what a mailing says of itself.
_OF_MAILINGS = re.compile(
    r"(?:list-[\w-]+|x-[\w-]+|mime-version|content-[\w-]+|message-id|return-path|delivered-to|received|in-reply-to"
    r"|references|precedence)\s?:.*"
    r"|.{0,60}\b(?:view|see|read|open)(?:ing)? (?:it|this(?: e?-?mail| newsletter)?|online|the (?:web|online) version)?"
    r" ?(?:in|on) (?:your|a) browser\b.*|.{0,30}\bcan['’]?t see this e?-?mail\b.*"
    r"|.{0,60}\b(?:unsubscribe|update (?:your )?preferences|manage (?:your )?(?:subscription|preferences))\b.*",
    re.IGNORECASE,
)
_QUOTED = re.compile(r"\s*>.*|\s*on .{3,80}\bwrote\s?:?\s*|-+ ?(?:original|forwarded) message\b.*", re.IGNORECASE)
_RULE = re.compile(r"\s*(?:[-=_*~–—]\s?){8,}\s*")
_SIGNATURE = re.compile(r"--\s*")
_ENDS_A_MAILING = re.compile(r"\b(?:unsubscribe|preferences|privacy|©|you (?:are|'re) receiving)\b|©", re.IGNORECASE)
_NAME = r"(?:[A-Z][\w'’.-]{0,20}|mum|mom|dad|nan|gran|grandma|granny)"
# `Una x`, `Love, Mum`, `Cheers, Bea`, `xx`, `— Tom`: with a name, or alone.
_SIGNS_OFF = re.compile(
    rf"{_NAME}(?: (?:and|&|\+) {_NAME})?,? [xX]{{1,6}}|[xX]{{1,6}}|(?:—|--) ?{_NAME}(?: {_NAME})?"
    r"|(?:(?i:lots of |all my |much |big )?(?i:love|hugs|kisses)|(?i:(?:kind |warm |best )?(?:wishes|regards)|best"
    r"|yours|cheers|take care|bye(?: for now)?|ciao|see you(?: soon| then)?|speak soon|ttfn|all the best|with love))"
    rf"(?:[\s,!.–—-]{{1,4}}(?i:from )?(?:{_NAME}(?: (?:and|&|\+) {_NAME})?|[xX]{{1,6}})(?: [xX]{{1,6}})?)?[\s,!.]*"
)
_POSTSCRIPT = re.compile(r"\s*p\.? ?s\.?[\s:,]", re.IGNORECASE)
_NAME_ALONE = re.compile(rf"{_NAME}(?: {_NAME})?\.?")
_FAREWELL = re.compile(
    r"(?:come (?:again|over|round|back)|see you|let me know|tell me|write (?:back|soon)|say hi|give my|miss you|thanks"
    r"|hope (?:you|it|that|this)|looking forward|speak|enjoy)\b[^.!?]{0,80}[.!?]*(?: :\)| x+)?",
    re.IGNORECASE,
)
_MOST_BELOW = 4  # lines of a farewell: ours


def opened(text: str) -> str:
    """The text without what a mail or a note has round its recipe; any other text as it is."""
    lines = text.split("\n")
    mailed = _is_a_mail(lines)
    if mailed:
        lines = [line for line in lines if not _QUOTED.fullmatch(line)]
        lines = _without_footer(lines)
        lines = [_ANSWERS.sub("", line) for line in lines if not (_is_header(line) or _RULE.fullmatch(line))]
    kept = _without_farewell(lines, mailed)
    return text if kept == text.split("\n") else "\n".join(kept)


def _is_header(line: str) -> bool:
    if _SUBJECT.match(line.strip()):
        return False  # it is the title
    return bool(_HEADER.fullmatch(line.strip()) or _OF_MAILINGS.fullmatch(line.strip()))


def _is_a_mail(lines: list[str]) -> bool:
    top = [line.strip() for line in lines if line.strip()][:6]
    return sum(_HEADER.fullmatch(line) is not None for line in top) >= _LEAST_HEADERS


def _without_footer(lines: list[str]) -> list[str]:
    """The lines up to a signature, or up to the last rule below which a mailing speaks of itself."""
    end = next((at for at, line in enumerate(lines) if _SIGNATURE.fullmatch(line)), len(lines))
    rules = [at for at, line in enumerate(lines[:end]) if _RULE.fullmatch(line)]
    if rules and _ENDS_A_MAILING.search("\n".join(lines[rules[-1] : end])):
        end = rules[-1]
    return lines[:end]


def _without_farewell(lines: list[str], mailed: bool) -> list[str]:
    """The lines without the last few that are how somebody signs; a name alone is one below such a line, or a mail."""
    filled = [at for at, line in enumerate(lines) if line.strip()]
    behind = next((at for at in filled[-_MOST_BELOW:] if _POSTSCRIPT.match(lines[at])), None)
    if behind is not None:  # what is said below the name stays
        return [*_without_farewell(lines[:behind], mailed), *lines[behind:]]
    end, signed = len(lines), False
    for at in reversed(filled[-_MOST_BELOW:]):
        bare = lines[at].strip()
        name = _NAME_ALONE.fullmatch(bare) is not None and _is_below_a_farewell(lines, at, mailed)
        if _SIGNS_OFF.fullmatch(bare) or (not signed and name):
            signed = True
        elif not (signed and _FAREWELL.fullmatch(bare)):
            break
        end = at
    return lines[:end]


def _is_below_a_farewell(lines: list[str], at: int, mailed: bool) -> bool:
    """Whether a line stands below such a line, or below a gap in a mail: the last line of a list does not."""
    above = lines[at - 1].strip() if at else ""
    if not above:
        return mailed or (at > 1 and _SIGNS_OFF.fullmatch(lines[at - 2].strip()) is not None)
    return bool(_SIGNS_OFF.fullmatch(above) or (mailed and _FAREWELL.fullmatch(above)))
