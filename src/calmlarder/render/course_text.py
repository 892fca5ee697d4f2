"""Challenges in words and as plain values: what today asks, where one stands, what was found."""

from collections.abc import Iterable, Iterator, Sequence
from datetime import timedelta
from typing import TYPE_CHECKING, Any

from calmlarder.intake.own_limit import OwnLimit
from calmlarder.reintroduction.clock import Clock
from calmlarder.reintroduction.course import Standing, Tried
from calmlarder.reintroduction.entry import QUESTIONS, Bar
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import Challenge, group_of, ladder_of
from calmlarder.reintroduction.scores import BASELINE_DAYS, MOST_BASELINE

if TYPE_CHECKING:
    from calmlarder.household.challenges import Scored, Status, Today
    from calmlarder.tables.rows import Food

CARE = "Go through this with a dietitian: they know what these days cannot tell. You may put anything off."
_NAMES = {
    "excess_fructose": "excess fructose", "gos": "GOS", "wheat": "fructans of wheat", "onion": "fructans of onion",
    "garlic": "fructans of garlic",
}  # fmt: skip
_WORDS = {one.key: one.words for one in QUESTIONS}


def name_of(challenge: str) -> str:
    """A challenge or a component in a cook's words."""
    return _NAMES.get(challenge, challenge)


def today_object(today: "Today") -> dict[str, Any]:
    """Plain values; `what` is what the day asks for, None without a challenge."""
    course, stands = today.course, today.standing
    if course is None or stands is None:
        return {"who": today.who.name, "challenge": None, "what": None}
    return {
        "who": today.who.name,
        "challenge": course.challenge,
        "group": group_of(course.challenge),
        "what": stands.what,
        "dose_g": stands.dose_g,
        "food": None if today.food is None else today.food.id,
        "grams": today.grams if stands.what == "dose" else None,
        "is_repeat": stands.is_repeat,
        "baseline": None if stands.baseline is None else round(stands.baseline, 2),
        "wash_out_scores": list(stands.wash_out),
        "ended": stands.ended,
        "own_limit_g": stands.reckoning.own_limit_g if stands.what == "finished" else None,
        "ambiguous": stands.reckoning.ambiguous,
        "days": [_tried_object(one) for one in stands.tried],
        "why": why_today(today),
        "foods": [{"food": one.food.id, "grams": list(one.grams)} for one in today.foods[:8]],
    }


def _tried_object(one: Tried) -> dict[str, Any]:
    return {
        "on": one.eaten.on.isoformat(), "dose_g": one.eaten.dose_g, "food": one.eaten.food, "grams": one.eaten.grams,
        "worst": one.worst, "baseline": None if one.baseline is None else round(one.baseline, 2),
        "result": one.result, "left_out": one.left_out,
    }  # fmt: skip


def why_today(today: "Today") -> str:
    """What the day asks for, in a sentence or two."""
    course, stands, food = today.course, today.standing, today.food
    if course is None or stands is None:
        return "No challenge goes on."
    name, ladder = name_of(course.challenge), ladder_of(course.challenge)
    if stands.what == "wash-out":
        had = len(stands.wash_out[-BASELINE_DAYS:])
        return (
            f"A day without the challenge: eat as in elimination, and score the day. {BASELINE_DAYS} calm days come "
            f"first, {had} of them scored so far, so that a reaction can be told from an ordinary day."
        )
    if stands.what == "paused":
        return (
            "The challenge pauses: your gut has not been calm for a week (a score of "
            f"{MOST_BASELINE:g} or less). That is no failure. Eat as in elimination; it goes on by itself after "
            f"{BASELINE_DAYS} calm days. If it stays like this, see your dietitian or doctor."
        )
    if stands.what == "control":
        return (
            f"A control day: the dish as on a challenge day, without the {name}. About one person in four has "
            "symptoms on such a day, too, and it helps to know."
        )
    if stands.what == "dose":
        what = "the same dose again, to be sure" if stands.is_repeat else "the next dose"
        amount = "" if food is None or today.grams is None else f": {today.grams:g} g of {food.name}, weighed"
        return (
            f"Today {what}, {stands.dose_g:g} g of {name}{amount}, once, in your dinner. The rest of the day as in "
            "elimination. Score the day tonight."
        )
    if stands.what == "wait":
        rest = "" if ladder.every_days == 1 else " Symptoms may come a day later, so a day without a dose follows."
        return f"Today's dose is eaten, or its day of rest goes on: eat as in elimination and score the day.{rest}"
    if stands.what == "skipped":
        return "No challenge today, as you said. It goes on tomorrow."
    if stands.what == "stopped":
        return f"The challenge of {name} was stopped{f' ({course.why_stopped})' if course.why_stopped else ''}."
    return f"The challenge of {name} is done ({stands.ended or 'ended'}). {concluded_words(course, stands)}"


def concluded_words(course: Course, stands: Standing) -> str:
    """What was found, with its meaning."""
    limit = stands.reckoning.own_limit_g
    risk = dict(zip(stands.reckoning.doses_g, stands.reckoning.risks, strict=True)).get(limit)
    if risk is None:
        return f"The limit of elimination stays for now, {limit:g} g; it is worth another try in 3 to 6 months."
    return f"Your limit for one sitting: {limit:g} g, {calm_words(risk)} at this dose. It is an estimate, no diagnosis."


def calm_words(risk: float) -> str:
    """A risk as days that stay calm: `about 19 days of 20 calm`."""
    of = 12 if risk > 1 / 24 else 50
    return f"about {min(of - 1, round((1 - risk) * of))} days of {of} calm"


def today_text(today: "Today") -> str:
    """What today asks for."""
    lines = [why_today(today)]
    stands = today.standing
    if stands is not None and stands.what == "dose" and len(today.foods) > 1:
        others = ", ".join(
            one.food.name for one in today.foods[:5] if today.food is None or one.food.id != today.food.id
        )
        lines.append(f"Other pure foods for it: {others}.")
    return "\n".join([*lines, CARE])


def bars_object(bars: Sequence[Bar]) -> list[dict[str, Any]]:
    """Plain values."""
    return [{"see": bar.whom, "because": [_WORDS[key] for key in bar.keys]} for bar in bars]


def bars_text(bars: Sequence[Bar]) -> str:
    """Why it waits, and who to see."""
    lines = ["Not yet, and nothing is lost by waiting."]
    for bar in bars:
        lines.append(f"Please see a {bar.whom} first, as you said yes to:")
        lines += [f"  {_WORDS[key]}" for key in bar.keys]
    lines.append("Most often it is nothing grave. Challenges can begin once they have looked at it.")
    return "\n".join(lines)


def scored_object(scored: "Scored") -> dict[str, Any]:
    """Plain values."""
    return {
        "felt": scored.felt.model_dump(mode="json"),
        "red_flags": [flag.flag for flag in scored.flags],
        "dose_counted": scored.dose_counted,
        "today": today_object(scored.today),
    }


def clock_text(clock: Clock) -> str:
    """What the week of elimination asks for."""
    weeks = f"Elimination: {clock.weeks} week{'' if clock.weeks == 1 else 's'} so far."
    change = ""
    if clock.fell_by is not None and clock.before is not None and clock.now is not None:
        change = f" Your mean score was {clock.before:.1f} in the week before and is {clock.now:.1f} now."
    if clock.says == "reintroduction":
        return f"{weeks}{change} That is a clear change: it is time to try groups again, `calmlarder challenge start`."
    if clock.says == "end it":
        return (
            f"{weeks}{change} Elimination has done what it can: end it, eat as before, and see a dietitian. "
            "Staying on it longer helps nobody's gut and makes it harder to eat well."
        )
    if clock.says == "how is it going":
        return f"{weeks}{change} How is it going? With a clear change, groups are tried again from week 4 on."
    return f"{weeks}{change}"


def clock_object(clock: Clock | None) -> dict[str, Any] | None:
    """Plain values."""
    return None if clock is None else {**clock._asdict(), "fell_by": clock.fell_by and round(clock.fell_by, 3)}


def limit_object(own: OwnLimit) -> dict[str, Any]:
    """Plain values."""
    return own.model_dump(mode="json")


def limit_line(own: OwnLimit) -> str:
    """An own limit with who says so, and how sure it is."""
    where = f" (foods: {', '.join(own.classes)})" if own.classes else ""
    sure = "" if own.risk is None else f"; {calm_words(own.risk)} at this dose"
    return f"{name_of(own.component)}: {own.grams:g} g a sitting{where}, {own.said_by}, {own.on.isoformat()}{sure}"


def status_object(status: "Status") -> dict[str, Any]:
    """Plain values."""
    who = status.who
    return {
        "who": who.name,
        "phase": who.phase,
        "since": None if who.since is None else who.since.isoformat(),
        "profile": who.profile,
        "clock": clock_object(status.clock),
        "today": today_object(status.today),
        "own_limits": [limit_object(own) for own in who.own_limits],
        "left": list(status.left),
        "retest": list(status.retest),
    }


def status_text(status: "Status") -> str:
    """Where somebody is, what was found, what comes next."""
    who = status.who
    lines = [
        f"{who.name}: {who.phase or 'no phase said'}{f' since {who.since}' if who.since else ''}, limits: {who.profile}"
    ]
    if status.clock is not None:
        lines.append(clock_text(status.clock))
    lines.append(why_today(status.today))
    if who.own_limits:
        lines.append("Found so far:")
        lines += [f"  {limit_line(own)}" for own in who.own_limits]
        if who.profile != "own":
            lines.append(f"They count once you say so: `calmlarder people set {who.name} --profile own`.")
    if status.left:
        lines.append(f"Still to try, in this order unless you change it: {', '.join(map(name_of, status.left))}.")
    if status.retest:
        lines.append(f"Worth another try after three months: {', '.join(map(name_of, status.retest))}.")
    return "\n".join([*lines, CARE])


def history_object(courses: Iterable[tuple[Course, Standing]]) -> list[dict[str, Any]]:
    """Plain values."""
    return [
        {
            "challenge": course.challenge, "group": group_of(course.challenge), "food": course.food,
            "started": course.started.isoformat(),
            "stopped": None if course.stopped is None else course.stopped.isoformat(),
            "why_stopped": course.why_stopped,
            "concluded": None if course.concluded is None else course.concluded.isoformat(),
            "limit_g": course.limit_g,
            "days": [_tried_object(one) for one in stands.tried],
            "skipped": {day.isoformat(): why for day, why in course.skipped.items()},
        }
        for course, stands in courses
    ]  # fmt: skip


def history_text(courses: Sequence[tuple[Course, Standing]]) -> str:
    """Every challenge, day by day."""
    if not courses:
        return "No challenge yet. `calmlarder challenge start GROUP` begins one."
    return "\n".join([*(line for course, stands in courses for line in course_lines(course, stands)), CARE])


def course_lines(course: Course, stands: Standing) -> Iterator[str]:
    """One challenge, day by day."""
    end = f", stopped {course.stopped} ({course.why_stopped or 'no reason said'})" if course.stopped else ""
    end = f", concluded {course.concluded}: {course.limit_g:g} g" if course.concluded and course.limit_g else end
    yield f"{name_of(course.challenge)}, from {course.started}{end}"
    for one in stands.tried:
        dose = f"{one.eaten.dose_g:g} g" if one.eaten.dose_g else "control"
        worst = "no score" if one.worst is None else f"worst score {one.worst}"
        yield f"  {one.eaten.on}  {dose:>8}  {worst:14}  {one.result or f'left out: {one.left_out}'}"
    for day, why in course.skipped.items():
        yield f"  {day}   skipped{f': {why}' if why else ''}"


def retest_from(course: Course) -> str:
    """From when a group is worth another try."""
    return "" if course.concluded is None else (course.concluded + timedelta(days=91)).isoformat()


def food_words(food: "Food", challenge: Challenge, grams: float) -> str:
    """`48 g of brown onion (fructans of onion)`."""
    return f"{grams:g} g of {food.name} ({name_of(challenge)})"
