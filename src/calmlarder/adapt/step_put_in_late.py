"""What needs less time than what it stands in for goes into the pan later in a step, which has its time."""

import re
from collections.abc import Sequence

_OR_HOURS = r"(?:(?: ?[-–] ?| to )(?:\d+|an?|one) ?(?:hours?|hrs?)\b)?"
_SO_LONG = re.compile(rf"(?:about )?\b\d+(?: ?(?:[-–]|to) ?\d+)? ?(?:minutes?|mins?)\b{_OR_HOURS}", re.IGNORECASE)
# What goes in last, named in a row of things that go in now.
_ONE_NAME = r"(?P<name>(?:(?!and\b|the\b)[a-z][\w-]*\b ){1,4})"
_NEXT_ONE = r"[a-z-]+(?: [a-z-]+)?(?:,| and )"
_SAID = r"\[(?P<said>(?:[\w -]+ )?only (?:for the last \d+ minutes|at the end))\]"
_A_VERB = "cook|stir|fry|let|simmer|leave|turn|toss|mix|cover|bring|roast|bake|season|add|then|put|tip|spread"
_LAST = re.compile(
    rf"(?P<before>,| and) (?:the )?{_ONE_NAME}{_SAID}(?P<behind>,| and\b)?"
    rf"|(?P<the>the ){_ONE_NAME.replace('name', 'first')}{_SAID.replace('said', 'how')}"
    rf"(?:,| and) (?:(?=the |\d|½|¼|some |all )|(?P<bare>(?!{_A_VERB})(?={_NEXT_ONE}(?!{_A_VERB}))))"
    rf"|(?P<one>the ){_ONE_NAME.replace('name', 'only')}"
    rf"{_SAID.replace('said', 'so')} and (?!{_A_VERB})(?=[a-z-]+ (?:on|in|into|onto|to|with)\b)",
    re.IGNORECASE,
)
# Several that took one place, each with its time: `[canned lentils only for the last 10 minutes; pumpkin from the
# start]`.
_EACH_ITS_TIME = re.compile(r" \[(?P<said>[a-z][^\[\];]* only [^\[\];]*(?:; [^\[\];]+)+)\]", re.IGNORECASE)
_LATE_ONE = re.compile(
    r"(?P<name>[a-z][\w -]{2,30}?) (?:add )?only (?P<when>for the last \d+ minutes|at the end)", re.I
)
_SOLD_AS = re.compile(r"^(?:canned|cooked|boiled|dry) ")
_A_TIME = re.compile(
    r"(?<!last )\b(?:(?:\d+|½)[½¼¾]? ?(?:[-–] ?\d+[½¼¾]? ?)?(?:minutes?|mins?|hours?|hrs?)|(?:half )?an hour)\b",
    re.IGNORECASE,
)
# `[potatoes about 18 minutes, not 8] … for 8 minutes`
_OTHER_TIME = re.compile(r" \[(?:[a-z][\w -]{2,30} )?about (?P<needs>\d+) minutes, not (?P<given>\d+)\]", re.IGNORECASE)
# `Stir in the chickpeas and potatoes [potatoes about 18 minutes].` in a sentence that gives no time.
_COOKED_THERE = re.compile(
    r" \[(?P<name>potatoes|carrots|parsnips|sweet potatoes) about (?P<minutes>\d+) minutes\](?=[.;]|$)"
)
_SIMMERS = re.compile(r"\b(?:simmer|cook|boil|bubble|bake)\w*\b", re.IGNORECASE)
_SERVES = re.compile(r"\b(?:serve|ladle|divide)\b", re.IGNORECASE)
_LAST_OF_A_LIST = re.compile(
    r", (?!until|till|when|and\b|then\b|for\b|[a-z]+ing\b)((?:the )?[a-z-]+(?: [a-z-]+)?)$", re.I
)
# `until the lentils [these keep their shape, …] are soft into the sauce`: they are not in yet.
_FALLS_APART = re.compile(
    r",? (?:stirring[^,.;]*, )?(?:until|till) the [a-z ]{3,30} \[these keep their shape, so go by the time\][^.;,]*",
    re.IGNORECASE,
)
_MARK = "\x1f"  # where the last thing of a list stood, until its `and` is moved
_AND_GONE = re.compile(rf"(?P<before>[^.;:!?{_MARK}]*){_MARK}")
_SAYS_LATE = re.compile(r" \[only for the last (?P<last>\d+) minutes\]", re.IGNORECASE)
_MINUTES = re.compile(r"(?<!last )\b(\d+)(?: ?(?:[-–]|to) ?\d+)? ?(min|h(?:ou)?r)", re.IGNORECASE)
_WHEN = re.compile(r"only (for the last \d+ minutes|at the end)$")


def put_in_late(step: str) -> str:
    """A step with the time of what is in it now, and what goes in last at its end."""
    return _last_things_last(_one_late(_with_its_time(_COOKED_THERE.sub(_until_soft, step))))


def _until_soft(found: re.Match[str]) -> str:
    return f" and simmer until the {found['name']} are soft, about {found['minutes']} minutes"


def _with_its_time(step: str) -> str:
    """The time that what is in the pot needs now in the place of the old one."""
    found = _OTHER_TIME.search(step)
    if found is None:
        return step
    told = re.compile(rf"\b{found['given']}(?:(?: ?[-–] ?| to )\d+)? ?(?:minutes?|mins?)\b{_OR_HOURS}")
    rest = step[found.end() :]
    now = told.sub(f"{found['needs']} minutes", rest, count=1)
    return f"{step[: found.start()]}{now}" if now != rest else step


def _one_late(step: str) -> str:
    """Of several that took one place only those go in now that start with it, the others at the end of the step."""
    found = _EACH_ITS_TIME.search(step)
    if found is None:
        return step
    before, late = step[: found.start()], []
    parts = found["said"].split("; ")
    longest = max(map(_minutes_of, parts)) if not any(part.endswith("from the start") for part in parts) else 0
    for part in parts:
        one = _LATE_ONE.fullmatch(part)
        if one is None and not part.endswith("from the start"):
            return step
        if one is None or (longest and _minutes_of(part) == longest):
            continue
        short = _SOLD_AS.sub("", one["name"])
        listed = (
            rf"(?:(?<=the )|\b(?=\w))(?:canned |dry )?{re.escape(short)}(?:(?:,| and) (?=[\w -]+(?:,[\w ,-]+)?$)|$)"
        )
        rest = re.sub(listed, "", before)
        if rest == before:
            return step
        before = rest
        while (again := _not_there(short).search(step, found.end())) is not None:
            step = _without(step, again.span("what"))
        minutes = int(re.sub(r"\D", "", one["when"]) or 0)
        late.append(
            (-minutes, f"Put in the {short} {one['when']} of it." if minutes else f"At the end stir in the {short}.")
        )
    behind = step[found.end() :].rstrip()
    if longest:  # nothing starts with the old one's time
        behind = _SO_LONG.sub(f"{longest} minutes", behind, count=1)
    if before.endswith(("the ", "in ", "add ", "Add ")):
        if not behind.startswith((",", " and")):
            return step  # nothing would be left to go in
        behind = re.sub(r"^(?:,| and) ", "", behind)
    return at_their_time(f"{before}{behind}", [text for _, text in sorted(late)])


def _not_there(name: str) -> re.Pattern[str]:
    """A thing that is not in yet, where a step names it beside others: `until the beans and quinoa are crisp`."""
    return re.compile(
        rf"(?:,| and) (?P<what>(?:the )?(?:canned |cooked |dry )?{re.escape(name)}\b)(?! \[)", re.IGNORECASE
    )


def _without(step: str, span: tuple[int, int]) -> str:
    """A step without one thing behind a comma or an `and`; the one before it takes its `and` where it ends a list."""
    before = step[: span[0]]
    rest = before.removesuffix(", ").removesuffix(" and ").removesuffix(",")
    last = _LAST_OF_A_LIST.search(rest) if before.endswith(" and ") else None
    if last is not None:
        rest = f"{rest[: last.start()]} and {last[1]}"
    return f"{rest}{step[span[1] :]}"


def _minutes_of(part: str) -> int:
    return int("".join(re.findall(r"\d+(?= minutes)", part)[-1:]) or 0)


def _last_things_last(step: str) -> str:
    """What only goes in at the end stands at the end of the step, where other things go in with the sentence."""
    late: list[str] = []
    names: list[str] = []
    if not _A_TIME.search(step):
        return step  # it goes on in the next one
    step = _SAYS_LATE.sub(lambda one: "" if _is_all_of_it(int(one["last"]), step) else one[0], step)

    def taken(found: re.Match[str]) -> str:
        name = found["first"] or found["only"] or found["name"]
        said = found["how"] or found["so"] or found["said"]
        when = _WHEN.search(said)
        names.append(name.strip())
        late.append(
            f"Put in the {name.strip()} {when[1]} of it."
            if when and "minutes" in when[1]
            else f"At the end stir in the {name.strip()}."
        )
        if found["one"] or found["bare"] is not None:
            return "the "
        mark = _MARK if found["before"] == " and" else ""
        return "" if found["the"] else f"{mark}{found['behind'] or ''}"

    step = _FALLS_APART.sub("", step)
    told = _AND_GONE.sub(_and_before, _LAST.sub(taken, step))
    for name in names:
        while (again := _not_there(_SOLD_AS.sub("", name)).search(told)) is not None:
            told = _without(told, again.span("what"))
    return at_their_time(told, late) if late else step


def _is_all_of_it(minutes: int, step: str) -> bool:
    """Whether a step takes no longer than what goes in last: then all goes in together."""
    given = [int(one[1]) * (60 if one[2].lower().startswith("h") else 1) for one in _MINUTES.finditer(step)]
    return 0 < sum(given) <= minutes


def _and_before(found: re.Match[str]) -> str:
    """`the rice, pine nuts` as `the rice and pine nuts`, where the last of a list went out."""
    last = _LAST_OF_A_LIST.search(found["before"])
    return f"{found['before'][: last.start()]} and {last[1]}" if last else found["before"]


def at_their_time(step: str, late: Sequence[str]) -> str:
    """The step with what goes in late at its end; before what serves it, and minutes behind those they are the last of.

    `Simmer for an hour. Put in the beans for the last 10 minutes of it. At the end stir in the chives. Ladle out.`
    """
    sentences = re.split(r"(?<=[.!?])(?=\s)", step.rstrip())
    served = next((at for at, one in enumerate(sentences) if at and _SERVES.search(one)), None)
    served = len(sentences) if served is None else served
    timed = next((at + 1 for at in reversed(range(served)) if _A_TIME.search(sentences[at])), served)
    of_it = "".join(f" {one}" for one in late if one.endswith("of it."))
    rest = "".join(f" {one}" for one in late if not one.endswith("of it."))
    head, middle, tail = sentences[:timed], sentences[timed:served], sentences[served:]
    return f"{''.join(head)}{of_it}{''.join(middle)}{rest}{''.join(tail)}"


_LAST_MINUTES = re.compile(r" ?Put in the (?P<name>[^.;\[\]]{3,60}) for the last (?P<last>\d+) minutes of it\.")


def late_where_it_simmers(steps: Sequence[str]) -> list[str]:
    """The steps with what goes in for the last minutes in the step that tells them.

    `bring to the boil` tells none, `boil hard for 3 minutes` none of a grain that wants 20.
    """
    told = list(steps)
    for place, step in enumerate(steps[:-1]):
        found = _LAST_MINUTES.search(step)
        if found is None:
            continue
        rest = f"{step[: found.start()]}{step[found.end() :]}"
        later = None
        if not _A_TIME.search(rest) and _A_TIME.search(told[place + 1]) and _SIMMERS.search(told[place + 1]):
            later = place + 1
        elif 0 < _longest(rest) < int(found["last"]):
            near = range(place + 1, min(place + 3, len(told)))
            long = (at for at in near if _longest(told[at]) >= int(found["last"]) and _SIMMERS.search(told[at]))
            later = next(long, None)
        if later is not None:
            told[place] = rest
            told[later] = at_their_time(told[later], [found[0].strip()])
    return told


def _longest(step: str) -> int:
    """The most minutes that one time of a step tells."""
    told = (int(one[1]) * (60 if one[2].lower().startswith("h") else 1) for one in _MINUTES.finditer(step))
    return max(told, default=0)
