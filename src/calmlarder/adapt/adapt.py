"""From the lines of a recipe to the smallest change that brings it under the limits."""

from collections.abc import Sequence
from decimal import Decimal

from calmlarder.adapt import prices
from calmlarder.adapt.alliums import goes_out
from calmlarder.adapt.binding import with_eggs_that_bind
from calmlarder.adapt.choice import Choice, Open
from calmlarder.adapt.counted import Counted, counted
from calmlarder.adapt.dropped import only_changes
from calmlarder.adapt.left_open import left_out_unread, so_much_of_it
from calmlarder.adapt.loads import LineLoad, loads_of, passed
from calmlarder.adapt.model import Adapted, Amount, Brought, Change, Eaters, Status
from calmlarder.adapt.one_sort import of_one_sort
from calmlarder.adapt.open_lines import IN_LEAVES, may_go_unknown, open_lines
from calmlarder.adapt.reasons import (
    at_heat,
    done_first,
    how_to,
    not_browned,
    not_soaked,
    share_of,
    why_line,
    why_serving,
)
from calmlarder.adapt.solve import Solved, solve
from calmlarder.adapt.told import NOTHING_TOLD, Told
from calmlarder.adapt.triggers import with_triggers
from calmlarder.cookbook.recipe import IngredientRead
from calmlarder.intake.diet_and_allergens import allergens_met
from calmlarder.intake.profile import Profile
from calmlarder.tables.book import Tables
from calmlarder.tables.rows import Food
from calmlarder.tables.vocabulary import ALLERGENS

MOST_SERVES = 500  # beyond it is a slip of the pen


def adapt(
    reads: Sequence[IngredientRead], serves: int, eaters: Eaters, tables: Tables, told: Told = NOTHING_TOLD
) -> Adapted:
    """Bring a recipe for `serves` under the limits of one sitting, by the smallest change found.

    `told` is what its title and steps say of its lines.
    """
    limits = eaters.limits
    lines = counted(reads, eaters, tables)
    own = [LineLoad(line.food, line.amount, line.profile) for line in lines.counted if line.amount and line.profile]
    over = passed(own, serves, limits)
    breaks = any(line.breaks or may_go_unknown(line, serves) for line in lines.counted)
    opened: tuple[Open, ...] = ()
    solved = Solved("none", (), serves, 0)
    status: Status
    if not lines.counted and lines.unread:
        status = "nothing_read"
    elif not over and not breaks and not any(goes_out(line, serves, eaters, tables) for line in lines.counted):
        status = "fits"
    else:
        opened = open_lines(lines.counted, serves, eaters, tables, told)
        # Twelve muffins are not thirteen; of a cake for ten nobody misses a tenth.
        solved = solve(opened, serves, limits, 1 if told.by_the_piece else prices.HARDLY_SMALLER)
        if solved.kind == "none":  # less of its main things before a smaller plate of all of them
            eased = open_lines(lines.counted, serves, eaters, tables, told._replace(bears_less=True))
            solved = solve(eased, serves, limits, 1)
            opened = opened if solved.kind == "none" else eased
        # What is filled is counted out one a serving: it is not served smaller.
        for times in () if _filled_ones(told, tables) else (prices.MOST_SERVINGS, prices.MOST_AT_ALL):
            if solved.kind == "none":
                solved = solve(opened, serves, limits, times)
        answers: dict[str, Status] = {
            "best": "adapted", "found": "adapted_best_found", "none": "cannot", "open": "open",
        }  # fmt: skip
        status = answers[solved.kind]
        solved = _of_one_sort(opened, solved, limits)
    changes = with_eggs_that_bind(
        _changes(opened, solved, serves, eaters, over, tables), lines.counted, tables, told.binds
    )
    if status == "adapted" and not changes:
        status = "fits"  # what might have been left out stays, as nothing has to go
    if status in {"fits", "adapted", "adapted_best_found"}:
        done = {change.place for change in changes}
        besides = [
            *only_changes(lines.counted, done, eaters, tables),
            *left_out_unread((one for one in lines.unread if one.place not in done), reads),
        ]
        besides += so_much_of_it(lines.counted, done | {change.place for change in besides}, tables)
        changes = tuple(sorted((*changes, *besides), key=_in_order))
        status = "adapted" if besides and status == "fits" else status
    changed = {change.place for change in changes}
    unread = tuple(one for one in lines.unread if one.place not in changed)
    after = None
    if status == "fits" or (status == "adapted" and not solved.chosen):
        after = loads_of(own, serves, limits)
    elif solved.chosen:
        kept = [one for line, number in zip(opened, solved.chosen, strict=True) for one in line.choices[number].brings]
        after = loads_of(kept, solved.serves, limits)
    return Adapted(
        status=status,
        before=loads_of(own, serves, limits),
        after=after,
        limits_g={cap.key: (cap.typical_g, cap.at_most_g) for cap in limits.sitting_caps},
        passed=over,
        brought=tuple(_brought(line, serves, eaters, over) for line in lines.counted),
        amounts={line.place: line.amount for line in lines.counted if line.amount is not None},
        changes=changes,
        unread=with_triggers(unread, reads, eaters, tables),
    )


def _of_one_sort(opened: Sequence[Open], solved: Solved, limits: Profile) -> Solved:
    """The same with one flour or milk for all lines of it, where that passes no limit."""
    if not solved.chosen:
        return solved
    chosen = of_one_sort(opened, solved.chosen)
    brings = [one for line, number in zip(opened, chosen, strict=True) for one in line.choices[number].brings]
    return solved if passed(brings, solved.serves, limits) else solved._replace(chosen=chosen)


def _in_order(change: Change) -> tuple[bool, int]:
    """By their lines; what is of the whole dish comes last."""
    return change.place is None, change.place or 0


def _filled_ones(told: Told, tables: Tables) -> bool:
    """Whether something is filled of which each person has one; of rolls in leaves there may be fewer."""
    return any(tables.food_by_id[food].kind not in IN_LEAVES for food in told.stuffed)


def _changes(
    opened: Sequence[Open], solved: Solved, serves: int, eaters: Eaters, over: tuple[str, ...], tables: Tables
) -> tuple[Change, ...]:
    found: list[Change] = []
    if not solved.chosen:
        return ()
    for line, number in zip(opened, solved.chosen, strict=True):
        choice = line.choices[number]
        if choice.kind is not None:
            out = goes_out(line.line, serves, eaters, tables)
            found.append(
                Change(
                    place=line.line.place,
                    ingredient=line.line.read.text,
                    change=choice.kind,
                    to=tuple(one.amount for one in choice.brings),
                    unmeasured=_unmeasured(choice),
                    lines=choice.lines,
                    why="; ".join(
                        filter(
                            None,
                            (
                                why_line(line, choice, serves, eaters.limits, over, out),
                                _new_allergens(line.line, choice),
                            ),
                        )
                    ),
                    how=how_to(line, choice),
                    heat=at_heat(line, choice),
                    not_soaked=not_soaked(line, choice),
                    not_browned=not_browned(line, choice),
                    first=done_first(line, choice),
                )
            )
    if solved.serves != serves:
        why = why_serving(serves, solved.serves)
        found.append(Change(place=None, ingredient="the whole dish", change="serving", to=(), lines=(), why=why))
    return tuple(found)


def _new_allergens(line: Counted, choice: Choice) -> str:
    """What a stand-in brings or may bring that its line did not, wherever else in the dish it may be."""
    held = set(allergens_met(line.food, ALLERGENS))
    foods: list[Food] = [one.food for one in choice.brings]
    if choice.candidate is not None:
        foods += [part.food for part in choice.candidate.parts]
    new = {one: None for food in foods for one in allergens_met(food, ALLERGENS) if one not in held}
    return f"mind allergies: it brings, or may bring, {', '.join(new)}, which {line.food.name} did not" if new else ""


def _unmeasured(choice: Choice) -> tuple[str, ...]:
    if choice.candidate is None or choice.brings:
        return ()
    return tuple(part.food.id for part in choice.candidate.parts)


def _brought(line: Counted, serves: int, eaters: Eaters, over: tuple[str, ...]) -> Brought:
    amount: Amount | None = line.amount
    share = None
    if amount is not None and line.profile is not None:
        share = share_of(LineLoad(line.food, amount, line.profile), serves, eaters.limits, over)
    if share is None:
        return Brought(place=line.place, cap=None, grams=Decimal(0))
    return Brought(place=line.place, cap=share.cap.key, grams=share.grams, limit_g=share.cap.typical_g)
