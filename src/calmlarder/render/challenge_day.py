"""What a day of a challenge asks for, in a sentence or two."""

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from calmlarder.intake.eaten import ME
from calmlarder.reintroduction.course import Standing, is_unsettled
from calmlarder.reintroduction.entry_questions import SAID_LATER
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import group_of, is_dose, ladder_of
from calmlarder.reintroduction.red_flags_in_notes import RED_FLAG
from calmlarder.reintroduction.scores import BASELINE_DAYS, MOST_BASELINE
from calmlarder.render.challenge_names import CARE, SETTLE, concluded_words, name_of, stopped_words, upper

if TYPE_CHECKING:
    from calmlarder.household.challenges import Today

NONE_GOES_ON = "No challenge is going on."
_CALM = f"worst scores are {MOST_BASELINE:g} of 10 or less on average"
_ENDED = {
    "strong reaction": "it ends after a strong reaction, as planned",
    "two reactions": "it ends after two reactions, as planned",
    "all doses eaten": "all doses were eaten",
}
REACTED = ("strong reaction", "two reactions")
_IN_SHORT = {
    "wash-out": "no dose today, so eat as in elimination and score the day tonight",
    "wait": "today's dose is eaten, nothing more of it; score the day tonight",
    "paused": "it pauses, so no dose today; Shift+F4 in the larder says why",
    "control": "a day to compare, this dinner without the dose; score the day tonight",
    "skipped": "not today, nothing is lost",
}
_WHOLE_FROM_G = 10
_TOLD_IN_DAYS = 21  # what is longer is told in weeks; ours


def why_today(today: "Today", on_screen: bool = False) -> str:
    """What the day asks for, in a sentence or two; on a screen in its keys."""
    course, stands = today.course, today.standing
    if course is None or stands is None:
        return NONE_GOES_ON
    name = upper(name_of(course.challenge))
    if stands.what == "wash-out":
        return _wash_out(course, stands, on_screen)
    if (
        stands.what == "paused"
        and stands.silent_since is not None
        and (stands.tried or stands.silent_since > course.started)
    ):
        return _silence(stands.silent_since, today.on, name, on_screen)
    if stands.what == "paused" and len(stands.wash_out) < BASELINE_DAYS:
        return (
            f"{name}: the challenge pauses, as fewer than {BASELINE_DAYS} days were scored in a week. Nothing "
            f"is lost. Eat as in elimination and score each day; it goes on once {BASELINE_DAYS} calm days are scored."
        )
    if stands.what == "paused":
        return (
            f"{name}: the challenge pauses, as your gut has not been calm for a week (a worst score of more than "
            f"{MOST_BASELINE:g} of 10 on average). That is no failure. Please talk to your dietitian or doctor this "
            f"week; until then eat as suits you best. No dose comes before {BASELINE_DAYS} calm days are scored, and "
            "then only if you want it."
        )
    if stands.what == "control":
        return (
            f"A comparison day: a dinner as on a day with a dose, without the {name_of(course.challenge)}. About one "
            "person in four has symptoms on such a day, too, so it helps to know. Score the day tonight."
        )
    if stands.what == "dose":
        return _dose(today, course, stands)
    if stands.what == "wait":
        return f"{_reaction_words(stands)}{_wait(course, stands)}"
    if stands.what == "skipped":
        return "No challenge today; nothing is lost. It waits for you: tomorrow, or another day."
    if stands.what == "stopped":
        return f"{stopped_words(course)}."
    return over_words(course, stands, "" if today.food is None else today.food.name)


def word_of_day(today: "Today") -> str:
    """What the day of a challenge asks of a dinner that holds no dose, in a few words; empty without a challenge."""
    stands = today.standing
    if today.course is None or stands is None or stands.what not in _IN_SHORT:
        return ""
    whose = "" if today.who.name == ME else f" of {today.who.name}"
    return f"Challenge of {name_of(today.course.challenge)}{whose}: {_IN_SHORT[stands.what]}."


def over_words(course: Course, stands: Standing, food: str = "") -> str:
    """How a challenge ended, and what was found."""
    settle = f" {SETTLE}" if stands.ended in REACTED else ""
    ended = f": {_ENDED[stands.ended]}" if stands.ended else ""
    replaced = f" It counts in place of {course.replaced}: please tell them of it." if course.replaced else ""
    found = concluded_words(course, stands, food)
    return f"The challenge of {name_of(course.challenge)} is over{ended}.{settle} {found}{replaced}"


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


def lowered_words(lowered: Sequence[Course]) -> str:
    """That a day which was scored late makes the limit of a challenge lower that had ended."""
    told = []
    for course in lowered:
        limit = course.limit_g or 0.0
        group = name_of(group_of(course.challenge))
        stays = "" if is_dose(course.challenge, limit) else ", what elimination holds"
        told.append(
            f"This day belongs to the challenge of {name_of(course.challenge)}, which had ended. With this score its "
            f"limit is lower than before: {limit:g} g of {group} at one meal{stays}. You did nothing wrong: symptoms "
            "may come late, and now the limit knows of them."
        )
    return " ".join(told)


def _after(today: "Today") -> str:
    """What is left to do after the last challenge."""
    lines = [NONE_GOES_ON]
    if today.last is not None:
        course, stands = today.last
        if course.why_stopped in {RED_FLAG, *SAID_LATER}:
            lines.append(f"{stopped_words(course)}.")
        elif stands.ended in REACTED:
            lines.append(f"That of {name_of(course.challenge)} ended with a reaction. {_settles(today)}")
        elif course.concluded is not None:
            lines.append(over_words(course, stands))
    lines.append("`calmlarder challenge status` says what was found and what is left to try; `start` begins one.")
    return " ".join(lines)


def _settles(today: "Today") -> str:
    if not today.unsettled:
        return SETTLE
    least, most = min(today.unsettled), max(today.unsettled)
    scores = f"{least}" if least == most else f"{least} to {most}"
    days = len(today.unsettled)
    return f"Your scores of the last {days} days are still {scores}: please see your doctor or dietitian now."


def _wash_out(course: Course, stands: Standing, on_screen: bool) -> str:
    had = len(stands.wash_out[-BASELINE_DAYS:])
    again = "" if stands.baseline is None else ", with two of them about as calm as before the challenge"
    if stands.is_settled:
        state = f"The last {BASELINE_DAYS} days are calm enough: the {_which(stands)} may come tomorrow."
    elif had < BASELINE_DAYS:
        state = f"Days scored: {had} of {BASELINE_DAYS}."
    else:
        state = "The last three were not calm enough yet; that is nothing you did wrong."
    return (
        f"{_reaction_words(stands)}{upper(name_of(course.challenge))}: no dose today. Eat as in elimination, and "
        f"score the day tonight. A dose comes after {BASELINE_DAYS} days whose {_CALM}{again}, so that a reaction can "
        f"be told from an ordinary day. {state}{_control_words(course, stands, on_screen)}"
    )


def _dose(today: "Today", course: Course, stands: Standing) -> str:
    what, felt_bad = "the same dose again, to be sure" if stands.is_repeat else f"the {_which(stands)}", ""
    last = stands.tried[-1] if stands.tried else None
    before = ""
    if last is not None and last.left_out and last.eaten.dose_g == stands.dose_g:
        before = f"Your last day with {stands.dose_g:g} g does not count ({last.left_out})"
        before += ", though you felt bad after it. " if is_unsettled(last) else ". "
        what = "the same dose again"
        if is_unsettled(last):
            felt_bad = " Or talk to your dietitian first, or stop here: each is fine."
    amount = "" if today.food is None or today.grams is None else f": {today.grams:g} g of {today.food.name}, weighed"
    return (
        f"{before}Today {what}, {stands.dose_g:g} g of {name_of(course.challenge)}{amount}, once, with your dinner. "
        "Eat the rest of the day as in elimination, and score the day tonight. If you do not feel like it, skip the "
        f"day: nothing is lost.{felt_bad}"
    )


def _which(stands: Standing) -> str:
    return "next dose" if any(one.eaten.dose_g for one in stands.tried) else "first dose"


def _wait(course: Course, stands: Standing) -> str:
    """After today's dose: how it went so far, and when the next one may come."""
    last, name = stands.tried[-1], upper(name_of(course.challenge))
    went = f"{name}: worst score {last.worst} of 10, calm so far. " if last.result == "calm" else f"{name}: "
    nothing = "Nothing more today" if last.result == "calm" else "nothing more today"
    if ladder_of(course.challenge).every_days > 1:
        return (
            f"{went}{nothing}. Eat as in elimination, and score the day tonight. Symptoms may come a day later, so a "
            "day without a dose follows."
        )
    score = "" if last.worst is not None else ", and score the day tonight"
    return f"{went}{nothing}. Eat as in elimination{score}."


def _silence(since: date, today: date, name: str, on_screen: bool) -> str:
    stop = "x stops it" if on_screen else "`calmlarder challenge stop` ends it"
    return (
        f"{name}: it is {_long((today - since).days)} since the last day you scored, so the challenge is paused. "
        f"Nothing is lost. Score {BASELINE_DAYS} calm days as in elimination; then the next dose may come, if you want "
        f"it. Or {stop}."
    )


def _long(days: int) -> str:
    return f"{days} days" if days < _TOLD_IN_DAYS else f"{days // 7} weeks"


def _reaction_words(stands: Standing) -> str:
    """What a first reaction means, and what follows; or a bad day that does not count."""
    if stands.tried and not stands.ended and stands.tried[-1].left_out and is_unsettled(stands.tried[-1]):
        return (
            f"Your last day does not count ({stands.tried[-1].left_out}), though you felt bad on it; you did nothing "
            f"wrong. What comes next waits for {BASELINE_DAYS} calm days, or you stop here. {SETTLE} "
        )
    if not stands.tried or stands.tried[-1].result != "reaction" or stands.ended:
        return ""
    if not stands.tried[-1].eaten.dose_g:
        return (
            "Symptoms came on the comparison day, without any dose. That happens to about one person in four, and "
            f"shows that a single bad day proves little. The first dose comes after {BASELINE_DAYS} calm days. "
            f"{SETTLE} "
        )
    return (
        "After the last dose you felt clearly worse: that counts as a reaction. One may be chance, and you did nothing "
        f"wrong. The same dose comes once more after {BASELINE_DAYS} calm days, or you stop here. {SETTLE} "
    )


def _control_words(course: Course, stands: Standing, on_screen: bool) -> str:
    """The offer of a comparison day, before the first dose."""
    if course.wants_control or stands.tried:
        return ""
    how = "c" if on_screen else "`calmlarder challenge control`"
    return (
        " You may first have a comparison day, the same kind of dinner without the dose: it shows how an ordinary day "
        f"feels ({how})."
    )
