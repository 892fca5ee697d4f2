"""Challenges in words and as plain values: what today asks, where one stands, what was found."""

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from calmlarder.intake.eaten import ME
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.reintroduction.clock import Clock
from calmlarder.reintroduction.course import Standing, Tried
from calmlarder.reintroduction.events import Course
from calmlarder.reintroduction.ladders import group_of, ladder_of
from calmlarder.reintroduction.scores import BASELINE_DAYS, MOST_BASELINE

if TYPE_CHECKING:
    from calmlarder.household.challenges import Scored, Status, Today

CARE = "Go through this with a dietitian: they know what these days cannot tell. A day or a dose may always wait."
_NAMES = {
    "excess_fructose": "excess fructose", "gos": "GOS", "wheat": "fructans from wheat", "onion": "fructans from onion",
    "garlic": "fructans from garlic",
}  # fmt: skip
NONE_GOES_ON = "No challenge is going on."
_ENDED = {
    "strong reaction": "it ends after a strong reaction, as planned",
    "two reactions": "it ends after two reactions, as planned",
    "all doses eaten": "all doses were eaten",
}
_WHOLE_FROM_G = 10
_IN_PEOPLE = "say it in People (Shift+F2)."
_SETTLE = (
    "If you feel unwell, eat as in elimination until it settles; see a doctor if it is severe or does not settle in a "
    "few days."
)
_IN_FOODS = {("core",): " in grains, pulses and nuts", ("fresh", "other"): " in other foods"}  # the cut-off classes


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
        "days": [tried_object(one) for one in stands.tried],
        "why": why_today(today),
        "foods": [{"food": one.food.id, "grams": list(one.grams)} for one in today.foods[:8]],
    }


def tried_object(one: Tried) -> dict[str, Any]:
    """Plain values of a day with a dose."""
    return {
        "on": one.eaten.on.isoformat(), "dose_g": one.eaten.dose_g, "food": one.eaten.food, "grams": one.eaten.grams,
        "worst": one.worst, "baseline": None if one.baseline is None else round(one.baseline, 2),
        "result": one.result, "left_out": one.left_out,
    }  # fmt: skip


def why_today(today: "Today") -> str:
    """What the day asks for, in a sentence or two."""
    course, stands, food = today.course, today.standing, today.food
    if course is None or stands is None:
        return NONE_GOES_ON
    name, ladder = name_of(course.challenge), ladder_of(course.challenge)
    if stands.what == "wash-out":
        had = len(stands.wash_out[-BASELINE_DAYS:])
        again = "" if stands.baseline is None else ", two of them as calm as before the last dose"
        return (
            f"{_reaction_words(stands)}{_upper(name)}: no dose today. Eat as in elimination, and score the day "
            f"tonight. {BASELINE_DAYS} calm "
            f"days come first, worst scores of {MOST_BASELINE:g} of 10 or less on average{again}, so that a reaction "
            f"can be told from an ordinary day. Days scored so far: {had}.{_control_words(course, stands)}"
        )
    if stands.what == "paused" and len(stands.wash_out) < BASELINE_DAYS:
        return (
            f"{_upper(name)}: the challenge pauses, as fewer than {BASELINE_DAYS} days were scored in a week. Nothing "
            f"is lost. Eat as in elimination and score each day; it goes on by itself after {BASELINE_DAYS} calm days."
        )
    if stands.what == "paused":
        return (
            f"{_upper(name)}: the challenge pauses, as your gut has not been calm for a week (worst scores of "
            f"{MOST_BASELINE:g} of 10 or less on average). That is no failure. Eat as in elimination and score each "
            f"day; it goes on by itself after {BASELINE_DAYS} calm days. If it stays like this, see your dietitian or "
            "doctor."
        )
    if stands.what == "control":
        return (
            f"A comparison day: the dish as on a day with a dose, without the {name}. About one person in four has "
            "symptoms on such a day, too, and it helps to know. Score the day tonight."
        )
    if stands.what == "dose":
        is_first = not any(one.eaten.dose_g for one in stands.tried)
        what = "the same dose again, to be sure" if stands.is_repeat else f"the {'first' if is_first else 'next'} dose"
        amount = "" if food is None or today.grams is None else f": {today.grams:g} g of {food.name}, weighed"
        return (
            f"Today {what}, {stands.dose_g:g} g of {name}{amount}, once, with your dinner. Eat the rest of the day as "
            "in elimination, and score the day tonight. If you do not feel like it, skip the day: nothing is lost."
        )
    if stands.what == "wait":
        rest = "" if ladder.every_days == 1 else " Symptoms may come a day later, so a day without a dose follows."
        reacted = _reaction_words(stands)
        return (
            f"{reacted}{_upper(name)}: no further dose today. Eat as in elimination, and score the day tonight.{rest}"
        )
    if stands.what == "skipped":
        return "No challenge today, as you said. It goes on tomorrow."
    if stands.what == "stopped":
        return f"{stopped_words(course)}."
    settle = f" {_SETTLE}" if stands.ended in {"strong reaction", "two reactions"} else ""
    ended = f": {_ENDED[stands.ended]}" if stands.ended else ""
    return f"The challenge of {name} is over{ended}.{settle} {concluded_words(course, stands)}"


def _reaction_words(stands: Standing) -> str:
    """What a first reaction means, and what follows."""
    if not stands.tried or stands.tried[-1].result != "reaction" or stands.ended:
        return ""
    return (
        "The last dose counts as a reaction. One may be chance and does not mean that you did anything wrong: the same "
        f"dose comes once more, after {BASELINE_DAYS} calm days. {_SETTLE} "
    )


def _control_words(course: Course, stands: Standing) -> str:
    """The offer of a comparison day, before the first dose."""
    if course.wants_control or stands.tried:
        return ""
    return (
        " You may have a comparison day before the first dose, with the dish and without the dose: stop, and begin "
        "again with --control."
    )


def passed_words(passed: Sequence[str]) -> str:
    """That a day tells nothing of the dose, and why."""
    names = ", ".join(name_of(group) for group in passed).replace("oligosaccharides", "fructans and GOS")
    return (
        f"What you logged today also went past the limit of {names}. So nobody could tell which of them a symptom came "
        "from: the day is kept in your log and left out of the reckoning. The same dose comes again. No harm done."
    )


def stopped_words(course: Course) -> str:
    """That a challenge was stopped, and why."""
    why = f": {course.why_stopped}" if course.why_stopped else ""
    return f"The challenge of {name_of(course.challenge)} was stopped{why}"


def _upper(words: str) -> str:
    return words[:1].upper() + words[1:]


def concluded_words(course: Course, stands: Standing) -> str:
    """What was found, with its meaning."""
    limit = stands.reckoning.own_limit_g
    risk = dict(zip(stands.reckoning.doses_g, stands.reckoning.risks, strict=True)).get(limit)
    if risk is None:
        return (
            f"The limit of elimination stays for now, {limit:g} g of {name_of(group_of(course.challenge))} at one "
            "meal; it is worth another try in 3 to 6 months."
        )
    return (
        f"Your estimated limit for one meal: {limit:g} g of {name_of(group_of(course.challenge))}, "
        f"{calm_words(risk)} at this dose. It is no diagnosis: talk it over with a dietitian before you eat by it."
    )


def calm_words(risk: float) -> str:
    """A risk as days that stay calm: `likely about 11 days of 12 calm`."""
    of = 12 if risk > 1 / 24 else 50
    return f"likely about {min(of - 1, round((1 - risk) * of))} days of {of} calm"


def today_text(today: "Today") -> str:
    """What today asks for."""
    lines = [why_today(today)]
    stands = today.standing
    if stands is None:
        return f"{lines[0]} `calmlarder challenge status` says what is left to try, `challenge start` begins one."
    if stands.what == "dose" and today.grams is not None and today.grams < _WHOLE_FROM_G:
        lines.append("So little needs a scale that shows tenths of a gram.")
    if stands.what == "dose" and len(today.foods) > 1:
        others = ", ".join(
            one.food.name for one in today.foods[:5] if today.food is None or one.food.id != today.food.id
        )
        lines.append(f"Other foods that suit, with little of other groups: {others}.")
    return "\n".join([*lines, CARE])


def scored_object(scored: "Scored") -> dict[str, Any]:
    """Plain values."""
    return {
        "felt": scored.felt.model_dump(mode="json"),
        "red_flags": [flag.flag for flag in scored.flags],
        "dose_counted": scored.dose_counted,
        "also_passed": list(scored.passed),
        "today": today_object(scored.today),
    }


def clock_text(clock: Clock, on_screen: bool = False) -> str:
    """What the week of elimination asks for; on a screen in its keys."""
    weeks = f"Elimination: {clock.weeks} week{'' if clock.weeks == 1 else 's'} so far."
    change = ""
    if clock.fell_by is not None and clock.before is not None and clock.now is not None:
        change = (
            f" Your average worst score of a day was {clock.before:.1f} in the week before and is {clock.now:.1f} in "
            "the last week (0 calm, 10 the worst you know)."
        )
    if clock.says == "reintroduction":
        how = "n starts one." if on_screen else "`calmlarder challenge start`."
        return f"{weeks}{change} A clear change: time to try groups again, with a dietitian. {how}"
    if clock.says == "end it":
        return (
            f"{weeks}{change} It is meant for 2 to 6 weeks, so it is time to end it, with a dietitian. If it has not "
            "clearly helped, that is no fault of yours: it does not help everybody. The usual advice then is to eat as "
            "before and to look for other help. Staying on it longer makes it harder to eat well."
        )
    if clock.says == "how is it going" and clock.fell_by is None:
        how = "`feel 1 0 2 0` in the larder's line" if on_screen else "`calmlarder challenge score 1 0 2 0`"
        return f"{weeks}{change} How is it going? {how} each day would show it."
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
    where = _IN_FOODS.get(own.classes, f" (foods: {', '.join(own.classes)})") if own.classes else ""
    said = "found by a challenge" if own.said_by == "challenge" else f"set by {own.said_by}"
    sure = "" if own.risk is None else f"; {calm_words(own.risk)} at this dose"
    return f"{name_of(own.component)}: {own.grams:g} g at one meal{where}, {said}, {own.on.isoformat()}{sure}"


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
        "weight_due": status.weight_due,
    }


def status_text(status: "Status", on_screen: bool = False) -> str:
    """Where somebody is, what was found, what comes next; on a screen in its keys, not in commands."""
    who = status.who
    called = "You" if on_screen and who.name == ME else who.name
    since = f" since {who.since}" if who.since else ""
    limits = "" if who.profile == who.phase else f", limits: {who.profile}"
    lines = [f"{called}: {who.phase or 'no phase said'}{since}{limits}"]
    if status.clock is not None:
        lines.append(clock_text(status.clock, on_screen))
    if who.phase == "elimination" and who.since is None:
        how = _IN_PEOPLE if on_screen else f"`calmlarder people set {who.name} --phase elimination --since DATE`"
        lines.append(f"When did it begin? {how}")
    if status.weight_due:
        how = _IN_PEOPLE if on_screen else f"`calmlarder people set {who.name} --weight KG`"
        lines.append(f"A month has gone by since your weight was noted. If you want to: {how}")
    lines.append(why_today(status.today))
    last = status.courses[-1] if status.courses else None
    if last is not None and last.stopped is not None:
        lines.append(f"{stopped_words(last)}.")
    if who.own_limits:
        lines.append("Found so far:")
        lines += [f"  {limit_line(own)}" for own in who.own_limits]
        if who.profile != "own":
            how = "limits: own, in People" if on_screen else f"`calmlarder people set {who.name} --profile own`"
            lines.append(f"They count once you say so: {how}.")
    if status.left:
        lines.append(f"Still to try, in this order unless you change it: {', '.join(map(name_of, status.left))}.")
    if status.retest:
        lines.append(f"Worth another try after three months: {', '.join(map(name_of, status.retest))}.")
    # On a screen a line between what is said; what belongs to the line before it is indented.
    apart = "\n\n" if on_screen else "\n"
    text = lines[0]
    for one in [*lines[1:], CARE]:
        text += ("\n" if one.startswith(" ") else apart) + one
    return text
