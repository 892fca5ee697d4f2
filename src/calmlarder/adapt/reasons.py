"""Why each change is made, in words with numbers."""

from decimal import ROUND_HALF_UP, Decimal
from typing import NamedTuple

from calmlarder.adapt.choices import Choice, Open
from calmlarder.adapt.loads import MG, LoadProfile
from calmlarder.intake.profile import Profile
from calmlarder.swaps.why import GROUP_WORDS
from calmlarder.tables.rows import Cap


class Share(NamedTuple):
    """The cap of which an amount takes the largest part, and grams of it a serving."""

    cap: Cap
    grams: Decimal


def share_of(one: LoadProfile, serves: int, profile: Profile, passed: tuple[str, ...]) -> Share | None:
    """Of the caps passed, or where none of them counts this food, of all caps; None for what brings nothing."""
    shares = [
        Share(cap, Decimal(one.under(cap)) / (1000 * MG * serves))
        for cap in (*profile.sitting_caps, *profile.food_caps)
        if one.under(cap)
    ]
    under_passed = [share for share in shares if share.cap.key in passed]
    return max(under_passed or shares, key=lambda share: share.grams / share.cap.grams, default=None)


def why_line(line: Open, choice: Choice, serves: int, profile: Profile, passed: tuple[str, ...]) -> str:
    """The reason for one changed line."""
    told = [line.line.breaks] if line.line.breaks else []
    amount, figures = line.line.amount, line.line.figures
    if amount is not None and figures is not None:
        share = share_of(LoadProfile(line.line.food, amount, figures), serves, profile, passed)
        if share is not None and (share.cap.key in passed or not told):
            case = "in the worst case" if share.cap.holds == "worst" else "as planned"
            told.append(
                f"{_said(share.grams)} g of {GROUP_WORDS[share.cap.group]} a serving come from {line.line.food.name} "
                f"{case}; the cap for all of it is {share.cap.grams} g"
            )
    if choice.candidate is not None:
        candidate = choice.candidate
        told += [f"keeps {candidate.keeps}"] if candidate.keeps else []
        told += [f"loses {candidate.loses}"] if candidate.loses else []
        when = candidate.when.removeprefix("any: ")
        told += [f"when: {when}"] if when not in {"", "any"} else []
        told += [f"mind: {candidate.caution}"] if candidate.caution else []
    return "; ".join(told)


def why_serving(serves: int, more: int) -> str:
    """The reason for a smaller serving."""
    less = Decimal(100 * (more - serves)) / more
    return f"each serving is {less.quantize(Decimal(1), ROUND_HALF_UP)} % smaller, and so is all that it brings"


def _said(grams: Decimal) -> Decimal:
    return grams.quantize(Decimal("0.01"), ROUND_HALF_UP)
