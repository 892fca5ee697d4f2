"""What steps say of a thing that is left out, where nothing of it is left to do, to see or to wait for.

`The apple [left out] will have gone to fluff.` goes; so do `until the apple [left out] is soft` and `put the apple
[left out] in and`. An onion that was stuck with cloves leaves its cloves, which stay in the list and in the pan.
"""

import re

_IT = (
    r"(?:(?:all |some |half |most )?(?:of )?(?:the |your |a few )?(?!and\b)[\w-]+(?: (?!and\b|with\b)[\w-]+){0,3}"
    r" \[left out\])"
)
_SUBJECT = _IT.replace("(?:the |your |a few )?", "(?:the|your|any|those) ", 1)
_IS = (
    r"(?:is|are|has|have|had|will|should|may|might|can|must|goes|go|turns?|looks?|gives?|keeps?|needs?|wants?|makes?"
    r"|adds?|brings?|melts?|collapses?|softens?|falls?|breaks?|starts?|begins?)"
)
_BEGINS = r"(?P<start>(?<=[.!?] )|(?<=^)|(?<=^\d[.)] )|(?<=^\d\d[.)] ))"
# `The apple [left out] will have gone to fluff, which is what you want.` A second half keeps what it says.
_IS_SO = re.compile(
    rf"{_BEGINS}(?:(?:By now|By then|At this point),? )?{_SUBJECT} {_IS}\b[^.;!]*?"
    r"(?:(?P<next>; |,? (?:and|but|while) (?=(?:the|all|everything) ))|[.!;](?: +|$))",
    re.IGNORECASE,
)
_UNTIL_IT_IS = re.compile(
    rf",? (?:until|till?|once|when|as soon as) {_IT} (?:{_IS}\b|[a-z]+s\b)[^,.;]*?(?=,? and (?:the|then)\b|[,.;]|$)",
    re.I,
)
# `Put the apple [left out] in and cook`, `Tip the peas [left out] into the pan, then fry`
_PUT_IN_AND = re.compile(
    rf"(?P<lead>{_BEGINS}|,? (?:and|then) |, )(?:then )?(?P<put>put|tip|throw|drop|stir|mix|fold|toss|scatter|pour|add)"
    rf" {_IT}(?: (?:in|over|through|on top|(?:in)?to the \w+|in the \w+))?,? (?:and |then )+"
    r"(?P<verb>(?!the\b|a\b|some\b)[a-z]+)\b",
    re.IGNORECASE,
)
_WITH_IT = re.compile(
    rf",? (?:along with|together with|with|and|plus) {_IT}(?=[,.;]|$|,? (?:and|then) "
    r"(?:add|stir|cook|fry|simmer|bring|leave|cover|put|pour|bake|roast|serve|season)\b"
    r"| (?:for|until|over) )",
    re.IGNORECASE,
)
# `Fry the apple [left out] in butter until golden and add it to the pot with half of the tarragon.`
_COOKED_AND_ADDED = re.compile(
    rf"{_BEGINS}(?:fry|cook|roast|toast|brown|soften|steam|boil|grill|char|saut[eé]|caramelise|caramelize) {_IT}[^.;]*?"
    r",? (?:and|then|and then) (?:add|stir|tip|return|fold|toss|scatter|mix) (?:it|them|this|these) "
    r"(?P<where>(?:in(?:to)?|to|over|through|on)(?: the [a-z]+| top)?)"
    r"(?:,? (?:with|along with|together with) (?P<with>[^.;]+?))?(?P<end>[.;](?: +|$))",
    re.IGNORECASE,
)
_STUDDED_LINE = re.compile(
    r"\b(?:stuck|studded|spiked) with (?P<what>(?:(?:\d+|an?|one|two|three|four|five|six|some|a few) )?"
    r"(?:whole )?cloves?(?: and (?:a|1|2|one|two) bay lea(?:f|ves))?)\b",
    re.IGNORECASE,
)
_STUDDED_IT = re.compile(
    r"\b(?:the |your )?(?:clove-(?:studded|stuck|spiked)|studded) [\w -]{3,30} \[left out\]"
    r"|\b(?P<onion>[\w -]{3,30} \[left out\]) (?:stuck|studded|spiked) with (?:the )?cloves",
    re.IGNORECASE,
)
_STUDS_IT = re.compile(
    rf"{_BEGINS}(?:stick|stud|spike|press) (?:the )?(?:cloves (?:in|into) {_IT}|{_IT} with (?:the )?cloves)"
    r"(?:[^.;]*?,? (?:and|then) (?P<verb>[a-z]+) (?:it|this|them)\b|[^.;]*[.;] *)",
    re.IGNORECASE,
)
_STUDDED_GREENS = re.compile(
    r"\b(?:clove-)?(?:studded|spiked) (?P<now>(?:leek|spring onion) greens)(?: \[just stir it in\])?", re.IGNORECASE
)
_TWO_STOPS = re.compile(r"(?<=[.!?])\.(?=\s|$)|(?<=\.)\s+\.(?=\s|$)")
_LEFT_OUT = "[left out]"


def studs_of(text: str) -> str:
    """The cloves that a line has stuck into its onion, as a line of their own; nothing where there are none."""
    found = _STUDDED_LINE.search(text)
    return found["what"] if found and "garlic" not in text.casefold() else ""


def without_what_is_out(step: str) -> str:
    """A changed step without what it says of a thing that is left out, as far as the rest stands without it."""
    step = _STUDDED_GREENS.sub(r"cloves and \g<now>", step)
    if _LEFT_OUT not in step:
        return step
    step = _TWO_STOPS.sub("", step)
    step = _STUDS_IT.sub(lambda one: f"{one['verb'].capitalize()} the cloves" if one["verb"] else "", step)
    step = _STUDDED_IT.sub("the cloves", step)
    step = _COOKED_AND_ADDED.sub(_added_alone, _without_its_sentence(step))
    step = _PUT_IN_AND.sub(_next_verb, _UNTIL_IT_IS.sub("", step))
    return _TWO_STOPS.sub("", _WITH_IT.sub("", step)).strip()


def _without_its_sentence(step: str) -> str:
    while (found := _IS_SO.search(step)) is not None:
        rest = step[found.end() :]
        kept = f"{rest[:1].upper()}{rest[1:]}" if found["next"] else rest
        step = f"{step[: found.start()]}{kept}"
    return step


def _next_verb(found: re.Match[str]) -> str:
    begins = found["put"][:1].isupper()
    return f"{found['lead']}{found['verb'].capitalize() if begins else found['verb']}"


def _added_alone(found: re.Match[str]) -> str:
    """What went in with it still does; nothing else of the sentence stays."""
    return f"Add {found['with']} {found['where']}{found['end']}" if found["with"] else ""
