"""What still counts from before, as text and as plain values."""

from collections.abc import Sequence
from datetime import datetime
from typing import TYPE_CHECKING, Any

from calmlarder.compose.dinner import Dinner
from calmlarder.compose.request import DinnerRequest
from calmlarder.intake.cap_words import CAP_WORDS, component_words
from calmlarder.intake.eaten import EVERYONE, ME
from calmlarder.intake.stacking import Counted, day_so_far_ug, held_by, held_ug, of_the_day, still_counted
from calmlarder.tables.cap_rows import Cap

if TYPE_CHECKING:
    from calmlarder.compose.compose import Composed

NEAR = 0.9  # of a cap taken, before and dinner together: from there on it binds; ours, no source
_TELLING_UG = 5_000  # less is shown as 0.00 or 0.01 g


def held_g(wanted: DinnerRequest) -> dict[str, float]:
    """G still counted by sitting cap, for whoever has the most; nothing where nothing counts."""
    counted = wanted.counted
    return {cap.key: held_ug(counted, cap) / 1_000_000 for cap in wanted.limits.sitting_caps} if counted else {}


def binding(dinner: Dinner, wanted: DinnerRequest) -> tuple[Cap, ...]:
    """Caps that what was eaten before and the dinner take up together, and the dinner alone would not."""
    held = held_g(wanted)
    loads = dinner.per_person.loads_g
    return tuple(
        cap
        for cap in wanted.limits.sitting_caps
        if held.get(cap.key) and loads[cap.key] + held[cap.key] >= NEAR * float(cap.typical_g)
    )


def stacked_object(composed: "Composed", wanted: DinnerRequest) -> dict[str, Any] | None:
    """The value of `stacked`; None where no log was asked for or nothing of it counts."""
    counted = wanted.counted
    if wanted.stacking is None or not counted:
        return None
    bound = [cap.key for dinner in composed.dinners for cap in binding(dinner, wanted)]
    more = composed.more_after or _more_after(wanted, set(bound))
    how, caps = wanted.stacking, wanted.limits.sitting_caps
    return {
        "at": how.at.isoformat(timespec="minutes"),
        "window_hours": how.window_hours,
        "fade": how.fade,
        "from": [
            {
                "at": one.eaten.at.isoformat(timespec="minutes"),
                "until": one.until.isoformat(timespec="minutes"),
                "who": one.eaten.who,
                "whose": list(one.whose),
                "text": one.eaten.text,
                "grams": one.eaten.grams,
                "share": round(one.share, 4),
                "unknown": list(one.eaten.unknown),
            }
            for one in counted
        ],
        "held_g": {key: round(grams, 4) for key, grams in held_g(wanted).items()},
        "people": [
            {"who": who, "window_hours": how.hours_of(who), "fade": how.fades_for(who),
             "held_g": {cap.key: round(held_by(counted, cap).get(who, 0) / 1_000_000, 4) for cap in caps}}
            for who in _people(counted)
        ],
        "binding": list(dict.fromkeys(bound)),
        "more_after": more.isoformat(timespec="minutes") if more else None,
    }  # fmt: skip


def day_object(composed: "Composed", wanted: DinnerRequest) -> dict[str, Any] | None:
    """The value of `day`, g by limit of the day: what was logged of it, each dinner with it, and the wish.

    None where nothing was logged on the day of the sitting; only what was logged counts, as is likely.
    """
    how = wanted.stacking
    if how is None or not of_the_day(wanted.eaten, how):
        return None
    caps = wanted.limits.day_caps
    before = {cap.key: day_so_far_ug(wanted.eaten, how, cap) / 1_000_000 for cap in caps}
    return {
        "date": how.at.date().isoformat(),
        "logged_g": {key: round(grams, 4) for key, grams in before.items()},
        "with_dinner_g": [
            {key: round(grams + dinner.per_person.loads_g.get(key, 0.0), 4) for key, grams in before.items()}
            for dinner in composed.dinners
        ],
        "wished_g": {cap.key: float(cap.typical_g) for cap in caps},
    }


def day_lines(composed: "Composed", wanted: DinnerRequest) -> list[str]:
    """The same in words, of the first dinner."""
    day = day_object(composed, wanted)
    if day is None:
        return []
    lines = []
    for key, wished in day["wished_g"].items():
        with_it = [grams[key] for grams in day["with_dinner_g"]]
        told = f", with this dinner {with_it[0]:.2f} g" if len(with_it) == 1 else ""
        least, most = f"{min(with_it, default=0):.2f}", f"{max(with_it, default=0):.2f}"
        to_most = f" to {most}" if most != least else ""
        told = f", with these dinners {least}{to_most} g" if len(with_it) > 1 else told
        over = (
            ": more than is aimed at, but one such day does no harm and is no reason not to eat"
            if any(one > wished for one in with_it)
            else ""
        )
        lines.append(
            f"Today, {CAP_WORDS.get(key, key)}, of what was logged, likely: {day['logged_g'][key]:.2f} g so far{told}; "
            f"a day aims at {wished:.2f} g{over}."
        )
    return lines


def filled_words(wanted: DinnerRequest) -> str:
    """The limits that what was eaten before fills by itself; nothing where it fills none."""
    held = held_g(wanted)
    caps = [cap for cap in wanted.limits.sitting_caps if held.get(cap.key, 0) >= float(cap.typical_g)]
    if not caps:
        return ""
    names = [CAP_WORDS.get(cap.key, cap.key) for cap in caps]
    times = dict.fromkeys(
        _clock(one.eaten.at, wanted) for one in wanted.counted if any(one.likely_ug(cap) >= _TELLING_UG for cap in caps)
    )
    more = _more_after(wanted, {cap.key for cap in caps})
    later = f" After {_clock(more, wanted)} there is more to choose from." if more else ""
    return (
        f"What was eaten at {' and '.join(times)} already fills what one meal may bring of {', '.join(names)}. So this "
        f"dinner adds next to nothing of that. Eat it all the same: nobody should go hungry for a limit.{later}"
    )


def before_words(dinner: Dinner, wanted: DinnerRequest) -> str:
    """What was eaten before, where it leaves less room for a dinner, in a few words; else nothing."""
    bound = {cap.key for cap in binding(dinner, wanted)}
    more = _more_after(wanted, bound)
    if not more:
        return ""
    eaten = [f"{one.eaten.title} at {_clock(one.eaten.at, wanted)}" for one in wanted.counted]
    told = f"Counts what was eaten: {', '.join(eaten)}. After {_clock(more, wanted)} more would fit."
    return " ".join(filter(None, [filled_words(wanted), told]))


def stacked_lines(composed: "Composed", wanted: DinnerRequest) -> list[str]:
    """What is still counted, from what, until when; and after when more would fit, where it binds."""
    counted = wanted.counted
    lines = []
    for one in counted:
        entry = one.eaten
        who = "" if entry.who == "me" else f", {entry.who}"
        part = f", {round(one.share * 100)} % of it" if one.share < 1 else ""
        brings = [
            f"{one.likely_ug(cap) / 1_000_000:.2f} g {CAP_WORDS.get(cap.key, cap.key)}"
            for cap in wanted.limits.sitting_caps
            if one.likely_ug(cap) >= _TELLING_UG
        ]
        told = ", ".join(brings) if brings else "next to nothing"
        if entry.unknown:
            told = f"{told if brings else 'nothing'}; not known, so not counted: {component_words(entry.unknown)}"
        until = f"until {_clock(one.until, wanted)}{_by_own_hours(one, wanted)}"
        lines.append(f"{_clock(entry.at, wanted)} {entry.title}, {entry.grams:g} g{who}: {told}{part}, {until}.")
    lines += _whose(wanted)
    bound = {cap.key for dinner in composed.dinners for cap in binding(dinner, wanted)}
    more = _more_after(wanted, bound)
    if more:
        lines.append(
            f"It leaves less room for this dinner: after {_clock(more, wanted)} more would fit. Do not wait if you are "
            "hungry."
        )
    return lines


def _clock(moment: datetime, wanted: DinnerRequest) -> str:
    """The time, and the day where it is not that of the sitting."""
    days = (moment.date() - wanted.stacking.at.date()).days if wanted.stacking else 0
    day = {0: "", 1: " tomorrow", -1: " yesterday"}.get(days, f" of {moment:%Y-%m-%d}")
    return f"{moment:%H:%M}{day}"


def _people(counted: Sequence[Counted]) -> list[str]:
    """Those whose past still counts; whoever was not named only where nobody else is known."""
    found = list(dict.fromkeys(who for one in counted for who in one.whose))
    return [who for who in found if who != EVERYONE] or found


def _by_own_hours(one: Counted, wanted: DinnerRequest) -> str:
    """For whom it counts so long, where that is by hours of their own."""
    how = wanted.stacking
    owns = [own.who for own in how.own if own.who in one.whose] if how else []
    named = ", ".join("you" if who == ME else who for who in owns)
    return f" for {named}, by hours of their own" if owns and named != "you" else " by your own hours" if owns else ""


def _whose(wanted: DinnerRequest) -> list[str]:
    """Of several people whose past counts against which cap: one dish is for all, so the fullest of them decides."""
    counted = wanted.counted
    if len(_people(counted)) < 2:
        return []
    most: dict[str, list[str]] = {}
    for cap in wanted.limits.sitting_caps:
        held = {who: ug for who, ug in held_by(counted, cap).items() if who != EVERYONE and ug >= _TELLING_UG}
        if held:
            who = max(held, key=lambda name: (held[name], name))
            most.setdefault(who, []).append(f"{CAP_WORDS.get(cap.key, cap.key)} {held[who] / 1_000_000:.2f} g")
    told = "; ".join(f"{'yours' if who == ME else f'that of {who}'}, {', '.join(caps)}" for who, caps in most.items())
    return [f"Whose past leaves the least room: {told}."] if told else []


def _more_after(wanted: DinnerRequest, bound: set[str]) -> datetime | None:
    """When less of a bound group counts for the first time for whoever has the most of it."""
    how = wanted.stacking
    caps = [cap for cap in wanted.limits.sitting_caps if cap.key in bound]
    for until in sorted({one.until for one in wanted.counted}):
        later = still_counted(wanted.eaten, how.model_copy(update={"at": until})) if how else ()
        if any(held_ug(later, cap) < held_ug(wanted.counted, cap) for cap in caps):
            return until
    return None
