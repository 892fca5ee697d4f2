"""What still counts from before, as text and as plain values."""

from datetime import datetime
from typing import Any

from calmlarder.compose.compose import Composed
from calmlarder.compose.dinner import Dinner
from calmlarder.compose.wanted import Wanted
from calmlarder.export.cap_words import CAP_WORDS, component_words
from calmlarder.sitting.stacking import held_ug
from calmlarder.tables.rows import Cap

NEAR = 0.9  # of a cap taken, before and dinner together: from there on it binds; ours, no source


def held_g(wanted: Wanted) -> dict[str, float]:
    """G still counted by sitting cap, for whoever has the most; nothing where nothing counts."""
    counted = wanted.counted
    return {cap.key: held_ug(counted, cap) / 1_000_000 for cap in wanted.profile.sitting_caps} if counted else {}


def binding(dinner: Dinner, wanted: Wanted) -> tuple[Cap, ...]:
    """Caps that what was eaten before and the dinner take up together, and the dinner alone would not."""
    held = held_g(wanted)
    found = []
    for cap in wanted.profile.sitting_caps:
        each = dinner.per_person
        load = (each.worst_g if cap.holds == "worst" else each.loads_g)[cap.key]
        if held.get(cap.key) and load + held[cap.key] >= NEAR * float(cap.grams):
            found.append(cap)
    return tuple(found)


def stacked_object(composed: Composed, wanted: Wanted) -> dict[str, Any] | None:
    """The value of `stacked`; None where no log was asked for or nothing of it counts."""
    counted = wanted.counted
    if wanted.stacking is None or not counted:
        return None
    bound = [cap.key for dinner in composed.dinners for cap in binding(dinner, wanted)]
    more = composed.more_after or _more_after(wanted, set(bound))
    return {
        "at": wanted.stacking.at.isoformat(timespec="minutes"),
        "window_hours": wanted.stacking.window_hours,
        "fade": wanted.stacking.fade,
        "from": [
            {
                "at": one.eaten.at.isoformat(timespec="minutes"),
                "until": one.until.isoformat(timespec="minutes"),
                "who": one.eaten.who,
                "text": one.eaten.text,
                "grams": one.eaten.grams,
                "share": round(one.share, 4),
                "unknown": list(one.eaten.unknown),
            }
            for one in counted
        ],
        "held_g": {key: round(grams, 4) for key, grams in held_g(wanted).items()},
        "binding": list(dict.fromkeys(bound)),
        "more_after": more.isoformat(timespec="minutes") if more else None,
    }


def stacked_lines(composed: Composed, wanted: Wanted) -> list[str]:
    """What is still counted, from what, until when; and after when more would fit, where it binds."""
    counted = wanted.counted
    lines = []
    for one in counted:
        entry = one.eaten
        who = "" if entry.who == "me" else f", {entry.who}"
        part = f", {round(one.share * 100)} % of it" if one.share < 1 else ""
        brings = [
            f"{one.held_ug(cap) / 1_000_000:.2f} g {CAP_WORDS.get(cap.key, cap.key)}"
            for cap in wanted.profile.sitting_caps
            if one.held_ug(cap) >= 5_000
        ]
        told = ", ".join(brings) if brings else "next to nothing"
        if entry.unknown:
            told = f"{told if brings else 'nothing'}; not known, so not counted: {component_words(entry.unknown)}"
        lines.append(f"{entry.at:%H:%M} {entry.title}, {entry.grams:g} g{who}: {told}{part}, until {one.until:%H:%M}.")
    bound = {cap.key for dinner in composed.dinners for cap in binding(dinner, wanted)}
    more = _more_after(wanted, bound)
    if more:
        lines.append(f"It leaves less room for this dinner: after {more:%H:%M} more would fit.")
    return lines


def _more_after(wanted: Wanted, bound: set[str]) -> datetime | None:
    """When the first of what brought a bound group no longer counts."""
    caps = [cap for cap in wanted.profile.sitting_caps if cap.key in bound]
    untils = [one.until for one in wanted.counted if any(one.held_ug(cap) for cap in caps)]
    return min(untils, default=None)
