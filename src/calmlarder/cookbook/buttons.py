"""What stands round a recipe that was copied from a page with all there is on it: buttons, marks, ways elsewhere."""

import re

_BUTTON = re.compile(
    r"(?:save|share|print|pin(?: it)?|tweet|e-?mail|like|rate|jump to|skip to|go to)"
    r"(?: (?:this|the|my|to|a|recipe|recipes|card|page|content|main|video|comments?|friend|favou?rites))*[!.:]?"
    r"|(?:more|you may also|you might also) like(?: this)?:?|related (?:recipes|posts):?|read more|advert(?:isement)?"
    r"|(?:leave|post|write) a (?:comment|reply|review)|(?:\d+ )?(?:comments?|reviews?|ratings?|votes?)"
    r"|\d(?:[.,]\d+)?(?: (?:out of|/) ?5)? (?:stars? )?(?:from|by|based on|\() ?"
    r"\d[\d,.]* (?:ratings?|reviews?|votes?)\)?"
    r"|(?:[1-9]x ?){2,}|(?:home|menu|search|subscribe|log ?in|sign (?:in|up)|newsletter|about(?: us| me)?|contact)"
    r"|(?:we|this site) uses? cookies.{0,80}|accept (?:all )?(?:cookies)?|cook mode.{0,60}"
    r"|keep (?:the )?screen on.{0,40}",
    re.IGNORECASE,
)


def without_buttons(text: str) -> str:
    """A text without the lines that are nothing but such words."""
    return "\n".join(line for line in text.split("\n") if not _BUTTON.fullmatch(line.strip()) or not line.strip())
