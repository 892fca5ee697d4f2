"""Limits of one's own: what somebody tolerates of one component, and the profile that follows from it.

An own limit is for a component at one sitting. It takes the place of the cut-offs of elimination that hold that
component for one food; where it is larger it widens the sums that the component is a part of by the difference, one
component at a time unless a dietitian said that they add. At most it is the limit itself, without a factor. Ours.
"""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from types import MappingProxyType
from typing import Literal, get_args

from calmlarder.intake.own_limit import OWN_COMPONENTS, OwnComponent, OwnLimit
from calmlarder.intake.profile import OWN, Profile
from calmlarder.tables.cap_rows import Cap
from calmlarder.tables.vocabulary import CutoffClass, Group

BASE = "elimination"
# What elimination holds for one food, g: Varney et al. 2017; where classes differ the larger, so that a sum is never
# widened by more than what came on top.
CUTOFFS_G = MappingProxyType({
    "fructans": Decimal("0.30"), "gos": Decimal("0.30"), "lactose": Decimal("1.00"),
    "excess_fructose": Decimal("0.40"), "sorbitol": Decimal("0.20"), "mannitol": Decimal("0.20"),
})  # fmt: skip
_SUM_OF: dict[Group, tuple[OwnComponent, ...]] = {
    "oligosaccharides": ("fructans", "gos"),
    "polyols": ("sorbitol", "mannitol"),
    "total": ("fructans", "gos", "excess_fructose", "sorbitol", "mannitol"),
}


_ASKED_FROM = 3  # times the published cut-off, from which a limit is asked about before it is kept: ours


def asked_before_kept(own: OwnLimit, found_g: float | None) -> str:
    """Why a limit that somebody sets is asked about first; empty where it is near what is published and was found.

    `found_g` is what a challenge found of that component, None where none did.
    """
    cutoff, name = float(CUTOFFS_G[own.component]), own.component.replace("_", " ")
    reasons = []
    if own.grams > round(_ASKED_FROM * cutoff, 6):
        times = f"{own.grams / cutoff:.0f} times the published {cutoff:g} g of one food in elimination (Varney 2017)"
        reasons.append(times)
    if found_g is not None and own.grams > found_g:
        reasons.append(f"more than the {found_g:g} g that your challenge found")
    return f"{own.grams:g} g of {name} at one meal is {', and '.join(reasons)}" if reasons else ""


def own_profile(base: Profile, owns: Sequence[OwnLimit], they_add: bool = False, name: str = OWN) -> Profile:
    """The limits of elimination (`base`) with somebody's own in their place."""
    limits = {
        component: mine for component in OWN_COMPONENTS if (mine := [o for o in owns if o.component == component])
    }
    food = tuple(cap for one in base.food_caps for cap in _food_caps(one, limits))
    sitting = tuple(cap for one in base.sitting_caps for cap in _sitting_caps(one, limits, they_add))
    own = tuple(cap for component, mine in limits.items() for cap in _own_caps(component, mine))
    day = tuple(_widened(cap, limits, they_add) for cap in base.day_caps)
    return Profile(
        name=name, food_caps=food, sitting_caps=(*sitting, *own), day_caps=day, own_limits=tuple(owns), own_add=they_add
    )


_Limits = dict[OwnComponent, list[OwnLimit]]


def _food_caps(cap: Cap, limits: _Limits) -> Iterator[Cap]:
    """A cut-off for one food, for the components of it that have no limit of their own."""
    parts = _SUM_OF.get(cap.group, ())
    if cap.group in limits and cap.group not in _SUM_OF:
        yield from _left_to_classes(cap, limits[cap.group])
    elif not any(part in limits for part in parts):
        yield cap
    elif cap.group == "polyols":
        return  # what is left of it are the cut-offs of the other polyol
    else:
        for part in parts:
            one = cap.model_copy(update={"group": part})
            if part not in limits:
                yield one
            else:
                yield from _left_to_classes(one, limits[part])


def _left_to_classes(cap: Cap, mine: Sequence[OwnLimit]) -> Iterator[Cap]:
    """The cut-off as it stands for classes of food that no own limit was found with."""
    covered = {kind for own in mine for kind in (own.classes or get_args(CutoffClass))}
    kinds = tuple(kind for kind in (cap.applies_to or get_args(CutoffClass)) if kind not in covered)
    if kinds:
        yield cap.model_copy(update={"applies_to": kinds})


def _sitting_caps(cap: Cap, limits: _Limits, they_add: bool) -> Iterator[Cap]:
    """A limit of the sitting, wider by what was found; the rest of a sum stays under what the sum was."""
    if cap.group in limits and cap.group not in _SUM_OF:
        return
    yield _widened(cap, limits, they_add)
    parts = _SUM_OF.get(cap.group, ())
    if cap.group != "total" and any(part in limits for part in parts):
        for part in parts:
            one = cap.model_copy(update={"group": part})
            yield from _left_to_classes(one, limits[part]) if part in limits else (one,)


def _own_caps(component: OwnComponent, mine: Sequence[OwnLimit]) -> Iterator[Cap]:
    """The own limit over all foods of a sitting, and for classes of food where several were found."""
    most = max(Decimal(str(own.grams)) for own in mine)
    yield _cap("sitting", component, (), most, mine[0])
    for own in mine:
        grams = Decimal(str(own.grams))
        if grams < most:
            yield _cap("sitting", component, own.classes, grams, own)


def _cap(
    scope: Literal["food", "sitting"], group: Group, classes: tuple[CutoffClass, ...], grams: Decimal, own: OwnLimit
) -> Cap:
    source = f"{own.said_by}, {own.on.isoformat()}"
    return Cap(
        profile=OWN, scope=scope, group=group, applies_to=classes, typical_g=grams, at_most_g=grams, source=source
    )


def _widened(cap: Cap, limits: _Limits, they_add: bool) -> Cap:
    """A sum with the room that own limits above the cut-offs bring; narrower nowhere."""
    more = [
        max(Decimal(0), max(Decimal(str(own.grams)) for own in limits[part]) - CUTOFFS_G[part])
        for part in _SUM_OF.get(cap.group, ())
        if part in limits
    ]
    by = sum(more, Decimal(0)) if they_add else max(more, default=Decimal(0))
    most = None if cap.at_most_g is None else cap.at_most_g + by
    return cap.model_copy(update={"typical_g": cap.typical_g + by, "at_most_g": most})
