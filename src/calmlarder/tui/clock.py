"""The timeline against the clock: what runs now, and what comes next."""

from calmlarder.kitchen.timeline import Moment, Timeline


def timeline_text(timeline: Timeline, minutes_gone: float | None) -> str:
    """The moments in order; `now` before those that run, `next` before the first to come. None: not begun."""
    coming = [moment for moment in timeline.moments if minutes_gone is not None and moment.start_min > minutes_gone]
    lines = [f"{timeline.minutes} minutes for one cook"]
    if minutes_gone is not None:
        lines[0] += f"; {int(minutes_gone)} min in"
    for moment in timeline.moments:
        alone = "" if moment.hands_on or not moment.minutes else f" ({moment.minutes} min by itself)"
        word = _word(moment, coming, minutes_gone)
        lines.append(f"{word:<4} {moment.start_min // 60}:{moment.start_min % 60:02d}  {moment.what}{alone}")
    return "\n".join(lines)


def _word(moment: Moment, coming: list[Moment], minutes_gone: float | None) -> str:
    if minutes_gone is None:
        return ""
    if moment.start_min <= minutes_gone < moment.start_min + moment.minutes:
        return "now"
    return "next" if coming and moment.start_min == coming[0].start_min else ""
