"""Some packs of a thing that are open and some that are not: two lines of it, since each has its own days.

`milk 2 cartons, one open`, `passata x3 (1 opened monday)`, `tofu 2 x 280g, one started`.
"""

from calmlarder.matching.amounts.measures import MEASURE, UNIT
from calmlarder.matching.amounts.numbers_and_fractions import WHOLE_WORDS
from calmlarder.matching.late_patterns import LatePattern

_NUMBER = rf"(?:\d{{1,2}}|{'|'.join(sorted(WHOLE_WORDS, key=len, reverse=True))})"
_SOME_OPEN = LatePattern(
    rf"^(?P<all>[^()]*?[a-z\d])[ ,;(-]+(?P<some>{_NUMBER})(?: (?:of (?:them|which|em)|is|already|just|been|has been))*"
    r" (?P<how>open(?:ed)?|started|begun|part used|half used)(?P<day> [a-z\d/. ]{2,24})?\)?$",
    needs=("open", "started", "begun", "used"),
)
_COUNT = LatePattern(
    rf"(?<![\w./])(?:x ?(?P<times>\d{{1,2}})|(?P<packs>{_NUMBER})(?= ?(?:x\b|x\d|{MEASURE})|(?: [a-z-]+){{1,3}}$|$))"
    rf"(?! ?(?:{UNIT})\b)(?![\d./%])"
)


def apart_when_opened(line: str) -> tuple[str, str] | None:
    """The two lines that a plain line tells of, the open one first; None where all are alike."""
    found = _SOME_OPEN.search(line)
    counts = list(_COUNT.finditer(found["all"])) if found else []
    if found is None or len(counts) != 1 or "," in found["all"][counts[0].end() :]:
        return None
    count = counts[0]
    group = "times" if count["times"] else "packs"
    before, behind = found["all"][: count.start(group)], found["all"][count.end(group) :]
    everything, some = _value(count[group]), _value(found["some"])
    if some >= everything:
        return None
    return f"{before}{some}{behind} {found['how']}{found['day'] or ''}", f"{before}{everything - some}{behind}"


def _value(word: str) -> int:
    return int(word) if word.isdigit() else int(WHOLE_WORDS[word])
