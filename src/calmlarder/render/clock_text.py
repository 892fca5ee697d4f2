"""The clock of elimination in words and as plain values."""

from typing import Any

from calmlarder.reintroduction.clock import END_WEEK, OFFER_WEEK, Clock

_MEANT = "Elimination is meant for 2 to 6 weeks: staying on it longer makes it harder to eat well."
_FAR_TOO_LONG_WEEKS = 9  # half as long again as six: ours


def clock_text(clock: Clock, on_screen: bool = False) -> str:
    """What the week of elimination asks for; on a screen in its keys."""
    weeks = f"Elimination: {clock.weeks} week{'' if clock.weeks == 1 else 's'} so far.{_change(clock)}"
    begin = "n starts one" if on_screen else "`calmlarder challenge start` begins one"
    if clock.says == "reintroduction":
        late = f" {_MEANT}" if clock.weeks >= END_WEEK else ""
        return f"{weeks} A clear change: time to try groups again, with a dietitian ({begin}).{late}"
    if clock.says == "end it":
        helped = f" Where it helped, groups are tried again one by one ({begin})." if clock.fell_by is None else ""
        if clock.weeks >= _FAR_TOO_LONG_WEEKS:
            weeks = f"You have eaten by elimination for {clock.weeks} weeks, far longer than meant.{_change(clock)}"
        return (
            f"{weeks} It is time to end it, with a dietitian. {_MEANT}{helped} If it has not clearly helped, that is "
            "no fault of yours: it does not help everybody. The usual advice then is to eat as before and to look for "
            "other help."
        )
    if clock.says == "how is it going" and clock.fell_by is None:
        how = "`feel 1 0 2 0` in the larder's line" if on_screen else "`calmlarder challenge score 1 0 2 0`"
        return f"{weeks} How is it going? {how} each day shows it (pain, bloating, wind, urgency; 0 none, 10 worst)."
    if clock.says == "how is it going" and clock.weeks < OFFER_WEEK:
        return f"{weeks} How is it going? With a clear change, groups are tried again from week {OFFER_WEEK} on."
    if clock.says == "how is it going":
        return (
            f"{weeks} Not clearly better yet; that happens, and is no fault of yours. If it is so at week {END_WEEK}, "
            "end it, eat as before and see a dietitian."
        )
    return weeks


def _change(clock: Clock) -> str:
    if clock.fell_by is None or clock.before is None or clock.now is None:
        return ""
    return (
        f" The worst score of a day was {clock.before:.1f} on average before elimination and is {clock.now:.1f} in the "
        "last week (0 calm, 10 the worst you know)."
    )


def clock_object(clock: Clock | None) -> dict[str, Any] | None:
    """Plain values."""
    return None if clock is None else {**clock._asdict(), "fell_by": clock.fell_by and round(clock.fell_by, 3)}
