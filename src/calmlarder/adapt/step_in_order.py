"""What goes in for the last minutes of a time is told in the order in which a cook does it.

`Simmer for 20 minutes until the lentils and pumpkin fall apart. Put in the lentils for the last 10 minutes of it.` is
`Simmer for 10 minutes, add the lentils and simmer for 10 minutes more until the pumpkin falls apart.`
"""

import re

_LATE = re.compile(
    r" ?Put in (?P<what>(?:the |\d+ g of the )?(?P<name>[^.;\[\]]{3,60}?)) for the last (?P<last>\d+) minutes of it\."
)
_TIMED = re.compile(
    r"(?P<head>(?:.*[.;!] |.*?\b(?:and|then) |.*, )?)(?P<verb>simmer|cook|bubble|boil|bake|roast|stew)"
    r"(?P<how>(?:,? [a-z-]+(?: [a-z-]+){0,3}?,?)?)(?P<for> (?:for )?(?:about |another |a further )?)"
    r"(?P<low>\d+)(?:(?: ?[-–] ?| to | or )(?P<high>\d+))? ?(?:minutes?|mins?)(?P<more> more| longer)?"
    r"(?P<behind>[^;\[\]]*?)\.",
    re.IGNORECASE | re.DOTALL,
)
_SENTENCES = re.compile(r"(?<=[.!?])(?=\s)")
_MORE_TIME = re.compile(
    r"\d+ ?(?:[-–] ?\d+ ?)?(?:minutes?|mins?|hours?)|\b(?:(?<!and )then|add|stir in|pour|tip)\b", re.IGNORECASE
)
_IS = {"fall": "falls", "are": "is", "have": "has", "break": "breaks", "collapse": "collapses", "melt": "melts"}


def told_in_order(step: str) -> str:
    """A step that puts something in for the last minutes of the time that the sentence before it gives."""
    found = _LATE.search(step)
    if found is None:
        return step
    *before, sentence = _SENTENCES.split(step[: found.start()])
    space = sentence[: len(sentence) - len(sentence.lstrip())]
    timed, last = _TIMED.fullmatch(sentence.strip()), int(found["last"])
    if timed is None or int(timed["low"]) <= last or _MORE_TIME.search(timed["behind"]):
        return step
    first = f"{int(timed['low']) - last}" + (f"–{int(timed['high']) - last}" if timed["high"] else "")
    told = (
        f"{timed['head']}{timed['verb']}{timed['how']}{timed['for']}{first} minutes{timed['more'] or ''}, "
        f"put in {found['what']} and {timed['verb'].lower()} for {last} minutes more"
        f"{_without_the_late(timed['behind'], found['name'])}."
    )
    return f"{''.join(before)}{space}{told}{step[found.end() :]}"


def _without_the_late(behind: str, name: str) -> str:
    """`until the canned lentils and pumpkin fall apart` of the pumpkin alone, which was in the pot by then."""
    late = "|".join(re.escape(one.split()[-1]) for one in re.split(r", | and ", name))
    together = re.compile(
        rf"\b(?P<until>until|till|when|once) the (?:canned |tinned )?(?:[a-z]+ )?(?:{late}) and (?:the )?"
        r"(?P<other>[a-z]+) (?P<verb>[a-z]+)\b"
    )

    def alone(one: re.Match[str]) -> str:
        verb = one["verb"] if one["other"].endswith("s") else _IS.get(one["verb"], one["verb"])
        return f"{one['until']} the {one['other']} {verb}"

    return together.sub(alone, behind)
