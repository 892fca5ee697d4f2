"""What goes off and is not in a dinner, told with it: nothing that presses is passed over without a word."""

from collections.abc import Iterator, Sequence

from calmlarder.compose.called import name_said
from calmlarder.compose.garlic_named import says_garlic
from calmlarder.compose.offer import Offered
from calmlarder.compose.solve import Plan
from calmlarder.intake.limit import limit_of
from calmlarder.larder.freezing import freeze_today
from calmlarder.larder.lot import Lot
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food

_SOON_DAYS = 2  # what has so many days left is told, too: ours
_SPOILS_SOON_DAYS = 3  # of raw fish, meat and sprouts: they wait for no second dinner. Ours
_MOST_TOLD = 4  # of what goes off soon: more is a list that nobody reads; ours
_WORTH_A_WORD_G = 40  # less, or a herb, is no meal; what holds onion or garlic is none either. Ours
# Of these an estimate counts as well: nobody waits for the smell. Ours.
_SPOILS = frozenset({"fish", "shellfish", "poultry", "meat", "shoot"})
_FITS_SHARE = 0.6  # of a usual portion: what fits no more of it is planned for nobody who keeps the limits. Ours
_DAYS = {1: "tomorrow is the last day", 2: "two days left", 3: "three days left"}


def goes_off(plan: Plan, offered: Sequence[Offered], tables: Tables) -> tuple[str, ...]:
    """A sentence for each thing that is on its last day and stays out, and one for what goes off within two days."""
    passed = _passed_over(plan, offered)
    fits = {option.offered.lot.id for option in plan.problem.options}
    told = []
    for thing in passed:
        if _is_last_day(thing.lot):
            why = "what goes in leaves no room for it" if thing.lot.id in fits else "this dish has no place for it"
            then = _else(thing.lot)
            if not _may_be_planned(thing, plan, tables):
                why, then = "a usual amount passes the limits", "for somebody else's plate, or throw it away tonight"
            name = name_said(thing.food, thing.lot.line, tables).capitalize()
            told.append(f"{name}: today is its last day, and {why}: {then}.")
    soon = sorted((thing for thing in passed if _goes_soon(thing)), key=lambda thing: thing.lot.days_left or 0)
    once = list({thing.food.id: thing for thing in reversed(soon)}.values())[::-1]
    fitting = [thing for thing in once if _may_be_planned(thing, plan, tables)][:_MOST_TOLD]
    others = [thing for thing in once if thing not in fitting and not _may_be_planned(thing, plan, tables)]
    return tuple(dict.fromkeys((*told, *_soon(fitting, tables), *_for_others(others[:_MOST_TOLD], tables))))


def _may_be_planned(thing: Offered, plan: Plan, tables: Tables) -> bool:
    """Whether most of a usual portion fits the limits of the sitting."""
    wanted = plan.problem.wanted
    most = limit_of(thing.food, wanted.limits, tables, wanted.tolerance).grams_weighed
    return most is None or most >= _FITS_SHARE * float(thing.food.portion_g)


def _passed_over(plan: Plan, offered: Sequence[Offered]) -> list[Offered]:
    """What may be eaten and is in no dinner, nor any other lot of the same food."""
    used = {use.option.offered.lot.id for use in plan.uses}
    foods = {use.option.offered.food.id for use in plan.uses}
    return [
        thing
        for thing in offered
        if thing.lot.id not in used and thing.food.id not in foods and _may_go_off(thing.lot, thing.food)
    ]


def _may_go_off(lot: Lot, food: Food) -> bool:
    return not (food.is_staple or lot.place == "freezer" or lot.always or lot.kept_for is not None)


def _is_last_day(lot: Lot) -> bool:
    """By its label or by what is safe; an estimate of how long it is at its best is no such day."""
    return lot.safety_days_left == 0 or (lot.days_left == 0 and not lot.days_estimated)


def _else(lot: Lot) -> str:
    if lot.safety_days_left == 0:
        return "have it at another meal today, within your limits, or throw it away tonight"
    return "have it at another meal today, within your limits, or look at it well tomorrow"


def _soon(shown: Sequence[Offered], tables: Tables) -> Iterator[str]:
    """What the next dinner is made of, the soonest first, and what of it the freezer would keep."""
    if not shown:
        return
    called = {thing.lot.id: name_said(thing.food, thing.lot.line, tables) for thing in shown}
    cold = {one.lot for one in freeze_today([thing.lot for thing in shown], tables, _SPOILS_SOON_DAYS)}
    freezes = [called[thing.lot.id] for thing in shown if thing.lot.id in cold and thing.food.kind in _SPOILS]
    frozen = f", or freeze the {' and '.join(freezes)} today" if freezes else ""
    yield f"Goes off next: {_with_days(shown, tables)}. Plan it in{frozen}."


def _for_others(shown: Sequence[Offered], tables: Tables) -> Iterator[str]:
    """What goes off as well, and is no food for who keeps the limits."""
    if shown:
        yield (
            f"Goes off, and a usual amount passes the limits: {_with_days(shown, tables)}. For somebody else's plate, "
            "or the freezer."
        )


def _with_days(shown: Sequence[Offered], tables: Tables) -> str:
    return ", ".join(
        f"{name_said(thing.food, thing.lot.line, tables)} ({_DAYS[thing.lot.days_left or 1]})" for thing in shown
    )


def _goes_soon(thing: Offered) -> bool:
    days, lot = thing.lot.days_left, thing.lot
    raw = thing.food.kind in _SPOILS and thing.food.state in {"raw", "frozen"}
    if days is None or not 1 <= days <= (_SPOILS_SOON_DAYS if raw else _SOON_DAYS) or _is_last_day(lot):
        return False
    if lot.grams < _WORTH_A_WORD_G or thing.food.kind in {"herb", "allium"} or says_garlic(thing.food):
        return False
    return raw or not lot.days_estimated
