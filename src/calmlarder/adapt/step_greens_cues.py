"""Signs of an onion in a changed step whose onion is green tops now: they lose no water and turn no pink."""

import re

_GREENS = r"(?P<greens>\b(?:leek|spring onion) greens)"
_ONION_DOES = (
    r"(?:moisture|water|juices?|catch\w*|stick\w*|jammy|collaps\w+|melting\w*|see-through|translucent|transparent|glassy"
    r"|silky|sweet|brown\w*|golden|gold|colou?r\w*|caramel\w+|conkers?|pale|crisp\w*|dark\w*)"
)
# `cook the leek greens until it has lost its moisture and begins to catch`
_UNTIL = re.compile(
    rf"{_GREENS}(?P<between>(?: [^.;,\[\]]*?)?),? (?:un)?till? (?:it|they|all of it) [^.;,\[\]]*?"
    rf"\b{_ONION_DOES}\b[^.;,]*",
    re.IGNORECASE,
)
# `scrunch until it wilts`
_ALONE = r"(?P<between>(?:(?! then | add | stir | heat | bring | whisk | pour | reduce | simmer )[^.;\[\]])*?)"
_IT = re.compile(rf"{_GREENS}{_ALONE} until it (?P<verb>[a-z]+?)(?P<s>e?s)\b", re.IGNORECASE)
_PINK = re.compile(
    r"\bpink (?=(?:vinegar|lime|lemon|juice|liquid|brine|onions?|pickl\w*|leek|spring onion))", re.IGNORECASE
)
# `Cook the leek greens, lid on. They should be nearly melted.`
_SHOULD_BE = re.compile(
    rf"(?P<before>\bgreens\b[^.;]*[.;] )(?:They|It)(?: should| will|[’']ll)? (?:be|look|turn|go) [^.;]*?"
    rf"\b(?:melt\w*|{_ONION_DOES})\b[^.;]*[.;](?: +|$)"
)
_LETTING = re.compile(
    r"(?P<greens>\bgreens\b[^.;]*?\bwithout letting) it (?=colou?r|brown|catch|burn|take)", re.IGNORECASE
)
_DONE_ITS = re.compile(r"\bgreens (?P<verb>have|has) done its\b")
_WITH_ITS_CLOVES = re.compile(r"\bgreens with (?:its|their) cloves\b")
_VERBS = {"is": "are", "has": "have", "does": "do", "goes": "go"}


def without_signs_of_an_onion(step: str, everywhere: str) -> str:
    """A changed step in which green tops are soft when they are done; `everywhere` are all of the steps."""
    if "greens" in everywhere and not re.search(r"\bred onion|\bpickled onion", everywhere):
        step = _PINK.sub("", step)
    step = _UNTIL.sub(r"\g<greens>\g<between> until soft and bright green", step)
    step = _LETTING.sub(r"\g<greens> them ", step)
    step = _DONE_ITS.sub("greens have done their", _WITH_ITS_CLOVES.sub("greens and the cloves", step))
    return _IT.sub(_they, _SHOULD_BE.sub(r"\g<before>", step)).rstrip()


def _they(found: re.Match[str]) -> str:
    whole = found["verb"] + found["s"]
    verb = _VERBS.get(whole, found["verb"] if found["s"] == "s" else whole.removesuffix("s"))
    return f"{found['greens']}{found['between']} until they {verb}"
