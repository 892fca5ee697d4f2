"""What holds a filling in halves now: how it is opened and laid down, where it was whole, or a mushroom's cap."""

import re
from collections.abc import Sequence

_IN_HALVES = re.compile(
    r"\bpeppers \[(?P<now>[a-z]+ pepper)s?, in halves(?:, one a serving)?\]"
    r"|(?P<name>\b[a-z]+ pepper)s?, in halves(?:, one a serving)?(?:(?=,| |\.)|$)",
    re.IGNORECASE,
)
# Peppers that come in halves now are halved as before.
_HALVED_AGAIN = re.compile(r"\b(?P<verb>halve|cut) (?:the )?(?P<name>[a-z]+ pepper) halves\b", re.IGNORECASE)
# `Cut the tops off the green pepper halves`, `stand them in a dish`: halves are opened lengthways and laid down.
_TOPS_OFF = re.compile(
    r"\b(?P<cut>cut|slice|trim|take) (?:off )?(?:the )?(?:tops?|lids?|caps?|stalk ends?)(?: \w+)? "
    r"(?:off|from|of) (?:the |each |all the )?(?P<name>[a-z]+ pepper) halves\b"
    r"(?:,? and (?:remove|scoop out|discard|take out|pull out) (?:the |all the )?"
    r"(?:seeds|cores|insides)(?: and (?:the )?\w+)?)?"
    r"|\b(?P<cut2>cut|slice|trim) the (?P<name2>[a-z]+ pepper) halves in half"
    r"(?: lengthways| lengthwise)?",
    re.IGNORECASE,
)
# Halves have no lids, and are seeded once.
_ON = r"(?:put|pop|set|place|sit|replace) (?:the |their )?(?:lids|tops)(?: back)?(?: on(?: top)?)?"
_LIDS = re.compile(
    r",? (?:and )?(?:keep|sav|reserv|set)(?:e|ing)? (?:them|these|the tops|the lids)(?: aside)? (?:as|for) "
    rf"(?:the )?lids|(?:(?<=[.!] )|(?<=^)){_ON}[.!](?: +|$)|(?:,| and|, and) {_ON}(?=[.;,])",
    re.IGNORECASE,
)
_SEEDED_TWICE = re.compile(
    r"(?P<once>\btake out the seeds)(?P<between>[^.;]*?),? (?:and )?(?:scrape|scoop|pull|take|shake) out the "
    r"(?:seeds|cores)(?: and (?:the )?\w+)?",
    re.IGNORECASE,
)
_STOOD = re.compile(
    r"\b(?P<verb>stand|sit|set|place|arrange|put|nestle) (?P<what>them|the peppers|the [a-z]+ pepper halves|the shells)"
    r"(?: (?:upright|cut[- ]side up|snugly|open[- ]side up))* (?=in|on)",
    re.IGNORECASE,
)
# Caps that are a slit vegetable now: their stalks are its middle.
_HALVED = r"(?:aubergine|courgette|pepper|tomato)s?"
_OF_CAPS = re.compile(rf"\b(?P<name>(?:[a-z]+ )?{_HALVED}), in halves\b", re.IGNORECASE)
_STALKS_OUT = re.compile(
    rf"\b(?P<verb>remove|take out|twist out|pull out|snap off|cut out|cut off|trim) (?:the |all the )?(?:stalks|stems)"
    rf"(?: and (?:the )?gills)?(?: from| of| off)? (?:the |each )?(?P<name>(?:[a-z]+ )?{_HALVED}), in halves"
    r"(?:, one a serving)?(?P<chop>,? and (?:finely )?(?:chop|dice) (?:them|the stalks|the stems)(?P<how> finely)?)?",
    re.IGNORECASE,
)
_WIPED_AND_TWISTED = re.compile(
    rf"\b(?:wipe|clean|brush) the [a-z ]*mushrooms \[(?P<name>(?:[a-z]+ )?{_HALVED}), in halves[^\]]*\](?: clean)?"
    r"(?:,| and|, and) (?:remove|take out|twist out|pull out|snap off|cut out|cut off|trim) (?:off )?(?:the |all the )?"
    r"(?:stalks|stems)(?P<chop>,? and (?P<how>finely |roughly )?(?:chop|dice) (?:them|the stalks|the stems))?",
    re.IGNORECASE,
)
_OF_THE_MIDDLE = re.compile(rf"\bmushroom \[(?P<name>(?:[a-z]+ )?{_HALVED}) halves\] middle\b", re.IGNORECASE)
_WORDS = (
    (re.compile(r"\bgills?[- ](?:side )?up\b", re.IGNORECASE), "cut side up"),
    (re.compile(r"\b(?P<the>the |each )?(?:mushroom )?(?:caps|cups)\b", re.IGNORECASE), r"\g<the>halves"),
    (re.compile(r"\b(?:mushroom )?(?:stalks|stems)\b", re.IGNORECASE), "middle"),
)


def in_halves_now(step: str) -> str:
    """A changed step with peppers in halves opened lengthways and laid cut side up."""
    step = _IN_HALVES.sub(lambda one: f"{one['name'] or one['now']} halves", step)
    if _TOPS_OFF.search(step):
        step = _TOPS_OFF.sub(_lengthways, _STOOD.sub(_laid, step))
    return _HALVED_AGAIN.sub(r"\g<verb> the \g<name>s", step)


def without_lids(steps: Sequence[str]) -> list[str]:
    """The changed steps of peppers that come in halves now, without the lids that were cut off whole ones."""
    if not any("pepper halves" in step for step in steps):
        return list(steps)
    return [_SEEDED_TWICE.sub(r"\g<once>\g<between>", _LIDS.sub("", step)).rstrip() for step in steps]


def caps_are_halves(steps: Sequence[str]) -> list[str]:
    """The changed steps that speak of halves, where the caps of mushrooms were filled."""
    if not any(_OF_CAPS.search(step) for step in steps) or not any(re.search(r"\b(?:caps|gill)", one) for one in steps):
        return list(steps)
    told = [_STALKS_OUT.sub(_scooped_out, _WIPED_AND_TWISTED.sub(_halved_first, step)) for step in steps]
    told = [_OF_CAPS.sub(r"\g<name> halves", step) for step in told]
    for old, new in _WORDS:
        told = [old.sub(new, step) for step in told]
    return [_OF_THE_MIDDLE.sub(r"\g<name> middle", step) for step in told]


def _halved_first(found: re.Match[str]) -> str:
    halve = "Halve" if found[0][0].isupper() else "halve"
    name = found["name"] if found["name"].endswith("s") else f"{found['name']}s"
    chop = f" and {found['how'] or ''}chop it" if found["chop"] else ""
    return f"{halve} the {name} lengthways, scoop out the middle{chop}"


def _scooped_out(found: re.Match[str]) -> str:
    halve = "Halve" if found["verb"][0].isupper() else "halve"
    name = found["name"] if found["name"].endswith("s") else f"{found['name']}s"
    chop = f" and chop it{found['how'] or ''}" if found["chop"] else ""
    return f"{halve} the {name} lengthways, scoop out the middle{chop}"


def _laid(found: re.Match[str]) -> str:
    return f"{'Lay' if found['verb'][0].isupper() else 'lay'} {found['what']} cut side up "


def _lengthways(found: re.Match[str]) -> str:
    halve = "Halve" if (found["cut"] or found["cut2"])[0].isupper() else "halve"
    seeds = " and take out the seeds" if found["cut"] else ""
    return f"{halve} the {found['name'] or found['name2']}s lengthways{seeds}"
