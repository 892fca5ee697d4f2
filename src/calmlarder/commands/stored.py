"""What is settled at home joins the options of a command that reads the kept larder."""

import argparse
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from calmlarder.commands.kitchen_table import tolerance_of
from calmlarder.commands.stacking import owns_given
from calmlarder.intake.amounts import Tolerance
from calmlarder.intake.own import laid_over
from calmlarder.store.copies import nothing_kept
from calmlarder.store.home import home_folder
from calmlarder.store.settled import Settled, settled
from calmlarder.store.store import Store
from calmlarder.tables.book import Tables

_AS_OPTION: Mapping[str, Callable[[Settled], Any]] = {
    "people": lambda home: home.people,
    "profile": lambda home: home.profile,
    "diet": lambda home: home.diet,
    "minutes": lambda home: home.minutes,
    "eye": lambda home: home.tolerance.eye_percent,
    "scale": lambda home: home.tolerance.scale_grams,
    "rings": lambda home: home.equipment.rings,
    "window": lambda home: home.window_hours,
    "fade": lambda home: home.fade,
}


def settled_at(options: argparse.Namespace, tables: Tables) -> Settled:
    """The settings of the home; the usual ones where nothing was ever kept, and then nothing is made."""
    home = home_folder(Path(options.home) if options.home else None)
    if nothing_kept(home):
        return settled({}, tables)
    with Store.at(home) as store:
        return settled(store.settings(), tables)


def tolerance_at(options: argparse.Namespace, tables: Tables) -> Tolerance:
    """How sure amounts are: as `--eye` and `--scale` say, else as settled at home. Raises CannotGoOn."""
    home = settled_at(options, tables).tolerance
    options.eye = home.eye_percent if options.eye is None else options.eye
    options.scale = home.scale_grams if options.scale is None else options.scale
    return tolerance_of(options)


def fill_from_home(options: argparse.Namespace, tables: Tables) -> tuple[str, ...]:
    """Give each option that was not given the value of the home, and say which came from there.

    An option takes the place of a setting. What protects the cook is added to, never taken away: allergens, foods
    never wanted, things the kitchen lacks; `--no-settings` leaves all of it out, and a larder that is no kept one
    has no settings.
    """
    known = options.larder is None and not options.no_settings
    home = settled_at(options, tables) if known else settled({}, tables)
    words: list[str] = []
    hours, fade = options.window, options.fade
    for name, of_home in _AS_OPTION.items():
        if getattr(options, name) is None:
            value = of_home(home)
            setattr(options, name, value)
            if name in home.given and value is not None:
                words.append(_words(name, value))
    words += _own(options, home, hours, fade)
    if options.protein is None and options.sitting == "dinner" and "protein_g" in home.given:
        options.protein = home.protein_g
        words.append(f"{home.protein_g} g protein to aim at")
    words += _added(options, home, tables)
    return tuple(words)


def _own(options: argparse.Namespace, home: Settled, hours: float | None, fade: bool | None) -> list[str]:
    """Whose hours are their own. `--window` and `--fade` are for everybody, so they take the place of those."""
    told = tuple(
        own.model_copy(
            update={name: None for name, given in (("window_hours", hours), ("fade", fade)) if given is not None}
        )
        for own in home.own
    )
    kept = tuple(own for own in told if own.window_hours is not None or own.fade is not None)
    options.own = laid_over(kept, owns_given(options))
    return [f"hours of their own, {own.words}" for own in kept]


def _added(options: argparse.Namespace, home: Settled, tables: Tables) -> list[str]:
    words = []
    if home.avoid:
        options.avoid = ",".join([*home.avoid, options.avoid or ""])
        words.append(f"no {', '.join(home.avoid)}")
    if home.equipment.missing:
        options.no_equipment = ",".join([*home.equipment.missing, options.no_equipment or ""])
        words.append(f"a kitchen with no {', '.join(home.equipment.missing)}")
    for foods, option, said in ((home.never, "without", "never"), (home.disliked, "dislike", "rather no")):
        # What must be in it tonight is asked for on purpose.
        kept = [food for food in foods if food not in _used(options, tables)]
        setattr(options, option, [*getattr(options, option), *kept])
        words += [f"{said} {', '.join(tables.food_by_id[food].name for food in kept)}"] if kept else []
    return words


def _used(options: argparse.Namespace, tables: Tables) -> set[str]:
    from calmlarder.commands.kitchen_table import food_named

    return {food_named(text, "--use", tables).id for text in options.use}


def _words(name: str, value: Any) -> str:
    if name == "fade":
        return "what was eaten fades" if value else "what was eaten does not fade"
    said = {
        "people": "for {}",
        "minutes": "{} minutes at most",
        "profile": "limits: {}",
        "eye": "a guess {} % off",
        "scale": "the scale {} g off",
        "rings": "hob rings: {}",
        "window": "hours that count: {:g}",
    }
    return said.get(name, "{}").format(value)
