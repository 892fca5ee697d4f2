"""What was eaten before a sitting and how it counts, from the options and the kept log."""

import argparse
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from calmlarder.intake.own import MOST_HOURS, Own, own_of
from calmlarder.problems import CannotGoOn, Problem

if TYPE_CHECKING:
    from calmlarder.intake.stacking import Stacking


def owns_given(options: argparse.Namespace) -> tuple[Own, ...]:
    """Whose hours `--own` names. Raises CannotGoOn for what names none."""
    found = [(text, own_of(text)) for text in options.own]
    remedy = f'write a name and hours up to {MOST_HOURS}, such as "kit 5", "kit 5 fades" or "kit stays"'
    problems = [
        Problem(where="--own", what=f"`{text}` says nobody's hours", remedy=remedy)
        for text, own in found
        if own is None
    ]
    if problems:
        raise CannotGoOn(problems)
    return tuple(own for _, own in found if own is not None)


def stacking_of(options: argparse.Namespace, at: datetime) -> "Stacking":
    """How it counts at a moment. Raises CannotGoOn for hours that cannot be."""
    from calmlarder.commands.ate import person
    from calmlarder.intake.eaten import ME
    from calmlarder.intake.stacking import Stacking
    from calmlarder.intake.zone import offsets_at

    if not 0 <= options.window <= MOST_HOURS:
        raise CannotGoOn([Problem(where="--window", what="cannot be", remedy=f"give hours from 0 to {MOST_HOURS}")])
    # Of several people nobody knows who they are: then whoever has the most of a group counts.
    who = tuple(person(name, "--who") for name in options.who or ()) or ((ME,) if options.people == 1 else ())
    return Stacking(
        at=at, window_hours=options.window, fade=options.fade, own=options.own, who=who, offsets_min=offsets_at(at)
    )


def eaten_before_of(options: argparse.Namespace) -> dict[str, object]:
    """The log of the hours before the sitting, where a home is asked: the kept larder's, or the one of --home."""
    if options.command == "demo" or (options.larder is not None and options.home is None):
        return {}
    from calmlarder.commands.moment import moment_of
    from calmlarder.store.copies import nothing_kept
    from calmlarder.store.eaten import may_count
    from calmlarder.store.home import home_folder
    from calmlarder.store.store import Store

    how = stacking_of(options, moment_of(options, options.at, "--at"))
    home = home_folder(Path(options.home) if options.home else None)
    if nothing_kept(home):
        return {}
    with Store.at(home) as store:
        return {"eaten": may_count(store, how.at, how.longest_hours), "stacking": how}
