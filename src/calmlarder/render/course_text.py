"""Challenges as plain values, and where somebody is in words."""

from collections.abc import Iterator
from typing import TYPE_CHECKING, Any

from calmlarder.intake.eaten import ME
from calmlarder.intake.own_limit import OwnLimit
from calmlarder.reintroduction.clock import why_early
from calmlarder.reintroduction.course import Tried
from calmlarder.reintroduction.entry_questions import ADULT_YEARS
from calmlarder.reintroduction.ladders import group_of
from calmlarder.reintroduction.red_flag_words import URGENCY
from calmlarder.reintroduction.retest import RETEST_MONTHS
from calmlarder.render.challenge_day import why_today
from calmlarder.render.challenge_names import CARE, limit_line, name_of, stopped_words, upper
from calmlarder.render.clock_text import clock_object, clock_text
from calmlarder.render.signs_text import STILL_SO

if TYPE_CHECKING:
    from calmlarder.household.challenge_status import Status
    from calmlarder.household.challenges import Scored, Today

STILL_TO_TRY = "Still to try, in this order unless you change it"
_IN_PEOPLE = "say it in People (Shift+F2)."


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


def scored_object(scored: "Scored") -> dict[str, Any]:
    """Plain values."""
    return {
        "felt": scored.felt.model_dump(mode="json"),
        "red_flags": [flag.flag for flag in scored.flags],
        "dose_counted": scored.dose_counted,
        "also_passed": list(scored.passed),
        "lowered": [{"challenge": one.challenge, "limit_g": one.limit_g} for one in scored.lowered],
        "today": today_object(scored.today),
    }


def limit_object(own: OwnLimit) -> dict[str, Any]:
    """Plain values."""
    return own.model_dump(mode="json")


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


def said_lower(status: "Status") -> Iterator[str]:
    """Limits that somebody set and that go on although a challenge found more."""
    newest = {course.challenge: course for course in status.courses if course.limit_g is not None}
    for challenge, course in newest.items():
        for own in status.who.own_limits:
            is_of_it = own.component == group_of(challenge) and not own.source
            if is_of_it and course.limit_g is not None and own.grams < course.limit_g:
                yield (
                    f"The challenge of {name_of(challenge)} found {course.limit_g:g} g; the {own.grams:g} g set by "
                    f"{own.said_by} goes on until it is set anew: ask them."
                )


def _next_words(status: "Status", on_screen: bool) -> Iterator[str]:
    """What is left to try, or why nothing is for now."""
    who, clock = status.who, status.clock
    if who.age is not None and who.age < ADULT_YEARS:
        whose = "your" if who.name == ME else f"{who.name}'s"
        yield f"Under 18: what is tried again, and when, is for {whose} dietitian or doctor to say."
        return
    if status.told:
        how = "tick the last question then" if on_screen else "answer `seen` then"
        is_emergency = any(URGENCY[one.flag] in {"crisis", "emergency"} for one in status.told)
        still = f" {STILL_SO}" if is_emergency else ""
        yield (
            f"No challenge for now: you noted {'; '.join(one.line for one in status.told)}.{still} Once a doctor has "
            f"seen you about it and has nothing against it, you may begin ({how})."
        )
        return
    if status.left and not (clock is not None and why_early(clock) == "no help"):
        names = list(map(name_of, status.left))
        if on_screen:
            yield STILL_TO_TRY
            yield from (f"  {number}  {name}" for number, name in enumerate(names, 1))
        else:
            yield f"{STILL_TO_TRY}: {', '.join(names)}."
    for challenge, day in status.waits:
        yield f"{upper(name_of(challenge))}: the limit of elimination stays; worth another try from {day:%B} on."


def _ahead(status: "Status") -> Iterator[str]:
    """The doses to come with their food and its grams, so that it can be bought before."""
    if status.ahead:
        course = status.today.course
        group = "" if course is None else f" of {name_of(course.challenge)}"
        yield "Doses to come, if each day is calm, weighed, with dinner"
        for one in status.ahead:
            day, holds = f"{one.on:%a} {one.on.day} {one.on:%b}", f"({one.dose_g:g} g{group})"
            yield f"  {day}: {one.grams:g} g of {one.food.name} {holds}"


def status_text(status: "Status", on_screen: bool = False) -> str:
    """Where somebody is, what was found, what comes next; on a screen in its keys, not in commands."""
    who = status.who
    called = "You" if on_screen and who.name == ME else who.name
    since = f" since {who.since}" if who.since else ""
    limits = "" if who.profile == who.phase else f", limits: {who.profile}"
    lines = [f"{called}: {who.phase or 'no phase said'}{since}{limits}"]
    if status.clock is not None and (who.since is not None or status.clock.weeks):
        lines.append(clock_text(status.clock, on_screen))
    if who.phase == "elimination" and who.since is None:
        how = "Press b to say." if on_screen else f"`calmlarder people set {who.name} --phase elimination --since DATE`"
        lines.append(f"{'  ' if on_screen else ''}When did it begin? {how}")
    if status.weight_due:
        how = _IN_PEOPLE if on_screen else f"`calmlarder people set {who.name} --weight KG`"
        lines.append(f"A month has gone by since your weight was noted. If you want to: {how}")
    today = why_today(status.today, on_screen)
    lines += ["Today", f"  {today}"] if on_screen else [today]
    lines += _ahead(status)
    lines += [CARE] if on_screen else []
    last = status.courses[-1] if status.courses else None
    if last is not None and last.stopped is not None:
        lines.append(f"{stopped_words(last)}.")
    if who.own_limits:
        lines.append("Found so far:")
        lines += [f"  {limit_line(own)}" for own in who.own_limits]
        lines += said_lower(status)
        if who.profile != "own":
            how = "limits: own, in People" if on_screen else f"`calmlarder people set {who.name} --profile own`"
            lines.append(f"These limits count in dinners once you say so, after your dietitian has seen them: {how}.")
    lines += _next_words(status, on_screen)
    if status.retest:
        lines.append(f"Worth another try after {RETEST_MONTHS} months: {', '.join(map(name_of, status.retest))}.")
    # On a screen a line between what is said; what belongs to the line before it is indented.
    apart = "\n\n" if on_screen else "\n"
    text = lines[0]
    for one in [*lines[1:], *([] if on_screen else [CARE])]:  # a low screen has no room for its end
        text += ("\n" if one.startswith(" ") else apart) + one
    return text
