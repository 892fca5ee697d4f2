"""The day behind a word for what has been begun, without a word between them: `half used, 11/24`, `open, mon`."""

import re
from datetime import date

from calmlarder.matching.dates.day_names import DAY, DAY_WORD, parse_day_of
from calmlarder.matching.late_patterns import LatePattern

_BEGUN = LatePattern(
    r"\b(?P<word>opened|open|started|(?P<part>(?:half|part|partly|mostly|quarter|third) (?:used|eaten|gone|left)))"
    r"(?P<and>[ ,(-]+)"
    rf"(?P<day>{DAY_WORD})(?![\w/-])(?! (?:use|ub|best|bbe?|exp|sell)\b)"
)
_WEEKDAY = re.compile(rf"(?:on )?(?:{DAY})")
_LATELY_DAYS = 31  # a day of the last weeks is that of the opening, one to come that of the label; ours
_SOON_DAYS = 2  # a weekday behind a comma so near ahead may be the label's as well, and is left as it was; ours


def begun_then(text: str, today: date) -> str:
    """The text with that day as the one on which the thing was opened, where it lies behind."""
    return _BEGUN.sub(lambda found: _opened(found, today), text)


def _opened(found: re.Match[str], today: date) -> str:
    try:
        behind = parse_day_of(found["day"], today, False)
        ahead = parse_day_of(found["day"], today, True)
    except ValueError:
        return found[0]
    is_label = found["word"] in {"opened", "open"} and 0 <= (ahead - today).days <= _SOON_DAYS
    if _WEEKDAY.fullmatch(found["day"]) and is_label and found["and"].strip():
        return found[0]
    part = f"{found['part']} " if found["part"] else ""
    return f"{part}opened {behind.isoformat()}" if 0 <= (today - behind).days <= _LATELY_DAYS else found[0]
