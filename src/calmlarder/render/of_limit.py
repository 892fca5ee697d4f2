"""A load beside its limit, as both are printed."""

from calmlarder.intake.profile import TO_GRAMS

_HELD_TO_G = float(TO_GRAMS) + 1e-6


def as_held(load_g: float, limit_g: float) -> float:
    """The load, g; limits hold to half a hundredth of a gram, so what is over by no more is told as the limit."""
    return limit_g if limit_g < load_g <= limit_g + _HELD_TO_G else load_g


def of_limit(load_g: float, limit_g: float) -> str:
    """`0.29 of 0.50`."""
    return f"{as_held(load_g, limit_g):.2f} of {limit_g:.2f}"


def of_limits(likely_g: float, at_most_g: float, limit_g: float, end_g: float | None) -> str:
    """What is likely beside its own limit, and what may come at most beside the limit of that, g; in columns."""
    end = f"{at_most_g:5.2f}" if end_g is None else f"{as_held(at_most_g, end_g):5.2f} of {end_g:4.2f}"
    return f"{as_held(likely_g, limit_g):5.2f} of {limit_g:4.2f} {end:<13}"
