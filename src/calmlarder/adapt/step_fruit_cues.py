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
_MASS = frozenset({"pineapple", "papaya", "aubergine", "orange", "kiwi", "courgette"})


def seen_to_be_done(step: str) -> str:
    """A step in which what keeps its shape is done once it is soft."""
    step = _DOES_NOT_BROWN.sub("", step).rstrip()
    step = _UNTIL_THEY.sub(lambda one: f"{one['before']}until {_they_are(one['name'])} soft", step)
    return _SEEN.sub(lambda one: f"{one['name']} {'is' if one['name'].lower() in _MASS else 'are'} soft", step)


def _they_are(name: str) -> str:
    return "it is" if name.lower() in _MASS else "they are"
