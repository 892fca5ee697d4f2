"""`calmlarder larder remove`: lots end; what was eaten outside a dinner joins the log of those who ate.

Who that is `--who` says, else it is the one person at home, else it is asked.
"""

import sys
from collections.abc import Sequence
from contextlib import nullcontext
from typing import TYPE_CHECKING

from calmlarder.commands.given.larder import Larder
from calmlarder.commands.inputs import person
from calmlarder.commands.moment import past_moment_of
from calmlarder.history.eaten_up import Eaters, at_one_sitting
from calmlarder.household.booking import Ending, end
from calmlarder.household.ended_over import over_when_ended
from calmlarder.household.household import Household
from calmlarder.household.larder import numbered, remove_unread
from calmlarder.intake.eaten import EVERYONE, ME
from calmlarder.larder.lot import Lot
from calmlarder.problems import CannotGoOn, Problem
from calmlarder.render.logged import eaten_line

if TYPE_CHECKING:
    from calmlarder.store.logs import KeptEaten

NOBODY = "nobody"  # of those whose log counts, or it was logged as it was eaten


def ended_by(options: Larder, household: Household) -> "list[KeptEaten]":
    """End the lots that were named; what the log took on.

    Raises CannotGoOn for a lot that is not there, for more of it than there is, and where nobody says who ate; then
    nothing ends.
    """
    _check(options)
    ones, unread = numbered(household, options.ids)
    eaters = None
    if ones and options.how == "eaten":
        eaters = eaters_of(options, [one.lot for one in ones], household)
    logged: list[KeptEaten] = []
    over = [over_when_ended(household, one, eaters, options.grams) for one in ones] if eaters is not None else []
    # One action: undo brings all of them back at once.
    with household.store.as_one(f"remove {len(ones) + len(unread)} items") if unread and ones else nullcontext():
        if unread:
            remove_unread(household, unread)
        if ones:
            logged = end(household, ones, Ending(options.how, options.why, options.grams, eaters))
    if eaters is not None and not options.json:
        grams = sum(options.grams or one.lot.grams for one in ones)
        print("\n".join([*_lines(eaters, grams, logged), *filter(None, over)]))
    return logged


def _check(options: Larder) -> None:
    """Raises CannotGoOn for options that do not go together."""
    if options.why and options.how != "thrown":
        raise CannotGoOn([Problem(where="--why", what="is of what was thrown", remedy="give --how thrown as well")])
    if options.how != "eaten" and (options.who or options.when):
        where = "--who" if options.who else "--when"
        raise CannotGoOn([Problem(where=where, what="is of what was eaten", remedy="leave it out, or say --how eaten")])
    if options.grams is not None and len(options.ids) > 1:
        raise CannotGoOn([Problem(where="--grams", what="is of one item", remedy="name one item at a time")])


def eaters_of(options: Larder, lots: Sequence[Lot], household: Household) -> Eaters:
    """Whose log takes them on. Raises CannotGoOn where several people eat, none is named and nobody can be asked.

    A bottle that lasted for weeks is nobody's sitting: without a name the log does not count it.
    """
    at, home, tables = past_moment_of(options), household.settled(), household.tables
    who: tuple[str, ...] = ()
    if options.who:
        who = _named(options.who)
    elif any(at_one_sitting(lot, options.grams or lot.grams, home.people, tables) for lot in lots):
        who = (ME,) if home.people == 1 else _asked(lots, home.people)
    return Eaters(who=who, at=at, people=home.people, sure=home.tolerance, only_sittings=not options.who)


def _named(given: Sequence[str]) -> tuple[str, ...]:
    who = tuple(dict.fromkeys(person(name, "--who") for names in given for name in names.split(",")))
    if len(who) > 1 and {NOBODY, EVERYONE}.intersection(who):
        remedy = f"name people, or {NOBODY}, or {EVERYONE}"
        raise CannotGoOn([Problem(where="--who", what=f"`{', '.join(who)}` cannot be", remedy=remedy)])
    return () if NOBODY in who else who


def _asked(lots: Sequence[Lot], people: int) -> tuple[str, ...]:
    what = ", ".join(lot.line for lot in lots)
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        remedy = f"give --who NAME, --who {EVERYONE}, or --who {NOBODY} where it was nobody here or is logged already"
        raise CannotGoOn([Problem(where="--who", what=f"who of {people} ate `{what}` is not said", remedy=remedy)])
    print(f"Who ate {what}? Names with commas between, {EVERYONE}, or {NOBODY} (also where it is logged already).")
    return _named([input("Enter alone is me: ").strip() or ME])


def _lines(eaters: Eaters, grams: float, logged: "Sequence[KeptEaten]") -> list[str]:
    """What the log took on of so many grams, and why not more."""
    lines = [f"logged: {eaten_line(one.id, one.eaten).strip()}" for one in logged]
    new = sum(one.eaten.grams * (eaters.people if one.eaten.who == EVERYONE else 1) for one in logged)
    if eaters.only_sittings and not logged:
        lines.append("Nothing new in the log: it is there already, or was no single meal. `--who NAME` logs that, too.")
    elif eaters.who and not eaters.only_sittings and new < grams - 1:
        lines.append(f"{grams - new:g} g of it were in the log already and do not count twice.")
    return lines
