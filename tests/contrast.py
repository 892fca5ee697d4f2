"""Contrast as WCAG 2.2 defines it (success criterion 1.4.3), of two colours and of every word of a picture."""

import re
from collections.abc import Iterator

from textual.color import Color

LEAST = 4.5  # to 1, for text
_RECT = re.compile(r'<rect fill="(#\w{6})" x="([\d.]+)" y="([\d.]+)" width="([\d.]+)" height="([\d.]+)"')
_TEXT = re.compile(r'<text [^>]*class="[^"]*-(r\d+)" x="([\d.]+)" y="([\d.]+)"[^>]*>([^<]*)</text>')


def luminance(colour: Color) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = (part / 255 for part in (colour.r, colour.g, colour.b))
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """The ratio, 1 to 21."""
    high, low = sorted((luminance(Color.parse(colour)) for colour in (one, other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def hard_to_read(svg: str) -> Iterator[str]:
    """Words of a picture that stand out too little from the last ground drawn below them."""
    colours = dict(re.findall(r"-(r\d+) \{ fill: (#[0-9a-fA-F]{6})", svg))
    grounds = [(colour, *map(float, place)) for colour, *place in _RECT.findall(svg)]
    for style, left, base, words in _TEXT.findall(svg):
        if not re.search(r"\w", words.replace("&#160;", " ")):
            continue
        x, y = float(left) + 1, float(base) - 6  # within its first letter
        under = [colour for colour, x0, y0, wide, high in grounds if x0 <= x < x0 + wide and y0 <= y < y0 + high]
        if under and (ratio := contrast(colours[style], under[-1])) < LEAST:
            yield f"{words.replace('&#160;', ' ').strip()[:40]}: {ratio:.2f} to 1, {colours[style]} on {under[-1]}"
