"""Amounts that are only known roughly, in words without digits that nobody knows."""

_COARSE_FROM_G, _COARSE_G, _FINE_FROM_G, _FINE_G = 100, 10, 20, 5  # common practice, no source


def about_span(low_g: float, high_g: float) -> str:
    """`about 190 to 570 g`: grams to the nearest 10 from 100 on, to 5 from 20 on, below that to one."""
    return f"about {_near(low_g)} to {_near(high_g)} g"


def _near(grams: float) -> str:
    if grams < 1:
        return f"{grams:.1g}"
    step = _COARSE_G if grams >= _COARSE_FROM_G else _FINE_G if grams >= _FINE_FROM_G else 1
    return str(round(grams / step) * step)
