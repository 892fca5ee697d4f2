"""What a day of a challenge asks for, in a sentence or two."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from calmlarder.reintroduction.course import Standing
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import ladder_of
from calmlarder.reintroduction.red_flags import RED_FLAG
from calmlarder.reintroduction.scores import BASELINE_DAYS, MOST_BASELINE
from calmlarder.render.challenge_names import CARE, SETTLE, concluded_words, name_of, stopped_words, upper

if TYPE_CHECKING:
    from calmlarder.household.challenges import Today

NONE_GOES_ON = "No challenge is going on."
_CALM = f"worst scores of {MOST_BASELINE:g} of 10 or less on average"
_ENDED = {
    "strong reaction": "it ends after a strong reaction, as planned",
    "two reactions": "it ends after two reactions, as planned",
    "all doses eaten": "all doses were eaten",
}
REACTED = ("strong reaction", "two reactions")
_WHOLE_FROM_G = 10


def why_today(today: "Today", on_screen: bool = False) -> str:
    """What the day asks for, in a sentence or two; on a screen in its keys."""
    course, stands = today.course, today.standing
    if course is None or stands is None:
        return NONE_GOES_ON
    name = upper(name_of(course.challenge))
    if stands.what == "wash-out":
        return _wash_out(course, stands, on_screen)
    if stands.what == "paused" and len(stands.wash_out) < BASELINE_DAYS:
        return (
            f"{name}: the challenge pauses, as fewer than {BASELINE_DAYS} days were scored in a week. Nothing "
            f"is lost. Eat as in elimination and score each day; it goes on by itself after {BASELINE_DAYS} calm days."
        )
    if stands.what == "paused":
        return (
            f"{name}: the challenge pauses, as your gut has not been calm for a week ({_CALM}). That is no failure. "
            f"Eat as in elimination and score each day; it goes on by itself after {BASELINE_DAYS} calm days. If it "
            "stays like this, see your dietitian or doctor."
        )
    if stands.what == "control":
        return (
            f"A comparison day: a dinner as on a day with a dose, without the {name_of(course.challenge)}. About one "
            "person in four has symptoms on such a day, too, so it helps to know. Score the day tonight."
        )
    if stands.what == "dose":
        return _dose(today, course, stands)
    if stands.what == "wait":
        rest = (
            ""
            if ladder_of(course.challenge).every_days == 1
            else " Symptoms may come a day later, so a day without a dose follows."
        )
        return (
            f"{_reaction_words(stands)}{name}: no further dose today. Eat as in elimination, and score the day "
            f"tonight.{rest}"
        )
    if stands.what == "skipped":
        return "No challenge today, as you said. It goes on tomorrow."
    if stands.what == "stopped":
        return f"{stopped_words(course)}."
    return over_words(course, stands, "" if today.food is None else today.food.name)


def over_words(course: Course, stands: Standing, food: str = "") -> str:
    """How a challenge ended, and what was found."""
    settle = f" {SETTLE}" if stands.ended in REACTED else ""
    ended = f": {_ENDED[stands.ended]}" if stands.ended else ""
    return (
        f"The challenge of {name_of(course.challenge)} is over{ended}.{settle} {concluded_words(course, stands, food)}"
    )


def today_text(today: "Today") -> str:
    """What today asks for."""
    stands = today.standing
    if stands is None:
        return "\n".join([_after(today), CARE])
    lines = [why_today(today)]
    if stands.what == "dose" and today.grams is not None and today.grams < _WHOLE_FROM_G:
        lines.append("So little needs a scale that shows tenths of a gram.")
    if stands.what == "dose" and len(today.foods) > 1:
        others = ", ".join(
            one.food.name for one in today.foods[:5] if today.food is None or one.food.id != today.food.id
        )
        lines.append(f"Other foods that suit, with little of other groups: {others}.")
    return "\n".join([*lines, CARE])


def passed_words(passed: Sequence[str]) -> str:
    """That a day tells nothing of the dose, and why."""
    names = ", ".join(name_of(group) for group in passed).replace("oligosaccharides", "fructans and GOS")
    return (
        f"What you logged today also went past the limit of {names}. So nobody could tell which of them a symptom came "
        "from: the day is kept in your log and left out of what is concluded. The same dose comes again. No harm done."
    )


def _after(today: "Today") -> str:
    """What is left to do after the last challenge."""
    lines = [NONE_GOES_ON]
    if today.last is not None:
        course, stands = today.last
        if course.why_stopped == RED_FLAG:
            lines.append(f"{stopped_words(course)}.")
        elif stands.ended in REACTED:
            lines.append(f"That of {name_of(course.challenge)} ended with a reaction. {SETTLE}")
    lines.append("`calmlarder challenge status` says what was found and what is left to try; `start` begins one.")
    return " ".join(lines)


def _wash_out(course: Course, stands: Standing, on_screen: bool) -> str:
    had = len(stands.wash_out[-BASELINE_DAYS:])
    again = "" if stands.baseline is None else ", at least two of them as calm as before the last dose"
    if stands.is_settled:
        state = f"{BASELINE_DAYS} calm days are scored: the next dose may come tomorrow."
    elif had < BASELINE_DAYS:
        state = f"Scored so far: {had} of {BASELINE_DAYS}."
    else:
        state = "The last three were not calm enough yet; that is nothing you did wrong."
    return (
        f"{_reaction_words(stands)}{upper(name_of(course.challenge))}: no dose today. Eat as in elimination, and "
        f"score the day tonight. {BASELINE_DAYS} calm days come before a dose ({_CALM}{again}), so that a reaction can "
        f"be told from an ordinary day. {state}{_control_words(course, stands, on_screen)}"
    )


def _dose(today: "Today", course: Course, stands: Standing) -> str:
    is_first = not any(one.eaten.dose_g for one in stands.tried)
    what = "the same dose again, to be sure" if stands.is_repeat else f"the {'first' if is_first else 'next'} dose"
    if stands.tried and stands.tried[-1].left_out and stands.tried[-1].eaten.dose_g == stands.dose_g:
        what = f"the same dose again, as the last day of it does not count ({stands.tried[-1].left_out})"
    amount = "" if today.food is None or today.grams is None else f": {today.grams:g} g of {today.food.name}, weighed"
    return (
        f"Today {what}, {stands.dose_g:g} g of {name_of(course.challenge)}{amount}, once, with your dinner. Eat the "
        "rest of the day as in elimination, and score the day tonight. If you do not feel like it, skip the day: "
        "nothing is lost."
    )


def _reaction_words(stands: Standing) -> str:
    """What a first reaction means, and what follows."""
    if not stands.tried or stands.tried[-1].result != "reaction" or stands.ended:
        return ""
    if not stands.tried[-1].eaten.dose_g:
        return (
            "Symptoms came on the comparison day, without any dose. That happens to about one person in four, and "
            f"tells that a single bad day proves little. The first dose comes after {BASELINE_DAYS} calm days. "
            f"{SETTLE} "
        )
    return (
        "The last dose counts as a reaction. One may be chance and does not mean that you did anything wrong: the same "
        f"dose comes once more, after {BASELINE_DAYS} calm days. You may also stop here. {SETTLE} "
    )


def _control_words(course: Course, stands: Standing, on_screen: bool) -> str:
    """The offer of a comparison day, before the first dose."""
    if course.wants_control or stands.tried:
        return ""
    how = "c" if on_screen else "`calmlarder challenge control`"
    return f" If you want a comparison day before the first dose, with a dinner without it: {how}."
