"""Signs by which a stand-in is not seen to be done: pineapple never collapses, carrots do not fall to a fluff."""

import re

_FIRM = r"(?:pineapple|oranges?|kiwis?|strawberries|papaya|grapes|carrots|parsnips|green beans|courgettes?|aubergine)"
_COLLAPSE = (
    r"(?:collaps\w+|fall(?:s|en|ing)? (?:apart|to pieces|to (?:a )?fluff)|fluffy|gone to (?:a )?fluff|slump\w*|mush\w*"
    r"|pulpy|break(?:s|ing)? (?:down|up)|broken down|dissolv\w+|burst\w*|puff\w*(?: up)?|swell\w*|swollen"
    r"|translucent|glassy|melt(?:s|ed|ing)?(?: away| down)?)"
)
_NEARLY = r"(?:(?:just|almost|nearly|completely|(?:begin|start)(?:s|ning|ing)? to) )*"
_SEEN = re.compile(
    rf"\b(?P<name>{_FIRM}) (?:(?:is|are|has|have) )?{_NEARLY}{_COLLAPSE}"
    r"(?: (?:at|round|around) the edges| into [^,.;]+)?(?=[,.;]|$| and\b| but\b)",
    re.IGNORECASE,
)
# `Add the pineapple and cook for 30 minutes, until they have burst into the sauce`
_UNTIL_THEY = re.compile(
    rf"(?P<before>\b(?P<name>{_FIRM})\b[^.;]*?\b)until (?:they|it) (?:have |has |are |is )?{_NEARLY}{_COLLAPSE}"
    r"(?: (?:at|round|around) the edges| into the [a-z]+)?(?=[.,;]|$| and\b| but\b)",
    re.IGNORECASE,
)
# `Work fast so that the pineapple does not brown.`
_NOT_BROWN = (
    rf"(?:the )?{_FIRM} (?:(?:does not|do not|doesn[’']t|don[’']t|cannot|can[’']t) (?:go |turn )?|from )"
    r"(?:brown|discolou?r)(?:ing)?"
)
_DOES_NOT_BROWN = re.compile(
    rf"(?:(?<=[.!] )|(?<=^))(?:Work|Be) (?:fast|quick|quickly),? so (?:that )?{_NOT_BROWN}[.!] ?"
    rf"|,? (?:so that|so|to stop) {_NOT_BROWN}(?=[.,;]|$)",
    re.IGNORECASE,
)
# `grate the apples [300 g of the strawberries] straight into the bowl`, in whose place soft fruit is cut already
_SOFT_FRUIT = r"(?:strawberries|raspberries|blueberries|firm banana|kiwis?|oranges?|pineapple|papaya|grapes)"
_GRATED = re.compile(
    rf"\b(?P<verb>(?:coarsely |finely )?grate)(?: in)? (?:the )?[a-z]+"
    rf" \[(?P<now>(?:[\d/ ]+g of )?(?:the )?{_SOFT_FRUIT})\]"
    rf"|\b(?P<grate>(?:coarsely |finely )?grate)(?: in)? (?P<own>(?:[\d/ ]+g of )?(?:the )?{_SOFT_FRUIT})",
    re.IGNORECASE,
)
_STAYS_PALE = re.compile(
    r",? (?:at once |straight away )?so (?:that )?(?:they|it) (?:stays?|keeps?|remains?) (?:\w+ )?(?:pale|white|bright)"
    r"(?=[.,;]|$)",
    re.IGNORECASE,
)
_MASS = frozenset({"pineapple", "papaya", "aubergine", "orange", "kiwi", "courgette"})


def seen_to_be_done(step: str) -> str:
    """A step in which what keeps its shape is done once it is soft."""
    step = _DOES_NOT_BROWN.sub("", step).rstrip()
    if _GRATED.search(step):
        step = _STAYS_PALE.sub("", _GRATED.sub(_stirred_in, step))
    step = _UNTIL_THEY.sub(lambda one: f"{one['before']}until {_they_are(one['name'])} soft", step)
    return _SEEN.sub(lambda one: f"{one['name']} {'is' if one['name'].lower() in _MASS else 'are'} soft", step)


def _stirred_in(found: re.Match[str]) -> str:
    verb, now = found["verb"] or found["grate"], found["now"] or found["own"]
    the = "" if now[:1].isdigit() or now.startswith("the ") else "the "
    return f"{'Stir' if verb[0].isupper() else 'stir'} {the}{now}"


def _they_are(name: str) -> str:
    return "it is" if name.lower() in _MASS else "they are"
