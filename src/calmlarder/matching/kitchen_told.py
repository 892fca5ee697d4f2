"""What a list says of the kitchen beside its foods: `microwave only`, `no oven, it's broken`, `hob not working`."""

import re

_NAME = r"(?:microwave|oven|hob|stove|cooker|blender|toaster)"
_NAMES = rf"{_NAME}(?: ?(?:,|and|or|&|/|\+) ?(?:an? |the )?{_NAME})*"
_WE = r"(?:(?:i|we)(?:'ve)? )?(?:(?:only|just|have|got|an?|the|no|one|our|my) )*"
_BROKEN = (
    r"(?:'?s| is| are)? ?(?:still )?(?:broken?|bust(?:ed)?|dead|out(?: of order)?|knackered|kaput|packed in|died"
    r"|not working|doesn'?t work|on the blink|broke down)"
)
_ENDS = r"(?:[ ,]*(?:btw|fyi|though|tho|atm|remember|tonight|today|here|at the moment|now|sorry|in (?:my|the) room))*"
_CLAUSE = rf"(?:{_WE}{_NAMES}(?: (?:only|alone)|{_BROKEN})?)"
_WHOLE = re.compile(rf"[( ]*{_CLAUSE}(?:[ ,;.]+(?:and |so |the )?{_CLAUSE})*{_ENDS}[). !]*", re.IGNORECASE)
_ONLY = re.compile(
    rf"\b(?:only|just) (?:(?:have|got|an?|the|one) )*({_NAMES})|({_NAMES}) (?:only|alone)\b", re.IGNORECASE
)
_NONE = re.compile(rf"\b(?:no|no working) ({_NAMES})|({_NAMES}){_BROKEN}\b", re.IGNORECASE)
# What each is for. A stove and a cooker have rings and an oven; without rings no pot and no pan is of any use.
_STANDS_FOR = {
    "cooker": ("oven", "pot", "pan"), "hob": ("pot", "pan"), "stove": ("oven", "pot", "pan"),
}  # fmt: skip
_COOKED_WITH = ("oven", "microwave", "pot", "pan")


def kitchen_lacks(line: str) -> tuple[str, ...]:
    """Things that the kitchen lacks by a line that tells of nothing else, in the words of a pattern's equipment."""
    if _WHOLE.fullmatch(line.strip()) is None:
        return ()
    lacks = {thing for found in _NONE.finditer(line) for thing in _meant(found)}
    has = {thing for found in _ONLY.finditer(line) for thing in _meant(found)}
    lacks |= {thing for thing in _COOKED_WITH if thing not in has} if has else set()
    return tuple(sorted(lacks - has))


def _meant(found: re.Match[str]) -> list[str]:
    names = re.findall(_NAME, next(group for group in found.groups() if group).lower())
    return [thing for name in names for thing in _STANDS_FOR.get(name, (name,))]
