"""What cooking did, in a line: what is logged for whom, what is boxed, what left the larder."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from calmlarder.intake.eaten import EVERYONE, ME
from calmlarder.render.manner import Manner

if TYPE_CHECKING:
    from calmlarder.household.cooking import Cooked


_MOST_NAMED = 4  # of what left the larder, on a screen whose list shows the rest of it


def cooked_text(done: "Cooked", manner: Manner, on_screen: bool = False) -> str:
    """All of it; what was not done is said as well, so that nobody has to guess it."""
    taken = _taken(done, manner, on_screen)
    return ". ".join(filter(None, [f"cooked: {manner.title(done.dinner)}", _eaten(done), _boxed(done), taken]))


def _taken(done: "Cooked", manner: Manner, on_screen: bool) -> str:
    """What left the larder, in g, the most of it first."""
    most_first = sorted(done.took, key=lambda one: -one.grams)
    told = [f"{manner.amount(one.grams)} {manner.name(one.name)}" for one in most_first]
    if on_screen and len(told) > _MOST_NAMED + 1:
        told = [*told[:_MOST_NAMED], f"{len(told) - _MOST_NAMED} more"]
    return f"Out of the larder: {', '.join(told)}" if told else ""


def _eaten(done: "Cooked") -> str:
    if done.dinner.portions:
        names = [one.who for one in done.by_person]
        guests = sum(one.is_guest for one in done.dinner.portions) - int(done.boxes)
        beside = f" {guests} guest{'s' * (guests > 1)} ate, too, and keep{'s' * (guests == 1)} no log"
        logged = f"Logged as eaten for {_listed(dict.fromkeys(names))}" if names else "Nothing is logged"
        return logged + (f";{beside}" if guests > 0 else "")
    if done.eaten is None:
        return "Nothing is logged until the box is eaten"
    if done.eaten.who == EVERYONE:
        each = done.dinner.people - int(done.boxes)
        return f"Logged as eaten: a portion for each of the {each}"
    what = "half of it" if 0 < done.boxes < 1 else "a portion"
    return f"Logged as eaten: {what}, for {_listed([done.eaten.who])}"


def _boxed(done: "Cooked") -> str:
    if done.boxed is None:
        return f"Nothing is boxed: {done.about_boxes}" if done.about_boxes else "Nothing is boxed"
    days = done.boxed.days_left
    keeps = "" if days is None else f", good for {days} day{'s' * (days != 1)} in the fridge"
    if done.boxes < 1:
        return f"Boxed: half of it{keeps}"
    return f"Boxed: {done.boxes:g} portion{'s' * (done.boxes > 1)}{keeps}"


def _listed(names: "Sequence[str] | dict[str, None]") -> str:
    called = ["you" if one == ME else one for one in names]
    return " and ".join(filter(None, [", ".join(called[:-1]), called[-1]]))
